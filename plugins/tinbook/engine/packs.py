"""Which packs to buy for an amount: whole ones, with the least left over, then as few as possible. Weights in g."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import gcd

from tinbook.engine.tolerance import whole_up


def packs_for(need_g: float, sizes_g: Sequence[float]) -> tuple[tuple[int, float], ...]:
    """How many of which packs, largest first: (number, size). Empty if nothing is needed. Sizes are in whole grams.

    ValueError for no sizes, or one under a gram.

    >>> packs_for(1230.0, [250.0, 1000.0])
    ((1, 1000.0), (1, 250.0))
    """
    sizes = tuple(sorted({round(size) for size in sizes_g}, reverse=True))
    if not sizes or sizes[-1] < 1:
        raise ValueError("packs weigh a gram or more")
    unit = gcd(*sizes)
    counts = _fewest(max(0, whole_up(need_g / unit)), tuple(size // unit for size in sizes))
    return tuple((count, float(size)) for count, size in zip(counts, sizes, strict=True) if count)


@lru_cache(maxsize=4096)
def _fewest(need: int, sizes: tuple[int, ...]) -> tuple[int, ...]:
    """How many of each size make the least total of at least `need`, in as few packs as possible."""
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
