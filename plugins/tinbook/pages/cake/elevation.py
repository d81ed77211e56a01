"""A whole cake from the front, true to scale: tiers on their board, what carries them, what stands on or beside it.

Drawn in mm, y downwards from the bench, which lies at 0; letters and the room for them are in px of the page, divided
by how many of those a mm takes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from tinbook.models.cakes import TOP
from tinbook.pages.base.drawings import spread
from tinbook.pages.cake.addresses import size_of
from tinbook.pages.cake.beside_drawn import beside_paths, served_beside
from tinbook.pages.cake.figures_drawn import DrawnFigure, figure_path, placed
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.whole import WholeCake
from tinbook.tins.trade import called_mm

ROOM_PX = 396.0
"""How wide a drawing is at most, with its letters."""
MOST_PX = 1.05
"""So many px to a mm at most: a small cake stays a small cake."""
REM_PX = 20.0
LEFT_PX, RIGHT_PX, ABOVE_PX, BELOW_PX, LINE_PX = 76.0, 8.0, 26.0, 40.0, 20.0
"""Room for heights, beside, above and below, and for a line of letters."""
LETTER_PX = 62.0
"""How wide the name of a figure and its height are."""
BESIDE_PX = 22.0
"""Room between the cake and what is served beside it."""
NAME_PX = 34.0
"""How high the name of a tier is."""
SAME_MM = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeElevation:
    """The drawing, how wide it is in rem, how far below its upper edge the top tier begins, and how many rem a mm
    takes."""

    svg: Markup
    wide_rem: float
    lead_rem: float
    rem_per_mm: float


def elevation(cake: WholeCake, words: str) -> CakeElevation | None:
    """The cake drawn, as `words` tell; None for cups alone, which stand in a box."""
    tiers = [tier for tier in cake.tiers if tier.cake]
    if not tiers:
        return None
    drum = cake.stacked.drum
    board_mm = drum.board.size_mm[0] if drum and drum.board.size_mm else 0.0
    half = max(board_mm, *(tier.guide_mm[0] for tier in tiers)) / 2.0
    scale = min(MOST_PX, (ROOM_PX - LEFT_PX - RIGHT_PX) / (2.0 * half))
    figures = placed(cake, scale, LETTER_PX, LINE_PX)
    served = served_beside(cake)
    right = max([half, *(_reach(each, scale) for each in figures)])
    if right > half or served:
        along = right + sum(each.wide_mm for each in served) + len(served) * BESIDE_PX / scale
        scale = min(scale, (ROOM_PX - LEFT_PX - RIGHT_PX) / (half + along))
        figures = placed(cake, scale, LETTER_PX, LINE_PX)
        right = max([half, *(_reach(each, scale) for each in figures)])
    px = 1.0 / scale
    drawn_beside, right = beside_paths(served, right, BESIDE_PX * px, px)
    top = max([cake.stacked.levels[-1].top_mm, *(each.top_mm + LINE_PX * px for each in figures)])
    box = (-half - LEFT_PX * px, -top - ABOVE_PX * px)
    wide, high = half + right + (LEFT_PX + RIGHT_PX) * px, top + (ABOVE_PX + BELOW_PX) * px
    body = [
        *_board(cake, board_mm, px),
        *(part for tier in tiers for part in _tier(cake, tier, px)),
        *_through(cake, px),
        *(part for each in figures for part in _figure(each, px)),
        *drawn_beside,
        *_heights(cake, -half, px),
        f'<path class="tb-bench-line" d="M{_n(-half - 12 * px)} 0H{_n(right + 6 * px)}"/>',
    ]
    frame = (
        '<svg class="tb-elev" viewBox="{0}" style="width:{1}rem;--px:{2}px" data-px-per-mm="{3}" role="img" '
        'aria-label="{4}">{5}</svg>'
    )
    view = " ".join(_n(value) for value in (*box, wide, high))
    svg = Markup(frame).format(
        view, _n(wide * scale / REM_PX), f"{px:.4f}", f"{scale:.4f}", words, Markup("".join(body))
    )
    return CakeElevation(
        svg=svg,
        wide_rem=wide * scale / REM_PX,
        lead_rem=(top - cake.stacked.levels[-1].top_mm + ABOVE_PX * px) * scale / REM_PX,
        rem_per_mm=scale / REM_PX,
    )


def _reach(each: DrawnFigure, scale: float) -> float:
    """How far to the right a figure reaches, with its letter and its height."""
    return max(each.right_mm, (each.left_mm + each.right_mm) / 2.0 + LETTER_PX / 2.0 / scale)


def _board(cake: WholeCake, board_mm: float, px: float) -> Iterator[str]:
    drum, thick = cake.stacked.drum, cake.stacked.drum_mm
    if drum is None or not board_mm:
        return
    left, right, y = -board_mm / 2.0, board_mm / 2.0, 24.0 * px
    yield f'<rect class="tb-drum" x="{_n(left)}" y="{_n(-thick)}" width="{_n(board_mm)}" height="{_n(thick)}"/>'
    if cake.stacked.paste_mm:
        # round a cake that stands within it, paste is seen as on the whole board
        deck, paste = cake.stacked.deck_mm, cake.stacked.paste_mm
        box = f'x="{_n(left)}" y="{_n(-deck)}" width="{_n(board_mm)}" height="{_n(paste)}"'
        yield f'<rect class="tb-laid" {box}/>'
    assert drum.board.size_mm is not None
    sides = dict.fromkeys(called_mm(side, drum.board.sold) for side in drum.board.size_mm)
    name = f"drum {' × '.join(formats.number(side / 10.0) for side in sides)}{formats.NBSP}cm"
    gap = 5.2 * len(name) * px
    ends = f"M{_n(left)} {_n(y - 5 * px)}v{_n(10 * px)}M{_n(right)} {_n(y - 5 * px)}v{_n(10 * px)}"
    yield f'<path class="tb-dim" d="{ends}M{_n(left)} {_n(y)}H{_n(-gap)}M{_n(gap)} {_n(y)}H{_n(right)}"/>'
    yield _text(0.0, y + 6.0 * px, name, "tb-mid")


def _tier(cake: WholeCake, tier: TierWorked, px: float) -> Iterator[str]:
    level, asked = cake.level(tier), tier.asked
    assert level is not None and tier.cake is not None
    wide, high, place = tier.guide_mm[0], tier.high_mm, asked.place
    left, y = -wide / 2.0, -level.top_mm
    if level.card_mm:
        card = tier.covered.board.card.size_mm if tier.covered else None
        across = card[0] if card else wide
        box = f'x="{_n(-across / 2)}" y="{_n(-level.foot_mm)}" width="{_n(across)}" height="{_n(level.card_mm)}"'
        yield f'<rect class="tb-card" {box}/>'
    if level.gap_mm:
        yield from _pillars(cake, tier, level.foot_mm - level.card_mm, level.gap_mm, px)
    kind = " tb-foam" if asked.dummy else ""
    named = f'class="tb-tier{kind}" data-tier="{place + 1}"'
    if tier.cake.solid == "upright":
        yield f'<rect {named} x="{_n(left)}" y="{_n(y)}" width="{_n(wide)}" height="{_n(high)}"/>'
        yield from _layers(tier, level.foot_mm)
    elif tier.cake.solid == "dome":
        arc = f"M{_n(left)} {_n(-level.foot_mm)}A{_n(wide / 2)} {_n(high)} 0 0 1 {_n(wide / 2)} {_n(-level.foot_mm)}Z"
        yield f'<path {named} d="{arc}"/>'
    else:
        yield f'<ellipse {named} cx="0" cy="{_n(y + high / 2)}" rx="{_n(wide / 2)}" ry="{_n(high / 2)}"/>'
    if asked.ribbon:
        yield f'<path class="tb-inner" d="M{_n(left)} {_n(-level.foot_mm - min(15.0, high / 4))}h{_n(wide)}"/>'
    dowels = cake.dowels(tier)
    if dowels is not None:
        tops = level.top_mm
        lines = "".join(f"M{_n(x)} {_n(-level.foot_mm)}V{_n(-tops)}" for x in _columns(dowels.plan.places))
        yield f'<path class="tb-hid" d="{lines}"/>'
    label = size_of(asked.tin).removeprefix("number ")
    room = ((14.0 if label[:1].isalpha() else 11.0) * len(label) + 14.0) * px
    middle = -level.foot_mm - high / 2.0
    box = f'x="{_n(-room / 2)}" y="{_n(middle - NAME_PX / 2 * px)}" width="{_n(room)}" height="{_n(NAME_PX * px)}"'
    yield f'<rect class="tb-blank" {box}/>'
    yield _text(0.0, middle + 9.0 * px, label, "tb-mid tb-now")


def _through(cake: WholeCake, px: float) -> Iterator[str]:
    """The dowel through all tiers, with how long it is; what it goes through is named over it."""
    long_mm = cake.stacked.through_mm
    if long_mm is None:
        return
    end, half = cake.stacked.through_top_mm, 4.0 * px
    foot = end - long_mm
    # it is seen between the names of the tiers
    names = [tier.high_mm / 2.0 + level.foot_mm for level, tier in zip(cake.stacked.levels, cake.tiers, strict=False)]
    ends = [foot, *(middle + side * NAME_PX / 2.0 * px for middle in names for side in (-1.0, 1.0)), end]
    seen = [(low, min(high, end)) for low, high in zip(ends[::2], ends[1::2], strict=True) if low < min(high, end)]
    for x in (-half, half):
        lines = "".join(f"M{_n(x)} {_n(-low)}V{_n(-high)}" for low, high in seen)
        yield f'<path class="tb-hid" d="{lines}"/>'
    yield f'<path class="tb-hid" d="M{_n(-half)} {_n(-end)}h{_n(2 * half)}"/>'


def _layers(tier: TierWorked, foot_mm: float) -> Iterator[str]:
    """The layers of a tier that no paste covers."""
    stack = tier.baked.stack if tier.baked else None
    if stack is None or stack.layers < 2 or (tier.covered and tier.covered.paste):
        return
    step = (stack.stack_mm - stack.layer_mm) / (stack.layers - 1)
    wide = tier.asked.tin.bounds_mm[0]
    ends = [foot_mm + nth * step + at for nth in range(stack.layers) for at in (0.0, stack.layer_mm)][1:-1]
    yield f'<path class="tb-inner" d="{"".join(f"M{_n(-wide / 2)} {_n(-y)}h{_n(wide)}" for y in ends)}"/>'


def _columns(places: Sequence[tuple[float, float]]) -> list[float]:
    """Where dowels stand, seen from the front: those at the back first, those right behind one in front left out."""
    columns: list[float] = []
    for x, _ in sorted(places, key=lambda place: (place[1], place[0])):
        if not any(abs(x - before) <= SAME_MM for before in columns):
            columns.append(x)
    return columns[::-1]


def _pillars(cake: WholeCake, tier: TierWorked, foot_mm: float, gap_mm: float, px: float) -> Iterator[str]:
    below = cake.dowels(cake.tiers[tier.asked.place - 1])
    for x in _columns(below.plan.places) if below else ():
        wide = max(below.plan.across_mm if below else 0.0, 3.0 * px)
        box = f'x="{_n(x - wide / 2)}" y="{_n(-foot_mm)}" width="{_n(wide)}" height="{_n(gap_mm)}"'
        yield f'<rect class="tb-pillar" {box}/>'


def _figure(each: DrawnFigure, px: float) -> Iterator[str]:
    if each.from_mm is not None:
        yield f'<path class="tb-hid" d="M{_n(each.from_mm)} {_n(-each.lead_mm)}H{_n(each.left_mm)}"/>'
    yield f'<g class="tb-stands" data-figure="{each.letter}">{figure_path(each)}</g>'
    middle = (each.left_mm + each.right_mm) / 2.0
    told = f"{escape(each.letter)} {formats.number(each.high_shown_cm)}"
    yield _text(middle, -each.top_mm - 6.0 * px, told, "tb-mid")


def _heights(cake: WholeCake, left: float, px: float) -> Iterator[str]:
    """The heights of board, tiers and all of it, cm, at the left."""
    stacked = cake.stacked
    found = {stacked.deck_mm: stacked.deck_mm} if stacked.drum_mm else {}
    for level in stacked.levels:
        found |= {level.foot_mm: level.foot_shown_mm} if level.gap_mm else {}
        found[level.top_mm] = level.top_shown_mm
    if any(figure.on == TOP for figure in cake.figures):
        found[stacked.high_mm] = stacked.high_shown_mm
    x, ends = left - 18.0 * px, sorted(found, reverse=True)
    ticks = "".join(f"M{_n(x - 5 * px)} {_n(-end)}h{_n(10 * px)}" for end in ends)
    yield f'<path class="tb-dim" d="M{_n(x)} {_n(-ends[0])}V0{ticks}"/>'
    for end, y in zip(ends, spread([-end for end in ends], 18.0 * px), strict=True):
        yield _text(x - 9.0 * px, y + 6.0 * px, formats.number(found[end] / 10.0), "tb-end", "height")
    yield _text(x - 9.0 * px, -ends[0] - 15.0 * px, "cm", "tb-end tb-unit")


def _text(x: float, y: float, words: str, style: str, of: str = "") -> str:
    told = f' data-of="{of}"' if of else ""
    return f'<text class="{style}" x="{_n(x)}" y="{_n(y)}"{told}>{words}</text>'


def _n(value: float) -> str:
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text
