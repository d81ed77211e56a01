"""A drawing at true size on sheets of paper: how many sheets, what each of them shows, small drawings side by side.

Lengths mm, y downwards as on paper. A drawing larger than the window of a sheet goes on several, each of which shows
`overlap` of its neighbour again: n windows of w cover n w - (n - 1) overlap.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, hypot

Point = tuple[float, float]
Line = tuple[Point, ...]
_NEAR = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """What one sheet shows: its row and column from 0, and the part of the drawing in its window."""

    row: int
    column: int
    left: float
    top: float
    right: float
    bottom: float

    @property
    def name(self) -> str:
        """A1, A2, B1: rows by letters, columns by numbers."""
        return f"{row_name(self.row)}{self.column + 1}"


def row_name(row: int) -> str:
    """A, B, ... Z, AA, AB."""
    more, last = divmod(row, 26)
    return (row_name(more - 1) if more else "") + chr(ord("A") + last)


def sheets_for(length: float, window: float, overlap: float) -> int:
    """How many windows beside each other a length takes. ValueError for an overlap as wide as the window."""
    if not 0.0 <= overlap < window:
        raise ValueError(f"sheets of {window!r} cannot overlap by {overlap!r}")
    if length <= window + _NEAR:
        return 1
    return max(2, ceil((length - overlap) / (window - overlap) - _NEAR))


def tiled(bounds: tuple[float, float, float, float], window: tuple[float, float], overlap: float) -> tuple[Tile, ...]:
    """The tiles of a drawing with those bounds (left, top, right, bottom), row by row; the drawing in their middle."""
    columns = _spans(bounds[0], bounds[2], window[0], overlap)
    rows = _spans(bounds[1], bounds[3], window[1], overlap)
    return tuple(
        Tile(row=row, column=column, left=left, top=top, right=right, bottom=bottom)
        for row, (top, bottom) in enumerate(rows)
        for column, (left, right) in enumerate(columns)
    )


def _spans(low: float, high: float, window: float, overlap: float) -> list[tuple[float, float]]:
    count = sheets_for(high - low, window, overlap)
    step = window - overlap
    start = (low + high) / 2.0 - (window + (count - 1) * step) / 2.0
    return [(start + index * step, start + index * step + window) for index in range(count)]


def clipped(line: Sequence[Point], tile: Tile) -> Iterator[Line]:
    """The pieces of a line that lie in a tile, each end cut at its edge."""
    if len(line) > 1 and all(tile.left <= x <= tile.right and tile.top <= y <= tile.bottom for x, y in line):
        yield tuple(line)
        return
    run: list[Point] = []
    for one, other in pairwise(line):
        found = _inside(one, other, tile)
        if found is None:
            if len(run) > 1:
                yield tuple(run)
            run = []
            continue
        start, end = found
        if not run or hypot(run[-1][0] - start[0], run[-1][1] - start[1]) > _NEAR:
            if len(run) > 1:
                yield tuple(run)
            run = [start]
        run.append(end)
    if len(run) > 1:
        yield tuple(run)


def _inside(one: Point, other: Point, tile: Tile) -> tuple[Point, Point] | None:
    """The part of one straight stroke that lies in a tile (Liang and Barsky's clipping), None where there is none."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    begin, end = 0.0, 1.0
    for step, room in (
        (-dx, one[0] - tile.left), (dx, tile.right - one[0]), (-dy, one[1] - tile.top), (dy, tile.bottom - one[1]),
    ):  # fmt: skip
        if step == 0.0:
            if room < 0.0:
                return None
            continue
        at = room / step
        if step < 0.0:
            begin = max(begin, at)
        else:
            end = min(end, at)
        if begin > end:
            return None
    if begin == end and (dx or dy):
        return None
    first = one if begin == 0.0 else (one[0] + begin * dx, one[1] + begin * dy)
    last = other if end == 1.0 else (one[0] + end * dx, one[1] + end * dy)
    return first, last


def shelved(sizes: Iterable[tuple[float, float]], window: tuple[float, float], gap: float) -> list[list[Point]]:
    """Small drawings side by side in the order given: for each sheet the top left corners of those on it.

    ValueError for one larger than the window.
    """
    sheets: list[list[Point]] = [[]]
    x = y = high = 0.0
    for wide, tall in sizes:
        if wide > window[0] + _NEAR or tall > window[1] + _NEAR:
            raise ValueError(f"{wide!r} x {tall!r} is larger than the window")
        if x and x + wide > window[0] + _NEAR:
            x, y, high = 0.0, y + high + gap, 0.0
        if y and y + tall > window[1] + _NEAR:
            sheets.append([])
            x = y = high = 0.0
        sheets[-1].append((x, y))
        x, high = x + wide + gap, max(high, tall)
    return [sheet for sheet in sheets if sheet]
