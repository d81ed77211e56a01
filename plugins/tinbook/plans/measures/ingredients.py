"""An ingredient by itself: its weight by every cup and spoon, by the piece, and how a pack of it measures up."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book, Card
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import each_g, g_per_ml
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.cups import SPOONS
from tinbook.plans.measures.spooned import MEASURES, Spooned, spooned
from tinbook.units import CUPS_ML, GRAMS_PER_OUNCE, SPOONS_ML

HOUSE = saying("weighed_by_house")
ROUND_G = (25.0, 50.0, 100.0, 250.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureRow:
    """What one cup or spoon of it weighs: g, its range, oz. `low_g` and `high_g` None: no range is known."""

    measure: Saying | str
    volume_ml: float
    exact_g: float
    shown_g: float
    low_g: float | None
    high_g: float | None
    shown_oz: float
    of_the_house: bool


@dataclass(frozen=True, slots=True)
class RoundRow:
    """A round weight of it, in the house's cup and spoons."""

    grams: float
    spoons: Spooned


@dataclass(frozen=True, kw_only=True)
class IngredientWeights:
    """An ingredient by volume and by the piece. Without `g_per_ml` it has no volume measure, or none is known."""

    g_per_ml: float | None
    measures: tuple[MeasureRow, ...]
    rounds: tuple[RoundRow, ...]
    piece_g: float | None
    kind: Saying | str
    source: str
    worked: Worked | None


def weights(card: Card, book: Book, facts: Facts) -> IngredientWeights:
    """All of that, from the card's published weight or the house's own."""
    density, exact_g = g_per_ml(card, facts), each_g(card, book, facts)
    piece_g = None if exact_g is None else rounding.half_up(exact_g, 0.5)
    if density is None:
        return IngredientWeights(
            g_per_ml=None, measures=(), rounds=(), piece_g=piece_g, kind="", source="", worked=None
        )
    fact = facts.densities[card.weighs_as] if card.weighs_as else None
    bounds = (fact.low, fact.high) if fact else (None, None)
    spoons = book.house.spoons
    rows = [_measure(name, ml, density, bounds, ml == spoons.cup_ml) for name, ml in CUPS_ML.items()]
    for index, spoon in enumerate(SPOONS):
        kitchens: dict[float, str] = {}
        for kitchen, sizes_ml in SPOONS_ML.items():
            kitchens.setdefault(sizes_ml[index], kitchen)
        ours = SPOONS_ML[book.house.spoon][index]
        for ml, kitchen in kitchens.items():
            name = saying("spoon_of_kitchen", kitchen=kitchen, spoon=spoon)
            rows.append(_measure(name, ml, density, bounds, ml == ours))
    kind: Saying | str = fact.kind if fact else HOUSE
    source = fact.source if fact else ""
    inputs: list[Saying | str] = [
        saying("millilitre_weighs", density=density, low=bounds[0], high=bounds[1]),
        saying("how_known", kind=kind),
    ]
    if fact and fact.note:
        inputs.append(fact.note)
    known_by = (fact.source, *fact.also) if fact else ()
    worked = Worked(saying("weight_by_volume"), tuple(inputs), tuple(dict.fromkeys((*known_by, MEASURES))))
    rounds = tuple(RoundRow(grams, spooned(grams / density, spoons)) for grams in ROUND_G)
    return IngredientWeights(
        g_per_ml=density, measures=tuple(rows), rounds=rounds, piece_g=piece_g, kind=kind, source=source, worked=worked
    )


def _measure(
    name: Saying | str, volume_ml: float, density: float, bounds: tuple[float | None, float | None], ours: bool
) -> MeasureRow:
    low, high = (None if bound is None else rounding.spooned_weight(bound * volume_ml) for bound in bounds)
    exact = density * volume_ml
    return MeasureRow(
        measure=name,
        volume_ml=volume_ml,
        exact_g=exact,
        shown_g=rounding.spooned_weight(exact),
        low_g=low,
        high_g=high,
        shown_oz=rounding.ounces(exact / GRAMS_PER_OUNCE),
        of_the_house=ours,
    )
