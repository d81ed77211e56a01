"""Where an ingredient is used: the mixtures and techniques it is in, and what it replaces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked, plural
from tinbook.pages.base.sheets import ROWS

MIXTURES = "In mixtures"


@dataclass(frozen=True, slots=True)
class Goes:
    """Pages under one small heading: mixtures it is in, what it replaces. `all`: the page that lists them, where they
    are too many to be named here."""

    title: str
    links: tuple[Linked, ...]
    all: Linked | None = None


@dataclass(frozen=True)
class CardUses:
    """Which mixtures, techniques and swaps each card is in, by the card's name; worked out once for all cards."""

    mixtures: Mapping[str, tuple[Linked, ...]]
    techniques: Mapping[str, tuple[Linked, ...]]
    stands_in: Mapping[str, tuple[Linked, ...]]

    def goes(self, name: str, address: str) -> tuple[Goes, ...]:
        """Where one card leads, whose page is at `address`."""
        groups = ((MIXTURES, self.mixtures), ("In techniques", self.techniques), ("In swaps for", self.stands_in))
        found = (Goes(title, links[name]) for title, links in groups if name in links)
        return tuple(self._short(goes, address) if len(goes.links) > ROWS else goes for goes in found)

    def _short(self, goes: Goes, address: str) -> Goes:
        """Many mixtures are counted."""
        if goes.title != MIXTURES:
            return goes
        return Goes(goes.title, (), Linked(f"{address}/mixtures", plural(len(goes.links), "mixture")))


def card_uses(desk: Desk) -> CardUses:
    """The uses of all cards in a book. A card without a page has no links either."""
    mixtures: dict[str, dict[str, Linked]] = {}
    techniques: dict[str, dict[str, Linked]] = {}
    stands_in: dict[str, dict[str, Linked]] = {}
    for slug, mixture in desk.book.mixtures.items():
        for line in mixture.mix:
            _add(mixtures, desk.book.house_word(line.take.name), Linked(f"mixtures/{slug}", mixture.name))
    for slug, technique in desk.book.techniques.items():
        for material in technique.materials:
            _add(techniques, desk.book.house_word(material.take.name), Linked(f"techniques/{slug}", technique.name))
    for name, address in desk.card_pages.items():
        for key in desk.book.cards[name].swaps:
            for part in desk.facts.swaps[key].parts:
                stand_in = desk.book.house_word(part.key)
                if stand_in != name and not part.leave:
                    _add(stands_in, stand_in, Linked(address, name))
    return CardUses(_links(mixtures), _links(techniques), _links(stands_in))


def _add(links: dict[str, dict[str, Linked]], name: str | None, to: Linked) -> None:
    if name is not None:
        links.setdefault(name, {})[to.address] = to


def _links(by_name: Mapping[str, Mapping[str, Linked]]) -> dict[str, tuple[Linked, ...]]:
    return {name: tuple(sorted(pages.values(), key=lambda page: page.name.lower())) for name, pages in by_name.items()}
