"""The words bakers use for a tin: for shapes, for sizes with a name, and what goes round them."""

from __future__ import annotations

import re
from collections.abc import Iterable

from tinbook.tins.register import SHAPES, SOLD_IN
from tinbook.tins.shape import NamedSize, Shape
from tinbook.units import Sold

# What a number can start with.
NUMERAL = "0-9½⅓⅔¼¾⅛⅜⅝⅞"
WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")


def _spoken() -> dict[str, tuple[Shape, NamedSize | None]]:
    """Every word for a shape, and for a shape with its size (`muffins`)."""
    words: dict[str, tuple[Shape, NamedSize | None]] = {}
    for shape in SHAPES.values():
        words.update((word, (shape, None)) for word in shape.words)
        words.update((noun, (shape, named)) for named in shape.named for noun in named.nouns)
    return words


SPOKEN = _spoken()
# Longest first; plain letters only, as a dotless i would match `ring` and not be in the list.
SHAPE_WORD = re.compile(
    rf"(?<![^\W_])(?ai:{'|'.join(sorted(map(re.escape, SPOKEN), key=len, reverse=True))})(?![^\W_])"
)


def spoken(word: str, sold: Sold) -> tuple[Shape, NamedSize | None]:
    """The shape that a word of SPOKEN means, with its size if the word gives that too."""
    shape, named = SPOKEN[word.casefold()]
    shape = SOLD_IN[sold][shape.key]
    return shape, named_size(shape, named.name) if named else None


def named_size(shape: Shape, words: str) -> NamedSize | None:
    """The named size these words are, or None."""
    spaced = re.sub(r"(?<=[0-9])(?=[^\W\d_])", " ", words.replace("-", " "))
    said = re.sub(r"\b(lbs|pounds?)\b", "lb", " ".join(spaced.casefold().split()))
    return next((named for named in shape.named if said in (named.name, *named.also)), None)


def trimmed(text: str, start: int, end: int) -> tuple[int, int]:
    """The span without the spaces round it."""
    inside = text[start:end]
    start += len(inside) - len(inside.lstrip())
    return start, start + len(inside.strip())


def listed(words: Iterable[str]) -> str:
    """Words as a list in a sentence: `a, b and c`."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last
