"""How this house finishes its cakes: one cake's own figures, then the house's, then the trade's."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.engine import rounding
from tinbook.facts import Fact, Facts
from tinbook.models import Border, Finish, Made
from tinbook.plans.base.saying import Saying, saying

FIGURES: Mapping[str, str] = {
    "layers": "layers in a tier",
    "layer": "layer height",
    "level_off": "dome cut off",
    "filling": "filling",
    "crumb_coat": "crumb coat",
    "final_coat": "final coat",
    "stays_in_the_bowl": "stays in the bowl",
    "stays_in_the_bag": "stays in the bag",
    "paste": "paste on the cake",
    "paste_rolled": "paste rolled",
    "paste_over": "paste over the edge",
    "board_paste": "paste on the board",
    "card": "card thickness",
    "ribbon_over": "ribbon over itself",
    "box_beside": "box beside the board",
    "box_above": "box above the cake",
}
"""The fact that fills in for each key the house has left out."""

THIS_CAKE, THE_HOUSE = saying("this_cake"), saying("the_house")


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure in mm or ml, a share or a count, and whose it is: `THIS_CAKE`, `THE_HOUSE`, or a source's key."""

    name: str
    value: float
    said_by: Saying | str
    fact: Fact

    @property
    def percent(self) -> float:
        """A share as a percentage, as printed."""
        return rounding.percent(self.value)


@dataclass(frozen=True, kw_only=True)
class Finishing:
    """Every figure, by its key in finish.yaml. Lengths mm, volumes ml, shares as fractions of one."""

    figures: Mapping[str, Figure]
    heights_mm: tuple[float, ...]
    cut: int | None
    dam_mm: float
    border: Border | None
    board: str
    board_covered: str
    made: Made

    def __getitem__(self, key: str) -> float:
        return self.figures[key].value

    @property
    def layers(self) -> int:
        """Layers in a tier."""
        return int(self["layers"])

    @cached_property
    def coats_mm(self) -> float:
        """Crumb coat and final coat together."""
        return self["crumb_coat"] + self["final_coat"]


def finishing(house: Finish, facts: Facts, own: Finish | None = None) -> Finishing:
    """The figures for a cake whose own `finish` is `own`, in this house."""

    def settled(key: str) -> tuple[Any, Saying | None]:
        for finish, who in ((own, THIS_CAKE), (house, THE_HOUSE)):
            if finish is not None and getattr(finish, key) not in (None, ()):
                return getattr(finish, key), who
        return None, None

    figures = {}
    for key, name in FIGURES.items():
        fact, (value, who) = facts.numbers[name], settled(key)
        figures[key] = Figure(name, fact.value if value is None else value, who or fact.source, fact)
    return Finishing(
        figures=figures,
        heights_mm=settled("heights")[0] or (facts.numbers["tier height"].value,),
        cut=settled("cut")[0],
        dam_mm=settled("dam")[0] or 0.0,
        border=settled("border")[0],
        board=settled("board")[0] or "usual",
        board_covered=settled("board_covered")[0] or "whole",
        made=_made(house, own),
    )


def _made(house: Finish, own: Finish | None) -> Made:
    """What the cake is made with; the house's choice if the cake does not say."""
    choices = [finish.made_with for finish in (house, own) if finish and finish.made_with]
    return Made(**{name: slug for choice in choices for name, slug in choice.model_dump(by_alias=True).items() if slug})
