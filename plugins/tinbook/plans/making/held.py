"""What stands under each tier of a cake: dowels or pillars with how much each carries, a card or a plate, and a dowel
through all of it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from tinbook.models.cakes import SIDE, TOP
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.cakes.stacking import DowelsIn
from tinbook.plans.cakes.totals import tier_said
from tinbook.plans.cakes.weights import CakeWeights, Heft, TierWeight
from tinbook.plans.cakes.whole import WholeCake


@dataclass(frozen=True, kw_only=True)
class Held:
    """What holds a tier up: `under` None for the lowest, which stands on the board, and for one that foam carries.
    `stands` is what it and all above it weigh, `each_g` what each dowel or pillar carries of that; `card_mm` its card,
    or its plate on pillars."""

    said: Saying
    on: Saying
    held_by: str
    under: DowelsIn | None
    stands: Heft
    each_g: float | None
    card_mm: float | None
    gap_mm: float


@dataclass(frozen=True, kw_only=True)
class HeldUp:
    """Each tier from the bottom; `through_mm`: how long the dowel through all of them is, None for
    none; what is to be said about what stands on or hangs from the cake."""

    tiers: tuple[Held, ...]
    through_mm: float | None
    through_shown_mm: float | None
    remarks: tuple[Saying, ...]


def held_up(cake: WholeCake, weights: CakeWeights) -> HeldUp:
    """What holds a cake up, from its dowel plan and its weights."""
    count, stacking = len(cake.tiers), [each for each in weights.tiers if each.tier.cake is not None]
    several = len(stacking) > 1
    found = [
        Held(
            said=foot.said,
            on=saying("the_board"),
            held_by="board",
            under=None,
            stands=foot.whole + foot.carries,
            each_g=None,
            card_mm=_card_mm(foot) if several else None,
            gap_mm=0.0,
        )
        for foot in stacking[:1]
    ]
    for lower, upper in pairwise(stacking):
        under, stands = cake.dowels(lower.tier), upper.whole + upper.carries
        found.append(
            Held(
                said=upper.said,
                on=tier_said(lower.tier, count),
                held_by=("pillars" if under.pillars else "dowels") if under else "foam",
                under=under,
                stands=stands,
                each_g=stands.mass_g / under.plan.count if under else None,
                card_mm=_card_mm(upper),
                gap_mm=upper.tier.asked.gap_mm,
            )
        )
    return HeldUp(
        tiers=tuple(found),
        through_mm=cake.stacked.through_mm,
        through_shown_mm=cake.stacked.through_shown_mm,
        remarks=tuple(_remarks(cake, weights)),
    )


def _card_mm(each: TierWeight) -> float | None:
    """How wide the card under a tier is."""
    card = each.tier.covered.board.card.size_mm if each.tier.covered else None
    return card[0] if card else None


def _remarks(cake: WholeCake, weights: CakeWeights) -> list[Saying]:
    """What is hung and what stands on top, each with its weight and its centre; and what the sums leave out."""
    found = []
    for each in weights.figures:
        figure = each.figure
        if figure.on in (SIDE, TOP):
            told = {"figure": figure.thing, "each_g": each.each_g, "centre_mm": each.centre_mm}
            found.append(saying("hangs_on_a_side", **told) if figure.on == SIDE else saying("stands_on_top", **told))
    if any(cake.stacked.dowels) or cake.stacked.through_mm is not None:
        found.append(saying("supports_unknown"))
    return found
