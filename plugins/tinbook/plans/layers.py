"""What a mixture becomes in a tin: how high it bakes, into what layers it is cut, how high they stand when filled."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import layers as sums
from tinbook.engine import rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.asking import AskError
from tinbook.plans.finishing import Finishing, finishing
from tinbook.plans.scaling import Fit, TinTable, fit
from tinbook.plans.versions import Version, versions
from tinbook.plans.weighing import Batch
from tinbook.plans.worked import Worked
from tinbook.tins import Tin


@dataclass(frozen=True, slots=True)
class Stack:
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


@dataclass(frozen=True, slots=True)
class StackRow:
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


@dataclass(frozen=True)
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
    loss = batch.kind.loss.typical if batch.kind.loss else 0.0
    used = layers / (cut * made.needed)
    weight_g = sums.baked_g(made.each_g * made.needed, loss, settled["level_off"]) * used
    return Stack(
        made.tin, made.needed, made.batter_mm, made.baked_mm, levelled_mm, cut, layers, layer_mm, stack_mm, coated_mm,
        weight_g, rounding.ruler(made.batter_mm), rounding.ruler(made.baked_mm), rounding.ruler(levelled_mm),
        rounding.ruler(layer_mm), rounding.ruler(stack_mm), rounding.ruler(coated_mm),
        rounding.scales(weight_g, batch.steps),
    )  # fmt: skip


def stack_table(table: TinTable, book: Book, facts: Facts) -> StackTable:
    """The layers in every tin of the table of a cake; cups are not cut."""
    batch = table.batch
    settled = finishing(book.finish, facts, batch.mixture.finish)
    rows = tuple(
        StackRow(row.owned, stack_of(batch, settled, row.fit)) for row in table.rows if row.tin.kind.kept != "share"
    )
    return StackTable(batch, settled, rows, _worked(batch, settled))


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
    return Wanted(exact, whole, beaten, made, stack, tin.least_depth(made.baked_mm), _worked(batch, settled))


def _worked(batch: Batch, settled: Finishing) -> Worked:
    rise = batch.kind.rise
    found = f"rise {batch.rise:g}"
    if rise and batch.rise == rise.typical:
        found += f", for its kind {rise.low:g} to {rise.high:g}"
    else:
        found += ", as the house has found it"
    each = f"each cake cut into {settled.cut}" if settled.cut else f"layers as near {settled['layer']:g} mm as may be"
    return Worked(
        "levelled = batter × rise × (1 − dome); layer = levelled / cuts; stack = layers × layer + filling between them",
        (
            found,
            f"dome {settled['level_off']:.0%} of the baked depth",
            each,
            f"filling {settled['filling']:g} mm, coats {settled.coats_mm:g} mm on top",
        ),
        tuple(dict.fromkeys((rise.source if rise else "common practice", "common practice"))),
    )
