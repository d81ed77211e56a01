"""A decoration assembled and seen from the front, by what its parts say stands or lies on what.

Lengths in mm, from the middle of the part that stands by itself and from its foot, y upwards.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import cos, pi, sin

from tinbook.engine import solids
from tinbook.models.ledger import Itself
from tinbook.models.parts import BELOW
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.tins import Ring

ARC = 12
"""Points on a rounded shoulder."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """One piece of a part in its place: its outlines, the outer one first; marks on it, not yet cut by it, and the
    letters they go by."""

    letter: str
    colour: str
    rings: tuple[Ring, ...]
    marks: tuple[Ring, ...] = ()
    mark_letters: tuple[str, ...] = ()

    @property
    def left_mm(self) -> float:
        """Its left end."""
        return min(x for x, _ in self.rings[0])

    @property
    def right_mm(self) -> float:
        """Its right end."""
        return max(x for x, _ in self.rings[0])

    @property
    def foot_mm(self) -> float:
        """Its lowest point."""
        return min(y for _, y in self.rings[0])

    @property
    def top_mm(self) -> float:
        """Its highest point."""
        return max(y for _, y in self.rings[0])


@dataclass(frozen=True, slots=True)
class Stick:
    """A support seen through the parts: what it is, where, from `low_mm` to `high_mm`."""

    what: str
    x_mm: float
    low_mm: float
    high_mm: float


@dataclass(frozen=True, slots=True)
class PutTogether:
    """All pieces, those at the back first, and what holds them."""

    pieces: tuple[Placed, ...]
    sticks: tuple[Stick, ...]

    @property
    def high_mm(self) -> float:
        """How high it stands."""
        return max(piece.top_mm for piece in self.pieces)

    @property
    def left_mm(self) -> float:
        """Its left end."""
        return min(piece.left_mm for piece in self.pieces)

    @property
    def right_mm(self) -> float:
        """Its right end."""
        return max(piece.right_mm for piece in self.pieces)

    def seen_mm(self, piece: Placed) -> tuple[tuple[float, float], ...]:
        """Where the right edge of a piece is visible, low and high, the longest stretch first: what is in front covers
        the rest."""
        before = self.pieces[self.pieces.index(piece) + 1 :]
        levels = sorted({piece.foot_mm, piece.top_mm, *(end for each in before for end in (each.foot_mm, each.top_mm))})
        stretches = [
            (low, high)
            for low, high in pairwise(level for level in levels if piece.foot_mm <= level <= piece.top_mm)
            if not any(_covers(each, piece, (low + high) / 2.0) for each in before)
        ]
        return tuple(sorted(stretches, key=lambda ends: ends[0] - ends[1]))


def edge_mm(rings: tuple[Ring, ...], level_mm: float) -> float:
    """How far to the right an outline reaches at a level."""
    ring = rings[0]
    crossed = [
        x1 + (x2 - x1) * (level_mm - y1) / (y2 - y1)
        for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True)
        if min(y1, y2) <= level_mm <= max(y1, y2) and y1 != y2
    ]
    return max(crossed, default=max(x for x, _ in ring))


def _covers(each: Placed, piece: Placed, level_mm: float) -> bool:
    reaches = each.foot_mm < level_mm < each.top_mm
    return reaches and edge_mm(each.rings, level_mm) >= edge_mm(piece.rings, level_mm)


def put_together(made: Decoration) -> PutTogether | None:
    """A decoration assembled; None where its parts do not all say what they stand or lie on."""
    return _put_together(Itself(made))


@lru_cache(maxsize=64)
def _put_together(whole: Itself[Decoration]) -> PutTogether | None:
    made = whole.value
    parts = {part.name: part for part in made.parts}
    alone = [part for part in made.parts if not (part.stands_on or part.lies_on)]
    if len(alone) != 1 or len(made.parts) < 2:
        return None
    pieces, sticks = list[Placed](), list[Stick]()
    # what stands is drawn before what lies on it
    for part in sorted(made.parts, key=lambda part: (_fronts(part, parts), part.index)):
        pieces += _placed(part, parts, made)
        sticks += _sticks(part, parts)
    return PutTogether(tuple(pieces), tuple(sticks))


def _fronts(part: PartAt, parts: dict[str, PartAt]) -> int:
    """How many parts lie one in front of another, from the one that stands to this one."""
    if part.lies_on:
        return 1 + _fronts(parts[part.lies_on], parts)
    return _fronts(parts[part.stands_on], parts) if part.stands_on else 0


def _foot_mm(part: PartAt, parts: dict[str, PartAt]) -> float:
    """How high the foot of a part is."""
    if part.stands_on:
        under = parts[part.stands_on]
        return _foot_mm(under, parts) + _high_mm(under)
    return _foot_mm(parts[part.lies_on], parts) if part.lies_on else 0.0


def _flat(part: PartAt) -> bool:
    """Whether it lies down where it stands, so that its thickness is seen: a sheet, or a flattened solid."""
    return part.flattened or (part.form == "sheet" and not part.lies_on)


def _high_mm(part: PartAt) -> float:
    return part.thick_mm if _flat(part) else part.height_mm


def _placed(part: PartAt, parts: dict[str, PartAt], made: Decoration) -> Iterator[Placed]:
    foot = _foot_mm(part, parts)
    colour = part.colour.name if part.colour else ""
    if not part.lies_on:
        middle = foot + _high_mm(part) / 2.0
        rings = _seen_flat(part) if _flat(part) else part.outline_mm
        marked = [] if _flat(part) else [repeat for repeat in made.repeats if repeat.on == part.name]
        yield Placed(
            letter=part.letter,
            colour=colour,
            rings=_up(rings, middle),
            marks=_up(tuple(ring for repeat in marked for ring in mark_rings(repeat)), middle),
            mark_letters=tuple(repeat.letter for repeat in marked),
        )
        return
    under = parts[part.lies_on]
    middles = [share * _high_mm(under) for share in part.up] or [part.height_mm / 2.0] * part.count
    for middle in middles:
        rings = (_band(part, under, middle),) if part.form == "strip" else _up(part.outline_mm, middle)
        yield Placed(letter=part.letter, colour=colour, rings=_up(rings, foot))


def _seen_flat(part: PartAt) -> tuple[Ring, ...]:
    """What lies down, from the front: a sheet with square edges, a flattened solid with a rounded shoulder."""
    wide, thick = part.width_mm, part.thick_mm
    if not part.flattened:
        return (solids.oblong(wide, thick),)
    shoulder = min(thick, wide / 4.0)
    turns = [pi / 2.0 * step / ARC for step in range(ARC + 1)]
    right = [(wide / 2.0 - shoulder + shoulder * cos(turn), thick * sin(turn) - thick / 2.0) for turn in turns]
    return ((*right, *((-x, y) for x, y in reversed(right))),)


def _band(part: PartAt, under: PartAt, middle: float) -> Ring:
    """A strip round a part, from the strip's foot, following the part's sides and standing out by its thickness."""
    low, high = middle - part.height_mm / 2.0, middle + part.height_mm / 2.0
    # the outline is centred on its middle
    at_low, at_high = (
        edge_mm(under.outline_mm, level - under.height_mm / 2.0) + part.thick_mm for level in (low, high)
    )
    return ((-at_low, low), (at_low, low), (at_high, high), (-at_high, high))


def mark_rings(repeat: RepeatAt) -> Iterator[Ring]:
    """Every mark of a repeat, about the middle of its surface."""
    wide, high = repeat.mark_mm
    form = solids.oval(wide, high) if repeat.round_mark else solids.oblong(wide, high)
    yield from (tuple((x + dx, y + dy) for dx, dy in form) for x, y in repeat.points)


def _sticks(part: PartAt, parts: dict[str, PartAt]) -> Iterator[Stick]:
    """What goes in from below, side by side."""
    held = part.support
    if held is None or held.goes_in != BELOW:
        return
    foot = _foot_mm(part, parts)
    for nth in range(held.each):
        x = part.width_mm * ((nth + 1.0) / (held.each + 1.0) - 0.5)
        yield Stick(held.what, x, foot - held.rest_mm, foot + held.reach_mm)


def _up(rings: tuple[Ring, ...], by_mm: float) -> tuple[Ring, ...]:
    return tuple(tuple((x, y + by_mm) for x, y in ring) for ring in rings)
