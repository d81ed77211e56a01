"""One bad book for each kind of slip, with the exact text a baker is shown.

tests/source/bad/HOUSE_OR_FOLDER/NAME.yaml is put into a small sound book: as house.yaml, tins.yaml or ingredients.yaml
of the house, or as a file of its own in mixtures/, techniques/ or cakes/.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path

from tests.every import every
from tests.loading.conftest import BAD, CASES, HOUSE, Told, address, case

from tinbook.loading import load_book
from tinbook.problems import spell

# Words of the parser, of the model library and of programs: no baker should meet them.
JARGON = re.compile(
    r"(?i)\b(token|scalar|mapping|sequence|node|stream|none type|nonetype|dict|tuple|str|string|integer|float"
    r"|model|field|input|valid|validation|parse|error|exception|null|type|boolean|index|syntax)\b"
)
# Slips that are there more than once in one file.
SEVERAL = {"mixtures/missing-name-and-kind": 2, "mixtures/several": 4, "techniques/links": 2}


FOLDERS = ("mixtures", "techniques", "cakes")


def each_in_both(test: Callable[..., None]) -> Callable[..., None]:
    """A test that goes through every case in the kitchen's book and in the public one."""
    return every("path", CASES, ids=case)(every("kitchen", [True, False], ids=["kitchen", "public"])(test))


def test_the_small_book_is_sound(write: object) -> None:
    assert callable(write)
    loaded = load_book(write())
    assert not loaded.problems
    assert not loaded.broken
    assert (len(loaded.book.mixtures), len(loaded.book.techniques), len(loaded.book.cards)) == (1, 1, 5)


@each_in_both
def test_the_baker_is_told(path: Path, kitchen: bool, told: Told) -> None:
    loaded = told(path, kitchen)
    text = "".join(f"{spell(problem)}\n" for problem in loaded.problems)
    assert text == path.with_suffix(".txt").read_text(encoding="utf-8")


@each_in_both
def test_one_slip_is_told_once(path: Path, kitchen: bool, told: Told) -> None:
    """Nothing that only follows from it is told, in this file or in another."""
    loaded = told(path, kitchen)
    assert len(loaded.problems) == SEVERAL.get(case(path), 1)
    assert {problem.place.file for problem in loaded.problems} == {f"recipes/{address(path)}.yaml"}
    assert all(problem.severity == "error" for problem in loaded.problems)


@each_in_both
def test_words_for_a_baker(path: Path, kitchen: bool, told: Told) -> None:
    loaded = told(path, kitchen)
    for problem in loaded.problems:
        assert len(problem.message) <= 90
        assert len(problem.hint) <= 240
        assert problem.hint
        assert not problem.message.endswith((".", "!"))
        quoted = re.compile(r'"[^"]*"')
        assert not JARGON.search(quoted.sub("", f"{problem.message}; {problem.hint}"))


@each_in_both
def test_the_place_is_in_the_file(path: Path, kitchen: bool, told: Told) -> None:
    loaded = told(path, kitchen)
    lines = path.read_text(encoding="utf-8").split("\n")
    for problem in loaded.problems:
        place = problem.place
        assert place.text == lines[place.line - 1]
        assert 1 <= place.column <= max(1, len(place.text))
        assert place.column - 1 + place.width <= max(1, len(place.text))


@each_in_both
def test_the_rest_of_the_book_stands(path: Path, kitchen: bool, told: Told, base: Mapping[str, str]) -> None:
    """A bad page leaves all others; a bad card takes with it only what it is in.

    A public book says no hint that could name what stands elsewhere, and nothing of a file that speaks of privacy.
    """
    loaded, where = told(path, kitchen), address(path)
    assert where not in {f"mixtures/{slug}" for slug in loaded.book.mixtures}
    assert where not in {f"techniques/{slug}" for slug in loaded.book.techniques}
    assert "line-a-tin" in loaded.book.techniques or case(path) == "house/another-format"
    assert where not in {f"cakes/{slug}" for slug in loaded.book.cakes}
    if path.parent.name in FOLDERS:
        if not kitchen and "private" in path.read_text("utf-8", "replace"):
            assert not loaded.broken
        else:
            assert set(loaded.broken) == {where}
            problems = [(each.code, each.message, each.place) for each in loaded.problems]
            assert [(each.code, each.message, each.place) for each in loaded.broken[where]] == problems
        assert "plain-sponge" in loaded.book.mixtures
        assert len(loaded.book.cards) == 5
        assert len(loaded.book.tins) == 1
    held = {"mixtures/plain-sponge"} & set(loaded.broken)
    shown = {"plain-sponge"} & set(loaded.book.mixtures)
    assert bool(held) != bool(shown) or case(path) == "house/another-format"
    for problem in loaded.broken.get("mixtures/plain-sponge", ()):
        assert problem.place.text == base["mixtures/plain-sponge.yaml"].split("\n")[problem.place.line - 1]


def test_every_case_has_its_text_and_every_text_its_case() -> None:
    assert {case(path) for path in BAD.glob("*/*.txt")} == {case(path) for path in CASES}
    assert {path.parent.name for path in CASES} == {*HOUSE, *FOLDERS}
    assert len(CASES) > 100
