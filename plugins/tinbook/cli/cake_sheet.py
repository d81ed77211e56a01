"""`tinbook sheet` for a whole cake in the book, in the size asked for."""

from __future__ import annotations

from typing import NamedTuple

from tinbook.loading import Loaded
from tinbook.loading.files import slug_of
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import CakeSheet, cake_sheet_of
from tinbook.plans.cakes.sizes import CakeSize, cake_sizes
from tinbook.plans.cakes.tables import size_asked


class SizeAsked(NamedTuple):
    """A size by its name, or by how many guests there are."""

    word: str | None
    guests: int | None


def cake_sheet(slug: str, asked: SizeAsked, loaded: Loaded) -> tuple[CakeSheet, str]:
    """The sheet of a cake in a size, and what its file is called. AskError for a size that cannot be made."""
    size = size_asked(cake_sizes(loaded.book.cakes[slug], loaded.book, loaded.facts), asked.word, asked.guests)
    return cake_sheet_of(slug, size, Desk(loaded.book, loaded.facts, loaded.broken)), _stem(slug, size)


def _stem(slug: str, size: CakeSize) -> str:
    if size.steps == 0:
        return slug
    tins = "-".join(slug_of(tin.name) for tin in size.tins)
    return f"{slug}-{slug_of(size.key) if size.steps is None else tins}"
