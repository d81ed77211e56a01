"""Shapes a baker writes on one line: `half egg 20 mm x 30 mm`, `round 40 mm`, an outline in mm; and cutters.

[half | flattened] ball 20 mm
egg, teardrop, cone, cylinder 20 mm x 30 mm      across x long or high
frustum 30 mm x 60 mm, top 18 mm
slab 20 mm x 30 mm x 8 mm
flattened ball 40 mm, to 50 mm x 60 mm
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from tinbook.models.reading import spelled, such_as
from tinbook.problems import nearest
from tinbook.tins.outline import inside
from tinbook.tins.path import read_path
from tinbook.tins.shape import Ring
from tinbook.units import Measures, Misread, read_length, read_number

IN_WORDS: Mapping[int, str] = {1: "one", 2: "two", 3: "three", 4: "four"}
SOLIDS: Mapping[str, tuple[str, ...]] = {
    "ball": ("across",),
    "egg": ("across", "long"),
    "cone": ("across", "high"),
    "frustum": ("across", "high"),
    "teardrop": ("across", "long"),
    "cylinder": ("across", "long"),
    "slab": ("wide", "long", "thick"),
}
"""The sizes of each solid, in the order they are written; a frustum also has its `top`."""
SHEETS: Mapping[str, tuple[str, ...]] = {
    "round": ("across",),
    "square": ("side",),
    "oval": ("wide", "high"),
    "rectangle": ("wide", "high"),
}
CUTTERS: Mapping[str, tuple[str, ...]] = {
    **SHEETS,
    "scalloped round": ("across",),
    "blossom": ("across",),
    "star": ("across",),
    "heart": ("across",),
    "hexagon": ("across",),
    "leaf": ("wide", "high"),
    "drop": ("wide", "high"),
}
"""Sheets and cutters, by shape."""
NOUNS = {"across": "diameter", "wide": "width", "high": "height", "long": "length", "thick": "thickness"}
ALONE = {"across": "how far across it is", "side": "the length of a side"}
"""What a baker is told to write, for several sizes and for one."""
LEAST_MM, MOST_MM = 0.5, 1500.0
"""Plausible lengths for a part."""

_BY = re.compile(r"\s*(?:[xX×]|\bby\b)\s*")
_TOP = re.compile(r"\s*,\s*top\s+", re.IGNORECASE)
_TO = re.compile(r"\s*,?\s+(?:pressed\s+)?to\s+|\s*,\s*(?:pressed\s+)?to\s+", re.IGNORECASE)
_UNIT = re.compile(r"[^\W\d_]+\s*$")
_SHARE = re.compile(r"[0-9]+\s*[/⁄]\s*[0-9]+\s*|[½⅓⅔¼¾⅛⅜⅝⅞]\s*")


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """A solid at the reference cake: sizes in mm as SOLIDS names them, a frustum's top last.

    `how` is "", "half" (split down its length) or "flattened": then `to_mm` is its outline, an oval.
    """

    form: str
    sizes_mm: tuple[float, ...]
    how: str = ""
    to_mm: tuple[float, ...] = ()
    written: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The outline of a sheet in mm: a simple shape with its sizes, or `rings` about (0, 0), y upwards; holes last."""

    form: str
    sizes_mm: tuple[float, ...] = ()
    rings: tuple[Ring, ...] = ()
    written: str = ""


@dataclass(frozen=True, slots=True)
class Cutter:
    """A cutter: its shape and sizes in mm; or, where it marks a part, what `share` of its width it is."""

    form: str
    sizes_mm: tuple[float, ...]
    share: float | None = None
    written: str = ""


@dataclass(frozen=True, slots=True)
class Lengths:
    """One or more lengths in mm, as `12 mm x 690 mm`."""

    mm: tuple[float, ...]
    written: str


def read_solid(text: str, measures: Measures) -> Solid:
    """A solid with its sizes; raises Misread."""
    how, at = "", 0
    for word in ("half", "flattened"):
        if re.match(rf"{word}\b", text, re.IGNORECASE):
            how = word
            at = len(word) + len(text[len(word) :]) - len(text[len(word) :].lstrip())
    form, at = _form(text, at, SOLIDS, "solid", "half egg 20 mm x 30 mm")
    end, to, top = len(text), None, None
    if found := _TO.search(text, at):
        to, end = (found.end(), len(text)), found.start()
    if found := _TOP.search(text, at, end):
        top, end = (found.end(), end), found.start()
    sizes = read_sizes(text, at, end, measures, form, SOLIDS[form])
    if (form == "frustum") != bool(top):
        if top:
            raise Misread(f"a {form} has no top of its own", "take it out, or write a frustum", top[0], top[1])
        raise Misread(
            "a frustum needs its top", 'write it after a comma, as in "frustum 30 mm x 60 mm, top 18 mm"', 0, len(text)
        )
    if top:
        sizes += read_sizes(text, top[0], top[1], measures, "top", ("across",))
    pressed: tuple[float, ...] = ()
    if to and how != "flattened":
        raise Misread("only a flattened piece is pressed to a size", 'begin with "flattened"', to[0], to[1])
    if how == "flattened" and not to:
        raise Misread(
            "what size is it pressed to?",
            'write it after a comma, as in "flattened ball 30 mm, to 40 mm x 44 mm"',
            0,
            len(text),
        )
    if to:
        pressed = read_sizes(text, to[0], to[1], measures, "outline", ("wide", "high"))
    if form in ("egg", "teardrop") and sizes[1] <= sizes[0]:
        raise Misread(f"{_a(form)} is longer than it is across", "write the width first, then the length", at, end)
    return Solid(form=form, sizes_mm=sizes, how=how, to_mm=pressed, written=text)


def read_sheet(text: str, measures: Measures) -> Sheet:
    """The outline of a sheet: a simple shape with its sizes, or a path in mm; raises Misread."""
    if re.match(r"[Mm]\s*[-+.0-9]", text):
        rings = read_path(text, 0, len(text), "part")
        if not all(inside(hole[0], rings[0]) for hole in rings[1:]):
            hint = "draw round the part first, then round each hole in it"
            raise Misread("the second outline is outside the first", hint, 0, len(text))
        x, y = ((max(side) + min(side)) / 2.0 for side in zip(*rings[0], strict=True))
        centred = tuple(tuple((point[0] - x, point[1] - y) for point in ring) for ring in rings)
        across = [2.0 * max(side) for side in zip(*centred[0], strict=True)]
        _believe(across[0], 0, len(text))
        _believe(across[1], 0, len(text))
        return Sheet("outline", (), centred, text)
    form, at = _form(text, 0, SHEETS, "sheet", "round 40 mm")
    return Sheet(form, read_sizes(text, at, len(text), measures, form, SHEETS[form]), (), text)


def read_cutter(text: str, measures: Measures) -> Cutter:
    """A cutter with its sizes, or the share of a part's width, as in `round 3/4`; raises Misread."""
    form, at = _form(text, 0, CUTTERS, "cutter", "round 40 mm")
    if _SHARE.fullmatch(text, at):
        value, _ = read_number(text, at, "3/4")
        if not 0.0 < value <= 1.0:
            raise Misread(f'"{text[at:]}" is not a fraction of the width', f'write it like "{form} 3/4"', at, len(text))
        return Cutter(form, (), value, text)
    return Cutter(form, read_sizes(text, at, len(text), measures, form, CUTTERS[form]), None, text)


def read_two(text: str, measures: Measures) -> Lengths:
    """`12 mm x 690 mm`; raises Misread."""
    return Lengths(read_sizes(text, 0, len(text), measures, "this", ("thick", "long")), text)


def read_one_or_two(text: str, measures: Measures) -> Lengths:
    """`6 mm` or `12 mm x 6 mm`; raises Misread."""
    names = ("wide", "high") if _BY.search(text) else ("across",)
    return Lengths(read_sizes(text, 0, len(text), measures, "a mark", names), text)


def read_sizes(
    text: str, start: int, end: int, measures: Measures, form: str, names: tuple[str, ...]
) -> tuple[float, ...]:
    """As many lengths, in mm, as there are `names`, in text[start:end]; a bare number takes the next one's unit.
    Raises Misread."""
    how = " x ".join(NOUNS.get(name, name) for name in names) if len(names) > 1 else ALONE.get(names[0], names[0])
    hint = f"write {how}, such as {' x '.join(('20 mm', '30 mm', '8 mm')[: len(names)])}"
    if not text[start:end].strip():
        raise Misread(f"{_a(form)} needs a size", hint, 0, len(text))
    parts, at = [], start
    for found in _BY.finditer(text, start, end):
        parts.append((at, found.start()))
        at = found.end()
    parts.append((at, end))
    if len(parts) != len(names):
        needed = f"{IN_WORDS.get(len(names), len(names))} measurement{'' if len(names) == 1 else 's'}"
        raise Misread(f"{_a(form)} needs {needed}, not {IN_WORDS.get(len(parts), len(parts))}", hint, start, end)
    unit, found_mm = "", []
    for first, last in reversed(parts):
        piece = text[first:last]
        word = _UNIT.search(piece)
        # a bare number takes the unit of the length after it
        told = piece if word or not unit else f"{piece.rstrip()} {unit}"
        unit = word[0].strip() if word else unit
        try:
            length = read_length(told, measures).base
        except Misread as error:
            edge = len(piece)
            raise type(error)(
                error.message, error.hint, first + min(error.start, edge), first + min(error.end, edge)
            ) from None
        _believe(length, first, last)
        found_mm.append(length)
    return tuple(reversed(found_mm))


def _believe(length_mm: float, start: int, end: int) -> None:
    if not LEAST_MM <= length_mm <= MOST_MM:
        how = "small" if length_mm < LEAST_MM else "large"
        raise Misread(f"{length_mm:g} mm is too {how} for a part", "it should be between 0.5 mm and 150 cm", start, end)


def _form(text: str, at: int, known: Mapping[str, object], what: str, example: str) -> tuple[str, int]:
    """The word for a form at `at`, and where its sizes begin."""
    words = re.match(r"[^\d,½⅓⅔¼¾⅛⅜⅝⅞]*", text[at:])
    word = " ".join((words[0] if words else "").lower().split())
    if word not in known:
        near = nearest(word, known) if word else None
        hint = f'did you mean "{near}"?' if near else f'write one of: {", ".join(known)}; as in "{example}"'
        message = f'there is no {what} called "{word}"' if word else f"which {what} is it?"
        raise Misread(message, hint, at, max(at + len((words[0] if words else "").rstrip()), at + 1))
    return word, at + (words.end() if words else 0)


def _a(form: str) -> str:
    return form if form in ("this", "a mark") else f"{'an' if form[0] in 'aeiou' else 'a'} {form}"


SolidText = Annotated[Solid, spelled(read_solid), such_as("half egg 20 mm x 30 mm")]
SheetText = Annotated[Sheet, spelled(read_sheet), such_as("round 40 mm")]
CutterText = Annotated[Cutter, spelled(read_cutter), such_as("round 40 mm")]
TwoLengths = Annotated[Lengths, spelled(read_two), such_as("12 mm x 690 mm")]
MarkText = Annotated[Lengths, spelled(read_one_or_two), such_as("6 mm")]
