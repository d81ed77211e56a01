"""Rules for a whole cake that need its sums: tiers that can be baked that high, a stack that stands up, a board for
it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignTier, Flaw, Path
from tinbook.models.cakes import SIDE, TOP
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.asked import TierAsked, tiers_asked
from tinbook.plans.cakes.figures import cake_of_figure, figures, hung_g
from tinbook.plans.cakes.on_board import no_room
from tinbook.plans.cakes.stacking import board_under, board_written, dowels_under
from tinbook.plans.cakes.tiers import cake_asked_for, can_be, worked_tier
from tinbook.plans.cakes.whole import portion_of, written_tins
from tinbook.plans.finish.boards import guide_of
from tinbook.plans.portions.cutting import Portion, cut_of
from tinbook.tins import Tin


def said_at(design: CakeDesign, tier: DesignTier, path: Path, name: str) -> Path:
    """Where something is said about a tier: by itself, by the cake, or nowhere but at the tier."""
    key = name.replace("_", " ")
    if name in tier.model_fields_set:
        return (*path, key)
    return (key,) if name in design.model_fields_set else path


def standing_flaws(design: CakeDesign, book: Book, facts: Facts) -> Iterator[Flaw]:
    """What the sums of a cake would refuse, reported by the same functions, without the sums themselves. Everything it
    names must be there."""
    tins, portion = written_tins(design), portion_of(design, book, facts)
    every = tiers_asked(design, tins, book, facts)
    found = [flaw for asked in every for flaw in _tier_flaws(design, asked, portion)]
    yield from found
    if found:
        return
    for index, each in enumerate(design.decorations):
        try:
            cake_of_figure(design, each, tins, book)
        except AskError as error:
            found.append(Flaw(code="decorations", path=("decorations", index), message=error.message, hint=error.hint))
    yield from found
    if not found:
        yield from _air_flaws(design, tins, book, facts)
        yield from _weight_flaws(design, tins, every, book, facts)
        yield from _stack_flaws(design, every[: len(tins)], book, facts)


def _tier_flaws(design: CakeDesign, asked: TierAsked, portion: Portion) -> Iterator[Flaw]:
    """A tier that cannot be baked that high, or is smaller than a portion."""
    path: Path = ("beside" if asked.beside else "tiers", asked.place)
    tier = (design.beside if asked.beside else design.tiers)[asked.place]
    try:
        cake = cake_asked_for(asked)
        can_be(asked, cake)
    except AskError as error:
        here = said_at(design, tier, path, "height" if design.of(tier, "height") else "layers")
        hint = "use fewer or thinner layers or less filling, make the tier shorter, or name a deeper tin"
        yield Flaw(code="tiers", path=here, message=error.message, hint=hint)
        return
    if not asked.dummy and not cut_of(asked.tin, portion, cake.stands_mm if cake else 0.0).count:
        message = f"{asked.tin.as_said} is smaller than one portion"
        yield Flaw(code="tiers", path=path, message=message, hint="write a larger tier, or a smaller portion")


def _weight_flaws(
    design: CakeDesign, tins: tuple[Tin, ...], tiers: tuple[TierAsked, ...], book: Book, facts: Facts
) -> Iterator[Flaw]:
    """Decorations on the side of a tier that together weigh more than it does: reported once for each tier."""
    if not any(each.on == SIDE for each in design.decorations):
        return
    made, portion = figures(design, tins, book, facts), portion_of(design, book, facts)
    told = set[int]()
    for index, figure in enumerate(made):
        if figure.on != SIDE or figure.tier in told or tiers[figure.tier].dummy:
            continue
        told.add(figure.tier)
        hung, tier = hung_g(made, figure.tier), worked_tier(tiers[figure.tier], portion, book, facts)
        if not fits(hung, tier.weight_g):
            message = f"{hung:.0f} g would hang on {tier.asked.tin.as_said}, which weighs only {tier.weight_g:.0f} g"
            hint = "hang it on a larger tier, hang fewer, or stand it on the board"
            yield Flaw(code="decorations", path=("decorations", index), message=message, hint=hint)


def _air_flaws(design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts) -> Iterator[Flaw]:
    """Decorations meant to stand between pillars, but taller than the pillars."""
    below = {
        index: each.tier for index, each in enumerate(design.decorations) if each.on == TOP and each.tier is not None
    }
    if not any(tier < len(tins) for tier in below.values()):
        return
    made = figures(design, tins, book, facts)
    for index, tier in below.items():
        air_mm = design.tiers[tier].on_pillars if tier < len(tins) else None
        if air_mm is not None and not fits(made[index].high_mm, air_mm):
            message = f"it is {made[index].high_mm:.0f} mm high, and the pillars leave {air_mm:g} mm"
            hint = 'use longer pillars, or a smaller cake in "sized for"'
            yield Flaw(code="decorations", path=("decorations", index), message=message, hint=hint)


def _stack_flaws(design: CakeDesign, tiers: Sequence[TierAsked], book: Book, facts: Facts) -> Iterator[Flaw]:
    """Dowels without room, a board that is too small, or not sold that large, or has no room for what stands on it."""
    foot, cake = tiers[0], cake_asked_for(tiers[0])
    if cake is None:
        return
    board = board_written(design, cake)
    if board is not None and board.size_mm is not None:
        wide = guide_of(cake, foot.settled)
        short = [side for side, have in zip(wide, board.size_mm, strict=True) if not fits(side, have)]
        if short:
            wide_cm, have_cm = max(short) / 10, board.size_mm[0] / 10
            message = f"the coated cake is {wide_cm:.1f} cm wide, but the board is only {have_cm:g} cm"
            yield Flaw(code="board", path=("board", "size"), message=message, hint="use a wider board")
            return
    try:
        for lower, upper in pairwise(tiers):
            dowels_under(lower, upper, book, facts)
        tins = tuple(tier.tin for tier in tiers)
        board = None if design.board.missing else board_under(design, foot, cake, tins, book, facts)
    except AskError as error:
        yield Flaw(code="tiers", path=("tiers",), message=error.message, hint=error.hint)
        return
    wrong = board and no_room(design, tins, board, foot.settled, book, facts)
    if wrong:
        yield Flaw(code="decorations", path=("decorations", wrong.nth), message=wrong.message, hint=wrong.hint)
