"""A cake's elevation as it goes on paper: with its strokes and letters in it, for what knows no style sheet."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from markupsafe import Markup

from tinbook.pages.cake.elevation import REM_PX, CakeElevation

WIDE_MM = 75.5
"""How wide a drawing is on paper at most."""
MM_PER_REM = 3.8
"""Small letters are 17 / 20 rem and so 9.2 pt."""
LETTERS = "Besley, Georgia, serif"
SMALL_PX, LARGE_PX = 17.0, 26.0
ENDS = {"tb-mid": "middle", "tb-end": "end"}
"""Where letters of a kind are held."""


class PaperLine(NamedTuple):
    """How wide a line is, in px of the page; whether it is broken, and whether what it runs round is white."""

    px: float
    broken: bool = False
    white: bool = False


STROKES: Mapping[str, PaperLine] = {
    "tb-tier": PaperLine(2.0, white=True),
    "tb-drum": PaperLine(2.0, white=True),
    "tb-pillar": PaperLine(2.0, white=True),
    "tb-card": PaperLine(1.0, white=True),
    "tb-laid": PaperLine(1.0, white=True),
    "tb-stands": PaperLine(1.5, white=True),
    "tb-served": PaperLine(1.5, white=True),
    "tb-foam": PaperLine(2.0, broken=True),
    "tb-inner": PaperLine(1.0),
    "tb-hid": PaperLine(1.2, broken=True),
    "tb-dim": PaperLine(1.0),
    "tb-bench-line": PaperLine(3.0),
    "tb-blank": PaperLine(0.0, white=True),
}


@dataclass(frozen=True, slots=True)
class PaperElevation:
    """The drawing, how wide it is on paper, and what it shows."""

    svg: Markup
    wide_mm: float
    title: str


def on_paper(drawn: CakeElevation, title: str) -> PaperElevation:
    """A drawing of the page, black on white, at most as wide as a column of paper."""
    svg = str(drawn.svg)
    px = 1.0 / (drawn.rem_per_mm * REM_PX)
    wide_mm = min(WIDE_MM, drawn.wide_rem * MM_PER_REM)
    view = re.search(r'viewBox="([^"]+)"', svg)
    assert view is not None
    body = re.sub(r' data-[a-z]+="[^"]*"', "", svg[svg.index(">") + 1 :])
    body = re.sub(r'class="([^"]+)"', lambda found: _drawn(found[1].split(), px), body)
    _, _, wide, high = map(float, view[1].split())
    # with its height told, whoever sets it leaves no room above and below
    frame = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="{0}" width="{1:.1f}mm" height="{5:.1f}mm" role="img" '
        'aria-label="{2}" fill="none" stroke="#000" stroke-linejoin="round" font-family="{3}">{4}'
    )
    svg = Markup(frame).format(view[1], wide_mm, title, LETTERS, Markup(body), wide_mm * high / wide)
    return PaperElevation(svg, wide_mm, title)


def _drawn(kinds: Iterable[str], px: float) -> str:
    """The stroke, or the letters, of something of these kinds, in mm of the cake."""
    kinds = set(kinds)
    if held := kinds & ENDS.keys():
        size, weight = (LARGE_PX, 700) if "tb-now" in kinds else (SMALL_PX, 400)
        letters = f'font-size="{size * px:.2f}" font-weight="{weight}" fill="#000" stroke="none"'
        return f'text-anchor="{ENDS[held.pop()]}" {letters}'
    strokes = [STROKES[kind] for kind in kinds if kind in STROKES]
    wide = max((stroke.px for stroke in strokes), default=0.0) * px
    told = [f'stroke-width="{wide:.2f}"']
    if any(stroke.broken for stroke in strokes):
        told.append(f'stroke-dasharray="{5.0 * px:.2f} {4.0 * px:.2f}"')
    if any(stroke.white for stroke in strokes):
        told.append('fill="#fff"')
    return " ".join(told)
