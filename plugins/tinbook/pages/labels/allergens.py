"""The page of allergens: everything in the book by what is in it, for a stall or a telephone call, and each product's
list of ingredients."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from tinbook.facts import LabelRule
from tinbook.models.labels import Labelling
from tinbook.pages.base.grids import UNWORKED
from tinbook.pages.base.page import Desk, Page, cross_contact
from tinbook.pages.base.sheets import ListSheet, sheets_of
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.labels import ListRun, list_runs, long_date
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.labels.applying import label_name, rules_for
from tinbook.plans.labels.listing import IngredientsList, labelling_of, list_of
from tinbook.plans.labels.of_book import NO, UNKNOWN, YES, ProductAllergens, product_allergens
from tinbook.plans.labels.product import product_asked

ADDRESS, TITLE = "allergens", "Allergens"
ROWS = 40
"""How many products a page holds; each weighs up to 2 kB with its list of ingredients."""
MOST_GAPS = 3


@dataclass(frozen=True, slots=True)
class AllergenAnswer:
    """Whether an allergen is in a product, in words; whether they stand out, or say that nobody knows."""

    text: str
    strong: bool = False
    open: bool = False


ANSWERS = {
    YES: AllergenAnswer("yes", strong=True), NO: AllergenAnswer("no"), UNKNOWN: AllergenAnswer("not known", open=True),
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenRow:
    """A product: its page, its answers in order, what is not in it for the list's choices, its ingredients, what
    stands beside them, and what is missing from them."""

    address: str
    name: str
    answers: tuple[AllergenAnswer, ...]
    without: str
    runs: tuple[ListRun, ...]
    warnings: tuple[str, ...]
    missing: str


@dataclass(frozen=True, slots=True)
class AllergenPart:
    """The rows of one page."""

    rows: tuple[AllergenRow, ...]


@dataclass(frozen=True)
class AllergensView:
    """Everything the page says, and which products each of its `sheets` has."""

    desk: Desk
    sheets: tuple[ListSheet, ...] = ()
    title: str = TITLE
    choices: int = 1
    """How many groups of choices the list has: what is not in it."""

    @cached_property
    def house(self) -> Labelling:
        """How the house sells."""
        return labelling_of(self.desk.book)

    @property
    def heads(self) -> tuple[str, ...]:
        """The allergens anything in the book has in it, as they are called where the house sells."""
        return tuple(label_name(key, self.desk.facts, self.house.sold_in) for key in self._keys)

    @cached_property
    def _keys(self) -> tuple[str, ...]:
        there = {key for card in self.desk.book.cards.values() for key in card.known_allergens or ()}
        return tuple(key for key in self.desk.facts.allergens if key in there)

    @property
    def unnamed(self) -> str:
        """Those that no card names, and so have no column."""
        names = (label_name(key, self.desk.facts, self.house.sold_in) for key in self.desk.facts.allergens)
        return formats.sentence(name for name in dict.fromkeys(names) if name not in self.heads)

    @cached_property
    def items(self) -> tuple[AllergenPart, ...]:
        """The rows of each page."""
        slugs = _slugs(self.desk)
        lots = [slugs[sheet.first : sheet.end] for sheet in self.sheets] or [slugs]
        return tuple(AllergenPart(tuple(map(self._row, lot))) for lot in lots)

    def _row(self, slug: str) -> AllergenRow:
        book, facts = self.desk.book, self.desk.facts
        made, cake = product_asked(slug, book, facts)
        found = product_allergens(f"{'cakes' if cake else 'mixtures'}/{slug}", made.name, made.eaten, facts)
        listed = list_of(made, book, facts, self.day)
        return AllergenRow(
            address=found.address,
            name=found.name,
            answers=tuple(ANSWERS[found.says(key)] for key in self._keys),
            without=self._without(found),
            runs=list_runs(listed, facts),
            warnings=tuple(formats.title(words) for words in spelled_all(listed.warnings)),
            missing=_missing(listed),
        )

    def _without(self, found: ProductAllergens) -> str:
        names = (label_name(key, self.desk.facts, self.house.sold_in) for key in self._keys if found.says(key) == NO)
        return "|".join(dict.fromkeys(names))

    @property
    def day(self) -> date:
        """The day the lists are for: today's in the kitchen, otherwise that on which the rules were last read."""
        return self.desk.now.date() if self.desk.now else self._last_read

    @property
    def dated(self) -> str:
        """That day in words."""
        return long_date(self.day)

    @property
    def unworked(self) -> str:
        """How the answers come about."""
        return UNWORKED["allergens"]

    @property
    def where(self) -> str:
        """Where the house sells, and how; empty if it has not said."""
        return f"{self.house.sold_in}, {self.house.sold}" if self.house.sold_in else ""

    @property
    def rules(self) -> tuple[LabelRule, ...]:
        """The rules its lists follow."""
        return rules_for(self.house, self.desk.facts)

    @property
    def read_on(self) -> str:
        """The day the rules were last read."""
        return long_date(self._last_read)

    @property
    def _last_read(self) -> date:
        return max(rule.read_on for rule in self.desk.facts.label_rules.values())

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in its own words."""
        return cross_contact(self.desk)


def _missing(listed: IngredientsList) -> str:
    gaps = [spell(gap.what) for gap in listed.gaps]
    more = len(gaps) - MOST_GAPS
    told = "; ".join(gaps[:MOST_GAPS])
    return f"{told}; and {more} more" if more > 0 else told


def _slugs(desk: Desk) -> tuple[str, ...]:
    return (*desk.book.cakes, *(slug for slug in desk.book.mixtures if slug not in desk.book.cakes))


def allergens_pages(desk: Desk) -> Iterator[Page]:
    """The page, or its sheets, where the book has anything in it."""
    slugs = _slugs(desk)
    if slugs:
        sheets = sheets_of(ADDRESS, len(slugs), ROWS)
        view = AllergensView(desk, sheets)
        section = ("Cautions and rules", TITLE)
        whole = Page(address=ADDRESS, title=TITLE, template="allergens", view=view, section=section)
        yield from whole.in_sheets(sheets)
