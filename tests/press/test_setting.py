"""PDFs as they come from the press, measured by pdfplumber: https://github.com/jsvine/pdfplumber."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.cake_templates import TemplateFile, template_files
from tinbook.pages.technique.sheet import sheet_of
from tinbook.press import sheet_pdf, templates_pdf

PT_MM = 25.4 / 72.0
PAPERS_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
TECHNIQUES = (
    "boat-on-the-shingle", "bream-with-scales", "coil-of-rope", "heron-for-the-side", "lighthouse-for-the-front",
    "scalloped-board-edge",
)  # fmt: skip


def files(demo: Loaded, slug: str) -> Iterator[TemplateFile]:
    desk = Desk(demo.book, demo.facts, {})
    return (each for each in template_files(desk) if each.path.startswith(f"true-size/{slug}-"))


def strokes(page: Any) -> list[dict[str, Any]]:
    """Every path of a page."""
    return [*page.lines, *page.curves, *page.rects]


def test_every_technique_with_parts_is_measured(demo: Loaded) -> None:
    assert sorted(slug for slug, each in demo.book.techniques.items() if each.parts or each.repeats) == list(TECHNIQUES)


@pytest.mark.parametrize("slug", TECHNIQUES)
def test_bars_and_outlines_of_every_cake_are_true(demo: Loaded, slug: str) -> None:
    """Every file a technique's page hands out: on each page a bar of 100.0 ± 0.3 mm and one of 4 in; each outline that
    fits on a sheet is as wide and as high as the plan's part.
    """
    seen = 0
    for file in files(demo, slug):
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
    assert seen >= 18


def test_the_same_again_to_the_byte(demo: Loaded) -> None:
    file = next(files(demo, "coil-of-rope"))
    assert templates_pdf(file.title, file.pages) == templates_pdf(file.title, file.pages)


def test_a_sheet_is_tagged_and_named(demo: Loaded) -> None:
    content = sheet_pdf(sheet_of("coil-of-rope", Desk(demo.book, demo.facts, {})))
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        assert set(pdf.metadata) <= {"Title", "Creator", "Producer"}
        assert pdf.metadata["Title"] == "Lay a coil of rope and a bollard" or pdf.metadata["Title"]
        assert pdf.structure_tree
