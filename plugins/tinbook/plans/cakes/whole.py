"""A whole cake worked out at one size: the value that pages, tables and sheets are made from."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.cakes.asked import TierAsked, in_tin, tiers_asked
from tinbook.plans.cakes.figures import CakeFigure, figures, techniques_of
from tinbook.plans.cakes.oven_loads import OvenPlan, oven_plan
from tinbook.plans.cakes.safety import CautionAt, allergens_of, cautions_at, law_of
from tinbook.plans.cakes.stacking import DowelsIn, Level, StackedUp, stacked_up
from tinbook.plans.cakes.tiers import TierWorked, baked_stack, worked_tier
from tinbook.plans.cakes.tints import Tint, tints
from tinbook.plans.cakes.totals import MixtureTotal, PasteTotal, Totals, mixture_totals, paste_totals, totals
from tinbook.plans.mixtures.safety import AllergenStrip, strip_of
from tinbook.plans.portions.cutting import ASKED, Portion, portion_called, portion_sizes
from tinbook.tins import Tin

USUAL_PORTION = "dessert"
Heights = tuple[tuple[float, int] | None, ...]
"""How high each tier stands before its coats, mm, in how many layers; None if its design or its shape says so."""


@dataclass(frozen=True, kw_only=True)
class WholeCake:
    """A cake at one size. `tiers` stand from the bottom, `beside` them what is served with them.

    `kept`: portions of the top tier, where that is kept back; 0 otherwise. `mixtures` are fillings and icings for all
    tiers together, `pastes` by colour, `tints` coloured batters and coats; `law` is what must be said beside the
    colours. `oven`: all of it in as few loads as can be; None if something does not go in. `totals` sums `tiers` and
    `beside`.
    """

    slug: str
    design: CakeDesign
    tins: tuple[Tin, ...]
    tiers: tuple[TierWorked, ...]
    beside: tuple[TierWorked, ...]
    stacked: StackedUp
    figures: tuple[CakeFigure, ...]
    mixtures: tuple[MixtureTotal, ...]
    pastes: tuple[PasteTotal, ...]
    tints: tuple[Tint, ...]
    oven: OvenPlan | None
    totals: Totals
    portion: Portion
    kept: int
    allergens: AllergenStrip
    law: Saying | None
    cautions: tuple[CautionAt, ...]
    worked: Worked

    @property
    def every_tier(self) -> tuple[TierWorked, ...]:
        """The tiers from the bottom, then what stands beside them."""
        return (*self.tiers, *self.beside)

    @property
    def serves(self) -> int:
        """Portions for guests: all of them, less a top tier that is kept back."""
        return self.totals.portions - self.kept

    @property
    def owned(self) -> bool:
        """Whether the house owns every tin it bakes in."""
        return all(tier.asked.owned for tier in self.every_tier if tier.baked)

    def level(self, tier: TierWorked) -> Level | None:
        """Where a tier stands; None for cups, and for what stands beside the cake."""
        place = self.tiers.index(tier) if tier in self.tiers else -1
        return self.stacked.levels[place] if 0 <= place < len(self.stacked.levels) else None

    def dowels(self, tier: TierWorked) -> DowelsIn | None:
        """The dowels in a tier; None if it has none."""
        place = self.tiers.index(tier) if tier in self.tiers else -1
        return self.stacked.dowels[place] if 0 <= place < len(self.stacked.dowels) else None


def written_tins(design: CakeDesign) -> tuple[Tin, ...]:
    """The tins of its tiers as written."""
    return tuple(tier.tier.tin for tier in design.tiers)


def portion_of(design: CakeDesign, book: Book, facts: Facts, asked: str | tuple[float, float] | None = None) -> Portion:
    """What one guest gets: as asked, as the cake says, or a dessert portion. AskError for an unknown one."""
    if isinstance(asked, tuple):
        return Portion(ASKED, min(asked), max(asked), ASKED)
    return portion_called(asked or design.portion or USUAL_PORTION, portion_sizes(book, facts))


def own_heights(design: CakeDesign, book: Book, facts: Facts) -> Heights:
    """How high each tier of a sound cake stands before its coats at its own size, and in how many layers; None if
    the design says so itself, or if its shape gives its height."""

    def own(asked: TierAsked) -> tuple[float, int] | None:
        if asked.height_mm is not None or asked.layers is not None:
            return None
        stack = baked_stack(asked, book, facts)
        return (stack.stack_mm, stack.layers) if stack else None

    return tuple(own(asked) for asked in tiers_asked(design, written_tins(design), book, facts) if not asked.beside)


def whole_cake(
    slug: str,
    design: CakeDesign,
    book: Book,
    facts: Facts,
    *,
    tins: tuple[Tin, ...] | None = None,
    heights: Heights | None = None,
    portion: str | tuple[float, float] | None = None,
    keep_top: bool = False,
    bakes: Bakes | None = None,
    like: WholeCake | None = None,
) -> WholeCake:
    """A sound cake in its own tins or in these, from the bottom. AskError for a size it cannot be made in.

    In other tins each tier is as high as in its own: `heights`, where they are known already. `like`: the same cake in
    another size, whose allergens, cautions and words of the law are its own too.
    """
    own = written_tins(design)
    tins = tins or own
    size, bakes = portion_of(design, book, facts, portion), bakes or Bakes(book, facts)
    asked = tiers_asked(design, tins, book, facts)
    if tins != own:
        asked = as_high(asked, own_heights(design, book, facts) if heights is None else heights, book)
    every = tuple(worked_tier(each, size, book, facts, bakes) for each in asked)
    tiers, beside = every[: len(tins)], every[len(tins) :]
    if keep_top and len(tiers) < 2:
        raise AskError("a single tier cannot be both cut and kept", "leave out --keep-top")
    made = figures(design, tins, book, facts)
    stacked = stacked_up(design, tiers, made, book, facts)
    techniques = tuple(techniques_of(design, book).values())
    mixtures = mixture_totals(every, len(tiers))
    oven = oven_plan(every, bakes, book, facts)
    pastes = paste_totals(every, stacked, design.board.colour, made, len(tiers), book, facts)
    return WholeCake(
        slug=slug,
        design=design,
        tins=tins,
        tiers=tiers,
        beside=beside,
        stacked=stacked,
        figures=made,
        mixtures=mixtures,
        pastes=pastes,
        tints=tints(every, len(tiers), book, facts),
        oven=oven,
        totals=totals(every, stacked, oven),
        portion=size,
        kept=tiers[-1].serves if keep_top else 0,
        allergens=like.allergens
        if like
        else strip_of(allergens_of(every, mixtures, pastes, techniques, book, facts), facts),
        law=like.law if like else law_of(every, pastes, book, facts),
        cautions=like.cautions if like else cautions_at(every, stacked, mixtures, pastes, techniques, book, facts),
        worked=_worked(every, stacked, size, facts),
    )


def as_high(tiers: tuple[TierAsked, ...], heights: Heights, book: Book) -> tuple[TierAsked, ...]:
    """The tiers, each in its tin, as high and in as many layers as they are at the cake's own size."""
    changed = tuple(
        in_tin(replace(asked, height_mm=own[0], layers=own[1]) if own else asked, asked.tin, book)
        for asked, own in zip(tiers, heights, strict=False)
    )
    return changed + tiers[len(changed) :]


def _worked(tiers: tuple[TierWorked, ...], stacked: StackedUp, size: Portion, facts: Facts) -> Worked:
    """How it was worked out: every figure is that of the table it comes from, and the tiers stand one on the other."""
    inputs: list[Saying | str] = [
        saying("tiers_asked_at", tiers=tuple(_tier_told(tier) for tier in tiers)),
        saying("portion_size", kind=size.kind, short_mm=size.short_mm, long_mm=size.long_mm),
    ]
    if stacked.drum is not None:
        told = {"paste_mm": stacked.paste_mm, "how": stacked.covered}
        inputs.append(saying("stands_on_a_drum", drum_mm=stacked.drum_mm, **told))
    inputs += [
        saying("icing_each", each_g=icing.each_g, low_g=icing.low_g, high_g=icing.high_g)
        for icing in (tier.icing for tier in tiers)
        if icing
    ]
    if any(level.card_mm for level in stacked.levels):
        card = next(tier.asked.settled.figures["card"] for tier in tiers)
        inputs.append(saying("cards_thick", card_mm=card.value, low_mm=card.fact.low, high_mm=card.fact.high))
    if any(stacked.dowels):
        inputs += [saying("dowels_as_long"), saying("dowels_counted")]
    named = [source for tier in tiers for source in _sources(tier)]
    named += [size.said_by] if size.said_by in facts.sources else []
    return Worked(saying("whole_cake"), tuple(inputs), tuple(dict.fromkeys((*named, "common practice"))))


def _tier_told(tier: TierWorked) -> Saying:
    asked = tier.asked
    name = asked.batch.mixture.name if asked.batch else None
    high_mm = tier.cake.stands_mm if tier.cake else None
    return saying("tier_asked_at", tin=asked.tin.name, mixture=name, high_mm=high_mm)


def _sources(tier: TierWorked) -> tuple[str, ...]:
    baked = tier.baked.batch.worked.sources if tier.baked else ()
    return (*baked, *(tier.table.worked.sources if tier.table else ()))
