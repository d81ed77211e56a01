"""Which packs to buy for an amount: whole ones, with least over, then as few as may be. Weights g."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from tinbook.engine.tolerance import whole_up


def packs_for(need_g: float, sizes_g: Sequence[float]) -> tuple[tuple[int, float], ...]:
    """How many of which packs, largest first: (number, size). Nothing for nothing needed.

    ValueError for no sizes, or one that is not positive.
    """
    if not sizes_g or min(sizes_g) <= 0.0:
        raise ValueError("packs weigh more than nothing")
    sizes = tuple(sorted({round(size * 10) for size in sizes_g}, reverse=True))
    return tuple((count, size / 10) for count, size in _bought(max(0, whole_up(need_g * 10)), sizes))


@lru_cache(maxsize=4096)
def _bought(need: int, sizes: tuple[int, ...]) -> tuple[tuple[int, int], ...]:
    """The same in tenths of a gram. More than three of the largest are bought by the largest first: what is left to
    choose lies within a few packs."""
    largest = sizes[0]
    plain = max(0, need // largest - len(sizes) * 2)
    fewest = _fewest(need - plain * largest, sizes)
    counts = [plain + fewest.count(largest), *(fewest.count(size) for size in sizes[1:])]
    return tuple((count, size) for count, size in zip(counts, sizes, strict=True) if count)


def _fewest(need: int, sizes: tuple[int, ...]) -> tuple[int, ...]:
    """The packs that come to the least total of at least `need`, as few as may be: every total is tried, fewest first."""
    reached: dict[int, tuple[int, ...]] = {0: ()}
    found: dict[int, tuple[int, ...]] = {0: ()} if need <= 0 else {}
    while reached:
        following: dict[int, tuple[int, ...]] = {}
        for total, packs in reached.items():
            for size in sizes:
                if packs and size > packs[-1] or total >= need:
                    continue
                following.setdefault(total + size, (*packs, size))
        for total, packs in following.items():
            if total >= need:
                found.setdefault(total, packs)
        reached = following
    return found[min(found)]
