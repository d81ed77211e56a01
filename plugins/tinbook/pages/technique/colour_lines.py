"""Colours of a decoration in lines: grams of paste and of each pot, how they change, what the law requires."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tinbook.facts import Additive
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.figures import exact, pot_g, weight_g
from tinbook.plans.techniques.colours import Colouring, ColourNeed, Pot

LABEL = "In the UK and EU these words go on the label; check the law where you are."


@dataclass(frozen=True, slots=True)
class PotLine:
    """One pot: its figure and its words, and one person's amount before rounding; both empty if its weight is
    unknown."""

    figure: str
    words: str
    for_one: str

    @property
    def said(self) -> str:
        """The whole line."""
        return f"{self.figure}{self.words}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourLine:
    """Paste in one colour: grams, which, its pots for that much, its swatch (empty for none), what to watch for.

    `grams_for_one`: what the browser multiplies by the number of people.
    """

    total: str
    grams_for_one: str
    name: str
    paste: str
    pots: tuple[PotLine, ...] = ()
    swatch: str = ""
    label: str = ""
    mind: str = ""
    warning: str = ""


def colour_line(need: ColourNeed, people: int = 1) -> ColourLine:
    """An amount of paste in a colour, for all of `people`."""
    total, colour, for_one = weight_g(need.mass_g), need.colour, exact(need.mass_g / people)
    if colour is None:
        return ColourLine(total=total, grams_for_one=for_one, name="Uncoloured", paste=need.paste.name)
    return ColourLine(
        total=total,
        grams_for_one=for_one,
        name=formats.title(colour.name),
        paste=need.paste.name,
        pots=tuple(_pot(pot, need.mass_g, people) for pot in colour.pots),
        swatch=colour.swatch,
        label=colour.label,
        mind=minded(colour),
        warning=f"statutory warning: {spell(colour.law)}" if colour.law else "",
    )


def _pot(pot: Pot, paste_g: float, people: int) -> PotLine:
    mass_g = pot.for_g(paste_g)
    if mass_g is None:
        return PotLine("", f"{pot.written} for 100 g", "")
    words = ", ".join(word for word in (f" g {pot.name}", pot.shade) if word)
    return PotLine(pot_g(mass_g), words, exact(mass_g / people))


def minded(colour: Colouring) -> str:
    """How a colour changes, in words; empty for nothing."""
    says = {"deepens on standing": colour.deepens, "fades in light": colour.fades, "browns when baked": colour.browns}
    mind = [words for words, true in says.items() if true]
    if colour.additives is None:
        mind.append("additives unknown: read the pot")
    return formats.sentence(mind) if mind else ""


def law_lines(needs: Iterable[ColourNeed]) -> tuple[str, ...]:
    """What the law requires beside each colour that carries a warning, one line for each additive."""
    named: dict[str, tuple[Additive, list[str]]] = {}
    for need in needs:
        if need.colour:
            for additive in need.colour.warned:
                named.setdefault(additive.key, (additive, []))[1].append(need.colour.name)
    return tuple(
        f"{formats.title(formats.sentence(dict.fromkeys(names)))} contains {key} ({additive.name}): "
        f"{additive.warning}. {LABEL}"
        for key, (additive, names) in named.items()
    )


def mixed(lines: Iterable[ColourLine], ready: Iterable[str] = ()) -> tuple[tuple[str, str], ...]:
    """Colours for a sheet: a heading and the rest in words. If there is only one paste, it is not named again where it
    is told to have it `ready`."""
    told = tuple(lines)
    pastes = {line.paste for line in told}
    known = pastes if len(pastes) == 1 and pastes <= set(ready) else set()
    return tuple((f"{line.name}, {line.total} g", _in_words(line, line.paste not in known)) for line in told)


def _in_words(line: ColourLine, of_which: bool) -> str:
    pots = (pot.said for pot in line.pots)
    said = "; ".join(words for words in (line.paste if of_which else "", *pots, line.mind, line.warning) if words)
    return f"{said}." if said else ""
