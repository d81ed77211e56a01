"""What a mixture becomes on a cake: its layers, or how much of it fills, coats and covers a cake from every tin."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.coats import CoatsView
from tinbook.pages.mixture.finished import FinishedView
from tinbook.pages.mixture.layers import LayersView, has_layers
from tinbook.pages.mixture.pastes import PastesView
from tinbook.plans.base.scaling import TinTable
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.covering import covers, fills


@dataclass(frozen=True)
class FinishView:
    """What the templates can say about a mixture on a cake; `table` is used only where layers are shown."""

    batch: Batch
    desk: Desk
    table: Callable[[], TinTable]

    @property
    def is_cut(self) -> bool:
        """Whether it is a cake cut into layers."""
        return has_layers(self.batch)

    @property
    def fills(self) -> bool:
        """Whether it fills or coats cakes."""
        return fills(self.batch)

    @property
    def covers(self) -> bool:
        """Whether it is rolled out over cakes."""
        return covers(self.batch)

    @cached_property
    def layers(self) -> LayersView:
        """Its layers."""
        return LayersView(self.table(), self.desk)

    @cached_property
    def finished(self) -> FinishedView:
        """What its own cake takes, and what it serves."""
        return FinishedView(self.table(), self.layers.stacks, self.desk)

    @cached_property
    def coats(self) -> CoatsView:
        """How much of it every cake takes."""
        return CoatsView(self.batch, self.desk)

    @cached_property
    def pastes(self) -> PastesView:
        """The same of a paste."""
        return PastesView(self.batch, self.desk)
