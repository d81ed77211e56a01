"""One slip is told once: what only follows from it keeps its page back, and is told on that page alone."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book
from tinbook.loading.intake import Intake
from tinbook.models import Flaw, Technique

Write = Callable[..., Path]
PAGE = "mixtures/plain-sponge"


def edited(base: Mapping[str, str], name: str, *changes: tuple[str, str]) -> dict[str, str]:
    text = base[name]
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return {name: text}


def codes(loaded: Loaded) -> list[str]:
    return [problem.code for problem in loaded.problems]


CARDS = "house/ingredients.yaml"
MIX = "mixtures/plain-sponge.yaml"


@pytest.mark.parametrize(
    ("card", "line"),
    [
        ("egg", "6 eggs"),
        ("egg", "6 Egg"),
        ("caster sugar", "300 g superfine sugar"),
        ("caster sugar", "300 g Caster  sugar, sifted"),
    ],
)
def test_a_broken_card_keeps_back_what_it_is_in(write: Write, base: Mapping[str, str], card: str, line: str) -> None:
    files = edited(base, CARDS, (f"  {card}:\n", f"  {card}:\n    colour: blue\n"))
    files |= {"mixtures/one.yaml": f"name: One\nkind: syrup\nmakes: 1 kg\nmix:\n  - {line}\n"}
    files |= {"mixtures/other.yaml": "name: Other\nkind: syrup\nmakes: 1 kg\nmix:\n  - 1 kg butter\n"}
    loaded = load_book(write(files))
    assert codes(loaded) == ["unknown key"]
    assert set(loaded.broken) == {"mixtures/one", PAGE}
    (problem,) = loaded.broken["mixtures/one"]
    assert problem.code == "follows"
    assert problem.place.text == f"  - {line}"
    shown = problem.place.text[problem.place.column - 1 :][: problem.place.width]
    assert shown == line.split(",")[0].split(" ", 1 if line.startswith("6") else 2)[-1]
    assert problem.message == f'the card for "{shown}" has a mistake in it', "as it is written there"
    assert set(loaded.book.mixtures) == {"other"}
    assert card not in loaded.book.cards
    assert len(loaded.book.cards) == 4


def test_a_mixture_with_a_slip_of_its_own_too_tells_that_one(write: Write, base: Mapping[str, str]) -> None:
    files = edited(base, CARDS, ("[milk]", "[mlik]")) | edited(base, MIX, ("6 eggs", "6 egs"))
    loaded = load_book(write(files))
    assert [(problem.place.file, problem.code) for problem in loaded.problems] == [
        ("recipes/house/ingredients.yaml", "unknown word"),
        ("recipes/mixtures/plain-sponge.yaml", "unknown ingredient"),
    ]
    assert [problem.code for problem in loaded.broken[PAGE]] == ["follows", "unknown ingredient"]


@pytest.mark.parametrize(
    "files",
    [
        {CARDS: "ingredients: ["},
        {CARDS: "- butter\n"},
        {CARDS: b"\xff"},
        {CARDS: "ingredients: butter\n"},
        {CARDS: "ingredient: {butter: {}}\n"},
        {CARDS: None, "house/ingredients.yml": "ingredients: {}\n"},
        {CARDS: None, "house/ingredient.yaml": "ingredients: {}\n"},
    ],
    ids=["unclosed", "a list", "no text", "one text", "misspelled", "other ending", "other name"],
)
def test_cards_that_cannot_be_read_do_not_drown_the_book(write: Write, files: Mapping[str, str | bytes | None]) -> None:
    loaded = load_book(write(files))
    assert len(loaded.problems) == 1
    assert {problem.message for problem in loaded.broken[PAGE]} == {"the ingredients' cards cannot be read"}
    assert not loaded.book.mixtures
    assert "line-a-tin" in loaded.book.techniques


def test_without_a_file_of_cards_each_ingredient_is_told(write: Write) -> None:
    loaded = load_book(write({CARDS: None}))
    assert codes(loaded) == ["unknown ingredient"] * 4
    assert loaded.broken[PAGE] == loaded.problems


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("    allergens: [milk]\n", "    allergens: [milk]\n    allergens: none\n", "duplicate"),
        ("allergens: [milk]", "allergens: &a [milk]", "anchor"),
        ("weighs as: butter", "weighs as: !a butter", "tag"),
        ("  lavender:\n", "  butter:\n", "duplicate"),
        ("  lavender:\n", "  'butter':\n", "duplicate"),
        ("  lavender:\n", "  lavender:\n    allergens: [milk]\n", "duplicate"),
    ],
)
def test_a_card_read_in_doubt_is_not_used(write: Write, base: Mapping[str, str], old: str, new: str, code: str) -> None:
    """Of a card written twice nobody can say which allergens it has."""
    loaded = load_book(write(edited(base, CARDS, (old, new))))
    assert codes(loaded) == [code]
    spoilt = "lavender" if old == "  lavender:\n" and "butter" not in new else "butter"
    assert spoilt not in loaded.book.cards
    assert ("plain-sponge" in loaded.book.mixtures) == (spoilt == "lavender")


def test_a_name_lost_in_reading_may_be_any_name(write: Write, base: Mapping[str, str]) -> None:
    loaded = load_book(write(edited(base, CARDS, ("  butter:", '  "butter ":'))))
    assert codes(loaded) == ["name"]
    assert PAGE in loaded.broken


def test_a_name_on_two_cards_leads_to_neither(write: Write, base: Mapping[str, str]) -> None:
    files = edited(base, CARDS, ("  lavender:\n", "  lavender:\n    also: [superfine sugar]\n"))
    files |= {"mixtures/one.yaml": "name: One\nkind: syrup\nmakes: 1 kg\nmix:\n  - 1 kg superfine sugar\n"}
    loaded = load_book(write(files))
    assert codes(loaded) == ["twice"]
    assert set(loaded.broken) == {"mixtures/one"}


CUP = "name: Cups\nkind: syrup\nmakes: 1 kg\nmix:\n  - 1 cup butter\n  - 2 fl oz superfine sugar\n"


@pytest.mark.parametrize("house", ["cup: US cups\n", "cup: [\n", "cup: US cup\ncup: UK cup\n", "Cup: US cup\n"])
def test_whose_cup_is_not_asked_while_the_house_is_broken(write: Write, base: Mapping[str, str], house: str) -> None:
    name = "house/house.yaml"
    loaded = load_book(write({name: base[name] + house, "mixtures/cups.yaml": CUP}))
    assert len(loaded.problems) == 1
    assert loaded.problems[0].place.file == "recipes/house/house.yaml"
    assert {problem.message for problem in loaded.broken["mixtures/cups"]} == {"which cup?", "which fluid ounce?"}


def test_a_broken_house_still_says_how_it_measures(write: Write, base: Mapping[str, str]) -> None:
    house = base["house/house.yaml"] + "cup: UK cup\neggs: US large\nspoon: Australian\nshelves: many\n"
    loaded = load_book(write({"house/house.yaml": house, "mixtures/cups.yaml": CUP}))
    assert [problem.place.line for problem in loaded.problems] == [6]
    read = loaded.book.house
    assert (read.name, read.cup, read.eggs, read.spoon) == ("Lamp Room house book", "UK cup", "US large", "Australian")
    assert "cups" in loaded.book.mixtures


@pytest.mark.parametrize("slip", ["eggs: UK larg\n", "eggs: US large\neggs: UK small\n", "eggs: !x US large\n"])
def test_what_the_house_says_in_doubt_is_not_taken(write: Write, base: Mapping[str, str], slip: str) -> None:
    loaded = load_book(write({"house/house.yaml": base["house/house.yaml"] + slip + "spoon: US\n"}))
    assert len(loaded.problems) == 1
    assert (loaded.book.house.eggs, loaded.book.house.spoon) == ("UK large", "US")


def test_whose_cup_is_asked_where_the_house_could_have_said(write: Write) -> None:
    loaded = load_book(write({"mixtures/cups.yaml": CUP}))
    assert [problem.message for problem in loaded.problems] == ["which cup?", "which fluid ounce?"]


def test_a_link_to_a_file_with_a_wrong_name_is_not_told_again(write: Write, base: Mapping[str, str]) -> None:
    name = "techniques/line-a-tin.yaml"
    loaded = load_book(write({name: None, "techniques/Line a Tin.yaml": base[name]}))
    assert codes(loaded) == ["file name"]


def test_a_book_of_another_format_is_told_so_and_nothing_else(write: Write) -> None:
    loaded = load_book(write({"house/house.yaml": "book: 2\nflag: blue\n", "mixtures/x.yaml": "a: b\n"}))
    assert [problem.message for problem in loaded.problems] == [
        'this version of Tinbook reads books in format 1, not "2"'
    ]
    assert not loaded.book.mixtures
    assert not loaded.broken


def test_a_flaw_is_put_at_its_place(write: Write) -> None:
    intake = Intake(write())
    address = "techniques/line-a-tin"
    data = intake.open(address)
    technique = intake.part(address, Technique, data, "a technique", ())
    assert technique is not None
    intake.tell(
        address,
        [
            Flaw(code="x", path=("steps", 0), message="message", hint="hint", start=4, end=7),
            Flaw(code="follows", path=(), message="m"),
        ],
    )
    (problem,) = intake.problems
    assert (problem.place.line, problem.place.column, problem.place.width) == (4, 9, 3)
    assert [found.code for found in intake.broken[address]] == ["x", "follows"]
