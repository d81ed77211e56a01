"""A drawing at actual size on sheets of paper: how many sheets, what each shows, and how to fit small drawings side by
side.

Lengths in mm, y downwards as on paper. A drawing larger than a sheet's window goes on several, each repeating `overlap`
of its neighbour: n windows of w cover n w - (n - 1) overlap.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from tinbook.engine.tolerance import GRAIN, fits, whole_up

Point = tuple[float, float]
Line = tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """What one sheet shows: its row and column, counted from 0, and the part of the drawing in its window."""

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
    """A, B, ... Z, AA, AB.

    >>> row_name(25), row_name(26)
    ('Z', 'AA')
    """
    more, last = divmod(row, 26)
    return (row_name(more - 1) if more else "") + chr(ord("A") + last)


def sheets_for(length: float, window: float, overlap: float) -> int:
    """How many windows side by side a length takes. ValueError for an overlap as wide as the window."""
    if not 0.0 <= overlap < window:
        raise ValueError(f"sheets of {window!r} cannot overlap by {overlap!r}")
    if fits(length, window):
        return 1
    return max(2, whole_up((length - overlap) / (window - overlap)))


def tiled(bounds: tuple[float, float, float, float], window: tuple[float, float], overlap: float) -> tuple[Tile, ...]:
    """The tiles of a drawing with these bounds (left, top, right, bottom), row by row, the drawing centred on them."""
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
    """The pieces of a line that lie in a tile, ends cut at its edge."""
    if len(line) > 1 and all(tile.left <= x <= tile.right and tile.top <= y <= tile.bottom for x, y in line):
        yield tuple(line)
        return
    run: list[Point] = []
    for begin, finish in pairwise(line):
        part = _inside(begin, finish, tile)
        if part is None:
            if len(run) > 1:
                yield tuple(run)
            run = []
            continue
        start, end = part
        if not run or hypot(run[-1][0] - start[0], run[-1][1] - start[1]) > GRAIN:
            if len(run) > 1:
                yield tuple(run)
            run = [start]
        run.append(end)
    if len(run) > 1:
        yield tuple(run)


def _inside(start: Point, finish: Point, tile: Tile) -> tuple[Point, Point] | None:
    """The part of a straight stroke that lies in a tile (Liang and Barsky's clipping); None if there is none."""
    (x, y), dx, dy = start, finish[0] - start[0], finish[1] - start[1]
    begin, end = 0.0, 1.0
    for step, room in (
        (-dx, x - tile.left), (dx, tile.right - x), (-dy, y - tile.top), (dy, tile.bottom - y),
    ):  # fmt: skip
        if step == 0.0:
            if room < 0.0:
                return None
            continue
        share = room / step
        if step < 0.0:
            begin = max(begin, share)
        else:
            end = min(end, share)
        if begin > end:
            return None
    if begin == end and (dx or dy):
        return None
    first = start if begin == 0.0 else (x + begin * dx, y + begin * dy)
    last = finish if end == 1.0 else (x + end * dx, y + end * dy)
    return first, last


def shelved(sizes: Iterable[tuple[float, float]], window: tuple[float, float], gap: float) -> list[list[Point]]:
    """Small drawings side by side in the order given: for each sheet, the top left corners of those on it.

    ValueError for one larger than the window.
    """
    sheets: list[list[Point]] = [[]]
    x = y = high = 0.0
    for wide, tall in sizes:
        if not (fits(wide, window[0]) and fits(tall, window[1])):
            raise ValueError(f"{wide!r} x {tall!r} is larger than the window")
        if x and not fits(x + wide, window[0]):
            x, y, high = 0.0, y + high + gap, 0.0
        if y and not fits(y + tall, window[1]):
            sheets.append([])
            x = y = high = 0.0
        sheets[-1].append((x, y))
        x, high = x + wide + gap, max(high, tall)
    return [sheet for sheet in sheets if sheet]
