"""Tins in plan, drawn small from their own outlines to one scale, beside their names."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import dist, hypot

from markupsafe import Markup

from tinbook.tins import Ring, Tin

EM = 0.006
"""em for 1 mm: a 20 cm tin stands 1.2 em high."""
CLOSE_MM = 0.6
"""How far a drawn line may stray from the outline: nothing at this size."""
BOXES = ("square", "rectangle", "sheet", "loaf")
ROUNDS = ("round", "ring", "cups")
SAME_RADIUS = 1e-6
"""How far the corners of a drawn circle may lie off it, as a share: they are sums of sines."""
LOW = 0.15
"""Where a round-bottomed tin is cut for the dashed ring: at its very base there is none."""


@dataclass(frozen=True, slots=True)
class PlanPaths:
    """SVG paths in mm of the tin, 0 0 in its upper left: what is seen, and what lies lower (dashed)."""

    width: float
    height: float
    solid: str
    dashed: str


@lru_cache(maxsize=4096)
def drawn(tin: Tin) -> PlanPaths:
    """A tin as its outline draws it; for a tin in parts, each of them, side by side."""
    shape, sizes = tin.kind, tin.sizes_mm
    width, height = shape.bounds_mm(sizes) if not shape.in_trays else (sizes[0], sizes[0])
    lefts = [width * (part + 0.5) for part in range(shape.parts)]
    low = 0.0 if shape.area_mm2(sizes, 0.0) else LOW
    sloping = shape.area_mm2(sizes, low) != shape.area_mm2(sizes)
    rims, bases = shape.outline_mm(sizes), shape.outline_mm(sizes, low) if sloping else ()
    solid, dashed = (
        "".join(_path(ring, left, height / 2) for left in lefts for ring in rings) for rings in (rims, bases)
    )
    return PlanPaths(width * shape.parts, height, solid, dashed)


@lru_cache(maxsize=4096)
def icon(tin: Tin, owned: bool = True, em: float = EM) -> Markup:
    """A tin as HTML, `em` for 1 mm; dashed if it is not owned."""
    return plan(tin, em, "" if owned else " tb-unowned")


def plan(tin: Tin, em: float, kind: str = "") -> Markup:
    """A tin as HTML, `em` for 1 mm, with a class for its kind: as the browser's `plan` draws it."""
    if tin.shape in BOXES + ROUNDS:
        width, height = sorted(tin.bounds_mm, reverse=True) if tin.shape in BOXES else (tin.sizes_mm[0],) * 2
        round_kind = f"{' tb-round' if tin.shape in ROUNDS else ''}{' tb-tube' if tin.shape == 'ring' else ''}"
        return Markup('<i class="tb-plan{}{}" style="width:{:.2f}em;height:{:.2f}em"></i>').format(
            round_kind, kind, width * em, height * em
        )
    made = drawn(tin)
    dashed = Markup('<path d="{}"/>').format(made.dashed) if made.dashed else ""
    box = f"0 0 {made.width:.0f} {made.height:.0f}"
    return Markup(
        '<svg class="tb-drawn{}" viewBox="{}" style="width:{:.2f}em;height:{:.2f}em" aria-hidden="true">'
        '<path d="{}"/>{}</svg>'
    ).format(kind, box, made.width * em, made.height * em, made.solid, dashed)


def paths(tin: Tin) -> tuple[float | str, ...] | None:
    """What the browser draws a tin with: width, height and paths; nothing where width and length say it all."""
    if tin.shape in BOXES + ROUNDS:
        return None
    made = drawn(tin)
    return (round(made.width), round(made.height), made.solid, *((made.dashed,) if made.dashed else ()))


def _path(ring: Ring, left: float, top: float) -> str:
    """A ring as an SVG path, moved so that its middle is at (left, top)."""
    radius = hypot(*ring[0])
    if len(ring) > 100 and all(abs(hypot(x, y) - radius) < SAME_RADIUS * radius for x, y in ring):
        half = f"a{_number(radius)} {_number(radius)} 0 1 0"
        across = _number(2 * radius)
        return f"M{_number(left - radius)} {_number(top)}{half} {across} 0{half} -{across} 0z"
    points = [(left + x, top - y) for x, y in ring]
    far = max(range(len(points)), key=lambda k: dist(points[0], points[k]))
    thinned = _thinned(points[: far + 1])[:-1] + _thinned([*points[far:], points[0]])[:-1]
    return "M" + "L".join(f"{_number(x)} {_number(y)}" for x, y in thinned) + "z"


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _thinned(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Both ends, and those points between them without which the line would leave its course."""
    (x1, y1), (x2, y2) = points[0], points[-1]
    long = dist(points[0], points[-1]) or 1.0
    off = [abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / long for x, y in points]
    far = max(range(len(points)), key=off.__getitem__)
    if off[far] <= CLOSE_MM:
        return [points[0], points[-1]]
    return _thinned(points[: far + 1])[:-1] + _thinned(points[far:])
