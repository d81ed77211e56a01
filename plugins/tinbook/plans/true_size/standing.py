"""A decoration as it stands on a cake or hangs on it, seen from the front, and what it takes of the board.

Lengths in mm, y upwards, on the board to the back.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tinbook.engine import solids
from tinbook.engine.free_board import hull_of
from tinbook.models.ledger import Itself
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.plans.true_size.assembled import put_together
from tinbook.plans.true_size.coiled import coil_across_mm, coil_from_mm, low_ring, rope_rings
from tinbook.tins import Ring

APART_MM = 5.0
"""Between parts that do not say what they stand on, as they are drawn. Our own judgement."""
LIMP = ("rope", "strip")


@dataclass(frozen=True, slots=True, kw_only=True)
class Footprint:
    """What stands on the board by itself: the part, its outline from above about its middle, how wide and deep it is,
    and how many of them one decoration has."""

    part: str
    ring: Ring
    wide_mm: float
    deep_mm: float
    count: int


def as_it_stands(made: Decoration, hung: bool = False) -> tuple[Ring, ...]:
    """Its outlines, those at the back first, about its own middle and from its foot: its parts put together or, where
    they do not say how, one of each side by side, what lies flat as low as it lies. `hung`: on a side, where what is
    flat is seen from the front."""
    return _stands(Itself(made), hung)


def high_mm(made: Decoration, hung: bool = False) -> float:
    """How high it stands or, hung on a side, how far it reaches up it."""
    return max((y for ring in as_it_stands(made, hung) for _, y in ring), default=0.0)


@lru_cache(maxsize=128)
def _stands(made: Itself[Decoration], hung: bool) -> tuple[Ring, ...]:
    whole = put_together(made.value)
    if whole is not None:
        rings = [ring for piece in whole.pieces for ring in piece.rings]
    else:
        rings, right = list[Ring](), 0.0
        for part in made.value.parts:
            own = _part(part, hung)
            left, foot = (min(point[axis] for ring in own for point in ring) for axis in (0, 1))
            rings += [tuple((x - left + right, y - foot) for x, y in ring) for ring in own]
            right = max(x for ring in rings for x, _ in ring) + APART_MM
    if not rings:
        return ()
    left, right = (end(x for ring in rings for x, _ in ring) for end in (min, max))
    foot = min(y for ring in rings for _, y in ring)
    return tuple(tuple((x - (left + right) / 2.0, y - foot) for x, y in ring) for ring in rings)


def _part(part: PartAt, hung: bool) -> tuple[Ring, ...]:
    """One part by itself: coiled, flat or standing; a rope or a strip that lies anyhow by its end."""
    if part.coiled is not None:
        return rope_rings(part, None)
    if hung:
        return part.outline_mm
    if part.form in LIMP:
        thick = part.thick_mm
        return (solids.oval(thick, thick) if part.form == "rope" else solids.oblong(part.height_mm, thick),)
    if not part.flat:
        return part.outline_mm
    return (low_ring(part.width_mm, part.thick_mm) if part.flattened else solids.oblong(part.width_mm, part.thick_mm),)


def footprints(made: Decoration) -> tuple[Footprint, ...]:
    """What a decoration takes of the board: every part that stands on no other, with what is coiled beside it. Ropes
    and strips that are not coiled lie where there is room, and need none of their own."""
    found = list[Footprint]()
    whole = put_together(made) is not None
    for part in made.parts:
        if part.stands_on or part.lies_on or (part.form in LIMP and part.coiled is None):
            continue
        coils = [
            (coil_from_mm(each, part), 0.0, coil_across_mm(each, part))
            for each in made.parts
            if each.lies_on == part.name and each.coiled is not None
        ]
        ring = hull_of(coils, _from_above(part))
        (left, low), (right, high) = (
            tuple(end(point[axis] for point in ring) for axis in (0, 1)) for end in (min, max)
        )
        found.append(
            Footprint(
                part=part.name,
                ring=ring,
                wide_mm=right - left,
                deep_mm=high - low,
                count=1 if whole else part.count,
            )
        )
    return tuple(found)


def _from_above(part: PartAt) -> Ring:
    """The outline of a part on the board."""
    if part.coiled is not None:
        across = coil_across_mm(part, None)
        return solids.oval(across, across)
    if part.flat:
        return part.outline_mm[0]
    if part.form == "solid" and "across" in dict(part.lengths_mm):
        return solids.oval(part.width_mm, part.thick_mm)
    return solids.oblong(part.width_mm, part.thick_mm)
