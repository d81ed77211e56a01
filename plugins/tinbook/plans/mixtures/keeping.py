"""When a mixture is in season and how long it keeps, in the few words that lists are narrowed by."""

from __future__ import annotations

from tinbook.models import Mixture
from tinbook.models.keeping import FREEZER, SEASONS
from tinbook.models.steps import DAY_MIN

AT_LEAST = {"3 days": 3 * DAY_MIN, "a week": 7 * DAY_MIN, "a month": 30 * DAY_MIN}
FROZEN = "frozen"
MARKS = (*AT_LEAST, FROZEN)


def season_names(mixture: Mixture) -> tuple[str, ...]:
    """The seasons that its months fall in, in the order of the year; none where nothing is said."""
    months = {month for season in mixture.seasons for month in season.months}
    return tuple(name for name, within in SEASONS.items() if months & set(within))


def keep_marks(mixture: Mixture) -> tuple[str, ...]:
    """Each of MARKS that it keeps for: so long unfrozen, and whether it freezes."""
    longest = max((each.minutes for each in mixture.keeps_for if each.place != FREEZER), default=0.0)
    marks = [mark for mark, least in AT_LEAST.items() if longest >= least]
    return (*marks, FROZEN) if any(each.place == FREEZER for each in mixture.keeps_for) else tuple(marks)
