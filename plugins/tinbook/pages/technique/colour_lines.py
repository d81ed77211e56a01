"""Colours of a decoration in lines: grams of paste and of each pot, what becomes of them, what the law wants."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tinbook.facts import Additive
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.figures import pot_g, weight_g
from tinbook.plans.techniques.colours import Colouring, ColourNeed, Pot

LABEL = "In the UK and EU these words go on the label; your local law has the last word."


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourLine:
    """Paste of one colour: grams, which, its pots for so much, its swatch (empty for none), what to mind."""

    total: str
    name: str
    paste: str
    pots: tuple[str, ...] = ()
    swatch: str = ""
    label: str = ""
    mind: str = ""
    warning: str = ""


def colour_line(need: ColourNeed) -> ColourLine:
    """So much of a paste in a colour."""
    total, colour = weight_g(need.mass_g), need.colour
    if colour is None:
        return ColourLine(total=total, name="Uncoloured", paste=need.paste.name)
    return ColourLine(
        total=total,
        name=formats.title(colour.name),
        paste=need.paste.name,
        pots=tuple(_pot(pot, need.mass_g) for pot in colour.pots),
        swatch=colour.swatch,
        label=colour.label,
        mind=minded(colour),
        warning=f"warning by law: {spell(colour.law)}" if colour.law else "",
    )


def _pot(pot: Pot, paste_g: float) -> str:
    mass_g = pot.for_g(paste_g)
    if mass_g is None:
        return f"{pot.written} for 100 g"
    return ", ".join(word for word in (f"{pot_g(mass_g)} g {pot.name}", pot.shade) if word)


def minded(colour: Colouring) -> str:
    """What becomes of a colour, in words; empty for nothing."""
    says = {"deepens on standing": colour.deepens, "fades in light": colour.fades, "browns when baked": colour.browns}
    mind = [words for words, true in says.items() if true]
    if colour.additives is None:
        mind.append("additives unknown: read the pot")
    return formats.sentence(mind) if mind else ""


def law_lines(needs: Iterable[ColourNeed]) -> tuple[str, ...]:
    """What the law wants beside each colour that carries a warning, an additive a line."""
    named: dict[str, tuple[Additive, list[str]]] = {}
    for need in needs:
        if need.colour:
            for additive in need.colour.warned:
                named.setdefault(additive.key, (additive, []))[1].append(need.colour.name)
    return tuple(
        f"{formats.title(formats.sentence(dict.fromkeys(names)))} holds {key} ({additive.name}): {additive.warning}. "
        f"{LABEL}"
        for key, (additive, names) in named.items()
    )


def mixed(lines: Iterable[ColourLine]) -> tuple[tuple[str, str], ...]:
    """Colours for a sheet: a heading and the rest in words."""
    return tuple((f"{line.name}, {line.total} g", _in_words(line)) for line in lines)


def _in_words(line: ColourLine) -> str:
    return "; ".join(words for words in (line.paste, *line.pots, line.mind, line.warning) if words) + "."
