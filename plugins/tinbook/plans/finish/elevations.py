"""A cake's layers seen from the front on their drum, to scale."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.scaling import fit
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.boards import board_of
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.layers import Stack, stack_of
from tinbook.tins import Tin
from tinbook.tins.growth import outline_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """A stack seen from the front on its drum, mm: `across_mm` wide before its coats, its tube (0 for none) `tube_mm`.

    `board_mm` is None if no drum that wide is sold.
    """

    stack: Stack
    across_mm: float
    tube_mm: float
    filling_mm: float
    crumb_mm: float
    final_mm: float
    board_mm: float | None
    drum_mm: float


def elevations(batch: Batch, settled: Finishing, book: Book, facts: Facts) -> tuple[Elevation, ...]:
    """The stack from each of the tins it is written for; none for domes, balls and cups."""
    drawn = []
    for count, tin in batch.tins:
        if tin.kind.kept == "share" or tin.kind.solid != "upright":
            continue
        volume_ml = count * tin.volume_ml(min(batch.depth_mm, tin.brim_mm))
        fitted = fit(batch, book, facts, tin, count, volume_ml, batch.mass_g * volume_ml / batch.batter_ml)
        stack = stack_of(batch, settled, fitted)
        drawn.append(_elevation(stack, settled, facts))
    return tuple(drawn)


def _elevation(stack: Stack, settled: Finishing, facts: Facts) -> Elevation:
    across_mm, tube_mm = _across_mm(stack.tin)
    cake = Cake(stack.tin, stack.stack_mm, stack.layers)
    board = board_of(cake, settled, settled.board, facts)
    return Elevation(
        stack=stack,
        across_mm=across_mm,
        tube_mm=tube_mm,
        filling_mm=settled["filling"],
        crumb_mm=settled["crumb_coat"],
        final_mm=settled["final_coat"],
        board_mm=board.size_mm[0] if board.size_mm else None,
        drum_mm=facts.numbers["drum thickness"].value,
    )


@lru_cache(maxsize=1024)
def _across_mm(tin: Tin) -> tuple[float, float]:
    """How wide a cake and its tube are half-way up."""
    across = [x for x, _ in tin.kind.outline_mm(tin.sizes_mm, 0.5)[0]]
    half_tube_mm = outline_of(tin).room_mm
    return max(across) - min(across), 2.0 * half_tube_mm if isfinite(half_tube_mm) else 0.0
