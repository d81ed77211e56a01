"""From guests to tins: a table for the usual numbers, and what the browser needs to answer for any."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from tinbook.facts import Caution
from tinbook.pages.at_a_glance.portions import TITLE
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, Titled
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.worked import Worked
from tinbook.plans.portions.choices import Choices, choices
from tinbook.plans.portions.cutting import Portion, portion_sizes
from tinbook.plans.portions.guests import (
    FEWEST,
    GUESTS,
    MOST,
    MOST_TRAYS,
    Answer,
    Wish,
    answers,
    know_mixtures,
    mixtures,
    needs_shown,
)
from tinbook.plans.portions.tables import beside_said

USUAL_GUESTS, USUAL_KIND = 40, "dessert"
"""The question before anyone has asked one."""
SHOWN = 4
"""The most sets shown of the house's own tins, and of others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundSet:
    """A set that serves, as the script shows it: its words, and the widths to draw its tiers with, from the top
    down."""

    serves: int
    name: str
    note: str
    tiers_mm: tuple[int, ...]


@dataclass(frozen=True)
class GuestsView:
    """Everything the page says."""

    desk: Desk

    @cached_property
    def choices(self) -> Choices:
        """The sets."""
        return choices(self.desk.book, self.desk.facts)

    @property
    def usual_guests(self) -> int:
        """The number of guests answered for in the page."""
        return USUAL_GUESTS

    @property
    def height_mm(self) -> int:
        """The height of the drawn cakes."""
        return round(self.choices.height_mm)

    @property
    def kinds(self) -> tuple[tuple[int, str], ...]:
        """The kinds of portion by their places, the usual one first."""
        named = [(place, portion.kind, _sides(portion)) for place, portion in enumerate(self.choices.portions)]
        return tuple(
            (place, f"{kind}, {sides}") for place, kind, sides in sorted(named, key=lambda each: each[1] != USUAL_KIND)
        )

    @property
    def usual_kind(self) -> str:
        """The usual one."""
        return self.kinds[0][1]

    @property
    def mixtures(self) -> tuple[tuple[str, str], ...]:
        """What a cake may be baked from: slugs and names."""
        return tuple((mixture.slug, mixture.name) for mixture in mixtures(self.desk.book, self.desk.facts))

    @property
    def own_sets(self) -> tuple[FoundSet, ...]:
        """The best sets of the house's own tins for that many guests."""
        found = answers(self.choices, replace(self._wish, owned=True), SHOWN)
        return tuple(self._found(answer) for answer in found)

    @property
    def other_sets(self) -> tuple[FoundSet, ...]:
        """The best of those for which a tin has to be borrowed or bought."""
        every = answers(self.choices, self._wish, len(self.choices.sets))
        return tuple(self._found(answer) for answer in every if not answer.owned)[:SHOWN]

    @property
    def _wish(self) -> Wish:
        return Wish(guests=USUAL_GUESTS, kind=self.kinds[0][0])

    def _found(self, answer: Answer) -> FoundSet:
        laid = self.choices
        note = f"serves {answer.serves}, {answer.over or 'none'} left over"
        for first in mixtures(self.desk.book, self.desk.facts)[:1]:
            times, litres = needs_shown(first, first.deep_mm, laid, answer)
            batter = formats.with_unit(formats.fixed(litres, 1), "l")
            note += f"; {formats.fixed(times, 2)}{formats.NBSP}× the recipe, {batter} of batter"
        tins = [laid.tiers[place].tin for place in answer.tiers]
        return FoundSet(
            serves=answer.serves,
            name=" + ".join(formats.tin_words(tin.name) for tin in tins),
            note=note,
            tiers_mm=tuple(round(tin.bounds_mm[0]) for tin in reversed(tins)),
        )

    @property
    def lead(self) -> str:
        """What is answered."""
        book, facts = self.desk.book, self.desk.facts
        high = formats.centimetres(finishing(book.finish, facts).heights_mm[0])
        return (
            "Your own tins come first: everyday shapes, then those with the fewest portions left over. In the tables "
            "below, everyday shapes come first, then your own tins. "
            f"Cakes are {high} high. All tiers are the same shape, each 5 to 10{formats.NBSP}cm narrower than the one "
            "below; all of them fit the oven and a standard-size drum."
        )

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What holds up a tier is not food."""
        return tuple(self.desk.facts.cautions[key] for key in ("support", "dowels", "carrying"))

    @property
    def tables(self) -> tuple[Titled, ...]:
        """A table for each kind of portion, dessert first, by name; nothing is worked out yet."""
        kinds = sorted(portion_sizes(self.desk.book, self.desk.facts), key=lambda kind: kind != USUAL_KIND)
        return tuple(Titled(f"{formats.title(kind)} portions", kind.replace(" ", "-")) for kind in kinds)

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """The tables."""
        return tuple(self._grid(table) for table in self.tables)

    def _grid(self, table: Titled) -> Grid:
        place = [portion.kind.replace(" ", "-") for portion in self.choices.portions].index(table.anchor)
        portion = self.choices.portions[place]
        rows = tuple(
            GridRow(
                head=str(guests),
                cells=(
                    self._cell(Wish(guests=guests, kind=place, stacked=False)),
                    self._cell(Wish(guests=guests, kind=place, stacked=True)),
                    self._cell(Wish(guests=guests, kind=place, keep_top=True)),
                    self._cell(Wish(guests=guests, kind=place, beside="cupcakes")),
                ),
            )
            for guests in GUESTS
        )
        heads = (
            Head("Guests"), Head("One tin", words=True), Head("Stacked", words=True),
            Head("Stacked, top tier kept back", "not counted", words=True), Head("With cupcakes", words=True),
        )  # fmt: skip
        lead = f"{_sides(portion)} each."
        formula = "portions from a set = portions from all its tiers together, according to their cutting plans"
        inputs = (
            f"{portion.kind} portions {_sides(portion)}",
            f"cakes {formats.centimetres(self.choices.height_mm)} high",
        )
        sources = (portion.said_by if portion.said_by in self.desk.facts.sources else "common practice",)
        worked = Worked(formula, inputs, sources)
        return Grid(
            **table._asdict(), heads=heads, rows=rows, worked=worked_view((worked,), self.desk.facts), lead=lead
        )

    def _cell(self, wish: Wish) -> Cell:
        best = answers(self.choices, wish, 1)
        if not best:
            return Cell("none large enough")
        own = "this one" if best[0].tins == 1 else "all of these"
        owned = "" if best[0].owned else f"; you do not have {own}"
        return Cell(set_words(self.choices, best[0]), note=over_words(best[0]) + owned)

    @property
    def script_data(self) -> dict[str, Any]:
        """What the browser gets: tins, sets by their places, mixtures by how deep their batter stands."""
        laid = self.choices
        cups = laid.cups
        return {
            "kinds": [[portion.kind, _sides(portion)] for portion in laid.portions],
            "tins": [
                [
                    formats.tin_words(tier.tin.name),
                    int(tier.owned),
                    int(tier.tin.kind.everyday),
                    *tier.serves,
                    round(tier.area_mm2),
                    round(tier.tin.bounds_mm[0]),
                ]
                for tier in laid.tiers
            ],
            "sets": laid.sets,
            "trays": laid.trays,
            "cups": [formats.tin_words(cups.tin.name), int(cups.owned), cups.serves[0], laid.cups_ml] if cups else None,
            "most_trays": MOST_TRAYS,
            "fewest": FEWEST,
            "most": MOST,
            "mixtures": [
                [mixture.slug, mixture.deep_mm, mixture.batter_ml]
                for mixture in mixtures(self.desk.book, self.desk.facts)
            ],
        }


def _sides(portion: Portion) -> str:
    return f"{formats.number(portion.short_mm)} × {formats.with_unit(formats.number(portion.long_mm), 'mm')}"


def set_words(laid: Choices, answer: Answer) -> str:
    """`round 23 + 15 cm`, `square 25 cm and 12 standard cups`."""
    tins = [laid.tiers[place].tin for place in answer.tiers]
    sizes = [tin.size_label for tin in tins]
    if all(size.endswith(" cm") for size in sizes):
        sizes = [*(size.removesuffix(" cm") for size in sizes[:-1]), sizes[-1]]
    cake = f"{tins[0].shape} {' + '.join(sizes)}" if len(tins) > 1 else tins[0].name
    beside = beside_said(laid, answer)
    return formats.tin_words(f"{cake} and {spell(beside)}" if beside else cake)


def over_words(answer: Answer) -> str:
    """`serves 40`, `serves 46, 6 over`."""
    over = f", {answer.over} left over" if answer.over else ""
    return f"serves {answer.serves}{over}"


def guests_pages(desk: Desk) -> Iterator[Page]:
    """The page, where there are tins to choose from."""
    know_mixtures(desk.book, desk.facts)
    yield Page(
        address="guests",
        title="Tins by number of guests",
        template="guests",
        view=GuestsView(desk),
        section=("Tins", TITLE),
    )
