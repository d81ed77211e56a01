"""Rules for a whole cake's board and decorations."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignDecoration, Finish, Flaw, Made, Path
from tinbook.models.cakes import BOARD, SIDE, TOP
from tinbook.plans.finish.boards import SOLD_MM
from tinbook.plans.rules.fields import FOLLOWS, link_flaws
from tinbook.plans.rules.finish import made_flaws
from tinbook.plans.rules.parts import word_flaws
from tinbook.tins import Tin


def board_flaws(design: CakeDesign, book: Book, facts: Facts, lost: Collection[str]) -> Iterator[Flaw]:
    """Two boards for one cake, a board for cups, one that is not sold, and what it is covered with."""
    board, written = design.board, design.board.model_fields_set
    if not written:
        return
    if design.tiers and all(tier.tier.tin.kind.in_trays for tier in design.tiers):
        message, hint = "cupcakes go in a box, not on a board", "take it out"
        yield Flaw(code="board", path=("board",), message=message, hint=hint, on_key=True)
        return
    if board.missing:
        yield from _no_board_flaws(design)
        return
    if board.size is not None and board.wider is not None:
        message, hint = "this gives two boards: one by its size, one by how much wider it is", "keep one of the two"
        yield Flaw(code="board", path=("board", "wider"), message=message, hint=hint, on_key=True)
    elif board.size is not None and round(board.size, 2) not in SOLD_MM:
        larger = next((size for size in SOLD_MM if size > board.size), SOLD_MM[-1])
        message = f"boards are not sold {board.size / 10:g} cm wide"
        yield Flaw(code="board", path=("board", "size"), message=message, hint=f"the nearest is {larger / 10:g} cm")
    for name in ("paste", "colour"):
        if board.covered == "no" and getattr(board, name) is not None:
            message, hint = f'a board that is not covered has no "{name}"', 'take it out, or write "covered: whole"'
            yield Flaw(code="board", path=("board", name), message=message, hint=hint, on_key=True)
    if board.paste is not None:
        made = Finish.model_construct(made_with=Made.model_construct(board=board.paste))
        yield from (replace(flaw, path=("board", "paste")) for flaw in made_flaws(made, book, facts, lost))
    yield from (
        replace(flaw, path=("board", "colour")) for flaw in word_flaws(None, board.colour, (), book, facts, lost)
    )


def _no_board_flaws(design: CakeDesign) -> Iterator[Flaw]:
    """What a cake without a board cannot have."""
    for name in ("wider", "covered", "paste", "colour"):
        if name in design.board.model_fields_set:
            message, hint = f'there is no board, so it cannot have a "{name}"', "take it out, or give the board a size"
            yield Flaw(code="board", path=("board", name), message=message, hint=hint, on_key=True)
    for index, each in enumerate(design.decorations):
        if each.on == BOARD:
            message, hint = "there is no board for it to stand on", "give the board a size, or stand it on top"
            yield Flaw(code="board", path=("decorations", index, "on"), message=message, hint=hint)


def decoration_flaws(design: CakeDesign, book: Book, lost: Collection[str]) -> Iterator[Flaw]:
    """A technique that is there and has parts, for a tier that is there and that it can stand on."""
    for index, each in enumerate(design.decorations):
        path: Path = ("decorations", index)
        yield from _technique_flaws(each, path, book, lost)
        if each.tier is not None and each.tier > len(design.tiers):
            count = len(design.tiers)
            message = f"there is no tier {each.tier}: the cake has {count}"
            yield Flaw(code="decorations", path=(*path, "tier"), message=message, hint="count them from the bottom")
        elif design.tiers and all(tier.tier.tin.kind.in_trays for tier in design.tiers):
            message, hint = "cupcakes have no board, side or top to stand a decoration on", "name it in their recipe"
            yield Flaw(code="decorations", path=path, message=message, hint=hint)
        elif each.on == TOP and _stood_on(design, each):
            upper = (each.tier or 0) + 1
            message = f"tier {upper} stands on top of tier {each.tier}, so nothing else can"
            hint = f'put it on the top tier, or put tier {upper} "on pillars"'
            yield Flaw(code="decorations", path=(*path, "on"), message=message, hint=hint)
        elif each.on == SIDE and design.tiers and _place(design, each).kind.solid != "upright":
            message = f"nothing can hang on the side of {_place(design, each).as_said}"
            yield Flaw(code="decorations", path=(*path, "on"), message=message, hint="stand it on top or on the board")


def _stood_on(design: CakeDesign, each: DesignDecoration) -> bool:
    """Whether another tier stands just where it should go."""
    return each.tier is not None and each.tier < len(design.tiers) and not design.tiers[each.tier].on_pillars


def _place(design: CakeDesign, each: DesignDecoration) -> Tin:
    """The tier it hangs on."""
    return design.tiers[(each.tier or 1) - 1].tier.tin


def _technique_flaws(each: DesignDecoration, path: Path, book: Book, lost: Collection[str]) -> Iterator[Flaw]:
    here = (*path, "technique")
    technique = book.techniques.get(each.technique)
    if technique is None:
        if each.technique in lost:
            message = f'its technique "{each.technique}" has a mistake in it'
            yield Flaw(code=FOLLOWS, path=here, message=message, hint=f"fix techniques/{each.technique}.yaml first")
        else:
            yield from (replace(flaw, path=here) for flaw in link_flaws("technique", [each.technique], book.techniques))
    elif technique.parts_for is None or not (technique.parts or technique.repeats):
        message = f'"{each.technique}" has no parts to put on a cake'
        hint = 'name a technique with parts, or write this one under "techniques:"'
        yield Flaw(code="decorations", path=here, message=message, hint=hint)
