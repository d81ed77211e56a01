"""What the law wants said beside a list: about colours, and about sweeteners."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tinbook.facts import Additive, Facts
from tinbook.models import Book
from tinbook.models.labels import USA
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.labels.makeup import Makeup
from tinbook.plans.labels.opened import Listed, class_of, colour_named
from tinbook.plans.techniques.colours import law_said

ALCOHOL = "alcohol"
"""The care on the cards of spirits."""
ASPARTAME = ("aspartame", "e951", "e962")
POLYOLS = frozenset((
    "sorbitol", "mannitol", "isomalt", "maltitol", "lactitol", "xylitol", "erythritol", "e420", "e421", "e953", "e965",
    "e966", "e967", "e968",
))  # fmt: skip
"""Sugar alcohols by name and number. From memory."""


def warned_colours(listed: Iterable[Listed], made: Makeup, facts: Facts) -> tuple[Additive, ...]:
    """The colours the law wants a warning beside, from the house's colours and from what is bought."""
    found = {key: facts.colours[key] for key in made.additives if key in facts.colours}
    for entry in listed:
        for each in entry.every():
            if colour := colour_named(each.name, facts):
                found[colour.key] = colour
    return tuple(each for each in found.values() if each.warning)


def warnings_of(
    listed: Iterable[Listed], made: Makeup, book: Book, facts: Facts, nation: str | None
) -> tuple[Saying, ...]:
    """All of it; in the USA none of these is asked for."""
    entries = tuple(listed)
    if nation == USA:
        return ()
    law = law_said(warned_colours(entries, made, facts))
    fed = any(ALCOHOL in book.cards[name].care for name in made.eaten if name in book.cards)
    return (
        *((law,) if law else ()),
        *_sweet(entries, made, facts),
        *((saying("contains_alcohol"),) if fed else ()),
    )


def _sweet(entries: tuple[Listed, ...], made: Makeup, facts: Facts) -> Iterator[Saying]:
    sweet = [each for entry in entries for each in _sweeteners(entry, facts)]
    if sweet:
        yield saying("with_sweeteners", count=len(dict.fromkeys(sweet)))
    if any(word in ASPARTAME for word in sweet):
        yield saying("aspartame")
    mass_g = 0.0
    for entry in entries:
        if any(_is_polyol(each.name) for each in entry.every()):
            mass_g += sum(each.mass_g or 0.0 for each in made.goes if each.card in entry.cards)
    if made.finished_g and mass_g / made.finished_g > facts.numbers["polyols with a warning"].value:
        yield saying("laxative")


def _sweeteners(entry: Listed, facts: Facts) -> Iterator[str]:
    for each in entry.every():
        if each.sort and class_of(each.name, facts) == "sweetener":
            yield from (part.name.lower() for part in each.parts)


def _is_polyol(name: str) -> bool:
    return not POLYOLS.isdisjoint((*name.lower().split(), name.lower().replace(" ", "")))
