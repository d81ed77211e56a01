"""A sheet as files: a page that asks for nothing, and plain data for the printer."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from tinbook.models import House
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.paper import PaperPage
from tinbook.pages.technique.parts import PartsTable
from tinbook.pages.technique.sheet import SheetCake, sheet_of
from tinbook.pages.technique.sheet_file import Dress, as_plain, picture_files, sheet_page

NASTY = 'A "b" <script>alert(1)</script> & {{ 7 * 7 }} #emph[x] *y*'
TOKENS = ':root {\n  --ink: #10272F;\n}\n[data-md-color-scheme="slate"] {\n  --ink: #EDF3F2;\n}\n'
DRESS = Dress(TOKENS, b"words", b"figures")


class Asked(HTMLParser):
    """What a page would ask for, and all its attributes."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.attributes: list[tuple[str, str, str]] = []
        self.tags: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(tag, name, value or "") for name, value in attrs]


def test_the_page_asks_for_nothing(sheet_desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", sheet_desk()), DRESS)
    page = Asked(html)
    for tag, name, value in page.attributes:
        if name in ("src", "href", "srcset", "action", "data", "poster"):
            assert value.startswith(("data:", "#")), (tag, name, value)
        assert not name.startswith("on")
    assert not {"iframe", "object", "embed", "form", "base", "video", "audio"} & set(page.tags)
    assert all(found.startswith("data:") for found in re.findall(r"url\(([^)#]*)", html) if found)
    assert "@import" not in html
    assert ("html", "lang", "en-GB") in page.attributes
    assert (page.tags.count("h1"), page.tags.count("script"), page.tags.count("style")) == (1, 1, 1)


def test_its_policy_lets_in_its_own_style_and_script_only(sheet_desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", sheet_desk()), DRESS)
    policy = next(value for tag, name, value in Asked(html).attributes if "default-src" in value)
    parts = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert parts["default-src"] == "'none'"
    for tag, key in (("style", "style-src"), ("script", "script-src")):
        (inside,) = re.findall(f"<{tag}>(.*?)</{tag}>", html, re.DOTALL)
        assert parts[key] == f"'sha256-{base64.b64encode(hashlib.sha256(inside.encode()).digest()).decode()}'"


def test_words_are_words(sheet_desk: Callable[..., Desk]) -> None:
    nasty = sheet_desk(name=NASTY, purpose=NASTY, makes=NASTY, checks=[NASTY], cautions=[NASTY], tips=[NASTY], tools=[NASTY],
                 faults=[{"fault": NASTY, "cure": NASTY}], steps=[{"do": NASTY, "done": NASTY}],
                 pictures=[{"file": "quay.jpg", "alt": NASTY, "shows": NASTY}])  # fmt: skip
    html = sheet_page(sheet_of("set-dowels", nasty), DRESS)
    page = Asked(html)
    assert page.tags.count("script") == 1 and "49" not in html
    assert ("img", "alt", NASTY) in page.attributes


def test_it_wears_the_colours_of_the_book(sheet_desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", sheet_desk()), DRESS)
    assert "--ink: #10272F;" in html and "--ink: #EDF3F2;" in html
    assert base64.b64encode(b"words").decode() in html and base64.b64encode(b"figures").decode() in html
    with pytest.raises(ValueError, match="no dark look"):
        sheet_page(sheet_of("set-dowels", sheet_desk()), replace(DRESS, tokens=TOKENS.replace("slate", "night")))


def test_templates_stand_on_pages_of_their_own(sheet_desk: Callable[..., Desk]) -> None:
    page = PaperPage(key="x", title="A pennant", width_mm=215.9, height_mm=279.4, lines=(), words=())
    wide = PaperPage(key="y", title="A strip", width_mm=279.4, height_mm=215.9, lines=(), words=())
    plain = sheet_of("set-dowels", sheet_desk())
    assert plain.cakes == () and plain.shown is None
    table = PartsTable(sizes=(), rows=(), sums=(), notes=())
    cakes = (
        SheetCake(
            cake="round 15 cm",
            shown=False,
            total="10",
            ready=(),
            heavy="",
            high="",
            drawings=(),
            table=table,
            colours=(),
            templates=(page,),
        ),
        SheetCake(
            cake="round 20 cm",
            shown=True,
            total="20",
            ready=(),
            heavy="",
            high="",
            drawings=(),
            table=table,
            colours=(),
            templates=(wide, page),
        ),
    )
    sheet = replace(plain, cakes=cakes)
    html = sheet_page(sheet, DRESS)
    assert html.count('<section class="true wide" data-cake="round 20 cm"><svg') == 1
    assert html.count('<section class="true" data-cake="round 20 cm"><svg') == 1
    assert html.count('<section class="true" data-cake="round 15 cm" hidden><svg') == 1
    assert "<option>round 15 cm</option><option selected>round 20 cm</option>" in html
    assert "@page upright { size: 215.9mm 279.4mm" in html and "@page sideways { size: 279.4mm 215.9mm" in html
    (told,) = as_plain(sheet)["cakes"]
    assert told["cake"] == "round 20 cm" and "templates" not in told, "one cake on paper, templates a PDF of their own"
    assert "<select" not in sheet_page(replace(plain, cakes=cakes[1:]), DRESS), "nothing to choose from"


def test_a_purpose_in_markdown_is_read(sheet_desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk(purpose="So that it **stands**,\nand *travels*."))
    assert "<p>So that it <b>stands</b>, and <em>travels</em>.</p>" in sheet_page(sheet, DRESS)
    assert as_plain(sheet)["purpose"][0][1] == {"text": "stands", "strong": True, "slanted": False}


def test_plain_data_for_the_printer(sheet_desk: Callable[..., Desk], house: Callable[..., House]) -> None:
    sheet = sheet_of("set-dowels", sheet_desk(house(address="https://book.example")))
    told = json.loads(json.dumps(as_plain(sheet)))
    assert told["steps"][1]["pictures"][0]["name"] in picture_files(sheet)
    assert "content" not in told["pictures"][0] and "element" not in told["pictures"][0]
    assert told["code"].startswith("<svg") and told["address"] == "https://book.example/techniques/set-dowels/"
