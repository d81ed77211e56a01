"""Cups and spoons: what they hold in each kitchen, and what the house's ingredients weigh in them."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import g_per_ml
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.spooned import MEASURES, US_CUP, US_CUP_ML, house_spoons
from tinbook.units import CUPS_ML, GRAMS_PER_OUNCE, ML_PER_UK_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE, SPOONS_ML

OTHER_CUPS = ("US label cup", "Japanese cup")
OTHER_SPOONS = ("dessertspoon", "old British tablespoon")
"""Other kitchens' measures, among the facts."""
SPOONS = ("tablespoon", "teaspoon")
"""The kitchens, as `SPOONS_ML` has them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoonRow:
    """A spoon or cup and whose kitchen it is: ml, and fluid ounces."""

    measure: Saying | str
    volume_ml: float
    us_fl_oz: float
    uk_fl_oz: float
    shown_ml: float
    shown_us_fl_oz: float
    shown_uk_fl_oz: float
    of_the_house: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CupRow:
    """An ingredient by volume: grams in the house's cup, tablespoon and teaspoon, ounces in the cup."""

    ingredient: str
    cup_g: float
    tablespoon_g: float
    teaspoon_g: float
    cup_oz: float
    kind: Saying | str
    source: str


def spoon_rows(book: Book, facts: Facts) -> tuple[SpoonRow, ...]:
    """Cups, then tablespoons, then teaspoons, of every kitchen the book knows."""
    house = book.house.spoons
    rows: list[tuple[Saying | str, float, bool]] = [(name, ml, ml == house.cup_ml) for name, ml in CUPS_ML.items()]
    rows += [(name, facts.numbers[name].value, False) for name in OTHER_CUPS]
    for index, spoon in enumerate(SPOONS):
        for kitchen, sizes_ml in SPOONS_ML.items():
            name = saying("spoon_of_kitchen", kitchen=kitchen, spoon=spoon)
            rows.append((name, sizes_ml[index], kitchen == book.house.spoon))
    rows += [(name, facts.numbers[name].value, False) for name in OTHER_SPOONS]
    rows.append(("pinch", facts.numbers["pinch"].value * house.teaspoon_ml, True))
    return tuple(_spoon_row(*row) for row in rows)


def _spoon_row(name: Saying | str, ml: float, ours: bool) -> SpoonRow:
    us_fl_oz, uk_fl_oz = ml / ML_PER_US_FLUID_OUNCE, ml / ML_PER_UK_FLUID_OUNCE
    return SpoonRow(
        measure=name,
        volume_ml=ml,
        us_fl_oz=us_fl_oz,
        uk_fl_oz=uk_fl_oz,
        shown_ml=rounding.half_up(ml, 0.1),
        shown_us_fl_oz=rounding.half_up(us_fl_oz, 0.01),
        shown_uk_fl_oz=rounding.half_up(uk_fl_oz, 0.01),
        of_the_house=ours,
    )


def spoons_worked(book: Book, facts: Facts) -> Worked:
    """How cups and spoons were worked out, and what goes by those names if no law fixes them."""
    loose = [facts.numbers[name] for name in (*OTHER_CUPS, *OTHER_SPOONS, "pinch")]
    met = [saying("met_under_its_name", name=row.key, low=row.low, high=row.high, unit=row.unit) for row in loose]
    inputs = (saying("house_measures_with", measures=house_spoons(book)), *met)
    return Worked(saying("exact_measures"), inputs, (MEASURES, facts.numbers["pinch"].source))


def cup_rows(book: Book, facts: Facts) -> tuple[CupRow, ...]:
    """Every ingredient of the house that has a volume measure, by name."""
    spoons = book.house.spoons
    cup_ml = spoons.cup_ml or US_CUP_ML
    rows = []
    for name, card in sorted(book.cards.items()):
        density = g_per_ml(card, facts)
        if density is None:
            continue
        fact = facts.densities[card.weighs_as] if card.weighs_as else None
        rows.append(
            CupRow(
                ingredient=name,
                cup_g=rounding.spooned_weight(density * cup_ml),
                tablespoon_g=rounding.spooned_weight(density * spoons.tablespoon_ml),
                teaspoon_g=rounding.spooned_weight(density * spoons.teaspoon_ml),
                cup_oz=rounding.ounces(density * cup_ml / GRAMS_PER_OUNCE),
                kind=fact.kind if fact else saying("measured_by_house"),
                source=fact.source if fact else "house",
            )
        )
    return tuple(rows)


def cups_worked(book: Book, facts: Facts) -> Worked:
    """How the weights of a cup were worked out."""
    weighed = (facts.densities[card.weighs_as].source for card in book.cards.values() if card.weighs_as)
    sources = dict.fromkeys((*sorted(set(weighed)), MEASURES))
    return Worked(saying("weight_by_volume"), (house_spoons(book), saying("weights_of_cards")), tuple(sources))


def cup_name(book: Book) -> str:
    """The cup the weights are for: the house's, or the US cup."""
    return book.house.cup or US_CUP
