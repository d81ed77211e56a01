"""What the house calls a portion: width and length of each kind, seen from above (`portions` in house/finish.yaml)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from tinbook.models.reading import like, spelled, such_as
from tinbook.units import Measures, Misread, patterns, read_length

EXAMPLE = "25 mm x 50 mm"


def read_sides(text: str, measures: Measures) -> tuple[float, float]:
    """Both sides in mm. Raises Misread, with its place in the whole text."""
    one, by, other = text.replace("×", "x").partition(" x ")
    if not by or " x " in other:
        raise Misread(f'"{text}" is not two lengths', f'write width and length, such as "{EXAMPLE}"', 0, len(text))
    found = []
    for part, at in ((one, 0), (other, len(one + by))):
        try:
            found.append(read_length(part, measures).base)
        except Misread as error:
            start, end = at + error.start, at + max(error.end, error.start)
            raise Misread(error.message, error.hint, start, end) from None
    return found[0], found[1]


Sides = Annotated[
    tuple[float, float], spelled(read_sides, like(rf"{patterns.LENGTH}\s+[x×]\s+{patterns.LENGTH}")), such_as(EXAMPLE)
]
"""Width and length in mm."""


Portions = Mapping[str, Sides]
"""The sizes of portions by name: finger, dessert, or one of the house's own."""
