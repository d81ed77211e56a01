"""One amount in every measure of the house: grams, ounces, spoons and cups."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Batch, Ingredient
from tinbook.plans.base.worked import Worked
from tinbook.units import CUPS_ML, GRAMS_PER_OUNCE, Measures

MEASURES = "GNU units"
"""The sources for what cups, spoons and ounces hold."""
US_CUP = "US cup"
US_CUP_ML = CUPS_ML[US_CUP]
"""The cup shown if the house has none of its own."""


@dataclass(frozen=True, slots=True)
class Spooned:
    """A volume as it is measured out: `shown` of `unit` (cup, tbsp, tsp)."""

    exact: float
    shown: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One line in every measure; `index` is its place in the mix.

    `pieces` is for what is counted; `spoons` is None if there is no volume measure.
    """

    index: int
    line: Ingredient
    grams: float
    millilitres: float | None
    pieces: float | None
    ounces: float
    spoons: Spooned | None

    @property
    def weighed(self) -> bool:
        """Whether it was written in grams or ounces, not counted, poured or spooned."""
        return self.line.unit == "g"


def spooned(volume_ml: float, measures: Measures) -> Spooned:
    """A volume in cups from a quarter up, in tablespoons from one up, otherwise in teaspoons."""
    cup_ml = measures.cup_ml or US_CUP_ML
    if fits(cup_ml / 4, volume_ml):
        return Spooned(volume_ml / cup_ml, rounding.cups(volume_ml / cup_ml), "cup")
    if fits(measures.tablespoon_ml, volume_ml):
        return Spooned(volume_ml / measures.tablespoon_ml, rounding.spoon(volume_ml / measures.tablespoon_ml), "tbsp")
    return Spooned(volume_ml / measures.teaspoon_ml, rounding.spoon(volume_ml / measures.teaspoon_ml), "tsp")


def measured_worked(batch: Batch, book: Book, facts: Facts) -> Worked:
    """How a mixture as written becomes grams, ounces and spoons."""
    cards = (book.cards[line.name] for line in batch.ingredients)
    weighed = dict.fromkeys(facts.densities[card.weighs_as].source for card in cards if card.weighs_as)
    inputs = (
        saying("house_measures_with", measures=house_spoons(book)),
        saying("scales_to", step_g=batch.steps.step_g, fine_step_g=batch.steps.fine_step_g,
               fine_below_g=batch.steps.fine_below_g),
    )  # fmt: skip
    formula = saying("in_every_measure", grams_per_ounce=GRAMS_PER_OUNCE)
    return Worked(formula, inputs, tuple(dict.fromkeys((*weighed, MEASURES))))


def house_spoons(book: Book) -> Saying:
    """The cup and spoons of the house."""
    spoons = book.house.spoons
    return saying(
        "house_spoons", cup=book.house.cup, tablespoon_ml=spoons.tablespoon_ml, teaspoon_ml=spoons.teaspoon_ml
    )


def measured(batch: Batch, book: Book) -> tuple[Measured, ...]:
    """Every line of a mixture, as written, in every measure."""
    spoons = book.house.spoons
    rows = []
    for index, line in enumerate(batch.ingredients):
        written_ml = line.amount if line.unit == "ml" else None
        rows.append(
            Measured(
                index=index,
                line=line,
                grams=rounding.scales(line.mass_g, batch.steps),
                millilitres=rounding.scales(written_ml, batch.steps) if written_ml else None,
                pieces=line.amount if line.unit == "" else None,
                ounces=rounding.ounces(line.mass_g / GRAMS_PER_OUNCE),
                spoons=spooned(line.volume_ml, spoons) if line.volume_ml and line.unit != "" else None,
            )
        )
    return tuple(rows)
