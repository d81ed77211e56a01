"""A cake's page: its sizes, each worked out; what is in it, what to watch, what else there is to say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.models import CakeDesign
from tinbook.pages.base.page import Desk, Page, cross_contact
from tinbook.pages.base.shared import Linked, linked_techniques
from tinbook.pages.cake.addresses import cake_address, called, making_address, used_address
from tinbook.pages.cake.ahead_view import AheadView, ahead_view
from tinbook.pages.cake.size_view import CakeInSize, SizeChip, chips
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.base.saying import Saying
from tinbook.plans.cakes.sizes import CakeSize, CakeSizes, cake_sizes
from tinbook.plans.cakes.used import tools_used
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.making.ahead import ahead_table
from tinbook.plans.mixtures.safety import AllergenStrip
from tinbook.tins import Tin

PLACED = {"in_the_stack": "stacking", "on_the_board": "paste on the board", "in_a_decoration": "“{}”"}
"""How a place is called, beside a caution, that its own words do not tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherSize:
    """A size that cannot be made, and why."""

    name: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeCaution:
    """A caution, and the places that call it up."""

    title: str
    advice: str
    places: str


@dataclass(frozen=True, kw_only=True)
class CakeView:
    """A cake in every size it can be made in."""

    slug: str
    desk: Desk

    @property
    def design(self) -> CakeDesign:
        """What its file says."""
        return self.desk.book.cakes[self.slug]

    @property
    def address(self) -> str:
        """Its page."""
        return cake_address(self.slug)

    @property
    def used_address(self) -> str:
        """The leaf of everything used."""
        return used_address(self.slug)

    @property
    def making_address(self) -> str:
        """The leaf of its loads, weights, supports and boxes."""
        return making_address(self.slug)

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """Its leaves."""
        return (
            Linked(self.address, "Cake"),
            Linked(self.used_address, "Everything used"),
            Linked(self.making_address, "Oven and transport"),
        )

    @cached_property
    def looked_at(self) -> CakeSizes:
        """Every size, those that cannot be made too."""
        return cake_sizes(self.design, self.desk.book, self.desk.facts)

    @cached_property
    def sizes(self) -> tuple[CakeInSize, ...]:
        """Those it can be made in, each worked out, small to large: sizes in the same tins are one, under all their
        names."""
        desk, sizes = self.desk, self.looked_at
        every = {each.key: each for each in (*sizes.offered, sizes.written)}.values()
        firsts: dict[tuple[Tin, ...], CakeSize] = {}
        names: dict[tuple[Tin, ...], list[str]] = {}
        # its own size is known as that, a step as a step; a size with a name is looked for by either
        for each in sorted(every, key=lambda each: (each.steps != 0, each.steps is None)):
            firsts.setdefault(each.tins, each)
            names.setdefault(each.tins, []).extend([each.key] if each.steps is None else [])
        own = whole_cake(self.slug, self.design, desk.book, desk.facts, bakes=desk.bakes)
        return tuple(
            CakeInSize(
                cake=own
                if each.tins == own.tins
                else whole_cake(
                    self.slug,
                    self.design,
                    desk.book,
                    desk.facts,
                    tins=each.tins,
                    heights=sizes.heights,
                    bakes=desk.bakes,
                    like=own,
                ),
                size=each,
                names=tuple(names[each.tins]),
                desk=desk,
            )
            for each in sorted(firsts.values(), key=lambda each: each.area_mm2)
        )

    @cached_property
    def written(self) -> CakeInSize:
        """The cake as written."""
        return next(each for each in self.sizes if each.written)

    @property
    def chips(self) -> tuple[SizeChip, ...]:
        """The sizes to choose from."""
        return chips(self.sizes)

    @property
    def lends(self) -> bool:
        """Whether some size takes a tin the house does not own."""
        return any(each.size.borrow for each in self.sizes)

    @property
    def others(self) -> tuple[OtherSize, ...]:
        """The sizes it cannot be made in."""
        return tuple(
            OtherSize(
                name=" ".join(word for word in called(each.tins) if word),
                why=formats.title("; ".join(map(spell, each.why))),
            )
            for each in self.looked_at.others
            if each.steps != 0
        )

    @property
    def portion(self) -> str:
        """`dessert, 25 × 50 mm`."""
        portion = self.written.cake.portion
        sides = f"{formats.number(portion.short_mm)} × {formats.number(portion.long_mm)}"
        return formats.with_unit(sides, "mm").replace(" × ", f"{formats.NBSP}×{formats.NBSP}")

    @property
    def portion_kind(self) -> str:
        """`dessert`."""
        return self.written.cake.portion.kind

    @property
    def keeps_top(self) -> bool:
        """Whether there is a top tier to keep back."""
        return len(self.design.tiers) > 1

    @property
    def strip(self) -> AllergenStrip:
        """Allergens of the whole, with the ingredients they come from."""
        found = self.written.cake.allergens
        return AllergenStrip(found.contains, spelled_all(found.unknown), made_with=(), known=found.known)

    @property
    def law(self) -> str:
        """What must be said beside its colours; empty for nothing."""
        return formats.title(spell(self.written.cake.law)) if self.written.cake.law else ""

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in the house's words."""
        return cross_contact(self.desk)

    @property
    def cautions(self) -> tuple[CakeCaution, ...]:
        """Every caution once, with the places it is for."""
        return tuple(
            CakeCaution(
                title=each.caution.title,
                advice=each.caution.advice,
                places=formats.sentence(dict.fromkeys(map(self._place, each.places))),
            )
            for each in self.written.cake.cautions
        )

    def _place(self, said: Saying) -> str:
        """Where something is, in few words: `base tier`, `the 20 cm round`, `Pilot's buttercream`."""
        words = spell(said)
        if said.key == "tier_of_cake":
            return f"{words.partition(',')[0]} tier" if self.keeps_top else self.written.cake.tins[0].as_said
        return PLACED[said.key].format(words) if said.key in PLACED else words

    @property
    def techniques(self) -> tuple[Linked, ...]:
        """The techniques that go with it, and those of its decorations."""
        slugs = (*(each.technique for each in self.design.decorations), *self.design.techniques)
        return linked_techniques(dict.fromkeys(slugs), self.desk.book, self.desk.facts)

    @cached_property
    def ahead(self) -> AheadView:
        """What can be made ahead, and how long it keeps."""
        return ahead_view(ahead_table(self.written.cake, self.desk.book))

    @property
    def seasons(self) -> str:
        """When it is made; empty for always."""
        return (
            formats.title(formats.sentence(each.written for each in self.design.seasons)) if self.design.seasons else ""
        )

    @property
    def also(self) -> str:
        """Its other names."""
        return formats.sentence(self.design.also) if self.design.also else ""

    @cached_property
    def tools(self) -> tuple[str, ...]:
        """The tools for any size of it, each once, with how many if it is more than one."""
        every = tools_used(self.written.cake, self.desk.book, self.desk.facts)
        return tuple(f"{tool.count} × {tool.name}" if tool.count > 1 else tool.name for tool in every)


def cake_pages(desk: Desk) -> Iterator[Page]:
    """Three leaves for each cake: the cake, everything used for it, and how it is baked, held up and carried."""
    for slug, design in desk.book.cakes.items():
        view, section = CakeView(slug=slug, desk=desk), ("Cakes",)
        yield Page(address=cake_address(slug), title=design.name, template="cake", view=view, section=section)
        yield Page(
            address=used_address(slug),
            title=f"{design.name}, everything used",
            template="cake_used",
            view=view,
            section=section,
            listed=False,
        )
        yield Page(
            address=making_address(slug),
            title=f"{design.name}, oven and transport",
            template="cake_making",
            view=view,
            section=section,
            listed=False,
        )
