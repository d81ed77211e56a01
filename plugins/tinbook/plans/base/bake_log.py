"""What the log says of bakes, in plain figures: how deep the batter stood, how much it rose, what it lost."""

from __future__ import annotations

from collections.abc import Iterable

from tinbook.models import Baked
from tinbook.plans.base.saying import Saying, saying


def of_bakes(count: int) -> Saying:
    """`1 of your bakes`, `5 of your bakes`."""
    return saying("of_your_bakes", bakes=count)


def batter_mm(entry: Baked, gravity: float) -> float | None:
    """How deep the batter of an entry stood, mm: as measured, else from its weight, `gravity` in g/ml.

    None where the entry says neither.
    """
    if entry.batter_depth:
        return entry.batter_depth
    return entry.tin.fill_mm(entry.batter / gravity) if entry.batter else None


def rises(entries: Iterable[Baked], gravity: float) -> list[float]:
    """Baked depth over batter depth, of the entries that tell."""
    return [
        entry.baked / depth for entry in entries if entry.baked and (depth := batter_mm(entry, gravity)) is not None
    ]


def losses(entries: Iterable[Baked]) -> list[float]:
    """The share of the weight lost, of the entries that tell."""
    return [1.0 - entry.out / entry.batter for entry in entries if entry.out and entry.batter]
