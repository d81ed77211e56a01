"""Templates at true size: parts of a decoration and where its marks go, the board's guide ring, the cutting plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import cos, pi, sin

from tinbook.engine import tiling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.finish.boards import board_row
from tinbook.plans.finish.cake import Cake
from tinbook.plans.portions.cut import outline as cut_outline
from tinbook.plans.portions.cut import pieces_of
from tinbook.plans.portions.cutting import Portion, cut_of, portion_sizes
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.plans.true_size.drawn import Label, Point, Stroke, Template, axes, bounds, cross, grain, words_mm
from tinbook.tins import Tin
from tinbook.tins.growth import ring_round

SMALL_MM = (176.0, 190.0)
"""What lies on one sheet of A4 and of Letter alike, with room for words."""
UNDER_MM = 14.0
"""Room for the words under a part."""
GAP_MM = 8.0
LETTER_MM = 3.0
"""Half of what a letter and its size are wide, each sign."""
GRAIN_MM = 14.0
PIECE_MM = 120.0
"""What is drawn of a rope that is longer than a sheet."""
WAYS = {
    "grid": "a grid",
    "strips": "strips",
    "uneven": "strips of uneven width",
    "joined": "strips, what is over joined",
    "rings": "rings",
    "wedges": "wedges",
}
"""How a cake is cut, in words."""


def has_templates(decoration: Decoration) -> bool:
    """Whether it has anything to draw at true size."""
    return bool(decoration.parts) or any(each.count for each in decoration.repeats)


def part_templates(decoration: Decoration) -> tuple[Template, ...]:
    """The outlines of its parts, the small ones side by side; then where marks go.

    A strip too long for one sheet runs over several. Of a rope too long for one a piece is drawn, to be held against.
    """
    cake, found, drawn = decoration.cake, [], decoration.parts
    small = [part for part in drawn if _fits(part) or part.form == "rope"]
    measured = [part for part in drawn if part.form == "rope" and not _fits(part)]
    notes = [
        f"As it is written, for {decoration.written_for.name}."
        if decoration.as_written
        else f"Written for {decoration.written_for.name}: lengths × {decoration.scale:.3g}."
    ]
    if any(part.form == "sheet" for part in drawn):
        notes.append("The arrow is the way the paste was rolled.")
    if any(part.form == "solid" for part in drawn):
        notes.append("A solid part is seen from the front: hold it against its outline.")
    long = [f"{part.letter} {part.name} {words_mm(*(mm for _, mm in part.lengths_mm))}" for part in measured]
    if long:
        notes.append("Of a long rope a piece is drawn. Roll all of it by a ruler: " + "; ".join(long) + ".")
    sheets = tiling.shelved([_room(part) for part in small], SMALL_MM, GAP_MM) if small else []
    left = iter(small)
    for number, places in enumerate(sheets, 1):
        strokes, labels, letters = [], [], []
        for place in places:
            part = next(left)
            lines, words = _part(part, place)
            strokes += lines
            labels += words
            letters.append(part.letter)
        key, name = f"parts-{number}", "Parts " + ", ".join(letters)
        if len(letters) == 1:
            name = f"Part {part.letter}, {part.name}"
        size = f"{len(letters)} of {len(decoration.parts)} parts"
        told = (*notes, *_law(part for part in decoration.parts if part.letter in letters))
        found.append(
            Template(key=key, name=name, size=size, cake=cake, strokes=tuple(strokes), labels=tuple(labels), notes=told)
        )
    for part in drawn:
        if part not in small:
            strokes, labels = _part(part, (0.0, 0.0))
            size = words_mm(part.width_mm, part.height_mm)
            key, name = f"part-{part.letter.lower()}", f"Part {part.letter}, {part.name}"
            found.append(
                Template(
                    key=key,
                    name=name,
                    size=size,
                    cake=cake,
                    strokes=tuple(strokes),
                    labels=tuple(labels),
                    notes=(*notes, *_law([part])),
                )
            )
    return (*found, *(marks_template(each, cake) for each in decoration.repeats if each.count))


def _law(things: Iterable[PartAt | RepeatAt]) -> Iterator[str]:
    """A note for each colour of some parts or marks that carries a warning by law."""
    told: dict[str, list[str]] = {}
    for each in things:
        if each.colour and each.colour.law:
            told.setdefault(f"{each.colour.name}: {each.colour.law}", []).append(each.letter)
    return (f"{', '.join(letters)} in {words}." for words, letters in told.items())


def _fits(part: PartAt) -> bool:
    wide, tall = _room(part)
    return max(wide, part.width_mm) <= SMALL_MM[0] and tall <= SMALL_MM[1]


def _words(part: PartAt) -> tuple[str, str]:
    times = f", {part.count} of" if part.count > 1 else ""
    piece = ", a piece of it" if _wide(part) < part.width_mm else ""
    return f"{part.letter} {part.name}{times}", words_mm(part.width_mm, part.height_mm) + piece


def _wide(part: PartAt) -> float:
    """How wide a part is drawn: whole, but of a long rope a piece."""
    return PIECE_MM if part.form == "rope" and part.width_mm > SMALL_MM[0] else part.width_mm


def _room(part: PartAt) -> tuple[float, float]:
    """What a part takes on paper with its words."""
    widest = max(len(text) for text in _words(part)) * LETTER_MM * 0.75
    return max(_wide(part), widest), part.height_mm + UNDER_MM


def _part(part: PartAt, corner: tuple[float, float]) -> tuple[list[Stroke], list[Label]]:
    """A part with the top left of its room at `corner`."""
    x, y = corner[0] + _room(part)[0] / 2.0, corner[1] + part.height_mm / 2.0
    # the rings stand about the middle of their bounds
    strokes = [Stroke.ring("cut", ring).moved((x, y)) for ring in part.outline_mm]
    if _wide(part) < part.width_mm:
        half, thick = _wide(part) / 2.0, part.height_mm / 2.0
        strokes = [Stroke("inner", ((x - half, y + side), (x + half, y + side))) for side in (-thick, thick)]
        strokes += [_torn((x + end, y), thick) for end in (-half, half)]
    if part.form == "sheet" and min(part.width_mm, part.height_mm) > 2.0 * GRAIN_MM:
        strokes += grain((x, y), GRAIN_MM)
    elif part.form == "solid":
        strokes += [
            Stroke("centre", ((x, y - part.height_mm / 2.0), (x, y + part.height_mm / 2.0))),
        ]
    under = corner[1] + part.height_mm
    name, size = _words(part)
    return strokes, [Label(name, (x, under + 4.5), True), Label(size, (x, under + 9.0))]


def _torn(at: Point, half: float) -> Stroke:
    """The end of a piece of something longer: a line that jumps."""
    (x, y), off = at, min(2.0, half)
    ys = (-half, -half / 3.0, half / 3.0, half)
    return Stroke("leader", tuple((x + side * off, y + down) for side, down in zip((0, 1, -1, 0), ys, strict=True)))


def marks_template(repeat: RepeatAt, cake: Tin) -> Template:
    """Where the marks of a repeat go on their outline."""
    strokes = [Stroke.ring("cut", ring) for ring in repeat.outline_mm]
    wide, high = repeat.mark_mm
    for x, y in repeat.points:
        if repeat.round_mark:
            turns = [2.0 * pi * step / 16 for step in range(17)]
            points = tuple((x + wide / 2.0 * cos(turn), -y + high / 2.0 * sin(turn)) for turn in turns)
        else:
            left, top, right, low = x - wide / 2.0, -y - high / 2.0, x + wide / 2.0, -y + high / 2.0
            points = ((left, top), (right, top), (right, low), (left, low), (left, top))
        strokes.append(Stroke("inner", points))
    notes: tuple[str, ...] = (
        f"{repeat.count} marks {words_mm(*([wide] if repeat.round_mark else [wide, high]))}, {repeat.how}, "
        f"{words_mm(repeat.pitch_mm[0])} from middle to middle, rows {words_mm(repeat.pitch_mm[1])} apart. "
        "Prick through the middle of each.",
    )
    if repeat.cut:
        notes = (f"{notes[0]} What lies over the edge is cut off with it.",)
    notes = (*notes, *_law([repeat]))
    key, name = f"marks-{repeat.letter.lower()}", f"Marks {repeat.letter}, {repeat.name} on {repeat.on}"
    left, top, right, low = bounds(strokes[: len(repeat.outline_mm)])
    return Template(
        key=key,
        name=name,
        size=words_mm(right - left, low - top),
        cake=cake,
        strokes=tuple(strokes),
        labels=(),
        notes=notes,
    )


def ring_template(tin: Tin, book: Book, facts: Facts) -> Template:
    """The board's edge, and on it the guide ring: the cake with its coats on, to be marked on the board."""
    if tin.kind.in_trays:
        raise AskError(f"{tin.name} stand on no board", "name a cake")
    settled = finishing(book.finish, facts)
    cake = Cake(tin, settled.heights_mm[0], settled.layers)
    row = board_row(cake, False, settled, facts, steps_of(book))
    out_mm = settled.coats_mm + settled["paste"]
    guide = Stroke.ring("inner", ring_round(tin, out_mm))
    if row.chosen.size_mm is None:
        raise AskError(f"no board is sold that is large enough for {tin.name}", "name a smaller cake")
    wide, long = row.chosen.size_mm
    edge = _disc(wide, long) if row.chosen.disc else _box(wide, long)
    strokes = (edge, guide, *axes([edge]), *cross((0.0, 0.0), 4.0, "inner"))
    guide_said, board_said = words_mm(*row.guide_mm), words_mm(*row.chosen.size_mm)
    notes = (
        f"Cake with its coats on {guide_said}; board {board_said}. Lay the sheet on the covered board, the middles on "
        "each other, and prick along the inner line.",
    )
    # beside the middle, where sheets are joined
    labels = (
        Label("edge of the board", (-wide / 5.0, long / 2.0 - (7.0 + 0.05 * long))),
        Label("cake with its coats", (-row.guide_mm[0] / 4.0, 6.0)),
    )
    return Template(
        key="board-ring",
        name="Board guide ring",
        size=f"{guide_said} on {board_said}",
        cake=tin,
        strokes=strokes,
        labels=labels,
        notes=notes,
    )


def _disc(wide: float, long: float) -> Stroke:
    turns = [2.0 * pi * step / 360 for step in range(361)]
    return Stroke("cut", tuple((wide / 2.0 * cos(turn), long / 2.0 * sin(turn)) for turn in turns))


def _box(wide: float, long: float) -> Stroke:
    x, y = wide / 2.0, long / 2.0
    return Stroke("cut", ((-x, -y), (x, -y), (x, y), (-x, y), (-x, -y)))


def cutting_template(tin: Tin, portion: str | tuple[float, float], book: Book, facts: Facts) -> Template:
    """The plan a cake is cut by into portions of a kind, or of a size."""
    sizes = portion_sizes(book, facts)
    if isinstance(portion, str) and portion not in sizes:
        raise AskError(f'no portion is called "{portion}"', ", ".join(sizes))
    size = sizes[portion] if isinstance(portion, str) else Portion("own", min(portion), max(portion), "asked")
    if tin.kind.in_trays:
        raise AskError(f"{tin.name} are not cut", "name a cake")
    cut = cut_of(tin, size, finishing(book.finish, facts).heights_mm[0])
    pieces = pieces_of(cut) if cut.count > 1 else None
    if pieces is None:
        raise AskError(f"{tin.name} is not cut into portions {words_mm(size.short_mm, size.long_mm)}", "ask for others")
    strokes = [Stroke.ring("cut", ring) for ring in cut_outline(tin)]
    strokes += [Stroke.ring("inner", ring) for piece in pieces for ring in piece.rings]
    labels = [Label(str(number), (piece.middle[0], -piece.middle[1])) for number, piece in enumerate(pieces, 1)]
    notes = (
        f"{cut.count} {'portions' if size.kind == 'own' else size.kind + ' portions'} of "
        f"{words_mm(size.short_mm, size.long_mm)}, cut in {WAYS[cut.way]}; the furthest piece is "
        f"{cut.off_shown_percent:g} % off the mean. Before the cut: all that is not food comes out and is counted.",
    )
    name = f"Cutting plan, {cut.count} portions"
    return Template(
        key="cutting-plan",
        name=name,
        size=f"{cut.count} pieces",
        cake=tin,
        strokes=tuple(strokes),
        labels=tuple(labels),
        notes=notes,
    )
