"""The mix of a variation: which line a change means, and where a new one goes."""

from __future__ import annotations

from typing import Any

from tests.every import every

from tinbook.models import Book, Mixture, Variation, read_model
from tinbook.plans.variations.changed_mix import ChangedMix

MIX = ["300 g butter, soft", "300 g caster sugar", {"take": "4 eggs", "note": "beaten"}, "300 g self-raising flour"]
PARTS = [
    {"take": "200 g butter", "part": "pan"}, {"take": "50 g caster sugar", "part": "pan"},
    {"take": "150 g caster sugar", "part": "bowl"}, {"take": "300 g plain flour", "part": "bowl"},
]  # fmt: skip


def changed(book: Book, changes: list[Any], mix: list[Any] = MIX) -> ChangedMix:
    base, _ = read_model(Mixture, {"name": "Base", "kind": "creamed", "mix": mix}, "it")
    variation, flaws = read_model(Variation, {"name": "A", "from": "base", "change": changes}, "it")
    assert base is not None and variation is not None, flaws
    return ChangedMix(base.mix, variation.change, book)


def lines(made: ChangedMix) -> list[tuple[str, str, str | None, str | None]]:
    assert not made.flaws
    found = [slot.line for slot in made.standing if slot.line is not None]
    return [(f"{each.take.quantity.base:g} {each.take.name}", each.take.wanted, each.note, each.part) for each in found]


def test_lines_added_after_one_another(kitchen: Book) -> None:
    change = [{"add": "9 g honey", "after": "butter"}, {"add": "20 ml milk", "after": "butter"},
              {"add": "7 g oil"}, {"add": "5 g cocoa powder", "after": "honey"}, {"add": "1 g water", "before": "butter"}]  # fmt: skip
    assert [name for name, *_ in lines(changed(kitchen, change))] == [
        "1 water", "300 butter", "9 honey", "5 cocoa powder", "20 milk", "300 caster sugar", "4 eggs",
        "300 self-raising flour", "7 oil",
    ]  # fmt: skip


def test_a_line_added_goes_into_the_part_beside_it(kitchen: Book) -> None:
    change = [{"add": "20 g honey", "after": "butter"}, {"add": "9 g oil", "part": "pan"}, {"add": "5 g cocoa powder"},
              {"add": "3 g instant coffee", "part": "top"}]  # fmt: skip
    assert [(name, part) for name, _, _, part in lines(changed(kitchen, change, PARTS))] == [
        ("200 butter", "pan"), ("20 honey", "pan"), ("50 caster sugar", "pan"), ("9 oil", "pan"),
        ("150 caster sugar", "bowl"), ("300 plain flour", "bowl"), ("5 cocoa powder", "bowl"),
        ("3 instant coffee", "top"),
    ]  # fmt: skip


@every(
    ("change", "line"),
    [
        ({"swap": "sweet butter", "for": "oil"}, ("300 oil", "soft", None, None)),
        ({"swap": "butter", "for": "oil, warm"}, ("300 oil", "warm", None, None)),
        ({"swap": "butter", "for": "200 ml oil"}, ("200 oil", "", None, None)),
        ({"swap": "butter", "for": "oil", "note": "or lard"}, ("300 oil", "soft", "or lard", None)),
        ({"amount": "250 g butter"}, ("250 butter", "soft", None, None)),
        ({"amount": "250 g butter, melted"}, ("250 butter", "melted", None, None)),
    ],
)
def test_what_a_changed_line_keeps(kitchen: Book, change: dict[str, Any], line: tuple[Any, ...]) -> None:
    """By its own amount it is another line; by the old one's it is the same line of something else."""
    assert lines(changed(kitchen, [change]))[0] == line


def test_a_note_belongs_to_what_it_was_said_of(kitchen: Book) -> None:
    assert lines(changed(kitchen, [{"swap": "egg", "for": "egg yolk"}]))[2][2] == "beaten"
    assert lines(changed(kitchen, [{"swap": "egg", "for": "200 g honey"}]))[2][2] is None
    assert lines(changed(kitchen, [{"amount": "5 eggs"}]))[2][2] == "beaten"


def test_one_of_two_lines_by_its_part(kitchen: Book) -> None:
    made = changed(kitchen, [{"leave out": "caster sugar", "part": "pan"}], PARTS)
    assert [name for name, *_ in lines(made)] == ["200 butter", "150 caster sugar", "300 plain flour"]
    (flaw,) = changed(kitchen, [{"leave out": "caster sugar"}], PARTS).flaws
    assert flaw.path == ("change", 0, "leave out") and "bowl" in flaw.hint
    (flaw,) = changed(kitchen, [{"leave out": "butter"}], [*MIX, "20 g butter"]).flaws
    assert flaw.hint == "write this one out in full as a mixture of its own"


def test_a_line_left_out_still_holds_its_place(kitchen: Book) -> None:
    change = [{"leave out": "caster sugar"}, {"add": "280 g honey", "after": "caster sugar"}]
    assert [name for name, *_ in lines(changed(kitchen, change))][:3] == ["300 butter", "280 honey", "4 eggs"]


def test_every_slip_is_told(kitchen: Book) -> None:
    found = changed(kitchen, [{"leave out": "sand"}, {"swap": "egg"}, {"amount": "3 g gravel"}]).flaws
    assert [flaw.path for flaw in found] == [("change", 0, "leave out"), ("change", 1, "swap"), ("change", 2, "amount")]
