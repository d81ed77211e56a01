"""A folder becomes a book. Loading always finishes: what is broken is left out and told."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, TypeVar

from tinbook.facts import Facts
from tinbook.loading.facts import load_facts
from tinbook.loading.files import file_problem, read_sources
from tinbook.loading.private import private_flaws, public_book
from tinbook.models import (
    Book,
    Card,
    Flaw,
    House,
    Larder,
    Leaf,
    Mixture,
    OwnedTin,
    Technique,
    TinShelf,
    read_model,
)
from tinbook.models import Path as Path_
from tinbook.plans import checks
from tinbook.problems import Problem
from tinbook.source import Document, read_yaml
from tinbook.units import METRIC

PAGES = ("mixtures/", "techniques/")

L = TypeVar("L", bound=Leaf)


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


class _Desk:
    """Collects models and problems while the files are read."""

    def __init__(self, folder: Path) -> None:
        sources, problems = read_sources(folder)
        self.sources = {source.address: source for source in sources}
        self.problems = list(problems)
        self.documents: dict[str, Document] = {}
        self.broken: dict[str, list[Problem]] = {}
        self.private: set[str] = set()
        self.spoons = METRIC

    def open(self, address: str) -> Any:
        """The plain data of a file, or None where it cannot be read."""
        source = self.sources[address]
        document, problems = read_yaml(source.raw, source.shown)
        self._put(address, problems)
        if document is None or problems:
            return None
        self.documents[address] = document
        if isinstance(document.data, Mapping) and document.data.get("private", "no") != "no":
            self.private.add(address)
        return document.data

    def read(self, address: str, cls: type[L], what: str) -> L | None:
        """One file as a model; a broken one is None, with its problems noted."""
        data = self.open(address)
        return None if address in self.broken else self.part(address, cls, data, what, ())

    def part(self, address: str, cls: type[L], data: Any, what: str, path: Path_) -> L | None:
        """The part of a file that stands at `path`, as a model."""
        model, flaws = read_model(cls, data, what, self.spoons)
        found = [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws]
        if model is not None:
            found += private_flaws(model, path)
        self.tell(address, found)
        return None if found else model

    def tell(self, address: str, flaws: Iterable[Flaw]) -> None:
        """Note flaws at their places in a file."""
        document = self.documents[address]
        self._put(address, [_problem(flaw, document) for flaw in flaws])

    def _put(self, address: str, problems: Iterable[Problem]) -> None:
        for problem in problems:
            self.problems.append(problem)
            if problem.severity == "error":
                self.broken.setdefault(address, []).append(problem)


def _problem(flaw: Flaw, document: Document) -> Problem:
    place = document.place(flaw.path, key=flaw.on_key, start=flaw.start, end=flaw.end)
    return Problem(flaw.code, flaw.message, place, flaw.hint)


def load_book(folder: Path, kitchen: bool = True) -> Loaded:
    """Read the book in `folder` (its recipes/). With `kitchen` false what is private is left out of it."""
    facts, desk = load_facts(), _Desk(folder)
    house = _house(desk, folder, facts)
    tins, tins_private = _tins(desk)
    cards, broken_cards, cards_private = _cards(desk, facts)
    mixtures = _each(desk, "mixtures/", Mixture, "a mixture")
    techniques = _each(desk, "techniques/", Technique, "a technique")
    book = _checked(desk, Book(house, tins, cards, mixtures, techniques), facts, broken_cards)
    problems = tuple(sorted(desk.problems, key=lambda found: (found.place.file, found.place.line, found.place.column)))
    broken = {address: tuple(found) for address, found in desk.broken.items() if address.startswith(PAGES)}
    if not kitchen:
        if cards_private:
            sealed = {name: card.model_copy(update={"private": True}) for name, card in book.cards.items()}
            book = replace(book, cards=sealed)
        book = public_book(replace(book, tins=()) if tins_private else book)
        broken = {address: found for address, found in broken.items() if address not in desk.private}
    return Loaded(book, facts, problems, broken)


def _house(desk: _Desk, folder: Path, facts: Facts) -> House:
    """house.yaml, or a plain metric house where it is missing or broken."""
    instead = House(book="1", name="House book")
    if "house/house" not in desk.sources:
        if folder.is_dir():
            shown = f"{folder.name}/house/house.yaml"
            hint = 'write it, with "book: 1" and "name: ..." to begin with'
            desk.problems.append(file_problem("missing", shown, "the book has no house.yaml", hint))
        return instead
    house = desk.read("house/house", House, "the house")
    if house is None:
        return instead
    desk.spoons = house.spoons
    flaws = tuple(checks.house_flaws(house, facts))
    desk.tell("house/house", flaws)
    return instead if flaws else house


def _tins(desk: _Desk) -> tuple[tuple[OwnedTin, ...], bool]:
    """The tins that can be read, and whether the file is private."""
    address, found = "house/tins", []
    if address not in desk.sources:
        return (), False
    data = desk.open(address)
    shelf = data.get("tins") if isinstance(data, Mapping) else None
    for index, item in enumerate(shelf if isinstance(shelf, list) else ()):
        tin = desk.part(address, OwnedTin, item, "a tin of the house", ("tins", index))
        if tin:
            found.append(tin)
    if address in desk.documents:
        rest = {**data, "tins": []} if isinstance(shelf, list) else data
        desk.part(address, TinShelf, rest, "the tins of the house", ())
    return tuple(found), address in desk.private


def _cards(desk: _Desk, facts: Facts) -> tuple[dict[str, Card], frozenset[str], bool]:
    """The cards that can be read, the names of those that cannot, and whether the file is private."""
    address = "house/ingredients"
    cards: dict[str, Card] = {}
    broken: set[str] = set()
    if address not in desk.sources:
        return cards, frozenset(), False
    data = desk.open(address)
    written = data.get("ingredients") if isinstance(data, Mapping) else None
    larder: Mapping[str, Any] = written if isinstance(written, Mapping) else {}
    for name, item in larder.items():
        card = desk.part(address, Card, item or {}, f'the card of "{name}"', ("ingredients", name))
        flaws = tuple(checks.card_flaws(name, card, larder, facts)) if card else ()
        desk.tell(address, [replace(flaw, path=("ingredients", name, *flaw.path)) for flaw in flaws])
        if card is None or flaws:
            broken.add(name.lower())
        else:
            cards[name] = card
    if address in desk.documents:
        rest = {**data, "ingredients": {}} if isinstance(written, Mapping) else data
        desk.part(address, Larder, rest, "the ingredients", ())
        desk.tell(address, checks.alias_flaws(cards))
    return cards, frozenset(broken), address in desk.private


def _each(desk: _Desk, folder: str, cls: type[L], what: str) -> dict[str, L]:
    """Every file of a folder that can be read, by slug."""
    models = {}
    for address in desk.sources:
        if address.startswith(folder):
            model = desk.read(address, cls, what)
            if model is not None:
                models[address.removeprefix(folder)] = model
    return models


def _checked(desk: _Desk, book: Book, facts: Facts, broken_cards: frozenset[str]) -> Book:
    """The book without the mixtures and techniques that break a rule between fields."""
    for slug, mixture in book.mixtures.items():
        desk.tell(f"mixtures/{slug}", checks.mixture_flaws(mixture, book, facts, broken_cards))
    known = {address.removeprefix("mixtures/") for address in desk.sources if address.startswith("mixtures/")}
    hands = {address.removeprefix("techniques/") for address in desk.sources if address.startswith("techniques/")}
    for slug, mixture in book.mixtures.items():
        desk.tell(f"mixtures/{slug}", checks.link_flaws("techniques", mixture.techniques, hands))
    for slug, technique in book.techniques.items():
        desk.tell(f"techniques/{slug}", checks.link_flaws("related", technique.related, hands))
        desk.tell(f"techniques/{slug}", checks.link_flaws("mixtures", technique.mixtures, known))
    return replace(
        book,
        mixtures={slug: each for slug, each in book.mixtures.items() if f"mixtures/{slug}" not in desk.broken},
        techniques={slug: each for slug, each in book.techniques.items() if f"techniques/{slug}" not in desk.broken},
    )
