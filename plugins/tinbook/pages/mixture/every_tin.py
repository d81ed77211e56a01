"""A mixture for every tin: eggs whole, and to the last gram."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.base.grids import Head
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import TableRow, exact_lines, whole_lines
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.mixture.amounts import heads
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.spelling import formats
from tinbook.plans.baking.times import baking_worked
from tinbook.plans.base.scaling import TinTable, row_count
from tinbook.plans.base.weighing import Batch


@dataclass(frozen=True)
class EveryTinView:
    """What the template of the two tables may say. `baking` None: how long it bakes is not known."""

    batch: Batch
    desk: Desk
    table: TinTable
    baking: BakingView | None

    @property
    def tin_count(self) -> str:
        """For how many tins the tables stand: `2 tins`."""
        return plural(row_count(self.batch, self.table.rows[0].tin), "tin")

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the ingredients' columns."""
        return heads(self.batch, self.desk.book.house.eggs)

    @property
    def exact_heads(self) -> tuple[Head, ...]:
        """The same, with eggs in grams."""
        return tuple(Head(line.name, line.unit or "g") for line in self.batch.ingredients)

    @property
    def lead(self) -> str:
        """How far rounding and whole eggs lead off, in words."""
        weight, spoon = self.table.weight_error_percent, self.table.spoon_error_percent
        errors = [f"at most {formats.percent(weight)} of a weight"] if weight else []
        errors += [f"{formats.percent(spoon)} of a spoon"] if spoon else []
        rounding = f" Rounding moves {' and '.join(errors)}." if errors else ""
        eggs = "Whole eggs, and everything follows them." if self.batch.eggs else ""
        return f"{eggs}{rounding}".strip()

    @property
    def lines(self) -> Iterator[TableRow]:
        """The whole-egg version, a line each tin."""
        return whole_lines(self.batch, self.table.rows, self.baking.cells if self.baking else ())

    @property
    def exact_lines(self) -> Iterator[TableRow]:
        """The exact version, a line each tin."""
        return exact_lines(self.batch, self.table.rows)

    @property
    def worked(self) -> WorkedView:
        """How they were worked out."""
        baked = (baking_worked(self.baking.known, self.desk.facts, self.baking.sums.times),) if self.baking else ()
        return worked_view((self.table.worked, self.batch.worked, *baked), self.desk.facts)
