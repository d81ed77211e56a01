"""The time in the oven on a mixture's page: in the table of tins, at the bench, drawn."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.pages.mixture.bake_chart import BakeChart, bake_chart
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.times import Baking, Time
from tinbook.plans.baking.tin_times import TinTimes, bake_step, tin_times
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.scaling import TinTable


@dataclass(frozen=True)
class BakingView:
    """What the templates can say about it."""

    known: Baking
    table: TinTable
    dial: Saying
    """What to set on the house's own oven for the recipe's."""

    @cached_property
    def sums(self) -> TinTimes:
        """The sums."""
        return tin_times(self.known, self.table)

    @cached_property
    def cells(self) -> list[tuple[str, str]]:
        """For each row of the table when to look first, and the span, in minutes."""
        return [(formats.number(time.check_shown_min), span(time)) for time in self.sums.times]

    @property
    def written(self) -> int:
        """Which row is that of the first tin the mixture is written for."""
        return self.table.written

    @property
    def check(self) -> str:
        """When to look first, in that tin."""
        return formats.number(self.sums.times[self.written].check_shown_min)

    @property
    def span(self) -> str:
        """When it is done, in that tin."""
        return span(self.sums.times[self.written])

    @property
    def check_said(self) -> str:
        """When to look first, with its unit."""
        return formats.with_unit(self.check, "min")

    @property
    def span_said(self) -> str:
        """When it is done, with its unit."""
        return formats.with_unit(self.span, "min")

    @property
    def starts(self) -> str:
        """What the bake's timer says: it rings for the first look."""
        return f"check {self.check_said}"

    @property
    def check_min(self) -> float:
        """The same, in minutes."""
        return self.sums.times[self.written].check_shown_min

    @property
    def goes(self) -> int:
        """How many oven loads the written tins take."""
        return max(1, self.table.rows[self.written].fit.bakes)

    @property
    def due(self) -> str:
        """How long it bakes in the written tins: `50–70 min`, `2 × 50–70 min` for two loads one after another."""
        return f"{self.goes} × {self.span_said}" if self.goes > 1 else self.span_said

    @property
    def all_bakes_min(self) -> tuple[float, float]:
        """All loads together, from the least to the most."""
        time = self.sums.times[self.written]
        return self.goes * time.low_shown_min, self.goes * time.high_shown_min

    @property
    def step(self) -> int | None:
        """Which step of the method is the bake."""
        return bake_step(self.known.batch.mixture)

    @property
    def centre(self) -> str:
        """How warm the middle is when it is done."""
        return formats.celsius(self.known.centre_c)

    @property
    def far(self) -> str:
        """How far that tin is from what has been baked."""
        return _kept(spell(self.sums.far[self.written].told))

    @property
    def depth(self) -> str:
        """The batter depth the chart is drawn for."""
        return formats.millimetres(self.known.batch.depth_mm)

    @cached_property
    def chart(self) -> BakeChart:
        """Minutes against width."""
        return bake_chart(self.sums)

    @property
    def script_data(self) -> dict[str, Any]:
        """What the bench needs: which step is the bake, the dial setting for the log, and for each tin when to look
        first and when it is done, and how many tenths as wide and as deep as which bake."""
        bakes = list(dict.fromkeys(far.baked for far in self.sums.far))
        return {
            "step": self.step,
            "oven": spell(self.dial),
            "times": self.cells,
            "bakes": [_kept(spell(baked)) for baked in bakes],
            "far": [[round(far.wide * 10), round(far.deep * 10), bakes.index(far.baked)] for far in self.sums.far],
        }


def span(time: Time) -> str:
    """`60–90`, minutes."""
    low, high = time.low_shown_min, time.high_shown_min
    return formats.number(low) if low == high else f"{formats.number(low)}–{formats.number(high)}"


def _kept(words: str) -> str:
    """A tin's figures joined to their units."""
    return words.replace(" x ", f"{formats.NBSP}×{formats.NBSP}").replace(" cm", f"{formats.NBSP}cm")
