"""Words in one place each: plans hand over values, and what they say is spelled here, every saying and every figure."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import fields
from pathlib import Path
from string import Formatter

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.facts.reading import PSEUDO
from tinbook.models.cards import EGG_PARTS
from tinbook.models.reading import Written
from tinbook.pages.spelling.sayings import ROOMS, SAYINGS, formula_of, inputs_of, spell, spelled_all
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.orders.free_from import ALSO
from tinbook.plans.rules.orders import LIKE_PERSONAL
from tinbook.plans.variations.changed_mix import OF_BASE
from tinbook.plans.variations.inherited import PRIVATE_BASE
from tinbook.units import CUPS_ML, UNITS

PLANS = Path(__file__).parents[3] / "plugins" / "tinbook" / "plans"
MODULES = sorted(PLANS.rglob("*.py"))

PROBLEMS = {"Flaw", "AskError", "Misread", "Unweighable", "ValueError", "LookupError", "KeyError", "Problem"}
"""What is told to whoever wrote the file or the command: a message and a hint, no words of a page."""
HINTS = {"hint", "message"}


def text_of(node: ast.expr) -> str:
    """A literal's text, with a mark where a figure goes in."""
    if isinstance(node, ast.JoinedStr):
        return "".join(str(part.value) if isinstance(part, ast.Constant) else "\0" for part in node.values)
    return str(node.value) if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""


SENTENCE = re.compile(r"[a-z]{2,}[,;:.]? [a-z(]|\0 [a-z%°]|[a-z]{2,},? \0", re.IGNORECASE)


def literals(node: ast.AST) -> Iterator[ast.expr]:
    """The literals below a node, but for docstrings and what is told of problems."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.JoinedStr) or (isinstance(child, ast.Constant) and isinstance(child.value, str)):
            yield child
        elif (
            (isinstance(child, ast.AugAssign) and told_of_problems(child.target))
            or (isinstance(child, ast.Expr) and isinstance(child.value, ast.Constant))
            or (isinstance(child, ast.Call) and ast.unparse(child.func).rpartition(".")[2] in PROBLEMS)
            or (isinstance(child, ast.keyword) and child.arg in HINTS)
            or (isinstance(child, ast.Assign) and all(map(told_of_problems, child.targets)))
        ):
            continue
        else:
            yield from literals(child)


def told_of_problems(target: ast.expr) -> bool:
    """Whether a name, or each of `message, hint`, is of a problem."""
    names = target.elts if isinstance(target, ast.Tuple) else [target]
    return all(isinstance(name, ast.Name) and name.id in HINTS for name in names)


def written(model: type[Written] = Written) -> Iterator[type[Written]]:
    """Every group of the YAML."""
    for group in model.__subclasses__():
        yield group
        yield from written(group)


def sentences(source: str, known: set[str]) -> list[str]:
    """Literals that say something, and are no key of a fact or of the YAML."""
    texts = (text_of(node) for node in literals(ast.parse(source)))
    return [text for text in texts if SENTENCE.search(text) and text not in known]


@pytest.fixture(scope="module")
def known(facts: Facts) -> set[str]:
    rows = {key for field in fields(facts) if isinstance(group := getattr(facts, field.name), Mapping) for key in group}
    aliases = {field.alias for model in written() for field in model.model_fields.values()}
    codes = {OF_BASE, PRIVATE_BASE}
    # what house.yaml, a card of an ingredient and a quantity may say
    words = {*CUPS_ML, *EGG_PARTS, *UNITS, *ALSO, *LIKE_PERSONAL}
    return {*map(str, rows), *(alias for alias in aliases if alias), *codes, *words, *facts.traits, *PSEUDO}


@every("path", MODULES, ids=lambda path: path.relative_to(PLANS).as_posix())
def test_plans_say_nothing_in_words(path: Path, known: set[str]) -> None:
    if path == PLANS / "tables.py":
        return
    assert sentences(path.read_text("utf-8"), known) == []


@pytest.mark.parametrize(
    "bad",
    ['x = "too shallow for it"', 'x = f"{a:g} mm"', 'x = f"batter {a}"', 'return_ = say(f"{a} of them", "g")',
     'title = "Dowel plan"'],
)  # fmt: skip
def test_a_sentence_is_seen(bad: str) -> None:
    assert sentences(bad, set())


@every(
    "good",
    ['x = saying("too_shallow", tins=3)', 'raise AskError("no such tin", f"write {tin} cm")', 'hint = f"write {tin} cm"',
     'message, hint = f"no {tin} here", "write another one"', '"""A docstring of words."""', 'x = facts.numbers["egg tolerance"]', 'x = "round"'],
)  # fmt: skip
def test_keys_and_problems_are_no_sentences(good: str) -> None:
    assert sentences(good, {"egg tolerance"}) == []


def said_in_plans() -> Iterator[tuple[str, str, set[str]]]:
    """Every saying of plans: where, its key, the names of its figures."""
    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "saying":
                key = node.args[0]
                assert isinstance(key, ast.Constant), f"{path.name}:{node.lineno} has a key that is no literal"
                yield path.name, str(key.value), {str(word.arg) for word in node.keywords}


def test_every_saying_has_words_and_all_words_are_said() -> None:
    said = {key for _, key, _ in said_in_plans()}
    assert said == set(SAYINGS)


def test_a_saying_stands_in_one_room() -> None:
    counted = Counter(key for room in ROOMS for key in room.SAYINGS)
    assert [key for key, count in counted.items() if count > 1] == []


def test_the_figures_of_a_saying_are_those_of_its_words() -> None:
    wrong = []
    for place, key, names in said_in_plans():
        words = SAYINGS[key]
        if isinstance(words, str):
            wanted = {re.split(r"[.\[]", name)[0] for _, name, _, _ in Formatter().parse(words) if name}
            if wanted != names:
                wrong.append((place, key, names, wanted))
    assert wrong == []


def test_a_saying_is_spelled_with_those_inside_it(monkeypatch: pytest.MonkeyPatch) -> None:
    words = {"outer": "{many} of {what}", "inner": "{g:g} g", "list": lambda parts: " and ".join(parts)}
    monkeypatch.setattr("tinbook.pages.spelling.sayings.SAYINGS", words)
    assert spell(saying("outer", many=3, what=saying("inner", g=40.0))) == "3 of 40 g"
    assert spell(saying("list", parts=(saying("inner", g=1.5), "more"))) == "1.5 g and more"
    assert spelled_all(("as it is", saying("inner", g=2.0))) == ("as it is", "2 g")
    worked = Worked(saying("inner", g=1.0), (saying("inner", g=2.0),), ())
    assert (formula_of(worked), inputs_of(worked)) == ("1 g", ("2 g",))
    with pytest.raises(KeyError):
        spell(saying("unheard"))
