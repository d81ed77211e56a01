"""The page of the house's colours: every colour with its recipe, its swatch, and the words of the law where one is due."""

from __future__ import annotations

from collections.abc import Callable

from tinbook.loading import Loaded
from tinbook.pages.at_a_glance.colours import ColoursView
from tinbook.pages.base.page import Desk

PHRASE = "may have an adverse effect on activity and attention in children"
"""Regulation (EC) 1333/2008, Annex V, word for word."""
SIX = {"E102", "E104", "E110", "E122", "E124", "E129"}


def test_every_colour_is_there_and_those_of_the_law_are_flagged(demo: Loaded) -> None:
    cards = ColoursView(Desk(demo.book, demo.facts, {})).cards
    assert [card.name.lower() for card in cards] == list(demo.book.colours)
    for card, colour in zip(cards, demo.book.colours.values(), strict=True):
        held = SIX & set(colour.additives or ())
        assert bool(card.law) == bool(held) and all(key in card.law for key in held)
        assert not held or card.law.endswith(PHRASE)
        assert card.swatch == colour.swatch and card.pots
        assert float(card.contrast.split()[0]) >= 4.5
    assert sum(bool(card.law) for card in cards) == 2


def test_it_says_where_a_colour_is_used(filled: Callable[[str], str]) -> None:
    page = filled("colours")
    red = page[page.index("Lamp red") :]
    red = red[: red.index("</li>")]
    assert 'href="/techniques/lighthouse-for-the-front#"' in red and f"E129 (allura red): {PHRASE}" in red
    assert "check the law where you are" in page


def test_what_links_to_a_flagged_part_is_flagged(filled: Callable[[str], str]) -> None:
    for address in ("techniques/index", "techniques/lighthouse-for-the-front", "techniques/coil-of-rope"):
        page = filled(address)
        assert f"E129 (allura red): {PHRASE}" in page, address
