"""How much of a paste covers a cake from every tin: the table, how large it is rolled, and for which cake."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.grids import Head
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import HouseRows, house_first
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.mixture.coats import TinCells, learned_words, millimetres, number
from tinbook.pages.spelling import formats
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.covering import PasteTable, paste_table
from tinbook.plans.finish.pasting import PasteRow


@dataclass(frozen=True)
class PastesView:
    """What the template of pastes can say."""

    batch: Batch
    desk: Desk

    @cached_property
    def tables(self) -> tuple[PasteTable, ...]:
        """A table for each height of the house, the usual one first."""
        desk = self.desk
        first = paste_table(self.batch, desk.book, desk.facts)
        heights_mm = first.finishing.heights_mm[1:]
        return (first, *(paste_table(self.batch, desk.book, desk.facts, height_mm) for height_mm in heights_mm))

    @property
    def lead(self) -> str:
        """For which cake, how thick, and whose figures."""
        first = self.tables[0]
        settled = first.finishing
        over = millimetres(settled["paste_over"])
        lead = (
            f"For a cake {formats.centimetres(first.height_mm)} high before it is coated, "
            f"with {millimetres(settled.coats_mm)} of coating under the paste: rolled out "
            f"{millimetres(settled['paste_rolled'])} thick with {over} to spare all round, ending up "
            f"{millimetres(settled['paste'])} thick on the cake. {'Buy' if self.batch.bought else 'Make'} the amount "
            "shown under “To roll”, which includes the trimmings. "
            "Makers differ: the range is what published charts work out at, and some cake makers allow as much "
            "as the top of that range. The trimmings can be used again: knead them together and wrap them."
        )
        return " ".join(filter(None, (lead, learned_words(first.learned))))

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the columns."""
        high = tuple(Head(f"{formats.centimetres(table.height_mm)} high", "to roll, g") for table in self.tables[1:])
        return (
            Head("On the cake", "g"), Head("Range", "g"), Head("Roll out to", "cm"), Head("To roll", "g"),
            Head("Trim", "g"), Head("Packs" if self.batch.bought else "Batches"),
            Head("Some cake makers allow", "g"), *high,
        )  # fmt: skip

    @property
    def rows(self) -> HouseRows:
        """The rows, spelled."""
        return house_first(self._cells(), (0, 3))

    def _cells(self) -> TinCells:
        for rows in zip(*(table.rows for table in self.tables), strict=True):
            row = rows[0]
            cells = (
                number(row.net_shown_g),
                f"{number(row.net_low_shown_g)}–{number(row.net_high_shown_g)}",
                rolled(row),
                number(row.made_shown_g),
                number(row.back_shown_g),
                packs_words(row) if self.batch.bought else str(row.batches),
                number(row.net_high_shown_g) if allows_more(row) else "no more",
                *(number(other_row.made_shown_g) for other_row in rows[1:]),
            )
            yield row.cake.tin, row.owned, cells

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.tables[0].worked,), self.desk.facts)


def allows_more(row: PasteRow) -> bool:
    """Whether some cake makers allow more for a cake than is rolled out for it."""
    return row.net_high_shown_g > row.made_shown_g


def packs_words(row: PasteRow) -> str:
    """The packs to buy for a cake: `1 kg + 250 g`; a dash if its card does not say what a pack weighs."""
    packs = (f"{count}{formats.NBSP}×{formats.NBSP}" * (count > 1) + formats.grams(size) for count, size in row.packs)
    return " + ".join(packs) or "–"


def rolled(row: PasteRow) -> str:
    """How large paste is rolled, in cm: `42.5 across`, `42.5 × 47`."""
    width, length = (number(side / 10) for side in row.rolled_shown_mm)
    return f"{width} across" if row.disc else f"{width}{formats.NBSP}×{formats.NBSP}{length}"
