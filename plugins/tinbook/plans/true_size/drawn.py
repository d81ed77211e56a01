"""A template at actual size, as a neutral drawing: strokes, words and a grain, in mm, y downwards as on paper."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import cos, pi, sin
from typing import Literal

from tinbook.engine import rounding
from tinbook.plans.base.saying import Saying, saying
from tinbook.tins import Ring, Tin

Point = tuple[float, float]
Kind = Literal["cut", "inner", "fold", "centre", "hidden", "leader"]
KINDS: Mapping[Kind, Saying] = {
    "cut": saying("line_cut"),
    "inner": saying("line_inner"),
    "fold": saying("line_fold"),
    "centre": saying("line_centre"),
    "hidden": saying("line_hidden"),
    "leader": saying("line_leader"),
}
"""What each line means, as given in the key beside a drawing."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through `points`; a closed one ends where it began."""

    kind: Kind
    points: tuple[Point, ...]

    @classmethod
    def ring(cls, kind: Kind, ring: Ring) -> Stroke:
        """A closed one, round points of an outline with y upwards."""
        flipped = tuple((x, -y) for x, y in ring)
        return cls(kind, (*flipped, flipped[0]))

    def moved(self, by: Point) -> Stroke:
        """The same, moved."""
        return replace(self, points=tuple((x + by[0], y + by[1]) for x, y in self.points))


@dataclass(frozen=True, slots=True)
class Label:
    """Words, or a number, centred on `at`; `strong` for the letter of a part."""

    text: Saying | str
    at: Point
    strong: bool = False

    def moved(self, by: Point) -> Label:
        """The same, moved."""
        return replace(self, at=(self.at[0] + by[0], self.at[1] + by[1]))


@dataclass(frozen=True, kw_only=True)
class Template:
    """One drawing to print and use. `key` suits a file name; `notes` go on every sheet."""

    key: str
    name: Saying
    size: Saying
    cake: Tin
    strokes: tuple[Stroke, ...]
    labels: tuple[Label, ...] = ()
    notes: tuple[Saying, ...] = ()

    @cached_property
    def bounds_mm(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom of its strokes."""
        return bounds(self.strokes)

    @property
    def kinds(self) -> tuple[Kind, ...]:
        """The kinds of lines it has, in the order of the key."""
        used = {stroke.kind for stroke in self.strokes}
        return tuple(kind for kind in KINDS if kind in used)


def bounds(strokes: Iterable[Stroke]) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of strokes."""
    points = [point for stroke in strokes for point in stroke.points]
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def cross(at: Point, reach: float, kind: Kind = "centre") -> tuple[Stroke, Stroke]:
    """Two lines through a middle."""
    x, y = at
    return Stroke(kind, ((x - reach, y), (x + reach, y))), Stroke(kind, ((x, y - reach), (x, y + reach)))


def axes(strokes: Sequence[Stroke]) -> tuple[Stroke, Stroke]:
    """The middle lines of strokes, running a little past their bounds."""
    left, top, right, bottom = bounds(strokes)
    x, y = (left + right) / 2.0, (top + bottom) / 2.0
    return Stroke("centre", ((left, y), (right, y))), Stroke("centre", ((x, top), (x, bottom)))


def grain(at: Point, length: float) -> tuple[Stroke, ...]:
    """A double-headed arrow: the way the paste was rolled."""
    (x, y), half, head = at, length / 2.0, min(2.0, length / 6.0)
    return (
        Stroke("leader", ((x, y - half), (x, y + half))),
        Stroke("leader", ((x - head, y - half + 2.0 * head), (x, y - half), (x + head, y - half + 2.0 * head))),
        Stroke("leader", ((x - head, y + half - 2.0 * head), (x, y + half), (x + head, y + half - 2.0 * head))),
    )


def oval(at: Point, wide: float, high: float, corners: int) -> tuple[Point, ...]:
    """The points of a closed oval about a middle; a circle where it is as wide as high."""
    turns = [2.0 * pi * corner / corners for corner in range(corners + 1)]
    return tuple((at[0] + wide / 2.0 * cos(turn), at[1] + high / 2.0 * sin(turn)) for turn in turns)


def ruler_mm(length_mm: float) -> float:
    """A length to half a millimetre, as read on a ruler."""
    return rounding.half_up(length_mm, 0.5)


def ruler_size(*lengths_mm: float) -> Saying:
    """Lengths of one thing, as read on a ruler."""
    return saying("ruler_size", lengths_mm=tuple(ruler_mm(length) for length in lengths_mm))
