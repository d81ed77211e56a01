"""From tin to tin, spelled: heads, the answer before any script, and what a factor goes by."""

import pytest

from tinbook.models import Book
from tinbook.pages.at_a_glance.tin_to_tin import answer, called, matrix, script_rows
from tinbook.pages.base.page import Desk
from tinbook.plans.base.shelf import TinFacts, shelf
from tinbook.tins import Tin, read_tin

N = "\u00a0"


def facts(book: Book, name: str) -> TinFacts:
    return next(row for row in shelf(book).tins if row.tin.name == name)


def test_heads_say_what_the_house_says(desk: Desk) -> None:
    tins = [(row.tin, row.owned) for row in shelf(desk.book).house]
    made = matrix("Factors", tins, tins, [[1.0] * len(tins)] * len(tins))
    sizes = {head.name: head.size for head in made.heads}
    assert made.unit == "cm"
    assert (sizes["round 20 cm"], sizes["rectangle 23 x 33 cm"], sizes["standard cups"]) == ("20", "23×33", "12 cups")
    assert sizes["number 1"] == f"no.{N}1"
    assert [head.name for head in made.heads if head.first] == ["square 15 cm", "rectangle 23 x 33 cm"]
    sold = [(Tin(shape="round", sizes_mm=(203.2,), sold="inches"), True)]
    in_inches = matrix("Factors", sold, sold, [[1.0]])
    assert (in_inches.heads[0].size, in_inches.heads[0].also, in_inches.unit) == ("8", f"20{N}cm", "in")


def test_the_answer_for_two_tins(desk: Desk) -> None:
    """225 over 176.7 cm², and 4 eggs times 1.78 are 7."""
    told = answer(facts(desk.book, "round 15 cm"), facts(desk.book, "round 20 cm"))
    assert (told.factor, told.said_eggs, told.becomes) == ("1.78", 4, 7)
    assert told.ladder == ((3, 5), (4, 7), (5, 9), (6, 11), (8, 14), (10, 18))
    assert (told.brim_old, told.brim_new) == (f"1.33{N}l", f"2.36{N}l")


@pytest.mark.parametrize(
    ("old", "new", "key"),
    [
        ("round 15 cm", "round 20 cm", "depth"),
        ("round 15 cm", "dome 15 cm", "both"),
        ("standard cups", "dome 15 cm", "share"),
    ],
)
def test_what_a_factor_goes_by_is_named(desk: Desk, old: str, new: str, key: str) -> None:
    by = answer(facts(desk.book, old), facts(desk.book, new)).by
    assert [each.key for each in by if each.told] == [key]


def test_cups_are_told_by_the_tray(desk: Desk) -> None:
    cups, cake = facts(desk.book, "standard cups"), facts(desk.book, "round 20 cm")
    assert called(cups.tin) == "12 standard cupcakes"
    assert cups.tray_ml == pytest.approx(12 * cups.compared_ml)
    assert answer(cake, cups).brim_new == f"{12 * cups.brim_ml / 1000:.2f}{N}l"


def test_the_browser_is_handed_rows_under_heads(desk: Desk) -> None:
    told = script_rows(shelf(desk.book).house, desk.book)
    assert all(len(row) == len(told["heads"]) for row in told["rows"])
    shares = {row[0]: row[told["heads"].index("share")] for row in told["rows"]}
    assert shares["dome 15 cm"] == 1 and shares["round 15 cm"] == 0
    deep = {row[0]: row[told["heads"].index("deep")] for row in told["rows"]}
    assert (deep["round 15 cm"], deep["rectangle 23 x 33 cm"], deep["dome 15 cm"]) == (f"7.5{N}cm", f"5{N}cm", "")
    compared = {row[0]: row[told["heads"].index("ml")] for row in told["rows"]}
    assert [len(compared[name]) for name in ("round 15 cm", "dome 15 cm", "standard cups")] == [3, 1, 1]
    assert called(read_tin("round 20 cm")[1]) == f"round 20{N}cm"
