"""A technique's kit for one person, as the browser gets it to multiply."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Technique
from tinbook.plans.measures.spooned import US_CUP_ML
from tinbook.plans.mixtures.bench import BenchSteps
from tinbook.plans.techniques.kit import MOST_PEOPLE, kit
from tinbook.units import GRAMS_PER_OUNCE


@dataclass(frozen=True, slots=True, kw_only=True)
class KitLine:
    """A material for the browser: like a line of a mixture, grams None if unknown."""

    unit: str
    amount: float
    mass_g: float | None
    volume_ml: float | None
    shared: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KitBench:
    """The kit for one person, for the browser to multiply; measures and scales as for a mixture."""

    lines: tuple[KitLine, ...]
    tools: tuple[tuple[int, bool], ...]
    steps: BenchSteps
    g_per_oz: float
    cup_ml: float
    tablespoon_ml: float
    teaspoon_ml: float
    most: int


def technique_bench(technique: Technique, book: Book, facts: Facts) -> KitBench:
    """What the browser gets of a technique."""
    ready, scales, spoons = kit(technique, book, facts), book.house.scales, book.house.spoons
    return KitBench(
        lines=tuple(
            KitLine(
                unit=row.amount.unit,
                amount=row.amount.exact,
                mass_g=row.mass_g,
                volume_ml=row.volume_ml,
                shared=row.shared,
            )
            for row in ready.materials
        ),
        tools=tuple((tool.count, tool.shared) for tool in ready.tools),
        steps=BenchSteps(scales.step, scales.fine_step, scales.fine_below),
        g_per_oz=GRAMS_PER_OUNCE,
        cup_ml=spoons.cup_ml or US_CUP_ML,
        tablespoon_ml=spoons.tablespoon_ml,
        teaspoon_ml=spoons.teaspoon_ml,
        most=MOST_PEOPLE,
    )
