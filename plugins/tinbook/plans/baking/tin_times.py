"""The time in the oven for every tin in a mixture's table, and the curve of time against width, worked out together."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.models import Mixture
from tinbook.plans.baking.times import Baking, Far, Time, width_mm
from tinbook.plans.base.scaling import TinTable
from tinbook.tins import Tin

ROUNDS_MM = 50.0


@dataclass(frozen=True)
class TinTimes:
    """For each row of the table its time, and how far its tin is from what has been baked. `curve`: the time by the
    width of the tin, mm, narrowest first, at the mixture's own batter depth."""

    known: Baking
    times: tuple[Time, ...]
    far: tuple[Far, ...]
    curve: tuple[tuple[float, Time], ...]


def tin_times(known: Baking, table: TinTable) -> TinTimes:
    """All times of a mixture at once: asked for one by one they would take ten times as long."""
    cakes = [(row.tin, row.fit.batter_mm) for row in table.rows]
    drawn = _drawn(known, table)
    times = known.times(cakes + [(tin, table.batch.depth_mm) for tin in drawn.values()])
    return TinTimes(
        known, tuple(times[: len(cakes)]), tuple(known.far(cakes)), tuple(zip(drawn, times[len(cakes) :], strict=True))
    )


def _drawn(known: Baking, table: TinTable) -> dict[float, Tin]:
    """The tins the curve is drawn through, by width: rounds every 5 cm, and what was baked in."""
    rounds = [row.tin for row in table.rows if row.tin.shape == "round" and row.tin.across_mm % ROUNDS_MM == 0]
    tins = rounds + [point.tin for point in known.points]
    by_width = {width_mm(tin): tin for tin in tins}
    return {width: by_width[width] for width in sorted(by_width)}


def bake_step(mixture: Mixture) -> int | None:
    """Which step of the method is the bake: the one that waits as long as the mixture bakes, or says so."""
    if mixture.bake is None:
        return None
    waits = [(index, step) for index, step in enumerate(mixture.method) if step.waiting]
    for index, step in waits:
        if step.waiting == mixture.bake.time:
            return index
    return next((index for index, step in waits if step.do.lower().startswith("bake")), None)
