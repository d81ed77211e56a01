"""What a mixture becomes in a tin: how high it bakes, into what layers it is cut, how high they stand when filled."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite
from typing import NamedTuple

from tinbook.engine import layers as sums
from tinbook.engine import rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.scaling import Fit, TinTable, fit
from tinbook.plans.base.versions import Version, versions
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.boards import CHOICES, board_for
from tinbook.plans.finish.cake import Cake
from tinbook.tins import Tin
from tinbook.tins.growth import outline_of


class Stack(NamedTuple):
    """The layers from `tins` tins, each `levelled_mm` high when levelled and cut into `cut`.

    `stack_mm`: with filling between the layers; `coated_mm`: with both coats on top. `weight_g`: baked and levelled,
    without filling or coats. What has `shown` in its name is rounded for a ruler or for scales.
    """

    tin: Tin
    tins: int
    batter_mm: float
    baked_mm: float
    levelled_mm: float
    cut: int
    layers: int
    layer_mm: float
    stack_mm: float
    coated_mm: float
    weight_g: float
    batter_shown_mm: float
    baked_shown_mm: float
    levelled_shown_mm: float
    layer_shown_mm: float
    stack_shown_mm: float
    coated_shown_mm: float
    weight_shown_g: float


class StackRow(NamedTuple):
    """One line of the table of every tin."""

    owned: bool
    stack: Stack


@dataclass(frozen=True)
class StackTable:
    """A mixture's layers in every tin, cups left out."""

    batch: Batch
    finishing: Finishing
    rows: tuple[StackRow, ...]
    worked: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """A stack seen from the front on its drum, mm: `across_mm` wide before its coats, its tube (0 for none) `tube_mm`.

    `board_mm` is None where no drum so wide is sold.
    """

    stack: Stack
    across_mm: float
    tube_mm: float
    filling_mm: float
    crumb_mm: float
    final_mm: float
    board_mm: float | None
    drum_mm: float


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """The mixture for layers asked for: `tins` of `tin` at least `least_mm` deep, filled `stack.batter_mm` deep."""

    exact: Version
    whole: Version
    beaten: bool
    fit: Fit
    stack: Stack
    least_mm: float | None
    worked: Worked


def stack_of(batch: Batch, settled: Finishing, made: Fit) -> Stack:
    """The layers from the batter of one fit."""
    levelled_mm = sums.levelled_mm(made.batter_mm, batch.rise, settled["level_off"])
    cut = settled.cut or sums.cuts(levelled_mm, settled["layer"])
    return _stack(batch, settled, made, levelled_mm, cut, cut * made.needed)


def _stack(batch: Batch, settled: Finishing, made: Fit, levelled_mm: float, cut: int, layers: int) -> Stack:
    layer_mm = levelled_mm / cut
    stack_mm = sums.stack_mm(layers, layer_mm, settled["filling"])
    coated_mm = stack_mm + settled.coats_mm
    used = layers / (cut * made.needed)
    weight_g = sums.baked_g(made.each_g * made.needed, batch.loss, settled["level_off"]) * used
    ruler = rounding.ruler
    return Stack(
        tin=made.tin,
        tins=made.needed,
        batter_mm=made.batter_mm,
        baked_mm=made.baked_mm,
        levelled_mm=levelled_mm,
        cut=cut,
        layers=layers,
        layer_mm=layer_mm,
        stack_mm=stack_mm,
        coated_mm=coated_mm,
        weight_g=weight_g,
        batter_shown_mm=ruler(made.batter_mm),
        baked_shown_mm=ruler(made.baked_mm),
        levelled_shown_mm=ruler(levelled_mm),
        layer_shown_mm=ruler(layer_mm),
        stack_shown_mm=ruler(stack_mm),
        coated_shown_mm=ruler(coated_mm),
        weight_shown_g=rounding.scales(weight_g, batch.steps),
    )


def stack_table(table: TinTable, book: Book, facts: Facts) -> StackTable:
    """The layers in every tin of the table of a cake; cups are not cut."""
    batch = table.batch
    settled = finishing(book.finish, facts, batch.mixture.finish)
    rows = tuple(
        StackRow(row.owned, stack_of(batch, settled, row.fit)) for row in table.rows if row.tin.kind.kept != "share"
    )
    return StackTable(batch, settled, rows, _worked(batch, settled))


def elevations(batch: Batch, settled: Finishing, book: Book, facts: Facts) -> tuple[Elevation, ...]:
    """The stack from each of the tins it is written for; domes, balls and cups give none."""
    found = []
    for count, tin in batch.tins:
        if tin.kind.kept == "share" or tin.kind.solid != "upright":
            continue
        volume_ml = count * tin.volume_ml(min(batch.depth_mm, tin.brim_mm))
        made = fit(batch, book, facts, tin, count, volume_ml, batch.mass_g * volume_ml / batch.batter_ml)
        stack = stack_of(batch, settled, made)
        found.append(_elevation(stack, settled, facts))
    return tuple(found)


def _elevation(stack: Stack, settled: Finishing, facts: Facts) -> Elevation:
    across_mm, tube_mm = _across_mm(stack.tin)
    cake = Cake(stack.tin, stack.stack_mm, stack.layers)
    board = board_for(cake, settled.coats_mm, facts.numbers[CHOICES[settled.board]].value)
    return Elevation(
        stack=stack,
        across_mm=across_mm,
        tube_mm=tube_mm,
        filling_mm=settled["filling"],
        crumb_mm=settled["crumb_coat"],
        final_mm=settled["final_coat"],
        board_mm=board.size_mm[0] if board.size_mm else None,
        drum_mm=facts.numbers["drum thickness"].value,
    )


@lru_cache(maxsize=1024)
def _across_mm(tin: Tin) -> tuple[float, float]:
    """How wide a cake and its tube are half-way up."""
    across = [x for x, _ in tin.kind.outline_mm(tin.sizes_mm, 0.5)[0]]
    half_tube_mm = outline_of(tin).room_mm
    return max(across) - min(across), 2.0 * half_tube_mm if isfinite(half_tube_mm) else 0.0


def wanted(batch: Batch, book: Book, facts: Facts, tin: Tin, layers: int, layer_mm: float) -> Wanted:
    """The other way round: the mixture, and the tins, for `layers` layers of `layer_mm` from such a tin.

    Each tin gives as many layers as its depth, or the deepest such tin sold, has room for. AskError where not even one
    fits, or where the mixture is made by weight or for cups.
    """
    if not batch.tins or tin.kind.kept == "share":
        raise AskError(f'"{batch.mixture.name}" is not cut into layers in {tin.full_name}', "ask for a cake in a tin")
    settled = finishing(book.finish, facts, batch.mixture.finish)
    dome, rise = settled["level_off"], batch.rise
    deepest_mm = tin.depth_mm or max(tin.kind.depths_mm)
    most = int(deepest_mm * (1.0 - dome) / layer_mm + 1e-9)
    if most < 1:
        told = f"a layer of {layer_mm:g} mm needs a tin {layer_mm / (1.0 - dome):.0f} mm deep"
        raise AskError(f"{told}, and this one is {deepest_mm:g} mm", "ask for thinner layers or a deeper tin")
    count = scaling.times_needed(layers, most)
    cut = scaling.times_needed(layers, count)
    levelled_mm = cut * layer_mm
    volume_ml = count * tin.volume_ml(sums.batter_for_mm(levelled_mm, rise, dome))
    exact, whole, beaten = versions(batch, scaling.factor(volume_ml, batch.batter_ml), tin.bounds_mm[0], facts)
    made = fit(batch, book, facts, tin, count, volume_ml, exact.mass_g)
    stack = _stack(batch, settled, made, levelled_mm, cut, layers)
    return Wanted(
        exact=exact,
        whole=whole,
        beaten=beaten,
        fit=made,
        stack=stack,
        least_mm=tin.least_depth(made.baked_mm),
        worked=_worked(batch, settled),
    )


def _worked(batch: Batch, settled: Finishing) -> Worked:
    rise = batch.kind.rise
    found = f"rise {rounding.factor(batch.rise):g}"
    if batch.learned.rises:
        found += f", from {batch.learned.rises} of your bakes"
    elif rise and batch.rise == rise.typical:
        found += f", for its kind {rise.low:g} to {rise.high:g}"
    else:
        found += ", as the house has found it"
    each = f"each cake cut into {settled.cut}" if settled.cut else f"layers as near {settled['layer']:g} mm as may be"
    return Worked(
        "levelled = batter × rise × (1 − dome); layer = levelled / cuts; stack = layers × layer + filling between them",
        (
            found,
            f"dome {settled['level_off']:.0%} of the baked depth",
            f"weight lost in the oven {batch.loss:.1%}"
            + (f", from {batch.learned.losses} of your bakes" if batch.learned.losses else ""),
            each,
            f"filling {settled['filling']:g} mm, coats {settled.coats_mm:g} mm on top",
        ),
        tuple(dict.fromkeys((rise.source if rise else "common practice", "common practice"))),
    )
