"""What stands on what: heights from the bench up, dowels, the board underneath, and the box round it.

The only sums a cake has of its own: tiers stacked one on another, each as high as it is with its coats and paste on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from tinbook.engine import rounding
from tinbook.engine.boards import board_mm
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.cakes.asked import TierAsked
from tinbook.plans.cakes.figures import CakeFigure, standing_mm
from tinbook.plans.cakes.on_board import stands_there, with_room
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.finish.boards import SOLD_MM, Board, Drum, board_of, board_paste_g_per_ml, drum_under
from tinbook.plans.finish.cake import Cake
from tinbook.plans.true_size.dowelling import DowelPlan, dowel_plan
from tinbook.tins import Tin
from tinbook.tins.trade import true_mm


@dataclass(frozen=True, kw_only=True)
class DowelsIn:
    """Dowels in a tier under the one above, or pillars through it: the plan, and how long each is cut."""

    plan: DowelPlan
    long_mm: float
    long_shown_mm: float
    pillars: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """Where a tier stands, mm above the bench: its foot, its top with coats and paste on, the air below it, and how
    thick the card is between the two; 0 for a cake of one tier."""

    foot_mm: float
    top_mm: float
    gap_mm: float
    card_mm: float
    foot_shown_mm: float
    top_shown_mm: float


@dataclass(frozen=True, kw_only=True)
class StackedUp:
    """Tiers on their board. `dowels` has None for the top tier, for foam, and for what stands by itself.

    `high_mm`: the cake with its board and whatever stands on either. `drum` is None for cups, and where there is
    none; `covered` says how much of it paste covers: `whole`, `ring` or `no`, and `paste_g` what that takes.
    `paste_mm`: how thick that is; `deck_mm`: how high what stands on the board begins, on its paste if it has any.
    `through_mm`: how long the dowel is that goes through all tiers into the board, up to `through_top_mm` above the
    bench; None for a stack that needs none.
    """

    levels: tuple[Level, ...]
    dowels: tuple[DowelsIn | None, ...]
    drum_mm: float
    paste_mm: float
    deck_mm: float
    tiers_mm: float
    high_mm: float
    high_shown_mm: float
    drum: Drum | None
    covered: str
    paste_g: float
    paste_shown_g: float
    through_mm: float | None = None
    through_top_mm: float = 0.0

    @property
    def through_shown_mm(self) -> float | None:
        """The same, as a ruler shows it."""
        return None if self.through_mm is None else rounding.ruler(self.through_mm)


def stacked_up(
    design: CakeDesign, tiers: Sequence[TierWorked], figures: tuple[CakeFigure, ...], book: Book, facts: Facts
) -> StackedUp:
    """The tiers stacked, from the bottom up. AskError if dowels or what stands on the board have no room, or no board
    is large enough."""
    cakes = [tier for tier in tiers if tier.cake is not None]
    if not cakes:
        return StackedUp(
            levels=(), dowels=(), drum_mm=0.0, paste_mm=0.0, deck_mm=0.0, tiers_mm=0.0, high_mm=0.0,
            high_shown_mm=0.0, drum=None, covered="no", paste_g=0.0, paste_shown_g=0.0,
        )  # fmt: skip
    thick_mm = 0.0 if design.board.missing else facts.numbers["drum thickness"].value
    covered = "no" if design.board.missing else design.board.covered or cakes[0].asked.settled.board_covered
    paste_mm = 0.0 if covered == "no" else cakes[0].asked.settled["board_paste"]
    # where paste covers only a ring, the cake stands within it on the drum
    begins_mm = thick_mm + (paste_mm if covered == "whole" else 0.0)
    cards_mm = [tier.asked.settled["card"] if len(cakes) > 1 else 0.0 for tier in cakes]
    steps = (tier.asked.gap_mm + card + tier.high_mm for tier, card in zip(cakes, cards_mm, strict=True))
    tops = list(accumulate(steps, initial=begins_mm))
    levels = tuple(_level(tier, top, card) for tier, top, card in zip(cakes, tops[1:], cards_mm, strict=True))
    tiers_mm = tops[-1] - begins_mm
    stands_mm = standing_mm(figures, tops[-1] - thick_mm, paste_mm)
    tins = tuple(tier.asked.tin for tier in cakes)
    drum = None if design.board.missing else _drum_of(design, cakes[0], tins, stands_mm, book, facts)
    if drum is not None:
        stands_there(design, tins, drum.board, cakes[0].asked.settled, book, facts)
    paste_g = ({"whole": drum.whole_g, "ring": drum.ring_g}.get(covered) if drum else None) or 0.0
    return StackedUp(
        levels=levels,
        dowels=(*(_dowels(lower, upper, book, facts) for lower, upper in pairwise(cakes)), None),
        drum_mm=thick_mm,
        paste_mm=paste_mm,
        deck_mm=thick_mm + paste_mm,
        tiers_mm=tiers_mm,
        high_mm=thick_mm + stands_mm,
        high_shown_mm=rounding.ruler(thick_mm + stands_mm),
        drum=drum,
        covered=covered,
        paste_g=paste_g,
        paste_shown_g=rounding.scales(paste_g, steps_of(book)),
        through_mm=_through_mm(design, cakes, tops[-1] - thick_mm, facts) if drum else None,
        through_top_mm=tops[-1] - facts.numbers["centre dowel below the top"].value,
    )


def _through_mm(design: CakeDesign, cakes: Sequence[TierWorked], tiers_mm: float, facts: Facts) -> float | None:
    """The dowel through all tiers, if its design says so or else where they are tall for their foot or travel whole: it
    begins in the drum and ends below the top, `tiers_mm` above the drum. None for one tier, and for tiers on pillars,
    which go out apart."""
    if len(cakes) < 2 or any(tier.asked.gap_mm for tier in cakes):
        return None
    tall = tiers_mm > facts.numbers["tall for its width"].value * min(cakes[0].guide_mm)
    wanted = (tall or design.goes_whole) if design.through_dowel is None else design.through_dowel
    if not wanted:
        return None
    below_mm = facts.numbers["centre dowel below the top"].value
    return tiers_mm - below_mm + facts.numbers["centre dowel in the board"].value


def _level(tier: TierWorked, top_mm: float, card_mm: float) -> Level:
    foot_mm = top_mm - tier.high_mm
    return Level(
        foot_mm=foot_mm,
        top_mm=top_mm,
        gap_mm=tier.asked.gap_mm,
        card_mm=card_mm,
        foot_shown_mm=rounding.ruler(foot_mm),
        top_shown_mm=rounding.ruler(top_mm),
    )


def _dowels(lower: TierWorked, upper: TierWorked, book: Book, facts: Facts) -> DowelsIn | None:
    plan = dowels_under(lower.asked, upper.asked, book, facts)
    if plan is None:
        return None
    long_mm = lower.high_mm + upper.asked.gap_mm
    return DowelsIn(plan=plan, long_mm=long_mm, long_shown_mm=rounding.ruler(long_mm), pillars=upper.asked.gap_mm > 0.0)


def dowels_under(lower: TierAsked, upper: TierAsked, book: Book, facts: Facts) -> DowelPlan | None:
    """What carries the tier above: foam carries it by itself, unless that stands on pillars. AskError if too few
    have room."""
    if lower.dummy and not upper.gap_mm:
        return None
    name = ("dowels", lower.tin, upper.tin, Itself(facts))
    return ledger_of(book).lately(name, lambda: dowel_plan(lower.tin, upper.tin, book.finish, facts))


def board_under(
    design: CakeDesign, foot: TierAsked, cake: Cake, tins: tuple[Tin, ...], book: Book, facts: Facts
) -> Board:
    """The board under a cake with tiers in these `tins`: as wide as written or, for a smaller or larger one, the next
    sold that is as much wider; else as the book chooses it, with room for what stands on it. AskError if none so large
    is sold."""
    board = board_written(design, cake) or board_of(cake, foot.settled, foot.settled.board, facts)
    if board.size_mm is not None and design.board.size is None and design.board.wider is None:
        board = with_room(design, tins, board, foot.settled, book, facts)
    if board.size_mm is None:
        hint = 'name a smaller cake, or write "board: none" for a cake that has no board'
        raise AskError(f"there is no board large enough for {foot.tin.as_said}", hint)
    return board


def board_written(design: CakeDesign, cake: Cake) -> Board | None:
    """The board as the design gives its size; None if the design leaves that to the book."""
    if not design.board.size:
        return None
    tin, written = cake.tin, design.tiers[0].tier.tin
    sold_mm = [true_mm(size_mm, tin.sold) for size_mm in SOLD_MM]
    wider_mm = true_mm(round(design.board.size, 2), tin.sold) - max(written.bounds_mm)
    size_mm = board_mm(max(tin.bounds_mm), wider_mm, sold_mm)
    return Board(None if size_mm is None else (size_mm, size_mm), cake.takes_disc(), tin.sold)


def _drum_of(
    design: CakeDesign, foot: TierWorked, tins: tuple[Tin, ...], stands_mm: float, book: Book, facts: Facts
) -> Drum:
    """The drum under the cake and what it takes; its box holds everything that stands on it."""
    assert foot.cake is not None
    settled = foot.asked.settled
    board = board_under(design, foot.asked, foot.cake, tins, book, facts)
    g_per_ml = board_paste_g_per_ml(settled, book, facts)
    return drum_under(board, foot.cake, settled, g_per_ml, facts, steps_of(book), stands_mm)
