"""How much of a filling or icing a cake from every tin takes: the table, what goes into that much, for which cake."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.grids import Head
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import (
    HouseRows,
    TableRow,
    asked_mm,
    house_first,
    owned_and_rest,
    spelled,
    table_rows,
    tin_head,
)
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.coating import CoatRow
from tinbook.plans.finish.covering import CoatTable, coat_table, weighed_out
from tinbook.plans.finish.used import Correction
from tinbook.tins import Tin

number = formats.number
TinCells = Iterator[tuple[Tin, bool, tuple[str, ...]]]


def millimetres(value: float) -> str:
    """`2.5 mm`."""
    return formats.with_unit(number(value), "mm")


def cake_words(settled: Finishing, height_mm: float) -> str:
    """`a cake 10 cm high in 4 layers, before its coats`."""
    return f"a cake {formats.centimetres(height_mm)} high in {plural(settled.layers, 'layer')}, before it is coated"


def bowl_words(settled: Finishing, piped: bool = False) -> str:
    """What stays in the bowl and, for what is piped, in the bag; empty if nothing does."""
    share, bag_ml = settled.figures["stays_in_the_bowl"].percent, settled["stays_in_the_bag"] if piped else 0.0
    stays = [f"{formats.percent(share)} stays in the bowl and on the tools"] if share else []
    stays += [f"{formats.with_unit(number(bag_ml), 'ml')} on the beater and in the bag"] if bag_ml else []
    counted = "both are" if len(stays) > 1 else "it is"
    return f"{formats.title(', and '.join(stays))}: {counted} allowed for." if stays else ""


def learned_words(correction: Correction) -> str:
    """What the house's own cakes took, as a sentence; empty if none is logged."""
    return f"{formats.title(spell(correction.told))}." if correction.told else ""


@dataclass(frozen=True)
class CoatsView:
    """What the template of fillings and coats can say."""

    batch: Batch
    desk: Desk

    @cached_property
    def tables(self) -> tuple[CoatTable, ...]:
        """A table for each height of the house, the usual one first."""
        desk = self.desk
        first = coat_table(self.batch, desk.book, desk.facts)
        # the filling between that many layers is the same in a low cake and a high one
        heights_mm = () if first.roles == ("filling",) else first.finishing.heights_mm[1:]
        return (first, *(coat_table(self.batch, desk.book, desk.facts, height_mm) for height_mm in heights_mm))

    @property
    def lead(self) -> str:
        """For which cake, how thick, and whose figures."""
        first = self.tables[0]
        settled = first.finishing
        dam = f" inside a dam of {millimetres(settled.dam_mm)}" if settled.dam_mm else ""
        fills, coats = "filling" in first.roles, "final coat" in first.roles
        figures = [f"filling {millimetres(settled['filling'])}{dam}"] if fills else []
        figures += [
            f"{role} {millimetres(settled[role.replace(' ', '_')])}"
            for role in ("crumb coat", "final coat")
            if role in first.roles
        ]
        if settled.border and "border" in first.roles:
            figures.append(f"a border of {settled.border.marks} at the {settled.border.edges}")
        lead = f"For {cake_words(settled, first.height_mm)}: {', '.join(figures)}."
        if dam and fills and coats:
            lead += " The dam is counted as final coat."
        bowl = bowl_words(settled, "border" in first.roles)
        return " ".join(filter(None, (lead, bowl, learned_words(first.learned))))

    @cached_property
    def _parts(self) -> tuple[tuple[Head, Callable[[CoatRow], float]], ...]:
        """The columns that say where it goes, those where any goes."""
        settled, roles = self.tables[0].finishing, self.tables[0].roles
        parts: list[tuple[Head, Callable[[CoatRow], float]]] = []
        if "filling" in roles:
            parts.append((Head("Filling", "g"), lambda row: row.filling_shown_g))
        if "crumb coat" in roles:
            parts.append((Head("Crumb coat", "g"), lambda row: row.crumb_shown_g))
        if "final coat" in roles:
            parts.append((Head("Final coat", "g"), lambda row: row.final_shown_g))
        if "border" in roles and settled.border:
            parts.append((Head("Border", "g"), lambda row: row.border_shown_g))
        return tuple(parts)

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the columns."""
        high = tuple(Head(f"{formats.centimetres(table.height_mm)} high", "in all, g") for table in self.tables[1:])
        return (*(head for head, _ in self._parts), Head("In all", "g"), Head("Batches"), Head("Spare", "g"), *high)

    @property
    def rows(self) -> HouseRows:
        """The rows, spelled."""
        return house_first(self._cells(), (len(self._parts), len(self._parts) + 1))

    def _cells(self) -> TinCells:
        parts = [get for _, get in self._parts]
        for rows in zip(*(table.rows for table in self.tables), strict=True):
            row = rows[0]
            cells = (
                *(number(get(row)) for get in parts),
                number(row.made_shown_g),
                str(row.batches),
                number(row.over_shown_g),
                *(number(other_row.made_shown_g) for other_row in rows[1:]),
            )
            yield row.cake.tin, row.owned, cells

    @property
    def has_parts(self) -> bool:
        """Whether more than one ingredient goes into it, so that it gives each."""
        return len(self.batch.ingredients) > 1

    @property
    def split_heads(self) -> tuple[Head, ...]:
        """Heads of what goes into it."""
        return tuple(Head(formats.title(line.name), line.unit or "g") for line in self.batch.ingredients)

    @property
    def split_rows(self) -> HouseRows:
        """What goes into the amount made, one line for each cake."""
        versions = weighed_out(self.tables[0], self.desk.facts)
        made = zip(self.tables[0].rows, versions, strict=True)
        own, rest = owned_and_rest(made, lambda each: each[0].owned)
        lent = not any(row.owned for row, _ in own)
        return HouseRows(
            own=table_rows(self._split(own)), rest=table_rows(self._split(rest)), others=len(rest), lent=lent
        )

    def _split(self, made: list[tuple[CoatRow, Version]]) -> Iterator[TableRow]:
        figures, shape = spelled(self.batch, made[0][1]) if made else [], ""
        for row, version in made:
            tin = row.cake.tin
            cells = (*figures[version.at], number(row.made_shown_g))
            yield TableRow(
                head=tin_head(tin),
                cells=cells,
                first=tin.shape != shape,
                factor=version.factor,
                width_mm=asked_mm(self.batch, tin),
            )
            shape = tin.shape

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.tables[0].worked,), self.desk.facts)
