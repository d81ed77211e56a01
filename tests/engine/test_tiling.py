"""Sheets of paper: what they show together is the drawing, and neighbours share their overlap."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, MultiLineString, box
from shapely.ops import unary_union

from tinbook.engine.tiling import Tile, clipped, row_name, sheets_for, shelved, tiled

lengths = st.floats(0.0, 3000.0)
windows = st.floats(100.0, 400.0)
overlaps = st.floats(0.0, 40.0)


def test_by_hand() -> None:
    """269 mm wide windows that share 12 mm: two reach 526 mm, three 783 mm."""
    assert [sheets_for(length, 269.0, 12.0) for length in (0.0, 269.0, 269.1, 526.0, 526.1, 783.0)] == [
        1,
        1,
        2,
        2,
        3,
        3,
    ]
    tiles = tiled((0.0, 0.0, 500.0, 100.0), (269.0, 150.0), 12.0)
    assert [tile.name for tile in tiles] == ["A1", "A2"]
    assert [round(tile.left, 6) for tile in tiles] == [-13.0, 244.0]
    assert [row_name(row) for row in (0, 25, 26, 27)] == ["A", "Z", "AA", "AB"]


@pytest.mark.parametrize("overlap", [-1.0, 100.0, 150.0])
def test_an_overlap_must_leave_something(overlap: float) -> None:
    with pytest.raises(ValueError, match="cannot overlap"):
        sheets_for(10.0, 100.0, overlap)


@given(lengths, lengths, windows, windows, overlaps, st.floats(-500.0, 500.0))
def test_tiles_cover_the_drawing_and_share_the_overlap(
    wide: float, high: float, window_wide: float, window_high: float, overlap: float, start: float
) -> None:
    tiles = tiled((start, -start, start + wide, high - start), (window_wide, window_high), overlap)
    covered = unary_union([box(tile.left, tile.top, tile.right, tile.bottom) for tile in tiles])
    assert covered.buffer(1e-6).covers(box(start, -start, start + wide, high - start))
    for tile in tiles:
        assert tile.right - tile.left == pytest.approx(window_wide)
        assert tile.bottom - tile.top == pytest.approx(window_high)
    for one, other in pairwise(tiles):
        if one.row == other.row:
            assert one.right - other.left == pytest.approx(overlap, abs=1e-6)
    first = [tile for tile in tiles if tile.column == 0]
    for one, other in pairwise(first):
        assert one.bottom - other.top == pytest.approx(overlap, abs=1e-6)
    assert len({tile.name for tile in tiles}) == len(tiles)
    # one sheet fewer, in either direction, would not reach
    columns, rows = max(tile.column for tile in tiles) + 1, max(tile.row for tile in tiles) + 1
    for count, window, length in ((columns, window_wide, wide), (rows, window_high, high)):
        if count > 1:
            assert (count - 1) * window - (count - 2) * overlap < length + 1e-6


# to the thousandth of a mm: GEOS takes a stroke a hair's breadth off the edge as on it
steps = st.integers(-50_000, 150_000).map(lambda step: step / 1000.0)
points = st.tuples(steps, steps)


@given(st.lists(points, min_size=2, max_size=12))
def test_a_line_is_clipped_as_shapely_clips_it(line: list[tuple[float, float]]) -> None:
    """Oracle: GEOS, by shapely."""
    tile = Tile(row=0, column=0, left=0.0, top=0.0, right=100.0, bottom=80.0)
    ours = list(clipped(line, tile))
    # stroke by stroke, as a line that crosses itself is counted twice
    theirs = [LineString(pair).intersection(box(0, 0, 100, 80)) for pair in pairwise(line)]
    assert MultiLineString(ours).length == pytest.approx(sum(each.length for each in theirs), abs=1e-6)
    for piece in ours:
        assert box(0, 0, 100, 80).buffer(1e-6).covers(LineString(piece))


def test_a_line_that_lies_in_one_tile_stays_whole() -> None:
    ring = ((10.0, 10.0), (20.0, 10.0), (20.0, 20.0), (10.0, 10.0))
    assert list(clipped(ring, Tile(row=0, column=0, left=0.0, top=0.0, right=100.0, bottom=80.0))) == [ring]
    assert list(clipped(ring, Tile(row=0, column=0, left=50.0, top=0.0, right=100.0, bottom=80.0))) == []


@given(st.lists(st.tuples(st.floats(1.0, 100.0), st.floats(1.0, 80.0)), max_size=30))
def test_small_drawings_lie_side_by_side(sizes: list[tuple[float, float]]) -> None:
    sheets = shelved(sizes, (100.0, 80.0), 5.0)
    assert sum(len(sheet) for sheet in sheets) == len(sizes)
    left = iter(sizes)
    for sheet in sheets:
        boxes = [(x, y, x + w, y + h) for (x, y), (w, h) in zip(sheet, left, strict=False)] if sheet else []
        for index, (x0, y0, x1, y1) in enumerate(boxes):
            assert x0 >= 0 and y0 >= 0 and x1 <= 100.001 and y1 <= 80.001
            for a0, b0, a1, b1 in boxes[:index]:
                assert x0 >= a1 + 4.999 or y0 >= b1 + 4.999 or a0 >= x1 + 4.999 or b0 >= y1 + 4.999


def test_a_drawing_larger_than_the_window_is_refused() -> None:
    with pytest.raises(ValueError, match="larger than the window"):
        shelved([(101.0, 10.0)], (100.0, 80.0), 5.0)
