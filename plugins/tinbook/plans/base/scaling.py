"""A mixture in other amounts: for every tin, for tins asked for, by eggs, by weight, by what is left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from tinbook.engine import packing, rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book, Take
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.shelf import house_outlines
from tinbook.plans.base.versions import Version, largest_errors, versions, versions_each
from tinbook.plans.base.weighing import Batch, Ingredient, as_owned
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin


class Fit(NamedTuple):
    """How a share of the batter goes into one tin: lengths mm.

    `needed` counts the tins to fill: `count`, or more where they are too shallow. `each_g`, `batter_mm` and
    `baked_mm` are what each of those gets. `least_mm` is the least depth such a tin is sold in that holds the
    cake when `count` share it, None if none does. `bakes` at once on the house's oven shelves.
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
    words: str


class TinRow(NamedTuple):
    """One line of the table of every tin. `whole` is the version in whole eggs: beaten egg by weight where it lies
    further off than the house puts up with, the exact one where no egg is in it."""

    tin: Tin
    owned: bool
    exact: Version
    whole: Version
    beaten: bool
    fit: Fit
    mixes: int


@dataclass(frozen=True, kw_only=True)
class TinTable:
    """A mixture for every standard tin and every tin of the house."""

    batch: Batch
    rows: tuple[TinRow, ...]
    weight_error_percent: float
    spoon_error_percent: float
    worked: Worked


@dataclass(frozen=True, kw_only=True)
class Scaled:
    """One answer to "how much for that?": both versions, the tins it goes into, mixes for the bowl."""

    batch: Batch
    exact: Version
    whole: Version
    beaten: bool
    fits: tuple[Fit, ...]
    mixes: int
    worked: Worked


def wanted_ml(batch: Batch, tin: Tin, count: int, deep: bool = False) -> float:
    """Batter for `count` of `tin`: as deep as in the written tins, or, with `deep`, filled to the same share.

    Cup trays are always filled to the same share: a cup is too small to keep a cake's depth.
    """
    if deep or tin.kind.kept == "share":
        return count * (tin.brim_ml() * batch.share)
    return count * tin.volume_ml(batch.depth_mm)


def fit(batch: Batch, book: Book, facts: Facts, tin: Tin, count: int, volume_ml: float, mass_g: float) -> Fit:
    """How `volume_ml` of batter, `mass_g`, goes into `count` of `tin`; see Fit."""
    kind, rise, house = tin.kind, batch.rise, book.house
    by_share, depth_mm = kind.kept == "share", tin.depth_mm
    batter_mm = tin.fill_mm(volume_ml / count)
    # A dome has one depth; of a cup nobody asks it.
    least_mm = None if kind.in_trays else tin.least_depth(tin.brim_mm if by_share else batter_mm * rise)
    needed = count
    if depth_mm is not None and not by_share and batter_mm * rise > depth_mm * (1 + 1e-9):
        needed = scaling.times_needed(volume_ml, tin.volume_ml(depth_mm / rise))
        batter_mm = tin.fill_mm(volume_ml / needed)
    per_bake, bakes = None, 1
    if house.oven_shelf:
        one_shelf, holes = _on_a_shelf(tin, house.oven_shelf, facts.numbers["oven clearance"].value)
        per_bake = one_shelf * house.shelves
        bakes = scaling.times_needed(scaling.times_needed(needed, holes), per_bake) if per_bake else 0
    plain = needed == count and bakes == 1
    words = "" if plain else _words(book, tin, count, needed, bakes, per_bake)
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
        words=words,
    )


@lru_cache(maxsize=4096)
def _on_a_shelf(tin: Tin, shelf_mm: tuple[float, float], clear_mm: float) -> tuple[int, int]:
    """How many of it, or of its trays, stand on a shelf, and the cups in each. No recipe changes that."""
    return packing.per_shelf(tin.stand_mm, shelf_mm, clear_mm), tin.holes


def _words(book: Book, tin: Tin, count: int, needed: int, bakes: int, per_bake: int | None) -> str:
    said = []
    if needed > count:
        said.append(f"too shallow for the whole batter: fill {needed}")
        have = owned_count(book, tin)
        if 0 < have < needed:
            said.append(f"you have {have}, so bake {scaling.times_needed(needed, have)} times")
    if per_bake == 0:
        said.append("wider than the oven shelf")
    elif bakes > 1:
        said.append(f"{bakes} bakes, {per_bake} at once")
    return "; ".join(said)


def owned_count(book: Book, tin: Tin) -> int:
    """How many of this tin the house has."""
    return sum(
        own.have
        for own in book.tins
        if (own.tin.shape, own.tin.sizes_mm, own.tin.depth_mm) == (tin.shape, tin.sizes_mm, tin.depth_mm)
    )


def mixes(book: Book, mass_g: float) -> int:
    """How many times the mixer bowl is filled."""
    bowl = book.house.mixer_bowl
    return scaling.times_needed(mass_g, bowl) if bowl else 1


def row_count(batch: Batch, tin: Tin) -> int:
    """For how many of a tin its row stands: as many as the recipe was written for, or one tray of cups."""
    return tin.holes if tin.kind.in_trays else own_count(batch)


def own_count(batch: Batch) -> int:
    """How many tins a recipe was written for; 1 for what was written for cups."""
    written_in_cups = all(own.kind.in_trays for _, own in batch.tins)
    return 1 if written_in_cups else sum(count for count, _ in batch.tins)


def tin_table(batch: Batch, book: Book, facts: Facts) -> TinTable:
    """One mixture in every tin: all rows in one calculation."""
    outlines = house_outlines(book)
    own = own_count(batch)
    counts = [tin.holes if tin.kind.in_trays else own for tin, _ in outlines]
    volumes = [wanted_ml(batch, tin, count) for (tin, _), count in zip(outlines, counts, strict=True)]
    factors = [scaling.factor(volume_ml, batch.batter_ml) for volume_ml in volumes]
    made = versions_each(batch, factors, [tin.bounds_mm[0] for tin, _ in outlines], facts)
    rows = tuple(
        TinRow(
            tin=tin,
            owned=owned,
            exact=exact,
            whole=whole,
            beaten=beaten,
            fit=fit(batch, book, facts, tin, count, batch.batter_ml * whole.factor, whole.mass_g),
            mixes=mixes(book, whole.mass_g),
        )
        for (tin, owned), count, (exact, whole, beaten) in zip(outlines, counts, made, strict=True)
    )
    weight_error, spoon_error = largest_errors(row.whole for row in rows)
    return TinTable(
        batch=batch,
        rows=rows,
        weight_error_percent=rounding.percent(weight_error),
        spoon_error_percent=rounding.percent(spoon_error),
        worked=tin_worked(batch, facts),
    )


def tin_worked(batch: Batch, facts: Facts) -> Worked:
    """How a row of the tin table comes about."""
    tins = ", ".join(f"{count} {tin.full_name}" for count, tin in batch.tins)
    inputs = [
        f"written for {tins}",
        f"batter {batch.depth_mm:.0f} mm deep, {batch.batter_ml:.0f} ml in all",
        f"rise {rounding.factor(batch.rise):g}, so about {batch.baked_mm:.0f} mm baked",
    ]
    if batch.eggs:
        tolerance = facts.numbers["egg tolerance"].value
        inputs.append(f"{batch.eggs:g} eggs; beaten egg by weight where whole ones are over {tolerance:.0%} off")
    inputs.append(
        f"scales to {batch.steps.step_g:g} g, {batch.steps.fine_step_g:g} g under {batch.steps.fine_below_g:g} g"
    )
    return Worked(
        "factor = batter of the new tins / batter of the written tins, as deep in both; "
        "whole eggs = eggs × factor, to the nearest one, and everything follows them",
        tuple(inputs),
        (batch.kind.source, facts.numbers["egg tolerance"].source),
    )


def scale(batch: Batch, book: Book, facts: Facts, query: Query) -> Scaled:
    """Answer one question about a mixture. Raises AskError when the question does not fit it."""
    targets: Sequence[tuple[int, Tin]] = ()
    if query.tins:
        if not batch.tins:
            raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', 'ask by weight, such as "900 g"')
        targets = [(count, as_owned(tin, book)) for count, tin in query.tins]
        volumes = [wanted_ml(batch, tin, count, query.deep) for count, tin in targets]
        ratio, formula = scaling.factor(sum(volumes), batch.batter_ml), "batter wanted / batter written"
    else:
        ratio, formula = asked_factor(batch, query, book)
        volumes = []
    width_mm = max((tin.bounds_mm[0] for _, tin in targets or batch.tins), default=0.0)
    exact, whole, beaten = versions(batch, ratio, width_mm, facts)
    stretch = whole.factor / ratio
    fits = tuple(
        fit(batch, book, facts, tin, count, volume * stretch, whole.mass_g * volume / sum(volumes))
        for (count, tin), volume in zip(targets, volumes, strict=True)
    )
    worked = Worked(f"factor = {formula}", (f"factor {ratio:.4f}",), (batch.kind.source,))
    return Scaled(
        batch=batch, exact=exact, whole=whole, beaten=beaten, fits=fits, mixes=mixes(book, whole.mass_g), worked=worked
    )


def asked_factor(batch: Batch, query: Query, book: Book) -> tuple[float, str]:
    """The factor of a question that names no tin, and its formula in words."""
    if query.eggs is not None:
        if not batch.eggs:
            raise AskError(f'"{batch.mixture.name}" has no whole eggs', "ask by weight or by tin")
        return scaling.factor(query.eggs, batch.eggs), "eggs wanted / eggs written"
    if query.weight_g is not None:
        return scaling.factor(query.weight_g, batch.makes_g), "weight wanted / weight the mixture makes"
    if query.batches is not None:
        return scaling.factor(query.batches, 1.0), "batches"
    if query.plus is not None:
        return scaling.factor(1 + query.plus, 1.0), "1 + the share to add"
    if query.left:
        name = book.house_word(query.left.name)
        lines = [line for line in batch.ingredients if line.name == name]
        if not lines:
            raise AskError(f'"{query.left.name}" is not in "{batch.mixture.name}"', _in_it(batch))
        return left_factor(lines, query.left), "what is left / what is written"
    return 1.0, "1, as written"


def left_factor(lines: Sequence[Ingredient], left: Take) -> float:
    """What is left of one ingredient, over what is written of it in all its `lines`."""
    quantity, volumes_ml = left.quantity, [line.volume_ml or 0.0 for line in lines]
    if quantity.dimension == "mass":
        return scaling.factor(quantity.base, sum(line.mass_g for line in lines))
    if quantity.dimension == "count" and all(line.unit == "" for line in lines):
        return scaling.factor(quantity.base, sum(line.amount for line in lines))
    if quantity.dimension == "volume" and all(volumes_ml):
        return scaling.factor(quantity.base, sum(volumes_ml))
    raise AskError(f'"{left.written}" cannot be set against "{lines[0].name}"', "say what is left in grams")


def _in_it(batch: Batch) -> str:
    return "it has " + ", ".join(dict.fromkeys(line.name for line in batch.ingredients))
