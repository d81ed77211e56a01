"""Pictures on a page: drawings say what they show, photos have their sizes, nothing breaks out of its words."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser
from typing import Any

import pytest

from tinbook.models import Book, Copy, PictureFile, Technique, read_model
from tinbook.pages.base.pictures import PictureView, drawing, loose_pictures, photo_address, picture_view
from tinbook.pages.base.render import render

SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" width="9" height="9">'
    '<path id="tb-hull-1a-0" d="M0 0"/><use href="#tb-hull-1a-0"/></svg>'
)
HULL = PictureFile(file="hull.svg", kind="drawing", width=9, height=9, svg=SVG, prefix="tb-hull-1a-", inked=True)
QUAY = PictureFile(
    file="quay.jpg",
    kind="photo",
    width=1600,
    height=800,
    copies=(Copy("quay.a.jpg", 1000, 500, b"a"), Copy("quay.b.jpg", 1600, 800, b"b")),
)
NASTY = "A \"hull\" <b onclick='x'> & {{ 7 * 7 }}"


class Reader(HTMLParser):
    """Elements with their attributes, and the words between them."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.words = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.words += data

    def one(self, tag: str) -> dict[str, str | None]:
        (only,) = (attributes for name, attributes in self.found if name == tag)
        return only


@pytest.fixture
def technique() -> Callable[..., Technique]:
    def made(*pictures: dict[str, Any], steps: Any = ("Look.",)) -> Technique:
        data = {"name": "Look", "purpose": "To see.", "steps": list(steps), "pictures": list(pictures)}
        model, flaws = read_model(Technique, data, "it")
        assert model is not None, flaws
        return model

    return made


@pytest.fixture
def book(kitchen: Book) -> Book:
    return replace(kitchen, pictures={"hull.svg": HULL, "quay.jpg": QUAY})


def shown(view: PictureView | None) -> Reader:
    assert view is not None
    return Reader(render("parts/picture.html", picture=view, link=lambda address, anchor="": f"../../{address}"))


def test_a_drawing_stands_in_the_page(technique: Callable[..., Technique], book: Book) -> None:
    view = picture_view(technique({"file": "hull.svg", "alt": NASTY, "shows": NASTY}), "hull.svg", book)
    assert view and view.is_drawing
    page = shown(view)
    svg = page.one("svg")
    assert (svg["role"], svg["aria-label"], svg["class"]) == ("img", NASTY, "tb-inked")
    assert page.words.strip() == NASTY
    assert [name for name, _ in page.found] == ["figure", "svg", "path", "use", "figcaption"]


def test_a_photo_has_its_sizes(technique: Callable[..., Technique], book: Book) -> None:
    view = picture_view(technique({"file": "quay.jpg", "alt": NASTY}), "quay.jpg", book)
    assert view and not view.is_drawing
    page = shown(view)
    photo = page.one("img")
    assert photo["alt"] == NASTY
    assert photo["src"] == "../../pictures/quay.b.jpg"
    assert photo["srcset"] == "../../pictures/quay.a.jpg 1000w, ../../pictures/quay.b.jpg 1600w"
    assert (photo["width"], photo["height"], photo["loading"]) == ("1600", "800", "lazy")
    assert [name for name, _ in page.found] == ["figure", "img"]


def test_the_same_drawing_twice_on_a_page_has_other_ids(technique: Callable[..., Technique], book: Book) -> None:
    given = technique({"file": "hull.svg", "alt": "A hull."})
    once, again = (picture_view(given, "hull.svg", book, nth) for nth in (0, 1))
    assert once and again
    ids = [set(re.findall(r'id="([^"]+)"', view.svg)) for view in (once, again)]
    assert ids[0] and ids[1] and not ids[0] & ids[1]
    for view, own in zip((once, again), ids, strict=True):
        assert set(re.findall(r'href="#([^"]+)"', view.svg)) == own


def test_only_what_the_technique_lists_and_the_book_holds(technique: Callable[..., Technique], book: Book) -> None:
    given = technique({"file": "hull.svg", "alt": "A hull."}, {"file": "held-back.svg", "alt": "Held back."})
    assert picture_view(given, "quay.jpg", book) is None
    assert picture_view(given, "held-back.svg", book) is None


def test_pictures_that_no_step_shows(technique: Callable[..., Technique], book: Book) -> None:
    given = technique(
        {"file": "hull.svg", "alt": "A hull."},
        {"file": "quay.jpg", "alt": "A quay."},
        {"file": "held-back.svg", "alt": "Held back."},
        steps=[{"do": "Look.", "picture": "hull.svg"}],
    )
    assert [view.alt for view in loose_pictures(given, book)] == ["A quay."]


def test_a_drawing_with_colours_of_its_own_lies_on_white() -> None:
    assert 'class="tb-lit"' in drawing(replace(HULL, inked=False), "A hull.")


def test_where_a_photo_lies() -> None:
    assert photo_address(QUAY.copies[0]) == "pictures/quay.a.jpg"
