"""The whole book as read: what the other packages work from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from functools import cached_property
from typing import Any

from tinbook.models.bakes import Baked, by_mixture
from tinbook.models.cakes import CakeDesign
from tinbook.models.cards import Card
from tinbook.models.colours import Colour, OwnedCutter
from tinbook.models.finish import Finish, Used
from tinbook.models.house import House
from tinbook.models.mixture import Mixture
from tinbook.models.pictures import PictureFile
from tinbook.models.shelf import OwnedTin
from tinbook.models.technique import Technique
from tinbook.models.variation import Varies

NO_FINISH = Finish()
"""A house that has not said how it finishes its cakes."""


@dataclass(frozen=True, kw_only=True)
class Book:
    """House, tins, ingredient cards by name, mixtures, techniques and cakes by slug (the file's name), pictures by
    file."""

    house: House
    tins: tuple[OwnedTin, ...] = ()
    cards: Mapping[str, Card] = field(default_factory=dict)
    mixtures: Mapping[str, Mixture] = field(default_factory=dict)
    techniques: Mapping[str, Technique] = field(default_factory=dict)
    pictures: Mapping[str, PictureFile] = field(default_factory=dict)
    finish: Finish = NO_FINISH
    used: tuple[Used, ...] = ()
    colours: Mapping[str, Colour] = field(default_factory=dict)
    cutters: tuple[OwnedCutter, ...] = ()
    varies: Mapping[str, Varies] = field(default_factory=dict)
    """How each mixture that starts from another differs from it; `mixtures` has them written out in full."""
    cakes: Mapping[str, CakeDesign] = field(default_factory=dict)
    cake_bases: Mapping[str, str] = field(default_factory=dict)
    """The base of each cake that starts from another; `cakes` has them written out in full."""
    bakes: tuple[Baked, ...] = ()
    unsure: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    """The lines that are still marked unsure, by the address of their file (`mixtures/madeira`)."""
    others: Mapping[str, Any] = field(default_factory=dict)
    """What is in the registered files that have no field of their own here, by file name."""

    @cached_property
    def bakes_of(self) -> Mapping[str, tuple[Baked, ...]]:
        """The logged bakes of each mixture, by its slug."""
        return by_mixture(self.bakes)

    @cached_property
    def variations(self) -> Mapping[str, tuple[str, ...]]:
        """The mixtures that start from another, by the slug of their base."""
        found: dict[str, tuple[str, ...]] = {}
        for slug, varies in self.varies.items():
            found[varies.base] = (*found.get(varies.base, ()), slug)
        return found

    @cached_property
    def names(self) -> Mapping[str, str]:
        """From every name of an ingredient, in lower case, to the name on its card."""
        names = {other.lower(): name for name, card in self.cards.items() for other in card.also}
        return {**names, **{name.lower(): name for name in self.cards}}

    def house_word(self, written: str) -> str | None:
        """The name on the card for an ingredient as written (`Eggs`, `superfine sugar`), or None."""
        return word_in(self.names, written)


def word_in(names: Mapping[str, str], written: str) -> str | None:
    """What a word, in any case and also in the plural, means among lower-case `names`; None if it is not there."""
    word = " ".join(written.lower().split())
    for form in (word, word.removesuffix("s"), word.removesuffix("es")):
        if form in names:
            return names[form]
    return None


def changed_book(book: Book, **changes: Any) -> Book:
    """A book with something in it changed. Of one that is watched, whatever is read in the rest is still noted."""
    return Book(**{each.name: getattr(book, each.name) for each in fields(Book)} | changes)
