"""The colours and the cutters of the house: house/colours.yaml and house/cutters.yaml."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from tinbook.facts import Facts
from tinbook.loading.intake import Intake, under
from tinbook.models import Colour, CutterDrawer, OwnedCutter, Part, Repeat, Technique
from tinbook.models.register import kinds
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.parts import colour_flaws

COLOURS, CUTTERS = kinds()["colours"], kinds()["cutters"]


def read_colours(intake: Intake, facts: Facts) -> tuple[dict[str, Colour], frozenset[str]]:
    """The colours that can be used, and the names of those that cannot."""
    data = intake.data_of(COLOURS)
    if data is None:
        return {}, frozenset()
    written = data.get(COLOURS.key)
    names = written if isinstance(written, Mapping) else {}
    broken = intake.spoils(COLOURS.address, (COLOURS.key,), names)
    sound: dict[str, Colour] = {}
    for name, path, colour in intake.cards(COLOURS, data):
        flaws = tuple(colour_flaws(colour, facts)) if colour else ()
        intake.tell(COLOURS.address, under(path, flaws))
        if colour is None or flaws or name in broken:
            broken.add(name)
        else:
            sound[name] = colour
    return sound, frozenset(broken)


def read_cutters(intake: Intake) -> tuple[OwnedCutter, ...]:
    """The cutters; none where one of them cannot be read."""
    data = intake.data_of(CUTTERS)
    drawer: CutterDrawer | None = None if data is None else intake.whole(CUTTERS, data)
    return drawer.cutters if drawer else ()


def lost_words(intake: Intake, technique: Technique, spoilt: Spoilt, colours: Collection[str]) -> frozenset[str]:
    """A technique's pastes and colours that the book may lack only because of a problem reported elsewhere."""
    used: tuple[Part | Repeat, ...] = (*technique.parts, *technique.repeats)
    lost = {*colours, *spoilt.names}
    lost |= {
        address.rpartition("/")[2] for address in (*intake.broken, *intake.refused) if address.startswith("mixtures/")
    }
    if spoilt.more:
        lost |= {part.paste for part in used if part.paste}
    address = COLOURS.address
    if address in intake.refused or (address in intake.sources and address not in intake.documents):
        lost |= {part.colour for part in used if part.colour}
    return frozenset(lost)
