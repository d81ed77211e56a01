"""Colour in anything but paste: in the batter of a tier, and in its coat if no paste covers it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import coat_g, tier_said
from tinbook.plans.techniques.colours import BATTER, BUTTERCREAM, Colouring

CREAMS = ("buttercream", "meringue buttercream")
"""Kinds of mixture that take colour the way buttercream does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tint:
    """What is coloured, of which tier, in what base: how much of it, exactly and as the scales show it; and each pot
    with its shade and grams (None if its card gives no weight). `pots` is None if the colour's card does not say
    what goes into such a base."""

    said: Saying
    base: str
    of: str
    colour: Colouring
    mass_g: float
    shown_g: float
    pots: tuple[tuple[str, str, float | None], ...] | None


def tints(tiers: Sequence[TierWorked], count: int, book: Book, facts: Facts) -> tuple[Tint, ...]:
    """Every coloured batter and coat, in the order of the tiers."""
    return tuple(tint for tier in tiers for tint in _of_tier(tier, count, book, facts))


def _of_tier(tier: TierWorked, count: int, book: Book, facts: Facts) -> Iterator[Tint]:
    said = tier_said(tier, count)
    batter = Colouring.called(tier.asked.batter_colour, book, facts)
    if batter and tier.baked:
        whole = tier.baked.whole
        yield _tint(said, BATTER, tier.baked.batch, batter, (whole.mass_g, whole.mass_shown_g), True)
    coat = Colouring.called(tier.asked.colour, book, facts)
    covered = bool(tier.covered and tier.covered.paste and tier.covered.paste.made_g)
    grams = coat_g(tier)
    if coat and grams[0] and not covered and tier.table and "final_coat" in tier.table.roles:
        batch = tier.table.roles["final_coat"]
        yield _tint(said, BUTTERCREAM, batch, coat, grams, batch.kind.key in CREAMS)


def _tint(said: Saying, base: str, batch: Batch, colour: Colouring, grams: tuple[float, float], takes: bool) -> Tint:
    """`grams`: exactly, and as the scales show it; `takes`: whether the mixture takes a colour as that base does."""
    mass_g, shown_g = grams
    pots = colour.others.get(base) if takes else None
    told = None if pots is None else tuple((pot.name, pot.shade, pot.for_g(mass_g)) for pot in pots)
    of = batch.mixture.name
    return Tint(said=said, base=base, of=of, colour=colour, mass_g=mass_g, shown_g=shown_g, pots=told)
