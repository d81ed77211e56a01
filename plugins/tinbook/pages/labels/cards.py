"""Cards: one that goes with a cake, and one that stands on a table of cakes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.pages.base.page import Desk, cross_contact
from tinbook.pages.cake.goes_along import cut_said, keeps_said
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.view import CakeView
from tinbook.pages.labels.printed import LabelWords, label_words
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.sizes import cake_sizes
from tinbook.plans.labels.applying import label_name
from tinbook.plans.labels.label import LabelPlan
from tinbook.plans.labels.of_book import ProductAllergens, product_allergens
from tinbook.plans.labels.product import product_asked

STATES = {"yes": "yes", "no": "no", "unknown": "not known"}


@dataclass(frozen=True, slots=True, kw_only=True)
class GoesWith:
    """A card that goes with a cake: what is in it, what in it is not food, how to keep, carry and cut it."""

    house: str
    words: LabelWords
    unknown: str
    keeps: str
    carry: tuple[str, ...]
    cut: str
    shown: str
    hidden: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TableCard:
    """A card for a table of cakes: which allergens are in each, in words; what else the kitchen handles."""

    house: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    cross_contact: str


def goes_with(plan: LabelPlan, desk: Desk) -> GoesWith:
    """The card of a label's product. What is not food, and the cutting, is there for a cake."""
    unknown = formats.sentence(plan.listed.unknown) if plan.listed.unknown else ""
    words = label_words(plan, desk.facts)
    keeps, cut, shown, hidden = "", "", "", ""
    carry: tuple[str, ...] = ()
    if plan.cake is not None:
        view = CakeView(slug=plan.slug, desk=desk)
        size = cake_sizes(view.design, desk.book, desk.facts).written
        made = CakeInSize(cake=plan.cake, size=size, names=(), desk=desk)
        keeps, cut = keeps_said(view), cut_said(view, made)
        shown, hidden = made.not_food.shown, made.not_food.hidden
        carry = made.carried.steps
    return GoesWith(
        house=desk.book.house.name,
        words=words,
        unknown=unknown,
        keeps=keeps,
        carry=carry,
        cut=cut,
        shown=shown,
        hidden=hidden,
    )


def table_card(slugs: Sequence[str], desk: Desk, nation: str | None) -> TableCard:
    """The card of some products. AskError for one the book does not have."""
    products = tuple(_product(slug, desk.facts, desk) for slug in slugs)
    # where somebody has not said, any of the fourteen may be in it: those that are named somewhere get a column
    named = [key for key in desk.facts.allergens if any(each.says(key) == "yes" for each in products)]
    heads = tuple(label_name(key, desk.facts, nation) for key in named)
    rows = tuple((each.name, tuple(STATES[each.says(key)] for key in named)) for each in products)
    return TableCard(house=desk.book.house.name, heads=heads, rows=rows, cross_contact=cross_contact(desk))


def _product(slug: str, facts: Facts, desk: Desk) -> ProductAllergens:
    made, cake = product_asked(slug, desk.book, facts)
    return product_allergens(f"{'cakes' if cake else 'mixtures'}/{slug}", made.name, made.eaten, facts)
