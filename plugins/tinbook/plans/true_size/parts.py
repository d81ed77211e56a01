"""Templates at actual size for a decoration: the outlines of its parts, and where its marks go."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from tinbook.engine import tiling
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.plans.true_size.drawn import (
    Label,
    Point,
    Stroke,
    Template,
    bounds,
    grain,
    oval,
    ruler_mm,
    ruler_size,
)
from tinbook.tins import Tin

SMALL_MM = (176.0, 190.0)
"""What fits on one sheet of A4 and of Letter alike, with room for words."""
UNDER_MM = 14.0
"""Room for the words under a part."""
GAP_MM = 8.0
GRAIN_MM = 14.0
PIECE_MM = 120.0
"""How much is drawn of a rope longer than a sheet."""
MARK_CORNERS = 16

Wide = Callable[[Saying], float]
"""How wide words are on paper, mm: pages know, as they spell them."""


def has_templates(decoration: Decoration) -> bool:
    """Whether it has anything to draw at actual size."""
    return bool(decoration.parts) or any(repeat.count for repeat in decoration.repeats)


def part_templates(decoration: Decoration, wide: Wide) -> tuple[Template, ...]:
    """The outlines of its parts, the small ones side by side; then where marks go.

    A strip too long for one sheet runs over several. Of a rope too long for one, a piece is drawn to hold against it.
    """
    small = [part for part in decoration.parts if _fits(part, wide) or part.form == "rope"]
    notes = tuple(_notes(decoration, wide))
    return (
        *_small_parts(decoration, small, notes, wide),
        *(_large_part(part, decoration.cake, notes, wide) for part in decoration.parts if part not in small),
        *(marks_template(repeat, decoration.cake) for repeat in decoration.repeats if repeat.count),
    )


def _notes(decoration: Decoration, wide: Wide) -> Iterator[Saying]:
    """What is said beside every part."""
    written = decoration.written_for.name
    if decoration.as_written:
        yield saying("size_as_written", cake=written)
    else:
        yield saying("size_scaled", cake=written, scale=decoration.scale)
    if any(part.form == "sheet" for part in decoration.parts):
        yield saying("arrow_is_grain")
    if any(part.form == "solid" for part in decoration.parts):
        yield saying("seen_from_the_front")
    long = tuple(
        saying("rope_to_roll", letter=part.letter, name=part.name, size=ruler_size(*(mm for _, mm in part.lengths_mm)))
        for part in decoration.parts
        if part.form == "rope" and not _fits(part, wide)
    )
    if long:
        yield saying("ropes_in_pieces", ropes=long)


def _small_parts(
    decoration: Decoration, small: list[PartAt], notes: tuple[Saying, ...], wide: Wide
) -> Iterator[Template]:
    """Parts side by side, as many as one sheet holds."""
    sheets = tiling.shelved([_room(part, wide) for part in small], SMALL_MM, GAP_MM) if small else []
    waiting = iter(small)
    for number, places in enumerate(sheets, 1):
        parts = [next(waiting) for _ in places]
        drawings = [_part(part, place, wide) for part, place in zip(parts, places, strict=True)]
        letters = tuple(part.letter for part in parts)
        named = [part for part in decoration.parts if part.letter in letters]
        yield Template(
            key=f"parts-{number}",
            name=_alone(parts[0]) if len(parts) == 1 else saying("parts_together", letters=letters),
            size=saying("parts_of_all", count=len(parts), total=len(decoration.parts)),
            cake=decoration.cake,
            strokes=tuple(stroke for strokes, _ in drawings for stroke in strokes),
            labels=tuple(label for _, labels in drawings for label in labels),
            notes=(*notes, *_law(named)),
        )


def _large_part(part: PartAt, cake: Tin, notes: tuple[Saying, ...], wide: Wide) -> Template:
    strokes, labels = _part(part, (0.0, 0.0), wide)
    return Template(
        key=f"part-{part.letter.lower()}",
        name=_alone(part),
        size=ruler_size(part.width_mm, part.height_mm),
        cake=cake,
        strokes=tuple(strokes),
        labels=tuple(labels),
        notes=(*notes, *_law([part])),
    )


def _alone(part: PartAt) -> Saying:
    return saying("part_alone", letter=part.letter, name=part.name)


def _law(things: Iterable[PartAt | RepeatAt]) -> Iterator[Saying]:
    """A note for each colour of some parts or marks that carries a warning by law."""
    letters: dict[tuple[str, Saying], list[str]] = {}
    for thing in things:
        if thing.colour and thing.colour.law:
            letters.setdefault((thing.colour.name, thing.colour.law), []).append(thing.letter)
    return (
        saying("law_of_colour", letters=tuple(those), colour=colour, law=law)
        for (colour, law), those in letters.items()
    )


def _fits(part: PartAt, wide: Wide) -> bool:
    across, tall = _room(part, wide)
    return max(across, part.width_mm) <= SMALL_MM[0] and tall <= SMALL_MM[1]


def _words(part: PartAt) -> tuple[Saying, Saying]:
    """The words under a part: its letter and name, and its size."""
    size = ruler_size(part.width_mm, part.height_mm)
    return (
        saying("part_label", letter=part.letter, name=part.name, count=part.count),
        saying("piece_of_it", size=size) if _drawn_mm(part) < part.width_mm else size,
    )


def _drawn_mm(part: PartAt) -> float:
    """How wide a part is drawn: whole, except for a piece of a long rope."""
    return PIECE_MM if part.form == "rope" and part.width_mm > SMALL_MM[0] else part.width_mm


def _room(part: PartAt, wide: Wide) -> tuple[float, float]:
    """The room a part takes on paper with its words."""
    return max(_drawn_mm(part), *map(wide, _words(part))), part.height_mm + UNDER_MM


def _part(part: PartAt, corner: tuple[float, float], wide: Wide) -> tuple[list[Stroke], list[Label]]:
    """A part with the top left of its room at `corner`."""
    x, y = corner[0] + _room(part, wide)[0] / 2.0, corner[1] + part.height_mm / 2.0
    # the rings are centred on their bounds
    strokes = [Stroke.ring("cut", ring).moved((x, y)) for ring in part.outline_mm]
    if _drawn_mm(part) < part.width_mm:
        half, thick = _drawn_mm(part) / 2.0, part.height_mm / 2.0
        strokes = [Stroke("inner", ((x - half, y + side), (x + half, y + side))) for side in (-thick, thick)]
        strokes += [_torn((x + end, y), thick) for end in (-half, half)]
    if part.form == "sheet" and min(part.width_mm, part.height_mm) > 2.0 * GRAIN_MM:
        strokes += grain((x, y), GRAIN_MM)
    elif part.form == "solid":
        strokes.append(Stroke("centre", ((x, y - part.height_mm / 2.0), (x, y + part.height_mm / 2.0))))
    under = corner[1] + part.height_mm
    name, size = _words(part)
    return strokes, [Label(name, (x, under + 4.5), True), Label(size, (x, under + 9.0))]


def _torn(at: Point, half: float) -> Stroke:
    """The end of a piece of something longer: a broken line."""
    (x, y), off = at, min(2.0, half)
    ys = (-half, -half / 3.0, half / 3.0, half)
    return Stroke("leader", tuple((x + side * off, y + down) for side, down in zip((0, 1, -1, 0), ys, strict=True)))


def marks_template(repeat: RepeatAt, cake: Tin) -> Template:
    """Where the marks of a repeat go on their outline."""
    strokes = [Stroke.ring("cut", ring) for ring in repeat.outline_mm]
    left, top, right, low = bounds(strokes)
    strokes += [Stroke("inner", _mark((x, -y), repeat)) for x, y in repeat.points]
    along_mm, between_mm = (ruler_mm(pitch) for pitch in repeat.pitch_mm)
    sides = repeat.mark_mm[:1] if repeat.round_mark else repeat.mark_mm
    note = saying(
        "marks_to_prick",
        count=repeat.count,
        size=ruler_size(*sides),
        how=repeat.how,
        along_mm=along_mm,
        between_mm=between_mm,
        cut=bool(repeat.cut),
    )
    return Template(
        key=f"marks-{repeat.letter.lower()}",
        name=saying("marks_on", letter=repeat.letter, name=repeat.name, surface=repeat.on),
        size=ruler_size(right - left, low - top),
        cake=cake,
        strokes=tuple(strokes),
        notes=(note, *_law([repeat])),
    )


def _mark(at: Point, repeat: RepeatAt) -> tuple[Point, ...]:
    (x, y), (wide, high) = at, repeat.mark_mm
    if repeat.round_mark:
        return oval(at, wide, high, MARK_CORNERS)
    left, top, right, low = x - wide / 2.0, y - high / 2.0, x + wide / 2.0, y + high / 2.0
    return (left, top), (right, top), (right, low), (left, low), (left, top)
