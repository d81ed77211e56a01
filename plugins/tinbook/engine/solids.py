"""Modelled solids, sheets and ropes: volumes, weights, silhouettes. Lengths mm, areas mm², volumes mm³.

Sizes come in the order they are written: ball d; egg, cone, teardrop, cylinder d x L; frustum d x L and its top; slab a
x b x c. At scale s, lengths grow by s, solids and ropes by s³, and sheets by s², as they keep their thickness.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import acos, cos, pi, sin, sqrt

from tinbook.tins.shape import Ring

MM3_IN_ML = 1000.0
_ROUND_POINTS = 120
Sizes = tuple[float, ...]


def ball_mm3(d: float) -> float:
    """π/6 d³."""
    return pi / 6.0 * d**3


def egg_mm3(d: float, long: float) -> float:
    """π/6 d² L: an ellipsoid of revolution. An egg with one blunt end, of the same d and L, is close to it."""
    return pi / 6.0 * d**2 * long


def cone_mm3(d: float, high: float) -> float:
    """π/12 d² h."""
    return pi / 12.0 * d**2 * high


def frustum_mm3(d: float, high: float, top: float) -> float:
    """π/12 h (d² + d t + t²)."""
    return pi / 12.0 * high * (d**2 + d * top + top**2)


def cylinder_mm3(d: float, long: float) -> float:
    """π/4 d² L; a rope is one."""
    return pi / 4.0 * d**2 * long


def slab_mm3(wide: float, long: float, thick: float) -> float:
    """a b c."""
    return wide * long * thick


def teardrop_mm3(d: float, long: float) -> float:
    """A ball with the cone that touches it all round, L > d from the ball's foot to the tip.

    With r = d/2 and D = L - r from the ball's centre to the tip, they meet at z = r²/D above the centre on a circle of
    a² = r² (1 - r²/D²): ball below it, π/3 k² (3 r - k) with k = r + z; cone above it, π/3 a² (D - z).
    """
    r = d / 2.0
    if not long > d:
        raise ValueError(f"a teardrop is longer than it is across: {long!r} > {d!r}")
    tip = long - r
    z = r * r / tip
    below = r + z
    return pi / 3.0 * (below**2 * (3.0 * r - below) + r * r * (1.0 - (r / tip) ** 2) * (tip - z))


VOLUMES: Mapping[str, Callable[..., float]] = {
    "ball": ball_mm3,
    "egg": egg_mm3,
    "cone": cone_mm3,
    "frustum": frustum_mm3,
    "teardrop": teardrop_mm3,
    "cylinder": cylinder_mm3,
    "slab": slab_mm3,
}


def solid_mm3(form: str, sizes: Sizes, how: str = "") -> float:
    """The volume of a solid, or half of it for a half. Flattening does not change it."""
    return VOLUMES[form](*sizes) * (0.5 if how == "half" else 1.0)


def oval_mm2(wide: float, high: float) -> float:
    """π/4 a b; a disc where both are equal."""
    return pi / 4.0 * wide * high


def flattened_mm(volume_mm3: float, wide: float, high: float) -> float:
    """The thickness of a solid pressed to an oval: volume / area."""
    return volume_mm3 / oval_mm2(wide, high)


def rings_mm2(rings: Sequence[Ring]) -> float:
    """The area inside the first ring less that of the others, by the shoelace formula."""
    outer, *holes = (abs(_twice(ring)) / 2.0 for ring in rings)
    return outer - sum(holes)


def _twice(ring: Ring) -> float:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)


def sheet_mm3(area_mm2: float, thick: float) -> float:
    """Area × thickness."""
    return area_mm2 * thick


def grams(volume_mm3: float, g_per_ml: float) -> float:
    """The weight of a volume of paste."""
    return volume_mm3 / MM3_IN_ML * g_per_ml


def depth_mm(form: str, sizes: Sizes, how: str = "", to: Sizes = ()) -> float:
    """The thickness of a solid from front to back, lying on its back: what a support from behind can go into."""
    if how == "flattened":
        return flattened_mm(solid_mm3(form, sizes), *to)
    whole = sizes[2] if form == "slab" else sizes[0]
    return whole / 2.0 if how == "half" else whole


def silhouette(form: str, sizes: Sizes, how: str = "", to: Sizes = ()) -> Ring:
    """The outline of a solid seen from the front, centred on its bounds, y upwards."""
    if how == "flattened":
        return oval(*to)
    if form == "ball":
        return oval(sizes[0], sizes[0])
    if form == "egg":
        return oval(sizes[0], sizes[1])
    x, y = sizes[0] / 2.0, sizes[1] / 2.0
    if form == "cone":
        return ((-x, -y), (x, -y), (0.0, y))
    if form == "frustum":
        top = sizes[2] / 2.0
        return ((-x, -y), (x, -y), (top, y), (-top, y))
    if form == "teardrop":
        return _teardrop(x, sizes[1])
    return oblong(sizes[0], sizes[1])


def _teardrop(r: float, long: float) -> Ring:
    """The round end below: an arc from where the left flank touches it, round the foot, to the right; then the tip."""
    centre, tip = r - long / 2.0, long - r
    open_ = acos(r / tip)
    turns = (pi / 2.0 + open_ + (2.0 * pi - 2.0 * open_) * k / _ROUND_POINTS for k in range(_ROUND_POINTS + 1))
    arc = tuple((r * cos(turn), centre + r * sin(turn)) for turn in turns)
    return (*arc, (0.0, long / 2.0))


def oval(wide: float, high: float) -> Ring:
    """Points on an ellipse about (0, 0), anticlockwise."""
    turns = (2.0 * pi * k / _ROUND_POINTS for k in range(_ROUND_POINTS))
    return tuple((wide / 2.0 * cos(turn), high / 2.0 * sin(turn)) for turn in turns)


def oblong(wide: float, high: float) -> Ring:
    """The corners of a rectangle about (0, 0), anticlockwise."""
    x, y = wide / 2.0, high / 2.0
    return ((-x, -y), (x, -y), (x, y), (-x, y))


def scaled(rings: Sequence[Ring], s: float) -> tuple[Ring, ...]:
    """Every point s times as far from the middle."""
    return tuple(tuple((x * s, y * s) for x, y in ring) for ring in rings)


def bounds(rings: Sequence[Ring]) -> tuple[float, float]:
    """Width and height of the first ring."""
    xs, ys = zip(*rings[0], strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def twisted_mm(thick: float, strands: int) -> float:
    """How thick a rope is that so many equal strands are twisted into, side by side in a ring: the circle round them,
    t (1 + 1 / sin(π / n)), from geometry; one strand is as thick as it is."""
    return thick if strands < 2 else thick * (1.0 + 1.0 / sin(pi / strands))


def coil_mm(long: float, thick: float, turns: int = 0, round_mm: float = 0.0) -> float:
    """How wide a rope is across when it is coiled flat, turn against turn to the middle, after so many `turns` round
    something `round_mm` across: the disc of the area L t that it covers. 0 if nothing is left to coil.

    Twisting makes a rope a little shorter than its strands, so that a coil turns out a little smaller.
    """
    left = long - turns * pi * (round_mm + thick)
    return same_area_mm(left * thick) if left > 0.0 else 0.0


def same_area_mm(area_mm2: float) -> float:
    """The width of a disc of that area."""
    return 2.0 * sqrt(area_mm2 / pi)
