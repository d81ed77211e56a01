"""The house's colours on parts: how much of each pot for how much paste, what the law warns about, what fades."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass

from tinbook.facts import Additive, Facts
from tinbook.models import Book, Colour, Take, Technique
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Unweighable, mass_of
from tinbook.plans.techniques.pastes import Paste

BASE_G = 100.0
"""The paste, or the other base, a colour's recipe is for, g."""
BUTTERCREAM, BATTER, PAINT = "buttercream", "batter", "paint"
BASES = (BUTTERCREAM, BATTER, PAINT)
"""What a colour may be mixed into besides paste."""
_LINEAR_BELOW, _BLACK_OR_WHITE = 0.04045, 0.05


@dataclass(frozen=True, slots=True)
class Pot:
    """One pot of a colour: what it is, its shade, grams for 100 g of its base (None if its card gives no weight)."""

    name: str
    shade: str
    per_100_g: float | None
    written: str

    def for_g(self, mass_g: float) -> float | None:
        """Grams for this much paste."""
        return None if self.per_100_g is None else self.per_100_g * mass_g / BASE_G


@dataclass(frozen=True, slots=True, kw_only=True)
class Colouring:
    """A colour of the house: its pots for paste, those for `others` of BASES where it has any, swatch, how it changes,
    its additives (None: nobody has said)."""

    name: str
    pots: tuple[Pot, ...]
    others: Mapping[str, tuple[Pot, ...]]
    swatch: str
    label: str
    contrast: float
    deepens: bool
    fades: bool
    browns: bool
    additives: tuple[str, ...] | None
    warned: tuple[Additive, ...]

    @property
    def law(self) -> Saying | None:
        """What the law requires beside its name; None for nothing."""
        return law_said(self.warned)

    @classmethod
    def called(cls, name: str | None, book: Book, facts: Facts) -> Colouring | None:
        """The colour by that name; None for no colour."""
        return colouring(name, book.colours[name], book, facts) if name is not None else None


@dataclass(frozen=True, slots=True)
class ColourNeed:
    """An amount of a paste in a colour (None: uncoloured)."""

    paste: Paste
    colour: Colouring | None
    mass_g: float

    @property
    def law(self) -> Saying | None:
        """What the law requires beside its name; None for nothing."""
        return self.colour.law if self.colour else None


def colouring(name: str, colour: Colour, book: Book, facts: Facts) -> Colouring:
    """A colour with its sums done."""
    pots = tuple(_pot(take, book, facts) for take in colour.per_100_g)
    others = {base: tuple(_pot(take, book, facts) for take in getattr(colour, f"in_{base}")) for base in BASES}
    additives = None if colour.additives is None else tuple(key for key in colour.additives if key != "none")
    warned = tuple(facts.colours[key] for key in additives or () if facts.colours[key].warning)
    label, ratio = label_on(colour.swatch)
    return Colouring(
        name=name,
        pots=pots,
        others={base: made for base, made in others.items() if made},
        swatch=colour.swatch,
        label=label,
        contrast=ratio,
        deepens=colour.deepens,
        fades=colour.fades,
        browns=colour.browns,
        additives=additives,
        warned=warned,
    )


def law_said(additives: Iterable[Additive]) -> Saying | None:
    """What the law requires beside some additives, those with the same phrase together; None for nothing."""
    by_warning: dict[str, dict[str, str]] = {}
    for additive in additives:
        if additive.warning:
            by_warning.setdefault(additive.warning, {})[additive.key] = additive.name
    phrases = tuple((warning, tuple(names.items())) for warning, names in by_warning.items())
    return saying("law", phrases=phrases) if phrases else None


def technique_colours(technique: Technique) -> tuple[str, ...]:
    """The colours of its parts and marks, each once."""
    named = (*(part.colour for part in technique.parts), *(repeat.colour for repeat in technique.repeats))
    return tuple(dict.fromkeys(name for name in named if name))


def technique_law(technique: Technique, book: Book, facts: Facts) -> Saying | None:
    """What the law requires beside the colours of its parts and marks; None for nothing."""
    names = dict.fromkeys(name for name in technique_colours(technique) if name in book.colours)
    keys = dict.fromkeys(key for name in names for key in book.colours[name].additives or () if key in facts.colours)
    return law_said(facts.colours[key] for key in keys)


def _pot(take: Take, book: Book, facts: Facts) -> Pot:
    name = book.house_word(take.name)
    mass_g = take.quantity.base if take.quantity.dimension == "mass" else None
    if name is not None:
        with suppress(Unweighable):
            mass_g = mass_of(take, name, book, facts)
    return Pot(name or take.name, take.wanted, mass_g, take.written)


def colour_needs(used: Iterable[tuple[Paste, Colouring | None, float]]) -> tuple[ColourNeed, ...]:
    """Grams by paste and colour, in the order they first appear."""
    needs: dict[tuple[Paste, str | None], tuple[Colouring | None, float]] = {}
    for paste, colour, mass_g in used:
        key = (paste, colour.name if colour else None)
        needs[key] = (colour, needs.get(key, (None, 0.0))[1] + mass_g)
    return tuple(ColourNeed(paste, colour, mass_g) for (paste, _), (colour, mass_g) in needs.items())


def luminance(swatch: str) -> float:
    """Relative luminance of `#RRGGBB` by WCAG 2.2, which defines it as 0 for black and 1 for white.

    >>> luminance("#000000"), round(luminance("#FFFFFF"), 9)
    (0.0, 1.0)
    """
    channels = (int(swatch[start : start + 2], 16) / 255.0 for start in (1, 3, 5))
    red, green, blue = (
        value / 12.92 if value <= _LINEAR_BELOW else ((value + 0.055) / 1.055) ** 2.4 for value in channels
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def label_on(swatch: str) -> tuple[str, float]:
    """Whether black or white is easier to read on a swatch, and its contrast: the better one is 4.58 or more."""
    light = luminance(swatch) + _BLACK_OR_WHITE
    black, white = light / _BLACK_OR_WHITE, (1.0 + _BLACK_OR_WHITE) / light
    return ("black", black) if black >= white else ("white", white)
