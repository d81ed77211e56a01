"""A page and its late parts."""

from dataclasses import dataclass

from tinbook.pages.base.page import Page, Views
from tinbook.pages.lists.broken import BrokenView
from tinbook.pages.lists.lists import Entry, Group, ListView


@dataclass(frozen=True)
class Nothing:
    pass


def test_late_parts_are_filled_with_their_item() -> None:
    groups = (
        Group("One", "", (Entry(address="a", name="A", left="1", second="first"),)),
        Group("Two", "", (Entry(address="b", name="B", left="2", second="second"),)),
    )
    page = Page(
        address="list", title="List", template="list", view=ListView(title="List", lead="Two groups.", items=groups)
    )
    made = page.fill("<!--tinbook:parts/list 1-->", lambda address, anchor="": f"/{address}")
    assert 'href="/b"' in made and "second" in made and "first" not in made


def test_other_comments_stay() -> None:
    page = Page(address="x", title="X", template="broken", view=BrokenView("X", ()))
    assert page.fill("<!-- mine -->", lambda address, anchor="": "") == "<!-- mine -->"


def test_pages_of_one_view_share_what_it_works_out_until_another_view_comes() -> None:
    views, one, other = Views(), BrokenView("One", ()), BrokenView("One", ())
    copy = views.copy_of(one)
    assert copy == one and copy is not one
    assert views.copy_of(one) is copy
    assert views.copy_of(other) is not copy
    assert views.copy_of(one) is not copy
