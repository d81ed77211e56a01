"""Notes of our own making, sixty and twelve more, in the styles bakers keep them in: how much of each is read, marked, or put wrong.

`first` was written before the reader was, `second` after it and without a look at what it made of them, and so was `third`. At least 80 % of
what must be read is read, 95 % is read or marked, and nothing stands in the wrong place without a mark.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.every import every
from tests.notes.scoring import FLAGGED, MISPLACED, RIGHT, Score, expected_of, score, told

from tinbook.loading import Loaded
from tinbook.notes import SaidBeside, decoded, read_note, written

NOTES = Path(__file__).parents[1] / "data" / "notes"
SETS = ("first", "second", "third")


def notes(name: str) -> list[Path]:
    return sorted((NOTES / name).glob("*.txt"))


@pytest.fixture(scope="module")
def scores(demo: Loaded) -> dict[str, dict[str, Score]]:
    found: dict[str, dict[str, Score]] = {}
    for name in SETS:
        for path in notes(name):
            expected = expected_of(path)
            note = read_note(decoded(path.read_bytes()), demo.book, demo.facts)
            asked = SaidBeside(name=path.stem.replace("-", " "), slug=path.stem, kind=expected.get("kind", "creamed"))
            drafts = written(note, asked, demo.book, demo.facts)
            found.setdefault(name, {})[path.stem] = score(expected, [draft.text for draft in drafts.every], demo.book)
    return found


def test_there_are_so_many_of_each() -> None:
    assert [len(notes(name)) for name in SETS] == [30, 30, 12]


@pytest.mark.parametrize("part", ["lines", "others", ""])
def test_what_is_read_of_the_notes(scores: dict[str, dict[str, Score]], part: str) -> None:
    every = scores["first"] | scores["second"] | scores["third"]
    if not part:
        print("\n" + told(every))
    counted = {word: sum(each.counted(part)[word] for each in every.values()) for word in (RIGHT, FLAGGED, MISPLACED)}
    total = sum(counted.values())
    assert counted[MISPLACED] == 0, told(every)
    assert counted[RIGHT] + counted[FLAGGED] >= 0.95 * total
    assert counted[RIGHT] >= 0.8 * total, counted


@every("path", [path for name in SETS for path in notes(name)], ids=lambda path: path.stem)
def test_no_word_of_a_note_is_lost(demo: Loaded, path: Path) -> None:
    """Every word with a letter in it stands in the files or in what is said to be left out."""
    text = decoded(path.read_bytes())
    drafts = written(
        read_note(text, demo.book, demo.facts), SaidBeside(name="x", slug="x", kind="creamed"), demo.book, demo.facts
    )
    kept = " ".join((*(draft.text for draft in drafts.every), *drafts.left_out)).lower()
    lost = [word for word in words_of(text) if word not in kept]
    assert lost == []


# words for amounts come out as figures, headings as keys or files, packs are in their weight
SAID_OTHERWISE = frozenset(
    [
        "a",
        "an",
        "and",
        "of",
        "each",
        "the",
        "for",
        "to",
        "it",
        "in",
        "x",
        "or",
        "about",
        "approx",
        "half",
        "quarter",
        "quarters",
        "three",
        "two",
        "one",
        "four",
        "five",
        "six",
        "eight",
        "ten",
        "teaspoonful",
        "teaspoonfuls",
        "tablespoon",
        "tablespoons",
        "teaspoon",
        "teaspoons",
        "tbsp",
        "tsp",
        "cup",
        "cups",
        "c",
        "pound",
        "ounces",
        "oz",
        "g",
        "stick",
        "sticks",
        "large",
        "room",
        "level",
        "same",
        "fl",
        "us",
        "uk",
        "pint",
        "pt",
        "pinch",
        "packs",
        "block",
        "bag",
        "bars",
        "package",
        "tins",
        "lb",
        "small",
        "recipe",
        "dozen",
        "self",
        "raising",
        "sr",
        "r",
        "s",
        "ingredients",
        "ingredient",
        "amount",
        "method",
        "qty",
        "unit",
        "note",
        "directions",
        "instructions",
        "steps",
        "notes",
        "do",
        "how",
        "make",
        "need",
        "what",
        "you",
        "will",
        "this",
        "storage",
        "tip",
        "nb",
        "preparation",
        "work",
        "step",
        "sponge",
        "sponges",
        "cake",
        "deep",
    ]
)


def words_of(text: str) -> list[str]:
    words = re.findall(r"[^\W\d_]+", text.lower())
    return [word for word in words if word.isalpha() and word not in SAID_OTHERWISE]
