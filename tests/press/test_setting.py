"""PDFs as they come from the press, measured by pdfplumber: https://github.com/jsvine/pdfplumber."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations
from math import dist
from typing import Any

import pdfplumber
import pytest
from tests.every import all_seeds, every

from tinbook.cli.template import pages_of
from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import cake_sheet_of
from tinbook.pages.technique.cake_templates import TemplateFile, template_files
from tinbook.pages.technique.sheet import sheet_of
from tinbook.plans.cakes.sizes import WRITTEN, cake_sizes, size_called
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.true_size.dowelling import DowelPlan, dowel_plan, dowel_template
from tinbook.press import cake_sheet_pdf, sheet_pdf, templates_pdf
from tinbook.tins import read_tin

PT_MM = 25.4 / 72.0
PAPERS_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
TECHNIQUES = (
    "boat-on-the-shingle", "bream-with-scales", "clump-of-thrift", "coil-of-rope", "gull-for-the-side",
    "heron-for-the-side", "lighthouse-for-the-front", "scalloped-board-edge",
)  # fmt: skip


def files(demo: Loaded, slug: str) -> Iterator[TemplateFile]:
    desk = Desk(demo.book, demo.facts, {})
    return (each for each in template_files(desk) if each.path.startswith(f"true-size/{slug}-"))


def strokes(page: Any) -> list[dict[str, Any]]:
    """Every path of a page."""
    return [*page.lines, *page.curves, *page.rects]


def test_every_technique_with_parts_is_measured(demo: Loaded) -> None:
    assert sorted(slug for slug, each in demo.book.techniques.items() if each.parts or each.repeats) == list(TECHNIQUES)


def smallest_and_largest(demo: Loaded, slug: str) -> list[TemplateFile]:
    """The files for those cakes, on each paper; all files with --all-seeds, as reading one takes a second."""
    every = list(files(demo, slug))
    ends = {every[0].made.cake, every[-1].made.cake}
    return every if all_seeds() else [file for file in every if file.made.cake in ends]


@every("slug", TECHNIQUES)
def test_bars_and_outlines_are_true(demo: Loaded, slug: str) -> None:
    """Of the files a technique's page hands out: on each page a bar of 100.0 ± 0.3 mm and one of 4 in; each outline that
    fits on a sheet is as wide and as high as the plan's part.
    """
    seen, some = 0, smallest_and_largest(demo, slug)
    assert len(some) >= 4 and some[0].made.scale < some[-1].made.scale
    for file in some:
        found: list[tuple[float, float]] = []
        with pdfplumber.open(io.BytesIO(templates_pdf(file.title, file.pages))) as pdf:
            assert len(pdf.pages) == len(file.pages)
            assert pdf.metadata["Title"] == file.title
            for page in pdf.pages:
                seen += 1
                size = sorted((page.width * PT_MM, page.height * PT_MM))
                assert size == pytest.approx(PAPERS_MM[file.paper.name], abs=0.05)
                sizes = [(each["width"] * PT_MM, each["height"] * PT_MM, each["top"]) for each in strokes(page)]
                foot = [wide for wide, high, top in sizes if high < 0.01 and top > page.height - 80]
                assert [wide for wide in foot if abs(wide - 100.0) <= 0.3], file.path
                assert [wide for wide in foot if abs(wide - 101.6) <= 0.3], file.path
                found += [(wide, high) for wide, high, _ in sizes]
        for part in file.made.parts:
            if part.form != "rope" and max(part.width_mm, part.height_mm) <= 170.0:
                wanted = (part.width_mm, part.height_mm)
                assert any(each == pytest.approx(wanted, abs=0.1) for each in found), (file.path, part.name)
    assert seen >= 4


def test_the_same_again_to_the_byte(demo: Loaded) -> None:
    file = next(files(demo, "coil-of-rope"))
    assert templates_pdf(file.title, file.pages) == templates_pdf(file.title, file.pages)


def test_a_sheet_is_tagged_and_named(demo: Loaded) -> None:
    content = sheet_pdf(sheet_of("coil-of-rope", Desk(demo.book, demo.facts, {})))
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        assert set(pdf.metadata) <= {"Title", "Creator", "Producer"}
        assert pdf.metadata["Title"] == "Lay a coil of rope and a bollard" or pdf.metadata["Title"]
        assert pdf.structure_tree


def test_the_lighthouse_is_one_page(demo: Loaded) -> None:
    """Steps, the drawing at actual size, the table of parts and every caution whole on one page of A4; with bars to
    measure it by, and no letter under 9 pt.
    """
    sheet = sheet_of("lighthouse-for-the-front", Desk(demo.book, demo.facts, {}))
    with pdfplumber.open(io.BytesIO(sheet_pdf(sheet))) as pdf:
        (page,) = pdf.pages
        assert (page.width * PT_MM, page.height * PT_MM) == pytest.approx(PAPERS_MM["A4"], abs=0.05)
        assert min(char["size"] for char in page.chars) >= 8.99
        # nothing nearer to the edge of the paper than a printer prints
        assert min(char["x0"] for char in page.chars) * PT_MM >= 10.0
        assert max(char["x1"] for char in page.chars) * PT_MM <= 200.0
        told = _flat(page.extract_text())
        for length in (100.0, 101.6):
            assert any(abs(each - length) <= 0.3 for each in _bars(page)), length
        for words in ("actualsize", "Haveready", "Steps", "Notedible:1lollystick", "1lollystick(intower)", "Tips"):
            assert words in told, words
        for part in demo.book.techniques["lighthouse-for-the-front"].parts:
            assert _flat(part.part.capitalize()) in told
        # the tower, 36 mm wide and 70 mm high, and the rock, 84 mm wide, are drawn so
        sizes = [(each["width"] * PT_MM, each["height"] * PT_MM) for each in strokes(page)]
        for wanted in ((36.0, 70.0), (22.0, 16.0), (32.0, 3.0)):
            assert any(each == pytest.approx(wanted, abs=0.1) for each in sizes), wanted
        assert any(wide == pytest.approx(84.0, abs=0.1) for wide, _ in sizes)
        # the rows of the table run A, B, C
        left = [word for word in page.extract_words() if word["text"] in "ABCDEFGH" and _heads_a_row(word, page)]
        assert [word["text"] for word in sorted(left, key=lambda word: word["top"])] == list("ABCDEFGH")
    assert len(sheet.cautions) == 5
    for caution in sheet.cautions:
        assert _flat(f"{caution.title}. {caution.text}" if caution.title else caution.text) in told


def circles(plan: DowelPlan, demo: Loaded) -> dict[float, list[list[tuple[float, float]]]]:
    """The middles of the circles of a plan on A4, mm, page by page: those as wide as a dowel, and 12 mm wide."""
    pages = pages_of([dowel_template(plan, 12.0)], "A4", demo)
    found: dict[float, list[list[tuple[float, float]]]] = {plan.across_mm: [], 12.0: []}
    with pdfplumber.open(io.BytesIO(templates_pdf("Dowels", pages))) as pdf:
        for page in pdf.pages:
            for across, each in found.items():
                each.append(
                    [
                        ((one["x0"] + one["x1"]) / 2 * PT_MM, (one["top"] + one["bottom"]) / 2 * PT_MM)
                        for one in strokes(page)
                        if (one["width"] * PT_MM, one["height"] * PT_MM) == pytest.approx((across, across), abs=0.1)
                    ]
                )
    return found


def test_dowels_stand_true_on_paper(demo: Loaded) -> None:
    """On one sheet: as many as the plan has, as thick, at their distances, none nearer to another than two diameters, in
    from the edge of the tier above by the inset; the hole for the one through all tiers in the middle of them."""
    tins = [read_tin(name)[1] for name in ("round 18 cm", "round 15 cm")]
    plan = dowel_plan(*tins, demo.book.finish, demo.facts)
    found = circles(plan, demo)
    ((dowels,), ((middle,),)) = found[plan.across_mm], found[12.0]
    assert len(dowels) == plan.count == 5
    gaps, wanted = ([dist(one, other) for one, other in combinations(each, 2)] for each in (dowels, plan.places))
    assert sorted(gaps) == pytest.approx(sorted(wanted), abs=0.3)
    assert min(gaps) >= 2.0 * plan.across_mm
    reach = plan.above.bounds_mm[0] / 2.0 - plan.inset_mm
    assert all(dist(place, middle) == pytest.approx(reach, abs=0.3) for place in dowels)


def test_every_tier_of_a_stacked_cake_has_its_plan(demo: Loaded) -> None:
    """Over several sheets no dowel is lost; one where two sheets overlap is on both."""
    cake = whole_cake("estuary-wedding-cake", demo.book.cakes["estuary-wedding-cake"], demo.book, demo.facts)
    plans = [dowels.plan for dowels in cake.stacked.dowels if dowels]
    assert len(plans) == 2 and cake.stacked.through_mm is not None
    for plan in plans:
        sheets = circles(plan, demo)[plan.across_mm]
        assert plan.count == 5 <= sum(map(len, sheets)) <= 6 and all(sheets)


LONGEST = {
    "coat-between-discs": 2, "colour-paste": 2, "cover-a-board": 2, "cover-with-sugarpaste": 2,
    "crumb-coat-and-final-coat": 2, "dust-and-glaze-a-figure": 2, "emboss-and-paint-a-board": 2,
    "fix-a-figure-on-sticks": 2, "ganache-coat": 2, "move-to-the-board": 2, "rope-edge": 2,
    "scatter-loose-pieces": 2, "stack-three-tiers": 2, "stack-two-tiers": 2, "wave-and-reed-pattern": 2,
}  # fmt: skip
"""Pages of the sheets that are not one page."""


def test_no_sheet_is_longer_than_it_was(demo: Loaded) -> None:
    desk, longer, small = Desk(demo.book, demo.facts, {}), {}, {}
    for slug in demo.book.techniques:
        sheet = sheet_of(slug, desk)
        with pdfplumber.open(io.BytesIO(sheet_pdf(sheet))) as pdf:
            if len(pdf.pages) > LONGEST.get(slug, 1):
                longer[slug] = len(pdf.pages)
            # a letter of a drawing is at most a tenth of a point smaller where it is scaled to the column; all others
            # come in the sizes of one template, and reading them takes long
            if (sheet.pictures or sheet.shown) and (
                size := min(char["size"] for page in pdf.pages for char in page.chars)
            ) < 8.89:
                small[slug] = size
    assert (longer, small) == ({}, {})


@pytest.mark.parametrize("slug", ["cover-a-board", "stack-two-tiers", "lighthouse-for-the-front"])
def test_the_code_never_narrows_the_title(demo: Loaded, slug: str) -> None:
    sheet = sheet_of(slug, Desk(demo.book, demo.facts, {}))
    with pdfplumber.open(io.BytesIO(sheet_pdf(sheet))) as pdf:
        page = pdf.pages[0]
        title = [word for word in page.extract_words(extra_attrs=["size"]) if word["size"] > 17.5]
        assert " ".join(word["text"] for word in title) == sheet.name
        modules = [each for each in strokes(page) if each["top"] > page.height - 70 and each["x0"] > page.width * 0.85]
        assert sheet.code and modules, "it stands at the foot"
        assert max(word["bottom"] for word in title) < 100


def _flat(words: str) -> str:
    return "".join(words.replace("\N{NO-BREAK SPACE}", "").split())


def _bars(page: Any) -> Iterator[float]:
    """From the first upright mark of the bar to every other, mm."""
    marks = sorted(each["x0"] for each in strokes(page) if each["width"] < 0.5 and each["top"] > page.height - 70)
    yield from ((mark - marks[0]) * PT_MM for mark in marks)


def _heads_a_row(word: dict[str, Any], page: Any) -> bool:
    """Whether a letter begins a row of the table: bold, at the left edge of the right column."""
    heads = [each["x0"] for each in page.extract_words() if each["text"] == "Part;"]
    return 0.0 < heads[0] - word["x0"] < 24.0 and word["bottom"] - word["top"] > 9


def test_a_sign_no_typeface_has_does_not_stop_a_pdf(demo: Loaded) -> None:
    """A whale and a cook of some skin tone, joined from two signs, in a house's name: each is a question mark."""
    book = replace(
        demo.book,
        house=demo.book.house.model_copy(
            update={"name": "Tide \U0001f433 house \U0001f469\U0001f3fd\u200d\U0001f373 book"}
        ),
    )
    sheet = sheet_of("line-a-tin", Desk(book, demo.facts, {}))
    with pdfplumber.open(io.BytesIO(sheet_pdf(sheet))) as pdf:
        assert "Tide ? house ?? book" in (pdf.pages[0].extract_text() or "")
    file = next(files(demo, "coil-of-rope"))
    with pdfplumber.open(io.BytesIO(templates_pdf("Coil \U0001f433", file.pages))) as pdf:
        assert len(pdf.pages) == len(file.pages)


@pytest.mark.long
def test_a_cakes_sheet_is_two_pages_of_a4_at_most(demo: Loaded) -> None:
    """All that the sheet says, to the last caution, in letters of 9 pt and more, within what a printer prints."""
    desk = Desk(demo.book, demo.facts, {})
    wrong = dict[str, str]()
    for slug, design in demo.book.cakes.items():
        sheet = cake_sheet_of(slug, size_called(cake_sizes(design, demo.book, demo.facts), WRITTEN), desk)
        with pdfplumber.open(io.BytesIO(cake_sheet_pdf(sheet))) as pdf:
            # a space at the end of a line may hang over the edge
            chars = [char for page in pdf.pages for char in page.chars if char["text"].strip()]
            ends = [char[end] * PT_MM for char in chars for end in ("x0", "x1")]
            told = Counter(char for page in pdf.pages for char in _flat(page.extract_text()).lower())
            if len(pdf.pages) > 2:
                wrong[slug] = f"{len(pdf.pages)} pages"
            elif min(char["size"] for char in chars) < 8.89:
                wrong[slug] = f"letters of {min(char['size'] for char in chars)} pt"
            elif min(ends) < 9.99 or max(ends) > 200.1:
                wrong[slug] = "over the edge"
        # columns are read across, so it is the letters that are counted
        lines = [
            line for group in (*sheet.jobs, *sheet.weighings, *sheet.things, *sheet.making) for line in group.lines
        ]
        said = [line.name + line.note + line.flag for line in lines] + [*sheet.tools, *sheet.said, *sheet.notes]
        said += [words for each in sheet.cautions for words in (each.title, each.text)]
        if short := Counter(_flat("".join(said)).lower()) - told:
            wrong[slug] = f"letters left out: {short}"
    assert wrong == {}
