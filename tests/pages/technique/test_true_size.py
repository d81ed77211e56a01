"""Pages of templates: true to scale, whole when their sheets are joined, nothing under 9 pt, the same in SVG."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, MultiLineString
from shapely.affinity import translate
from shapely.ops import unary_union
from tests.every import every

from tinbook.pages.technique.paper import PaperPage
from tinbook.pages.technique.true_size import ABOVE_MM, FOOT_MM, SIDE_MM, paper_pages
from tinbook.plans.true_size.drawn import Label, Stroke, Template
from tinbook.plans.true_size.papers import PAPERS
from tinbook.tins import Tin

CAKE = Tin(shape="round", sizes_mm=(200.0,))
OVERLAP = 12.0


def template(wide: float, high: float, *notes: str) -> Template:
    """A frame with its two diagonals."""
    frame = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high), (0.0, 0.0))
    strokes = (Stroke("cut", frame), Stroke("fold", (frame[0], frame[2])), Stroke("hidden", (frame[1], frame[3])))
    return Template(
        key="frame",
        name="A frame & <so on>",
        size=f"{wide:g} mm",
        cake=CAKE,
        strokes=strokes,
        labels=(Label("A", (wide / 2, high / 2), True),),
        notes=notes,
    )


def drawn(page: PaperPage, *kinds: str) -> list[LineString]:
    return [LineString(line.points) for line in page.lines if line.kind in kinds]


@every("paper", PAPERS)
@every("size", [(50.0, 40.0), (200.0, 200.0), (700.0, 111.0), (420.0, 600.0)])
def test_the_bars_are_true_on_every_page(paper: str, size: tuple[float, float]) -> None:
    for page in paper_pages([template(*size)], PAPERS[paper], OVERLAP, "The house"):
        bars = [LineString(line.points).length for line in page.lines if line.kind == "bar"]
        assert bars[0] == pytest.approx(100.0) and bars[3] == pytest.approx(101.6)
        said = [each.text for each in page.words]
        assert {"100 mm", "4 in", "Measure this first.", "A frame & <so on>", "The house"} <= set(said)
        assert any("For round 20 cm. Scale 1:1" in text for text in said)


@settings(max_examples=60)
@given(st.floats(5.0, 900.0), st.floats(5.0, 900.0), st.sampled_from(sorted(PAPERS)))
def test_sheets_laid_on_each_other_are_the_drawing(wide: float, high: float, paper: str) -> None:
    """Oracle: shapely. Each sheet is laid where its joints meet its neighbour's; together they are the drawing."""
    made = template(wide, high, "A note. " * 20)
    pages = paper_pages([made], PAPERS[paper], OVERLAP, "The house")
    kept = []
    for page in pages:
        # where on the drawing a sheet lies is told by nothing but its name
        row, column = 0, 0
        if found := next((each.text for each in page.words if re.fullmatch(r"[A-Z]+\d+ of \d+", each.text)), ""):
            name = found.split()[0]
            row, column = ord(name[0]) - ord("A"), int(name[1:]) - 1
        kept.append((row, column, page))
    rows, columns = max(row for row, *_ in kept) + 1, max(column for _, column, _ in kept) + 1
    assert len(pages) == rows * columns
    top = min(
        point[1]
        for page in pages
        for line in page.lines
        if line.kind in ("cut", "fold", "hidden", "joint")
        for point in line.points
    )
    assert top >= ABOVE_MM
    laid = []
    for row, column, page in kept:
        key_lines = {"cut", "fold", "hidden"}
        # the key beside the drawing has the same kinds: it stands above the drawing
        head = max(line.points[0][1] for line in page.lines[: len(page.lines)] if is_key(line))
        window_wide = page.width_mm - 2 * SIDE_MM
        window_high = page.height_mm - FOOT_MM - window_top(page)
        for line in page.lines:
            if line.kind in key_lines and not is_key(line):
                assert min(y for _, y in line.points) > head
                moved = translate(
                    LineString(line.points), column * (window_wide - OVERLAP), row * (window_high - OVERLAP)
                )
                laid.append(moved)
    union = unary_union([line.buffer(1e-4) for line in laid])
    left, upper, right, lower = union.bounds
    assert right - left == pytest.approx(wide, abs=0.01)
    assert lower - upper == pytest.approx(high, abs=0.01)
    whole = MultiLineString(
        [translate(LineString(stroke.points), left + 1e-4, upper + 1e-4) for stroke in made.strokes]
    )
    assert union.buffer(0.01).covers(whole)
    assert whole.buffer(0.01).covers(MultiLineString(laid))


def is_key(line: object) -> bool:
    """A line of the key: 12 mm, level, of two points."""
    (x0, y0), (x1, y1), *more = line.points  # type: ignore[attr-defined]
    return not more and y0 == y1 and abs(x1 - x0 - 12.0) < 1e-9 and y0 < 120.0


def window_top(page: PaperPage) -> float:
    """Where the drawing's room begins: below as many lines of notes as the head has."""
    head = [each for each in page.words if each.text.startswith("A note.") or each.text.startswith("note.")]
    return ABOVE_MM + 17.0 + 4.4 * len(head)


def test_neighbours_are_named_at_their_edges() -> None:
    pages = paper_pages([template(300.0, 300.0)], PAPERS["A4"], OVERLAP, "")
    assert [page.key for page in pages] == ["frame-a1", "frame-a2", "frame-b1", "frame-b2"]
    joints = [{each.text for each in page.words if " on " in each.text and ":" not in each.text} for page in pages]
    assert joints == [
        {"A2 goes on here", "B1 goes on here"},
        {"cut here, lay on A1", "B2 goes on here"},
        {"cut here, lay on A1", "B2 goes on here"},
        {"cut here, lay on A2", "cut here, lay on B1"},
    ]
    assert all(sum(line.closed and line.kind == "inner" for line in page.lines) == 4 for page in pages), (
        "two diamonds each"
    )
    assert [each.text for page in pages for each in page.words if each.text.startswith("Page")] == [
        f"Page {number} of 4" for number in range(1, 5)
    ]


def test_the_way_round_that_takes_fewer_sheets() -> None:
    strip, tall = (
        paper_pages([template(*size)], PAPERS["A4"], OVERLAP, "") for size in ((700.0, 110.0), (60.0, 200.0))
    )
    assert (len(strip), strip[0].wide) == (3, True)
    assert (len(tall), tall[0].wide) == (1, False)


@pytest.mark.parametrize("paper", PAPERS)
def test_everything_lies_on_the_paper_and_no_letter_is_small(paper: str) -> None:
    pages = paper_pages([template(200.0, 200.0, "A note that is long. " * 12)], PAPERS[paper], OVERLAP, "The house")
    for page in pages:
        points = [point for line in page.lines for point in line.points]
        assert all(0 <= x <= page.width_mm and 7.0 <= y <= page.height_mm - 7.0 for x, y in points)
        assert all(each.size_pt >= 9.0 for each in page.words)
        assert {line.width for line in page.lines} <= {0.45, 0.35, 0.3, 0.25, 0.18}
        lines_of_text = sorted(each.y for each in page.words if each.x == SIDE_MM and each.y < 100)
        assert all(low - high >= 3.5 for high, low in pairwise(lines_of_text)), "lines of words do not run together"
