"""The time in the oven against the width of the tin, drawn: minutes to points and paths."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor

from tinbook.pages.base.drawings import Tick
from tinbook.pages.spelling import formats
from tinbook.plans.baking.times import BakePoint, Time
from tinbook.plans.baking.tin_times import TinTimes
from tinbook.tins.trade import called_mm
from tinbook.units import Sold

LEFT, RIGHT, TOP, GROUND = 46, 446, 22, 190
"""The area of the chart, in the drawing's own units."""
STEPS = (5, 10, 15, 20, 30, 60, 120, 180, 240)
MOST_STEPS = 5
WIDE_MM = 50.0
SAID_MM = (150.0, 200.0, 300.0)
"""Widths given to readers who cannot see the drawing, those for which there is a tin."""


@dataclass(frozen=True, slots=True)
class Ring:
    """Where the recipe's own time is drawn."""

    x: int
    y: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeChart:
    """The drawing: axes with their figures, the band that holds 8 bakes in 10, the likeliest time, and the bakes: those
    in the log as `dots`, the recipe's own as a `ring`, if it has one. `words` says the same."""

    across: tuple[Tick, ...]
    up: tuple[Tick, ...]
    lines: str
    band: str
    curve: str
    dots: str
    ring: Ring | None
    words: str


@dataclass(frozen=True, slots=True)
class Scale:
    """Where a width and a time lie."""

    left_mm: float
    right_mm: float
    top_min: float

    def x(self, width_mm: float) -> int:
        """Across."""
        return round(LEFT + (RIGHT - LEFT) * (width_mm - self.left_mm) / (self.right_mm - self.left_mm))

    def y(self, minutes: float) -> int:
        """Up, which an SVG counts downwards."""
        return round(GROUND - (GROUND - TOP) * minutes / self.top_min)

    def path(self, points: Iterable[tuple[float, float]]) -> str:
        """A line through widths and times."""
        return "M" + "L".join(f"{self.x(width)} {self.y(minutes)}" for width, minutes in points)


def bake_chart(times: TinTimes) -> BakeChart:
    """The chart of one mixture."""
    curve, points = times.curve, times.known.points
    widths = [width for width, _ in curve]
    top = max([time.high_min for _, time in curve] + [point.minutes for point in points])
    left_mm = floor(widths[0] / WIDE_MM) * WIDE_MM
    # even with tins all of one width, the chart keeps some width
    scale = Scale(left_mm, max(ceil(widths[-1] / WIDE_MM) * WIDE_MM, left_mm + WIDE_MM), top)
    step = next((step for step in STEPS if top / step <= MOST_STEPS), STEPS[-1])
    up = tuple(Tick(scale.y(minutes), formats.number(minutes)) for minutes in range(0, floor(top) + 1, step))
    tens = range(ceil(scale.left_mm / 100), floor(scale.right_mm / 100) + 1)
    across = tuple(Tick(scale.x(ten * 100.0), str(ten * 10)) for ten in tens)
    band = [(width, time.high_min) for width, time in curve] + [(width, time.low_min) for width, time in curve[::-1]]
    own = next((point for point in points if point.entry is None), None)
    return BakeChart(
        across=across,
        up=up,
        lines="".join(f"M{LEFT} {tick.at}H{RIGHT}" for tick in up)
        + "".join(f"M{tick.at} {GROUND}v6" for tick in across),
        band=scale.path(band) + "z",
        curve=scale.path((width, time.likely_min) for width, time in curve),
        dots="".join(f"M{scale.x(point.width_mm)} {scale.y(point.minutes)}h0" for point in points if point.entry),
        ring=Ring(scale.x(own.width_mm), scale.y(own.minutes)) if own else None,
        words=_words(curve, points, times.known.batch.tins[0][1].sold),
    )


def _words(curve: Sequence[tuple[float, Time]], points: Sequence[BakePoint], sold: Sold) -> str:
    """Tins by their names in centimetres: one sold as 20 cm or 8 in is 20 cm, whichever is true."""

    def called(width: float) -> float:
        return called_mm(round(width, 2), sold)

    spans = [
        f"{formats.number(called(width) / 10)} cm: {formats.number(time.low_shown_min)} to "
        f"{formats.number(time.high_shown_min)} min"
        for width, time in curve
        if called(width) in SAID_MM
    ]
    baked = [
        f"{formats.number(round(called(point.width_mm) / 10, 1))} cm {formats.number(round(point.minutes))} min"
        for point in points
    ]
    return "; ".join([*spans, *(["baked: " + ", ".join(baked)] if baked else [])])
