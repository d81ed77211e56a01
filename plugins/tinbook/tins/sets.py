"""Sets of one shape in several sizes: `set of round 15, 20, 25 cm x 7.5 cm`. The last size gives the unit and depth."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from tinbook.tins.reading import read_tin
from tinbook.tins.tin import Tin
from tinbook.units import Misread, Sold

EXAMPLE = "set of round 15, 20, 25 cm x 7.5 cm"

_SET = re.compile(r"\s*set\s+of\s+", re.IGNORECASE)
_SHAPE = re.compile(r"[^\d½⅓⅔¼¾⅛⅜⅝⅞,]+")
_UNIT = re.compile(r"(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞])\s*(mm|cm|inches|inch|in|[\"″”])")


def read_tins(
    text: str, names: Mapping[str, Tin] = MappingProxyType({}), sold: Sold = "cm"
) -> tuple[tuple[int, Tin], ...]:
    """How many of each tin: one of each in a set, small to large as written, or what read_tin reads.

    Raises units.Misread, with its place in the whole text.
    """
    begun = _SET.match(text)
    if begun is None:
        return (read_tin(text, names, sold),)
    shape = _SHAPE.match(text, begun.end())
    if shape is None:
        raise Misread("a set of what?", f'write "{EXAMPLE}"', 0, len(text.rstrip()))
    parts, at = [], shape.end()
    for part in text[at:].split(","):
        parts.append((at, part))
        at += len(part) + 1
    if len(parts) < 2:
        raise Misread("a set is more than one tin", f'write "{EXAMPLE}"', 0, len(text.rstrip()))
    unit = _UNIT.search(parts[-1][1])
    # The last first, as it gives the unit and depth.
    last, *most = [
        _member(text, shape[0], at, part, unit[1] if unit else "", sold) for at, part in (parts[-1], *parts[:-1])
    ]
    return tuple((1, replace(tin, depth_mm=tin.depth_mm or last.depth_mm)) for tin in (*most, last))


def _member(text: str, shape: str, at: int, part: str, unit: str, sold: Sold) -> Tin:
    """One tin of the set, from its size; a bare number takes the unit of the last size."""
    bare = not any(sign.isalpha() or sign in '"″”' for sign in part.replace("x", " "))
    lead = len(part) - len(part.lstrip())
    written = part.strip()
    try:
        count, tin = read_tin(f"{shape.strip()} {written}{f' {unit}' if bare else ''}", sold=sold)
    except Misread as wrong:
        # The shape and a space were put before the size.
        off = at + lead - len(shape.strip()) - 1
        start, end = (min(max(edge + off, at + lead), at + len(part.rstrip())) for edge in (wrong.start, wrong.end))
        shaped = wrong.end <= len(shape.strip())
        if shaped:
            start, end = text.index(shape.strip()), text.index(shape.strip()) + len(shape.strip())
        raise type(wrong)(wrong.message, wrong.hint, start, max(start, end)) from None
    if count != 1:
        raise Misread("a set has one tin of each size", f'write "{EXAMPLE}"', 0, at)
    return tin
