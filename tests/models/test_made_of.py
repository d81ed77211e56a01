"""What stands on a packet, read as it is printed; and lists that cannot be read, each with what to write instead."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.models import Card, read_model
from tinbook.models.made_of import PackPart, read_made_of
from tinbook.units import METRIC, Misread


def plain(part: PackPart) -> object:
    """A part as its name, or its name and what is in it."""
    return (part.name, *map(plain, part.parts)) if part.parts else part.name


@every(
    ("text", "wanted"),
    [
        ("sugar", ["sugar"]),
        ("sugar, salt.", ["sugar", "salt"]),
        ("vegetable fat (palm, rapeseed)", [("vegetable fat", "palm", "rapeseed")]),
        ("emulsifier: lecithin (soya), salt", [("emulsifier", ("lecithin", "soya")), "salt"]),
        ("chips [sugar, milk powder (milk)]; salt", [("chips", "sugar", ("milk powder", "milk")), "salt"]),
        ("mono- and diglycerides of fatty acids", ["mono- and diglycerides of fatty acids"]),
        ("fat 1,5 %", ["fat"]),
    ],
)
def test_it_is_read_as_printed(text: str, wanted: list[object]) -> None:
    assert [plain(part) for part in read_made_of(text).parts] == wanted


@every(
    ("text", "percent"),
    [("sugar 60 %, salt", 60.0), ("sugar (60 %), salt", 60.0), ("jam (sugar, fruit) 12.5%", 12.5),
     ("jam 12 % (sugar, fruit)", 12.0), ("fat 1,5 %", 1.5), ("sugar", None)],
)  # fmt: skip
def test_percentages(text: str, percent: float | None) -> None:
    assert read_made_of(text).parts[0].percent == percent


def test_itself_is_made_of_nothing_else() -> None:
    assert read_made_of("itself").itself and not read_made_of("sugar").itself


@every(
    ("text", "marked", "message", "hint"),
    [
        ("sugar,, salt", ",", "there is nothing between these commas", "take out one"),
        ("sugar, ", ",", "there is nothing between these commas", "take out one"),
        ("sugar (salt", "(", "this bracket is never closed", 'write a ")"'),
        ("sugar) salt", ")", "this bracket closes nothing", "take it out"),
        ("sugar (salt) and water", " and water", "words after a bracket", "put a comma"),
        ("fat (palm,, rape)", ",", "there is nothing between these commas", "take out one"),
        ("fat ()", "", "there is nothing between these commas", "take out one"),
        ("Ingredients: sugar", "Ingredients:", 'the word "ingredients" is not one of them', "leave it out"),
        ("sugar, may contain nuts", "may contain", "is not something it is made of", "notes"),
        ("sugar, traces of nuts", "traces of", "is not something it is made of", "notes"),
        ("sugar 130 %", "sugar 130 %", "130 % is more than all of it", "look at the packet"),
        ("sugar 70 %, fat 60 %", "sugar 70 %, fat 60 %", "come to more than 100", "look at the packet"),
        ("sugar 20 %, fat 40 %", "fat", 'there is more of "fat" than of "sugar"', "keep its order"),
        ("12", "12", "there is no name here", "write its name"),
        (": lecithin", ":", "there is no name here", "write its name"),
        ("emulsifier:", "", "there is nothing between these commas", "take out one"),
        ("a (b (c (d (e))))", "e", "these brackets go too deep", "as the packet prints it"),
        ("sugar and " * 9, ("sugar and " * 9).strip(), "too long for one thing", "put commas"),
    ],
)
def test_what_cannot_be_read(text: str, marked: str, message: str, hint: str) -> None:
    with pytest.raises(Misread) as told:
        read_made_of(text)
    assert message in told.value.message and hint in told.value.hint
    assert text[told.value.start : told.value.end].strip() == marked.strip() or not marked


@every(
    ("value", "message"),
    [
        ([{"vegetable fat": ["palm"]}], "a colon goes in quotes, or as brackets"),
        (["sugar", "fat (palm"], 'this bracket is never closed (at "(")'),
        ([], "there is nothing between these commas"),
        ({"sugar": "x"}, "a plain value goes here"),
        ("", "there is nothing between these commas"),
        ([["sugar"]], "a single value goes here, not a list"),
    ],
)
def test_what_yaml_makes_of_it(value: object, message: str) -> None:
    card, flaws = read_model(Card, {"made of": value}, "the card", METRIC)
    assert card is None and message in flaws[0].message and flaws[0].path[0] == "made of"


def test_a_list_taken_apart_at_its_commas_is_put_together() -> None:
    card, flaws = read_model(Card, {"made of": ["sugar", "fat (palm", "rapeseed)"]}, "the card", METRIC)
    assert card is not None and card.made_of is not None and not flaws
    assert [plain(part) for part in card.made_of.parts] == ["sugar", ("fat", "palm", "rapeseed")]
