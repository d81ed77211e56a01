"""Measures: every conversion at a glance, each with its range and its source."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.pages.at_a_glance import bowl_grids, measure_grids
from tinbook.pages.base.grids import Grid
from tinbook.pages.base.page import Desk, Page
from tinbook.plans.measures.eggs import eggs
from tinbook.plans.measures.pieces import SmallSums, small_sums


@dataclass(frozen=True)
class MeasuresView:
    """Everything the page of measures says. `items` are its tables, in the order of the page."""

    desk: Desk

    @cached_property
    def small(self) -> SmallSums:
        """The small sums of a bake."""
        return small_sums(self.desk.book, self.desk.facts)

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """All tables."""
        book, facts, small = self.desk.book, self.desk.facts, self.small
        in_the_bowl = eggs(book, facts)
        return (
            measure_grids.oven_grid(facts),
            measure_grids.dial_grid(facts),
            measure_grids.spoon_grid(book, facts),
            *measure_grids.pound_grids(facts),
            measure_grids.length_grid(book, facts),
            bowl_grids.egg_grid(book, facts),
            bowl_grids.bowl_grid(in_the_bowl, facts),
            bowl_grids.part_grid(in_the_bowl, facts),
            bowl_grids.piece_grid(small, facts),
            bowl_grids.needed_grid(small, facts),
            bowl_grids.left_grid(small, facts),
            measure_grids.cup_grid(self.desk),
            bowl_grids.flour_grid(facts),
        )

    @property
    def script_data(self) -> dict[str, Any]:
        """What the page's own script needs for its sums."""
        small = self.small
        return {
            "case": small.case_g, "lost": small.lost, "lost_low": small.lost_low, "lost_high": small.lost_high,
            "off": small.baked_off,
        }  # fmt: skip


def measures_pages(desk: Desk) -> Iterator[Page]:
    """The one page of measures."""
    yield Page(
        address="measures", title="Measures", template="measures", view=MeasuresView(desk), section=("Measures",)
    )
