"""Charts of portions against size, as numbers: our plans as lines, a published chart as points."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from tinbook.pages.base.drawings import Tick, spread
from tinbook.pages.spelling import formats
from tinbook.plans.portions.glance import INCH_MM, Against, Glance, TinPortions
from tinbook.tins import SHAPES

WIDE, HIGH = 600.0, 380.0
LEFT, RIGHT, TOP, UNDER = 46.0, 118.0, 14.0, 46.0
LINE = 19.0
"""The least distance between two names."""
DASHES = ("", "7 4", "2 4", "12 4 2 4")
MARKS = {"Square": "square", "Round": "circle", "Hexagon": "triangle", "Heart": "cross", "Petal": "circle"}
"""How a shape's published points are drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """Our counts: a path, its dashes, its name and where that stands, and the published points as a path."""

    path: str
    dash: str
    name: str
    x: float
    y: float
    points: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A chart and the same in words."""

    title: str
    curves: tuple[Curve, ...]
    across: tuple[Tick, ...]
    up: tuple[Tick, ...]
    words: str
    has_points: bool


Points = Sequence[tuple[float, float]]


def charts(portions: Glance) -> tuple[Chart, ...]:
    """Dessert portions of rounds and squares, and of the other outlines; every kind of portion of rounds."""
    plain, odd = ("square", "round"), ("octagon", "hexagon", "heart", "petal")
    by_kind = {formats.title(kind): _ours(portions.tins, "round", kind) for kind in portions.portions}
    return tuple(
        chart
        for chart in (
            _chart("Dessert portions from squares and rounds", *_ours_and_theirs(portions, plain, "dessert")),
            _chart("Dessert portions from other outlines", *_ours_and_theirs(portions, odd, "dessert")),
            _chart("Every kind of portion from rounds", by_kind, {}),
        )
        if chart
    )


def _ours_and_theirs(
    portions: Glance, shapes: Iterable[str], kind: str
) -> tuple[Mapping[str, Points], Mapping[str, Points]]:
    ours = {SHAPES[shape].title: _ours(portions.tins, shape, kind) for shape in shapes}
    theirs = {SHAPES[shape].title: _published(portions.against, shape, kind) for shape in shapes}
    return ours, theirs


def _ours(tins: Iterable[TinPortions], shape: str, kind: str) -> Points:
    return [(row.tin.sizes_mm[0] / 10.0, row.cuts[kind].count) for row in tins if row.tin.shape == shape]


def _published(rows: Iterable[Against], shape: str, kind: str) -> Points:
    return [
        (row.served.inches[0] * INCH_MM / 10.0, getattr(row.served, kind)) for row in rows if row.served.shape == shape
    ]


def _chart(title: str, ours: Mapping[str, Points], theirs: Mapping[str, Points]) -> Chart | None:
    ours = {name: points for name, points in ours.items() if len(points) > 1}
    if not ours:
        return None
    every = [point for points in (*ours.values(), *theirs.values()) for point in points]
    low, high = min(x for x, _ in every), max(x for x, _ in every)
    top = max(y for _, y in every)
    step = next((step for step in (10, 20, 25, 50, 100) if top / step <= 6), 100 * -(-int(top) // 600))
    most = step * -(-top // step)

    def place(point: tuple[float, float]) -> tuple[float, float]:
        x = LEFT + (point[0] - low) / (high - low) * (WIDE - LEFT - RIGHT)
        return round(x, 1), round(HIGH - UNDER - point[1] / most * (HIGH - UNDER - TOP), 1)

    ends = sorted((place(points[-1])[1], name) for name, points in ours.items())
    heights = dict(zip((name for _, name in ends), spread([y for y, _ in ends], LINE), strict=True))
    curves = []
    for index, (name, points) in enumerate(ours.items()):
        placed = [place(point) for point in points]
        dots = "".join(_mark(MARKS[name], *place(point)) for point in theirs.get(name, ()))
        path = "M" + "L".join(f"{x} {y}" for x, y in placed)
        curves.append(
            Curve(
                path=path,
                dash=DASHES[index % len(DASHES)],
                name=f"{name} {points[-1][1]:g}",
                x=WIDE - RIGHT + 10.0,
                y=round(heights[name] + 5.0, 1),
                points=dots,
            )
        )
    words = "; ".join(
        f"{name}: {', '.join(f'{y:g} at {formats.number(round(x, 1))} cm' for x, y in points)}"
        for name, points in ours.items()
    )
    return Chart(
        title=title,
        curves=tuple(curves),
        across=tuple(Tick(place((size, 0))[0], f"{size}") for size in range(10, 45, 5) if low <= size <= high + 0.1),
        up=tuple(Tick(place((low, count))[1], f"{count:g}") for count in range(0, int(most) + 1, step)),
        words=f"{title}, by size. {words}",
        has_points=any(theirs.values()),
    )


def _mark(kind: str, x: float, y: float) -> str:
    return {
        "circle": f"M{x - 4:.1f} {y}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0",
        "square": f"M{x - 3.6:.1f} {y - 3.6:.1f}h7.2v7.2h-7.2z",
        "cross": f"M{x - 4:.1f} {y - 4:.1f}l8 8m-8 0l8 -8",
        "triangle": f"M{x} {y - 4.6:.1f}l4.4 8h-8.8z",
    }[kind]
