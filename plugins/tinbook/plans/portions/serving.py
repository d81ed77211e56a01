"""What one cake serves, by kind of portion, and what a portion of it weighs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import Portion, cut_of
from tinbook.tins import Tin


@dataclass(frozen=True, slots=True)
class Serving:
    """A cake cut into one kind of portion: `each_g` of cake in each, baked and levelled; None if its weight is
    unknown, or it is not cut."""

    cut: Cut
    each_g: float | None

    @property
    def each_shown_g(self) -> float | None:
        """The same, as printed."""
        return None if self.each_g is None else rounding.half_up(self.each_g, 1.0)


def servings(tin: Tin, height_mm: float, weight_g: float | None, sizes: Mapping[str, Portion]) -> Mapping[str, Serving]:
    """What a cake from a tin serves, `height_mm` high and weighing `weight_g` without filling or coats."""
    cuts = {kind: cut_of(tin, portion, height_mm) for kind, portion in sizes.items()}
    return {kind: Serving(cut, weight_g / cut.count if weight_g and cut.count else None) for kind, cut in cuts.items()}
