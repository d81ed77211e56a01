"""Tasks as they are put together, chain by chain, for one order or for several that share a bake or a batch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from tinbook.models import Book, Mixture
from tinbook.models.keeping import FREEZER
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.plans.base.saying import Saying
from tinbook.plans.mixtures.inline import unmarked
from tinbook.plans.orders.diary import Pace
from tinbook.plans.orders.stints import Stint
from tinbook.plans.orders.tasks import After, Task, Window, rounds

DAY_MIN = 24 * 60.0
EVER_MIN = 400 * DAY_MIN
"""So far ahead that it says nothing."""
UNSAID_MIN = 2 * DAY_MIN
"""How long anything keeps of which nobody has said so (our own judgement; the plan says that it was assumed)."""


@dataclass(kw_only=True)
class Work:
    """The tasks for some orders. `unsaid`: recipes of which nobody says how long they keep; `ahead_of`: how far ahead
    each task can be done, minutes; `there_min`: how long it takes to put the cake together where it will stand;
    `paces`: the kitchen's own."""

    orders: tuple[tuple[str, Order], ...]
    book: Book
    kitchen: WorkingKitchen
    tasks: list[Task] = field(default_factory=list)
    unsaid: list[str] = field(default_factory=list)
    ahead_of: dict[str, float] = field(default_factory=dict)
    there_min: float = 0.0
    paces: Mapping[str, Pace] = field(default_factory=dict)

    @property
    def slug(self) -> str:
        """The files of its orders."""
        return "+".join(self.slugs)

    @property
    def slugs(self) -> tuple[str, ...]:
        """The same one by one."""
        return tuple(slug for slug, _ in self.orders)

    @property
    def order(self) -> Order:
        """Its first order."""
        return self.orders[0][1]

    @property
    def out(self) -> datetime:
        """When the kitchen has to be done with it: when it is handed over, or when the drive begins."""
        return self.order.hand_over - timedelta(minutes=rounds((self.order.delivered or 0.0) + self.there_min))

    @property
    def on_the_day_min(self) -> float:
        """How long before it is handed over its own day begins."""
        midnight = datetime.combine(self.order.hand_over.date(), datetime.min.time())
        return (self.order.hand_over - midnight).total_seconds() / 60.0

    def keeps_min(self, slug: str, mixture: Mixture) -> float:
        """How long a recipe keeps at best in this kitchen, minutes."""
        kept = [keep.minutes for keep in mixture.keeps_for if self.kitchen.freezer or keep.place != FREEZER]
        if not kept and slug not in self.unsaid:
            self.unsaid.append(slug)
        return max(kept, default=UNSAID_MIN)

    def task(self, name: str, said: Saying, ahead_min: float, **what: object) -> Task:
        """One more task, which may be begun so long before it is handed over."""
        key = f"{self.slug}/{name}"
        windows = tuple(Window(order=slug, ahead_min=ahead_min) for slug in self.slugs)
        task = Task(key=key, orders=self.slugs, said=said, windows=windows, **what)  # type: ignore[arg-type]
        self.tasks.append(task)
        self.ahead_of[key] = ahead_min
        return task

    def add(
        self,
        name: str,
        chain: Sequence[Stint],
        said: Saying,
        *,
        after: Iterable[After] = (),
        times: int = 1,
        keeps_min: float | None = None,
        mixer: bool = False,
        eaten: bool = False,
        of: str = "",
    ) -> list[After]:
        """A chain of stints as tasks, and what has to be over before anything that comes next.

        `after` comes before the first of them that cannot be done further ahead than that: cards are drilled before
        there is a cake to stand on them. `keeps_min` takes the place of what the steps say about doing them ahead.
        Hands take `times` as long as for one, at the kitchen's own pace for `of`, the file it is from; and so much room
        is taken in the fridge.
        """
        first, ended = tuple(after), dict[int, After]()
        leads, joined = set[int](), set[int]()
        own = self.paces.get(of, Pace(1.0, 0))
        soonest = max((self.ahead_of.get(each.key, 0.0) for each in first), default=0.0)
        for place, stint in enumerate(chain):
            said_min = stint.ahead_min if keeps_min is None else keeps_min
            ahead = self.on_the_day_min if said_min is None else said_min
            before, follows = tuple(ended[at] for at in stint.after), bool(joined & set(stint.after))
            free = keeps_min is None and ahead > soonest
            if not free or follows:
                joined.add(place)
            task = self.task(
                name if len(chain) == 1 else f"{name}-{place + 1}",
                said,
                ahead,
                hands_min=rounds(stint.hands_min * times * own.factor),
                least_min=rounds(stint.least_min * times * own.factor),
                of=of,
                said_min=rounds(stint.hands_min * times),
                sittings=own.sittings,
                mixer=mixer,
                fridge=times if stint.chilled else 0,
                chill_min=rounds(stint.wait_min) if stint.chilled else 0,
                eaten=eaten,
                after=before if free or follows else (*before, *first),
                steps=tuple(unmarked(step.do) for step in stint.steps),
                place=sum(bool(each.hands_min) for each in chain[: place + 1]),
                places=sum(bool(each.hands_min) for each in chain),
            )
            leads.update(stint.after)
            ended[place] = After(key=task.key, wait_min=stint.wait_min, within_min=stint.within_min)
        ends = [ended[place] for place in range(len(chain)) if place not in leads]
        # where all of it can be done before what it comes after, both have to be over
        return ends if joined else [*first, *ends]
