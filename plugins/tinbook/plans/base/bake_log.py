"""What the log says about bakes, in plain figures: batter depth, rise, loss."""

from __future__ import annotations

from collections.abc import Iterable

from tinbook.models import Baked
from tinbook.plans.base.saying import Saying, saying
from tinbook.tins import Tin


def of_bakes(count: int) -> Saying:
    """`1 of your bakes`, `5 of your bakes`."""
    return saying("of_your_bakes", bakes=count)


def batter_mm(entry: Baked, gravity: float, tin: Tin) -> float | None:
    """How deep the batter was in an entry, mm: as measured, or from its weight, `gravity` in g/ml.

    `tin` is the entry's, as the house has measured it. None if the entry says neither.
    """
    if entry.batter_depth:
        return entry.batter_depth
    return tin.fill_mm(entry.batter / gravity) if entry.batter else None


def rises(entries: Iterable[tuple[Baked, Tin]], gravity: float) -> list[float]:
    """Baked depth over batter depth, for the entries that record it, each with its tin as the house has measured it."""
    return [
        entry.baked / depth
        for entry, tin in entries
        if entry.baked and (depth := batter_mm(entry, gravity, tin)) is not None
    ]


def losses(entries: Iterable[Baked]) -> list[float]:
    """The share of the weight lost, for the entries that record it."""
    return [1.0 - entry.out / entry.batter for entry in entries if entry.out and entry.batter]
