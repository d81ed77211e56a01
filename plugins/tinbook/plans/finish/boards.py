"""What a cake stands on and goes out in: drum, card, paste and ribbon for them, the guide ring, the box."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from tinbook.engine import boards, pastes, rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.cake import Cake, house_cakes
from tinbook.tins.trade import mm

SOLD_MM = mm(*range(4, 19))
"""Boards the trade sells, 4 to 18 in across. Common practice."""
CHOICES = {"least": "board wider at least", "usual": "board wider usual", "wide": "board wider for a figure"}


@dataclass(frozen=True, slots=True)
class Board:
    """One drum: `size_mm` wide and long (alike for a disc), None where none so large is sold."""

    size_mm: tuple[float, float] | None
    disc: bool

    @property
    def area_mm2(self) -> float:
        """Of one that is sold."""
        assert self.size_mm is not None
        width, length = self.size_mm
        return pi / 4.0 * width * length if self.disc else width * length

    @property
    def edge_mm(self) -> float:
        """Of one that is sold."""
        assert self.size_mm is not None
        width, length = self.size_mm
        return pi * width if self.disc else 2.0 * (width + length)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """A cake's boards. `chosen` is the one the house takes; paste and ribbon are for that. Ribbon and guide mm."""

    cake: Cake
    owned: bool
    least: Board
    usual: Board
    wide: Board
    chosen: Board
    card: Board
    whole_g: float | None
    ring_g: float | None
    board_ribbon_mm: float | None
    cake_ribbon_mm: float
    guide_mm: tuple[float, float]
    box_mm: tuple[float, float, float] | None
    whole_shown_g: float | None
    ring_shown_g: float | None
    board_ribbon_shown_mm: float | None
    cake_ribbon_shown_mm: float
    guide_shown_mm: tuple[float, float]
    box_shown_mm: tuple[float, float, float] | None


@dataclass(frozen=True)
class BoardTable:
    """Boards, ribbon and box for a cake of every tin, at one height, its coats and its paste on."""

    finishing: Finishing
    height_mm: float
    rows: tuple[BoardRow, ...]
    worked: Worked


def board_for(cake: Cake, outer_mm: float, wider_mm: float) -> Board:
    """The least drum sold that is `wider_mm` wider than a cake with `outer_mm` of coats: a disc under a round one."""
    sizes = [side + 2.0 * outer_mm for side in cake.tin.bounds_mm]
    # the trade's sizes are names: a 15 cm cake on a 25 cm drum is 10 cm wider, coats or none
    named = [boards.board_mm(side, wider_mm, SOLD_MM) for side in cake.tin.bounds_mm]
    disc = cake.takes_disc()
    if disc:
        named = [boards.board_mm(max(cake.tin.bounds_mm), wider_mm, SOLD_MM)] * 2
    width, length = named
    if width is None or length is None or width < sizes[0] or length < sizes[1]:
        return Board(None, disc)
    return Board((width, length), disc)


def board_row(cake: Cake, owned: bool, settled: Finishing, facts: Facts, steps: rounding.ScaleSteps) -> BoardRow:
    """The boards of one cake."""
    outer_mm = settled.coats_mm + settled["paste"]
    outline = cake.outline.grown(outer_mm)
    drums = {name: board_for(cake, outer_mm, facts.numbers[key].value) for name, key in CHOICES.items()}
    chosen = drums[settled.board]
    disc = chosen.disc
    guide = tuple(side + 2.0 * outer_mm for side in cake.tin.bounds_mm)
    card = Board((cake.tin.bounds_mm[0], cake.tin.bounds_mm[1]), disc)
    cake_ribbon = boards.ribbon_mm(outline.edge_mm, settled["ribbon_over"])
    whole = ring = ribbon = None
    box: tuple[float, float, float] | None = None
    if chosen.size_mm:
        density = facts.kinds["sugarpaste"].gravity.typical
        thick = settled["board_paste"]
        whole = pastes.net_g(chosen.area_mm2, thick, density)
        ring = pastes.net_g(max(0.0, chosen.area_mm2 - outline.area_mm2), thick, density)
        ribbon = boards.ribbon_mm(chosen.edge_mm, settled["ribbon_over"])
        beside, above = settled["box_beside"], settled["box_above"]
        high = cake.stands_mm + outer_mm + facts.numbers["drum thickness"].value + above
        box = (boards.box_mm(chosen.size_mm[0], beside), boards.box_mm(chosen.size_mm[1], beside), high)
    return BoardRow(
        cake=cake,
        owned=owned,
        least=drums["least"],
        usual=drums["usual"],
        wide=drums["wide"],
        chosen=chosen,
        card=card,
        whole_g=whole,
        ring_g=ring,
        board_ribbon_mm=ribbon,
        cake_ribbon_mm=cake_ribbon,
        guide_mm=(guide[0], guide[1]),
        box_mm=box,
        whole_shown_g=None if whole is None else rounding.scales(whole, steps),
        ring_shown_g=None if ring is None else rounding.scales(ring, steps),
        board_ribbon_shown_mm=None if ribbon is None else rounding.ruler_cm(ribbon),
        cake_ribbon_shown_mm=rounding.ruler_cm(cake_ribbon),
        guide_shown_mm=(rounding.ruler(guide[0]), rounding.ruler(guide[1])),
        box_shown_mm=None
        if box is None
        else (rounding.ruler_cm(box[0]), rounding.ruler_cm(box[1]), rounding.ruler_cm(box[2])),
    )


def board_table(book: Book, facts: Facts, height_mm: float | None = None) -> BoardTable:
    """Boards, ribbon and box for a cake of every tin, as high as asked or as the house usually makes them."""
    settled = finishing(book.finish, facts)
    height_mm = height_mm or settled.heights_mm[0]
    outer_mm = settled.coats_mm + settled["paste"]
    steps = steps_of(book)
    rows = tuple(
        board_row(cake, owned, settled, facts, steps)
        for cake, owned in house_cakes(book, height_mm, settled.layers, outer_mm)
    )
    return BoardTable(settled, height_mm, rows, _worked(settled, height_mm, facts))


def _worked(settled: Finishing, height_mm: float, facts: Facts) -> Worked:
    wider_mm = {choice: facts.numbers[key].value for choice, key in CHOICES.items()}
    return Worked(
        saying("boards_worked"),
        (
            saying("cake_coats_paste", high_mm=height_mm, coats_mm=settled.coats_mm, paste_mm=settled["paste"]),
            saying("drum_wider_by", least_mm=wider_mm["least"], usual_mm=wider_mm["usual"], wide_mm=wider_mm["wide"]),
            saying("paste_and_ribbon", paste_mm=settled["board_paste"], over_mm=settled["ribbon_over"]),
            saying("box_room", beside_mm=settled["box_beside"], above_mm=settled["box_above"]),
        ),
        ("common practice", "house judgement"),
    )
