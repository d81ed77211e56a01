"""A page is described in a line of its own."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.pages.base.descriptions import DESCRIPTIONS, described
from tinbook.site import build_site

MOST = 160
"""Signs; what is longer is cut off where it is shown."""


def test_every_page_of_the_book_has_a_line_of_its_own(demo: Loaded) -> None:
    pages = build_site(demo.book, demo.facts, demo.broken).pages.values()
    lines = {page.address: described(page.template, page.title, "Lamp Room") for page in pages}
    assert len(set(lines.values())) == len(lines)
    assert {page.template for page in pages} <= set(DESCRIPTIONS)
    assert all(30 <= len(line) <= MOST and line.endswith(".") for line in lines.values())


def test_a_hand_written_page_goes_by_its_title() -> None:
    assert described("", "On the tablet", "Lamp Room") == "On the tablet, Lamp Room."
