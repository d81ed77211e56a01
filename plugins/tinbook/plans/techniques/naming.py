"""Which of the house's mixtures a word means, and which mixtures name a technique."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.models import Book
from tinbook.models.ledger import once


def mixture_called(word: str, book: Book) -> str | None:
    """The slug of the mixture that `word` means: its name, another of its names, or the slug itself."""
    return _slugs(book).get(word.lower())


@once
def _slugs(book: Book) -> Mapping[str, str]:
    """From every name of a mixture, in small letters, to its slug; if two share a name, the first has it."""
    found: dict[str, str] = {}
    for slug, mixture in book.mixtures.items():
        for word in (slug, mixture.name.lower(), *(name.lower() for name in mixture.also)):
            found.setdefault(word, slug)
    return found


@once
def mixtures_naming(book: Book) -> Mapping[str, tuple[str, ...]]:
    """The slugs of the mixtures that name each technique, by its slug."""
    found: dict[str, tuple[str, ...]] = {}
    for slug, mixture in book.mixtures.items():
        for technique in mixture.techniques:
            found[technique] = (*found.get(technique, ()), slug)
    return found
