"""Tins of several sizes on the shelves of one oven, and the fewest loads that take them all."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from itertools import product
from math import prod
from typing import NamedTuple

from tinbook.engine.tolerance import GRAIN

MOST_STEPS = 20_000
"""How many places are tried for a load before it counts as not fitting."""
MOST_STATES = 4096
"""Up to this many combinations left to bake, the fewest loads are certain; past that, loads are filled one
after another."""

Sides = tuple[float, float]
Counts = tuple[int, ...]


class OnShelf(NamedTuple):
    """A tin's bounding rectangle in its place, mm from the shelf's near left corner: which tin, and which way round."""

    tin: int
    x_mm: float
    y_mm: float
    wide_mm: float
    deep_mm: float


class LeastLoads(NamedTuple):
    """How many tins of each kind go into each load, and whether it is certain that fewer loads or minutes will not
    do."""

    loads: tuple[Counts, ...]
    proven: bool


def laid_out(
    tins_mm: tuple[Sides, ...], shelf_mm: Sides, shelves: int, clearance_mm: float
) -> tuple[tuple[OnShelf, ...], ...] | None:
    """Tins on `shelves` shelves of `shelf_mm`, with `clearance_mm` between them and to the edges; None if they do
    not fit.

    tins_mm: (width, depth) of each, mm; it may be turned. A tin stands at the near left corner, or against the right
    side of one and behind another: if any layout fits, so does one of these. Every such layout is tried, up to
    MOST_STEPS. ValueError for a size that is not positive, or a negative clearance.
    """
    if not (all(side > 0.0 for tin in (*tins_mm, shelf_mm) for side in tin) and clearance_mm >= 0.0 and shelves > 0):
        raise ValueError("sizes must be more than 0 and the clearance at least 0")
    order = sorted(range(len(tins_mm)), key=lambda tin: (-max(tins_mm[tin]), -min(tins_mm[tin]), tin))
    found = _laid_out(tuple(tins_mm[tin] for tin in order), shelf_mm, shelves, clearance_mm)
    if found is None:
        return None
    return tuple(tuple(each._replace(tin=order[each.tin]) for each in shelf) for shelf in found)


@lru_cache(maxsize=4096)
def _laid_out(
    tins_mm: tuple[Sides, ...], shelf_mm: Sides, shelves: int, clearance_mm: float
) -> tuple[tuple[OnShelf, ...], ...] | None:
    """The same for tins from large to small."""
    # a clearance on two sides of each tin and one off the shelf account for every gap
    room = shelf_mm[0] - clearance_mm + GRAIN, shelf_mm[1] - clearance_mm + GRAIN
    grown = [(wide + clearance_mm, deep + clearance_mm) for wide, deep in tins_mm]
    if sum(wide * deep for wide, deep in grown) > shelves * room[0] * room[1]:
        return None
    placed: list[list[OnShelf]] = [[] for _ in range(shelves)]
    steps = 0

    def put(left: frozenset[int]) -> bool:
        nonlocal steps
        if not left:
            return True
        # of tins alike the first is as good as any
        alike = {grown[tin]: tin for tin in sorted(left, reverse=True)}
        for tin in sorted(alike.values()):
            for on, place in _places(placed, grown[tin], room):
                steps += 1
                if steps > MOST_STEPS:
                    return False
                placed[on].append(place._replace(tin=tin))
                if put(left - {tin}):
                    return True
                placed[on].pop()
        return False

    if not put(frozenset(range(len(tins_mm)))):
        return None
    return tuple(
        tuple(
            OnShelf(
                tin=each.tin,
                x_mm=each.x_mm + clearance_mm,
                y_mm=each.y_mm + clearance_mm,
                wide_mm=each.wide_mm - clearance_mm,
                deep_mm=each.deep_mm - clearance_mm,
            )
            for each in shelf
        )
        for shelf in placed
    )


def _places(placed: Sequence[Sequence[OnShelf]], grown: Sides, room: Sides) -> Iterator[tuple[int, OnShelf]]:
    """Where a tin can go next to those already placed, on each shelf in use and one more."""
    for on, shelf in enumerate(placed):
        ends = sorted({0.0, *(each.x_mm + each.wide_mm for each in shelf)})
        backs = sorted({0.0, *(each.y_mm + each.deep_mm for each in shelf)})
        for (y, x), (wide, deep) in product(product(backs, ends), dict.fromkeys((grown, grown[::-1]))):
            place = OnShelf(tin=0, x_mm=x, y_mm=y, wide_mm=wide, deep_mm=deep)
            if x + wide <= room[0] and y + deep <= room[1] and not any(_overlap(place, each) for each in shelf):
                yield on, place
        if not shelf:
            return


def _overlap(one: OnShelf, other: OnShelf) -> bool:
    """Whether two rectangles share more than an edge."""
    across = min(one.x_mm + one.wide_mm, other.x_mm + other.wide_mm) - max(one.x_mm, other.x_mm)
    along = min(one.y_mm + one.deep_mm, other.y_mm + other.deep_mm) - max(one.y_mm, other.y_mm)
    return across > GRAIN and along > GRAIN


def least_loads(counts: Counts, minutes: Callable[[Counts], float | None]) -> LeastLoads | None:
    """The fewest loads that take `counts` tins of each kind, and of those the ones that take the least time together.

    minutes: how long a load with this many of each kind is in the oven; None for an impossible load, and then any with
    more in it is impossible too. None if some tin cannot go in even alone. By dynamic programming over what is left to
    bake.
    """
    known: dict[Counts, float | None] = {}

    def cost(load: Counts) -> float | None:
        if load not in known:
            known[load] = minutes(load)
        return known[load]

    alone = [tuple(int(kind == other) for other in range(len(counts))) for kind in range(len(counts))]
    if any(count and cost(load) is None for count, load in zip(counts, alone, strict=True)):
        return None
    if prod(count + 1 for count in counts) > MOST_STATES:
        return LeastLoads(tuple(_filled(counts, cost)), False)
    best: dict[Counts, tuple[int, float, tuple[Counts, ...]]] = {(0,) * len(counts): (0, 0.0, ())}

    def of(left: Counts) -> tuple[int, float, tuple[Counts, ...]]:
        if left not in best:
            found: list[tuple[int, float, tuple[Counts, ...]]] = []
            for load in _loads(left):
                took = cost(load)
                if took is not None:
                    rest = of(tuple(have - gone for have, gone in zip(left, load, strict=True)))
                    found.append((rest[0] + 1, round(rest[1] + took, 6), (load, *rest[2])))
            # the fullest first, where all else is the same
            best[left] = min(found, key=lambda each: (each[0], each[1], [[-n for n in load] for load in each[2]]))
        return best[left]

    return LeastLoads(of(counts)[2], True)


def _loads(left: Counts) -> Iterator[Counts]:
    """Every load from what is left that includes one of the first kind remaining."""
    first = next(kind for kind, count in enumerate(left) if count)
    ranges = [range(int(kind == first), count + 1) for kind, count in enumerate(left)]
    yield from product(*ranges)


def _filled(counts: Counts, cost: Callable[[Counts], float | None]) -> Iterator[Counts]:
    """Loads filled one after another, each with as many of the first kinds as go in."""
    left = list(counts)
    while any(left):
        load = [0] * len(left)
        for kind, count in enumerate(left):
            for _ in range(count):
                load[kind] += 1
                if cost(tuple(load)) is None:
                    load[kind] -= 1
                    break
        yield tuple(load)
        left = [have - gone for have, gone in zip(left, load, strict=True)]
