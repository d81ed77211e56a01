"""A plan to cut by, drawn to scale in mm, with the instructions.

Every piece is drawn and numbered. On paper a plan is full size where it fits A4, and says whether it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, hypot

from markupsafe import Markup, escape

from tinbook.pages.spelling import formats
from tinbook.plans.portions.cut import Cut, knife_of, outline, pieces_of
from tinbook.plans.portions.cutting import BOXES
from tinbook.tins import Ring, Tin, cutting
from tinbook.tins.cutting import Knife

PAPER_MM = (198.0, 215.0)
"""The part of an A4 sheet left for a drawing, inside its margins and below its words."""
EDGE_MM = 3.0
BAR_MM = 16.0
SIDE_MM = 14.0
"""Room for the counts of strips and for where to cut."""
FIGURE_MM = 8.5
COUNT_MM = 16.0
"""A strip wider than this has its count beside it."""
LEAST_MM = 3.4
"""The smallest letters on paper."""
HAIR_MM = 0.04
FAR_MM = 12.0
TENTH = 0.05
"""Less than half a tenth of a mm is nothing."""


@dataclass(frozen=True, slots=True)
class CutDrawing:
    """A plan as SVG, how wide it is in mm, how wide on paper, and what to say about its size there."""

    svg: Markup
    width_mm: float
    paper_mm: float
    scale: str


@lru_cache(maxsize=1024)
def drawn(cut: Cut, name: str, mark: str, edge: str) -> CutDrawing:
    """The plan of a cake; `name` says of what, `mark` is its own on the page. `edge`: the mark of the tin's outline,
    which all its plans share."""
    least_x, least_y, most_x, most_y = _bounds(cut.tin)
    strips = cut.way in ("grid", "strips", "uneven")
    left = SIDE_MM if strips and not cut.upright else EDGE_MM
    top = SIDE_MM if strips and cut.upright else EDGE_MM
    off_x, off_y = left - least_x, top + most_y
    wide, tall = most_x - least_x, most_y - least_y
    width, height = wide + left + EDGE_MM, tall + top + EDGE_MM + BAR_MM
    small = max(width / PAPER_MM[0], height / PAPER_MM[1])
    ratio = ceil(small * 10.0) / 10.0 if small > 1.0 else 1.0
    least = LEAST_MM * ratio
    knife = knife_of(cut)
    if knife:
        lines, middles = _knife(knife, off_x, off_y), knife.middles
    else:
        pieces = pieces_of(cut) or ()
        lines = "".join(_path(ring, off_x, off_y) for piece in pieces for ring in piece.rings)
        middles = tuple(piece.middle for piece in pieces)
    outlined = f'<use href="#{escape(edge)}" x={_number(off_x)} y={_number(off_y)}'
    size = min(max(FIGURE_MM, least), 0.3 * (wide * tall / max(1, len(middles))) ** 0.5)
    down = off_y + 0.35 * size
    numbers = "".join(
        f"<text x={_number(x + off_x)} y={_number(down - y)}>{number}</text>"
        for number, (x, y) in enumerate(middles, 1)
    )
    bar = 100.0 if wide >= 100.0 else 50.0
    foot = top + tall + EDGE_MM + 6.0
    sides = _sides(cut, left, top, least) if strips else ""
    svg = Markup(
        f'<svg viewBox="0 0 {_number(width)} {_number(height)}" role="img" aria-label="{escape(name)}">'
        f'<clipPath id="in-{escape(mark)}">{outlined} clip-rule=evenodd /></clipPath>'
        f'<path clip-path="url(#in-{escape(mark)})" d="{lines}"/>'
        f"{outlined} class=tb-edge /><g class=tb-nos font-size={_number(size)}>{numbers}</g>{sides}"
        f'<path class=tb-bar d="M{_number(left)} {_number(foot)}h{_number(bar)}m0 -2v4m-{_number(bar)} 0v-4"/>'
        f"<text class=tb-bar-mm font-size={_number(max(5.0, least))} x={_number(left)} y={_number(foot + 7.0)}>"
        f"{_number(bar)} mm</text></svg>"
    )
    if ratio == 1.0:
        return CutDrawing(svg, width, width, "On A4 at full size: check the bar with a ruler.")
    return CutDrawing(svg, width, width / ratio, f"On A4, scaled to fit, 1 : {formats.number(ratio)}.")


def _sides(cut: Cut, left: float, top: float, least: float) -> str:
    """Where to cut the strips, and how many pieces each gives, beside the cake."""
    cuts = zip(cut.edges_mm[1:-1], cut.edges_shown_mm[1:-1], strict=True)
    strips = zip(cut.edges_mm, cut.edges_mm[1:], cut.counts, strict=False)
    where = "".join(_beside(cut, left, top, edge, formats.number(shown)) for edge, shown in cuts)
    many = "".join(
        _beside(cut, left, top, (start + end) / 2.0, f"{count}")
        for start, end, count in strips
        if len(cut.counts) > 1 and end - start > COUNT_MM
    )
    size = _number(max(5.0, least))
    return f"<g class=tb-sides font-size={size}><g class=tb-mm>{where}</g><g class=tb-of>{many}</g></g>"


def _beside(cut: Cut, left: float, top: float, along: float, text: str) -> str:
    x, y = (left + along, top - 3.5) if cut.upright else (left - 7.5, top + along + 2.3)
    return f"<text x={_number(x)} y={_number(y)}>{text}</text>"


def _knife(knife: Knife, off_x: float, off_y: float) -> str:
    lines = (_line(x + off_x, off_y - y, u + off_x, off_y - v) for (x, y), (u, v) in knife.lines)
    circles = (
        f"M{_number(off_x - r)} {_number(off_y)}"
        + "".join(f"a{_number(r)} {_number(r)} 0 1 0 {_number(way * r)} 0" for way in (2, -2))
        for r in knife.circles
    )
    return "".join((*circles, *lines))


def _line(x: float, y: float, u: float, v: float) -> str:
    """A cut from one point to another, in tenths of a mm, as short as it can be written."""
    across, down = round(u, 1) - round(x, 1), round(v, 1) - round(y, 1)
    start = f"M{_number(x)} {_number(y)}"
    if abs(down) < TENTH:
        return f"{start}h{_number(across)}"
    if abs(across) < TENTH:
        return f"{start}v{_number(down)}"
    return f"{start}l{_number(across)} {_number(down)}".replace(" -", "-")


@lru_cache(maxsize=256)
def _bounds(tin: Tin) -> tuple[float, float, float, float]:
    """Its least x and y, and most x and y."""
    return cutting.spans(outline(tin))


@lru_cache(maxsize=256)
def edge_path(tin: Tin) -> str:
    """The outline, about the middle of the tin."""
    return "".join(_path(_thinned(ring), 0.0, 0.0) for ring in outline(tin))


def _thinned(ring: Ring) -> Ring:
    """A curve of many points without most of those that lie within a hair of the line between their neighbours."""
    if len(ring) < 100:
        return ring
    points = [ring[0]]
    for before, point, after in zip(ring, ring[1:], (*ring[2:], ring[0]), strict=False):
        (x, y), (a, b), (c, d) = point, points[-1], after
        bend = abs((a - x) * (d - y) - (b - y) * (c - x)) / (hypot(a - c, b - d) or 1.0)
        if bend > HAIR_MM or hypot(x - a, y - b) > FAR_MM or hypot(x - before[0], y - before[1]) > FAR_MM:
            points.append(point)
    return tuple(points)


def _path(ring: Ring, off_x: float, off_y: float) -> str:
    points = [f"{_number(x + off_x)} {_number(off_y - y)}" for x, y in ring]
    return f"M{'L'.join(points)}z".replace(" -", "-")


def _number(value: float) -> str:
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text


def steps(cut: Cut) -> tuple[str, ...]:
    """How to cut it, in order."""
    if cut.way == "one_each":
        return ("One each.",)
    if cut.way == "none":
        return ("It is smaller than one portion.",)
    if cut.parts * sum(cut.counts) == 1:
        return ("Leave it whole: it is one portion.",)
    if cut.way == "joined":
        side = "left" if cut.upright else "far"
        return (
            f"First cut it into strips {_mm(cut.edges_shown_mm[1])} wide, from the {side} side.",
            "Then cut the strips the other way, as drawn; leave small bits on the piece beside them.",
            _alike(cut),
        )
    if cut.way in ("rings", "wedges"):
        return _ring_steps(cut)
    return _strip_steps(cut)


def _strip_steps(cut: Cut) -> tuple[str, ...]:
    begin = "left" if cut.upright else "far"
    inner = [formats.number(edge) for edge in cut.edges_shown_mm[1:-1]]
    lines = []
    if inner:
        lines.append(
            f"First cut right across, {formats.with_unit(formats.sentence(inner), 'mm')} from the {begin} side."
        )
    if len(set(cut.counts)) == 1:
        what = "Then cut each strip" if inner else "Cut it"
        if cut.counts[0] > 1:
            lines.append(f"{what} across into {cut.counts[0]} pieces.")
    else:
        ends = "" if cut.tin.shape in BOXES else "; the end pieces are longer, as drawn"
        lines.append(f"Then cut the strips the other way, into {_counts(cut)} pieces, from the {begin} side{ends}.")
    return (*lines, _alike(cut))


def _ring_steps(cut: Cut) -> tuple[str, ...]:
    lines = []
    if cut.parts == 2:
        lines.append("Cut the ball in half, and lay both halves cut side down.")
    cards = [2.0 * edge for edge in cut.edges_shown_mm[1:-1]]
    lines += [f"Cut straight down round a card {_mm(card)} across, laid on the middle." for card in cards]
    if cut.way == "wedges":
        lines.append(_wedges(cut))
    else:
        lines.append(f"Cut each ring towards the middle into {_counts(cut)} pieces, from the outside in.")
    return (*lines, _alike(cut))


def _wedges(cut: Cut) -> str:
    """`Cut each half into 5 wedges, from the centre out.`; a single wedge is no cut."""
    tube = cut.edges_mm[-1] > 0.0
    whole = "each half" if cut.parts == 2 else "the ring" if tube else "it"
    if cut.counts[0] == 1:
        return "Leave each half whole."
    if cut.counts[0] == 2:
        return f"Cut {whole} in two, through the {'hole' if tube else 'centre'}."
    return f"Cut {whole} into {cut.counts[0]} wedges, from the {'hole outwards' if tube else 'centre out'}."


def _counts(cut: Cut) -> str:
    return formats.sentence([str(count) for count in cut.counts])


def _alike(cut: Cut) -> str:
    if cut.off < 0.005:
        return "All the pieces are the same size."
    return f"Every piece is within {formats.percent(cut.off_shown_percent)} of the average size."


def _mm(value: float) -> str:
    return formats.with_unit(formats.number(value), "mm")
