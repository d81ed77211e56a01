"""A folder becomes a book. Loading always finishes: what is broken is left out and reported."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Any, cast

from tinbook.facts import Facts
from tinbook.loading.cakes import still_sound, with_cakes
from tinbook.loading.checks import Checks
from tinbook.loading.drawer import lost_words, read_colours, read_cutters
from tinbook.loading.facts import load_facts
from tinbook.loading.finish import read_finish
from tinbook.loading.house import read_cards, read_house, read_tins
from tinbook.loading.intake import Intake, W
from tinbook.loading.labels import OPENED, with_labels
from tinbook.loading.logs import read_bakes, read_used
from tinbook.loading.money import PRICES, with_money
from tinbook.loading.orders import with_orders
from tinbook.loading.parses import Parses
from tinbook.loading.pictures import read_pictures, unnamed_notes
from tinbook.loading.plain import read_plain
from tinbook.loading.private import kitchen_book, pictures_named, public, public_book, public_broken
from tinbook.loading.stock import STOCK, SUPPLIES, with_stock
from tinbook.loading.unsure import unsure_lines, unsure_notes
from tinbook.loading.variations import CAKES, FOLDER, is_variation, split, with_variations
from tinbook.models import (
    Book,
    CakeDesign,
    CakeVariation,
    Flaw,
    Mixture,
    PictureFile,
    Technique,
    Variation,
    read_model,
)
from tinbook.models.register import VARIATIONS, Merged, SourceKind, kinds
from tinbook.plans.rules import fields as checks
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.parts import part_flaws
from tinbook.plans.rules.pastes import paste_flaws
from tinbook.plans.techniques.flaws import technique_flaws
from tinbook.problems import Problem

FOLDERS: Mapping[str, SourceKind] = {
    kind.address: kind for kind in kinds().values() if kind.merged is Merged.FOLDER and kind.field
}
"""The folders in which each file has a page, by address."""


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


def load_book(
    folder: Path,
    kitchen: bool = True,
    parses: Parses | None = None,
    today: date | None = None,
    pictures: bool = True,
) -> Loaded:
    """Read the book in `folder` (its recipes/). With `kitchen` false it has only what the register lets everyone
    see. `parses` knows the files that were read before; `today` is the day open orders are held against, if they
    are. Without `pictures` none is opened, and nothing wrong with one is told."""
    collects = gc.isenabled()
    gc.disable()  # everything read is kept: collecting garbage as it grows takes a third of a long log's time
    try:
        return _loaded(folder, kitchen, parses, today, pictures)
    finally:
        if collects:
            gc.enable()


def _loaded(folder: Path, kitchen: bool, parses: Parses | None, today: date | None, pictures: bool) -> Loaded:
    facts, intake = load_facts(), Intake(folder, parses)
    house = read_house(intake, folder, facts)
    tins = read_tins(intake)
    cards, spoilt = read_cards(intake, facts)
    mixtures, variations = split(_each(intake, FOLDER, Mixture), Variation)
    techniques = _each(intake, "techniques/", Technique)
    designs, cake_variations = split(_each(intake, CAKES, CakeDesign), CakeVariation)
    colours, lost = read_colours(intake, facts)
    book = Book(
        house=house,
        tins=tins,
        cards=cards,
        mixtures=mixtures,
        techniques=techniques,
        colours=colours,
        cutters=read_cutters(intake),
        others={
            kind.name: kind.nothing if kind in (SUPPLIES, STOCK, OPENED, PRICES) else read_plain(intake, kind)
            for kind in kinds().values()
            if not kind.field
        },
    )
    if pictures:
        book = replace(book, pictures=_pictures(intake, folder, techniques, kitchen))
    for address, mixture in _maimed(intake).items():
        intake.tell(address, checks.line_flaws(mixture, book, facts, spoilt))
    book = replace(book, finish=read_finish(intake, book, facts))
    book = _checked(intake, book, variations, facts, spoilt, lost)
    book = replace(book, bakes=read_bakes(intake, book, facts))
    book = replace(book, used=read_used(intake, book, facts))
    book, checked = with_cakes(intake, book, designs, cake_variations, facts, lost)
    book = with_stock(intake, with_orders(intake, book, facts, lost, today), facts, spoilt, today)
    book = with_money(intake, book, facts, spoilt, today)
    book = with_labels(intake, book, spoilt, today)
    unsure = tuple(unsure_notes(intake.sources.values()))
    intake.problems += unsure
    book = replace(book, unsure=unsure_lines(unsure, intake.sources.values()))
    broken = {
        address: _in_order(problems)
        for address, problems in intake.broken.items()
        if address.startswith(tuple(FOLDERS))
    }
    if kitchen:
        book = kitchen_book(book)
    else:
        book = still_sound(public_book(book, intake.private), book, facts, checked, intake.parses)
        bases = {f"{FOLDER}{slug}": f"{FOLDER}{variation.base}" for slug, variation in variations.items()}
        bases |= {f"{CAKES}{slug}": f"{CAKES}{variation.base}" for slug, variation in cake_variations.items()}
        broken = public_broken(broken, intake.sources, bases)
    return Loaded(book, facts, _in_order(intake.problems), broken)


def _in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(problems, key=lambda each: (each.place.file, each.place.line, each.place.column)))


def _each(intake: Intake, folder: str, cls: type[W]) -> dict[str, W]:
    """Every readable file in a folder, by slug."""
    models = {}
    for address in intake.sources:
        data = intake.open(address) if address.startswith(folder) else None
        if data is None or intake.loses_names(address):
            continue
        if strayed := _strayed(data, folder):
            intake.tell(address, [strayed])
            continue
        if cls in VARIATIONS and is_variation(data):
            model = intake.part(address, cast("type[W]", VARIATIONS[cls]), data, "this variation", ())
        else:
            model = intake.part(address, cls, data, FOLDERS[folder].spoken[0], ())
        if model is not None and address not in intake.broken:
            models[address.removeprefix(folder)] = model
    return models


def _pictures(
    intake: Intake, folder: Path, techniques: Mapping[str, Technique], kitchen: bool
) -> dict[str, PictureFile]:
    """The pictures of the techniques that will be shown; for a public site, private ones are not even read."""
    shown = {slug: open_ for slug, each in techniques.items() if (open_ := each if kitchen else public(each))}
    pictures, flaws, known = read_pictures(folder, pictures_named(shown.values()), intake.parses.learnt.pictures)
    intake.parses.learnt = intake.parses.learnt._replace(pictures=known)
    for slug, technique in shown.items():
        files = enumerate(picture.file for picture in technique.pictures)
        intake.tell(
            f"techniques/{slug}",
            [replace(flaws[file], path=("pictures", index, "file")) for index, file in files if file in flaws],
        )
    intake.problems += unnamed_notes(folder, intake.sources.values())
    return pictures


def _maimed(intake: Intake) -> dict[str, Mixture]:
    """Just the mix of each broken mixture, if it can be read, so that its faults are reported too."""
    found = {}
    for address in intake.broken:
        data = intake.documents[address].data if address in intake.documents else {}
        if address.startswith("mixtures/") and data.get("mix") and not intake.loses_names(address):
            tried = {"name": "...", "kind": "...", "mix": data["mix"]}
            mixture, _ = read_model(Mixture, tried, "this mixture", intake.measures)
            if mixture is not None:
                found[address] = mixture
    return found


def _strayed(data: Mapping[str, Any], folder: str) -> Flaw | None:
    """The flaw of a file that has everything needed for another folder, but not for this one."""
    fits = [
        other
        for other, kind in FOLDERS.items()
        if all((field.alias or name) in data for name, field in kind.model.model_fields.items() if field.is_required())
    ]
    if is_variation(data) and "name" in data and not fits:
        fits = [FOLDER, CAKES]
    if not fits or folder in fits:
        return None
    message = f"this is a {FOLDERS[fits[0]].name}, not a {FOLDERS[folder].name}"
    return Flaw(code="stray file", path=(), message=message, hint=f"move the file to {fits[0]}")


def _checked(
    intake: Intake, book: Book, variations: Mapping[str, Variation], facts: Facts, spoilt: Spoilt, lost: frozenset[str]
) -> Book:
    """The book without the mixtures and techniques that break a rule between fields."""
    addresses = {*intake.sources, *intake.refused}
    known = {address.removeprefix("mixtures/") for address in addresses if address.startswith("mixtures/")}
    hands = {address.removeprefix("techniques/") for address in addresses if address.startswith("techniques/")}
    check = Checks(
        book=book,
        facts=facts,
        spoilt=spoilt,
        techniques=sorted(hands),
        mixtures=sorted(intake.written(FOLDER)),
        sound=intake.parses.learnt.sound,
    )
    for slug, mixture in book.mixtures.items():
        address = f"{FOLDER}{slug}"
        intake.tell(address, check.rules(address, mixture))
        if address not in intake.broken:
            intake.tell(address, check.steps(address, mixture))
    book = with_variations(intake, book, variations, facts, check)
    intake.parses.learnt = intake.parses.learnt._replace(sound=check.done())
    sound = replace(
        book, mixtures={s: each for s, each in book.mixtures.items() if f"{FOLDER}{s}" not in intake.broken}
    )
    for slug, technique in book.techniques.items():
        intake.tell(f"techniques/{slug}", checks.link_flaws("related", technique.related, hands))
        intake.tell(f"techniques/{slug}", checks.link_flaws("uses", technique.uses, hands))
        intake.tell(f"techniques/{slug}", checks.link_flaws("mixtures", technique.mixtures, known))
        intake.tell(f"techniques/{slug}", technique_flaws(technique, book, facts))
        intake.tell(
            f"techniques/{slug}", part_flaws(technique, sound, facts, lost_words(intake, technique, spoilt, lost))
        )
        if f"techniques/{slug}" not in intake.broken:
            # unsound parts, or parts whose words are lost, have no weight
            intake.tell(f"techniques/{slug}", paste_flaws(technique, sound, facts))
    return replace(
        book,
        mixtures=sound.mixtures,
        varies={slug: each for slug, each in book.varies.items() if {slug, each.base} <= set(sound.mixtures)},
        techniques={slug: each for slug, each in book.techniques.items() if f"techniques/{slug}" not in intake.broken},
    )
