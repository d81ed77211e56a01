"""The sheet of a technique: its list of what goes along, and its sums."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields

from tinbook.models import House
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.sheet import SheetCake, TechniqueSheet, sheet_of
from tinbook.pages.technique.sheet_file import Dress, sheet_page

TOKENS = ':root {\n  --ink: #10272F;\n}\n[data-md-color-scheme="slate"] {\n  --ink: #EDF3F2;\n}\n'
DRESS = Dress(TOKENS, b"words", b"figures")


def bare(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_the_list_of_what_goes_along() -> None:
    """A snapshot: whoever adds to it has to mean it."""
    assert [field.name for field in fields(TechniqueSheet)] == [
        "slug", "house", "name", "purpose", "people", "leads", "times", "windows", "materials", "tools", "cakes", "contains", "unknown", "made_with", "cross_contact", "steps", "pictures", "checks", "faults",
        "not_food", "taken_away", "counted", "cautions", "tips", "address", "code",
    ]  # fmt: skip
    assert [field.name for field in fields(SheetCake)] == [
        "cake", "shown", "total", "ready", "heavy", "high", "drawings", "table", "colours", "templates",
    ]  # fmt: skip


def test_a_sheet_for_one(sheet_desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk())
    assert [(name, bare(words)) for name, words in sheet.leads] == [
        ("Level:", "practised"), ("Makes", "one tier"),
    ]  # fmt: skip
    assert [(name, bare(words)) for name, words in sheet.times] == [
        ("Hands on", "5–7 min"), ("Waiting", "12 h"), ("Can be done ahead", "5–7 min"),
    ]  # fmt: skip
    assert [(bare(row.amount), row.name, row.not_food) for row in sheet.materials] == [
        ("5", "Dowels", True), ("300 g", "Sugarpaste", False), ("20 g", "Sugar pearls", False), ("100 g", "Butter", False),
    ]  # fmt: skip
    assert [(row.amount, row.name) for row in sheet.tools] == [("", "level"), ("2 ×", "cutter")]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 150 g sugarpaste."
    assert [piece.is_amount for piece in sheet.steps[0].words] == [False, True, False, False]
    assert sheet.people == ""


def test_a_sheet_for_three_multiplies_all_but_what_is_shared(sheet_desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk(), 3)
    assert [bare(row.amount) for row in sheet.materials] == ["15", "900 g", "60 g", "100 g"]
    assert [row.wanted for row in sheet.materials] == ["15 cm", "", "", "to share"]
    assert [row.amount for row in sheet.tools] == ["", "6 ×"]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 450 g sugarpaste."
    assert "3 people" in sheet.people
    assert (sheet.not_food, sheet.counted) == ("15 dowels", ("15 dowels (15 cm): all out and counted",))


def test_an_oven_in_a_step_has_the_house_own_dial(sheet_desk: Callable[..., Desk], house: Callable[..., House]) -> None:
    steps = [{"do": "Dry the nuts in the oven at 120 °C.", "hands on": "2 min"}]
    sheet = sheet_of("set-dowels", sheet_desk(house(oven={"kind": "fan"}), steps=steps))
    said = "".join(bare(piece.text) for piece in sheet.steps[0].words)
    assert said == "Dry the nuts in the oven at 120 °C (100 °C fan on this oven's dial)."


def test_what_must_be_watched(sheet_desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk())
    titles = [caution.title for caution in sheet.cautions]
    assert sheet.cautions[0].text == "Tell whoever cuts."
    assert any("Small, hard" in title for title in titles), "sugar pearls choke a small child"
    assert any("Dowels" in title for title in titles)
    assert sheet.counted == ("5 dowels (15 cm): all out and counted",)
    plain = sheet_of(
        "set-dowels", sheet_desk(materials=[{"take": "300 g butter"}], cautions=[], steps=["Look."], tools=[])
    )
    assert not plain.cautions and not plain.not_food and not plain.counted


def test_boards_and_cards_are_taken_away_and_told_once(sheet_desk: Callable[..., Desk]) -> None:
    cards = [{"take": f"1 cake card, round {size} cm", "not food": "yes"} for size in (15, 20)]
    sheet = sheet_of("set-dowels", sheet_desk(materials=[*cards, {"take": "1 ribbon", "not food": "yes"}], cautions=[]))
    assert (sheet.not_food, sheet.taken_away) == ("", "2 cake cards and 1 ribbon")
    assert sheet.counted == (
        "1 cake card (round 15 cm): removed", "1 cake card (round 20 cm): removed", "1 ribbon: removed",
    )  # fmt: skip
    assert not sheet.cautions, "no dowels, no caution of dowels"
    html = sheet_page(sheet, DRESS)
    assert "Not edible: 2 cake cards and 1 ribbon.</b> Remove before serving." in html and "Count in" not in html


def test_allergens_go_along_and_unknown_is_never_free(sheet_desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk())
    assert [(each.title, each.text) for each in sheet.contains] == [("milk", "butter")]
    assert sheet.unknown == "sugarpaste and sugar pearls"
    html = sheet_page(sheet, DRESS)
    assert "<b>milk</b> (butter)" in html and "Unknown does not mean" in html
    none = sheet_of("set-dowels", sheet_desk(materials=["100 g caster sugar"], steps=["Look."]))
    assert (none.contains[0].text, none.unknown) == (
        "None of the fourteen allergens is listed, but that does not make the ingredients “free from”: check the packets",
        "",
    )
    empty = sheet_of("set-dowels", sheet_desk(materials=[], steps=["Look."]))
    assert (empty.contains, empty.unknown) == ((), "")
    assert "Contains:" not in sheet_page(empty, DRESS)


def test_amounts_are_in_the_measure_of_the_house(sheet_desk: Callable[..., Desk], house: Callable[..., House]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk(house(measures="ounces")))
    assert [bare(row.amount) for row in sheet.materials] == ["5", "10½ oz", "¾ oz", "3½ oz"]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 5¼ oz sugarpaste."


def test_windows_of_a_step(sheet_desk: Callable[..., Desk]) -> None:
    step = {"do": "Dry.", "ahead": "2 days", "stands": "12 h", "keeps": "3 days"}
    (one,) = sheet_of("set-dowels", sheet_desk(steps=[step])).steps
    assert [bare(window) for window in one.windows] == [
        "Can be done 2 days ahead.", "Must be left to stand for at least 12 h.", "Keeps for 3 days.",
    ]  # fmt: skip
