"""Dowels under a tier: how many, going by what is published, where they go, and a plan of them at actual size."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import dist

from tinbook.engine import dividing
from tinbook.facts import Dowelled, Facts
from tinbook.models import FEWEST_DOWELS, Finish
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.saying import saying
from tinbook.plans.true_size.drawn import Label, Stroke, Template, cross, oval, ruler_mm
from tinbook.tins import Ring, Tin, standard_tins
from tinbook.tins.growth import ring_round

IN_MM = 25.4
NEAR_IN = 0.4
"""Cake sizes in cm count as their names in inches: 20 cm is 8 in, not 7.9."""
STEP_MM = 50.0
ALIKE_MM = 1.0
"""The names of one tin in inches and in cm differ by less than this, and so may two places that mirror each other."""
CORNERS = 36


@dataclass(frozen=True, slots=True, kw_only=True)
class DowelPlan:
    """Dowels in `cake` under the tier `above`. `low`, `high`: what is published for its size; `places` y upwards.

    `wanted` is the most published, or what the `house` sets if that is not below `low`. `inset_mm`: how far in from the
    edge of the tier above; `fewer`: whether fewer fit than are wanted.
    """

    cake: Tin
    above: Tin
    low: int
    high: int
    house: int | None
    wanted: int
    places: tuple[tuple[float, float], ...]
    inset_mm: float
    across_mm: float
    what: str
    source: str

    @property
    def count(self) -> int:
        """How many it takes."""
        return len(self.places)

    @property
    def fewer(self) -> bool:
        """Whether fewer fit than are wanted."""
        return self.count < self.wanted

    @property
    def by_house(self) -> bool:
        """Whether the house's own count is wanted."""
        return self.house is not None and self.house >= self.low


def published_for(size_in: float, rows: Iterable[Dowelled]) -> tuple[Dowelled, ...]:
    """What publications say for a tier this wide: from each source the rows for its size, or the next size up.

    Past its largest size a source says nothing, unless all of them are silent: then the largest of each.
    """
    ordered = sorted(rows, key=lambda row: row.source)
    by_source = [list(group) for _, group in groupby(ordered, key=lambda row: row.source)]
    published: list[Dowelled] = []
    for group in by_source:
        covering = [row for row in group if row.low_in - NEAR_IN <= size_in <= row.high_in + NEAR_IN]
        larger = sorted((row for row in group if row.low_in > size_in), key=lambda row: row.low_in)
        smaller = [row for row in group if row.high_in < size_in]
        if covering:
            published += covering
        elif larger and smaller:
            # between two sizes it lists
            published += larger[:1]
    return tuple(published) or tuple(max(group, key=lambda row: row.high_in) for group in by_source)


def may_stand(cake: Tin) -> tuple[Tin, ...]:
    """The tiers that can stand on it: of its shape, at least 5 cm (2 in) smaller; the usual one is the largest."""
    wide = cake.bounds_mm[0]
    smaller = [
        Tin(shape=tin.shape, sizes_mm=tin.sizes_mm, sold=tin.sold)
        for tin in standard_tins((cake.shape,), cake.sold)
        if tin.bounds_mm[0] <= wide - STEP_MM + ALIKE_MM
    ]
    return tuple(sorted(smaller, key=lambda tin: tin.bounds_mm[0]))


def tier_above(cake: Tin) -> Tin:
    """The tier that usually stands on it: of its shape, 5 cm (2 in) smaller, or the next smaller than that."""
    smaller = may_stand(cake)
    if not smaller:
        raise AskError(
            f"no smaller {cake.shape} is sold to stand on {cake.name}", 'say which, such as --above "round 10 cm"'
        )
    return smaller[-1]


def dowel_plan(cake: Tin, above: Tin, finish: Finish, facts: Facts) -> DowelPlan:
    """Dowels in `cake` under `above`: as many as the house sets, or the most published.

    AskError if it cannot stand there or there is room for too few dowels.
    """
    for tin, what in ((cake, "in"), (above, "under")):
        if tin.kind.in_trays or tin.kind.solid == "ball" or (tin.kind.solid == "dome" and tin is cake):
            raise AskError(f"dowels cannot go {what} {tin.name}", "name an upright cake")
    if any(top > low + ALIKE_MM for top, low in zip(above.bounds_mm, cake.bounds_mm, strict=True)):
        raise AskError(f"{above.name} is wider than {cake.name}, which it should stand on", "name a smaller --above")
    inset_mm, apart = facts.numbers["dowel from the edge"].value, facts.numbers["dowels apart"].value
    size_in = max(above.bounds_mm) / IN_MM
    rows = published_for(size_in, facts.dowels.values())
    most = max(rows, key=lambda row: row.count)
    low = min(row.count for row in rows)
    wanted = most.count if finish.dowels is None or finish.dowels < low else finish.dowels
    hint = "name a larger tier, or ask an experienced cake maker"
    small = AskError(
        f"{above.as_said} has no room for {FEWEST_DOWELS} dowels {ruler_mm(inset_mm):g} mm in from its edge", hint
    )
    try:
        ring = ring_round(above, -inset_mm)
    except ValueError:
        raise small from None
    for count in range(wanted, FEWEST_DOWELS - 1, -1):
        places = _places(ring, count)
        if dividing.nearest_mm(places) >= apart:
            break
    else:
        raise small
    across = most.across_in * IN_MM if most.across_in else facts.numbers["dowel across"].value
    return DowelPlan(
        cake=cake,
        above=above,
        low=low,
        high=most.count,
        house=finish.dowels,
        wanted=wanted,
        places=places,
        inset_mm=inset_mm,
        across_mm=across,
        what=most.what,
        source=most.source,
    )


def _places(ring: Ring, count: int) -> tuple[tuple[float, float], ...]:
    """So many places along the ring, evenly spaced: of an odd number the first at the back in the middle, so that the
    front sees as many on its left as on its right. An even number begins at the furthest point, a corner if the ring
    has one, of several that furthest back; where that would stand askew, as in a heart, half a space from the middle of
    the back, or in it, whichever leaves them further apart."""
    middle = _from_the_back(ring)
    if count % 2:
        return dividing.along_ring(middle, count)

    def far_back(index: int) -> tuple[float, ...]:
        x, y = ring[index]
        return round(x * x + y * y, 3), round(y, 3), -round(abs(x), 3), -index

    far = max(range(len(ring)), key=far_back)
    places = dividing.along_ring((*ring[far:], *ring[:far]), count)
    if _alike(places):
        return places
    others = (dividing.along_ring(middle, 2 * count)[1::2], dividing.along_ring(middle, count))
    return max((each for each in others if _alike(each)), key=dividing.nearest_mm, default=places)


def _from_the_back(ring: Ring) -> Ring:
    """The ring from where it crosses its axis at the back."""
    ends = zip(ring, (*ring[1:], ring[0]), strict=True)
    backs = [
        (y1 - (y2 - y1) * x1 / (x2 - x1), nth)
        for nth, ((x1, y1), (x2, y2)) in enumerate(ends)
        if min(x1, x2) <= 0.0 < max(x1, x2)
    ]
    y, nth = max(backs)
    return ((0.0, y), *ring[nth + 1 :], *ring[: nth + 1])


def _alike(places: Sequence[tuple[float, float]]) -> bool:
    """Whether they stand alike on the left and on the right."""
    return all(any(dist((-x, y), other) < ALIKE_MM for other in places) for x, y in places)


def dowel_template(plan: DowelPlan, through_mm: float | None = None) -> Template:
    """A plan to lay on the lower tier and prick through: its outline, the tier above, each dowel, and the hole in the
    middle for a dowel `through_mm` thick through all tiers, if there is one."""
    strokes = [Stroke.ring("cut", ring_round(plan.cake, 0.0)), Stroke.ring("inner", ring_round(plan.above, 0.0))]
    wide, long = (side / 2.0 for side in plan.cake.bounds_mm)
    strokes += [
        Stroke("centre", ((-wide, 0.0), (wide, 0.0))),
        Stroke("centre", ((0.0, -long), (0.0, long))),
    ]
    # off the middle, where sheets are joined
    labels = [Label(plan.above.name, (0.16 * plan.above.bounds_mm[0], 0.1 * plan.above.bounds_mm[1]))]
    for number, (x, y) in enumerate(plan.places, 1):
        middle = (x, -y)
        strokes += [
            Stroke("hidden", oval(middle, plan.across_mm, plan.across_mm, CORNERS)),
            *cross(middle, 2.0, "inner"),
        ]
        labels.append(Label(str(number), (x + plan.across_mm / 2.0 + 3.0, -y - 3.0), True))
    if through_mm is not None:
        strokes.append(Stroke("cut", oval((0.0, 0.0), through_mm, through_mm, CORNERS)))
        labels.append(Label(saying("through_hole", across_mm=ruler_mm(through_mm)), (through_mm / 2.0 + 3.0, 5.0)))
    note = saying(
        "dowels_published",
        count=plan.count,
        what=plan.what,
        cake=plan.cake.name,
        above=plan.above.name,
        inset_mm=ruler_mm(plan.inset_mm),
        low=plan.low,
        high=plan.high,
        source=plan.source,
        wanted=plan.wanted,
        house=plan.house,
    )
    return Template(
        key="dowel-plan",
        name=saying("dowel_plan"),
        size=saying("dowels_across", count=plan.count, across_mm=ruler_mm(plan.across_mm)),
        cake=plan.cake,
        strokes=tuple(strokes),
        labels=tuple(labels),
        notes=(note, saying("dowels_cut_to"), saying("dowels_counted")),
    )
