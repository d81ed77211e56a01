"""Drawings of parts, side by side to one scale with a bar, and of marks on their surface."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from tinbook.pages.spelling import formats
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.tins import Ring

WIDE = 480.0
GAP = 14.0
LETTER = 20.0
TALLEST = 200.0
BARS_MM = (100.0, 50.0, 20.0, 10.0, 5.0)


@dataclass(frozen=True, slots=True)
class PartDrawing:
    """A drawing as SVG, and what it shows in words."""

    svg: Markup
    title: str
    across: bool = False


def parts_drawn(decoration: Decoration) -> PartDrawing | None:
    """The parts of a decoration in rows, each row on its ground, every part with its letter and those of its marks, to
    one scale; None if it has none."""
    if not decoration.parts:
        return None
    widest = max(part.width_mm for part in decoration.parts)
    tallest = max(part.height_mm for part in decoration.parts)
    scale = min((WIDE - 2 * GAP) / widest, TALLEST / tallest, 4.0)
    rows = list[list[PartAt]]()
    x = WIDE
    for part in decoration.parts:
        room = max(part.width_mm * scale, LETTER)
        if x > GAP and x + room > WIDE - GAP:
            rows.append([])
            x = GAP
        rows[-1].append(part)
        x += room + GAP
    drawn = list[str]()
    foot = 0.0
    for row in rows:
        x, foot = GAP, foot + GAP + max(part.height_mm for part in row) * scale
        for part in row:
            room = max(part.width_mm * scale, LETTER)
            middle, centre = x + room / 2.0, foot - part.height_mm * scale / 2.0
            drawn.append(f'<path d="{_path(part.outline_mm, middle, centre, scale)}"/>')
            marks = [repeat.letter for repeat in decoration.repeats if repeat.on == part.name]
            letters = "".join(f"<tspan>{each}</tspan> " for each in (part.letter, *marks)).strip()
            drawn.append(f'<text x="{_n(middle)}" y="{_n(foot + LETTER)}" text-anchor="middle">{letters}</text>')
            x += room + GAP
        drawn.append(f'<path d="M{_n(GAP / 2)} {_n(foot)}H{_n(WIDE - GAP / 2)}" stroke-width="2.5"/>')
        foot += LETTER + GAP
    bar = next((length for length in BARS_MM if length * scale <= WIDE / 2.0), BARS_MM[-1])
    low = foot + GAP
    bar_drawn = (
        f'<path d="M{_n(GAP)} {_n(low - 5)}v10M{_n(GAP)} {_n(low)}h{_n(bar * scale)}m0 -5v10"/>'
        f'<text x="{_n(GAP + bar * scale + 8)}" y="{_n(low + 6)}">{bar:g} mm</text>'
    )
    names = "; ".join(f"{letter} {name}" for letter, name in decoration.lettered)
    title = f"The parts drawn to the same scale, for {formats.a_or_an(decoration.cake.name)} cake: {names}"
    return PartDrawing(_svg(low + GAP, "".join(drawn) + bar_drawn, title), title)


def marks_drawn(repeat: RepeatAt, cake: str) -> PartDrawing:
    """Where the marks of a repeat go on their surface; those cut by the edge are drawn cut."""
    xs, ys = zip(*repeat.outline_mm[0], strict=True)
    wide_mm, high_mm = max(xs) - min(xs), max(ys) - min(ys)
    scale = min((WIDE - 2 * GAP) / wide_mm, 1.6 * TALLEST / high_mm, 6.0)
    middle, centre = WIDE / 2.0, GAP + high_mm * scale / 2.0
    off = ((max(xs) + min(xs)) / 2.0, (max(ys) + min(ys)) / 2.0)
    outline = _path(repeat.outline_mm, middle - off[0] * scale, centre + off[1] * scale, scale)
    spots = [(middle + (x - off[0]) * scale, centre - (y - off[1]) * scale) for x, y in repeat.points]
    width, height = (side * scale for side in repeat.mark_mm)
    name = f"tb-edge-{repeat.letter}"
    if repeat.round_mark:
        dots = "".join(f"M{_n(x)} {_n(y)}h0" for x, y in spots)
        marks = f'<path d="{dots}" stroke-linecap="round" stroke-width="{_n(width)}" stroke="var(--edge, #5C737B)"/>'
    else:
        side = f"h{_n(width)}v{_n(height)}h{_n(-width)}z"
        box = "".join(f"M{_n(x - width / 2)} {_n(y - height / 2)}{side}" for x, y in spots)
        marks = f'<path d="{box}"/>'
    body = (
        f'<clipPath id="{name}"><path d="{outline}" clip-rule="evenodd"/></clipPath>'
        f'<g clip-path="url(#{name})">{marks}</g><path d="{outline}" stroke-width="2"/>'
    )
    title = f"{repeat.letter} {repeat.name}: {repeat.count} marks on the {repeat.on}, for {formats.a_or_an(cake)} cake"
    return PartDrawing(_svg(2 * GAP + high_mm * scale, body, title), title)


def _svg(high: float, body: str, title: str) -> Markup:
    frame = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {} {}" role="img" aria-label="{}" fill="none" '
        'stroke="currentColor" stroke-width="1.5">{}</svg>'
    )
    words = body.replace("<text ", '<text fill="currentColor" stroke="none" font-size="20" ')
    return Markup(frame).format(f"{WIDE:g}", _n(high), title, Markup(words))


def _path(rings: tuple[Ring, ...], middle: float, centre: float, scale: float) -> str:
    return "".join(
        "M" + "L".join(f"{_n(middle + x * scale)} {_n(centre - y * scale)}" for x, y in ring) + "Z" for ring in rings
    )


def _n(value: float) -> str:
    text = f"{value:.1f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
