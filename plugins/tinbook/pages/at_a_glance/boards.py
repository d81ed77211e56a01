"""Boards and ribbon: what a cake from every tin stands on and travels in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin

from tinbook.facts import Caution
from tinbook.pages.base.drawings import spread
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, own_first
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.section import Word
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.finish.boards import SOLD_MM, Board, BoardRow, BoardTable, Drum, board_table
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.tins import Tin
from tinbook.tins.trade import inch_label, metric_label

number, NBSP = formats.number, formats.NBSP
ADDRESS, TITLE = "boards", "Boards and ribbon"
OURS, OTHERS = "on hand", "others"
DRUMS = ("usual", "wide", "least")
CALLED = {"usual": "usual", "wide": "wide", "least": "smallest"}
DRAWN_MM = 200.0
"""The round nearest to this size is the one drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPlan:
    """A round cake on its drum in plan: concentric circles, with a leader and a word for each. In the drawing's own
    units.

    `words` says the same.
    """

    middle: float
    cake: float
    guide: float
    drum: float
    leaders: str
    names: tuple[Word, ...]
    scale_to: float
    scale_text: float
    words: str


MIDDLE, DRUM, WORDS_X = 127.0, 120.0, 270.0
SLOPES = (55.0, 25.0, -15.0)
"""The angle above the middle at which a leader leaves its circle, from the outer one inwards, degrees."""


def board_plan(row: BoardRow) -> BoardPlan | None:
    """The drawing of one row; None if no drum is wide enough."""
    if row.chosen.board.size_mm is None:
        return None
    width = row.chosen.board.size_mm[0]
    scale = DRUM / (width / 2.0)
    tin, guide = row.cake.tin, row.guide_mm[0]
    circles = [(width, f"drum {number(width / 10)} cm"), (guide, f"guide ring {number(row.guide_shown_mm[0])} mm")]
    circles.append((tin.bounds_mm[0], f"cake {number(tin.bounds_mm[0] / 10)} cm"))
    starts = []
    for (across, _), slope in zip(circles, SLOPES, strict=True):
        radius = across / 2.0 * scale
        starts.append((MIDDLE + radius * cos(radians(slope)), MIDDLE - radius * sin(radians(slope))))
    heights = spread([y for _, y in starts], 34.0)
    leaders = "".join(
        f"M{x:.1f} {y:.1f}L{WORDS_X - 20:g} {word_y:.1f}h14" for (x, y), word_y in zip(starts, heights, strict=True)
    )
    return BoardPlan(
        middle=MIDDLE,
        cake=round(tin.bounds_mm[0] / 2.0 * scale, 1),
        guide=round(guide / 2.0 * scale, 1),
        drum=DRUM,
        leaders=leaders,
        names=tuple(
            Word(WORDS_X, round(word_y + 7.0, 1), text) for word_y, (_, text) in zip(heights, circles, strict=True)
        ),
        scale_to=round(10.0 + 100.0 * scale, 1),
        scale_text=round(20.0 + 100.0 * scale, 1),
        words=f"Seen from above, to scale: {', '.join(text for _, text in reversed(circles))}, one inside the other",
    )


@dataclass(frozen=True)
class BoardsView:
    """Everything the page says."""

    desk: Desk

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What to watch for when a cake on its board is lifted and driven."""
        return (self.desk.facts.cautions["carrying"],)

    @cached_property
    def table(self) -> BoardTable:
        """The sums."""
        return board_table(usual_cakes(self.desk.book, self.desk.facts), self.desk.book, self.desk.facts)

    @property
    def lead(self) -> str:
        """For which cake, and which board the house uses."""
        settled = self.table.finishing
        taken = CALLED[settled.board]
        whole = "all over" if settled.board_covered == "whole" else "as a ring round the cake"
        thick = formats.with_unit(number(settled["board_paste"]), "mm")
        high = formats.centimetres(self.table.cakes.usual_mm)
        return (
            f"For a cake {high} high before it is coated and covered. We use the {taken} drum and cover it "
            f"{whole}, {thick} "
            "thick. Use the wide one where something stands in front of the cake. If no standard-size drum is "
            "wide enough, "
            "have a board cut to size. Cupcakes go out in a box with a cupcake insert and no board."
        )

    @property
    def plan(self) -> BoardPlan | None:
        """The drawing."""
        rounds = [row for row in self.table.rows if row.cake.tin.shape == "round" and row.chosen.board.size_mm]
        best = min(
            rounds,
            key=lambda row: (not row.owned, abs(row.cake.tin.bounds_mm[0] - DRAWN_MM)),
            default=None,
        )
        return board_plan(best) if best else None

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """A table for each drum, the house's first."""
        taken = self.table.finishing.board
        return tuple(self._grid(name) for name in sorted(DRUMS, key=lambda name: name != taken))

    def _grid(self, name: str) -> Grid:
        settled = self.table.finishing
        taken = name == settled.board
        heads = [Head("Tin"), Head("Drum"), Head("Paste", "all over, g"), Head("Paste", "as a ring, g")]
        heads += [Head("Ribbon", "board, cm"), Head("Box inside", "cm")]
        if taken:
            heads += [Head("Ribbon", "cake, cm"), Head("Card"), Head("Guide ring", "mm")]
        return Grid(
            title=f"On the {CALLED[name]} drum" + (", the one we use" if taken else ""),
            anchor=f"{name}-drum",
            heads=tuple(heads),
            rows=own_first(self._rows(name, taken)),
            worked=worked_view((self.table.worked,), self.desk.facts),
            narrow="boards",
            captions=(("kind", "Shape"), ("tag", "Tins")),
        )

    def _rows(self, name: str, taken: bool) -> Iterator[GridRow]:
        whole = self.table.finishing.board_covered == "whole"
        for row in self.table.rows:
            tin = row.cake.tin
            yield GridRow(
                head=formats.tin_words(tin.name),
                cells=(*_drum_cells(row.drums[name], whole), *(_cake_cells(row) if taken else ())),
                note=formats.tin_words(tin.size_label_in),
                lent=not row.owned,
                marks=narrow_marks(tin, row.owned),
            )


def narrow_marks(tin: Tin, owned: bool) -> tuple[tuple[str, str], ...]:
    """What a tin's row can be narrowed by."""
    return (("kind", tin.kind.title), ("tag", OURS if owned else OTHERS))


def board_cell(board: Board, main: bool = False) -> Cell:
    """A board by both its names."""
    if board.size_mm is None:
        return Cell("not a stock size", main, f"stock sizes go up to {number(max(SOLD_MM) / 10)}{NBSP}cm")
    sides = board.size_mm[:1] if board.disc or board.size_mm[0] == board.size_mm[1] else board.size_mm
    return Cell(
        formats.tin_words(metric_label(sides, board.sold)), main, formats.tin_words(inch_label(sides, board.sold))
    )


def _drum_cells(drum: Drum, whole: bool) -> Iterator[Cell]:
    yield board_cell(drum.board, True)
    yield Cell(_or_none(drum.whole_shown_g), whole)
    yield Cell(_or_none(drum.ring_shown_g), not whole)
    yield Cell("none" if drum.ribbon_shown_mm is None else number(drum.ribbon_shown_mm / 10))
    yield Cell("none" if drum.box_shown_mm is None else _sides(drum.box_shown_mm, 10.0, all_of_them=True))


def _cake_cells(row: BoardRow) -> Iterator[Cell]:
    yield Cell(number(row.cake_ribbon_shown_mm / 10))
    yield board_cell(row.card)
    yield Cell(_sides(row.guide_shown_mm, 1.0))


def _or_none(grams: float | None) -> str:
    return "none" if grams is None else number(grams)


def _sides(sides_mm: tuple[float, ...], unit_mm: float, all_of_them: bool = False) -> str:
    """`222`, `222 × 322`: equal sides once, unless all of them are asked for."""
    shown = sides_mm if all_of_them or len(set(sides_mm)) > 1 else sides_mm[:1]
    return f"{NBSP}×{NBSP}".join(number(side / unit_mm) for side in shown)


def boards_pages(desk: Desk) -> Iterator[Page]:
    """The one page."""
    yield Page(address=ADDRESS, title=TITLE, template="boards", view=BoardsView(desk), section=("Covering",))
