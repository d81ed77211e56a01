"""Everything there is to do for some orders; what one bake or one batch can serve is done once."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.saying import saying
from tinbook.plans.cakes.oven_loads import oven_plan
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.orders.cake_work import Ends, baking_work, batches_of, cake_work, icing_work, linings_of
from tinbook.plans.orders.class_work import class_work
from tinbook.plans.orders.diary import Diary, diary_of, left_to_do, paces
from tinbook.plans.orders.stints import stints
from tinbook.plans.orders.tasks import After, Task, rounds
from tinbook.plans.orders.work import Work

Orders = tuple[tuple[str, Order], ...]
Begun = Callable[[Orders], Work]
SHARED = timedelta(hours=36)
"""Orders that go out within so long of each other may share a bake or a batch (our own judgement)."""
HAND_OVER_MIN = 10
"""How long handing over takes at the door (our own judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GoesOut:
    """An order as the week sees it: when it is handed over, and `out`, when the kitchen has to be done with it. `fixed`
    cannot be late: people come to it."""

    slug: str
    handle: str
    hand_over: datetime
    out: datetime
    fixed: bool


@dataclass(frozen=True, kw_only=True)
class WeekWork:
    """The tasks of some orders; `unsaid`: by order, the recipes of which nobody says how long they keep."""

    tasks: tuple[Task, ...]
    orders: tuple[GoesOut, ...]
    unsaid: Mapping[str, tuple[str, ...]]


@dataclass
class _Shared:
    """What some orders have in common, and by order what has to be over before it is cut."""

    made: dict[str, Ends]
    baked: dict[str, Ends]
    oven: bool


def week_work(
    orders: Sequence[OrderWorked], book: Book, facts: Facts, kitchen: WorkingKitchen, diary: Diary | None = None
) -> WeekWork:
    """Everything to do for sound orders, each with the task that hands it over, but for what is done: by the log of
    hours, or by this diary."""
    works: list[Work] = []
    outs: list[GoesOut] = []
    bakes, ahead, hours = Bakes(book, facts), dict[str, float](), book.others["hours"]
    own, diary = paces(hours), diary_of(hours) if diary is None else diary

    def begun(these: Orders) -> Work:
        return Work(orders=these, book=book, kitchen=kitchen, ahead_of=ahead, paces=own)

    for group in _groups(orders, diary):
        shared = _shared(group, begun, bakes, facts, works)
        for worked in group:
            work = _order_work(worked, shared, begun, facts)
            works.append(work)
            order = worked.order
            outs.append(
                GoesOut(
                    slug=worked.slug, handle=order.handle, hand_over=order.hand_over, out=work.out,
                    fixed=order.class_ is not None,
                )
            )  # fmt: skip
    unsaid: dict[str, tuple[str, ...]] = {}
    for work in works:
        for slug in work.slugs if work.unsaid else ():
            unsaid[slug] = tuple(dict.fromkeys((*unsaid.get(slug, ()), *work.unsaid)))
    tasks = left_to_do((task for work in works for task in work.tasks), diary)
    return WeekWork(tasks=tasks, orders=tuple(outs), unsaid=unsaid)


def _groups(orders: Sequence[OrderWorked], diary: Diary) -> Iterator[list[OrderWorked]]:
    """Orders that go out close together, in order of time; those of which something is done, with those it was done
    together with."""
    bound = list(diary.bound())
    for begun in bound:
        if together := [worked for worked in orders if worked.slug in begun]:
            yield together
    free = [worked for worked in orders if not any(worked.slug in begun for begun in bound)]
    group: list[OrderWorked] = []
    for worked in sorted(free, key=lambda each: (each.order.hand_over, each.slug)):
        if group and worked.order.hand_over - group[0].order.hand_over > SHARED:
            yield group
            group = []
        group.append(worked)
    if group:
        yield group


def _shared(group: Sequence[OrderWorked], begun: Begun, bakes: Bakes, facts: Facts, works: list[Work]) -> _Shared:
    """Icings that two or more orders take, and loads of the oven if together they are fewer."""
    shared = _Shared({}, {}, False)
    cakes = {worked.slug: worked.cakes for worked in group if worked.cakes}
    if len(cakes) < 2:
        return shared
    work = begun(tuple((worked.slug, worked.order) for worked in group if worked.cakes))
    takers: dict[str, list[str]] = {}
    for slug, each in cakes.items():
        for batch in {batch.slug: batch for cake in each for batch, _, _ in batches_of(cake)}:
            takers.setdefault(batch, []).append(slug)
    for batch, slugs in takers.items():
        if len(slugs) > 1:
            both = begun(tuple((slug, order) for slug, order in work.orders if slug in slugs))
            lots = [lot for slug in slugs for cake in cakes[slug] for lot in batches_of(cake) if lot[0].slug == batch]
            shared.made |= icing_work(both, lots, "")
            works.append(both)
    tiers = [tier for each in cakes.values() for cake in each for tier in cake.every_tier]
    together = oven_plan(tiers, bakes, work.book, facts)
    apart = [cake.oven for each in cakes.values() for cake in each]
    if together and len(together.loads) < sum(len(plan.loads) for plan in apart if plan):
        every = [cake for each in cakes.values() for cake in each]
        ends = baking_work(work, together, "", linings_of(every, work))
        for slug, each in cakes.items():
            own = {id(tier) for cake in each for tier in cake.every_tier}
            shared.baked[slug] = [
                after for load, out in ends if any(id(tins.tier) in own for tins in load.tins) for after in out
            ]
        shared.oven = True
        works.append(work)
    return shared


def _order_work(worked: OrderWorked, shared: _Shared, begun: Begun, facts: Facts) -> Work:
    work = begun(((worked.slug, worked.order),))
    ends: Ends = []
    for number, cake in enumerate(worked.cakes, 1):
        part = f"{number}-" if len(worked.cakes) > 1 else ""
        if shared.oven:
            baked = shared.baked.get(worked.slug, [])
        else:
            loads = baking_work(work, cake.oven, part, linings_of([cake], work))
            baked = [after for _, out in loads for after in out]
        ends += cake_work(work, cake, part, baked, shared.made)
    for tub in worked.tubs:
        said, keeps = saying("task_make", mixture=tub.mixture.name), work.keeps_min(tub.slug, tub.mixture)
        ends += work.add(
            f"make-{tub.slug}", stints(tub.mixture.method), said,
            times=tub.times, keeps_min=keeps, mixer=True, eaten=True, of=tub.slug,
        )  # fmt: skip
    ends += class_work(work, facts)
    work.tasks.append(_goes_out(work, tuple(ends)))
    return work


def _goes_out(work: Work, after: tuple[After, ...]) -> Task:
    """The last task of an order: it is handed over, driven and put together, or taught."""
    order = work.order
    if order.class_:
        said, long_min = saying("task_class", handle=order.handle), rounds(order.class_.lasts)
    elif order.delivered:
        said = saying("task_deliver", handle=order.handle, there_min=rounds(work.there_min))
        long_min = rounds(2 * order.delivered + work.there_min)
    else:
        said, long_min = saying("task_hand_over", handle=order.handle), HAND_OVER_MIN
    return Task(
        key=f"{work.slug}/goes-out", orders=work.slugs, said=said, hands_min=long_min, away=bool(order.delivered),
        after=after, at=work.out,
    )  # fmt: skip
