"""A folder becomes a book. Loading always finishes: what is broken is left out and told."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, cast

from tinbook.facts import Facts
from tinbook.loading.bakes import BAKES, read_bakes
from tinbook.loading.drawer import COLOURS, CUTTERS, lost_words, public_colours, read_colours, read_cutters
from tinbook.loading.facts import load_facts
from tinbook.loading.files import file_problem
from tinbook.loading.finish import USED, read_finish, read_used
from tinbook.loading.intake import Intake, L
from tinbook.loading.pictures import read_pictures, unnamed_notes
from tinbook.loading.private import pictures_named, public, public_book, public_broken
from tinbook.loading.variations import FOLDER, is_variation, split, with_variations
from tinbook.models import (
    FORMAT,
    Book,
    Card,
    Finish,
    Flaw,
    House,
    Larder,
    Mixture,
    OwnedTin,
    PictureFile,
    ShelfLine,
    Technique,
    TinShelf,
    Variation,
    Written,
    read_model,
)
from tinbook.plans.mixtures.inline import step_flaws
from tinbook.plans.rules import fields as checks
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.finish import mixture_finish_flaws
from tinbook.plans.rules.parts import part_flaws
from tinbook.plans.techniques.flaws import technique_flaws
from tinbook.problems import Problem

HOUSE, TINS, CARDS = "house/house", "house/tins", "house/ingredients"
PAGES: Mapping[str, tuple[type[Written], str]] = {
    "mixtures/": (Mixture, "a mixture"),
    "techniques/": (Technique, "a technique"),
}


@dataclass(frozen=True)
class Loaded:
    """The book, the facts, all problems, and the problems of each page that cannot be shown (`mixtures/madeira`)."""

    book: Book
    facts: Facts
    problems: tuple[Problem, ...]
    broken: Mapping[str, tuple[Problem, ...]]

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that make a strict build fail."""
        return tuple(problem for problem in self.problems if problem.severity == "error")


def load_book(folder: Path, kitchen: bool = True) -> Loaded:
    """Read the book in `folder` (its recipes/). With `kitchen` false what is private is left out of it."""
    facts, intake = load_facts(), Intake(folder)
    house = _house(intake, folder, facts)
    tins, tins_private = _tins(intake)
    cards, spoilt, cards_private = _cards(intake, facts)
    mixtures, variations = split(_each(intake, "mixtures/", Mixture))
    techniques = _each(intake, "techniques/", Technique)
    colours, lost = read_colours(intake, facts)
    book = Book(
        house=house,
        tins=tins,
        cards=cards,
        mixtures=mixtures,
        techniques=techniques,
        colours=colours,
        cutters=read_cutters(intake),
    )
    book = replace(book, pictures=_pictures(intake, folder, techniques, kitchen))
    for address, mixture in _maimed(intake).items():
        intake.tell(address, checks.line_flaws(mixture, book, facts, spoilt))
    book = replace(book, finish=read_finish(intake, book, facts))
    book = _checked(intake, book, variations, facts, spoilt, lost)
    book = replace(book, bakes=read_bakes(intake, book, facts))
    book = replace(book, used=read_used(intake, book, facts))
    broken = {address: _in_order(found) for address, found in intake.broken.items() if address.startswith(tuple(PAGES))}
    if kitchen:
        # the views hold back a card that is private; here none is
        book = replace(
            book, cards={name: card.model_copy(update={"private": False}) for name, card in book.cards.items()}
        )
    else:
        if cards_private:
            sealed = {name: card.model_copy(update={"private": True}) for name, card in book.cards.items()}
            book = replace(book, cards=sealed)
        book = replace(
            book,
            tins=() if tins_private else book.tins,
            finish=public(book.finish) or Finish(),
            used=() if USED in intake.private else book.used,
            bakes=() if BAKES in intake.private else book.bakes,
            colours=public_colours(book.colours, COLOURS in intake.private),
            cutters=() if CUTTERS in intake.private else book.cutters,
        )
        book = public_book(book)
        bases = {f"{FOLDER}{slug}": f"{FOLDER}{each.base}" for slug, each in variations.items()}
        broken = public_broken(broken, intake.sources, bases)
    return Loaded(book, facts, _in_order(intake.problems), broken)


def _in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(problems, key=lambda each: (each.place.file, each.place.line, each.place.column)))


def _house(intake: Intake, folder: Path, facts: Facts) -> House:
    """house.yaml; a plain metric house where it is missing, and what can be read of it where it is broken."""
    instead = House(book="1", name="House book")
    if HOUSE not in intake.sources:
        if folder.is_dir() and HOUSE not in intake.refused:
            shown = f"{folder.name}/{HOUSE}.yaml"
            hint = 'write it, with "book: 1" and "name: ..." to begin with'
            intake.problems.append(file_problem("missing", shown, "the book has no house.yaml", hint))
        intake.cup_said = HOUSE not in intake.refused
        return instead
    data = intake.open(HOUSE)
    if data and data.get("book") not in (None, str(FORMAT)):
        # Nothing in a book of another format means what it says.
        intake.part(HOUSE, House, {"book": data["book"], "name": "House book"}, "the house", ())
        intake.sources = {}
        return instead
    doubtful = intake.spoils(HOUSE, (), data) if data else set()
    house = None if data is None else intake.part(HOUSE, House, data, "the house", ())
    if house is not None:
        intake.tell(HOUSE, checks.house_flaws(house, facts))
    if house is None or HOUSE in intake.broken:
        house = _salvaged({key: value for key, value in (data or {}).items() if key not in doubtful}, facts)
        intake.cup_said = house.cup is not None
    intake.measures = house.spoons
    return house


def _salvaged(data: Mapping[str, Any], facts: Facts) -> House:
    """What sums need of a broken house, as far as it can be read: other problems are told by the right measures."""
    good: dict[str, Any] = {"book": str(FORMAT), "name": "House book"}
    for key in ("name", *sorted(House.needed)):
        tried = {**good, key: data.get(key)}
        house, _ = read_model(House, tried, "the house")
        if house is not None and not any(checks.house_flaws(house, facts)):
            good = tried
    return read_model(House, good, "the house")[0] or House(book="1", name="House book")


def _tins(intake: Intake) -> tuple[tuple[OwnedTin, ...], bool]:
    """The tins that can be read, and whether the file is private."""
    found: list[OwnedTin] = []
    data = intake.open(TINS) if TINS in intake.sources else None
    if data is None:
        return (), False
    certain = TINS not in intake.broken
    shelf = data.get("tins")
    items = shelf if isinstance(shelf, list) else []
    for index, item in enumerate(items):
        path = ("tins", index)
        line = intake.part(TINS, ShelfLine, item, "a tin of the house", path)
        flaws = tuple(checks.tin_flaws(line, intake.tins)) if line else ()
        intake.tell(TINS, [_under(path, flaw) for flaw in flaws])
        if line and not flaws:
            found += line.owned
            intake.tins |= {own.tin.called.casefold(): own.measured_tin for own in line.owned if own.tin.called}
    rest = {**data, "tins": []} if isinstance(shelf, list) else data
    intake.part(TINS, TinShelf, rest, "the list of tins", ())
    return tuple(found if certain else ()), TINS in intake.private


def _cards(intake: Intake, facts: Facts) -> tuple[dict[str, Card], Spoilt, bool]:
    """The cards that can be used, those that cannot, and whether the file is private."""
    data = intake.open(CARDS) if CARDS in intake.sources else None
    if data is None:
        return {}, Spoilt(more=CARDS in intake.sources or CARDS in intake.refused), False
    written = data.get("ingredients")
    larder: Mapping[str, Any] = written if isinstance(written, Mapping) else {}
    broken = intake.spoils(CARDS, ("ingredients",), larder)
    cards: dict[str, Card] = {}
    for name, item in larder.items():
        path = ("ingredients", name)
        card = intake.part(CARDS, Card, {} if item is None else item, f'the card of "{name}"', path)
        flaws = tuple(checks.card_flaws(name, card, larder, facts)) if card else ()
        intake.tell(CARDS, [_under(path, flaw) for flaw in flaws])
        if card is None or flaws:
            broken.add(name)
        else:
            cards[name] = card
    rest = {**data, "ingredients": {}} if isinstance(written, Mapping) else data
    intake.part(CARDS, Larder, rest, "the list of ingredients", ())
    doubled = tuple(checks.alias_flaws(cards))
    intake.tell(CARDS, doubled)
    broken |= {str(flaw.path[1]) for flaw in doubled}
    names = {other: name for name in broken for other in _names(name, larder[name])}
    good = {name: card for name, card in cards.items() if name not in broken}
    more = not isinstance(written, Mapping) or intake.loses_names(CARDS)
    return good, Spoilt(names, more), CARDS in intake.private


def _names(name: str, item: Any) -> list[str]:
    """Every name that leads to a card, as it is written, in small letters."""
    also = item.get("also") if isinstance(item, Mapping) else None
    others = also if isinstance(also, list) else [also]
    return [each.lower() for each in (name, *others) if isinstance(each, str)]


def _under(path: tuple[str | int, ...], flaw: Flaw) -> Flaw:
    return replace(flaw, path=(*path, *flaw.path))


def _each(intake: Intake, folder: str, cls: type[L]) -> dict[str, L]:
    """Every file of a folder that can be read, by slug."""
    models = {}
    for address in intake.sources:
        data = intake.open(address) if address.startswith(folder) else None
        if data is None or intake.loses_names(address):
            continue
        if strayed := _strayed(data, folder):
            intake.tell(address, [strayed])
            continue
        if cls is Mixture and is_variation(data):
            model = intake.part(address, cast("type[L]", Variation), data, "a variation", ())
        else:
            model = intake.part(address, cls, data, PAGES[folder][1], ())
        if model is not None and address not in intake.broken:
            models[address.removeprefix(folder)] = model
    return models


def _pictures(
    intake: Intake, folder: Path, techniques: Mapping[str, Technique], kitchen: bool
) -> dict[str, PictureFile]:
    """The pictures of the techniques that will be shown; what is private is not even read for a site."""
    shown = {slug: open_ for slug, each in techniques.items() if (open_ := each if kitchen else public(each))}
    pictures, flaws = read_pictures(folder, pictures_named(shown.values()))
    for slug, technique in shown.items():
        files = enumerate(picture.file for picture in technique.pictures)
        intake.tell(
            f"techniques/{slug}",
            [replace(flaws[file], path=("pictures", index, "file")) for index, file in files if file in flaws],
        )
    intake.problems += unnamed_notes(folder, intake.sources.values())
    return pictures


def _maimed(intake: Intake) -> dict[str, Mixture]:
    """Of mixtures that are broken, the mix alone, as far as that can be read: its faults are told too."""
    found = {}
    for address in intake.broken:
        data = intake.documents[address].data if address in intake.documents else {}
        if address.startswith("mixtures/") and data.get("mix") and not intake.loses_names(address):
            tried = {"name": "...", "kind": "...", "mix": data["mix"]}
            mixture, _ = read_model(Mixture, tried, "a mixture", intake.measures)
            if mixture is not None:
                found[address] = mixture
    return found


def _strayed(data: Mapping[str, Any], folder: str) -> Flaw | None:
    """A file that has all it needs for another folder, and not for this one."""
    fits = [
        other
        for other, (cls, _) in PAGES.items()
        if all((field.alias or name) in data for name, field in cls.model_fields.items() if field.is_required())
    ]
    if is_variation(data) and "name" in data and not fits:
        fits = [FOLDER]
    if not fits or folder in fits:
        return None
    message = f"this is {PAGES[fits[0]][1]}, not {PAGES[folder][1]}"
    return Flaw(code="stray file", path=(), message=message, hint=f"move the file to {fits[0]}")


def _checked(
    intake: Intake, book: Book, variations: Mapping[str, Variation], facts: Facts, spoilt: Spoilt, lost: frozenset[str]
) -> Book:
    """The book without the mixtures and techniques that break a rule between fields."""
    addresses = {*intake.sources, *intake.refused}
    known = {address.removeprefix("mixtures/") for address in addresses if address.startswith("mixtures/")}
    hands = {address.removeprefix("techniques/") for address in addresses if address.startswith("techniques/")}
    for slug, mixture in book.mixtures.items():
        intake.tell(f"mixtures/{slug}", checks.mixture_flaws(mixture, book, facts, spoilt))
        intake.tell(f"mixtures/{slug}", checks.link_flaws("techniques", mixture.techniques, hands))
        intake.tell(f"mixtures/{slug}", mixture_finish_flaws(mixture, book, facts))
        if f"mixtures/{slug}" not in intake.broken:
            # a slip in the mix would be told again for each step that names it
            intake.tell(f"mixtures/{slug}", step_flaws(mixture, book))
    book = with_variations(intake, book, variations, facts, spoilt, hands)
    sound = replace(
        book, mixtures={s: each for s, each in book.mixtures.items() if f"{FOLDER}{s}" not in intake.broken}
    )
    for slug, technique in book.techniques.items():
        intake.tell(f"techniques/{slug}", checks.link_flaws("related", technique.related, hands))
        intake.tell(f"techniques/{slug}", checks.link_flaws("mixtures", technique.mixtures, known))
        intake.tell(f"techniques/{slug}", technique_flaws(technique, book, facts))
        intake.tell(
            f"techniques/{slug}", part_flaws(technique, sound, facts, lost_words(intake, technique, spoilt, lost))
        )
    return replace(
        book,
        mixtures={slug: each for slug, each in book.mixtures.items() if f"mixtures/{slug}" not in intake.broken},
        techniques={slug: each for slug, each in book.techniques.items() if f"techniques/{slug}" not in intake.broken},
    )
