"""What it takes to finish a cake, on its own page: from every tin, at the height it bakes to, with what it serves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.grids import Head
from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import HouseRows, house_first
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.mixture.coats import TinCells, number
from tinbook.pages.mixture.pastes import allows_more
from tinbook.pages.spelling import formats
from tinbook.plans.base.scaling import TinTable
from tinbook.plans.finish.boards import Board, Drum
from tinbook.plans.finish.cakes import baked_cakes
from tinbook.plans.finish.coating import CoatRow
from tinbook.plans.finish.covered import CoveredTable, covered_table
from tinbook.plans.finish.layers import StackTable
from tinbook.plans.finish.pasting import PasteRow
from tinbook.plans.portions.cutting import Portion, portion_sizes
from tinbook.plans.portions.serving import Serving, servings
from tinbook.tins.trade import metric_label

ACROSS = "×"
"""Set tight: such a table has a row for every tin."""


@dataclass(frozen=True)
class FinishedView:
    """What the template of a finished cake can say."""

    table: TinTable
    stacks: StackTable
    desk: Desk

    @cached_property
    def made(self) -> CoveredTable:
        """The sums."""
        desk = self.desk
        return covered_table(baked_cakes(self.table, desk.book, desk.facts), desk.book, desk.facts)

    @cached_property
    def portions(self) -> dict[str, Portion]:
        """The kinds of portion shown: all those with one of the trade's names."""
        return dict(portion_sizes(self.desk.book, self.desk.facts))

    @property
    def lead(self) -> str:
        """For which cakes, and what the house has not said."""
        settled, missing = self.made.finishing, self.made.missing
        filled = ", once layered and filled" if settled["filling"] else ""
        lead = (
            f"Each height is that of a cake of this mixture baked in that tin{filled}; coats, paste, drum and box "
            f"are for that height."
        )
        if missing:
            roles = formats.sentence([role.replace("_", " ") for role in missing])
            lead += f" The file house/finish.yaml does not say what you use for {roles}."
        if settled["stays_in_the_bag"] and any(row.bag_g for line in self.made.rows[:1] for row in line.made):
            lead += " What stays in the bowl and the bag is allowed for."
        return lead

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the columns."""
        batches = list(self.made.mixtures.values())
        fills = [Head(formats.title(batches[place].mixture.name), "g (batches)") for place in self._used]
        cover = self.made.cover
        paste = [Head(formats.title(cover.mixture.name), "to roll, g (a generous allowance)")] if cover else []
        served = [Head(formats.title(kind), "serves (g each)") for kind in self.portions]
        return (
            Head("Height", "cm"), *fills, *paste, Head("Drum", "cm"), Head("Ribbon", "board, cm"),
            Head("Ribbon", "cake, cm"), Head("Box", "inside, cm"), *served,
        )  # fmt: skip

    @property
    def rows(self) -> HouseRows:
        """The rows, spelled."""
        return house_first(self._cells(), tuple(range(1, 1 + len(self._used))))

    @cached_property
    def _used(self) -> tuple[int, ...]:
        """The places of the mixtures that some cake takes."""
        places = range(len(self.made.mixtures))
        return tuple(place for place in places if any(row.made[place].made_g for row in self.made.rows))

    def _cells(self) -> TinCells:
        weights = {row.stack.tin: row.stack.weight_g for row in self.stacks.rows}
        for row in self.made.rows:
            cake = row.cake
            served = servings(cake.tin, cake.stands_mm, weights.get(cake.tin), self.portions)
            cells = (
                number(round(cake.stands_mm) / 10),
                *(_made(row.made[place]) for place in self._used),
                *([] if row.paste is None else [_paste(row.paste)]),
                *_stands_on(row.board.chosen),
                number(row.board.cake_ribbon_shown_mm / 10),
                _box(row.board.chosen),
                *map(_served, served.values()),
            )
            yield cake.tin, row.owned, cells

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.made.worked,), self.desk.facts)


def _made(row: CoatRow) -> str:
    return f"{number(row.made_shown_g)} ({row.batches})"


def _paste(row: PasteRow) -> str:
    more = f" ({number(row.net_high_shown_g)})" if allows_more(row) else ""
    return number(row.made_shown_g) + more


def _stands_on(drum: Drum) -> Iterator[str]:
    yield _board(drum.board)
    yield "–" if drum.ribbon_shown_mm is None else number(drum.ribbon_shown_mm / 10)


def _board(board: Board) -> str:
    if board.size_mm is None:
        return "not a stock size"
    sides = board.size_mm[:1] if board.disc or board.size_mm[0] == board.size_mm[1] else board.size_mm
    return metric_label(sides, board.sold).removesuffix(" cm").replace(" x ", ACROSS)


def _box(drum: Drum) -> str:
    return "–" if drum.box_shown_mm is None else ACROSS.join(number(side / 10) for side in drum.box_shown_mm)


def _served(serving: Serving) -> str:
    grams = serving.each_shown_g
    return str(serving.cut.count) if grams is None else f"{serving.cut.count} ({number(grams)})"
