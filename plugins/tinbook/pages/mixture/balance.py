"""How a mixture stands to the balance rules of its kind, drawn: numbers to points and words."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tinbook.facts import Facts
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.mixtures.balance import Balance, Share, Standing

WIDE = 240
"""Length of the line, in the drawing's own units."""
ROOM = 1.25
"""The line ends so many times beyond the furthest of what is drawn on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleDrawing:
    """A rule: its words, its figure, and where its range and the mixture's point lie on a line that starts at none."""

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
    """What the balance's template may say."""

    balance: Balance
    facts: Facts

    @property
    def base(self) -> str:
        """What makes a hundred."""
        return self.balance.base

    @property
    def parts(self) -> tuple[Share, ...]:
        """The formula by part."""
        return self.balance.parts

    @cached_property
    def rules(self) -> tuple[RuleDrawing, ...]:
        """The rules, drawn."""
        return tuple(_drawn(each) for each in self.balance.standings)

    @property
    def answer(self) -> str:
        """How it stands, in a few words."""
        rules = self.balance.standings
        if not rules:
            return "No rule of balance is known for this kind."
        kept, every = sum(each.within for each in rules), plural(len(rules), "rule")
        return f"It keeps {formats.mixed(kept)} of the {every} of balance for its kind."

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.balance.worked,), self.facts)


def _drawn(each: Standing) -> RuleDrawing:
    ends = [end for end in (each.value_shown, each.high_shown, each.low_shown) if end is not None]
    scale = WIDE / (max(ends) * ROOM)
    low, high = each.low_shown * scale, each.high_shown * scale if each.high_shown else WIDE
    point = None if each.value_shown is None else round(each.value_shown * scale, 1)
    figure = "none" if each.value_shown is None else formats.number(each.value_shown)
    return RuleDrawing(
        title=each.rule.title,
        figure=figure,
        usual=_usual(each),
        stands=_stands(each),
        sign=_sign(each),
        band_at=round(low, 1),
        band_wide=round(high - low, 1),
        point=point,
    )


def _usual(each: Standing) -> str:
    low = formats.number(each.low_shown)
    return f"{low} or more" if each.high_shown is None else f"{low} to {formats.number(each.high_shown)}"


def _stands(each: Standing) -> str:
    if each.side == "none":
        return "nothing in it to compare with"
    if each.side != "within" and each.within:
        return f"{each.side}; it keeps the other form of the rule"
    return each.side


def _sign(each: Standing) -> str:
    told = f"{formats.number(each.value_shown)}, " if each.value_shown is not None else ""
    return f"{each.rule.title}: {told}usual {_usual(each)}"
