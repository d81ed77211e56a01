"""What can be asked of a table from outside, and the answer if the question does not fit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date

from tinbook.models import Take
from tinbook.tins import Tin


class AskError(ValueError):
    """A question that cannot be answered; `hint` says what to ask instead."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """One question. Lengths mm, weights g. `of` is a slug; `deep` keeps the fullness of the tin instead of the batter's
    depth.

    `above` is the tier standing on the tin's cake. A tin is asked for `layers` of `layer_mm` each; `height_mm` is the
    height of a cake to be coated; `stacked` is a set of tiers from the bottom, to be judged. `portion` is a kind of
    portion or its width and length; `guests` are fed from what the house or the trade has, from `owned` tins only, with
    a top tier kept back, with cupcakes or a tray `beside`. `oven_c` is the oven's temperature without fan, `start_c`
    the batter's, in °C. `size` is what a cake's size is called, or its steps up or down; `made` is
    the day it is made. At most one of tins, eggs,
    weight_g, batches, plus (a share), left is set.
    """

    of: str | None = None
    tins: tuple[tuple[int, Tin], ...] = ()
    above: Tin | None = None
    deep: bool = False
    eggs: float | None = None
    weight_g: float | None = None
    batches: float | None = None
    plus: float | None = None
    left: Take | None = None
    layers: int | None = None
    layer_mm: float | None = None
    height_mm: float | None = None
    guests: int | None = None
    stacked: tuple[Tin, ...] = ()
    portion: str | tuple[float, float] | None = None
    keep_top: bool = False
    owned: bool = False
    beside: str | None = None
    oven_c: float | None = None
    start_c: float | None = None
    size: str | None = None
    made: date | None = None

    @property
    def asked(self) -> frozenset[str]:
        """What is asked for, by the names in OPTIONS."""
        given = {field.name for field in fields(self) if getattr(self, field.name) not in (None, (), False)}
        return frozenset(given | {"count"} if any(count > 1 for count, _ in self.tins) else given)


OPTIONS: Mapping[str, str] = {
    "of": "--of",
    "tins": "--tin",
    "count": "--count",
    "measured": '"measured" in --tin',
    "above": "--above",
    "deep": "--deep",
    "eggs": "--eggs",
    "weight_g": "--weight",
    "batches": "--batches",
    "plus": "--plus",
    "left": "--left",
    "layers": "--layers",
    "layer_mm": "--layer",
    "height_mm": "--height",
    "guests": "--guests",
    "stacked": "--set",
    "portion": "--portion",
    "keep_top": "--keep-top",
    "owned": "--owned",
    "beside": "--beside",
    "oven_c": "--oven",
    "start_c": "--start",
    "size": "--size",
    "made": "--made",
}
"""What can go into a question, and how it is written on the command line. `count` is how many of each tin, `measured`
what one of them holds."""
