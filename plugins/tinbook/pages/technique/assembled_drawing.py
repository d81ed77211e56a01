"""A decoration put together, drawn from the front: hatched by colour, every part with its letter, lengths in mm.

Drawn in mm of paper at a scale, so that letters keep their size at any.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from tinbook.pages.spelling import formats
from tinbook.pages.technique.figures import mm
from tinbook.plans.techniques.parts import Decoration
from tinbook.plans.true_size.assembled import Placed, PutTogether, edge_mm, put_together
from tinbook.tins import Ring

LETTERS = "Besley, Atkinson Hyperlegible Next"
WORDS = "Atkinson Hyperlegible Next, Atkinson"
KEY_LINE, KEY_SIZE, LETTER_LINE = 5.2, 3.3, 6.0
SWATCH = (6.0, 3.8)
WORD_MM = 1.75
"""How wide a letter of the key is at most, on average."""
GAP = 3.0
EDGES = (9.0, 11.0)
"""Room for the height at the left, and for the letters at the right."""
SCALES = ((1.0, "Actual size"), (0.75, "Three quarters of actual size"), (0.5, "Half actual size"))
"""What the parts put together are drawn at, and how it is said."""
PAPER_MM = 176.0
"""How wide a drawing may be on paper."""
ACROSS_MM = 130.0
"""Wider than that, it does not go beside a table."""
BARE = "uncoloured"
HATCHES = (
    "",
    '<path d="M0 2.4L2.4 0M-.6 .6L.6 -.6M1.8 3L3 1.8"/>',
    '<path d="M.6 .6h.01M1.8 1.8h.01" stroke-width=".6" stroke-linecap="round"/>',
    '<path d="M0 2.4L2.4 0M-.6 .6L.6 -.6M1.8 3L3 1.8M0 0L2.4 2.4"/>',
    '<path d="M0 1.2H2.4"/>',
    '<path d="M1.2 0V2.4"/>',
    '<path d="M0 1.2H2.4M1.2 0V2.4"/>',
)
"""The hatchings that tell colours apart, in order; the first is bare, and after the last they start again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AssembledDrawing:
    """A drawing as SVG, what it shows, how wide it is on paper, and how high the whole stands."""

    svg: Markup
    title: str
    wide_mm: float
    high: str

    @property
    def across(self) -> bool:
        """Whether it is too wide to stand beside a table."""
        return self.wide_mm > ACROSS_MM


ZEROS, MINUS = re.compile(r"\.?0+(?=[ LZ])"), re.compile(r"-0(?=[ LZ])")
"""What a figure in hundredths ends in and is not written, and a nought that is less than nought."""


@dataclass(frozen=True, slots=True)
class _Sheet:
    """Where mm of the decoration are on paper."""

    scale: float
    left: float
    ground: float

    def x(self, value_mm: float) -> float:
        return self.left + value_mm * self.scale

    def y(self, value_mm: float) -> float:
        return self.ground - value_mm * self.scale

    def path(self, rings: Sequence[Ring]) -> str:
        """Rings as `_n` spells each figure, but all at once: a surface may have a thousand marks."""
        left, ground, scale = self.left, self.ground, self.scale
        drawn = ("L".join(f"{left + x * scale:.2f} {ground - y * scale:.2f}" for x, y in ring) for ring in rings)
        return MINUS.sub("0", ZEROS.sub("", "".join(f"M{each}Z" for each in drawn)))


@dataclass(frozen=True, slots=True)
class _Letter:
    """A letter, the spot on paper its line leads to, and how low the letter itself is."""

    letter: str
    x: float
    y: float
    at: float


def assembled_drawn(made: Decoration, scale: float = 1.0, name: str = "tb-put") -> AssembledDrawing | None:
    """The decoration put together, so many mm of paper to a mm; None if its parts do not say how. `name` begins the
    names inside, which are its own on a page."""
    whole = put_together(made, as_laid=True)
    if whole is None:
        return None
    colours = list(dict.fromkeys(part.colour.name if part.colour else "" for part in made.parts))
    held = dict.fromkeys(stick.what.split(",")[0] for stick in whole.sticks)
    key = [*(colour or BARE for colour in colours), *held]
    # the key stands at the top left, clear of what is as high as it
    key_wide = SWATCH[0] + 2.0 + WORD_MM * max(map(len, key))
    level = whole.high_mm - (len(key) * KEY_LINE + GAP) / scale
    beside = min(piece.left_mm for piece in whole.pieces if piece.top_mm > level) * scale
    key_x = beside - GAP - key_wide
    left = min(key_x, whole.left_mm * scale) - EDGES[0]
    sheet = _Sheet(scale, -left, 2.0 + whole.high_mm * scale)
    right = sheet.x(whole.right_mm)
    low = max([0.0, *(-stick.low_mm * scale for stick in whole.sticks)])
    letters = list(_places(whole, sheet))
    body = [
        *_hatches(name, len(colours)),
        *(_piece(piece, colours, sheet, f"{name}-{nth}", name) for nth, piece in enumerate(whole.pieces)),
        *_sticks(whole, sheet),
        f'<path d="M{_n(sheet.x(whole.left_mm) - 3)} {_n(sheet.ground)}H{_n(right + 3)}" stroke-width=".6"/>',
        *_letters(letters, right + 5.5),
        *_key(key, len(colours), name, key_x - left),
        *_lengths(whole, sheet, low),
    ]
    wide = right + EDGES[1]
    # as low as the width below, the last letter or the key goes
    high = max(sheet.ground + low + 6.8, letters[-1].at + GAP, len(key) * KEY_LINE + GAP)
    names = formats.sentence(f"{letter} {name}" for letter, name in made.lettered)
    stands = put_together(made) or whole
    seen = "from above" if whole.above else "from the front"
    title = f"Assembled, {seen}, for {formats.a_or_an(made.cake.name)} cake: {names}; lengths in mm"
    frame = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0} {1}" width="{0}mm" height="{1}mm" role="img" '
        'aria-label="{2}" fill="none" stroke="currentColor" stroke-width=".35" stroke-linejoin="round">{3}</svg>'
    )
    svg = Markup(frame).format(_n(wide), _n(high), title, Markup("".join(body)))
    return AssembledDrawing(svg=svg, title=title, wide_mm=wide, high=f"{mm(stands.high_mm)} mm")


def _hatches(name: str, count: int) -> Iterator[str]:
    yield "<defs>"
    for nth in range(count):
        if lines := HATCHES[nth % len(HATCHES)]:
            yield (
                f'<pattern id="{name}-hatch-{nth}" width="2.4" height="2.4" patternUnits="userSpaceOnUse">'
                f'<g stroke="currentColor" stroke-width=".25">{lines}</g></pattern>'
            )
    yield "</defs>"


def _fill(name: str, nth: int) -> str:
    return f"url(#{name}-hatch-{nth})" if HATCHES[nth % len(HATCHES)] else "none"


def _piece(piece: Placed, colours: list[str], sheet: _Sheet, clip: str, name: str) -> str:
    outline = sheet.path(piece.rings)
    marks = ""
    if piece.marks:
        marks = (
            f'<clipPath id="{clip}"><path d="{outline}" clip-rule="evenodd"/></clipPath>'
            f'<path clip-path="url(#{clip})" d="{sheet.path(piece.marks)}" stroke-width=".15"/>'
        )
    fill = _fill(name, colours.index(piece.colour))
    return (
        f'<path class="tb-blank" d="{outline}" fill="#fff" fill-rule="evenodd" stroke="none"/>{marks}'
        f'<path d="{outline}" fill="{fill}" fill-rule="evenodd" stroke-width=".5"/>'
    )


def _sticks(whole: PutTogether, sheet: _Sheet) -> Iterator[str]:
    for stick in whole.sticks:
        line = f"M{_n(sheet.x(stick.x_mm))} {_n(sheet.y(stick.low_mm))}V{_n(sheet.y(stick.high_mm))}"
        yield f'<path d="{line}" stroke-dasharray="1.6 1" stroke-width=".5"/>'


def _places(whole: PutTogether, sheet: _Sheet) -> Iterator[_Letter]:
    """The letters one below another, as near as possible to the spots they belong to."""
    at = -GAP
    for y, start, letter in sorted(_spots(whole, sheet)):
        at = max(y, at + LETTER_LINE)
        yield _Letter(letter, start, y, at)


def _letters(letters: Iterable[_Letter], x: float) -> Iterator[str]:
    for each in letters:
        line = f"M{_n(each.x)} {_n(each.y)}L{_n(x - 3)} {_n(each.at)}H{_n(x - 1)}"
        yield f'<path d="{line}" stroke-width=".2"/>'
        yield _text(x, each.at + 2.1, each.letter, LETTERS, 6.0, "", 700)


def _spots(whole: PutTogether, sheet: _Sheet) -> Iterator[tuple[float, float, str]]:
    """A spot on paper for each letter, on the highest piece of its part."""
    done = set[str]()
    for piece in sorted(whole.pieces, key=lambda piece: -piece.top_mm):
        if done.issuperset((piece.letter, *piece.mark_letters)):
            continue
        seen = whole.seen_mm(piece) or ((piece.foot_mm, piece.top_mm),)
        for nth, letter in enumerate((piece.letter, *piece.mark_letters)):
            if letter not in done:
                done.add(letter)
                level = sum(seen[-nth]) / 2.0
                # a spot on marks lies within them
                inside = 2.0 * sheet.scale if nth else 0.0
                yield sheet.y(level), sheet.x(edge_mm(piece.rings, level)) - inside, letter


def _key(key: list[str], coloured: int, name: str, x: float) -> Iterator[str]:
    wide, high = SWATCH
    for nth, words in enumerate(key):
        y = 2.0 + nth * KEY_LINE
        if nth < coloured:
            yield f'<path d="M{_n(x)} {_n(y)}h{wide:g}v{high:g}h-{wide:g}z" fill="{_fill(name, nth)}"/>'
        else:
            yield f'<path d="M{_n(x)} {_n(y + high / 2)}h{wide:g}" stroke-dasharray="1.6 1" stroke-width=".5"/>'
        yield _text(x + wide + 2.0, y + 3.1, words, WORDS, KEY_SIZE)


def _lengths(whole: PutTogether, sheet: _Sheet, low: float) -> Iterator[str]:
    """How high it stands, at the left; how wide it is, below."""
    top, ground, x = sheet.y(whole.high_mm), sheet.ground, 5.0
    middle = (top + ground) / 2.0
    lines = (
        f"M{_n(x - 1.2)} {_n(top)}h2.4M{_n(x - 1.2)} {_n(ground)}h2.4"
        f"M{_n(x)} {_n(top)}V{_n(middle - 3.2)}M{_n(x)} {_n(middle + 3.2)}V{_n(ground)}"
    )
    yield f'<path d="{lines}" stroke-width=".2"/>'
    yield _text(x, middle + 1.4, mm(whole.high_mm), LETTERS, 4.0, "middle")
    left, right, y = sheet.x(whole.left_mm), sheet.x(whole.right_mm), ground + low + 4.5
    middle = (left + right) / 2.0
    lines = (
        f"M{_n(left)} {_n(y - 1.2)}v2.4M{_n(right)} {_n(y - 1.2)}v2.4"
        f"M{_n(left)} {_n(y)}H{_n(middle - 5)}M{_n(middle + 5)} {_n(y)}H{_n(right)}"
    )
    yield f'<path d="{lines}" stroke-width=".2"/>'
    yield _text(middle, y + 1.5, mm(whole.right_mm - whole.left_mm), LETTERS, 4.0, "middle")


def _text(x: float, y: float, words: str, family: str, size: float, anchor: str = "", weight: int = 400) -> str:
    where = f' text-anchor="{anchor}"' if anchor else ""
    heavy = f' font-weight="{weight}"' if weight != 400 else ""
    return (
        f'<text x="{_n(x)}" y="{_n(y)}"{where}{heavy} font-family="{family}" font-size="{size:g}" '
        f'fill="currentColor" stroke="none">{escape(words)}</text>'
    )


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
