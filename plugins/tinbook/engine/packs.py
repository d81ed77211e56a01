"""Which packs to buy for an amount: whole ones, with the least left over, then as few as possible. In any one unit."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import gcd

from tinbook.engine.tolerance import whole_down, whole_up


def packs_for(need: float, sizes: Sequence[float]) -> tuple[tuple[int, float], ...]:
    """How many of which packs, largest first: (number, size). Empty if nothing is needed.

    Need and sizes are grams, or any other one unit. Packs are told apart by whole units, and one of 453.6 counts as
    453: what is bought is never short. ValueError for no sizes, or one under 1.

    >>> packs_for(1230.0, [250.0, 1000.0])
    ((1, 1000.0), (1, 250.0))
    """
    whole = {whole_down(size): size for size in sorted(sizes)}
    if not whole or min(whole) < 1:
        raise ValueError("a pack holds one unit or more: a gram, a millilitre, a piece")
    counted = tuple(sorted(whole, reverse=True))
    unit = gcd(*counted)
    counts = _fewest(max(0, whole_up(need / unit)), tuple(size // unit for size in counted))
    return tuple((count, whole[size]) for count, size in zip(counts, counted, strict=True) if count)


def _fewest(need: int, sizes: tuple[int, ...]) -> tuple[int, ...]:
    """How many of each size make the least total of at least `need`, in as few packs as possible.

    Of smaller packs there are never as many as the largest holds units: among so many, some would add up to a multiple
    of it, and could be had in fewer of the largest. So all that is beyond them comes in the largest.
    """
    largest = sizes[0]
    most = largest * sizes[1] if len(sizes) > 1 else 0
    bulk = max(0, (need - most) // largest)
    first, *others = _exactly(need - bulk * largest, sizes)
    return (first + bulk, *others)


@lru_cache(maxsize=4096)
def _exactly(need: int, sizes: tuple[int, ...]) -> tuple[int, ...]:
    """The same, every total tried in turn."""
    # for each total: the size last added on the way to it with the fewest packs, and how many packs
    reached: list[tuple[int, int] | None] = [(0, 0), *([None] * (need + sizes[0]))]
    for total in range(1, len(reached)):
        ways = [(before[0] + 1, size) for size in sizes if size <= total and (before := reached[total - size])]
        reached[total] = min(ways, key=lambda way: way[0], default=None)
    total = next(total for total in range(need, len(reached)) if reached[total])
    counts = dict.fromkeys(sizes, 0)
    while total and (last := reached[total]):
        counts[last[1]] += 1
        total -= last[1]
    return tuple(counts.values())
