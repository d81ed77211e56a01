"""A technique's page."""

import re
from collections.abc import Callable
from dataclasses import replace

from markupsafe import escape

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.pages.base.page import Desk
from tinbook.pages.base.render import render
from tinbook.pages.base.shared import minutes
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.view import TechniqueView

N = "\u00a0"


def view(desk: Desk, people: int = 1) -> TechniqueView:
    made, flaws = read_model(
        Technique,
        {
            "name": "Stack",
            "purpose": "To stand.",
            "level": "steady hands",
            "tools": ["smoother", {"tool": "turntable", "shared": "yes"}],
            "materials": ["300 g sugarpaste", {"take": "5 dowels, 6 mm", "not food": "yes"}],
            "steps": [
                {"do": "Roll <1/2 sugarpaste>.", "hands on": "8 min"},
                {"do": "Dry.", "waiting": "12 h", "ahead": "2 days"},
            ],
        },
        "a technique",
    )
    assert made is not None, flaws
    return TechniqueView(slug="stack", technique=made, desk=desk, people=people)


def test_kit_is_multiplied(desk: Desk) -> None:
    assert [(line.figure, line.unit) for line in view(desk, 3).materials] == [("900", "g"), ("15", "")]
    assert [tool.count for tool in view(desk, 3).tools] == [3, 1]


def test_amounts_in_steps(desk: Desk) -> None:
    pieces = view(desk).steps[0].pieces
    assert [(piece.text, piece.amount) for piece in pieces] == [("Roll ", ""), ("sugarpaste", f"150{N}g"), (".", "")]


def test_what_is_not_food_is_counted(desk: Desk) -> None:
    assert view(desk, 2).not_food == "10 dowels"


def test_the_page_says_what_a_sheet_says(filled: Callable[[str], str], demo: Loaded) -> None:
    text = filled("techniques/stack-two-tiers")
    plain = re.sub(r"</?span[^>]*>", "", text)
    assert "2 cake cards and 1 cake drum.</b> Remove before serving." in plain
    assert "Not edible: 5 dowels.</b> Count in, count out" in plain
    assert "<strong>milk</strong>" in text and "<strong>wheat</strong>" not in text
    assert "Unknown does not mean “free from”" in text
    assert "<b>If made with</b> Lighthouse Madeira: wheat, egg and milk" in text
    assert f'aria-label="Code for {demo.book.house.address}/techniques/stack-two-tiers/"' in text
    for window in ("Can be done", "Keeps"):
        assert window in text


def test_no_code_without_an_address(desk: Desk) -> None:
    house = desk.book.house.model_copy(update={"address": None})
    bare = view(replace(desk, book=replace(desk.book, house=house)))
    assert (bare.address, bare.code) == ("", "")
    assert "<svg" in view(desk).code


def test_a_step_in_ounces(desk: Desk) -> None:
    (_, amount, _), _ = (step.pieces for step in replace(view(desk), measure="ounces").steps)
    assert amount.amount == f"5¼{N}oz"


def test_times_are_named(desk: Desk) -> None:
    assert dict(view(desk).times) == {"Hands on": f"8{N}min", "Waiting": f"12{N}h"}


def test_times_of_the_demo_add_up(demo: Loaded, desk: Desk) -> None:
    for slug, technique in demo.book.techniques.items():
        ends = [(step.hands_on.low.base, step.hands_on.high.base) for step in technique.steps if step.hands_on]
        told = dict(TechniqueView(slug=slug, technique=technique, desk=desk).times)["Hands on"]
        assert told == minutes(sum(low for low, _ in ends), sum(high for _, high in ends)), slug


def test_links_go_both_ways(filled: Callable[[str], str], demo: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        for technique in mixture.techniques:
            assert f'href="/techniques/{technique}#"' in filled(f"mixtures/{slug}")
            assert f'href="/mixtures/{slug}#"' in filled(f"techniques/{technique}")


def test_page_and_sheet_show_the_cautions_of_what_it_uses(demo: Loaded) -> None:
    """Each once, those of another technique by its name."""
    desk = Desk(demo.book, demo.facts, {})
    gull, sticks = (demo.book.techniques[slug] for slug in ("gull-for-the-side", "fix-a-figure-on-sticks"))
    page = render("parts/watch.html", view=TechniqueView(slug="gull-for-the-side", technique=gull, desk=desk))
    sheet = sheet_of("gull-for-the-side", desk)
    told = [(each.title, each.text) for each in sheet.cautions]
    for words in (*gull.cautions, *sticks.cautions):
        assert page.count(str(escape(words))) == 1
    assert [text for title, text in told if not title] == list(gull.cautions)
    named = f"From “{sticks.name}”"
    assert [text for title, text in told if title == named] == [" ".join(sticks.cautions)]
    assert page.count(f"<b>{named}.</b>") == 1
    titles = [title for title, _ in told if title]
    assert len(titles) == len(set(titles))
