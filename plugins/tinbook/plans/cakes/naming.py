"""Which cakes are made with a mixture or a technique."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.models import Book
from tinbook.models.ledger import once


@once
def cakes_naming(book: Book) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """The cakes, by slug and name, that use each mixture (`mixtures/SLUG`) and technique (`techniques/SLUG`)."""
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    for slug, design in book.cakes.items():
        baked = (design.of(tier, "mixture") for tier in design.every_tier if not tier.dummy)
        worked = (*(each.technique for each in design.decorations), *design.techniques)
        named = (
            *(f"mixtures/{each}" for each in (*baked, *design.made_of)),
            *(f"techniques/{each}" for each in worked),
        )
        for each in dict.fromkeys(named):
            found[each] = (*found.get(each, ()), (slug, design.name))
    return found
