"""Decorations in a cake's elevation: at its scale and at their own height, on top of it or beside where they go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from string import ascii_uppercase

from tinbook.models.cakes import BOARD, TOP
from tinbook.models.ledger import Itself
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.techniques.parts import Decoration
from tinbook.plans.techniques.shown import shown_mm
from tinbook.plans.true_size.assembled import put_together
from tinbook.tins import Ring

GAP_PX = 12.0
FINE_MM = 0.3
"""How far a drawn outline may be off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnFigure:
    """A decoration in its place, mm from the middle of the cake and from the bench: its outlines, those at the back
    first. `from_mm`: where the line to it begins, `lead_mm` high; None for one on top."""

    letter: str
    rings: tuple[Ring, ...]
    left_mm: float
    right_mm: float
    foot_mm: float
    top_mm: float
    high_shown_cm: float
    from_mm: float | None
    lead_mm: float


def letter_of(nth: int) -> str:
    """What ties a decoration in the drawing to its line below: `A`, `B`; past `Z` a number."""
    return ascii_uppercase[nth] if nth < len(ascii_uppercase) else str(nth + 1)


def outlines(figure: CakeFigure) -> tuple[Ring, ...]:
    """Its pieces put together, about their own middle and from their foot; its tallest part alone where they do not
    say how."""
    return _outlines(Itself(figure.parts))


@lru_cache(maxsize=64)
def _outlines(made: Itself[Decoration]) -> tuple[Ring, ...]:
    whole = put_together(made.value)
    if whole is not None:
        rings = [ring for piece in whole.pieces for ring in piece.rings]
    else:
        rings = list(max(made.value.parts, key=lambda part: part.height_mm).outline_mm)
    left, right = (end(x for ring in rings for x, _ in ring) for end in (min, max))
    foot = min(y for ring in rings for _, y in ring)
    return tuple(tuple((x - (left + right) / 2.0, y - foot) for x, y in thinned(ring)) for ring in rings)


def thinned(ring: Ring) -> Ring:
    """An outline with no more points than its drawing shows, nowhere off by more than FINE_MM."""
    from shapely import LinearRing

    return tuple((x, y) for x, y, *_ in LinearRing(ring).simplify(FINE_MM).coords[:-1])


def placed(cake: WholeCake, scale: float, letter_px: float, line_px: float) -> tuple[DrawnFigure, ...]:
    """All of them, so many px to a mm. What stands on top stands there side by side; the rest stands clear of the cake
    at its own height, and no two in each other's way."""
    px = 1.0 / scale
    drum = cake.stacked.drum
    board_mm = drum.board.size_mm[0] if drum and drum.board.size_mm else 0.0
    deck = cake.stacked.deck_mm
    taken = [(board_mm / 2.0, 0.0, deck)]
    stacking = [tier for tier in cake.tiers if tier.cake]
    taken += [
        (tier.guide_mm[0] / 2.0, level.foot_mm, level.top_mm)
        for tier, level in zip(stacking, cake.stacked.levels, strict=True)
    ]
    found = dict(_on_top(cake, px, letter_px))
    taken += [(each.right_mm, each.foot_mm, each.top_mm + line_px * px) for each in found.values()]
    for nth, figure in enumerate(cake.figures):
        if nth in found:
            continue
        level = cake.stacked.levels[min(figure.tier, len(cake.stacked.levels) - 1)]
        on_board = figure.on == BOARD
        foot = deck if on_board else max(level.foot_mm, (level.foot_mm + level.top_mm - figure.high_mm) / 2)
        top = foot + figure.high_mm
        rings = outlines(figure)
        wide = max(max(x for x, _ in ring) for ring in rings) * 2.0
        room = max(wide, letter_px * px)
        # what stands on the board is drawn beside it, or it would seem to stand in the cake
        low = foot - 1.0 if on_board else foot
        clear = [right for right, below, above in taken if below < top + line_px * px and above > low]
        left = max(clear, default=0.0) + GAP_PX * px + (room - wide) / 2.0
        begins = board_mm / 2.0 if on_board else cake.tiers[figure.tier].guide_mm[0] / 2.0
        lead = deck if on_board else (foot + top) / 2.0
        found[nth] = _drawn(figure, nth, rings, left, foot, (begins, lead))
        taken.append((left + (wide + room) / 2.0, low, top + line_px * px))
    return tuple(found[nth] for nth in sorted(found))


def _on_top(cake: WholeCake, px: float, letter_px: float) -> Iterator[tuple[int, DrawnFigure]]:
    standing = [(nth, figure, outlines(figure)) for nth, figure in enumerate(cake.figures) if figure.on == TOP]
    rooms = [max(2.0 * max(x for ring in rings for x, _ in ring), letter_px * px) for _, _, rings in standing]
    at = -sum(rooms) / 2.0
    for (nth, figure, rings), room in zip(standing, rooms, strict=True):
        wide = 2.0 * max(x for ring in rings for x, _ in ring)
        foot = cake.stacked.levels[min(figure.tier, len(cake.stacked.levels) - 1)].top_mm
        yield nth, _drawn(figure, nth, rings, at + (room - wide) / 2.0, foot, None)
        at += room


def _drawn(
    figure: CakeFigure, nth: int, rings: tuple[Ring, ...], left: float, foot: float, lead: tuple[float, float] | None
) -> DrawnFigure:
    half = max(x for ring in rings for x, _ in ring)
    return DrawnFigure(
        letter=letter_of(nth),
        rings=tuple(tuple((x + left + half, y + foot) for x, y in ring) for ring in rings),
        left_mm=left,
        right_mm=left + 2.0 * half,
        foot_mm=foot,
        top_mm=foot + figure.high_mm,
        high_shown_cm=shown_mm(figure.high_mm) / 10.0,
        from_mm=lead[0] if lead else None,
        lead_mm=lead[1] if lead else 0.0,
    )


def figure_path(each: DrawnFigure) -> str:
    """Its outlines, each over the one before."""
    return "".join(f'<path d="M{" ".join(f"{_n(x)} {_n(-y)}" for x, y in ring)}Z"/>' for ring in each.rings)


def _n(value: float) -> str:
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text
