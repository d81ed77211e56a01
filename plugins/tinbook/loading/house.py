"""The house and what it has: house.yaml, tins.yaml and ingredients.yaml, read before everything else."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tinbook.facts import Facts
from tinbook.loading.files import file_problem
from tinbook.loading.intake import Intake, under
from tinbook.models import FORMAT, Card, House, OwnedTin, read_model
from tinbook.models.register import kinds
from tinbook.plans.rules.cards import alias_flaws, card_flaws
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.house import house_flaws, tin_flaws

HOUSE, TINS, CARDS = (kinds()[name] for name in ("house", "tins", "ingredients"))


def read_house(intake: Intake, folder: Path, facts: Facts) -> House:
    """house.yaml; a plain metric house if it is missing, and whatever can be read if it is broken."""
    address = HOUSE.address
    instead: House = HOUSE.nothing
    if address not in intake.sources:
        if folder.is_dir() and address not in intake.refused:
            shown = f"{folder.name}/{HOUSE.path}"
            hint = 'write one, starting with "book: 1" and "name: ..."'
            intake.problems.append(file_problem("missing", shown, "the book has no house.yaml", hint))
        intake.cup_said = address not in intake.refused
        return instead
    data = intake.open(address)
    if data and data.get("book") not in (None, str(FORMAT)):
        # In a book of another format nothing means what it says.
        intake.whole(HOUSE, {"book": data["book"], "name": instead.name})
        intake.sources = {}
        return instead
    doubtful = intake.spoils(address, (), data) if data else set()
    house: House | None = None if data is None else intake.whole(HOUSE, data)
    if house is not None:
        intake.tell(address, house_flaws(house, facts))
    if house is None or address in intake.broken:
        house = _salvaged({key: value for key, value in (data or {}).items() if key not in doubtful}, facts)
        intake.cup_said = house.cup is not None
    intake.measures = house.spoons
    return house


def _salvaged(data: Mapping[str, Any], facts: Facts) -> House:
    """What sums need of a broken house, as far as it can be read: other problems are then reported in the right
    measures."""
    instead: House = HOUSE.nothing
    good: dict[str, Any] = {"book": str(FORMAT), "name": instead.name}
    for key in ("name", *sorted(House.needed)):
        tried = {**good, key: data.get(key)}
        house, _ = read_model(House, tried, "the house")
        if house is not None and not any(house_flaws(house, facts)):
            good = tried
    return read_model(House, good, "the house")[0] or instead


def read_tins(intake: Intake) -> tuple[OwnedTin, ...]:
    """The tins; none if any of the file cannot be trusted. Those with names of their own are known from here on."""
    data = intake.data_of(TINS)
    if data is None:
        return ()
    certain = TINS.address not in intake.broken
    tins: list[OwnedTin] = []
    for path, line in intake.entries(TINS, data):
        flaws = tuple(tin_flaws(line, intake.tins))
        intake.tell(TINS.address, under(path, flaws))
        if not flaws:
            owned = line.owned
            tins += owned
            intake.tins |= {own.tin.called.casefold(): own.measured_tin for own in owned if own.tin.called}
    return tuple(tins if certain else ())


def read_cards(intake: Intake, facts: Facts) -> tuple[dict[str, Card], Spoilt]:
    """The cards that can be used, and the names of those that cannot."""
    address = CARDS.address
    data = intake.data_of(CARDS)
    if data is None:
        return {}, Spoilt(more=address in intake.sources or address in intake.refused)
    written = data.get(CARDS.key)
    larder: Mapping[str, Any] = written if isinstance(written, Mapping) else {}
    broken = intake.spoils(address, (CARDS.key,), larder)
    cards: dict[str, Card] = {}
    for name, path, card in intake.cards(CARDS, data):
        flaws = tuple(card_flaws(name, card, larder, facts)) if card else ()
        intake.tell(address, under(path, flaws))
        if card is None or not all(flaw.note for flaw in flaws):
            broken.add(name)
        else:
            cards[name] = card
    doubled = tuple(alias_flaws(cards))
    intake.tell(address, doubled)
    broken |= {str(flaw.path[1]) for flaw in doubled}
    names = {other: name for name in broken for other in _names(name, larder[name])}
    good = {name: card for name, card in cards.items() if name not in broken}
    more = not isinstance(written, Mapping) or intake.loses_names(address)
    return good, Spoilt(names, more)


def _names(name: str, item: Any) -> list[str]:
    """Every name that leads to a card, as written, in lower case."""
    also = item.get("also") if isinstance(item, Mapping) else None
    others = also if isinstance(also, list) else [also]
    return [other.lower() for other in (name, *others) if isinstance(other, str)]
