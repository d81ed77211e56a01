"""The answer to a tin that cannot be read: what is wrong, where, and what to write instead."""

from __future__ import annotations

import re

from tinbook.problems import nearest
from tinbook.tins.register import SHAPES
from tinbook.tins.shape import NamedSize, Shape, SizeFault
from tinbook.tins.words import NUMERAL, SPOKEN, WORD, listed, named_size, trimmed
from tinbook.units import Misread, read_unit

# A length in mm and its span in the text.
Length = tuple[float, int, int]
_A_LENGTH = re.compile(rf"[{NUMERAL}]\s*(?:mm|cm|in|inch|inches|[\"″”])(?![^\W\d_])", re.IGNORECASE)
_NOT_SHAPES = {"x", "by", "deep", "tin", "tins", "pan", "pans", "tray", "trays", "depth"}


def of_fault(fault: SizeFault, start: int, end: int) -> Misread:
    """The error for a size that cannot be right."""
    return Misread(fault.message, fault.hint, start, end)


def no_shape(text: str) -> Misread:
    """The error for a text without a word for a shape."""
    start, end = trimmed(text, 0, len(text))
    if start == end:
        return Misread("no tin is written here", 'write a shape and its size: "round 20 cm"', 0, len(text))
    shapes = f"the shapes are {listed(SHAPES)}"
    for word in WORD.finditer(text):
        said = word[0].casefold()
        if said in _NOT_SHAPES or _is_unit(said):
            continue
        for shape in SHAPES.values():
            if named := named_size(shape, said):
                hint = f'did you mean "{named.name} {shape.key}"?'
                return Misread(f'"{word[0]}" does not name a shape', hint, *word.span())
        near = nearest(said, SPOKEN)
        hint = f'did you mean "{near}"?' if near else shapes
        return Misread(f'there is no tin shape called "{word[0]}"', hint, *word.span())
    return Misread("what shape is the tin?", f'put the shape first: "round 20 cm"; {shapes}', start, end)


def _is_unit(word: str) -> bool:
    try:
        return read_unit(word, 0) is not None
    except Misread:
        return True


def not_before(text: str, start: int, rest: int, end: int, word: str, shape: Shape) -> Misread:
    """The error for anything before the shape that is neither a count nor a named size.

    rest: where the text goes on after a count.
    """
    said = text[start:end]
    if _A_LENGTH.search(said):
        hint = f'write "{shape.example}"'
        return Misread(f'the size is written before "{word}"; put the shape first', hint, start, end)
    if not any(letter.isalpha() for letter in said):
        return Misread(f'"{said}" is not a number of tins', "tins come whole: write 1, 2 or 3", start, end)
    # In `3 lb loaf` the 3 is not a count.
    start = start if _is_unit(text[rest:end]) else rest
    said = text[start:end]
    if shape.named:
        near = nearest(said, [name for named in shape.named for name in (named.name, *named.also)])
        sizes = f"the sizes are {listed(named.name for named in shape.named)}"
        hint = f'did you mean "{near}"?' if near else sizes
        return Misread(f'there is no {shape.noun} called "{said}"', hint, start, end)
    hint = f'start with the shape, or with how many in figures: "2 {shape.example}"'
    return Misread(f'"{said}" is not understood before "{word}"', hint, start, end)


def cups_or_tray(tin_word: re.Match[str], shape: Shape, named: NamedSize | None) -> Misread:
    """The error for a count before `muffin tins`, which may mean cups or trays."""
    tray = f"{shape.holes(named.sizes_mm)} {named.name} {shape.key}" if named else shape.example
    hint = f'count the {shape.key}: one tray is "{tray}"'
    return Misread(f'"{tin_word[1]}" could mean a cup or a whole tray', hint, *tin_word.span(1))


def wrong_extras(shape: Shape, start: int, end: int) -> Misread:
    """The error for a base or a tube with too few or too many sizes."""
    names = listed(size.name for size in shape.sizes[shape.main :])
    hint = f'write "{shape.extra_example}"'
    return Misread(f'"{shape.extra_word}" should be followed by the {names}', hint, start, end)


def wrong_number(text: str, at: int, shape: Shape, lengths: list[Length], depth: Length | None) -> Misread:
    """The error for too few or too many sizes."""
    if extra := lengths[shape.main + (depth is None) :]:
        hint = f'write "{shape.extra_example or shape.example}"'
        return Misread(f"too many sizes for a {shape.noun}", hint, extra[0][1], extra[-1][2])
    start, end = trimmed(text, 0, len(text))
    if not lengths and shape.in_trays:
        sizes = listed(named.name for named in shape.named)
        return Misread("which cups?", f'there are {sizes}: write "{shape.example}"', start, end)
    missing = shape.sizes[len(lengths)].name
    too = " too" if lengths else ""
    return Misread(f"a {shape.noun} needs its {missing}{too}", f'write "{shape.example}"', start, end)
