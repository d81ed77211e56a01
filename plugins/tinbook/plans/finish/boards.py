"""What a cake stands on and travels in: drum, card, their paste and ribbon, the guide ring, the box."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import pi

from tinbook.engine import boards, pastes, rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import Cakes
from tinbook.tins import Tin
from tinbook.tins.trade import mm, true_mm
from tinbook.units import Sold

SOLD_MM = mm(*range(4, 19))
"""Boards the trade sells, 4 to 18 in across, by their names in centimetres. Common practice."""
CHOICES = {"least": "board wider at least", "usual": "board wider usual", "wide": "board wider for a figure"}


@dataclass(frozen=True, slots=True)
class Board:
    """One drum: `size_mm` wide and long (equal for a disc), None if none that large is sold. Boards have both names
    as tins do, and are `sold` as the house's tins are."""

    size_mm: tuple[float, float] | None
    disc: bool
    sold: Sold = "cm"

    @property
    def area_mm2(self) -> float:
        """Area of a stock board, mm²."""
        assert self.size_mm is not None
        width, length = self.size_mm
        return pi / 4.0 * width * length if self.disc else width * length

    @property
    def edge_mm(self) -> float:
        """Edge of a stock board, mm."""
        assert self.size_mm is not None
        width, length = self.size_mm
        return pi * width if self.disc else 2.0 * (width + length)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drum:
    """A drum under one cake and what it takes: paste all over or as a ring, ribbon, and the box it travels in.

    All of it None if no drum that large is sold. What has `shown` in its name is rounded for scales or for a ruler.
    """

    board: Board
    whole_g: float | None = None
    ring_g: float | None = None
    ribbon_mm: float | None = None
    box_mm: tuple[float, float, float] | None = None
    whole_shown_g: float | None = None
    ring_shown_g: float | None = None
    ribbon_shown_mm: float | None = None
    box_shown_mm: tuple[float, float, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """A cake's boards: the `drums` asked for, by how much wider they are; `chosen`: the house's. Ribbon and guide in
    mm."""

    cake: Cake
    owned: bool
    drums: Mapping[str, Drum]
    chosen: Drum
    card: Board
    cake_ribbon_mm: float
    guide_mm: tuple[float, float]
    cake_ribbon_shown_mm: float
    guide_shown_mm: tuple[float, float]


@dataclass(frozen=True)
class BoardTable:
    """Boards, ribbon and box for a cake from every tin, with its coats and paste on."""

    cakes: Cakes
    rows: tuple[BoardRow, ...]
    worked: Worked

    @property
    def finishing(self) -> Finishing:
        """The figures of the house, or of the cake."""
        return self.cakes.finishing


def board_for(cake: Cake, outer_mm: float, wider_mm: float) -> Board:
    """The smallest stock drum that is `wider_mm` wider than a cake, and no smaller than it is with `outer_mm` of coats
    on: a disc under a round one."""
    # trade sizes are names: a 25 cm drum is 10 cm wider than a 15 cm cake, coats or not
    return _stock_board(cake.tin, cake.takes_disc(), max(wider_mm, 2.0 * outer_mm))


@lru_cache(maxsize=4096)
def _stock_board(tin: Tin, disc: bool, wider_mm: float) -> Board:
    """The same, for a cake from a tin, whatever its height."""
    sides_mm = [max(tin.bounds_mm)] * 2 if disc else tin.bounds_mm
    sold_mm = [true_mm(size, tin.sold) for size in SOLD_MM]
    width, length = (boards.board_mm(side, wider_mm, sold_mm) for side in sides_mm)
    return Board(None if width is None or length is None else (width, length), disc, tin.sold)


def board_of(cake: Cake, settled: Finishing, choice: str, facts: Facts) -> Board:
    """The drum under a cake with its coats and paste on; `choice`: `least`, `usual` or `wide`."""
    return board_for(cake, settled.coats_mm + settled["paste"], facts.numbers[CHOICES[choice]].value)


def guide_of(cake: Cake, settled: Finishing) -> tuple[float, float]:
    """How wide and long a cake is with its coats and paste on, mm: the ring it is set down in."""
    outer_mm = settled.coats_mm + settled["paste"]
    width_mm, length_mm = cake.tin.bounds_mm
    return width_mm + 2.0 * outer_mm, length_mm + 2.0 * outer_mm


def board_row(
    cake: Cake,
    owned: bool,
    settled: Finishing,
    facts: Facts,
    *,
    paste_g_per_ml: float,
    steps: rounding.ScaleSteps,
    choices: Collection[str] = tuple(CHOICES),
) -> BoardRow:
    """The boards of one cake; `paste_g_per_ml`: the weight of 1 ml of the paste on them. `choices` include the
    house's."""
    outer_mm = settled.coats_mm + settled["paste"]
    outline = cake.outline.grown(outer_mm)
    drums = {
        choice: drum_under(board_of(cake, settled, choice, facts), cake, settled, paste_g_per_ml, facts, steps)
        for choice in choices
    }
    chosen = drums[settled.board]
    guide = guide_of(cake, settled)
    cake_ribbon = boards.ribbon_mm(outline.edge_mm, settled["ribbon_over"])
    return BoardRow(
        cake=cake,
        owned=owned,
        drums=drums,
        chosen=chosen,
        card=Board((cake.tin.bounds_mm[0], cake.tin.bounds_mm[1]), chosen.board.disc, cake.tin.sold),
        cake_ribbon_mm=cake_ribbon,
        guide_mm=guide,
        cake_ribbon_shown_mm=rounding.ruler_cm(cake_ribbon),
        guide_shown_mm=(rounding.ruler(guide[0]), rounding.ruler(guide[1])),
    )


def board_paste_g_per_ml(settled: Finishing, book: Book, facts: Facts) -> float:
    """The weight per ml of what the house covers its boards with, or of sugarpaste."""
    word = settled.made.board
    batch = made_or_bought(word, book, facts) if word else None
    return (batch.kind if batch else facts.kinds["sugarpaste"]).gravity.typical


def drum_under(
    board: Board,
    cake: Cake,
    settled: Finishing,
    g_per_ml: float,
    facts: Facts,
    steps: rounding.ScaleSteps,
    stands_mm: float | None = None,
) -> Drum:
    """What a drum under a cake takes; `stands_mm`: how high everything on it stands, where that is more than the cake
    with its coats and paste on, and the paste under it."""
    if board.size_mm is None:
        return Drum(board=board)
    outer_mm, thick_mm = settled.coats_mm + settled["paste"], settled["board_paste"]
    beside_mm, above_mm = settled["box_beside"], settled["box_above"]
    whole_g = pastes.net_g(board.area_mm2, thick_mm, g_per_ml)
    ring_g = pastes.net_g(max(0.0, board.area_mm2 - cake.outline.grown(outer_mm).area_mm2), thick_mm, g_per_ml)
    ribbon_mm = boards.ribbon_mm(board.edge_mm, settled["ribbon_over"])
    width_mm, length_mm = (boards.box_mm(side, beside_mm) for side in board.size_mm)
    if stands_mm is None:
        stands_mm = cake.stands_mm + outer_mm + (thick_mm if settled.board_covered == "whole" else 0.0)
    high_mm = stands_mm + facts.numbers["drum thickness"].value + above_mm
    return Drum(
        board=board,
        whole_g=whole_g,
        ring_g=ring_g,
        ribbon_mm=ribbon_mm,
        box_mm=(width_mm, length_mm, high_mm),
        whole_shown_g=rounding.scales(whole_g, steps),
        ring_shown_g=rounding.scales(ring_g, steps),
        ribbon_shown_mm=rounding.ruler_cm(ribbon_mm),
        box_shown_mm=(rounding.ruler_cm(width_mm), rounding.ruler_cm(length_mm), rounding.ruler_cm(high_mm)),
    )


def board_table(cakes: Cakes, book: Book, facts: Facts, chosen: bool = False) -> BoardTable:
    """Boards, ribbon and box for each of the cakes; with `chosen`, only for the drum the house uses."""
    settled = cakes.finishing
    outer_mm = settled.coats_mm + settled["paste"]
    g_per_ml, steps = board_paste_g_per_ml(settled, book, facts), steps_of(book)
    choices = (settled.board,) if chosen else tuple(CHOICES)
    rows = tuple(
        board_row(cake, owned, settled, facts, paste_g_per_ml=g_per_ml, steps=steps, choices=choices)
        for cake, owned in cakes.with_room(outer_mm)
    )
    return BoardTable(cakes, rows, _worked(cakes, facts))


def _worked(cakes: Cakes, facts: Facts) -> Worked:
    settled = cakes.finishing
    wider_mm = {choice: facts.numbers[key].value for choice, key in CHOICES.items()}
    return Worked(
        saying("boards_worked"),
        (
            cakes.said,
            saying("coats_and_paste", coats_mm=settled.coats_mm, paste_mm=settled["paste"]),
            saying("drum_wider_by", least_mm=wider_mm["least"], usual_mm=wider_mm["usual"], wide_mm=wider_mm["wide"]),
            saying("paste_and_ribbon", paste_mm=settled["board_paste"], over_mm=settled["ribbon_over"]),
            saying("box_room", beside_mm=settled["box_beside"], above_mm=settled["box_above"]),
        ),
        ("common practice", "our own judgement"),
    )
