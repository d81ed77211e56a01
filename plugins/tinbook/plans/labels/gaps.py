"""What is missing before a list of ingredients is complete, and where to write it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Card
from tinbook.models.labels import EU, NORTHERN_IRELAND, USA
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.labels.opened import colour_named

INGREDIENTS, COLOURS, LABELS = "house/ingredients", "house/colours", "house/labels"
NOT_ALLOWED = {"E171": (NORTHERN_IRELAND, EU), "E122": (USA,), "E124": (USA,)}
"""Colours that must not be used where the house sells: `titanium dioxide` of the rules; for the USA from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """One thing missing: what, and what to write, in words; the file it goes in and the path in it."""

    what: Saying
    cure: Saying
    address: str
    path: tuple[str, ...] = ()


def uncounted_gap(name: str) -> Gap:
    """Something a technique uses, and the sums of the cake do not."""
    return Gap(
        what=saying("gap_uncounted", name=name), cure=saying("cure_uncounted"), address=INGREDIENTS,
        path=("ingredients", name),
    )  # fmt: skip


def card_gaps(name: str, card: Card | None, weighed: bool, facts: Facts, nation: str | None) -> Iterator[Gap]:
    """What the card of an ingredient does not say."""
    at = ("ingredients", name)
    if card is None:
        yield Gap(
            what=saying("gap_no_card", card=name), cure=saying("cure_no_card", card=name), address=INGREDIENTS,
            path=("ingredients",),
        )  # fmt: skip
        return
    if card.known_allergens is None:
        yield Gap(what=saying("gap_allergens", card=name), cure=saying("cure_allergens"), address=INGREDIENTS, path=at)
    if card.made_of is None and not card.never_bought:
        yield Gap(what=saying("gap_made_of", card=name), cure=saying("cure_made_of"), address=INGREDIENTS, path=at)
    if not weighed:
        yield Gap(what=saying("gap_weight", card=name), cure=saying("cure_weight"), address=INGREDIENTS, path=at)
    for part in card.made_of.every() if card.made_of else ():
        colour = colour_named(part.name, facts)
        if colour is not None and nation in NOT_ALLOWED.get(colour.key, ()):
            what = saying("gap_not_allowed", card=name, additive=colour.name, number=colour.key, nation=nation)
            yield Gap(what=what, cure=saying("cure_not_allowed"), address=INGREDIENTS, path=(*at, "made of"))


def colour_gap(name: str) -> Gap:
    """A colour nobody has said the additives of."""
    return Gap(
        what=saying("gap_colour", colour=name), cure=saying("cure_colour"), address=COLOURS, path=("colours", name)
    )


def banned_colours(additives: tuple[str, ...], facts: Facts, nation: str | None) -> Iterator[Gap]:
    """Colours of the house that must not be used where it sells."""
    for key in additives:
        if nation in NOT_ALLOWED.get(key, ()):
            what = saying("gap_not_allowed", card="", additive=facts.colours[key].name, number=key, nation=nation)
            yield Gap(what=what, cure=saying("cure_not_allowed"), address=COLOURS, path=("colours",))
