"""The layers of a cake on its page: the stack in section, and what every tin gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.models import Finish
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import HouseRows, house_first
from tinbook.pages.base.section import Section, section
from tinbook.pages.base.shared import WorkedView, plural, tin_name, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.finishing import THIS_CAKE, Figure, Finishing
from tinbook.plans.base.scaling import TinTable
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.elevations import Elevation, elevations
from tinbook.plans.finish.layers import StackRow, StackTable, stack_table
from tinbook.tins import Tin

MAIN = (2,)
"""The column the table is read for: each layer."""


@dataclass(frozen=True, slots=True)
class StackView:
    """The drawing of one stack and the same in a few lines."""

    drawing: Section
    tins: str
    told: str


@dataclass(frozen=True)
class LayersView:
    """What the template of layers can say."""

    table: TinTable
    desk: Desk

    @cached_property
    def stacks(self) -> StackTable:
        """The sums."""
        return stack_table(self.table, self.desk.book, self.desk.facts)

    @property
    def drawn(self) -> tuple[StackView, ...]:
        """The stack from the tins it is written for."""
        desk, batch = self.desk, self.table.batch
        drawn = elevations(batch, self.stacks.finishing, desk.book, desk.facts)
        return tuple(_drawn(elevation) for elevation in drawn)

    @cached_property
    def own(self) -> str:
        """What this cake does differently from the house, in words; empty for nothing."""
        return own_words(self.stacks.finishing, self.table.batch.mixture.finish)

    @property
    def rows(self) -> HouseRows:
        """The rows, spelled."""
        return house_first(_cells(self.stacks.rows), MAIN)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.stacks.worked,), self.desk.facts)


def has_layers(batch: Batch) -> bool:
    """Whether it is written for tins whose cakes are cut: cups are not."""
    return any(tin.kind.kept != "share" for _, tin in batch.tins)


def _cells(rows: tuple[StackRow, ...]) -> Iterator[tuple[Tin, bool, tuple[str, ...]]]:
    number = formats.number
    for row in rows:
        stack = row.stack
        cells = (
            str(stack.tins), str(stack.layers), number(stack.layer_shown_mm), number(stack.stack_shown_mm),
            number(stack.coated_shown_mm), number(stack.weight_shown_g), number(stack.batter_shown_mm),
            number(stack.baked_shown_mm), number(stack.levelled_shown_mm),
        )  # fmt: skip
        yield stack.tin, row.owned, cells


def _drawn(elevation: Elevation) -> StackView:
    stack, mm = elevation.stack, formats.millimetres
    name = tin_name(stack.tins, stack.tin)
    cut = f"each cut into {stack.cut}" if stack.cut > 1 else "not cut"
    stand = "Filled, they stand" if stack.layers > 1 else "It stands"
    coated = f", or {mm(stack.coated_shown_mm)} coated" if stack.coated_mm > stack.stack_mm else ""
    words = (
        f"batter {mm(stack.batter_shown_mm)} deep, baked {mm(stack.baked_shown_mm)}, levelled "
        f"{mm(stack.levelled_shown_mm)}, {cut}: {plural(stack.layers, 'layer')} of {mm(stack.layer_shown_mm)}. "
        f"{stand} {mm(stack.stack_shown_mm)} high{coated}; the cake alone weighs "
        f"{formats.grams(stack.weight_shown_g)}."
    )
    return StackView(section(elevation, name), name, words)


SHARES = ("level_off", "stays_in_the_bowl")
"""Figures that are shares of one, given as percentages."""
COUNTS = ("layers",)


def own_words(settled: Finishing, own: Finish | None) -> str:
    """`For this cake: filling 8 mm, layer height 25 mm; the rest as usual.`"""
    if own is None:
        return ""
    words = [_figure_words(key, figure) for key, figure in settled.figures.items() if figure.said_by == THIS_CAKE]
    if own.cut:
        words.append(f"each cake cut into {own.cut}" if own.cut > 1 else "the cake not cut")
    return f"For this cake: {formats.sentence(words)}; the rest is as usual." if words else ""


def _figure_words(key: str, figure: Figure) -> str:
    if not figure.value:
        return f"no {figure.name}"
    if key in SHARES:
        return f"{figure.name} {formats.percent(figure.percent)}"
    return f"{figure.name} {formats.with_unit(formats.number(figure.value), '' if key in COUNTS else 'mm')}"
