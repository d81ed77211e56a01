"""The table of dowels."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.saying import saying
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.worked import Worked
from tinbook.plans.true_size.dowelling import DowelPlan, dowel_plan, may_stand, tier_above
from tinbook.tins import Tin


def dowels(book: Book, facts: Facts, query: Query) -> Result:
    """Dowels in every cake under its usual tier; asked with --tin, in that cake under each tier that can stand on it,
    or under the one given with --above."""
    plans = tuple(_asked(book, facts, query)) if query.tins else tuple(_usual(book, facts))
    numbers = facts.numbers
    edge, apart = numbers["dowel from the edge"], numbers["dowels apart"]
    inputs = (
        saying("dowels_by_the_house", house=book.finish.dowels),
        saying("dowels_from_the_edge", inset_mm=edge.value),
        saying("dowels_apart", apart_mm=apart.value),
        saying("dowels_counted"),
    )
    sources = dict.fromkeys((*(row.source for row in facts.dowels.values()), edge.source, apart.source))
    worked = Worked(saying("dowels_worked"), inputs, tuple(sources))
    return Result(saying("dowel_table"), tuple(map(_row, plans)), worked)


def _row(plan: DowelPlan) -> Row:
    return {
        "cake": plan.cake.name,
        "above": plan.above.name,
        "dowels": plan.count,
        "published_low": plan.low,
        "published_high": plan.high,
        "by_the_house": plan.by_house,
        "fewer_have_room": plan.fewer,
        "from_the_edge_mm": round(plan.inset_mm, 2),
        "across_mm": round(plan.across_mm, 2),
        "what": plan.what,
        "source": plan.source,
    }


def _asked(book: Book, facts: Facts, query: Query) -> Iterator[DowelPlan]:
    """The plans of the cakes asked for. AskError for any that cannot stand."""
    for _, cake in query.tins:
        if query.above:
            yield dowel_plan(cake, query.above, book.finish, facts)
            continue
        usual = tier_above(cake)
        found = list(_plans(cake, may_stand(cake), book, facts))
        # says why where none has room
        yield from found or [dowel_plan(cake, usual, book.finish, facts)]


def _usual(book: Book, facts: Facts) -> Iterator[DowelPlan]:
    """Every cake that another of its shape can stand on, and that has room for dowels."""
    for cake, _ in all_outlines(book):
        if tiers := may_stand(cake):
            yield from _plans(cake, tiers[-1:], book, facts)


def _plans(cake: Tin, tiers: tuple[Tin, ...], book: Book, facts: Facts) -> Iterator[DowelPlan]:
    for tier in tiers:
        with suppress(AskError):
            yield dowel_plan(cake, tier, book.finish, facts)
