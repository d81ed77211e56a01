"""A rope laid round a part and coiled flat beside it, and whatever else lies low, seen from the front. Lengths in mm.

Rings are about the middle of the part the rope lies on and from its foot, y upwards.
"""

from __future__ import annotations

from math import cos, pi, sin

from tinbook.engine import solids
from tinbook.plans.techniques.parts import PartAt
from tinbook.tins import Ring

ARC = 12
"""Points on a rounded shoulder."""


def low_ring(wide: float, thick: float) -> Ring:
    """What is pressed flat, or a flat coil: its shoulders rounded, about the middle of its width and height."""
    shoulder = min(thick, wide / 4.0)
    turns = [pi / 2.0 * step / ARC for step in range(ARC + 1)]
    right = [(wide / 2.0 - shoulder + shoulder * cos(turn), thick * sin(turn) - thick / 2.0) for turn in turns]
    return (*right, *((-x, y) for x, y in reversed(right)))


def rope_mm(part: PartAt) -> float:
    """How thick the rope is that all strands of a part are twisted into."""
    return solids.twisted_mm(part.thick_mm, part.count)


def coil_across_mm(part: PartAt, under: PartAt | None) -> float:
    """How wide its coil is across, after its turns round the part it lies on."""
    return solids.coil_mm(part.width_mm, rope_mm(part), part.coiled or 0, under.width_mm if under else 0.0)


def coil_from_mm(part: PartAt, under: PartAt | None) -> float:
    """How far the middle of the coil is to the right of the middle of that part: against its turns."""
    if under is None:
        return 0.0
    turns = rope_mm(part) if part.coiled else 0.0
    return under.width_mm / 2.0 + turns + coil_across_mm(part, under) / 2.0


def rope_rings(part: PartAt, under: PartAt | None) -> tuple[Ring, ...]:
    """Its turns, from the foot up, and its coil."""
    rope, across = rope_mm(part), coil_across_mm(part, under)
    turn = _ended(under.width_mm + 2.0 * rope, rope) if under else ()
    turns = [tuple((x, y + rope * (nth + 0.5)) for x, y in turn) for nth in range(part.coiled or 0)]
    middle = coil_from_mm(part, under)
    coil = tuple((x + middle, y + rope / 2.0) for x, y in low_ring(across, rope))
    return (*turns, coil) if across else tuple(turns)


def _ended(wide: float, thick: float) -> Ring:
    """A turn of rope round something: its ends are half rounds."""
    turns = [pi * step / (2 * ARC) - pi / 2.0 for step in range(2 * ARC + 1)]
    right = [((wide - thick) / 2.0 + thick / 2.0 * cos(turn), thick / 2.0 * sin(turn)) for turn in turns]
    return (*right, *((-x, y) for x, y in reversed(right)))
