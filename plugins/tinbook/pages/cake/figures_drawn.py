"""Decorations in a cake's elevation: at its scale and at their own height, on top of it or beside where they go."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import sqrt
from string import ascii_uppercase

from tinbook.models.cakes import BOARD, SIDE, TOP
from tinbook.models.ledger import Itself
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.stacking import Level
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.techniques.parts import Decoration
from tinbook.plans.techniques.shown import shown_mm
from tinbook.plans.true_size.standing import as_it_stands
from tinbook.tins import Ring

GAP_PX = 12.0
FINE_MM = 0.3
"""How far a drawn outline may be off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnFigure:
    """A decoration in its place, mm from the middle of the cake and from the bench: the outlines of all that the front
    shows, those at the back first, and the left, top, right and foot of each of its `copies`; how many more stand
    `behind`. `from_mm`: where the line to it begins, `lead_mm` high; None for one on top."""

    letter: str
    rings: tuple[Ring, ...]
    copies: tuple[tuple[float, float, float, float], ...]
    left_mm: float
    right_mm: float
    foot_mm: float
    top_mm: float
    behind: int
    high_shown_cm: float
    from_mm: float | None
    lead_mm: float


def letter_of(nth: int) -> str:
    """What ties a decoration in the drawing to its line below: `A`, `B`; past `Z` a number."""
    return ascii_uppercase[nth] if nth < len(ascii_uppercase) else str(nth + 1)


def outlines(figure: CakeFigure) -> tuple[Ring, ...]:
    """Its outlines as it stands or hangs, about its own middle and from its foot, with no more points than are
    seen."""
    return _outlines(Itself(figure.parts), figure.on == SIDE)


@lru_cache(maxsize=64)
def _outlines(made: Itself[Decoration], hung: bool) -> tuple[Ring, ...]:
    return tuple(thinned(ring) for ring in as_it_stands(made.value, hung))


def thinned(ring: Ring) -> Ring:
    """An outline with no more points than its drawing shows, nowhere off by more than FINE_MM."""
    from shapely import LinearRing

    return tuple((x, y) for x, y, *_ in LinearRing(ring).simplify(FINE_MM).coords[:-1])


def in_front(cake: WholeCake, nth: int) -> int:
    """How many of a decoration the front shows side by side: as many as are no wider together than what they hang or
    stand on, which on top they share with others. The rest stand behind."""
    figure = cake.figures[nth]
    drum, tier = cake.stacked.drum, cake.tiers[figure.tier]
    wide = tier.guide_mm[0]
    if figure.on == BOARD and drum and drum.board.size_mm:
        wide = drum.board.size_mm[0]
    if figure.on == TOP:
        wide /= sum(each.on == TOP and each.tier == figure.tier for each in cake.figures)
    step = _wide_mm(outlines(figure)) + figure.gap_mm
    return min(figure.count, max(1, int((wide + figure.gap_mm) // step)))


def side_by_side(cake: WholeCake, nth: int) -> str | None:
    """`3 side by side`, `3 side by side, 2 at the back`; None for one alone."""
    count, seen = cake.figures[nth].count, in_front(cake, nth)
    if count == 1:
        return None
    side = f"{seen} side by side" if seen > 1 else "1 in front"
    return side if seen == count else f"{side}, {count - seen} at the back"


def _wide_mm(rings: tuple[Ring, ...]) -> float:
    """How wide outlines about their own middle are."""
    return _widest_mm(Itself(rings))


@lru_cache(maxsize=64)
def _widest_mm(rings: Itself[tuple[Ring, ...]]) -> float:
    return 2.0 * max(x for ring in rings.value for x, _ in ring)


def _row(figure: CakeFigure, rings: tuple[Ring, ...], count: int) -> tuple[float, ...]:
    """Where the middles of so many side by side are, about the middle of all of them."""
    step = _wide_mm(rings) + figure.gap_mm
    return tuple((nth - (count - 1) / 2.0) * step for nth in range(count))


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
        row = _row(figure, rings, in_front(cake, nth))
        wide = row[-1] - row[0] + _wide_mm(rings)
        room = max(wide, letter_px * px)
        # what stands on the board is drawn beside it, or it would seem to stand in the cake
        low = foot - 1.0 if on_board else foot
        clear = [right for right, below, above in taken if below < top + line_px * px and above > low]
        middle = max(clear, default=0.0) + GAP_PX * px + room / 2.0
        begins = board_mm / 2.0 if on_board else cake.tiers[figure.tier].guide_mm[0] / 2.0
        lead = deck if on_board else (foot + top) / 2.0
        copies = [(middle + x, foot) for x in row]
        found[nth] = _drawn(figure, nth, rings, copies, (begins, lead))
        taken.append((middle + room / 2.0, low, top + line_px * px))
    return tuple(found[nth] for nth in sorted(found))


def _on_top(cake: WholeCake, px: float, letter_px: float) -> Iterator[tuple[int, DrawnFigure]]:
    """What stands on top, tier by tier, side by side. On a dome or a ball each stands on its slope, the first in the
    middle, where it is highest."""
    for place in dict.fromkeys(figure.tier for figure in cake.figures if figure.on == TOP):
        here = [(nth, each) for nth, each in enumerate(cake.figures) if each.on == TOP and each.tier == place]
        drawn = [(nth, each, outlines(each), in_front(cake, nth)) for nth, each in here]
        rows = [_row(each, rings, count) for _, each, rings, count in drawn]
        wides = [row[-1] - row[0] + _wide_mm(rings) for row, (_, _, rings, _) in zip(rows, drawn, strict=True)]
        rooms = [max(wide, letter_px * px) for wide in wides]
        tier, level = cake.tiers[place], cake.stacked.levels[min(place, len(cake.stacked.levels) - 1)]
        at = -sum(rooms) / 2.0
        for (nth, figure, rings, count), row, room in zip(drawn, rows, rooms, strict=True):
            middle, at = at + room / 2.0, at + room
            if tier.cake is None or tier.cake.solid == "upright":
                feet = [(middle + x, level.top_mm) for x in row]
            else:
                # the middle of an odd row is where the first of an even one stands
                shift = 0.0 if count % 2 else (row[1] - row[0]) / 2.0
                feet = [(middle + x + shift, _slope_mm(tier, level, middle + x + shift)) for x in row]
            yield nth, _drawn(figure, nth, rings, feet, None)


def _slope_mm(tier: TierWorked, level: Level, x: float) -> float:
    """How high the surface of a dome or a ball is so far from its middle, seen from the front."""
    assert tier.cake is not None
    up = level.top_mm - level.foot_mm
    low, up = (level.foot_mm, up) if tier.cake.solid == "dome" else (level.foot_mm + up / 2.0, up / 2.0)
    return low + up * sqrt(max(0.0, 1.0 - (2.0 * x / tier.guide_mm[0]) ** 2))


def _drawn(
    figure: CakeFigure,
    nth: int,
    rings: tuple[Ring, ...],
    feet: Sequence[tuple[float, float]],
    lead: tuple[float, float] | None,
) -> DrawnFigure:
    """As many as `feet` say, the middle and the foot of each."""
    half = _wide_mm(rings) / 2.0
    return DrawnFigure(
        letter=letter_of(nth),
        rings=tuple(tuple((x + at, y + foot) for x, y in ring) for at, foot in feet for ring in rings),
        copies=tuple((at - half, foot + figure.high_mm, at + half, foot) for at, foot in feet),
        left_mm=min(at for at, _ in feet) - half,
        right_mm=max(at for at, _ in feet) + half,
        foot_mm=min(foot for _, foot in feet),
        top_mm=max(foot for _, foot in feet) + figure.high_mm,
        behind=figure.count - len(feet),
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
