"""What to watch in a technique, in words: what in it is not food, what it may be made with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.spelling import formats
from tinbook.pages.technique.figures import exact
from tinbook.plans.base.versions import Amount
from tinbook.plans.techniques.kit import Inedible, Kit
from tinbook.plans.techniques.technique import MadeWith


@dataclass(frozen=True, slots=True, kw_only=True)
class InedibleLine:
    """Something inedible, spelled, with what comes before it in a row. `each` for one person and `shared` by all are
    what the browser adds up; `several` is the name for more than one."""

    before: str
    words: str
    name: str
    several: str
    unit: str
    each: str
    shared: str

    @property
    def said(self) -> str:
        """The whole line."""
        return self.before + self.words


def inedible_lines(kit: Kit, hidden: bool) -> tuple[InedibleLine, ...]:
    """What is not food and may be hidden in the cake, or is in plain view: things with one name together."""
    things: dict[tuple[str, str], list[Inedible]] = {}
    for thing in kit.not_food:
        if thing.hidden == hidden:
            things.setdefault((thing.name, thing.amount.unit), []).append(thing)
    last = len(things) - 1
    return tuple(
        InedibleLine(
            before="" if at == 0 else " and " if at == last else ", ",
            words=formats.counted(_together(alike, unit), name),
            name=name,
            several=formats.several(name),
            unit=unit,
            each=exact(sum(thing.amount.exact for thing in alike if not thing.shared) / kit.people),
            shared=exact(sum(thing.amount.exact for thing in alike if thing.shared)),
        )
        for at, ((name, unit), alike) in enumerate(things.items())
    )


def _together(things: list[Inedible], unit: str) -> Amount:
    return Amount(sum(each.amount.exact for each in things), sum(each.amount.shown for each in things), unit)


def held(other: MadeWith) -> Iterator[str]:
    """The allergens of what a technique may be made with, in words."""
    yield from other.allergens
    if other.some_unknown:
        yield "some allergens not known"
    elif not other.allergens:
        yield "none of the fourteen listed"
