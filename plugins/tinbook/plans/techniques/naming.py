"""Which mixture of the house a word means."""

from __future__ import annotations

from tinbook.models import Book


def mixture_called(word: str, book: Book) -> str | None:
    """The slug of the mixture that goes by `word`: its name, another name of it, or the slug itself."""
    low = word.lower()
    for slug, mixture in book.mixtures.items():
        if low in (slug, mixture.name.lower(), *(name.lower() for name in mixture.also)):
            return slug
    return None
