"""What a part is made of: one of the house's mixtures by its file name, or an ingredient bought ready-made."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.bought import bought
from tinbook.plans.base.weighing import g_per_ml
from tinbook.plans.techniques.naming import mixture_called


@dataclass(frozen=True, slots=True)
class Paste:
    """A paste: its slug if it is a mixture in the book, its name, g/ml, and whose figure that is."""

    slug: str | None
    name: str
    g_per_ml: float
    source: str


def paste_or_like(word: str, book: Book, facts: Facts) -> Paste:
    """The same, for a book without its private mixtures: such a paste keeps its written name, at the usual weight."""
    try:
        return paste_called(word, book, facts)
    except LookupError:
        usual = facts.kinds["modelling paste"].gravity
        return Paste(None, word.replace("-", " "), usual.typical, usual.source)


def paste_called(word: str, book: Book, facts: Facts) -> Paste:
    """The paste that goes by `word`. LookupError if the book has none, or no weight by volume for it."""
    slug = mixture_called(word, book)
    if slug is not None:
        mixture = book.mixtures[slug]
        kind = facts.kinds[mixture.kind]
        return Paste(slug, mixture.name, kind.gravity.typical, kind.gravity.source)
    name = book.house_word(word)
    if name is None:
        raise LookupError(word)
    ready = bought(name, book, facts)
    if ready is not None:
        return Paste(None, name, ready.kind.gravity.typical, ready.kind.source)
    density = g_per_ml(book.cards[name], facts)
    if density is None:
        raise LookupError(word)
    return Paste(None, name, density, "our own judgement")
