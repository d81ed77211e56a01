"""What a mixture becomes in a tin: how high it bakes, what layers it is cut into, how high they are when filled."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from tinbook.engine import layers as sums
from tinbook.engine import rounding, scaling
from tinbook.engine.tolerance import whole_down
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import Fit, TinTable, fit
from tinbook.plans.base.versions import Version, versions
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin


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
    """A mixture's layers in every tin, except cups."""

    batch: Batch
    finishing: Finishing
    rows: tuple[StackRow, ...]
    worked: Worked


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """The mixture for the layers asked for: `tins` of `tin` at least `least_mm` deep, filled `stack.batter_mm` deep."""

    exact: Version
    whole: Version
    beaten: bool
    fit: Fit
    stack: Stack
    least_mm: float | None
    worked: Worked


def stack_of(batch: Batch, settled: Finishing, fitted: Fit) -> Stack:
    """The layers from the batter of one fit."""
    levelled_mm = sums.levelled_mm(fitted.batter_mm, batch.rise, settled["level_off"])
    cut = settled.cut or sums.cuts(levelled_mm, settled["layer"])
    return _stack(batch, settled, fitted, levelled_mm, cut, cut * fitted.needed)


def _stack(batch: Batch, settled: Finishing, fitted: Fit, levelled_mm: float, cut: int, layers: int) -> Stack:
    layer_mm = levelled_mm / cut
    stack_mm = sums.stack_mm(layers, layer_mm, settled["filling"])
    coated_mm = stack_mm + settled.coats_mm
    used = layers / (cut * fitted.needed)
    weight_g = sums.baked_g(fitted.each_g * fitted.needed, batch.loss, settled["level_off"]) * used
    ruler = rounding.ruler
    return Stack(
        tin=fitted.tin,
        tins=fitted.needed,
        batter_mm=fitted.batter_mm,
        baked_mm=fitted.baked_mm,
        levelled_mm=levelled_mm,
        cut=cut,
        layers=layers,
        layer_mm=layer_mm,
        stack_mm=stack_mm,
        coated_mm=coated_mm,
        weight_g=weight_g,
        batter_shown_mm=ruler(fitted.batter_mm),
        baked_shown_mm=ruler(fitted.baked_mm),
        levelled_shown_mm=ruler(levelled_mm),
        layer_shown_mm=ruler(layer_mm),
        stack_shown_mm=ruler(stack_mm),
        coated_shown_mm=ruler(coated_mm),
        weight_shown_g=rounding.scales(weight_g, batch.steps),
    )


def stack_table(table: TinTable, book: Book, facts: Facts) -> StackTable:
    """The layers in every tin of a cake's table; cups are not cut."""
    batch = table.batch
    settled = finishing(book.finish, facts, batch.mixture.finish)
    rows = tuple(
        StackRow(row.owned, stack_of(batch, settled, row.fit)) for row in table.rows if row.tin.kind.kept != "share"
    )
    return StackTable(batch, settled, rows, _worked(batch, settled))


def wanted(
    batch: Batch, book: Book, facts: Facts, tin: Tin, layers: int, layer_mm: float, finished: Finishing | None = None
) -> Wanted:
    """The other way round: the mixture, and the tins, for `layers` layers of `layer_mm` from such a tin; `finished`
    otherwise than the mixture's cakes usually are, where that is given.

    Each tin gives as many layers as its depth, or the deepest such tin sold, has room for. AskError if not even one
    fits, or where the mixture is made by weight or for cups.
    """
    if not batch.tins or tin.kind.kept == "share":
        raise AskError(f'"{batch.mixture.name}" is not cut into layers in {tin.full_name}', "ask for a cake in a tin")
    settled = finished or finishing(book.finish, facts, batch.mixture.finish)
    dome, rise = settled["level_off"], batch.rise
    most = layers_in(tin, layer_mm, dome)
    count = scaling.times_needed(layers, most)
    cut = scaling.times_needed(layers, count)
    levelled_mm = cut * layer_mm
    volume_ml = count * tin.volume_ml(sums.batter_for_mm(levelled_mm, rise, dome))
    exact, whole, beaten = versions(batch, scaling.factor(volume_ml, batch.batter_ml), tin.bounds_mm[0], facts)
    fitted = fit(batch, book, facts, tin, count, volume_ml, exact.mass_g)
    stack = _stack(batch, settled, fitted, levelled_mm, cut, layers)
    return Wanted(
        exact=exact,
        whole=whole,
        beaten=beaten,
        fit=fitted,
        stack=stack,
        least_mm=tin.least_depth(fitted.baked_mm),
        worked=_worked(batch, settled),
    )


def layers_in(tin: Tin, layer_mm: float, dome: float) -> int:
    """How many layers of this height one such tin has room for, with that share cut off as a dome. AskError if not even
    one fits."""
    deepest_mm = tin.depth_mm or max(tin.kind.depths_mm)
    most = whole_down(deepest_mm * (1.0 - dome) / layer_mm)
    if most < 1:
        least_mm = layer_mm / (1.0 - dome)
        message = f"a layer of {layer_mm:g} mm needs a tin {least_mm:.0f} mm deep, but this one is {deepest_mm:g} mm"
        raise AskError(message, "ask for thinner layers or a deeper tin")
    return most


def _worked(batch: Batch, settled: Finishing) -> Worked:
    rise, cut = batch.kind.rise, settled.cut
    return Worked(
        saying("layers_worked"),
        (
            _rise_told(batch),
            saying("dome_of_the_baked", share=settled["level_off"]),
            saying("lost_by_the_log", share=batch.loss, bakes=batch.learned.losses)
            if batch.learned.losses
            else saying("lost_in_the_oven", share=batch.loss),
            saying("each_cake_cut", layers=cut) if cut else saying("layers_as_near", mm=settled["layer"]),
            saying("filling_and_coats", filling_mm=settled["filling"], coats_mm=settled.coats_mm),
        ),
        tuple(dict.fromkeys((rise.source if rise else "common practice", "common practice"))),
    )


def _rise_told(batch: Batch) -> Saying:
    """How much it rises, and who says so: the log, the trade or the house."""
    shown, of_kind = rounding.factor(batch.rise), batch.kind.rise
    if batch.learned.rises:
        return saying("rise_by_the_log", rise=shown, bakes=batch.learned.rises)
    if of_kind and batch.rise == of_kind.typical:
        return saying("rise_of_its_kind", rise=shown, low=of_kind.low, high=of_kind.high)
    return saying("rise_of_the_house", rise=shown)
