"""How long a mixture bakes in a tin: when to start checking, when it is most likely done, and what that rests on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, log
from typing import TYPE_CHECKING, NamedTuple

from tinbook.engine import baking, conduction, rounding
from tinbook.engine.baking import Evidence, Law, OfKind, Prior
from tinbook.facts import Facts, Kind
from tinbook.models import Baked, Book
from tinbook.plans.base.bake_log import batter_mm, of_bakes
from tinbook.plans.base.weighing import Batch, as_owned, weigh
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin

if TYPE_CHECKING:
    from tinbook.engine.baking import Floats

ANCHOR_C = 170.0
"""The oven for which the facts say how long a kind of mixture bakes."""
NEAR = 0.15
"""How far, in ln width and ln depth, a tin may lie from one that was baked and still be called as good as it."""


class Time(NamedTuple):
    """Minutes in the oven: the likeliest, the 80 % span about it, and when to look first; then as a timer is set."""

    likely_min: float
    low_min: float
    high_min: float
    check_min: float
    low_shown_min: float
    high_shown_min: float
    check_shown_min: float


class BakePoint(NamedTuple):
    """One bake that was learned from. `entry` is its line of the log, None for the recipe's own time."""

    tin: Tin
    width_mm: float
    depth_mm: float
    minutes: float
    entry: Baked | None


@dataclass(frozen=True, kw_only=True)
class Baking:
    """What is known of one mixture's time in the oven. Temperatures in °C, of an oven without fan."""

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
        """For each tin with its batter so many mm deep, in an oven and from a start other than usual where told.

        Never less than the middle needs by conduction alone. ValueError where the oven is too cool for the centre.
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
        least = self._least(widths, depths, np.minimum(self.check_share * medians, medians / apart), oven_c, start_c)
        likely = np.maximum(medians, least)
        low, high = np.maximum(likely / apart, least), likely * apart
        check = np.maximum(np.minimum(self.check_share * likely, low), least)
        shown = rounding.minutes_down_each(low), rounding.minutes_up_each(high), rounding.minutes_down_each(check)
        columns = [column.tolist() for column in (likely, low, high, check, *shown)]
        return list(map(Time._make, zip(*columns, strict=True)))

    def _least(
        self, widths: Sequence[float], depths: Sequence[float], check: Floats, oven_c: float, start_c: float
    ) -> Floats:
        """Minutes that the middle needs by conduction alone, where to `check` then would be too early; else 0."""
        import numpy as np

        least = np.zeros(len(widths))
        asked = oven_c, start_c, self.centre_c
        # a cake without edges is slower than any, and its time is known from other tins
        slabs = np.array([conduction.slab_minutes(ceil(depth), *asked) for depth in depths])
        for at in np.flatnonzero(check < slabs).tolist():
            if not conduction.is_reached(widths[at], depths[at], float(check[at]), *asked):
                least[at] = conduction.centre_minutes(widths[at], depths[at], *asked)
        return least

    def cooler_c(self, tin: Tin, depth_mm: float, oven_c: float, facts: Facts) -> float | None:
        """The cooler oven that some bakers choose for a wide tin or a deep batter, °C; None for others."""
        numbers = facts.numbers
        wide, deep = numbers["wide tin from"].value, numbers["deep batter from"].value
        if width_mm(tin) < wide and depth_mm < deep:
            return None
        cooler = oven_c - numbers["wide tin oven"].value
        return cooler if cooler > self.centre_c + 10.0 else None

    def told(self, tin: Tin, depth_mm: float) -> str:
        """In words, how far a tin lies from what has been baked."""
        return self.far([(tin, depth_mm)])[0].told

    def far(self, cakes: Sequence[tuple[Tin, float]]) -> list[Far]:
        """For each tin with its batter so many mm deep, how far it lies from the nearest bake."""
        if not self.points:
            kin = f"; {self.kin} of other {self.batch.kind.title.lower()} recipes" if self.kin else ""
            return [Far(1.0, 1.0, f"nothing baked of this recipe yet{kin}") for _ in cakes]
        import numpy as np

        sizes = np.array([(width_mm(tin), depth) for tin, depth in cakes]).reshape(-1, 1, 2)
        ratios = sizes / np.array([(point.width_mm, point.depth_mm) for point in self.points])
        apart = np.abs(np.log(ratios)).sum(axis=2)
        near, nearest = (apart <= NEAR).tolist(), apart.argmin(axis=1)
        tenths = np.floor(10.0 * ratios[np.arange(len(cakes)), nearest] + rounding.HALF) / 10.0
        bakes = [f"as the nearest bake, {point.tin.name}" for point in self.points]
        return [
            self._near(each) if each[at] else Far(wide, deep, bakes[at])
            for each, at, (wide, deep) in zip(near, nearest.tolist(), tenths.tolist(), strict=True)
        ]

    def _near(self, which: Sequence[bool]) -> Far:
        near = [point for point, is_near in zip(self.points, which, strict=True) if is_near]
        logged = sum(point.entry is not None for point in near)
        if not logged:
            return Far(1.0, 1.0, "as in the tin it is written for")
        own = ", and the recipe's own time" if len(near) > logged else ""
        return Far(1.0, 1.0, f"{of_bakes(logged)} in such a tin{own}")


class Far(NamedTuple):
    """So many times as wide and as deep as the nearest bake, to a tenth, and that bake in words; 1 and 1 where it is
    near enough, or where there is none."""

    wide: float
    deep: float
    words: str

    @property
    def told(self) -> str:
        """All of it in words."""
        both = ((self.wide, "wide"), (self.deep, "deep"))
        said = " and ".join(f"{times:g} times as {how}" for times, how in both if times != 1.0)
        return f"{said} {self.words}".strip()


@lru_cache(maxsize=4096)
def width_mm(tin: Tin) -> float:
    """How wide a tin is for the heat, mm: 4 × area / wall. The diameter of a round one, the side of a square one;
    of a ring twice the cake between tube and wall."""
    return 4.0 * tin.area_mm2 / (tin.perimeter_mm + tin.inner_perimeter_mm)


def prior(kind: Kind, facts: Facts) -> Prior | None:
    """What is thought of a kind of mixture before anything was baked; None for what is not baked."""
    if kind.bake is None:
        return None
    numbers = facts.numbers
    width, depth = numbers["bake width exponent"], numbers["bake depth exponent"]
    anchor = baking.heat(ANCHOR_C, numbers["batter at the start"].value, numbers["centre when done"].value)
    minutes = kind.bake
    return Prior(
        (log(minutes.typical / anchor), width.value, depth.value),
        (
            baking.spread(log(minutes.low), log(minutes.high)),
            baking.spread(width.low or width.value, width.high or width.value),
            baking.spread(depth.low or depth.value, depth.high or depth.value),
        ),
        (
            numbers["bake time, recipe to recipe"].value,
            numbers["bake width, recipe to recipe"].value,
            numbers["bake depth, recipe to recipe"].value,
        ),
        numbers["bake scatter"].value,
    )


class _Kind(NamedTuple):
    """What each mixture of a kind tells of it and from how many bakes, and all of them together."""

    each: Mapping[str, tuple[OfKind, int]]
    all: OfKind
    bakes: int


class Bakes:
    """All that the book knows of baking times; what recipes of a kind share is reckoned once."""

    def __init__(self, book: Book, facts: Facts, batches: Mapping[str, Batch] | None = None) -> None:
        self._book, self._facts = book, facts
        self._batches: dict[str, Batch] = dict(batches or {})
        self._read: dict[str, tuple[tuple[BakePoint, ...], Evidence]] = {}
        self._kinds: dict[str, _Kind] = {}
        self._known: dict[str, Baking | None] = {}

    def of(self, batch: Batch) -> Baking | None:
        """What is known of one mixture; None for what is not baked."""
        if self._batches.get(batch.slug) is not batch:
            return self._learned(batch)
        if batch.slug not in self._known:
            self._known[batch.slug] = self._learned(batch)
        return self._known[batch.slug]

    def _learned(self, batch: Batch) -> Baking | None:
        before = prior(batch.kind, self._facts)
        if before is None:
            return None
        numbers = self._facts.numbers
        start_c, centre_c = numbers["batter at the start"].value, numbers["centre when done"].value
        points, own = self._seen(batch, before)
        kind = self._of_kind(batch.kind.key, before)
        mine, count = kind.each.get(batch.slug, (baking.NO_KIN, 0))
        law = baking.learned(before, own, kind.all - mine)
        written = batch.mixture.bake
        oven_c = written.oven.celsius if written else ANCHOR_C
        return Baking(
            batch=batch,
            law=law,
            oven_c=oven_c,
            start_c=start_c,
            centre_c=centre_c,
            points=points,
            kin=kind.bakes - count,
            check_share=numbers["start checking"].value,
        )

    def _seen(self, batch: Batch, before: Prior) -> tuple[tuple[BakePoint, ...], Evidence]:
        """The bakes of a mixture, and what they say."""
        if batch.slug not in self._read:
            points = self._points(batch)
            self._read[batch.slug] = points, _evidence(points, batch, before, self._book, self._facts)
        return self._read[batch.slug]

    def _of_kind(self, kind: str, before: Prior) -> _Kind:
        """What the mixtures of a kind tell: each that tells anything, and all together."""
        if kind not in self._kinds:
            each: dict[str, tuple[OfKind, int]] = {}
            for slug, mixture in self._book.mixtures.items():
                if mixture.kind == kind and (mixture.bake or slug in self._book.bakes_of):
                    points, seen = self._seen(self._batch(slug), before)
                    each[slug] = baking.of_kind(before, seen), len(points)
            told = sum((one for one, _ in each.values()), baking.NO_KIN)
            self._kinds[kind] = _Kind(each, told, sum(count for _, count in each.values()))
        return self._kinds[kind]

    def _batch(self, slug: str) -> Batch:
        if slug not in self._batches:
            self._batches[slug] = weigh(slug, self._book.mixtures[slug], self._book, self._facts)
        return self._batches[slug]

    def _points(self, batch: Batch) -> tuple[BakePoint, ...]:
        found = []
        written = batch.mixture.bake
        if written and batch.tins:
            tin = max((tin for _, tin in batch.tins), key=width_mm)
            middle = (written.time.low.base * written.time.high.base) ** 0.5
            found.append(
                BakePoint(tin=tin, width_mm=width_mm(tin), depth_mm=_written_mm(batch, tin), minutes=middle, entry=None)
            )
        gravity = batch.mass_g / batch.batter_ml
        for entry in self._book.bakes_of.get(batch.slug, ()):
            depth = batter_mm(entry, gravity)
            if depth:
                tin = as_owned(entry.tin, self._book)
                found.append(
                    BakePoint(tin=tin, width_mm=width_mm(tin), depth_mm=depth, minutes=entry.done_after, entry=entry)
                )
        return tuple(found)


def _written_mm(batch: Batch, tin: Tin) -> float:
    """How deep the written batter stands in one of its tins."""
    return min(batch.depth_mm, tin.brim_mm)


def _evidence(points: Sequence[BakePoint], batch: Batch, before: Prior, book: Book, facts: Facts) -> Evidence:
    heats = [heat_of(point, batch, book, facts) for point in points]
    return baking.evidence(
        [point.width_mm for point in points], [point.depth_mm for point in points], heats,
        [point.minutes for point in points], before,
    )  # fmt: skip


def heat_of(point: BakePoint, batch: Batch, book: Book, facts: Facts) -> float:
    """The heat a bake had: a logged one by what the house's oven does at that dial, the recipe's own as written."""
    numbers = facts.numbers
    start_c, centre_c = numbers["batter at the start"].value, numbers["centre when done"].value
    entry = point.entry
    if entry is None:
        written = batch.mixture.bake
        return baking.heat(written.oven.celsius if written else ANCHOR_C, start_c, centre_c)
    oven_c = entry.oven.celsius + book.house.oven.off_c
    return baking.heat(
        oven_c, start_c if entry.start is None else entry.start, centre_c if entry.centre is None else entry.centre
    )


def baking_worked(made: Baking, facts: Facts) -> Worked:
    """The prior, the entries and the exponents, for the fold."""
    kind, numbers = made.batch.kind, facts.numbers
    width, depth = numbers["bake width exponent"], numbers["bake depth exponent"]
    logged = made.logged
    rests = [of_bakes(logged)] if logged else []
    if len(made.points) > logged:
        rests.append("the recipe's own time")
    if made.kin:
        rests.append(f"{made.kin} of other {kind.title.lower()} recipes")
    bake = kind.bake
    return Worked(
        "minutes = c × width^p × batter depth^q × ln(1.6 (oven − start) / (oven − centre)); "
        "c, p and q learned from bakes, a Bayesian line in the logs",
        (
            f"before any bake: p {width.value:g}, q {depth.value:g}"
            + (f", {bake.typical:g} min for 20 cm with 4 cm of batter at {ANCHOR_C:g} °C" if bake else ""),
            f"learned from {', '.join(rests)}" if rests else "nothing baked yet: the span is wide",
            f"learned: p {rounding.factor(made.law.width_exponent):g}, q {rounding.factor(made.law.depth_exponent):g}",
            f"oven {made.oven_c:.0f} °C without fan, batter {made.start_c:g} °C, done at {made.centre_c:g} °C",
            f"the span holds 8 bakes of 10; start checking at {made.check_share:.0%} of the likeliest time, or where "
            "the span begins; never before the middle can be warm by conduction",
            "one tin in a hot oven: more tins at once, or an oven still cold, take longer; that is not allowed for",
        ),
        tuple(dict.fromkeys([*([bake.source] if bake else []), width.source, *width.also, depth.source])),
    )
