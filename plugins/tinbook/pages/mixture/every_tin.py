"""A mixture for every tin: with whole eggs, and to the last gram."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from markupsafe import Markup

from tinbook.pages.base.grids import Head, heads_stand
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import TableRow, exact_lines, how_head, owned_and_rest, table_rows, whole_lines
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.mixture.amounts import heads
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.spelling import formats
from tinbook.plans.baking.times import baking_worked
from tinbook.plans.base.scaling import TinRow, TinTable, row_count
from tinbook.plans.base.weighing import Batch

Timed = tuple[TinRow, tuple[str, ...]]
"""A tin, and when to look at what is baked in it."""
WHOLE, EXACT = "Amounts for every tin, whole eggs", "Exact amounts for every tin"
REST, OVEN = ", other sizes", ": in the oven"
MOST_LINES = 6
"""Up to this many ingredients leave room, on an upright tablet, for anything else there is to say about a tin."""


class TinBody(NamedTuple):
    """Rows of one table: those of the house's tins, or those of tins it would have to borrow."""

    rows: Markup
    lent: bool


@dataclass(frozen=True, slots=True)
class TinSheet:
    """One table: what it is, for `whole` or `exact` eggs, the heads of its columns after the tin's, its rows."""

    label: str
    eggs: str
    heads: tuple[Head, ...]
    bodies: tuple[TinBody, ...]

    @property
    def oven(self) -> bool:
        """Whether it is the table that leaves the amounts to the one before it."""
        return self.label.endswith(OVEN)

    @property
    def stands(self) -> bool:
        """Whether its heads stand on end."""
        return heads_stand(self.heads)


@dataclass(frozen=True)
class EveryTinView:
    """What the template of the two tables can say. `baking` None: how long it bakes is not known."""

    batch: Batch
    desk: Desk
    table: TinTable
    baking: BakingView | None

    @property
    def tin_count(self) -> str:
        """How many tins the tables are for: `2 tins`."""
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
        """How far out rounding and whole eggs are, in words."""
        weight, spoon = self.table.weight_error_percent, self.table.spoon_error_percent
        errors = [f"a weight by at most {formats.percent(weight)}"] if weight else []
        errors += [f"a spoon measure by at most {formats.percent(spoon)}"] if spoon else []
        rounding = f" Rounding changes {' and '.join(errors)}." if errors else ""
        eggs = "Eggs stay whole and everything else is scaled to match." if self.batch.eggs else ""
        return f"{eggs}{rounding}".strip()

    @cached_property
    def _rows(self) -> tuple[list[Timed], list[Timed]]:
        """Each tin with when to look and when it is done: the house's own, and the rest."""
        times = self.baking.cells if self.baking else ((),) * len(self.table.rows)
        return owned_and_rest(zip(self.table.rows, times, strict=True), lambda timed: timed[0].owned)

    @property
    def own(self) -> tuple[TinSheet, ...]:
        """The whole-egg version for the tins of the house."""
        return self._sheets(self._rows[0], WHOLE)

    @property
    def rest(self) -> tuple[TinSheet, ...]:
        """The same for the others."""
        return self._sheets(self._rows[1], f"{WHOLE}{REST}")

    @property
    def rest_count(self) -> int:
        """How many others there are."""
        return len(self._rows[1])

    @property
    def exact(self) -> tuple[TinSheet, ...]:
        """The exact version, the tins of the house first."""
        heads = (*self.exact_heads, Head("Factor", "of recipe"))
        lots = [[row for row, _ in lot] for lot in self._rows if lot]
        return (TinSheet(EXACT, "exact", heads, tuple(_body(exact_lines(self.batch, lot), lot) for lot in lots)),)

    def _sheets(self, rows: list[Timed], label: str) -> tuple[TinSheet, ...]:
        if not rows:
            return ()
        tins, times = zip(*rows, strict=True)
        lines = list(whole_lines(self.batch, tins, times))
        heads, count = (*self.heads, *self._other_heads), len(self.heads)
        if count <= MOST_LINES:
            return (TinSheet(label, "whole", heads, (_body(lines, tins),)),)
        amounts = [line._replace(cells=line.cells[:count]) for line in lines]
        others = [
            line._replace(head=how_head(row), cells=line.cells[count:], factor=None)
            for line, row in zip(lines, tins, strict=True)
        ]
        return (
            TinSheet(label, "whole", heads[:count], (_body(amounts, tins),)),
            TinSheet(f"{label}{OVEN}", "whole", heads[count:], (_body(others, tins),)),
        )

    @property
    def _other_heads(self) -> tuple[Head, ...]:
        oven = (Head("Check", "min"), Head("Done", "min")) if self.baking else ()
        return (
            *oven, Head("Each tin", "g"), Head("Tin depth, at least", "cm"), Head("Factor", "of recipe"),
            Head("Out by", "%"),
        )  # fmt: skip

    @property
    def worked(self) -> WorkedView:
        """How they were worked out."""
        baked = (baking_worked(self.baking.known, self.desk.facts, self.baking.sums.times),) if self.baking else ()
        return worked_view((self.table.worked, self.batch.worked, *baked), self.desk.facts)


def _body(lines: Iterable[TableRow], tins: Iterable[TinRow]) -> TinBody:
    """Rows of tins that are all the house's, or none."""
    return TinBody(table_rows(lines), not any(tin.owned for tin in tins))
