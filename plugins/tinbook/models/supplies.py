"""What is bought by size or by number and is not eaten: house/supplies.yaml."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated

from tinbook.models.packs import PackOfThings
from tinbook.models.reading import ONE_OR_MORE, Private, Text, Texts, Written, like, spelled, such_as
from tinbook.units import Measures, Misread, patterns, read_length

FLAT = ("drum", "card", "separator plate")
"""What is chosen by its shape and how wide it is."""
STICKS = ("dowel", "centre dowel", "pillar")
"""What is chosen by how thick it is, and cut to length."""
BOX, RIBBON = "box", "ribbon"
SIZED = (*FLAT, *STICKS, BOX, RIBBON)
SHAPES = ("round", "square", "oblong")
SEPARATOR_PLATE, CENTRE_DOWEL = "separator plate", "centre dowel"
ALSO_CALLED = {"board": "drum", "through-dowel": CENTRE_DOWEL, "centre-dowel": CENTRE_DOWEL}
"""What techniques also call them."""
WANTED: Mapping[str, tuple[tuple[int, ...], str]] = {
    **dict.fromkeys(FLAT, ((1, 2), "round 30 cm")),
    **dict.fromkeys(STICKS, ((2,), "6 mm x 30 cm")),
    BOX: ((3,), "36 cm x 36 cm x 15 cm"),
    RIBBON: ((1,), "15 mm"),
}
"""How many lengths the size of each has, and an example."""
_BY = re.compile(r"\s*[x×]\s*")


@dataclass(frozen=True, slots=True)
class SupplySize:
    """A shape, empty if none is written, and lengths in mm, as they were written."""

    shape: str
    sides_mm: tuple[float, ...]
    written: str


def size_written(shape: str, sides_mm: Sequence[float]) -> SupplySize:
    """A size as a line of the supplies would have it: whole centimetres as such, from 10 cm up."""
    told = " x ".join(f"{mm / 10.0:g} cm" if mm % 5.0 == 0.0 and mm >= 100.0 else f"{mm:.0f} mm" for mm in sides_mm)
    return SupplySize(shape, tuple(sides_mm), f"{shape} {told}".strip())


def cases_for(cups: str) -> str:
    """What the paper cases for a size of cup are called: `cases for standard cups`."""
    return f"cases for {cups}"


def read_supply_size(text: str, measures: Measures) -> SupplySize:
    """`round 30 cm`, `oblong 30 cm x 40 cm`, `36 cm x 36 cm x 15 cm`, `6 mm x 30 cm`, `15 mm`; raises Misread."""
    shape, at = "", 0
    word = text.partition(" ")[0].lower()
    if word.isalpha():
        if word not in SHAPES:
            raise Misread(f'"{word}" is not a shape it is sold in', f"write {', '.join(SHAPES)}", 0, len(word))
        shape, at = word, min(len(word) + 1, len(text))
    sides: list[float] = []
    for part in _split(text, at):
        start, written = part
        try:
            sides.append(read_length(written, measures).base)
        except Misread as error:
            raise type(error)(error.message, error.hint, error.start + start, error.end + start) from None
    if not 1 <= len(sides) <= 3:
        raise Misread(f'"{text}" has too many lengths', 'write something like "36 cm x 36 cm x 15 cm"', 0, len(text))
    return SupplySize(shape, tuple(sides), text)


def _split(text: str, at: int) -> list[tuple[int, str]]:
    """The lengths between the signs, each with its place."""
    parts: list[tuple[int, str]] = []
    for sign in _BY.finditer(text, at):
        parts.append((at, text[at : sign.start()]))
        at = sign.end()
    return [*parts, (at, text[at:])]


_SIZE = rf"(?:[A-Za-z]+ )?{patterns.LENGTH}(?:\s*[x×]\s*{patterns.LENGTH}){{0,2}}"
OneSize = Annotated[SupplySize, spelled(read_supply_size, like(_SIZE, "size"))]


class Supply(Written):
    """One thing that your cakes take and nobody eats, in one size."""

    what: Annotated[Text, such_as("drum", "lolly sticks", "cases for standard cups")]
    """What it is: a `drum`, `card`, `separator plate`, `box`, `dowel`, `centre dowel`, `pillar` or `ribbon`, which the
    book chooses by size, or anything else, by the name that your techniques use for it."""
    size: Annotated[OneSize | None, such_as("round 30 cm", "36 cm x 36 cm x 15 cm", "6 mm x 30 cm", "15 mm")] = None
    """Its size: the shape and width of a board, the inside of a box with its height last, the thickness and length of a
    dowel, the width of a ribbon. Left out: it comes in one size."""
    also: Annotated[Texts, such_as("[cake sticks]")] = ()
    """What else your techniques call it. Left out: it has only its own name."""
    packs: Annotated[tuple[PackOfThings, ...], ONE_OR_MORE, such_as("12", "[5, 25]", "[5 m, 25 m]")] = ()
    """How many come in a pack; for ribbon, how long a reel is. Left out: it is sold one by one."""
    found_in: Annotated[Text | None, such_as("cake-decorating shop")] = None
    """Where you buy it: the shopping list is in these groups. Left out: it comes at the end of the list."""
    kept_in: Annotated[Text | None, such_as("the dresser, bottom drawer")] = None
    """Where it is kept at home. Left out: nothing is shown."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave it out of a public site. No public page shows it anyway."""

    @property
    def name(self) -> str:
        """`drum, round 30 cm`."""
        return f"{self.what}, {self.size.written}" if self.size else self.what


class SupplyShelf(Written):
    """What your cakes take besides tins and food: boards, boxes, dowels, ribbon, cases, sticks. The shopping list goes
    by this."""

    supplies: Annotated[
        tuple[Supply, ...],
        such_as("- {what: drum, size: round 30 cm, found in: cake-decorating shop}\n- {what: lolly sticks, packs: 50}"),
    ]
    """Everything of the kind that you buy, each size by itself."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave the whole list out of a public site. No public page shows it anyway."""
