"""What stands on the board beside a cake: whether there is room for it, and what would give it room.

A cake with something in front of it may stand behind the middle of its board, as long as the board still shows behind
it by half of what the least board is wider.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from tinbook.engine import solids
from tinbook.engine.free_board import Foot, SetDown, set_down
from tinbook.engine.tolerance import whole_down
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignDecoration
from tinbook.models.cakes import BOARD
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.cakes.figures import cake_of_figure
from tinbook.plans.finish.boards import CHOICES, SOLD_MM, Board
from tinbook.plans.techniques.parts import cakes_for, decoration
from tinbook.plans.true_size.standing import Footprint, footprints
from tinbook.tins import Ring, Tin
from tinbook.tins.growth import ring_round
from tinbook.tins.trade import called_mm, true_mm

SET_BACK = (1.0, 0.0)
"""How far back a cake is tried, as shares of how far it may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnBoardAs:
    """A decoration on the board: its place in the design, and what `count` of it takes there."""

    nth: int
    each: DesignDecoration
    prints: tuple[Footprint, ...]
    count: int

    @property
    def feet(self) -> tuple[tuple[int, Foot], ...]:
        """The foot of every one, with the place of its kind among its prints."""
        return tuple(
            (kind, Foot(print_.ring, self.each.gap or 0.0))
            for _ in range(self.count)
            for kind, print_ in enumerate(self.prints)
            for _ in range(print_.count)
        )


@dataclass(frozen=True, kw_only=True)
class OnBoard:
    """All that stands on a board beside a cake, whose coated outline is `cake` about its middle, `deep_mm` from front
    to back."""

    board: Board
    cake: Ring
    deep_mm: float
    standing: tuple[OnBoardAs, ...]
    least_mm: float

    @property
    def back_mm(self) -> float:
        """How far behind the middle of the board the cake may stand."""
        assert self.board.size_mm is not None
        return max(0.0, (self.board.size_mm[1] - self.deep_mm) / 2.0 - self.least_mm)

    @property
    def free_mm(self) -> float:
        """How deep the board is in front of the cake, at the most."""
        assert self.board.size_mm is not None
        return (self.board.size_mm[1] - self.deep_mm) / 2.0 + self.back_mm

    @cached_property
    def fits(self) -> bool:
        """Whether all of them find a place."""
        return not self._feet or any(self._set_down(share, all_or_none=True) for share in SET_BACK)

    @cached_property
    def whole(self) -> tuple[int, ...]:
        """Of each decoration, how many find a place whole."""
        return max((self._counted(self._set_down(share)) for share in SET_BACK), key=sum)

    @cached_property
    def _feet(self) -> tuple[tuple[int, int, Foot], ...]:
        """Every foot, with the places of its decoration and of its kind."""
        return tuple((place, kind, foot) for place, each in enumerate(self.standing) for kind, foot in each.feet)

    def _set_down(self, share: float, all_or_none: bool = False) -> tuple[SetDown, ...]:
        """What finds a place where the cake stands so far back, as a share of how far it may."""
        assert self.board.size_mm is not None
        form = (solids.oval if self.board.disc else solids.oblong)(*self.board.size_mm)
        ground = [(x, y - share * self.back_mm) for x, y in form]
        return set_down(ground, self.cake, [foot for *_, foot in self._feet], all_or_none)

    def _counted(self, there: tuple[SetDown, ...]) -> tuple[int, ...]:
        found = Counter(self._feet[each.nth][:2] for each in there)
        return tuple(
            min((found[place, kind] // print_.count for kind, print_ in enumerate(each.prints)), default=each.count)
            for place, each in enumerate(self.standing)
        )

    @property
    def short(self) -> int | None:
        """The first decoration, by its place here, of which not all find room; None if all do."""
        if self.fits:
            return None
        pairs = enumerate(zip(self.whole, self.standing, strict=True))
        return next((place for place, (have, each) in pairs if have < each.count), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoom:
    """A decoration, by its place in the design, that does not fit on the board, and what to write instead."""

    nth: int
    message: str
    hint: str


def no_room(
    design: CakeDesign, tins: tuple[Tin, ...], board: Board, settled: Finishing, book: Book, facts: Facts
) -> NoRoom | None:
    """What does not fit on the board beside a sound cake whose tiers are in these `tins`, the lowest finished as
    `settled`; None if everything does."""
    if not _asked(design, board) or (there := _on_board(design, tins, board, settled, book, facts)).fits:
        return None
    name = ("no_room", Itself(there))
    return ledger_of(book).lately(name, lambda: _no_room(there, design, tins, book, facts))


def _asked(design: CakeDesign, board: Board) -> bool:
    return board.size_mm is not None and any(each.on == BOARD for each in design.decorations)


def _on_board(
    design: CakeDesign, tins: tuple[Tin, ...], board: Board, settled: Finishing, book: Book, facts: Facts
) -> OnBoard:
    like = ("on_the_board", Itself(design), tins, Itself(settled), Itself(facts))
    ledger = ledger_of(book)

    def there() -> OnBoard:
        # what stands there is the same on any board
        first = ledger.lately(like, lambda: _laid_out(design, tins, board, settled, book, facts))
        return replace(first, board=board)

    return ledger.lately((*like, board), there)


def _laid_out(
    design: CakeDesign, tins: tuple[Tin, ...], board: Board, settled: Finishing, book: Book, facts: Facts
) -> OnBoard:
    outer_mm = settled.coats_mm + settled["paste"]
    ring = ring_round(tins[0], outer_mm)
    (left, low), (right, high) = (tuple(end(point[axis] for point in ring) for axis in (0, 1)) for end in (min, max))
    return OnBoard(
        board=board,
        cake=tuple((x - (left + right) / 2.0, y - (low + high) / 2.0) for x, y in ring),
        deep_mm=tins[0].bounds_mm[1] + 2.0 * outer_mm,
        standing=tuple(_standing(design, tins, book, facts)),
        least_mm=facts.numbers[CHOICES["least"]].value / 2.0,
    )


def _no_room(there: OnBoard, design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts) -> NoRoom:
    assert there.short is not None
    each, have = there.standing[there.short], there.whole[there.short]
    instead = [*_fewer(each, have), *_larger(there), *_smaller(there, there.short, design, tins, book, facts)]
    hint = f"use {', or '.join(instead)}" if instead else "stand it on top, or name a smaller decoration"
    return NoRoom(nth=each.nth, message=_message(there, there.short), hint=hint)


def _standing(design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts) -> Iterator[OnBoardAs]:
    for nth, each in enumerate(design.decorations):
        if each.on == BOARD:
            made = decoration(book.techniques[each.technique], cake_of_figure(design, each, tins, book), book, facts)
            yield OnBoardAs(nth=nth, each=each, prints=footprints(made), count=each.count)


def _message(there: OnBoard, place: int) -> str:
    """What does not fit where."""
    each, have = there.standing[place], there.whole[place]
    assert there.board.size_mm is not None
    thing, board_cm = each.each.technique.replace("-", " "), called_mm(there.board.size_mm[0], there.board.sold) / 10
    widest = max(each.prints, key=lambda print_: print_.wide_mm * print_.deep_mm)
    message = f"the {widest.part} is {widest.wide_mm:.0f} x {widest.deep_mm:.0f} mm, and "
    if each.count > 1 and have:
        message = f"only {have} of {each.count} {thing} fit on the {board_cm:g} cm board beside the cake"
    elif replace(there, standing=(replace(each, count=1),)).fits:
        message += f"other decorations leave it no room on the {board_cm:g} cm board"
    else:
        message += f"the {board_cm:g} cm board leaves {whole_down(there.free_mm)} mm in front of the cake"
    return message


def _fewer(each: OnBoardAs, have: int) -> Iterator[str]:
    if have:
        hint = f'"count: {have}"'
        yield hint


def _larger(there: OnBoard) -> Iterator[str]:
    """The smallest larger board with room for everything."""
    assert there.board.size_mm is not None
    side = max(there.board.size_mm)
    board: Board | None = replace(there.board, size_mm=(side, side))
    while board is not None and (board := _next(board)):
        if replace(there, board=board).fits:
            assert board.size_mm is not None
            hint = f"a {called_mm(board.size_mm[0], board.sold) / 10:g} cm board"
            yield hint
            return


def _smaller(
    there: OnBoard, place: int, design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts
) -> Iterator[str]:
    """The largest cake it may be sized for to find room."""
    standing = there.standing[place]
    technique = book.techniques[standing.each.technique]
    now = cake_of_figure(design, standing.each, tins, book).bounds_mm[0]
    for cake in reversed(cakes_for(technique)):
        if cake.bounds_mm[0] < now:
            prints = footprints(decoration(technique, cake, book, facts))
            others = (*there.standing[:place], replace(standing, prints=prints), *there.standing[place + 1 :])
            if replace(there, standing=others).fits:
                hint = f'"sized for: {cake.name}"'
                yield hint
                return


def with_room(
    design: CakeDesign, tins: tuple[Tin, ...], board: Board, settled: Finishing, book: Book, facts: Facts
) -> Board:
    """The smallest board from this one up on which everything has room; this one if none so large is sold."""
    larger: Board | None = board
    while larger and _asked(design, larger) and not _on_board(design, tins, larger, settled, book, facts).fits:
        larger = _next(larger)
    return larger or board


def _next(board: Board) -> Board | None:
    """The next larger board that is sold."""
    assert board.size_mm is not None
    sold = [true_mm(each, board.sold) for each in SOLD_MM]
    wide, long = (next((size for size in sold if size > side), None) for side in board.size_mm)
    return None if wide is None or long is None else replace(board, size_mm=(wide, long))


def stands_there(
    design: CakeDesign, tins: tuple[Tin, ...], board: Board, settled: Finishing, book: Book, facts: Facts
) -> None:
    """AskError if something has no room on the board."""
    wrong = no_room(design, tins, board, settled, book, facts)
    if wrong is not None:
        raise AskError(wrong.message, wrong.hint)
