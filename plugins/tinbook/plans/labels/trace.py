"""What a pack went into, and which packs a batch was made from, as far as was logged; and what was not."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.opened import PackOpened
from tinbook.models.orders import Order
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.labels.dates import DAY_MIN
from tinbook.plans.labels.label import batch_handle
from tinbook.plans.labels.makeup import of_cake
from tinbook.plans.orders.asked import worked_order
from tinbook.problems import nearest

SURE, MAY = "had", "may_have_had"


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenPack:
    """A pack and the days it was open: up to the day it was finished, or the next of its kind was opened; None while
    it is still open."""

    entry: PackOpened
    card: str
    until: date | None

    def open_on(self, day: date) -> bool:
        """Whether it was open that day."""
        return self.entry.day <= day and (self.until is None or day <= self.until)


@dataclass(frozen=True, slots=True, kw_only=True)
class TracedBatch:
    """A logged bake, with the packs of its ingredients that were open, and those ingredients of which none was."""

    day: date
    slug: str
    packs: tuple[OpenPack, ...]
    unlogged: tuple[str, ...]

    @property
    def handle(self) -> str:
        """What stands on its label."""
        return batch_handle(self.slug, self.day)


@dataclass(frozen=True, slots=True, kw_only=True)
class TracedOrder:
    """An order that had something: how sure that is, and by way of which batch or mixture."""

    slug: str
    order: Order
    how: str
    by: str


@dataclass(frozen=True, kw_only=True)
class Traced:
    """Everything that is known; `missing`: what nobody logged, so that it cannot be known."""

    packs: tuple[OpenPack, ...]
    batches: tuple[TracedBatch, ...]
    orders: tuple[TracedOrder, ...]
    missing: tuple[Saying, ...]


def open_packs(book: Book) -> tuple[OpenPack, ...]:
    """Every pack in the log, in the order of their days."""
    log: tuple[PackOpened, ...] = book.others.get("opened", ())
    entries = sorted(log, key=lambda each: each.day)
    found = []
    for nth, entry in enumerate(entries):
        card = book.house_word(entry.of) or entry.of
        later = (each.day for each in entries[nth + 1 :] if (book.house_word(each.of) or each.of) == card)
        found.append(OpenPack(entry=entry, card=card, until=entry.finished or next(later, None)))
    return tuple(found)


def trace_pack(pack: str, book: Book, facts: Facts) -> Traced:
    """What every pack with this number went into. AskError for one that was never logged."""
    wanted = " ".join(pack.lower().split())
    packs = tuple(each for each in open_packs(book) if " ".join(each.entry.pack.lower().split()) == wanted)
    if not packs:
        known = dict.fromkeys(each.entry.pack for each in open_packs(book))
        close = nearest(pack, known)
        hint = f'did you mean "{close}"?' if close else "log packs as you open them, with tinbook log pack"
        raise AskError(f'no pack "{pack}" is in the log', hint)
    batches = tuple(
        each
        for each in _batches(book)
        if any(pack.card in _cards(each.slug, book) and pack.open_on(each.day) for pack in packs)
    )
    return _traced(packs, batches, frozenset(each.card for each in packs), book, facts)


def trace_batch(handle: str, book: Book, facts: Facts) -> Traced:
    """Which packs a batch was made from, and who had it. AskError for a handle that no bake in the log has."""
    wanted = " ".join(handle.split())
    batches = tuple(each for each in _batches(book) if each.handle == wanted)
    if not batches:
        known = dict.fromkeys(each.handle for each in _batches(book))
        close = nearest(wanted, known)
        hint = (
            f'did you mean "{close}"?' if close else 'a handle is a day and a recipe, such as "2026-12-05 our-sponge"'
        )
        raise AskError(f'no bake "{handle}" is in the log', hint)
    packs = tuple(dict.fromkeys(pack for batch in batches for pack in batch.packs))
    return _traced(packs, batches, frozenset(), book, facts)


def _batches(book: Book) -> Iterator[TracedBatch]:
    """The bakes of the log by day and recipe, each once."""
    packs = open_packs(book)
    for day, slug in sorted({(each.day, each.of) for each in book.bakes}):
        if slug not in book.mixtures:
            continue
        cards = _cards(slug, book)
        there = tuple(pack for pack in packs if pack.card in cards and pack.open_on(day))
        named = {pack.card for pack in there}
        unlogged = tuple(card for card in cards if card not in named and not _from_the_tap(card, book))
        yield TracedBatch(day=day, slug=slug, packs=there, unlogged=unlogged)


def _cards(slug: str, book: Book) -> tuple[str, ...]:
    lines = book.mixtures[slug].mix
    return tuple(dict.fromkeys(book.house_word(line.take.name) or line.take.name for line in lines))


def _from_the_tap(card: str, book: Book) -> bool:
    return card in book.cards and book.cards[card].never_bought


def _traced(
    packs: tuple[OpenPack, ...],
    batches: tuple[TracedBatch, ...],
    cards: frozenset[str],
    book: Book,
    facts: Facts,
) -> Traced:
    """`cards`: what is in the packs that are followed; none where a batch is."""
    orders: list[TracedOrder] = []
    missing: dict[Saying, None] = {}
    log: Mapping[str, Order] = book.others.get("order", {})
    for slug, order in log.items():
        made = dict(_made_for(slug, order, book, facts))
        if not made and order.class_ is None:
            missing[saying("trace_no_order", order=slug)] = None
        for mixture, inside in made.items():
            orders += _of_order(slug, order, mixture, inside, packs, batches, cards, book)
        if cards and order.class_ is not None and any(pack.open_on(order.hand_over.date()) for pack in packs):
            missing[saying("trace_class", order=slug)] = None
    for batch in batches:
        if batch.unlogged:
            missing[saying("trace_unlogged", batch=batch.handle, cards=batch.unlogged)] = None
    if not batches:
        missing[saying("trace_no_bakes")] = None
    told: dict[str, TracedOrder] = {}
    for each in sorted(orders, key=lambda one: (one.how != SURE, one.order.hand_over)):
        told.setdefault(each.slug, each)
    if any(each.how == MAY for each in told.values()):
        missing[saying("trace_may")] = None
    return Traced(packs=packs, batches=batches, orders=tuple(told.values()), missing=tuple(missing))


def _made_for(slug: str, order: Order, book: Book, facts: Facts) -> Iterator[tuple[str, frozenset[str]]]:
    """The recipes an order is made from, and the cards in each; under an empty name, what is put on otherwise."""
    try:
        worked = worked_order(slug, order, book, facts)
    except (AskError, KeyError):
        return
    for tub in worked.tubs:
        yield tub.slug, frozenset(_cards(tub.slug, book))
    beside: set[str] = set()
    for cake in worked.cakes:
        made = of_cake(cake, book, facts)
        for mixture in made.slugs:
            yield mixture, frozenset(_cards(mixture, book))
        beside |= {each.card for each in made.goes if not each.of}
    if beside:
        yield "", frozenset(beside)


def _of_order(
    slug: str,
    order: Order,
    mixture: str,
    inside: frozenset[str],
    packs: tuple[OpenPack, ...],
    batches: tuple[TracedBatch, ...],
    cards: frozenset[str],
    book: Book,
) -> Iterator[TracedOrder]:
    out = order.hand_over.date()
    baked = mixture and book.mixtures[mixture].bake is not None
    last = max((each.day for each in book.bakes if each.of == mixture and each.day <= out), default=None)
    if baked and last is not None:
        for batch in batches:
            if batch.slug == mixture and batch.day == last:
                yield TracedOrder(slug=slug, order=order, how=SURE if _near(last, out) else MAY, by=batch.handle)
        if _near(last, out):
            return
    # what no log says the day of was made some time before it went out
    days = _kept_days(mixture, book)
    if cards & inside and any(_between(pack, out, days) for pack in packs if pack.card in inside):
        yield TracedOrder(slug=slug, order=order, how=MAY, by=mixture or slug)


NEAR_DAYS = 14
"""A cake that goes out later than this after the last logged bake of its recipe was hardly from that bake. Our own
judgement."""


def _near(baked: date, out: date) -> bool:
    return (out - baked).days <= NEAR_DAYS


def _kept_days(mixture: str, book: Book) -> int:
    """How long before it goes out something may have been made: as long as it keeps, frozen too."""
    keeps = book.mixtures[mixture].keeps_for if mixture else ()
    return max((NEAR_DAYS, *(int(keep.minutes // DAY_MIN) for keep in keeps)))


def _between(pack: OpenPack, out: date, days: int) -> bool:
    """Whether a pack was open in the days before an order went out."""
    return pack.entry.day <= out and (pack.until is None or (out - pack.until).days <= days)
