"""A mixture's amounts when no tin is meant: by eggs, by cups in a tray, by weight and by batches."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.grids import Head, heads_stand
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import TableRow, asked_mm, plain_head, spelled
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.weighing import Batch
from tinbook.plans.mixtures.batches import WeightTable, has_amounts, weight_table

BY: dict[str, Callable[[float], str]] = {
    "eggs": lambda value: plural(value, "egg"),
    "cups": lambda value: plural(value, "cup"),
    "g": formats.grams,
    "batches": lambda value: plural(value, "batch", "batches"),
}


def heads(batch: Batch, egg_class: str) -> tuple[Head, ...]:
    """Heads of the ingredients' columns; eggs are counted by the class the house buys."""
    return tuple(
        Head(line.name, line.unit or (egg_class if line.whole_egg else "pieces")) for line in batch.ingredients
    )


@dataclass(frozen=True)
class AmountsView:
    """What the table's template can say."""

    batch: Batch
    desk: Desk

    @property
    def shown(self) -> bool:
        """Whether there is such a table."""
        return has_amounts(self.batch)

    @property
    def title(self) -> str:
        """What the table is measured by."""
        return "By number of eggs" if self.batch.tins else "By weight and batch"

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the ingredients' columns."""
        return heads(self.batch, self.desk.book.house.eggs)

    @property
    def stands(self) -> bool:
        """Whether its heads stand on end."""
        return heads_stand((*self.heads, Head("Together", "g")))

    @cached_property
    def table(self) -> WeightTable:
        """The sums."""
        return weight_table(self.batch, self.desk.facts)

    @property
    def lines(self) -> Iterator[TableRow]:
        """The rows, spelled."""
        asked_by, columns, figures = "", None, list[tuple[str, ...]]()
        width_mm = max((asked_mm(self.batch, tin) for _, tin in self.batch.tins), default=0.0)
        for row in self.table.rows:
            version = row.version
            if version.columns is not columns:
                columns, figures = version.columns, spelled(self.batch, version)
            yield TableRow(
                head=plain_head(BY[row.asked_by](row.value)),
                cells=(*figures[version.at], formats.number(version.mass_shown_g)),
                first=row.asked_by != asked_by,
                factor=version.factor,
                width_mm=width_mm,
            )
            asked_by = row.asked_by

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.table.worked,), self.desk.facts)
