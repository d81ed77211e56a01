"""The colours of the house (house/colours.yaml) and its cutters (house/cutters.yaml)."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated, ClassVar

from tinbook.models.forms import CutterText
from tinbook.models.mixture import Take, read_take
from tinbook.models.reading import (
    LINE,
    ONE_OR_MORE,
    Private,
    Text,
    Texts,
    Written,
    WrittenLine,
    YesNo,
    spelled,
    such_as,
    whole_number,
)
from tinbook.units import Measures, Misread

_HEX = re.compile(r"#?([0-9a-fA-F]{6})")


def _swatch(text: str, _: Measures) -> str:
    found = _HEX.fullmatch(text)
    if found is None:
        hint = 'write six figures for red, green and blue in quotes, such as "#B3261E"'
        raise Misread(f'"{text}" is not the colour of a swatch', hint, 0, len(text))
    return f"#{found[1].upper()}"


class Colour(Written):
    """A colour: what is kneaded into 100 g of paste, how it looks, and what becomes of it.

    `additives` are the E numbers on the pots, or `none`; None where nobody has said.
    """

    needed = frozenset(("per 100 g", "additives"))

    about: Text | None = None
    per_100_g: Annotated[
        tuple[Annotated[Take, spelled(read_take, LINE)], ...],
        ONE_OR_MORE,
        such_as("- 2 g gel food colour, poppy red"),
    ]
    swatch: Annotated[str, spelled(_swatch), such_as('"#B3261E"')]
    deepens: YesNo = False
    fades: YesNo = False
    browns: YesNo = False
    additives: Annotated[Texts | None, such_as("[E129]")] = None
    private: Private = False


class ColourCards(Written):
    """colours.yaml."""

    colours: Annotated[Mapping[str, Colour], such_as('{lamp red: {per 100 g: 2 g gel food colour, swatch: "#B3261E"}}')]
    private: Private = False


class OwnedCutter(WrittenLine):
    """A cutter in the drawer."""

    chief: ClassVar[str] = "cutter"

    cutter: CutterText
    have: Annotated[int, whole_number(0, 999)] = 1
    note: Text | None = None
    private: Private = False


class CutterDrawer(Written):
    """cutters.yaml."""

    cutters: Annotated[tuple[OwnedCutter, ...], such_as("- round 40 mm")]
    private: Private = False
