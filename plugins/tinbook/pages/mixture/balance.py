"""How a mixture compares with the balance rules of its kind, drawn: numbers to points and words."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tinbook.facts import Facts
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.mixtures.balance import Balance, Share, Standing

WIDE = 240
"""Length of the line, in the drawing's own units."""
ROOM = 1.25
"""The line ends this many times further out than the furthest thing drawn on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleDrawing:
    """A rule: its words, its figure, and where its range and the mixture's point lie on a line that starts at
    nought."""

    title: str
    figure: str
    usual: str
    stands: str
    sign: str
    band_at: float
    band_wide: float
    point: float | None

    @property
    def placed(self) -> bool:
        """Whether it has a point on the line."""
        return self.point is not None


@dataclass(frozen=True)
class BalanceView:
    """What the balance's template can say."""

    balance: Balance
    facts: Facts

    @property
    def base(self) -> str:
        """What counts as a hundred."""
        return self.balance.base

    @property
    def parts(self) -> tuple[Share, ...]:
        """The formula by part."""
        return self.balance.parts

    @cached_property
    def rules(self) -> tuple[RuleDrawing, ...]:
        """The rules, drawn."""
        return tuple(map(_drawn, self.balance.standings))

    @property
    def answer(self) -> str:
        """How it compares, in a few words."""
        standings = self.balance.standings
        if not standings:
            return "We know of no balance rule for this kind."
        kept = sum(standing.within for standing in standings)
        if len(standings) == 1:
            return f"It {'meets' if kept else 'does not meet'} the one balance rule for its kind."
        if kept == len(standings):
            return f"It meets {'both' if kept == 2 else f'all {kept}'} balance rules for its kind."
        return f"It meets {kept or 'none'} of the {len(standings)} balance rules for its kind."

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.balance.worked,), self.facts)


def _drawn(standing: Standing) -> RuleDrawing:
    ends = [end for end in (standing.value_shown, standing.high_shown, standing.low_shown) if end is not None]
    scale = WIDE / (max(ends) * ROOM)
    low, high = standing.low_shown * scale, standing.high_shown * scale if standing.high_shown else WIDE
    point = None if standing.value_shown is None else round(standing.value_shown * scale, 1)
    figure = "none" if standing.value_shown is None else formats.percent(standing.value_shown)
    return RuleDrawing(
        title=standing.rule.title,
        figure=figure,
        usual=_usual(standing),
        stands=_stands(standing),
        sign=_sign(standing),
        band_at=round(low, 1),
        band_wide=round(high - low, 1),
        point=point,
    )


def _usual(standing: Standing) -> str:
    low = formats.number(standing.low_shown)
    return f"{low}% or more" if standing.high_shown is None else f"{low} to {formats.percent(standing.high_shown)}"


def _stands(standing: Standing) -> str:
    if standing.side == "none":
        return "nothing in it to compare with"
    if standing.side == "within":
        return "this is in that range"
    said = f"this is {standing.side} that"
    return f"{said}, but meets the other form of the rule" if standing.within else said


def _sign(standing: Standing) -> str:
    figure = "" if standing.value_shown is None else f"{formats.percent(standing.value_shown)}, "
    return f"{standing.rule.title}: {figure}usually {_usual(standing)}"
