"""Cakes with their notes, as answers for Find."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.models import CakeDesign
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.addresses import cake_address, called, making_address, used_address
from tinbook.pages.finding.find import Find
from tinbook.pages.spelling import formats
from tinbook.plans.mixtures.keeping import season_names


def cakes_found(desk: Desk) -> Iterator[Find]:
    """Each cake, its other leaves, and each of its notes."""
    for slug, design in desk.book.cakes.items():
        sizes, what = called(tier.tier.tin for tier in design.tiers)
        yield Find(
            kind="cake",
            title=design.name,
            address=cake_address(slug),
            second=design.about or ", ".join(design.tags),
            figure=formats.tin_words(sizes),
            under=what,
            # twice, so that it comes before a technique whose longer title has the same words
            names=(design.name, *design.also),
            tags=("cake", *design.tags, *season_names(design), *_named(design, desk)),
            text=tuple(_text(design)),
        )
        yield Find(
            kind="section",
            title=f"{design.name}, everything used",
            address=used_address(slug),
            second="Ingredients, pastes, colours, tools, boards and dowels in one list",
            tags=(design.name,),
        )
        yield Find(
            kind="section",
            title=f"{design.name}, oven and transport",
            address=making_address(slug),
            second="Oven loads, weights, dowels and what they carry, boxes, what can be made ahead",
            tags=(design.name,),
        )
        for note in design.notes:
            yield Find(
                kind="note",
                title=note,
                address=cake_address(slug),
                anchor="notes",
                second=design.name,
                tags=(design.name, *design.also[:1]),
            )


def _named(design: CakeDesign, desk: Desk) -> Iterator[str]:
    """The names of the mixtures and techniques it takes."""
    book = desk.book
    baked = (design.of(tier, "mixture") for tier in design.every_tier if not tier.dummy)
    for slug in dict.fromkeys((*baked, *design.made_of)):
        if slug in book.mixtures:
            yield book.mixtures[slug].name
    for slug in dict.fromkeys((*(each.technique for each in design.decorations), *design.techniques)):
        if slug in book.techniques:
            yield book.techniques[slug].name


def _text(design: CakeDesign) -> Iterator[str]:
    yield design.about or ""
    yield from (each.note or "" for each in design.decorations)
    yield from (each.colour for each in design.coloured if each.colour)
    yield from design.sizes or ()
