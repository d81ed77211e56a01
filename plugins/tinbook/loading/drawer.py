"""The colours and the cutters of the house: house/colours.yaml and house/cutters.yaml."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.loading.private import public
from tinbook.models import Colour, ColourCards, CutterDrawer, OwnedCutter, Part, Repeat, Technique
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.parts import colour_flaws

COLOURS, CUTTERS = "house/colours", "house/cutters"


def read_colours(intake: Intake, facts: Facts) -> tuple[dict[str, Colour], frozenset[str]]:
    """The colours that can be used, and the names of those that cannot."""
    data = intake.open(COLOURS) if COLOURS in intake.sources else None
    if data is None:
        return {}, frozenset()
    written = data.get("colours")
    cards = written if isinstance(written, Mapping) else {}
    broken = intake.spoils(COLOURS, ("colours",), cards)
    found: dict[str, Colour] = {}
    for name, item in cards.items():
        path = ("colours", name)
        colour = intake.part(COLOURS, Colour, item, f'the colour "{name}"', path)
        flaws = tuple(colour_flaws(colour, facts)) if colour else ()
        intake.tell(COLOURS, [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws])
        if colour is None or flaws or name in broken:
            broken.add(name)
        else:
            found[name] = colour
    rest = {**data, "colours": {}} if isinstance(written, Mapping) else data
    intake.part(COLOURS, ColourCards, rest, "the list of colours", ())
    return found, frozenset(broken)


def read_cutters(intake: Intake) -> tuple[OwnedCutter, ...]:
    """The cutters; none where one of them cannot be read."""
    data = intake.open(CUTTERS) if CUTTERS in intake.sources else None
    if data is None:
        return ()
    drawer = intake.part(CUTTERS, CutterDrawer, data, "the list of cutters", ())
    return drawer.cutters if drawer else ()


def lost_words(intake: Intake, technique: Technique, spoilt: Spoilt, colours: Collection[str]) -> frozenset[str]:
    """Pastes and colours of a technique that the book may lack only because of a problem told elsewhere."""
    used: tuple[Part | Repeat, ...] = (*technique.parts, *technique.repeats)
    lost = {*colours, *spoilt.names}
    lost |= {
        address.rpartition("/")[2] for address in (*intake.broken, *intake.refused) if address.startswith("mixtures/")
    }
    if spoilt.more:
        lost |= {each.paste for each in used if each.paste}
    if COLOURS in intake.refused or (COLOURS in intake.sources and COLOURS not in intake.documents):
        lost |= {each.colour for each in used if each.colour}
    return frozenset(lost)


def public_colours(colours: Mapping[str, Colour], all_private: bool) -> dict[str, Colour]:
    """The colours as a site may show them: what is private keeps its swatch and its additives, and loses its recipe."""
    held = {"about": None, "per_100_g": ()}
    return {
        name: colour.model_copy(update=held) if all_private or public(colour) is None else public(colour) or colour
        for name, colour in colours.items()
    }
