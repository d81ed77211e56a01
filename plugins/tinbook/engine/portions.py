"""How many portions a cake cuts into, and how the pieces are shared among strips or rings.

Sizes are areas in mm², or volumes where a cake's height varies. Every rule here except the grid holds at any scale, so
a larger cake never serves fewer.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, floor, pi, sqrt

from tinbook.engine.tolerance import GRAIN, whole_down, whole_up

NEAR = 0.07
"""How far a piece may be from the mean of all, if strips are equally wide."""
LARGEST = 1.3
"""The largest piece, in portions."""
YIELDS = ((150.0, 0.83), (180.0, 0.9), (200.0, 0.975))
"""What makers serve from a round, as a share of area over portion, by its width in mm; its edge gives no whole pieces.
From 20 cm up, the middle of what is served, 0.94 to 1.01. Common practice, no source.
"""
SMALL_YIELD = 0.75
"""The same for rounds under 15 cm. Our own judgement."""
LONG, LONG_YIELD = 1.2, 5.0 / 6.0
"""A cake this many times as long as wide has slivers at its ends and serves less, down to this share of an equal round.
By the one published chart of ovals.
"""
ALIKE = 1e-4
"""How far strips that mirror each other may differ, as a share of the cake: its outline is drawn point by point."""


def most(size: float, portion: float) -> int:
    """The most whole portions a cake of this size makes. ValueError unless both are above 0."""
    if not (size > 0.0 and portion > 0.0):
        raise ValueError(f"no portions of {portion!r} from {size!r}")
    return floor(size / portion * (1.0 + GRAIN))


def served(size: float, portion: float, long: float = 1.0) -> int:
    """How many portions a maker serves from a cake that is not cut in a whole grid.

    Area over portion times the share that is served, and at least one where the cake holds one. `long`: length over
    width. ValueError unless size and portion are above 0.
    """
    share = yielded(size) * min(1.0, max(LONG_YIELD, LONG / long))
    return min(most(size, portion), max(1, most(size * share, portion)))


def yielded(size: float) -> float:
    """The share of area over portion served from a cake of this area in mm²: that of a round of equal area,
    interpolated between the known widths. It never falls as cakes grow.
    """
    width = sqrt(4.0 * size / pi) * (1.0 + GRAIN)
    if width < YIELDS[0][0]:
        return SMALL_YIELD
    for (narrow, less), (wide, more) in pairwise(YIELDS):
        if width < wide:
            return less + (more - less) * (width - narrow) / (wide - narrow)
    return YIELDS[-1][1]


def fewest(size: float, portion: float, over: float) -> int:
    """The fewest equal pieces of at most `over` portions each; never more than `most`."""
    return min(most(size, portion), ceil(size / portion / over * (1.0 - GRAIN)))


def grid(width: float, length: float, short: float, long: float) -> tuple[bool, tuple[int, ...]]:
    """Whole portions `short` by `long` in a rectangle: whether the rows run up and down, and the pieces in each row.

    The last rows are cut the other way where the strip left over allows. Of the two ways to lay them, the one that
    gives more; on a tie, rows from side to side and all alike.
    """
    ways = []
    for upright in (False, True):
        side, along = (length, width) if upright else (width, length)
        rows = _rows(side, along, short, long) if _whole(side, short) and _whole(along, long) else ()
        ways.append((sum(rows), len(set(rows)) == 1, not upright, rows))
    _, _, level, rows = max(ways)
    return not level, rows


def _rows(side: float, along: float, short: float, long: float) -> tuple[int, ...]:
    """Rows of portions with `long` along one side, side by side; then rows laid across in what is left."""
    rows, across = _whole(along, long), _whole(side, long)
    turned = _whole(along - rows * long, short) if across else 0
    return (_whole(side, short),) * rows + (across,) * turned


def _whole(room: float, piece: float) -> int:
    return floor(room / piece * (1.0 + GRAIN) + GRAIN)


def shared(sizes: Sequence[float], pieces: int, near: float = NEAR) -> tuple[int, ...] | None:
    """How many of `pieces` each strip gives so that every piece is within `near` of the mean; None if impossible.

    Strips that mirror each other give the same number.
    """
    mean = sum(sizes) / pieces
    least = [max(1, whole_up(size / (mean * (1.0 + near)))) for size in sizes]
    limit = [whole_down(size / (mean * (1.0 - near))) for size in sizes]
    if any(low > high for low, high in zip(least, limit, strict=True)):
        return None
    counts = [min(max(round(size / mean), low), high) for size, low, high in zip(sizes, least, limit, strict=True)]
    alike, last = mirrored(sizes), len(sizes) - 1
    while missing := pieces - sum(counts):
        step = 1 if missing > 0 else -1
        free = [strip for strip in range(last + 1) if least[strip] <= counts[strip] + step <= limit[strip]]
        if alike:
            free = [strip for strip in free if strip * 2 == last or (abs(missing) > 1 and strip * 2 < last)]
        if not free:
            return None
        chosen = max(free, key=lambda strip: step * (sizes[strip] / mean - counts[strip]))
        counts[chosen] += step
        if alike and chosen * 2 != last:
            counts[last - chosen] += step
    return tuple(counts)


def apportioned(sizes: Sequence[float], pieces: int) -> tuple[int, ...]:
    """`pieces` shared out by largest remainders, at least one each.

    Strips that mirror each other give the same number if possible. ValueError for fewer pieces than strips.
    """
    strips = len(sizes)
    if pieces < strips:
        raise ValueError(f"{pieces} pieces are too few for {strips} strips")
    mean, half = sum(sizes) / pieces, strips // 2
    middle = _near(sizes[half] / mean, pieces % 2) if strips % 2 else 0
    rest = pieces - middle
    if strips > 1 and mirrored(sizes) and rest % 2 == 0 and rest // 2 >= half:
        side = _remainders(sizes[:half], rest // 2)
        return (*side, *((middle,) if strips % 2 else ()), *reversed(side))
    return _remainders(sizes, pieces)


def _near(value: float, odd: int) -> int:
    """The odd (or even) whole number above 0 nearest to a value."""
    return max(2 - odd, 2 * round((value - odd) / 2.0) + odd)


def _remainders(sizes: Sequence[float], pieces: int) -> tuple[int, ...]:
    mean = sum(sizes) / pieces
    counts = [max(1, whole_down(size / mean)) for size in sizes]
    while missing := pieces - sum(counts):
        step = 1 if missing > 0 else -1
        free = [strip for strip, count in enumerate(counts) if count + step >= 1]
        counts[max(free, key=lambda strip: step * (sizes[strip] / mean - counts[strip]))] += step
    return tuple(counts)


def mirrored(sizes: Sequence[float]) -> bool:
    """Whether the strips mirror each other about the middle."""
    whole = sum(sizes)
    return all(abs(size - facing) <= ALIKE * whole for size, facing in zip(sizes, reversed(sizes), strict=True))


def spread(sizes: Sequence[float], counts: Sequence[int]) -> float:
    """How far the worst piece lies from the mean, as a share of the mean."""
    mean = sum(sizes) / sum(counts)
    return max(abs(size / count / mean - 1.0) for size, count in zip(sizes, counts, strict=True))


def rings(depth: float, long: float) -> int:
    """How many rings to cut from a cake `depth` from its edge to its middle, or to its tube: each as deep as a portion
    is long; or wedges from edge to middle, as long as they are not much longer than that.
    """
    return 1 if depth <= 1.6 * long else round(depth / long)


def within(radius: float, outside: float, inside: float, dome: bool) -> float:
    """The share of a cake within a radius of its middle, or between its tube and that radius.

    By area for an upright cake; by volume for a half ball: 1 − (1 − r²/R²)^(3/2).
    """
    if dome:
        return 1.0 - float((1.0 - (radius / outside) ** 2) ** 1.5)
    return (radius**2 - inside**2) / (outside**2 - inside**2)


def radius_of(share: float, outside: float, inside: float, dome: bool) -> float:
    """The inverse of `within`."""
    if dome:
        return outside * sqrt(1.0 - float((1.0 - share) ** (2.0 / 3.0)))
    return sqrt(inside**2 + share * (outside**2 - inside**2))


def grams(portion_mm2: float, height_mm: float, gravity: float, rise: float, loss: float) -> float:
    """The weight of a portion of baked cake, without filling or coats: area × height × weight of 1 ml baked.

    1 ml of batter weighing `gravity` g becomes `rise` ml, and loses a share `loss` of its weight.
    """
    return portion_mm2 * height_mm / 1000.0 * gravity * (1.0 - loss) / rise
