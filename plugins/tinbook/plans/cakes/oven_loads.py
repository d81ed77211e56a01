"""A whole cake through one oven: which tins go in together, in the fewest loads, and what is mixed for each.

Tins share a load if they go in and come out together, so that the door stays shut: at one temperature, on the shelves
side by side, no more of a tin than the house has, and the slowest most likely done before any other is overdone.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.engine.loads import Counts, OnShelf, laid_out, least_loads
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.scaling import mixes, owned_count
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.tiers import TierBaked, TierWorked
from tinbook.tins import Tin

Place = OnShelf
"""Where a tin stands on a shelf."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TinsIn:
    """Tins of a tier in a load: how many, of a tray how many trays; what goes into all of them, and how many whole eggs
    that takes."""

    tier: TierWorked
    tin: Tin
    count: int
    batter_g: float
    eggs: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MixFor:
    """A mixture as it is mixed for one load: how much, and in how many lots to fit the bowl."""

    batch: Batch
    mass_g: float
    mass_shown_g: float
    eggs: float
    lots: int


@dataclass(frozen=True, kw_only=True)
class OvenLoad:
    """What goes in together. `shelves`: where each tin stands, numbered through `tins`; empty if the house has not
    given its shelf. Minutes as a timer is set: when to look first, and from when to when every one is done."""

    tins: tuple[TinsIn, ...]
    shelves: tuple[tuple[Place, ...], ...]
    mixes: tuple[MixFor, ...]
    oven_c: float
    check_min: float
    low_min: float
    high_min: float

    def of(self, placed: Place) -> TinsIn:
        """Which tins one on a shelf belongs to."""
        every = [tins for tins in self.tins for _ in range(tins.count)]
        return every[placed.tin]


@dataclass(frozen=True, kw_only=True)
class OvenPlan:
    """All loads in their order, the hottest first; `proven`: no fewer could do."""

    loads: tuple[OvenLoad, ...]
    proven: bool

    @property
    def mixes(self) -> int:
        """How many times the bowl is filled."""
        return sum(mix.lots for load in self.loads for mix in load.mixes)

    @property
    def low_min(self) -> float:
        """All loads one after another, at least."""
        return sum(load.low_min for load in self.loads)

    @property
    def high_min(self) -> float:
        """The same at most."""
        return sum(load.high_min for load in self.loads)


@dataclass(frozen=True, slots=True, kw_only=True)
class _TinsOf:
    """The tins of one tier: what they are, how many, how hot and how long."""

    tier: TierWorked
    baked: TierBaked
    tin: Tin
    count: int
    oven_c: float
    low_min: float
    high_min: float
    check_min: float
    likely_min: float


def oven_plan(tiers: Sequence[TierWorked], bakes: Bakes, book: Book, facts: Facts) -> OvenPlan | None:
    """The fewest loads for these tiers and what stands beside them, and of those the shortest; None if nothing is
    baked, or something does not go into the oven."""
    kinds = [
        _TinsOf(
            tier=tier,
            baked=tier.baked,
            tin=tier.baked.fit.tin,
            count=tier.baked.tins,
            oven_c=known.oven_c,
            low_min=tier.baked.time.low_shown_min,
            high_min=tier.baked.time.high_shown_min,
            check_min=tier.baked.time.check_shown_min,
            likely_min=tier.baked.time.likely_min,
        )
        for tier in tiers
        if tier.baked and tier.baked.time and (known := bakes.of(tier.baked.batch))
    ]
    # the hottest first, and of one heat the largest, so that an oven is heated once
    kinds.sort(key=lambda kind: (-kind.oven_c, -kind.tin.area_mm2))
    if not kinds:
        return None
    clear_mm, shelf_mm, shelves = facts.numbers["oven clearance"].value, book.house.oven_shelf, book.house.shelves
    have = {kind.tin: owned_count(book, kind.tin) for kind in kinds}

    def placed(load: Counts) -> tuple[tuple[OnShelf, ...], ...] | None:
        if shelf_mm is None:
            return ()
        stand = tuple(kind.tin.stand_mm for kind, count in zip(kinds, load, strict=True) for _ in range(count))
        return laid_out(stand, shelf_mm, shelves, clear_mm)

    def minutes(load: Counts) -> float | None:
        inside = [kind for kind, count in zip(kinds, load, strict=True) if count]
        done = max(kind.likely_min for kind in inside)
        if len({kind.oven_c for kind in inside}) > 1 or done > min(kind.high_min for kind in inside):
            return None
        taken = Counter[Tin]()
        for kind, count in zip(kinds, load, strict=True):
            taken[kind.tin] += count
        if any(have[tin] and count > _trays(have[tin], tin) for tin, count in taken.items()):
            return None
        return None if placed(load) is None else done

    found = least_loads(tuple(kind.count for kind in kinds), minutes)
    if found is None:
        return None
    loads = tuple(_load(kinds, load, placed(load) or (), book) for load in found.loads)
    return OvenPlan(loads=loads, proven=found.proven)


def _trays(have: int, tin: Tin) -> int:
    """How many of a tin can go in at once: for cups, those are counted."""
    return max(1, have // tin.holes) if tin.kind.in_trays else have


def _load(kinds: Sequence[_TinsOf], load: Counts, shelves: tuple[tuple[OnShelf, ...], ...], book: Book) -> OvenLoad:
    inside = [(kind, count) for kind, count in zip(kinds, load, strict=True) if count]
    tins = tuple(
        TinsIn(
            tier=kind.tier,
            tin=kind.tin,
            count=count,
            batter_g=kind.baked.whole.mass_g * count / kind.count,
            eggs=kind.baked.eggs * count / kind.count,
        )
        for kind, count in inside
    )
    low, high = max(kind.low_min for kind, _ in inside), min(kind.high_min for kind, _ in inside)
    return OvenLoad(
        tins=tins,
        shelves=tuple(shelf for shelf in shelves if shelf),
        mixes=tuple(_mixed(tins, book)),
        oven_c=inside[0][0].oven_c,
        check_min=min(low, max(kind.check_min for kind, _ in inside)),
        low_min=low,
        high_min=high,
    )


def _mixed(tins: Sequence[TinsIn], book: Book) -> list[MixFor]:
    """What is mixed for a load: one mixture for all the tins that take it."""
    batches: dict[str, Batch] = {}
    for each in tins:
        if each.tier.baked:
            batches[each.tier.baked.batch.slug] = each.tier.baked.batch
    found = []
    for slug, batch in batches.items():
        own = [each for each in tins if each.tier.baked and each.tier.baked.batch.slug == slug]
        mass_g = sum(each.batter_g for each in own)
        eggs = sum(each.eggs for each in own)
        shown_g = rounding.scales(mass_g, batch.steps)
        found.append(MixFor(batch=batch, mass_g=mass_g, mass_shown_g=shown_g, eggs=eggs, lots=mixes(book, mass_g)))
    return found
