"""A cake in one of its sizes, spelled: what its chip says, its band of facts, drawing, table, lines of work."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import WorkedView, plural, worked_view
from tinbook.pages.cake.addresses import called
from tinbook.pages.cake.carrying import CarriedView, carried_view
from tinbook.pages.cake.elevation import CakeElevation, elevation
from tinbook.pages.cake.figures_drawn import letter_of, side_by_side
from tinbook.pages.cake.jobs import JobGroup, jobs
from tinbook.pages.cake.oven_view import LoadsView, oven_view
from tinbook.pages.cake.tier_table import TierTable, tier_table
from tinbook.pages.cake.used_view import NotFood, not_food, used_groups
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.cakes.sizes import CakeSize
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.used import EverythingUsed, everything_used
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.making.held import held_up
from tinbook.plans.making.journey import journey

MOST_PX, WIDE_PX, HIGH_PX = 0.16, 52.0, 54.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeChip:
    """A size to choose: what it is asked by, what it is called, its portions, and its tiers drawn to the scale that all
    of them share. `kept`: portions without the top tier; 0 if there is no other."""

    key: str
    tins: str
    what: str
    name: str
    serves: int
    kept: int
    chosen: bool
    lent: bool
    drawing: Markup

    @property
    def words(self) -> str:
        """What it says aloud."""
        named = f"{self.name}: " if self.name else ""
        lent = ", with a tin to borrow" if self.lent else ""
        return f"{named}{self.tins} {self.what}, {plural(self.serves, 'portion')}{lent}".replace("  ", " ")


@dataclass(frozen=True, kw_only=True)
class CakeInSize:
    """A cake in one size, with everything its page says of that."""

    cake: WholeCake
    size: CakeSize
    names: tuple[str, ...]
    desk: Desk

    @property
    def key(self) -> str:
        """What it is asked by."""
        return self.size.key

    @property
    def written(self) -> bool:
        """Whether it is the cake's own size."""
        return self.size.steps == 0

    @property
    def anchor(self) -> str:
        """Its place on the page."""
        return "size-" + "".join(
            sign if sign.isalnum() else "-" for sign in self.key.replace("+", "up ").replace("-", "down ")
        )

    @property
    def tins(self) -> tuple[str, str]:
        """`25 + 20 + 15` and `cm round`."""
        return called(self.cake.tins)

    @property
    def tins_said(self) -> str:
        """The same in one."""
        return " ".join(words for words in self.tins if words)

    @property
    def sizes_said(self) -> str:
        """Its sizes alone."""
        return self.tins[0]

    @property
    def shape_said(self) -> str:
        """What all of them are; empty if they are not alike."""
        return self.tins[1]

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """The figures of the band, each with what it counts."""
        total = self.cake.totals
        found = [
            (str(total.portions), "portions" if total.portions != 1 else "portion"),
            (formats.centimetres(self.cake.stacked.high_shown_mm), "high"),
            (formats.mixed(total.eggs), "eggs" if total.eggs != 1 else "egg"),
            (str(total.bakes), "oven loads" if total.bakes != 1 else "oven load"),
        ]
        found += [
            (str(each.batches), f"{'batch' if each.batches == 1 else 'batches'} of {each.batch.mixture.name}")
            for each in self.cake.mixtures
            if not each.batch.packs_g
        ]
        nothing = {("0", "eggs"), ("0\u00a0cm", "high")}
        return tuple(each for each in found if each not in nothing)

    @property
    def remarks(self) -> tuple[str, ...]:
        """What else there is to say about how it stands, and about the tins it takes."""
        return tuple(formats.title(spell(each)) for each in self.size.remarks)

    @cached_property
    def drawing(self) -> CakeElevation | None:
        """The cake from the front."""
        return elevation(self.cake, self.drawn)

    @property
    def drawn(self) -> str:
        """What the drawing shows, in words."""
        cake = self.cake
        high = formats.centimetres(cake.stacked.high_shown_mm)
        sizes, what = self.tins
        told = [f"From the front, to scale: {sizes} {what}".strip()]
        if cake.stacked.drum and cake.stacked.drum.board.size_mm:
            told.append(f"on a drum of {formats.centimetres(cake.stacked.drum.board.size_mm[0])}")
        told.append(f"{high} high")
        told += [f"beside it {_beside_said(tier)}" for tier in cake.beside]
        for nth, each in enumerate(cake.figures):
            many = "" if (said := side_by_side(cake, nth)) is None else f", {said}"
            told.append(f"{letter_of(nth)}: {each.thing}, {formats.centimetres(round(each.high_mm))} high{many}")
        return ", ".join(told)

    @cached_property
    def table(self) -> TierTable:
        """The cake by tier."""
        return tier_table(self.cake, self.key, self.desk)

    @cached_property
    def jobs(self) -> tuple[JobGroup, ...]:
        """What it takes, to tick."""
        return jobs(self.cake, self.key, self.desk.book, self.desk.facts)

    @cached_property
    def oven(self) -> LoadsView | None:
        """The cake through the oven."""
        return oven_view(self.cake.oven, self.desk)

    @cached_property
    def carried(self) -> CarriedView:
        """What it weighs, what holds it up, and how it travels."""
        book, facts = self.desk.book, self.desk.facts
        weights = cake_weights(self.cake, book, facts)
        return carried_view(weights, held_up(self.cake, weights), journey(self.cake, weights, book, facts))

    @cached_property
    def every(self) -> EverythingUsed:
        """Everything used for it."""
        return everything_used(self.cake, self.desk.book, self.desk.facts)

    @property
    def used(self) -> tuple[JobGroup, ...]:
        """The same in lines to tick, but the tools."""
        drum = self.cake.stacked.drum
        return used_groups(self.every, drum.board.sold if drum else "cm", self.desk)

    @cached_property
    def not_food(self) -> NotFood:
        """What is not food, counted."""
        return not_food(self.every)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.cake.worked,), self.desk.facts)


def _beside_said(tier: TierWorked) -> str:
    return formats.tin_words(f"{tier.asked.count} {tier.asked.tin.name}" if tier.asked.cups else tier.asked.tin.name)


def chips(sizes: tuple[CakeInSize, ...]) -> tuple[SizeChip, ...]:
    """A chip for each size, all drawn to one scale."""
    wide = max((_wide(each.cake) for each in sizes), default=1.0)
    high = max((each.cake.stacked.tiers_mm for each in sizes), default=1.0)
    scale = min(MOST_PX, WIDE_PX / max(wide, 1.0), HIGH_PX / max(high, 1.0))
    return tuple(
        SizeChip(
            key=each.key,
            tins=each.tins[0],
            what=each.tins[1],
            name=" or ".join(each.names),
            serves=each.cake.serves,
            kept=each.cake.serves - each.cake.tiers[-1].serves if len(each.cake.tiers) > 1 else 0,
            chosen=each.written,
            lent=bool(each.size.borrow),
            drawing=_chip(each.cake, scale),
        )
        for each in sizes
    )


def _wide(cake: WholeCake) -> float:
    return max((tier.guide_mm[0] for tier in cake.tiers if tier.cake), default=1.0)


def _chip(cake: WholeCake, scale: float) -> Markup:
    boxes = "".join(_boxes(cake, scale))
    wide, high = _wide(cake) * scale + 4.0, cake.stacked.tiers_mm * scale + 4.0
    frame = '<svg viewBox="0 0 {0:.1f} {1:.1f}" style="width:{2:.2f}rem" aria-hidden="true">{3}</svg>'
    return Markup(frame).format(wide, high, wide / 20.0, Markup(boxes))


def _boxes(cake: WholeCake, scale: float) -> Iterator[str]:
    middle, foot = _wide(cake) * scale / 2.0 + 2.0, cake.stacked.tiers_mm * scale + 2.0
    low = cake.stacked.levels[-1].top_mm - cake.stacked.tiers_mm if cake.stacked.levels else 0.0
    for tier in cake.tiers:
        level = cake.level(tier)
        if level is None:
            continue
        wide, high = tier.guide_mm[0] * scale, tier.high_mm * scale
        y = foot - (level.top_mm - low) * scale
        yield f'<rect x="{middle - wide / 2:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{high:.1f}"/>'
