"""The sheet of a technique: its list of what goes along, its sums, and a page that asks for nothing."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Callable
from dataclasses import fields, replace
from html.parser import HTMLParser
from io import BytesIO
from typing import Any

import pytest
from PIL import Image

from tinbook.facts import Facts
from tinbook.models import Book, Copy, House, PictureFile, Technique, read_model
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.sheet import (
    Dress,
    SheetCake,
    TechniqueSheet,
    as_plain,
    picture_files,
    sheet_of,
    sheet_page,
)
from tinbook.pages.technique.true_size import PaperPage

NASTY = 'A "b" <script>alert(1)</script> & {{ 7 * 7 }} #emph[x] *y*'
LAMP = PictureFile(
    file="lamp.svg",
    kind="drawing",
    width=9,
    height=9,
    svg='<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>',
    prefix="x-",
)
TOKENS = ":root, [data-md-color-scheme] {\n  --ink: #10272F;\n}\n[data-md-color-scheme=slate] {\n  --ink: #EDF3F2;\n}\n"
DRESS = Dress(TOKENS, b"words", b"figures")
TECHNIQUE: dict[str, Any] = {
    "name": "Set dowels", "purpose": "So that it stands.", "level": "practised", "makes": "one tier",
    "tools": [{"tool": "level", "shared": "yes"}, {"tool": "cutter", "count": "2"}],
    "materials": [{"take": "5 dowels, 15 cm", "not food": "yes"}, {"take": "300 g sugarpaste"}, {"take": "20 g sugar pearls", "small hard": "yes"},
                  {"take": "100 g butter", "shared": "yes"}],
    "steps": [{"do": "Roll <1/2 sugarpaste>.", "hands on": "5-7 min", "ahead": "2 days"}, {"do": "Look.", "picture": "lamp.svg", "waiting": "12 h"}],
    "pictures": [{"file": "lamp.svg", "alt": "A lamp."}, {"file": "quay.jpg", "alt": "A quay.", "shows": "Low water."}],
    "checks": ["It is level."], "faults": [{"fault": "It leans.", "cure": "Trim it."}], "cautions": ["Tell whoever cuts."], "tips": ["Cut one more."],
}  # fmt: skip


@pytest.fixture
def quay() -> PictureFile:
    out = BytesIO()
    Image.new("RGB", (10, 8)).save(out, "JPEG")
    return PictureFile(
        file="quay.jpg", kind="photo", width=10, height=8, copies=(Copy("quay.a.jpg", 10, 8, out.getvalue()),)
    )


@pytest.fixture
def desk(kitchen: Book, facts: Facts, quay: PictureFile) -> Callable[..., Desk]:
    def made(house: House | None = None, **changes: Any) -> Desk:
        technique, flaws = read_model(Technique, {**TECHNIQUE, **changes}, "it")
        assert technique is not None, flaws
        pictures = {"lamp.svg": LAMP, "quay.jpg": quay}
        book = replace(kitchen, techniques={"set-dowels": technique}, pictures=pictures, house=house or kitchen.house)
        return Desk(book, facts, {})

    return made


def bare(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_the_list_of_what_goes_along() -> None:
    """A snapshot: whoever adds to it has to mean it."""
    assert [field.name for field in fields(TechniqueSheet)] == [
        "slug", "house", "name", "purpose", "people", "leads", "materials", "tools", "cakes", "contains", "unknown", "steps", "pictures", "checks", "faults",
        "not_food", "taken_away", "counted", "cautions", "tips", "address", "code",
    ]  # fmt: skip
    assert [field.name for field in fields(SheetCake)] == [
        "cake", "shown", "total", "heavy", "parts", "colours", "templates",
    ]  # fmt: skip


def test_a_sheet_for_one(desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", desk())
    assert [(name, bare(words)) for name, words in sheet.leads] == [
        ("For", "practised"), ("Makes", "one tier"), ("Hands on", "5–7 min"), ("Waiting", "12 h"), ("Of it ahead", "5–7 min"),
    ]  # fmt: skip
    assert [(bare(row.amount), row.name, row.not_food) for row in sheet.materials] == [
        ("5", "Dowels", True), ("300 g", "Sugarpaste", False), ("20 g", "Sugar pearls", False), ("100 g", "Butter", False),
    ]  # fmt: skip
    assert [(row.amount, row.name) for row in sheet.tools] == [("", "level"), ("2 ×", "cutter")]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 150 g sugarpaste."
    assert [piece.is_amount for piece in sheet.steps[0].words] == [False, True, False, False]
    assert sheet.people == ""


def test_a_sheet_for_three_multiplies_all_but_what_is_shared(desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", desk(), 3)
    assert [bare(row.amount) for row in sheet.materials] == ["15", "900 g", "60 g", "100 g"]
    assert [row.wanted for row in sheet.materials] == ["15 cm", "", "", "to share"]
    assert [row.amount for row in sheet.tools] == ["", "6 ×"]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 450 g sugarpaste."
    assert "3 people" in sheet.people
    assert (sheet.not_food, sheet.counted) == ("15 dowels", ("15 dowels (15 cm): all out and counted",))


def test_what_must_be_watched(desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", desk())
    titles = [caution.title for caution in sheet.cautions]
    assert sheet.cautions[0].text == "Tell whoever cuts."
    assert any("Small, hard" in title for title in titles), "sugar pearls choke a small child"
    assert any("Dowels" in title for title in titles)
    assert sheet.counted == ("5 dowels (15 cm): all out and counted",)
    plain = sheet_of("set-dowels", desk(materials=[{"take": "300 g butter"}], cautions=[], steps=["Look."], tools=[]))
    assert not plain.cautions and not plain.not_food and not plain.counted


def test_boards_and_cards_are_taken_away_and_told_once(desk: Callable[..., Desk]) -> None:
    cards = [{"take": f"1 cake card, round {size} cm", "not food": "yes"} for size in (15, 20)]
    sheet = sheet_of("set-dowels", desk(materials=[*cards, {"take": "1 ribbon", "not food": "yes"}], cautions=[]))
    assert (sheet.not_food, sheet.taken_away) == ("", "2 × cake card and 1 ribbon")
    assert sheet.counted == (
        "1 cake card (round 15 cm): taken away", "1 cake card (round 20 cm): taken away", "1 ribbon: taken away",
    )  # fmt: skip
    assert not sheet.cautions, "no dowels, no caution of dowels"
    html = sheet_page(sheet, DRESS)
    assert "Not food: 2 × cake card and 1 ribbon.</b> Take away before serving." in html and "Count them in" not in html


def test_allergens_go_along_and_unknown_is_never_free(desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", desk())
    assert [(each.title, each.text) for each in sheet.contains] == [("milk", "butter")]
    assert sheet.unknown == "sugarpaste and sugar pearls"
    html = sheet_page(sheet, DRESS)
    assert "<b>milk</b> (butter)" in html and "Unknown is not free" in html
    none = sheet_of("set-dowels", desk(materials=["100 g caster sugar"], steps=["Look."]))
    assert (none.contains[0].text, none.unknown) == ("nothing named on the cards of its ingredients", "")
    empty = sheet_of("set-dowels", desk(materials=[], steps=["Look."]))
    assert (empty.contains, empty.unknown) == ((), "")
    assert "Contains:" not in sheet_page(empty, DRESS)


def test_amounts_are_in_the_measure_of_the_house(desk: Callable[..., Desk], house: Callable[..., House]) -> None:
    sheet = sheet_of("set-dowels", desk(house(measures="ounces")))
    assert [bare(row.amount) for row in sheet.materials] == ["5", "10½ oz", "¾ oz", "3½ oz"]
    assert "".join(bare(piece.text) for piece in sheet.steps[0].words) == "Roll 5¼ oz sugarpaste."


def test_a_purpose_in_markdown_is_read(desk: Callable[..., Desk]) -> None:
    sheet = sheet_of("set-dowels", desk(purpose="So that it **stands**,\nand *travels*."))
    assert "<p>So that it <b>stands</b>, and <em>travels</em>.</p>" in sheet_page(sheet, DRESS)
    assert as_plain(sheet)["purpose"][0][1] == {"text": "stands", "strong": True, "slanted": False}


def test_windows_of_a_step(desk: Callable[..., Desk]) -> None:
    step = {"do": "Dry.", "ahead": "2 days", "stands": "12 h", "keeps": "3 days"}
    (one,) = sheet_of("set-dowels", desk(steps=[step])).steps
    assert [bare(window) for window in one.windows] == [
        "May be done 2 days ahead.", "Must stand at least 12 h.", "Keeps 3 days.",
    ]  # fmt: skip


def test_pictures_stand_with_their_steps(desk: Callable[..., Desk], quay: PictureFile) -> None:
    sheet = sheet_of("set-dowels", desk())
    assert [[picture.alt for picture in step.pictures] for step in sheet.steps] == [[], ["A lamp."]]
    assert [(picture.alt, picture.caption) for picture in sheet.pictures] == [("A quay.", "Low water.")]
    files = picture_files(sheet)
    assert list(files) == ["step-2-1.svg", "picture-1.jpg"]
    assert files["picture-1.jpg"] == quay.copies[0].content
    held = desk()
    held = replace(held, book=replace(held.book, pictures={}))
    assert picture_files(sheet_of("set-dowels", held)) == {}


def test_plain_data_for_the_printer(desk: Callable[..., Desk], house: Callable[..., House]) -> None:
    sheet = sheet_of("set-dowels", desk(house(address="https://book.example")))
    told = json.loads(json.dumps(as_plain(sheet)))
    assert told["steps"][1]["pictures"][0]["name"] in picture_files(sheet)
    assert "content" not in told["pictures"][0] and "element" not in told["pictures"][0]
    assert told["code"].startswith("<svg") and told["address"] == "https://book.example/techniques/set-dowels/"


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


def test_the_page_asks_for_nothing(desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", desk()), DRESS)
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


def test_its_policy_lets_in_its_own_style_and_script_only(desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", desk()), DRESS)
    policy = next(value for tag, name, value in Asked(html).attributes if "default-src" in value)
    parts = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert parts["default-src"] == "'none'"
    for tag, key in (("style", "style-src"), ("script", "script-src")):
        (inside,) = re.findall(f"<{tag}>(.*?)</{tag}>", html, re.DOTALL)
        assert parts[key] == f"'sha256-{base64.b64encode(hashlib.sha256(inside.encode()).digest()).decode()}'"


def test_words_are_words(desk: Callable[..., Desk]) -> None:
    nasty = desk(name=NASTY, purpose=NASTY, makes=NASTY, checks=[NASTY], cautions=[NASTY], tips=[NASTY], tools=[NASTY],
                 faults=[{"fault": NASTY, "cure": NASTY}], steps=[{"do": NASTY, "done": NASTY}],
                 pictures=[{"file": "quay.jpg", "alt": NASTY, "shows": NASTY}])  # fmt: skip
    html = sheet_page(sheet_of("set-dowels", nasty), DRESS)
    page = Asked(html)
    assert page.tags.count("script") == 1 and "49" not in html
    assert ("img", "alt", NASTY) in page.attributes


def test_it_wears_the_colours_of_the_book(desk: Callable[..., Desk]) -> None:
    html = sheet_page(sheet_of("set-dowels", desk()), DRESS)
    assert "--ink: #10272F;" in html and "--ink: #EDF3F2;" in html
    assert base64.b64encode(b"words").decode() in html and base64.b64encode(b"figures").decode() in html
    with pytest.raises(ValueError, match="no dark look"):
        sheet_page(sheet_of("set-dowels", desk()), replace(DRESS, tokens=TOKENS.replace("slate", "night")))


def test_templates_stand_on_pages_of_their_own(desk: Callable[..., Desk]) -> None:
    page = PaperPage(key="x", title="A pennant", width_mm=215.9, height_mm=279.4, lines=(), words=())
    wide = PaperPage(key="y", title="A strip", width_mm=279.4, height_mm=215.9, lines=(), words=())
    plain = sheet_of("set-dowels", desk())
    assert plain.cakes == () and plain.shown is None
    cakes = (
        SheetCake(cake="round 15 cm", shown=False, total="10", heavy="", parts=(), colours=(), templates=(page,)),
        SheetCake(cake="round 20 cm", shown=True, total="20", heavy="", parts=(), colours=(), templates=(wide, page)),
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
