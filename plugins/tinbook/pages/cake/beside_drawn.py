"""What is served beside a cake, in its elevation: a cake in outline, a cup with how many there are of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tinbook.pages.cake.addresses import size_of
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.whole import WholeCake

SLOPE = 0.72
"""How wide the foot of a cup is, as a share of its top. Common practice."""
LEAST_PX = 46.0
"""Room for how many there are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandsBeside:
    """Something beside the cake: how wide and high it stands, mm, and what is written over it."""

    tier: TierWorked
    wide_mm: float
    high_mm: float
    words: str


def served_beside(cake: WholeCake) -> tuple[StandsBeside, ...]:
    """All of it, in the order it is written."""
    return tuple(_served(tier) for tier in cake.beside)


def _served(tier: TierWorked) -> StandsBeside:
    tin = tier.asked.tin
    if tier.cake is None:
        return StandsBeside(tier=tier, wide_mm=tin.sizes_mm[0], high_mm=tin.brim_mm, words=f"{tier.asked.count} ×")
    return StandsBeside(tier=tier, wide_mm=tier.guide_mm[0], high_mm=tier.high_mm, words=size_of(tin))


def beside_paths(served: Sequence[StandsBeside], right_mm: float, gap_mm: float, px: float) -> tuple[list[str], float]:
    """Them drawn to the right of what stands there already, on the bench; and how far to the right they reach. A px of
    the page is `px` mm."""
    found = list[str]()
    for each in served:
        room = max(each.wide_mm, LEAST_PX * px)
        middle = right_mm + gap_mm + room / 2.0
        found += _drawn(each, middle, px)
        right_mm += gap_mm + room
    return found, right_mm


def _drawn(each: StandsBeside, middle: float, px: float) -> Iterator[str]:
    left, wide, high = middle - each.wide_mm / 2.0, each.wide_mm, each.high_mm
    if each.tier.cake is None:
        foot = wide * SLOPE
        path = f"M{left:.1f} {-high:.1f}h{wide:.1f}L{middle + foot / 2:.1f} 0h{-foot:.1f}Z"
        dome = f"M{left:.1f} {-high:.1f}A{wide / 2:.1f} {wide / 4:.1f} 0 0 1 {left + wide:.1f} {-high:.1f}"
        yield f'<path class="tb-served" d="{dome}"/><path class="tb-served" d="{path}"/>'
        high += wide / 4.0
    elif each.tier.cake.solid == "dome":
        yield f'<path class="tb-served" d="M{left:.1f} 0A{wide / 2:.1f} {high:.1f} 0 0 1 {left + wide:.1f} 0Z"/>'
    elif each.tier.cake.solid == "ball":
        radii = f'rx="{wide / 2:.1f}" ry="{high / 2:.1f}"'
        yield f'<ellipse class="tb-served" cx="{middle:.1f}" cy="{-high / 2:.1f}" {radii}/>'
    else:
        yield f'<rect class="tb-served" x="{left:.1f}" y="{-high:.1f}" width="{wide:.1f}" height="{high:.1f}"/>'
    yield f'<text class="tb-mid" x="{middle:.1f}" y="{-high - 7.0 * px:.1f}">{each.words}</text>'
