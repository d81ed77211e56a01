"""Rules of a whole cake that take its sums: tiers that can be baked so high, a stack that stands, a board for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignTier, Flaw, Path
from tinbook.models.cakes import SIDE
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.asked import tiers_asked
from tinbook.plans.cakes.figures import CakeFigure, figures, hung_g
from tinbook.plans.cakes.stacking import board_written, stacked_up
from tinbook.plans.cakes.tiers import TierWorked, worked_tier
from tinbook.plans.cakes.whole import portion_of, written_tins


def said_at(design: CakeDesign, tier: DesignTier, path: Path, name: str) -> Path:
    """Where something is said of a tier: by itself, by the cake, or nowhere but at the tier."""
    if name in tier.model_fields_set:
        return (*path, name)
    return (name,) if name in design.model_fields_set else path


def standing_flaws(design: CakeDesign, book: Book, facts: Facts) -> Iterator[Flaw]:
    """What the sums of a cake refuse. Everything it names must be there."""
    tins, portion = written_tins(design), portion_of(design, book, facts)
    worked: list[TierWorked] = []
    for asked in tiers_asked(design, tins, book, facts):
        path: Path = ("beside" if asked.beside else "tiers", asked.place)
        tier = (design.beside if asked.beside else design.tiers)[asked.place]
        key = "height" if design.of(tier, "height") else "layers"
        try:
            worked.append(worked_tier(asked, portion, book, facts))
        except AskError as error:
            here = said_at(design, tier, path, key)
            hint = "write fewer or thinner layers, less filling or a lower tier, or name a deeper tin"
            yield Flaw(code="tiers", path=here, message=error.message, hint=hint)
            continue
        if worked[-1].serving and not worked[-1].serves:
            message = f"{asked.tin.name} is smaller than one portion"
            yield Flaw(code="tiers", path=path, message=message, hint="write a larger tier, or a smaller portion")
    if len(worked) < len(tins) + len(design.beside):
        return
    tiers = worked[: len(tins)]
    made: list[CakeFigure] = []
    for index, each in enumerate(design.decorations):
        try:
            made += figures(design.model_copy(update={"decorations": (each,)}), tins, book, facts)
        except AskError as error:
            yield Flaw(code="decorations", path=("decorations", index), message=error.message, hint=error.hint)
    yield from _weight_flaws(design, made, tiers)
    yield from _stack_flaws(design, tuple(made), tiers, book, facts)


def _weight_flaws(design: CakeDesign, made: Sequence[CakeFigure], tiers: Sequence[TierWorked]) -> Iterator[Flaw]:
    """A decoration on the side of a tier that weighs less than it does."""
    for index, each in enumerate(design.decorations):
        figure = next((one for one in made if one.slug == each.technique and one.on == each.on), None)
        if each.on != SIDE or figure is None:
            continue
        tier = tiers[figure.tier]
        hung = hung_g(tuple(made), figure.tier)
        if tier.baked is not None and not fits(hung, tier.weight_g):
            message = f"{hung:.0f} g hang on {tier.asked.tin.name}, which weighs {tier.weight_g:.0f} g"
            hint = "hang it on a larger tier, hang fewer, or stand it on the board"
            yield Flaw(code="decorations", path=("decorations", index), message=message, hint=hint)
            return


def _stack_flaws(
    design: CakeDesign, made: tuple[CakeFigure, ...], tiers: Sequence[TierWorked], book: Book, facts: Facts
) -> Iterator[Flaw]:
    foot = tiers[0]
    board = board_written(design, foot.cake) if foot.cake else None
    if board is not None and board.size_mm is not None:
        short = [side for side, have in zip(foot.guide_mm, board.size_mm, strict=True) if not fits(side, have)]
        if short:
            message = f"the coated cake is {max(short) / 10:.1f} cm wide, and the board {board.size_mm[0] / 10:g} cm"
            yield Flaw(code="board", path=("board", "size"), message=message, hint="write a wider board")
            return
    try:
        stacked_up(design, tiers, made, book, facts)
    except AskError as error:
        yield Flaw(code="tiers", path=("tiers",), message=error.message, hint=error.hint)
