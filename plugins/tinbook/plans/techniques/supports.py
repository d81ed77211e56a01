"""What holds a part and is not food: how deep it goes in at each cake, and how much of it is elsewhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from tinbook.engine import solids
from tinbook.facts import Facts
from tinbook.models import BEHIND, Part
from tinbook.plans.techniques.shapes import ShapeAt, shape_of

SEEN_MM = 0.05
"""A support shortened by less than this is not called shortened."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SupportAt:
    """A support in one part: `reach_mm` of it in the part, which has `room_mm` there, `rest_mm` in the cake, or in the
    part `rest_in`; `through_mm` of it in parts on the way to the cake.

    `each` for one part, `count` for all of them. `shortened`: to stay clear of the front.
    """

    what: str
    each: int
    count: int
    goes_in: str
    reach_mm: float
    room_mm: float
    rest_mm: float
    rest_in: str
    shortened: bool
    through_mm: float = 0.0

    @property
    def length_mm(self) -> float:
        """How long to cut it."""
        return self.reach_mm + self.through_mm + self.rest_mm


def support_at(part: Part, shape: ShapeAt, s: float, facts: Facts) -> SupportAt | None:
    """A part's support at scale s: it goes as deep, but stays clear of the front, where the thickness does not grow."""
    support = part.support
    if support is None:
        return None
    behind = support.goes_in == BEHIND
    room_mm = _room_mm(shape, behind)
    # where the baker leaves less in front of it, that is kept at every size
    spare_mm = max(_room_mm(shape_of(part, 1.0), behind) - support.length, 0.0)
    cover_mm = min(facts.numbers["kept before a support"].value, spare_mm)
    wanted_mm = support.length * s
    reach_mm = min(wanted_mm, max(room_mm - cover_mm, 0.0))
    return SupportAt(
        what=support.what,
        each=support.count,
        count=support.count * part.count,
        goes_in=support.goes_in,
        reach_mm=reach_mm,
        room_mm=room_mm,
        rest_mm=(support.in_the_cake or support.rest or 0.0) * s,
        rest_in=support.rest_in or "",
        shortened=reach_mm < wanted_mm - SEEN_MM,
    )


def through(held: SupportAt | None, on: str, under: Mapping[str, tuple[float, str]]) -> SupportAt | None:
    """The support of a part that stands `on` another, longer by the parts it goes through from below into the cake; of
    each `under` it how high that is, and what that stands on."""
    if held is None or held.goes_in == BEHIND or held.rest_in or not held.rest_mm:
        return held
    between = 0.0
    while on in under:
        high_mm, on = under[on]
        between += high_mm
    return replace(held, through_mm=between)


def _room_mm(shape: ShapeAt, behind: bool) -> float:
    """How far a support can go before it comes out: the thickness from behind, the height from below."""
    return shape.thick_mm if behind else solids.bounds(shape.outline_mm)[1]
