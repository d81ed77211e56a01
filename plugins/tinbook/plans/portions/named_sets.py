"""A named set, from the bottom up: what it serves, and what a baker would say about how it stacks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import goes_on_a_shelf, owned_count
from tinbook.plans.finish.boards import board_of
from tinbook.plans.finish.cake import Cake
from tinbook.plans.portions.choices import APART_MM, FAR_MM, Tier, ledges_mm, tier_of
from tinbook.plans.portions.cutting import Portion
from tinbook.tins import Tin


def named_set(tins: Sequence[Tin], portion: Portion, book: Book, facts: Facts, height_mm: float) -> tuple[Tier, ...]:
    """The tiers of a set. AskError if one cannot be a tier, or is not smaller than the one below it."""
    for tin in tins:
        if tin.kind.solid != "upright" or tin.kind.in_trays:
            raise AskError(f"{tin.name} is not a tier", "name upright cakes, from the bottom up")
    for lower, upper in pairwise(tins):
        if min(ledges_mm(upper, lower)) < 0.0 or upper.area_mm2 >= lower.area_mm2:
            raise AskError(f"{upper.name} cannot stand on {lower.name}", "name the tiers from the bottom up")
    return tuple(tier_of(tin, owned_count(book, tin) > 0, (portion,), height_mm) for tin in tins)


def judged(tiers: Sequence[Tier], book: Book, facts: Facts, height_mm: float) -> Iterator[Saying]:
    """What is said about a set: ledges that are narrow or wide, what is not owned, what has no drum or does not fit the
    oven. Nothing if all is as usual."""
    settled = finishing(book.finish, facts)
    for lower, upper in pairwise(tier.tin for tier in tiers):
        ledge_mm = min(ledges_mm(upper, lower))
        if not fits(APART_MM, ledge_mm):
            yield saying("ledge_narrow", upper=upper.as_said, lower=lower.as_said, apart_mm=ledge_mm)
        elif not fits(max(ledges_mm(upper, lower)), FAR_MM):
            yield saying("ledge_wide", upper=upper.as_said, lower=lower.as_said, apart_mm=max(ledges_mm(upper, lower)))
    for tier in tiers:
        if not tier.owned:
            yield saying("tier_not_owned", tin=tier.tin.as_said)
        if not goes_on_a_shelf(tier.tin, book, facts):
            yield saying("tier_too_wide", tin=tier.tin.as_said)
    foot = tiers[0].tin
    if not board_of(Cake(foot, height_mm, 1), settled, settled.board, facts).size_mm:
        yield saying("tier_no_drum", tin=foot.as_said)
