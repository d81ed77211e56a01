"""When a mixture is in season and how long it keeps, in the few words used to narrow lists."""

from __future__ import annotations

from tinbook.models import CakeDesign, Mixture
from tinbook.models.keeping import FREEZER, SEASONS
from tinbook.models.steps import DAY_MIN
from tinbook.plans.base.saying import Saying, saying

AT_LEAST = {
    saying("keeps_three_days"): 3 * DAY_MIN, saying("keeps_a_week"): 7 * DAY_MIN, saying("keeps_a_month"): 30 * DAY_MIN,
}  # fmt: skip
FROZEN = saying("keeps_frozen")
MARKS = (*AT_LEAST, FROZEN)


def season_names(mixture: Mixture | CakeDesign) -> tuple[str, ...]:
    """The seasons the months of a mixture or a cake fall in, in the order of the year; none if it gives none."""
    months = {month for season in mixture.seasons for month in season.months}
    return tuple(name for name, within in SEASONS.items() if months & set(within))


def keep_marks(mixture: Mixture) -> tuple[Saying, ...]:
    """Those of MARKS that it keeps for: how long unfrozen, and whether it freezes."""
    longest_min = max((keep.minutes for keep in mixture.keeps_for if keep.place != FREEZER), default=0.0)
    marks = tuple(mark for mark, least_min in AT_LEAST.items() if longest_min >= least_min)
    return (*marks, FROZEN) if any(keep.place == FREEZER for keep in mixture.keeps_for) else marks
