"""From guests to tins: a table for the usual numbers, and what the browser needs to answer for any."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.facts import Caution
from tinbook.pages.at_a_glance.portions import TITLE
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, Titled
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.worked import Worked
from tinbook.plans.portions.cutting import KINDS
from tinbook.plans.portions.guests import (
    FEWEST,
    GUESTS,
    MOST,
    MOST_TRAYS,
    Answer,
    Choices,
    Wish,
    answers,
    choices,
    mixtures,
)
from tinbook.plans.portions.tables import beside_words


@dataclass(frozen=True)
class GuestsView:
    """Everything the page says."""

    desk: Desk

    @cached_property
    def made(self) -> Choices:
        """The sets."""
        return choices(self.desk.book, self.desk.facts)

    @property
    def lead(self) -> str:
        """What is answered."""
        book, facts = self.desk.book, self.desk.facts
        high = formats.centimetres(finishing(book.finish, facts).heights_mm[0])
        return (
            "Which tins serve so many, with least left over; then the fewest tins, then the least mixture. "
            f"Cakes {high} high. Tiers are of one shape, each at least 5{formats.NBSP}cm narrower than the one below."
        )

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What holds up a tier is no food."""
        return (self.desk.facts.cautions["support"],)

    @property
    def tables(self) -> tuple[Titled, ...]:
        """A table each kind of portion, dessert first, by name."""
        return tuple(Titled(f"{formats.title(kind)} portions", kind) for kind in ("dessert", "finger", "party"))

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """The tables."""
        return tuple(self._grid(each) for each in self.tables)

    def _grid(self, table: Titled) -> Grid:
        kind = table.anchor
        at, sides = KINDS.index(kind), self.made.portions[KINDS.index(kind)]
        rows = tuple(
            GridRow(
                head=str(guests),
                cells=(
                    self._cell(Wish(guests=guests, kind=at, stacked=False)),
                    self._cell(Wish(guests=guests, kind=at, stacked=True)),
                    self._cell(Wish(guests=guests, kind=at, keep_top=True)),
                    self._cell(Wish(guests=guests, kind=at, owned=True)),
                    self._cell(Wish(guests=guests, kind=at, beside="cupcakes")),
                ),
            )
            for guests in GUESTS
        )
        heads = (
            Head("Guests"), Head("One tin", words=True), Head("Stacked", words=True),
            Head("Stacked, top kept", "not counted", words=True), Head("From tins owned", words=True),
            Head("With cupcakes", words=True),
        )  # fmt: skip
        lead = f"{formats.number(sides.short_mm)} × {formats.with_unit(formats.number(sides.long_mm), 'mm')} each."
        formula = "portions of a set = portions of its tiers together, by their cutting plans"
        worked = Worked(formula, (), ("common practice",))
        return Grid(
            **table._asdict(), heads=heads, rows=rows, worked=worked_view((worked,), self.desk.facts), lead=lead
        )

    def _cell(self, wish: Wish) -> Cell:
        found = answers(self.made, wish, 1)
        if not found:
            return Cell("none so large")
        return Cell(set_words(self.made, found[0]), note=over_words(found[0]))

    @property
    def script_data(self) -> dict[str, Any]:
        """What the browser is handed: tins, sets by their places, mixtures by how deep their batter stands."""
        made = self.made
        cups = made.cups
        return {
            "kinds": [
                [kind, f"{formats.number(each.short_mm)} × {formats.with_unit(formats.number(each.long_mm), 'mm')}"]
                for kind, each in zip(KINDS, made.portions, strict=True)
            ],
            "tins": [
                [formats.tin_words(tier.tin.name), int(tier.owned), *tier.serves, round(tier.area_mm2)]
                for tier in made.tiers
            ],
            "sets": made.sets,
            "trays": made.trays,
            "cups": [formats.tin_words(cups.tin.name), int(cups.owned), cups.serves[0], round(made.cups_ml, 2)]
            if cups
            else None,
            "most_trays": MOST_TRAYS,
            "fewest": FEWEST,
            "most": MOST,
            "mixtures": [
                [each.mixture.name, round(deep_mm, 4), round(each.batter_ml, 3)]
                for each, deep_mm in mixtures(self.desk.book, self.desk.facts, made.height_mm)
            ],
        }


def set_words(made: Choices, each: Answer) -> str:
    """`round 23 + 15 cm`, `square 25 cm and 12 standard cups`."""
    tins = [made.tiers[at].tin for at in each.tiers]
    sizes = [tin.size_label for tin in tins]
    if all(size.endswith(" cm") for size in sizes):
        sizes = [*(size.removesuffix(" cm") for size in sizes[:-1]), sizes[-1]]
    told = f"{tins[0].shape} {' + '.join(sizes)}" if len(tins) > 1 else tins[0].name
    beside = beside_words(made, each)
    return formats.tin_words(f"{told} and {beside}" if beside else told)


def over_words(each: Answer) -> str:
    """`serves 40`, `serves 46, 6 over`."""
    over = f", {each.over} over" if each.over else ""
    return f"serves {each.serves}{over}"


def guests_pages(desk: Desk) -> Iterator[Page]:
    """The page, where there are tins to choose from."""
    yield Page(
        address="guests", title="From guests to tins", template="guests", view=GuestsView(desk), section=("Tins", TITLE)
    )
