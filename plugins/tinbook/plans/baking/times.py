"""How long a mixture bakes in a tin: when to start checking, when it is most likely done, and what that is based on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from typing import TYPE_CHECKING, NamedTuple

from tinbook.engine import baking, conduction, rounding
from tinbook.engine.baking import Law
from tinbook.facts import Facts
from tinbook.models import Baked
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin

if TYPE_CHECKING:
    from tinbook.engine.baking import Floats

ANCHOR_C = 170.0
"""The oven for which the facts give a kind's baking time."""
NEAR = 0.15
"""How far, in ln width and ln depth, a tin may be from one that was baked in and still count as the same."""


class Time(NamedTuple):
    """Minutes in the oven: the likeliest, the 80 % range round it, and when to look first; then as a timer is set.

    `held`: the bakes alone would give a time before conduction can warm the middle; it begins at that minute.
    """

    likely_min: float
    low_min: float
    high_min: float
    check_min: float
    low_shown_min: float
    high_shown_min: float
    check_shown_min: float
    held: bool


class BakePoint(NamedTuple):
    """One bake that was learned from. `entry` is its line in the log, None for the recipe's own time."""

    tin: Tin
    width_mm: float
    depth_mm: float
    minutes: float
    entry: Baked | None


@dataclass(frozen=True, kw_only=True)
class Baking:
    """What is known about one mixture's time in the oven. Temperatures in °C, for an oven without fan."""

    batch: Batch
    law: Law
    oven_c: float
    start_c: float
    centre_c: float
    points: tuple[BakePoint, ...]
    kin: int
    """Bakes of other mixtures of its kind that were learned from."""
    check_share: float

    @property
    def logged(self) -> int:
        """Entries of the log among the points."""
        return sum(point.entry is not None for point in self.points)

    def times(
        self, cakes: Sequence[tuple[Tin, float]], oven_c: float | None = None, start_c: float | None = None
    ) -> list[Time]:
        """For each (tin, batter depth in mm), the time, at an unusual oven or starting temperature if given, °C.

        Never less than conduction alone needs to heat the middle, in whole minutes, and never shown as less. ValueError
        where the oven is too cool for the centre.
        """
        import numpy as np

        oven_c = self.oven_c if oven_c is None else oven_c
        start_c = self.start_c if start_c is None else start_c
        if not cakes:
            return []

        widths = [width_mm(tin) for tin, _ in cakes]
        depths = [depth for _, depth in cakes]
        medians, spreads = self.law.minutes(widths, depths, baking.heat(oven_c, start_c, self.centre_c))
        apart = np.exp(baking.EIGHTY_PERCENT * spreads)
        looked = rounding.minutes_down_each(np.minimum(self.check_share * medians, medians / apart))
        least = self._least(widths, depths, looked, oven_c, start_c)
        likely = np.maximum(medians, least)
        low, high = np.maximum(likely / apart, least), likely * apart
        check = np.maximum(np.minimum(self.check_share * likely, low), least)
        low_shown, check_shown = (np.maximum(rounding.minutes_down_each(each), least) for each in (low, check))
        shown = low_shown, rounding.minutes_up_each(high), check_shown, least > 0.0
        columns = [column.tolist() for column in (likely, low, high, check, *shown)]
        return list(map(Time._make, zip(*columns, strict=True)))

    def _least(
        self, widths: Sequence[float], depths: Sequence[float], check: Floats, oven_c: float, start_c: float
    ) -> Floats:
        """Whole minutes that the middle needs by conduction alone, where `check` would be too early; otherwise 0."""
        import numpy as np

        least = np.zeros(len(widths))
        heats = oven_c, start_c, self.centre_c
        # a cake without edges is slower than any other, and its time is known from other tins
        slabs = np.array([conduction.slab_minutes(ceil(depth), *heats) for depth in depths])
        for index in np.flatnonzero(check < slabs).tolist():
            if not conduction.is_reached(widths[index], depths[index], float(check[index]), *heats):
                least[index] = ceil(conduction.centre_minutes(widths[index], depths[index], *heats))
        return least

    def cooler_c(self, tin: Tin, depth_mm: float, oven_c: float, facts: Facts) -> float | None:
        """The cooler oven that some bakers choose for a wide tin or a deep batter, °C; None for others."""
        numbers = facts.numbers
        wide, deep = numbers["wide tin from"].value, numbers["deep batter from"].value
        if width_mm(tin) < wide and depth_mm < deep:
            return None
        cooler = oven_c - numbers["wide tin oven"].value
        return cooler if cooler > self.centre_c + 10.0 else None

    def told(self, tin: Tin, depth_mm: float) -> Saying:
        """How far a tin is from what has been baked."""
        return self.far([(tin, depth_mm)])[0].told

    def far(self, cakes: Sequence[tuple[Tin, float]]) -> list[Far]:
        """For each (tin, batter depth in mm), how far it is from the nearest bake."""
        if not self.points:
            nothing = saying("nothing_baked", kin=self.kin, kind=self.batch.kind.title)
            return [Far(1.0, 1.0, nothing) for _ in cakes]
        import numpy as np

        sizes = np.array([(width_mm(tin), depth) for tin, depth in cakes]).reshape(-1, 1, 2)
        ratios = sizes / np.array([(point.width_mm, point.depth_mm) for point in self.points])
        apart = np.abs(np.log(ratios)).sum(axis=2)
        near, nearest = (apart <= NEAR).tolist(), apart.argmin(axis=1)
        tenths = np.floor(10.0 * ratios[np.arange(len(cakes)), nearest] + rounding.HALF) / 10.0
        bakes = [saying("as_the_nearest_bake", tin=point.tin.name) for point in self.points]
        return [
            self._near(which) if which[index] else Far(wide, deep, bakes[index])
            for which, index, (wide, deep) in zip(near, nearest.tolist(), tenths.tolist(), strict=True)
        ]

    def _near(self, which: Sequence[bool]) -> Far:
        near = [point for point, is_near in zip(self.points, which, strict=True) if is_near]
        logged = sum(point.entry is not None for point in near)
        if not logged:
            return Far(1.0, 1.0, saying("as_in_its_own_tin"))
        if len(near) > logged:
            return Far(1.0, 1.0, saying("bakes_and_own_time", bakes=logged))
        return Far(1.0, 1.0, saying("bakes_in_such_a_tin", bakes=logged))


class Far(NamedTuple):
    """How many times as wide and as deep as the nearest bake, to a tenth, and what is said about that bake; 1 and 1
    where it is near enough, or where there is none."""

    wide: float
    deep: float
    baked: Saying

    @property
    def told(self) -> Saying:
        """The full remark."""
        return saying("so_far_from", wide=self.wide, deep=self.deep, baked=self.baked)


@lru_cache(maxsize=4096)
def width_mm(tin: Tin) -> float:
    """The width of a tin that counts for heat, mm: 4 × area / wall. The diameter of a round one, the side of a square
    one; for a ring, twice the cake between tube and wall."""
    return 4.0 * tin.area_mm2 / (tin.perimeter_mm + tin.inner_perimeter_mm)


def baking_worked(known: Baking, facts: Facts, times: Sequence[Time] = ()) -> Worked:
    """The prior, the entries and the exponents, for the fold under these `times`; and in how many of them heat
    decides."""
    kind, numbers = known.batch.kind, facts.numbers
    width, depth = numbers["bake width exponent"], numbers["bake depth exponent"]
    logged = known.logged
    bakes = [saying("bakes_of_the_recipe", bakes=logged)] if logged else []
    if len(known.points) > logged:
        own = known.batch.mixture.bake.time if known.batch.mixture.bake else None
        bakes.append(saying("recipes_own_time", span=(own.low.base, own.high.base) if own else ()))
    if known.kin:
        bakes.append(saying("of_other_recipes", bakes=known.kin, kind=kind.title))
    bake, law = kind.bake, known.law
    held = sum(time.held for time in times)
    return Worked(
        saying("time_law"),
        (
            saying(
                "before_any_bake",
                width=width.value,
                depth=depth.value,
                typical_min=bake.typical if bake else None,
                oven_c=ANCHOR_C,
            ),
            saying("learned_from", bakes=tuple(bakes)),
            saying(
                "learned_powers",
                width=rounding.factor(law.width_exponent),
                depth=rounding.factor(law.depth_exponent),
            ),
            saying("heats_of_a_bake", oven_c=known.oven_c, start_c=known.start_c, centre_c=known.centre_c),
            saying("span_and_check", share=known.check_share),
            *([saying("held_by_conduction", tins=held, of=len(times))] if held else []),
            saying("one_tin_in_a_hot_oven"),
        ),
        tuple(dict.fromkeys([*([bake.source] if bake else []), width.source, *width.also, depth.source])),
    )
