"""Marks repeated on a surface: how far apart, how many, and where. Lengths mm, areas mm².

pitch = gap + mark. Staggered: rows pitch √3/2 apart, each half a pitch along, n = area / (pitch² √3/2). Straight: n =
area / pitch². Bricks: courses of pitch × pitch, each half a pitch along.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import ceil, cos, hypot, radians, sin, sqrt
from typing import TYPE_CHECKING

from tinbook.engine.tolerance import GRAIN
from tinbook.tins.shape import Ring

if TYPE_CHECKING:
    import numpy as np

_TRIES = 6
_CLOSE, _GOOD = 0.004, 0.02
"""How many positions of the grid are tried along each side, and how near the area's number is near enough to stop, and
to stop turning the grid."""
_TURNS = tuple(radians(turn) for turn in (0.0, 90.0, 15.0, 7.5, 22.5))
Points = tuple[tuple[float, float], ...]


def pitches_mm(mark_mm: tuple[float, float], gap_mm: float, how: str) -> tuple[float, float]:
    """The distance from mark to mark along a row, and from row to row."""
    across, up = mark_mm[0] + gap_mm, mark_mm[1] + gap_mm
    return (across, up * sqrt(3.0) / 2.0) if how == "staggered" else (across, up)


def count_of(area_mm2: float, pitch_mm: tuple[float, float]) -> float:
    """How many marks an area takes: area over that of one cell."""
    return area_mm2 / (pitch_mm[0] * pitch_mm[1])


def places(rings: Sequence[Ring], pitch_mm: tuple[float, float], shifted: bool) -> Points:
    """The middles of the marks inside an outline (the first ring; the others are holes), row by row from the foot.

    The grid starts with a mark in the middle, and moves until its number is nearest to area over cell. With `shifted`,
    every second row is half a pitch along. A grid of equal sides may also be turned: a straight band has room for only
    a few rows, and turning makes up for it.
    """
    return _places(tuple(rings), pitch_mm, shifted)


@lru_cache(maxsize=256)
def _places(rings: tuple[Ring, ...], pitch_mm: tuple[float, float], shifted: bool) -> Points:
    import numpy as np
    import shapely

    area = shapely.Polygon(rings[0], rings[1:])
    shapely.prepare(area)
    left, low, right, high = area.bounds
    wanted = count_of(area.area, pitch_mm)
    middle = ((left + right) / 2.0, (low + high) / 2.0)
    reach = hypot(right - left, high - low) / 2.0
    columns, rows = (ceil(reach / pitch) + 2 for pitch in pitch_mm)
    across, up = np.meshgrid(np.arange(-columns, columns + 1), np.arange(-rows, rows + 1))
    xs = (across + (0.5 * (up % 2) if shifted else 0.0)).ravel() * pitch_mm[0]
    ys = up.ravel() * pitch_mm[1]
    # middle first, then half a pitch aside, then everything between
    moves = sorted(
        ((i / _TRIES, j / _TRIES) for i in range(_TRIES) for j in range(_TRIES)),
        key=lambda move: sum(0 if step == 0 else 1 if step == 0.5 else 2 for step in move),
    )
    equal = shifted and abs(pitch_mm[1] - pitch_mm[0] * sqrt(3.0) / 2.0) < GRAIN * pitch_mm[0]
    best: tuple[float, np.ndarray, np.ndarray] | None = None
    for turn in _TURNS if equal else _TURNS[:1]:
        for move in moves:
            along, off = xs + move[0] * pitch_mm[0], ys + move[1] * pitch_mm[1]
            x = middle[0] + along * cos(turn) - off * sin(turn)
            y = middle[1] + along * sin(turn) + off * cos(turn)
            kept = shapely.contains_xy(area, x, y)
            far = abs(int(kept.sum()) - wanted)
            if best is None or far < best[0]:
                best = (far, x[kept], y[kept])
            if far <= _CLOSE * wanted:
                break
        assert best is not None
        if best[0] <= max(_GOOD * wanted, 0.5):
            break
    assert best is not None
    return tuple(zip(best[1].tolist(), best[2].tolist(), strict=True))


def whole(rings: Sequence[Ring], points: Points, mark_mm: tuple[float, float]) -> int:
    """How many marks lie wholly on the surface; its edge cuts the rest."""
    if not points:
        return 0
    import numpy as np
    import shapely

    area = shapely.Polygon(rings[0], rings[1:])
    shapely.prepare(area)
    x, y = np.array(points).T
    kept = np.ones(len(points), dtype=bool)
    for turn in np.linspace(0.0, 2.0 * np.pi, 24, endpoint=False):
        kept &= shapely.contains_xy(area, x + mark_mm[0] / 2.0 * np.cos(turn), y + mark_mm[1] / 2.0 * np.sin(turn))
    return int(kept.sum())
