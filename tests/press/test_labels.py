"""Labels as they are printed: letters measured by their outlines, places by their words, text that can be selected."""

from __future__ import annotations

import ctypes
import io
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from itertools import pairwise

import pdfplumber
import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest

from tinbook.loading import Loaded
from tinbook.models.labels import LabelSheet
from tinbook.pages.base.page import Desk
from tinbook.pages.labels.cards import goes_with, table_card
from tinbook.pages.labels.printed import LabelWords, label_pages, label_words, strip_pages
from tinbook.plans.labels.label import label_of
from tinbook.press.labels import NoSuchLetter, TooLong, goes_with_pdf, labels_pdf, table_card_pdf

POINT_MM = 25.4 / 72
DAY = date(2026, 12, 5)
SHEET = LabelSheet.model_validate(
    {"columns": "2", "rows": "4", "wide": "99 mm", "high": "67 mm", "left": "5 mm", "top": "14 mm",
     "across": "101 mm", "down": "68 mm"}
)  # fmt: skip


@pytest.fixture(scope="module")
def words(demo: Loaded) -> LabelWords:
    plan = label_of("night-watch-cake", demo.book, demo.facts, DAY)
    assert plan.ready
    return label_words(plan, demo.facts)


def letters(pdf: bytes) -> Iterator[tuple[str, str, tuple[float, float, float, float]]]:
    """Every letter with its font and the box of its outline (left, foot, right, head), in mm from the foot of the page;
    by PDFium, which draws the glyphs itself and knows nothing of us."""
    for page in pdfium.PdfDocument(pdf):
        text = page.get_textpage()
        for at in range(text.count_chars()):
            sign = chr(raw.FPDFText_GetUnicode(text, at))
            name = ctypes.create_string_buffer(200)
            raw.FPDFText_GetFontInfo(text, at, name, 200, None)
            box = text.get_charbox(at, loose=False)
            yield sign, name.value.decode(), tuple(edge * POINT_MM for edge in box)  # type: ignore[misc]


def x_heights(pdf: bytes) -> set[float]:
    """How high every x is, mm."""
    return {round(box[3] - box[1], 3) for sign, _, box in letters(pdf) if sign == "x"}


def with_x(words: LabelWords) -> LabelWords:
    """The same with an x in each kind of type on it."""
    return replace(words, maker="Fox kitchen, box 6", lines=("An x in a line of its own.",))


def test_an_x_is_as_high_as_the_law_asks_by_its_outline(words: LabelWords) -> None:
    for least, high in ((1.2, 1.5), (0.9, 1.5)):
        pdf, x_mm = labels_pdf(label_pages(with_x(words), SHEET, 1, 8), least)
        assert x_mm == high and x_heights(pdf)
        assert all(height == pytest.approx(high, abs=0.03) for height in x_heights(pdf))


def test_where_there_is_little_room_it_is_the_least_and_no_less(words: LabelWords) -> None:
    for least in (1.2, 0.9):
        for high in range(20, 70):
            small = SHEET.model_copy(update={"high": float(high), "down": float(high)})
            try:
                pdf, x_mm = labels_pdf(label_pages(with_x(words), small, 1, 1), least)
            except TooLong:
                continue
            assert x_mm == pytest.approx(least * 1.02)
            assert all(least <= height <= least * 1.06 for height in x_heights(pdf)), x_heights(pdf)
            break


def test_what_does_not_fit_is_refused_with_the_size_that_would_do(words: LabelWords) -> None:
    low = SHEET.model_copy(update={"high": 25.0, "down": 25.0})
    with pytest.raises(TooLong) as told:
        labels_pdf(label_pages(words, low, 1, 1), 1.2)
    need = told.value.need_mm
    assert told.value.have_mm == 25.0 and need > 25.0
    enough = SHEET.model_copy(update={"high": need + 0.1, "down": need + 0.1})
    pdf, _ = labels_pdf(label_pages(words, enough, 1, 1), 1.2)
    # and every letter of it is on the label
    foot = 297.0 - 14.0 - need - 0.1
    assert all(box[1] >= foot for sign, _, box in letters(pdf) if sign.isalpha() and box[3] < 280.0)


def test_a_sign_that_cannot_be_printed_is_refused_not_replaced(words: LabelWords) -> None:
    with pytest.raises(NoSuchLetter) as told:
        labels_pdf(label_pages(replace(words, name="Cake \u6f22"), SHEET, 1, 1), 1.2)
    assert told.value.sign == "\u6f22"


def test_labels_stand_where_the_sheet_has_them(words: LabelWords) -> None:
    pdf, _ = labels_pdf(label_pages(words, SHEET, 3, 6), 1.2)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        (page,) = document.pages
        assert (page.width * POINT_MM, page.height * POINT_MM) == pytest.approx((210.0, 297.0), abs=0.01)
        names = [word for word in page.extract_words() if word["text"] == "Night-watch"]
    places = sorted((word["top"] * POINT_MM, word["x0"] * POINT_MM) for word in names)
    assert len(places) == 6
    first_top, first_left = places[0]
    # the first two labels are used up: it begins in the second row
    assert 14.0 + 68.0 <= first_top <= 14.0 + 68.0 + 8.0
    lefts, tops = sorted({round(x, 1) for _, x in places}), sorted({round(y, 1) for y, _ in places})
    assert lefts[0] == pytest.approx(5.0 + 3.5, abs=0.5) and lefts[1] - lefts[0] == pytest.approx(101.0, abs=0.2)
    assert [b - a for a, b in pairwise(tops)] == pytest.approx([68.0, 68.0], abs=0.2)
    assert first_left == pytest.approx(lefts[0], abs=0.2)


def test_cut_labels_have_their_edges_where_they_should(words: LabelWords) -> None:
    pdf, _ = labels_pdf(label_pages(words, SHEET, 1, 8, cut=True), 1.2)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        edges = {
            (round(each["x0"] * POINT_MM, 1), round(each["top"] * POINT_MM, 1))
            for each in (*document.pages[0].rects, *document.pages[0].curves)
            if each["width"] * POINT_MM == pytest.approx(99.0, abs=0.3)
        }
    wanted = {(5.0 + 101.0 * column, 14.0 + 68.0 * row) for column in (0, 1) for row in range(4)}
    assert len(edges) == 8
    for x, y in wanted:
        assert any(abs(x - left) <= 0.2 and abs(y - top) <= 0.2 for left, top in edges), (x, y, edges)


def test_the_check_bar_is_fifty_mm(words: LabelWords) -> None:
    pdf, _ = labels_pdf(label_pages(words, SHEET, 1, 1), 1.2)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        lines = [each for each in document.pages[0].lines if each["top"] * POINT_MM < 10.0]
    assert any(each["width"] * POINT_MM == pytest.approx(50.0, abs=0.05) for each in lines)
    narrow = SHEET.model_copy(update={"top": 5.0})
    assert label_pages(words, narrow, 1, 1).bar_mm == 0.0


def test_allergens_are_really_bold_and_everything_can_be_selected(words: LabelWords) -> None:
    pdf, _ = labels_pdf(label_pages(words, SHEET, 1, 1), 1.2)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        text = document.pages[0].extract_text()
        chars = document.pages[0].chars
    flat = " ".join(text.split())
    assert "Ingredients: Icing sugar" in flat and "walnuts (4.5" in flat and "Batch 2026-12-05 night-watch-cake" in flat
    at = {}
    for run in words.runs:
        at.setdefault(run.strong, []).append(run.text)
    fonts = {strong: set() for strong in (True, False)}  # type: ignore[var-annotated]
    joined = "".join(char["text"] for char in chars)
    for strong, texts in at.items():
        for each in texts:
            word = each.split("(")[-1].split(",")[0].strip(" )(")
            start = joined.find(word)
            if len(word) > 2 and start >= 0 and strong:
                fonts[True].add(chars[start]["fontname"])
    plain = joined.find("Icing sugar")
    fonts[False].add(chars[plain]["fontname"])
    assert fonts[True] and fonts[True].isdisjoint(fonts[False])
    # a bold letter is drawn bolder: by its outline, in each of the fonts of the words
    wide: dict[str, list[float]] = {}
    for sign, font, box in letters(pdf):
        if sign == "l" and "Atkinson" in font:
            wide.setdefault(font, []).append(box[2] - box[0])
    means = {font: sum(found) / len(found) for font, found in wide.items()}
    bold = [font for font in means if any(font in name for name in fonts[True])]
    regular = [font for font in means if any(font in name for name in fonts[False])]
    assert bold and regular
    assert min(means[font] for font in bold) > 1.2 * max(means[font] for font in regular)


def test_a_strip_is_as_long_as_its_words(words: LabelWords) -> None:
    pdf, x_mm = labels_pdf(strip_pages(words, 62.0), 1.2)
    page = pdfium.PdfDocument(pdf)[0]
    assert page.get_width() * POINT_MM == pytest.approx(62.0, abs=0.05)
    assert page.get_height() * POINT_MM > 40.0 and x_mm == 1.5
    inside = [box for sign, _, box in letters(pdf) if not sign.isspace()]
    assert min(box[0] for box in inside) >= 3.0 and max(box[2] for box in inside) <= 59.2


def test_the_card_is_a6_and_says_what_is_not_food(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, demo.broken)
    card = goes_with(label_of("lighthouse-cake", demo.book, demo.facts, DAY), desk)
    pdf = goes_with_pdf(card, 1.2)
    page = pdfium.PdfDocument(pdf)[0]
    size = (page.get_width() * POINT_MM, page.get_height() * POINT_MM)
    assert size == pytest.approx((105.0, 148.0), abs=0.05)
    assert min(x_heights(pdf)) >= 1.2
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        text = " ".join(" ".join((each.extract_text() or "").split()) for each in document.pages)
    for said in (card.shown, card.hidden, card.cut, "Not known what is in", "sugarpaste"):
        assert " ".join(said.split()) in text, said


def test_the_table_card_names_every_product(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, demo.broken)
    pdf = table_card_pdf(table_card(["night-watch-cake", "lighthouse-cake", "vegan-vanilla-sponge"], desk, "England"))
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        text = " ".join((document.pages[0].extract_text() or "").split())
    for said in ("On this table", "Night-watch", "not known", "walnut", "In this kitchen."):
        assert said in text, said
