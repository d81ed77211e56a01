"""How long a product keeps, by what the house has said of its parts, and the date that goes on its label."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.keeping import FREEZER, FRIDGE, Keep
from tinbook.plans.base.saying import saying
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.labels.gaps import Gap
from tinbook.plans.making.ahead import ahead_table

DAY_MIN = 24 * 60.0
BEST_BEFORE, USE_BY = "best_before", "use_by"
SPOILS = "dairy filling"
"""The care on the cards of what spoils quickly."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepsUntil:
    """The last day, where it is kept until then, and which kind of date it is. What has a dairy filling in it gets a
    `use_by`: our own judgement, as the law means what spoils quickly and could then do harm."""

    day: date
    place: str
    kind: str
    days: int


def keeps_until(keep: Keep, made: date, spoils: bool) -> KeepsUntil:
    """Whole days after the day it is made; `spoils`: it has a filling in it that does so quickly."""
    days = int(keep.minutes // DAY_MIN)
    kind = USE_BY if spoils else BEST_BEFORE
    return KeepsUntil(day=made + timedelta(days=days), place=keep.place, kind=kind, days=days)


def keep_of(of: str, cake: WholeCake | None, book: Book, facts: Facts) -> tuple[Keep | None, tuple[Gap, ...]]:
    """How long a mixture or a cake keeps unfrozen, and what has to be filled in before that is known."""
    if cake is not None:
        table = ahead_table(cake, book)
        gaps = tuple(_gap(slug, book) for slug in _mixtures_of(cake) if not any(_fresh(slug, book)))
        return (None if gaps else table.keeps), gaps
    keeps = _fresh(of, book)
    # the place it is usually sold from: somewhere cool, if it can be kept there
    best = max(keeps, key=lambda keep: (keep.place != FRIDGE, keep.minutes), default=None)
    return best, () if best else (_gap(of, book),)


def spoils(names: Iterable[str], book: Book) -> bool:
    """Whether any of some cards calls for the care of a dairy filling."""
    return any(SPOILS in book.cards[name].care for name in names if name in book.cards)


def _mixtures_of(cake: WholeCake) -> tuple[str, ...]:
    found = [tier.baked.batch.slug for tier in cake.every_tier if tier.baked]
    found += [total.batch.slug for total in cake.mixtures if not total.batch.bought]
    return tuple(dict.fromkeys(found))


def _fresh(slug: str, book: Book) -> tuple[Keep, ...]:
    return tuple(keep for keep in book.mixtures[slug].keeps_for if keep.place != FREEZER)


def _gap(slug: str, book: Book) -> Gap:
    what = saying("gap_keeps", mixture=book.mixtures[slug].name)
    return Gap(what=what, cure=saying("cure_keeps"), address=f"mixtures/{slug}", path=())
