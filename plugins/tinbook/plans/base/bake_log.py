"""What the log says of one mixture: how deep the batter stood, how much it rose, what it lost."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import exp, log
from typing import NamedTuple

from tinbook.engine import baking
from tinbook.facts import Facts, Kind
from tinbook.models import Baked


class LearnedFrom(NamedTuple):
    """From how many bakes a mixture's rise and loss were learned."""

    rises: int = 0
    losses: int = 0

    @property
    def of_rises(self) -> str:
        """`3 of your bakes`."""
        return of_bakes(self.rises)

    @property
    def of_losses(self) -> str:
        """`3 of your bakes`."""
        return of_bakes(self.losses)


def of_bakes(count: int) -> str:
    """`1 of your bakes`, `5 of your bakes`."""
    return f"{count} of your bakes"


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


def learned(
    entries: Sequence[Baked], kind: Kind, gravity: float, said: float | None, facts: Facts
) -> tuple[float, float, LearnedFrom]:
    """Rise, loss, and from how many bakes. `said` is the rise that the house wrote down, which a log then moves."""
    rise = said or (kind.rise.typical if kind.rise else 1.0)
    loss = kind.loss.typical if kind.loss else 0.0
    if not entries or not kind.rise or not kind.loss:
        return rise, loss, LearnedFrom()
    seen, lost = rises(entries, gravity), losses(entries)
    if seen:
        wide = baking.spread(log(kind.rise.low), log(kind.rise.high))
        scatter = facts.numbers["rise scatter"].value
        rise = exp(baking.settled(log(rise), wide, [log(each) for each in seen], scatter))
    if lost:
        wide = baking.spread(kind.loss.low, kind.loss.high)
        loss = max(0.0, baking.settled(loss, wide, lost, facts.numbers["loss scatter"].value))
    return rise, loss, LearnedFrom(len(seen), len(lost))
