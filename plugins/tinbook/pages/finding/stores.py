"""Ingredients, tins and colours of the house, as answers for Find."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations
from urllib.parse import quote_plus

from tinbook.pages.at_a_glance.colours import ADDRESS as COLOURS
from tinbook.pages.base.page import Desk
from tinbook.pages.finding.find import Find
from tinbook.pages.spelling import formats
from tinbook.plans.base.shelf import TinFacts, factor_shown, house_outlines, shelf
from tinbook.plans.measures.ingredients import weights
from tinbook.tins import Tin
from tinbook.tins.trade import called_mm


def cards_found(desk: Desk) -> Iterator[Find]:
    """Each ingredient that has a page."""
    for name, address in desk.card_pages.items():
        card, cup_ml = desk.book.cards[name], desk.book.house.spoons.cup_ml
        weight = weights(card, desk.book, desk.facts)
        cup = next((row for row in weight.measures if row.volume_ml == (cup_ml or row.volume_ml)), None)
        figure = formats.grams(cup.shown_g) if cup else formats.grams(weight.piece_g) if weight.piece_g else ""
        yield Find(
            kind="ingredient",
            title=formats.title(name),
            address=address,
            second=card.about or ", ".join(card.also),
            figure=figure,
            under="a cup" if cup else "each" if figure else "",
            names=card.also,
            tags=(*(card.known_allergens or ()), *card.care, card.used_as or "", "cup weight" if cup else ""),
            text=(card.about or "", *card.notes),
        )


def tins_found(desk: Desk) -> Iterator[Find]:
    """Each tin, owned or not; it leads to tins at a glance, or to all tins, already chosen."""
    rows = shelf(desk.book).tins
    benches = {tin.name for tin, _ in house_outlines(desk.book)}
    have = {own.measured_tin: own for own in desk.book.tins}
    first = next((row for row in rows if row.owned), None)
    for row in rows:
        own = have.get(row.tin)
        yield Find(
            kind="tin",
            title=formats.tin_words(formats.title(row.tin.name)),
            address="tins" if row.owned or first is None else "tins/all",
            anchor=f"for?to={quote_plus(row.tin.name)}&from={quote_plus((first or row).tin.name)}",
            second=_tin_line(row, own.have if own else 0),
            figure=f"× {formats.fixed(factor_shown(first.tin, row.tin, desk.book), 2)}" if first else "",
            under=f"from {formats.tin_words(first.tin.name)}" if first else "",
            names=(*row.tin.names, "tin", *_sizes(row.tin)),
            tags=("cake", "owned" if row.owned else "not owned"),
            text=(own.note,) if own and own.note else (),
            tin=row.tin.name,
            at_bench=row.tin.name in benches,
            owned=row.owned,
        )


def _tin_line(row: TinFacts, have: int) -> str:
    deep = formats.number(called_mm(row.depth_mm, row.tin.sold) / 10)
    owned = f"you have {have}" if have else "to borrow"
    holds = f"holds {formats.litres(row.brim_shown_ml)}"
    named = formats.tin_words(row.tin.size_label_in)
    return "; ".join(words for words in (named, owned, f"{formats.with_unit(deep, 'cm')} deep", holds) if words)


def _sizes(tin: Tin) -> tuple[str, ...]:
    """`20cm`, `8in`; two sizes both ways round, `23x33cm`, `33x23cm`, `9x13in`."""
    labels = (label.partition(",")[0] for label in (tin.size_label, tin.size_label_in))
    sized = (label.rpartition(" ") for label in labels if label.endswith((" cm", " in")))
    return tuple(
        "x".join(order) + unit for sizes, _, unit in sized for order in dict.fromkeys(permutations(sizes.split(" x ")))
    )


def colours_found(desk: Desk) -> Iterator[Find]:
    """Each colour of the house."""
    for name, colour in desk.book.colours.items():
        yield Find(
            kind="colour",
            title=formats.title(name),
            address=COLOURS,
            second=colour.about or ", ".join(pot.written for pot in colour.per_100_g),
            tags=("colour",),
            text=(*(pot.written for pot in colour.every_pot), *(colour.additives or ())),
        )
