"""The colours of the house (house/colours.yaml) and its cutters (house/cutters.yaml)."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated, ClassVar

from tinbook.models.forms import CutterText
from tinbook.models.mixture import Amount
from tinbook.models.reading import (
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
        hint = 'write six hex digits for red, green and blue, in quotes, such as "#B3261E"'
        raise Misread(f'"{text}" is not a colour code', hint, 0, len(text))
    return f"#{found[1].upper()}"


Pots = Annotated[tuple[Amount, ...], ONE_OR_MORE]
"""What goes into a base, from one pot or more."""


class Colour(Written):
    """One colour: what goes into white paste and into other bases, how it looks, and how it changes."""

    needed = frozenset(("per 100 g", "in buttercream", "in batter", "in paint", "additives"))

    about: Annotated[Text | None, such_as("The bands of the lighthouse.")] = None
    """A line about it. Left out: nothing is shown."""
    per_100_g: Annotated[
        tuple[Amount, ...],
        ONE_OR_MORE,
        such_as("2 g gel food colour, poppy red", "- 2.4 g gel food colour, poppy red\n- 0.1 g gel food colour, brown"),
    ]
    """What you knead into 100 g of white paste, from one pot or more."""
    in_buttercream: Annotated[Pots, such_as("0.9 g gel food colour, poppy red")] = ()
    """What you beat into 100 g of buttercream for the same colour. Left out: coats in this colour are mixed by eye."""
    in_batter: Annotated[Pots, such_as("0.4 g gel food colour, poppy red")] = ()
    """What you fold into 100 g of batter for the same colour. Left out: batter in this colour is mixed by eye."""
    in_paint: Annotated[Pots, such_as("20 g gel food colour, poppy red")] = ()
    """What you stir into 100 g of whatever you thin paint with. Left out: you do not paint with it."""
    swatch: Annotated[str, spelled(_swatch), such_as('"#B3261E"')]
    """How it looks on a screen: six hex digits for red, green and blue, in quotes."""
    deepens: Annotated[YesNo, such_as("yes")] = False
    """Whether it darkens as it stands."""
    fades: Annotated[YesNo, such_as("yes")] = False
    """Whether it fades in the light."""
    browns: Annotated[YesNo, such_as("yes")] = False
    """Whether it browns in the oven."""
    additives: Annotated[Texts | None, such_as("[E129]", "none")] = None
    """The E numbers on the pots, or `none`. If the law requires a warning, it is shown wherever the colour is used.
    Left out: unknown, and the page says so."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave it out of a public site. A part in that colour then shows a number instead of its name."""

    @property
    def every_pot(self) -> tuple[Amount, ...]:
        """What goes into any base."""
        return (*self.per_100_g, *self.in_buttercream, *self.in_batter, *self.in_paint)


class ColourCards(Written):
    """The colours you mix, by the names your techniques use for them."""

    colours: Annotated[Mapping[str, Colour], such_as('{lamp red: {per 100 g: 2 g gel food colour, swatch: "#B3261E"}}')]
    """Each colour under the name your techniques use for it."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave the whole of it out of a public site."""


class OwnedCutter(WrittenLine):
    """One cutter in the drawer. If its shape and size are all there is to say, write them without a key."""

    chief: ClassVar[str] = "cutter"

    cutter: Annotated[CutterText, such_as("round 40 mm", "oval 25 mm x 38 mm")]
    """Its shape and size."""
    have: Annotated[int, whole_number(0, 999), such_as("2")] = 1
    """How many you own. Write `0` for a cutter you know of but would have to borrow."""
    note: Annotated[Text | None, such_as("One scallop is bent.")] = None
    """A short note about it. Left out: nothing is shown."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave it out of a public site."""


class CutterDrawer(Written):
    """The cutters in your drawer."""

    cutters: Annotated[tuple[OwnedCutter, ...], such_as("- round 40 mm\n- {cutter: star 30 mm, have: 0}")]
    """Every cutter you own, one to a line. List the cutters in a set one by one."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave the whole of it out of a public site."""
