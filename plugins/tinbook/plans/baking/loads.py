"""What a bake needs: mixes in the bowl, tins to fill, oven loads, and how long the oven is busy."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from tinbook.engine import rounding, scaling
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking.times import Baking, Time
from tinbook.plans.base.asking import Query
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import Fit, factor_by, fit, mixes, own_count, owned_count, wanted_ml
from tinbook.plans.base.shelf import factor_between, tin_facts
from tinbook.plans.base.versions import Version, versions
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.tins import Tin

FITS, ABOVE, REFUSED = saying("fits_in_the_tin"), saying("above_the_rim"), saying("too_full")


class Load(NamedTuple):
    """A mixture for `count` of a tin. `all_in_mm`: how high it would bake if those tins took all of it.

    `verdict` on that: it fits; it stands above the rim, up to the limit, and may spill; or it is too full, and goes
    into the `fit.needed` tins instead, with `most_g` in each at most. Tins without a depth take everything.
    `oven_low_min` to `oven_high_min`: all its bakes, one after another.
    """

    version: Version
    factor_by: Saying
    fit: Fit
    all_in_mm: float
    above_mm: float
    verdict: Saying
    most_g: float | None
    mixes: int
    time: Time | None
    oven_low_min: float
    oven_high_min: float
    nearest: Tin | None
    nearest_factor: float


def load(
    batch: Batch, known: Baking | None, book: Book, facts: Facts, count: int, tin: Tin, deep: bool = False
) -> Load:
    """What it takes to bake a mixture in `count` of a tin, as deep as written or, with `deep`, as full."""
    tin = as_owned(tin, book)
    volume_ml = wanted_ml(batch, tin, count, deep)
    _, whole, _ = versions(batch, scaling.factor(volume_ml, batch.batter_ml), tin.bounds_mm[0], facts)
    volume_ml = batch.batter_ml * whole.factor
    filled = fit(batch, book, facts, tin, count, volume_ml, whole.mass_g)
    all_in_mm = tin.fill_mm(volume_ml / count) * batch.rise
    verdict, above_mm, most_g = FITS, 0.0, None
    if tin.depth_mm is not None and tin.kind.kept != "share":
        above_mm = max(0.0, all_in_mm - tin.depth_mm)
        gravity = batch.mass_g / batch.batter_ml
        most_g = rounding.scales(tin.volume_ml(tin.depth_mm / batch.rise) * gravity, batch.steps)
        if not fits(all_in_mm, tin.depth_mm):
            limit = facts.numbers["rim limit"].value
            verdict = REFUSED if all_in_mm > limit * tin.depth_mm else ABOVE
    time = known.times([(tin, filled.batter_mm)])[0] if known else None
    low, high = (filled.bakes * time.low_shown_min, filled.bakes * time.high_shown_min) if time else (0.0, 0.0)
    nearest, factor = _nearest(tin, batch, book)
    return Load(
        version=whole,
        fit=filled,
        all_in_mm=all_in_mm,
        factor_by=factor_by([tin], deep),
        above_mm=above_mm,
        verdict=verdict,
        most_g=most_g,
        mixes=mixes(book, whole.mass_g),
        time=time,
        oven_low_min=low,
        oven_high_min=high,
        nearest=nearest,
        nearest_factor=factor,
    )


def loads(batch: Batch, known: Baking | None, book: Book, facts: Facts, query: Query) -> list[Load]:
    """For the tins asked for, or once for every tin owned, as many as the recipe fills."""
    tins: Sequence[tuple[int, Tin]] = query.tins
    if not tins:
        own = own_count(batch)
        on_hand = dict.fromkeys(own_tin.measured_tin for own_tin in book.tins if own_tin.have)
        tins = [(tin.holes if tin.kind.in_trays else own, tin) for tin in on_hand]
    return [load(batch, known, book, facts, count, tin, query.deep) for count, tin in tins]


def written_loads(batch: Batch, known: Baking | None, book: Book, facts: Facts) -> list[Load]:
    """For the tins a mixture is written for."""
    return [load(batch, known, book, facts, count, tin) for count, tin in batch.tins]


def _nearest(tin: Tin, batch: Batch, book: Book) -> tuple[Tin | None, float]:
    """The owned tin that could replace this one, as on the page "Tins", and the factor to it at this batter's
    depth."""
    nearest = tin_facts(tin, owned_count(book, tin) > 0, book).nearest
    return nearest, factor_between(tin, nearest, batch.depth_mm) if nearest else 1.0
