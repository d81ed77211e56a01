"""A page and its late parts."""

from dataclasses import dataclass

from tinbook.pages.base.page import Page
from tinbook.pages.lists.lists import BrokenView, Entry, Group, ListView


@dataclass(frozen=True)
class Nothing:
    pass


def test_late_parts_are_filled_with_their_item() -> None:
    groups = (Group("One", "", (Entry("a", "A", "1", "first"),)), Group("Two", "", (Entry("b", "B", "2", "second"),)))
    page = Page("list", "List", "list", ListView("List", "Two groups.", groups))
    made = page.fill("<!--tinbook:parts/list 1-->", lambda address, anchor="": f"/{address}")
    assert 'href="/b"' in made and "second" in made and "first" not in made


def test_other_comments_stay() -> None:
    page = Page("x", "X", "broken", BrokenView("X", ()))
    assert page.fill("<!-- mine -->", lambda address, anchor="": "") == "<!-- mine -->"
