"""The house itself: floors, style, types, the mirror of tests, pure templates, sources."""

import re
import subprocess
import sys
from pathlib import Path

import pytest
from jinja2 import Environment, nodes

from tinbook.loading import load_facts
from tinbook.pages.render import environment

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
LONGEST = 400

# Shapes are tested by laws that run over the register; the rest of these are one test's subject together.
MIRRORED_ELSEWHERE = {
    **{f"tins/{shape}": "tins/test_laws" for shape in ("round", "square", "rectangle", "loaf", "ring", "cups")},
    **{f"tins/{part}": "tins/test_laws" for part in ("shape", "register", "trade")},
    "units/misread": "units/test_quantities",
    "source/reading": "source/test_reading",
    "problems/words": "problems/test_words",
    "facts/rows": "facts/test_reading",
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
    assert "4 kept, 0 broken" in done.stdout


def test_style() -> None:
    run("ruff", "check", "plugins", "tests")
    run("ruff", "format", "--check", "plugins", "tests")


def test_types() -> None:
    run("mypy")


def test_the_top_level_is_fixed() -> None:
    assert {path.split("/")[0] for path in tracked() if not path.startswith(".")} <= TOP


def test_no_module_is_long() -> None:
    long = {
        path.name: count for path in PACKAGE.rglob("*.py") if (count := len(path.read_text().splitlines())) > LONGEST
    }
    assert not long


def test_every_module_has_its_test() -> None:
    modules = [path.relative_to(PACKAGE).with_suffix("") for path in PACKAGE.rglob("*.py") if path.stem != "__init__"]
    missing = []
    for module in modules:
        room, name = module.parts[0], module.name
        mirror = MIRRORED_ELSEWHERE.get(module.as_posix(), f"{room}/test_{name}")
        if not (ROOT / "tests" / f"{mirror}.py").is_file():
            missing.append(module.as_posix())
    assert not missing


def test_no_file_names_a_place_of_one_machine() -> None:
    homes = re.compile(r"(?<![\w.])/(?:home|root|Users|tmp)/\w")
    text = (
        path
        for path in tracked()
        if Path(path).suffix in {".py", ".md", ".yml", ".yaml", ".toml", ".js", ".css", ".html"}
    )
    named = [
        path
        for path in text
        if (ROOT / path).is_file() and homes.search((ROOT / path).read_text(encoding="utf-8", errors="replace"))
    ]
    assert [path for path in named if path != "tests/test_structure.py"] == []


# Templates loop, branch on a named boolean, and call filters; they never add, compare or look things up.

REFUSED = (nodes.BinExpr, nodes.Compare, nodes.Getitem, nodes.CondExpr, nodes.Concat, nodes.Neg, nodes.Assign)
CALLED = {"link"}
BUILT_IN = {"tojson"}


def impurities(source: str, filters: set[str]) -> list[str]:
    tree = Environment().parse(source)
    found = []
    for node in tree.find_all(nodes.Node):
        if isinstance(node, nodes.And | nodes.Or):
            continue
        if isinstance(node, nodes.Assign) and isinstance(node.node, nodes.Getattr | nodes.Name):
            continue
        if isinstance(node, REFUSED):
            found.append(f"line {node.lineno}: {type(node).__name__}")
        if isinstance(node, nodes.Call) and not (isinstance(node.node, nodes.Name) and node.node.name in CALLED):
            found.append(f"line {node.lineno}: calls {node.node}")
        if isinstance(node, nodes.Filter) and node.name not in filters:
            found.append(f"line {node.lineno}: filter {node.name}")
    return found


@pytest.mark.parametrize(
    "path", sorted(TEMPLATES.rglob("*.*")), ids=lambda path: path.relative_to(TEMPLATES).as_posix()
)
def test_a_template_holds_no_sums(path: Path) -> None:
    ours = {name for name in environment().filters if name not in Environment().filters} | {"title"} | BUILT_IN
    assert impurities(path.read_text(encoding="utf-8"), ours) == []


@pytest.mark.parametrize(
    "bad",
    ["{{ 1 + x }}", "{% if a > b %}{% endif %}", "{{ rows[0] }}", "{{ x | round }}", "{{ x.sum() }}", "{{ a ~ b }}"],
)
def test_sums_in_a_template_are_seen(bad: str) -> None:
    assert impurities(bad, set())


def test_every_facts_source_resolves() -> None:
    facts = load_facts()
    used = {source for _, _, row in facts.cited() for source in (row.source, *row.also)}
    assert used <= set(facts.sources)
    assert used
