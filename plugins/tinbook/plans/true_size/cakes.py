"""Templates at actual size for a cake: the guide ring on its board, and the plan it is cut by."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.finish.boards import board_of, guide_of
from tinbook.plans.finish.cake import Cake
from tinbook.plans.portions.cut import outline, pieces_of
from tinbook.plans.portions.cutting import ASKED, Portion, cut_of, portion_called, portion_sizes
from tinbook.plans.true_size.drawn import (
    Label,
    Stroke,
    Template,
    axes,
    cross,
    oval,
    ruler_mm,
    ruler_size,
)
from tinbook.tins import Tin
from tinbook.tins.growth import ring_round

DISC_CORNERS = 360


def ring_template(tin: Tin, book: Book, facts: Facts) -> Template:
    """The board's edge, and on it the guide ring: the cake with its coats on, to be marked on the board.

    AskError for cups, which stand on no board, and for a cake larger than any stock board.
    """
    if tin.kind.in_trays:
        raise AskError(f"{tin.name} do not stand on a board", "name a cake")
    settled = finishing(book.finish, facts)
    cake = Cake(tin, settled.heights_mm[0], settled.layers)
    out_mm = settled.coats_mm + settled["paste"]
    guide = Stroke.ring("inner", ring_round(tin, out_mm))
    board, guide_mm = board_of(cake, settled, settled.board, facts), guide_of(cake, settled)
    if board.size_mm is None:
        raise AskError(f"there is no board large enough for {tin.as_said}", "name a smaller cake")
    wide, long = board.size_mm
    edge = Stroke("cut", oval((0.0, 0.0), wide, long, DISC_CORNERS)) if board.disc else _box(wide, long)
    guide_size, board_size = ruler_size(*guide_mm), ruler_size(wide, long)
    # off the middle, where sheets are joined
    labels = (
        Label(saying("board_edge"), (-wide / 5.0, long / 2.0 - (7.0 + 0.05 * long))),
        Label(saying("coated_cake"), (-guide_mm[0] / 4.0, 6.0)),
    )
    return Template(
        key="board-ring",
        name=saying("board_ring"),
        size=saying("ring_on_board", guide=guide_size, board=board_size),
        cake=tin,
        strokes=(edge, guide, *axes([edge]), *cross((0.0, 0.0), 4.0, "inner")),
        labels=labels,
        notes=(saying("ring_to_prick", guide=guide_size, board=board_size),),
    )


def _box(wide: float, long: float) -> Stroke:
    x, y = wide / 2.0, long / 2.0
    return Stroke("cut", ((-x, -y), (x, -y), (x, y), (-x, y), (-x, -y)))


def cutting_template(tin: Tin, portion: str | tuple[float, float], book: Book, facts: Facts) -> Template:
    """The plan for cutting a cake into portions of a kind, or of a size in mm.

    AskError for an unknown kind, for cups, and for portions the cake is not cut into.
    """
    if isinstance(portion, str):
        size = portion_called(portion, portion_sizes(book, facts))
    else:
        size = Portion(ASKED, min(portion), max(portion), ASKED)
    if tin.kind.in_trays:
        raise AskError(f"{tin.name} are not cut", "name a cake")
    cut = cut_of(tin, size, finishing(book.finish, facts).heights_mm[0])
    pieces = pieces_of(cut) if cut.count > 1 else None
    if pieces is None:
        message = (
            f"{tin.name} cannot be cut into portions of {ruler_mm(size.short_mm):g} × {ruler_mm(size.long_mm):g} mm"
        )
        raise AskError(message, "ask for another size")
    strokes = [Stroke.ring("cut", ring) for ring in outline(tin)]
    strokes += [Stroke.ring("inner", ring) for piece in pieces for ring in piece.rings]
    note = saying(
        "cake_is_cut",
        count=cut.count,
        kind=None if size.kind == ASKED else size.kind,
        size=ruler_size(size.short_mm, size.long_mm),
        way=cut.way,
        off_percent=cut.off_shown_percent,
    )
    return Template(
        key="cutting-plan",
        name=saying("cutting_plan", count=cut.count),
        size=saying("cut_into_pieces", count=cut.count),
        cake=tin,
        strokes=tuple(strokes),
        labels=tuple(Label(str(number), (piece.middle[0], -piece.middle[1])) for number, piece in enumerate(pieces, 1)),
        notes=(note,),
    )
