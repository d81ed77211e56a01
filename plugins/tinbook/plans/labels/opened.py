"""A card opened for a list: its own name, what it is made of, and every allergen on it where it belongs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from tinbook.engine import rounding
from tinbook.facts import Additive, Facts, FlourLaw
from tinbook.models import Card
from tinbook.models.made_of import PackPart
from tinbook.plans.labels.naming import hidden_in, is_name, named_in

FORTIFIED = "fortified "
E_NUMBER = re.compile(r"E\s?(\d{3,4}[a-z]?)", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One thing in a list of ingredients. `says`: allergens its words do not name, to be named in brackets after it;
    `parts`: its own list; `sort`: it is a class of additives, with a colon after it. `mass_g` is what it weighs by the
    rule it is listed by; None if nobody knows. `quid`: its share of the finished product, where that is to be told.
    `cards`: what it comes from."""

    name: str
    says: tuple[str, ...] = ()
    parts: tuple[Listed, ...] = ()
    sort: bool = False
    mass_g: float | None = None
    quid: float | None = None
    cards: tuple[str, ...] = ()

    @property
    def quid_shown(self) -> float | None:
        """Its share as a label gives it, in per cent."""
        return None if self.quid is None else rounding.label_percent(self.quid)

    def every(self) -> Iterator[Listed]:
        """It, and everything in it."""
        yield self
        for part in self.parts:
            yield from part.every()


def keys_in(listed: Listed, facts: Facts) -> dict[str, None]:
    """Every allergen it names, in its words or after them, at any depth."""
    found: dict[str, None] = {}
    for each in listed.every():
        found |= dict.fromkeys(named.key for named in named_in(each.name, facts))
        found |= dict.fromkeys(each.says)
    return found


def opened(name: str, card: Card | None, facts: Facts, on: date, additives: tuple[str, ...] = ()) -> Listed:
    """A card as it stands in a list on a day, with the `additives` of its colour. Nothing on a card that names an
    allergen is lost: what its words do not name comes in brackets after its name."""
    known = card.known_allergens if card else None
    written = card.made_of.parts if card and card.made_of else ()
    parts = tuple(_part(each, known, facts, on) for each in written)
    if additives:
        parts = (*parts, _colours(additives, facts))
    alone = len(parts) == 1 and not additives and not parts[0].sort
    whole = parts[0] if alone else Listed(name=name, parts=parts)
    named = keys_in(whole, facts)
    lost = [key for key in known or () if key not in named]
    # a name that only hides what nobody has put on the card is still named
    lost += [key for key in hidden_in(whole.name, facts) if known is None and key not in named and key not in lost]
    return replace(whole, says=(*whole.says, *lost), cards=(name,))


def _part(part: PackPart, known: tuple[str, ...] | None, facts: Facts, on: date) -> Listed:
    if part.name.lower().startswith(FORTIFIED) and not part.parts:
        flour = part.name[len(FORTIFIED) :]
        return Listed(name=flour, parts=tuple(Listed(name=each) for each in (flour, *flour_law(facts, on).adds)))
    references = [is_name(each.name, facts) for each in part.parts if not each.parts]
    if part.parts and not part.sort and len(references) == len(part.parts) and all(references):
        own = {each.key for each in named_in(part.name, facts)}
        return Listed(name=part.name, says=tuple(key for key in references if key and key not in own))
    inner = tuple(_part(each, known, facts, on) for each in part.parts)
    sort = part.sort or (bool(inner) and class_of(part.name, facts) is not None)
    made = Listed(name=part.name, parts=inner, sort=sort)
    named = keys_in(made, facts)
    hidden = [key for key in hidden_in(part.name, facts) if key not in named and (known is None or key in known)]
    return replace(made, says=tuple(hidden))


def _colours(additives: tuple[str, ...], facts: Facts) -> Listed:
    names = tuple(Listed(name=facts.colours[key].name) for key in additives if key in facts.colours)
    return Listed(name="colours" if len(names) > 1 else "colour", parts=names, sort=True)


def flour_law(facts: Facts, on: date) -> FlourLaw:
    """What white flour has in it by the law of a day; before the first, by the first."""
    laws = sorted(facts.flour_laws.values(), key=lambda law: law.since)
    return next((law for law in reversed(laws) if law.since <= on), laws[0])


def class_of(word: str, facts: Facts) -> str | None:
    """The class of additives a word is, in the singular or the plural; None for any other word."""
    small = " ".join(word.lower().split())
    forms = (small, small.removesuffix("s"), small.removesuffix("es"))
    return next((form for form in forms if form in facts.additive_classes), None)


def colour_named(text: str, facts: Facts) -> Additive | None:
    """The colour a text names by its E number or a name of its own."""
    if found := E_NUMBER.fullmatch(text.strip()):
        wanted = f"e{found[1]}".lower()
        return next((each for key, each in facts.colours.items() if key.lower() == wanted), None)
    small = text.strip().lower()
    return next(
        (each for each in facts.colours.values() if small in (name.lower() for name in (each.name, *each.also_called))),
        None,
    )
