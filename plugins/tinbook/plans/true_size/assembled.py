"""A decoration assembled and seen from the front, by what its parts say stands or lies on what; one that is laid down
flat also from above.

Lengths in mm, from the middle of the part that stands by itself and from the lowest point of all, y upwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from math import cos, radians, sin

from tinbook.engine import solids
from tinbook.models.ledger import Itself
from tinbook.models.parts import BELOW
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, PartAt
from tinbook.plans.true_size.coiled import low_ring, rope_rings
from tinbook.tins import Ring


@dataclass(frozen=True, kw_only=True)
class Placed:
    """One piece of a part in its place: its outlines, the outer one first; marks on it, not yet cut by it, and the
    letters they go by."""

    letter: str
    colour: str
    rings: tuple[Ring, ...]
    marks: tuple[Ring, ...] = ()
    mark_letters: tuple[str, ...] = ()

    @cached_property
    def left_mm(self) -> float:
        """Its left end."""
        return min(x for x, _ in self.rings[0])

    @cached_property
    def right_mm(self) -> float:
        """Its right end."""
        return max(x for x, _ in self.rings[0])

    @cached_property
    def foot_mm(self) -> float:
        """Its lowest point."""
        return min(y for _, y in self.rings[0])

    @cached_property
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


@dataclass(frozen=True)
class PutTogether:
    """All pieces, those at the back first, and what holds them; `above`: whether it is seen from above."""

    pieces: tuple[Placed, ...]
    sticks: tuple[Stick, ...]
    above: bool = False

    @cached_property
    def high_mm(self) -> float:
        """How high it stands or, seen from above, how long it is."""
        return max(piece.top_mm for piece in self.pieces)

    @cached_property
    def left_mm(self) -> float:
        """Its left end."""
        return min(piece.left_mm for piece in self.pieces)

    @cached_property
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
            if not _covered(piece, before, (low + high) / 2.0)
        ]
        return tuple(sorted(stretches, key=lambda ends: ends[0] - ends[1]))


def edge_mm(rings: tuple[Ring, ...], level_mm: float) -> float:
    """How far to the right an outline reaches at a level."""
    return max(_crossed(rings[0], level_mm), default=max(x for x, _ in rings[0]))


def _crossed(ring: Ring, level_mm: float) -> list[float]:
    """Where an outline is at a level."""
    return [
        x1 + (x2 - x1) * (level_mm - y1) / (y2 - y1)
        for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True)
        if min(y1, y2) <= level_mm <= max(y1, y2) and y1 != y2
    ]


def _top_at_mm(ring: Ring, x_mm: float) -> float:
    """How high an outline reaches so far along."""
    return max(_crossed(tuple((y, x) for x, y in ring), x_mm), default=max(y for _, y in ring))


def _covered(piece: Placed, before: Sequence[Placed], level_mm: float) -> bool:
    """Whether a piece in front hides the right edge of another at a level."""
    edge = edge_mm(piece.rings, level_mm)
    there = (each for each in before if each.foot_mm <= level_mm <= each.top_mm)
    return any(min(across) <= edge <= max(across) for each in there if (across := _crossed(each.rings[0], level_mm)))


@dataclass(frozen=True, slots=True)
class _Set:
    """A piece as it is set down: the part, the piece, the middle of its upper end, and how far in front it is."""

    part: PartAt
    piece: Placed
    tip: tuple[float, float]
    before: float


def put_together(made: Decoration, as_laid: bool = False) -> PutTogether | None:
    """A decoration assembled; None where its parts do not all say what they stand or lie on. `as_laid`: from above if
    it is laid down flat."""
    return _put_together(Itself(made), as_laid)


@lru_cache(maxsize=64)
def _put_together(whole: Itself[Decoration], as_laid: bool) -> PutTogether | None:
    made = whole.value
    parts = {part.name: part for part in made.parts}
    alone = [part for part in made.parts if not (part.stands_on or part.lies_on)]
    if len(alone) != 1 or len(made.parts) < 2:
        return None
    above = as_laid and alone[0].laid
    pieces, sticks = dict[str, list[_Set]](), list[Stick]()
    for part in sorted(made.parts, key=lambda part: _depth(part, parts)):
        there = pieces.get(part.stands_on or part.lies_on, [])
        marks = () if _flat(part, parts) and not above else tuple(each for each in made.repeats if each.on == part.name)
        pieces[part.name] = list(_set(part, there, parts, marks, above))
        sticks += [] if above else _sticks(part, pieces[part.name])
    every = sorted((each for some in pieces.values() for each in some), key=lambda each: (each.before, each.part.index))
    low = min(each.piece.foot_mm for each in every)
    settled = tuple(
        replace(each.piece, rings=_up(each.piece.rings, -low), marks=_up(each.piece.marks, -low)) for each in every
    )
    held = tuple(Stick(each.what, each.x_mm, each.low_mm - low, each.high_mm - low) for each in sticks)
    return PutTogether(settled, held, above)


def _depth(part: PartAt, parts: dict[str, PartAt]) -> int:
    """How many parts it is on, one on the other."""
    under = part.stands_on or part.lies_on
    return 1 + _depth(parts[under], parts) if under else 0


def _flat(part: PartAt, parts: dict[str, PartAt]) -> bool:
    """Whether it lies down where it stands, so that its thickness is seen: a sheet that is not on its edge, a flattened
    solid, whatever lies on what is laid down flat."""
    return parts[part.lies_on].laid or part.flattened if part.lies_on else part.flat


def _set(
    part: PartAt, there: list[_Set], parts: dict[str, PartAt], marks: tuple[RepeatAt, ...], above: bool
) -> Iterator[_Set]:
    """Every piece of a part on the pieces of the one it is on: as many as those, one on each; else along the first
    ones, evenly spread where nothing says where."""
    depth = 0.25 ** _depth(part, parts)
    if part.coiled is not None and not above:
        yield from _coiled(part, there[0] if there else None, depth)
        return
    for nth in range(part.count if there else 1):
        host = there[nth * len(there) // part.count] if there else None
        paired = len(there) in (0, 1) or len(there) == part.count
        along = part.count // max(1, len(there)) if paired and len(there) > 1 else part.count
        rings = _seen(part, parts, above)
        x = y = 0.0
        turn = part.turned[nth % len(part.turned)] if part.turned else 0.0
        high = max(y for _, y in rings[0]) * 2.0
        before = host.before if host else 0.0
        if host is None:
            y = high / 2.0
        elif part.stands_on and not above:
            share = part.across[nth] if part.across else (nth + 0.5) / part.count if len(there) < part.count else None
            if share is None:
                x, y = host.tip
            else:
                x = host.piece.left_mm + share * (host.piece.right_mm - host.piece.left_mm)
                y = _top_at_mm(host.piece.rings[0], x)
            y -= part.sunk_mm
            y += high / 2.0
            # the narrower of two that go into each other is hidden in the wider
            if part.sunk_mm and part.width_mm < host.part.width_mm:
                before -= depth / 2.0
        else:
            under = host.piece
            spread = part.lies_on and not part.up and along > 1
            share = part.across[nth] if part.across else (nth + 0.5) / part.count if spread else 0.5
            x = under.left_mm + share * (under.right_mm - under.left_mm)
            tall = under.top_mm - under.foot_mm
            middle = part.up[nth] * tall if part.up else tall / 2.0 if part.stands_on else high / 2.0
            y = under.foot_mm + middle
            before += -depth if nth >= part.count - part.behind else depth
            if not above and part.lies_on and parts[part.lies_on].laid:
                y = under.top_mm + high / 2.0
            if part.form == "strip" and not part.across:
                rings = (_band(part, host.part, middle),)
                rings, y = _up(rings, -middle), under.foot_mm + middle
        pivot = (x, y - high / 2.0) if part.stands_on else (x, y)
        placed = Placed(
            letter=part.letter,
            colour=part.colour.name if part.colour else "",
            rings=_turned(_moved(rings, x, y), pivot, turn),
            marks=_turned(_moved(tuple(ring for each in marks for ring in mark_rings(each)), x, y), pivot, turn),
            mark_letters=tuple(each.letter for each in marks),
        )
        ((tip,),) = _turned((((x, y + high / 2.0),),), pivot, turn)
        yield _Set(part, placed, tip, before)


def _seen(part: PartAt, parts: dict[str, PartAt], above: bool) -> tuple[Ring, ...]:
    """Its outline about its own middle."""
    if above:
        # what stands up is seen on its edge
        return (solids.oblong(part.width_mm, part.thick_mm),) if part.stands_on else part.outline_mm
    if not _flat(part, parts):
        return part.outline_mm
    return ((low_ring if part.flattened else solids.oblong)(part.width_mm, part.thick_mm),)


def _coiled(part: PartAt, host: _Set | None, depth: float) -> Iterator[_Set]:
    """A rope: its turns round the part it lies on, and its coil."""
    foot, before = (host.piece.foot_mm, host.before + depth) if host else (0.0, 0.0)
    for ring in _up(rope_rings(part, host.part if host else None), foot):
        piece = Placed(letter=part.letter, colour=part.colour.name if part.colour else "", rings=(ring,))
        yield _Set(part, piece, (0.0, foot), before)


def _band(part: PartAt, under: PartAt, middle: float) -> Ring:
    """A strip round a part, from the foot of that part, following its sides and standing out by its thickness."""
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


def _sticks(part: PartAt, there: list[_Set]) -> Iterator[Stick]:
    """What goes in from below, side by side."""
    held = part.support
    if held is None or held.goes_in != BELOW:
        return
    for each in there:
        left, right, foot = each.piece.left_mm, each.piece.right_mm, each.piece.foot_mm
        for nth in range(held.each):
            x = left + (right - left) * (nth + 1.0) / (held.each + 1.0)
            yield Stick(held.what, x, foot - held.rest_mm - held.through_mm, foot + held.reach_mm)


def _up(rings: tuple[Ring, ...], by_mm: float) -> tuple[Ring, ...]:
    return _moved(rings, 0.0, by_mm)


def _moved(rings: tuple[Ring, ...], x_mm: float, y_mm: float) -> tuple[Ring, ...]:
    return tuple(tuple((x + x_mm, y + y_mm) for x, y in ring) for ring in rings)


def _turned(rings: tuple[Ring, ...], pivot: tuple[float, float], degrees: float) -> tuple[Ring, ...]:
    """Rings turned about a point, as the hand of a clock turns."""
    if not degrees:
        return rings
    (px, py), (c, s) = pivot, (cos(radians(degrees)), sin(radians(degrees)))
    return tuple(
        tuple((px + (x - px) * c + (y - py) * s, py - (x - px) * s + (y - py) * c) for x, y in ring) for ring in rings
    )
