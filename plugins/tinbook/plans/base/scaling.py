"""A mixture in other tins: how a share of it fits into each, and the table of all of them."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from tinbook.engine import packing, rounding, scaling
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import once
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.shelf import house_outlines
from tinbook.plans.base.versions import Version, largest_errors, versions_each
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.tins import Sizes, Tin


class Fit(NamedTuple):
    """How a share of the batter goes into one tin; lengths in mm.

    `needed` counts the tins to fill: `count`, or more where they are too shallow. `each_g`, `batter_mm` and `baked_mm`
    are what each of them gets. `least_mm` is the least depth such a tin is sold in that holds the cake when `count`
    share it, None if none does. `bakes` are one after another, 0 if it does not fit the oven: as many as the house's
    shelves need, `per_bake` tins at once (None if unknown), and, for a tin the house owns, as many as it takes with the
    number owned. `remarks`: anything unusual.
    """

    tin: Tin
    count: int  # type: ignore[assignment]  # hides tuple.count, which nobody asks
    needed: int
    each_g: float
    each_shown_g: float
    batter_mm: float
    baked_mm: float
    least_mm: float | None
    per_bake: int | None
    bakes: int
    remarks: tuple[Saying, ...]


class TinRow(NamedTuple):
    """One line of the table of every tin. `whole` is the whole-egg version: beaten egg by weight where whole eggs would
    be further out than the house accepts, the exact version where there is no egg."""

    tin: Tin
    owned: bool
    exact: Version
    whole: Version
    beaten: bool
    fit: Fit
    mixes: int


@dataclass(frozen=True, kw_only=True)
class TinTable:
    """A mixture for every standard tin and every tin in the house."""

    batch: Batch
    rows: tuple[TinRow, ...]
    weight_error_percent: float
    spoon_error_percent: float
    worked: Worked

    @property
    def written(self) -> int:
        """The row of the first tin it is written for, or the first row if there is none by that name."""
        name = self.batch.tins[0][1].name
        return next((place for place, row in enumerate(self.rows) if row.tin.name == name), 0)


def wanted_ml(batch: Batch, tin: Tin, count: int, deep: bool = False) -> float:
    """Batter for `count` of `tin`, ml: as deep as in the written tins or, with `deep`, filled to the same share.

    Cup trays are always filled to the same share: a cup is too small to keep a cake's depth.
    """
    if deep or tin.kind.kept == "share":
        return count * (tin.brim_ml() * batch.share)
    return count * tin.volume_ml(batch.depth_mm)


def factor_by(tins: Iterable[Tin], deep: bool = False) -> Saying:
    """What a factor to these tins keeps: the depth of the batter, or how full the tin is, as in cups, domes and balls,
    and in all tins with `deep`. Both, for tins of both kinds."""
    by_brim = {deep or tin.kind.kept == "share" for tin in tins}
    if len(by_brim) > 1:
        return saying("by_depth_and_brim")
    return saying("by_brim") if True in by_brim else saying("by_depth")


def fit(batch: Batch, book: Book, facts: Facts, tin: Tin, count: int, volume_ml: float, mass_g: float) -> Fit:
    """How `volume_ml` of batter, `mass_g`, goes into `count` of `tin`; see Fit."""
    kind, rise, house = tin.kind, batch.rise, book.house
    by_share, depth_mm = kind.kept == "share", tin.depth_mm
    batter_mm = tin.fill_mm(volume_ml / count)
    # A dome has one depth; nobody asks a cup's.
    least_mm = None if kind.in_trays else tin.least_depth(tin.brim_mm if by_share else batter_mm * rise)
    needed = count
    if depth_mm is not None and not by_share and not fits(batter_mm * rise, depth_mm):
        needed = scaling.times_needed(volume_ml, tin.volume_ml(depth_mm / rise))
        batter_mm = tin.fill_mm(volume_ml / needed)
    per_bake, bakes = None, 1
    if house.oven_shelf:
        one_shelf, holes = _on_a_shelf(tin, house.oven_shelf, facts.numbers["oven clearance"].value)
        per_bake = one_shelf * house.shelves
        bakes = scaling.times_needed(scaling.times_needed(needed, holes), per_bake) if per_bake else 0
    have = owned_count(book, tin)
    if have and bakes:
        bakes = max(bakes, scaling.times_needed(needed, have))
    plain = needed == count and bakes == 1
    each_g, baked_mm = mass_g / needed, batter_mm * rise
    shown_g = rounding.scales(each_g, batch.steps)
    return Fit(
        tin=tin,
        count=count,
        needed=needed,
        each_g=each_g,
        each_shown_g=shown_g,
        batter_mm=batter_mm,
        baked_mm=baked_mm,
        least_mm=least_mm,
        per_bake=per_bake,
        bakes=bakes,
        remarks=() if plain else tuple(_remarks(tin, count, needed, have, bakes, per_bake)),
    )


def goes_on_a_shelf(tin: Tin, book: Book, facts: Facts) -> bool:
    """Whether a tin fits the oven; any tin does if the house has not given its shelf size."""
    shelf_mm = book.house.oven_shelf
    return shelf_mm is None or _on_a_shelf(tin, shelf_mm, facts.numbers["oven clearance"].value)[0] > 0


@lru_cache(maxsize=4096)
def _on_a_shelf(tin: Tin, shelf_mm: tuple[float, float], clear_mm: float) -> tuple[int, int]:
    """How many of it, or of its trays, stand on a shelf, and the cups in each. No recipe changes that."""
    return packing.per_shelf(tin.stand_mm, shelf_mm, clear_mm), tin.holes


def _remarks(tin: Tin, count: int, needed: int, have: int, bakes: int, per_bake: int | None) -> Iterator[Saying]:
    if needed > count:
        yield saying("too_shallow", fill=needed)
    if per_bake == 0:
        yield saying("wider_than_shelf")
    elif 0 < have < needed and (per_bake is None or have <= per_bake * tin.holes):
        yield saying("too_few_owned", have=have, of=1 if tin.kind.in_trays else needed)
    elif bakes > 1:
        yield saying("several_bakes", bakes=bakes, at_once=per_bake)


def owned_count(book: Book, tin: Tin) -> int:
    """How many of this tin the house has; of any depth, if no depth is given."""
    by_depth = _owned(book).get((tin.shape, tin.sizes_mm))
    return by_depth.get(tin.depth_mm, 0) if by_depth else 0


@once
def _owned(book: Book) -> Mapping[tuple[str, Sizes], Mapping[float | None, int]]:
    """How many there are of each outline, by depth; under None, of any depth."""
    owned: defaultdict[tuple[str, Sizes], Counter[float | None]] = defaultdict(Counter)
    for own in book.tins:
        for depth_mm in dict.fromkeys((own.tin.depth_mm, None)):
            owned[own.tin.shape, own.tin.sizes_mm][depth_mm] += own.have
    return owned


def mixes(book: Book, mass_g: float) -> int:
    """How many times the mixer bowl is filled."""
    bowl = book.house.mixer_bowl
    return scaling.times_needed(mass_g, bowl) if bowl else 1


def row_count(batch: Batch, tin: Tin) -> int:
    """How many of a tin its row is for: as many as the recipe was written for, or one tray of cups."""
    return tin.holes if tin.kind.in_trays else own_count(batch)


def own_count(batch: Batch) -> int:
    """How many tins a recipe was written for; 1 for one written for cups."""
    written_in_cups = all(own.kind.in_trays for _, own in batch.tins)
    return 1 if written_in_cups else sum(count for count, _ in batch.tins)


def tin_rows(batch: Batch, book: Book, facts: Facts, outlines: Sequence[tuple[Tin, bool]]) -> tuple[TinRow, ...]:
    """One mixture in some tins, each with whether it is owned: all rows in one calculation."""
    own = own_count(batch)
    counts = [tin.holes if tin.kind.in_trays else own for tin, _ in outlines]
    volumes = [wanted_ml(batch, tin, count) for (tin, _), count in zip(outlines, counts, strict=True)]
    factors = [scaling.factor(volume_ml, batch.batter_ml) for volume_ml in volumes]
    of_tins = versions_each(batch, factors, [tin.bounds_mm[0] for tin, _ in outlines], facts)
    return tuple(
        TinRow(
            tin=tin,
            owned=owned,
            exact=exact,
            whole=whole,
            beaten=beaten,
            fit=fit(batch, book, facts, tin, count, batch.batter_ml * whole.factor, whole.mass_g),
            mixes=mixes(book, whole.mass_g),
        )
        for (tin, owned), count, (exact, whole, beaten) in zip(outlines, counts, of_tins, strict=True)
    )


def tin_table(batch: Batch, book: Book, facts: Facts) -> TinTable:
    """One mixture in every tin."""
    rows = tin_rows(batch, book, facts, house_outlines(book))
    weight_error, spoon_error = largest_errors(row.whole for row in rows)
    return TinTable(
        batch=batch,
        rows=rows,
        weight_error_percent=rounding.percent(weight_error),
        spoon_error_percent=rounding.percent(spoon_error),
        worked=tin_worked(batch, facts),
    )


def tin_worked(batch: Batch, facts: Facts) -> Worked:
    """How a row of the tin table was worked out."""
    steps, tolerance = batch.steps, facts.numbers["egg tolerance"]
    inputs = [
        saying("written_for", tins=tuple((count, tin.full_name) for count, tin in batch.tins)),
        saying("batter_in_tins", deep_mm=batch.depth_mm, batter_ml=batch.batter_ml),
        saying("rise_in_tins", rise=rounding.factor(batch.rise), baked_mm=batch.baked_mm),
    ]
    if batch.eggs:
        inputs.append(saying("eggs_written", eggs=batch.eggs, tolerance=tolerance.value))
    inputs.append(
        saying("scales_to", step_g=steps.step_g, fine_step_g=steps.fine_step_g, fine_below_g=steps.fine_below_g)
    )
    return Worked(saying("tin_factor"), tuple(inputs), (batch.kind.source, tolerance.source))
