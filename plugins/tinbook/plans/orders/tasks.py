"""What a plan of the week is made of: tasks, what each needs, and what has to come before it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from tinbook.plans.base.saying import Saying

SLOT_MIN = 5
"""Everything is planned in rounds of so many minutes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class After:
    """What comes first: a task by its key; at least and at most how many minutes after it has ended, None for any."""

    key: str
    wait_min: float = 0.0
    within_min: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """For an order, how long before it goes out a task may begin at the earliest, minutes."""

    order: str
    ahead_min: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Something to do in one go.

    `hands_min` someone is busy with it, the mixer too if `mixer`; the oven is on for `oven_min` after that, at `oven_c`
    without fan. Then it may stand in the fridge, `fridge` tiers or trays, for `chill_min`. `away`: it is done outside
    the kitchen. `orders`: for whom, by their files. `windows`: how early for each. `eaten`: the fresher the better.
    `at`: when it has to begin, if that cannot be chosen. `steps`: how they begin; it is the one at `place` of the
    `places` that this recipe or technique takes. `of`: its file name; `said_min`: how long its steps say, where the
    kitchen's own pace, from so many `sittings`, makes `hands_min` of it. `not_before`: when what comes first has stood.
    `least_min` and `oven_least_min`: how long hands and oven are busy at the least, if that is not the same.
    """

    key: str
    orders: tuple[str, ...]
    said: Saying
    hands_min: int
    oven_min: int = 0
    oven_c: float | None = None
    mixer: bool = False
    away: bool = False
    fridge: int = 0
    chill_min: int = 0
    eaten: bool = False
    after: tuple[After, ...] = ()
    windows: tuple[Window, ...] = ()
    at: datetime | None = None
    steps: tuple[str, ...] = ()
    place: int = 1
    places: int = 1
    of: str = ""
    said_min: int = 0
    sittings: int = 0
    not_before: datetime | None = None
    least_min: int | None = None
    oven_least_min: int | None = None

    @property
    def long_min(self) -> int:
        """From its beginning until hands and oven are done with it."""
        return self.hands_min + self.oven_min


def rounds(minutes: float) -> int:
    """Minutes in whole rounds, never less: 12 is 15."""
    return SLOT_MIN * -int(-minutes // SLOT_MIN)
