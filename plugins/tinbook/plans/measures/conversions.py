"""Conversions at a glance: oven, spoons and cups, eggs, ingredients by the cup, self-raising flour."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.weighing import g_per_ml
from tinbook.plans.base.worked import Worked
from tinbook.units import CUPS_ML, GRAMS_PER_OUNCE, ML_PER_UK_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE, SPOONS_ML, fahrenheit

OTHER_CUPS = ("US label cup", "Japanese cup")
OTHER_SPOONS = ("dessertspoon", "old British tablespoon")
"""Measures of other kitchens, among the facts."""
DIALS_C = range(100, 260, 10)


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenRow:
    """A gas mark: °C conventional and fan in print, a figure or a range; °F, exact °C, the range met."""

    gas_mark: str
    conventional_c: str
    fan_c: str
    fahrenheit_f: float
    exact_c: float
    low_c: float
    high_c: float


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatRow:
    """A dial of a conventional oven: fan °C and its range, °F, the nearest gas mark and how far off that is, °C."""

    conventional_c: float
    fan_c: float
    fan_low_c: float
    fan_high_c: float
    exact_f: float
    fahrenheit_f: float
    gas_mark: str
    gas_off_c: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoonRow:
    """A spoon or cup by whose kitchen it is: ml, and fluid ounces."""

    measure: str
    volume_ml: float
    us_fl_oz: float
    uk_fl_oz: float
    shown_ml: float
    us_fl_oz_shown: float
    uk_fl_oz_shown: float
    of_the_house: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class EggRow:
    """An egg class: weights in g, with and without its shell, white and yolk."""

    egg_class: str
    shell_low_g: float | None
    shell_high_g: float | None
    shelled_g: float
    white_g: float
    yolk_g: float
    shelled_shown_g: float
    white_shown_g: float
    yolk_shown_g: float
    shelled_low_g: float | None
    shelled_high_g: float | None
    of_the_house: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CupRow:
    """An ingredient by volume: grams in the house's cup, tablespoon and teaspoon, ounces in the cup."""

    ingredient: str
    cup_g: float
    tablespoon_g: float
    teaspoon_g: float
    cup_oz: float
    kind: str
    source: str


@dataclass(frozen=True, slots=True)
class FlourRow:
    """Self-raising flour from plain: grams, and the spoons of powder."""

    self_raising_g: float
    plain_g: float
    powder_g: float
    powder_tsp: float


@dataclass(frozen=True, kw_only=True)
class Conversions:
    """Everything the page of measures says."""

    oven: tuple[OvenRow, ...]
    heat: tuple[HeatRow, ...]
    spoons: tuple[SpoonRow, ...]
    eggs: tuple[EggRow, ...]
    cups: tuple[CupRow, ...]
    flour: tuple[FlourRow, ...]
    cup_name: str
    oven_worked: Worked
    heat_worked: Worked
    spoons_worked: Worked
    eggs_worked: Worked
    cups_worked: Worked
    flour_worked: Worked


def oven_rows(facts: Facts) -> tuple[OvenRow, ...]:
    """Gas marks, coolest first."""
    fan = facts.numbers["fan difference"].value
    return tuple(
        OvenRow(
            gas_mark=mark.mark,
            conventional_c=mark.celsius_printed,
            fan_c=_less(mark.celsius_printed, fan),
            fahrenheit_f=mark.fahrenheit,
            exact_c=mark.celsius,
            low_c=mark.celsius_low,
            high_c=mark.celsius_high,
        )
        for mark in facts.marks
    )


def heat_rows(facts: Facts) -> tuple[HeatRow, ...]:
    """Dials in steps of 10 °C."""
    fan = facts.numbers["fan difference"]
    low, high = fan.low or fan.value, fan.high or fan.value
    rows = []
    for dial in map(float, DIALS_C):
        mark = min(facts.marks, key=lambda each: abs(each.celsius - dial))
        exact = fahrenheit(dial)
        shown = rounding.half_up(exact, 1.0)
        off = rounding.half_up(mark.celsius - dial, 1.0)
        rows.append(
            HeatRow(
                conventional_c=dial,
                fan_c=dial - fan.value,
                fan_low_c=dial - high,
                fan_high_c=dial - low,
                exact_f=exact,
                fahrenheit_f=shown,
                gas_mark=mark.mark,
                gas_off_c=off,
            )
        )
    return tuple(rows)


def _less(printed: str, difference: float) -> str:
    """A printed figure or range, `160–170`, each end lower by `difference`."""
    return "–".join(f"{float(end) - difference:g}" for end in printed.split("–"))


def spoon_rows(book: Book, facts: Facts) -> tuple[SpoonRow, ...]:
    """Cups, then tablespoons, then teaspoons, of every kitchen the book knows."""
    house = book.house.spoons
    rows = [(name, ml, ml == house.cup_ml) for name, ml in CUPS_ML.items()]
    rows += [(name, facts.numbers[name].value, False) for name in OTHER_CUPS]
    for index, word in enumerate(("tablespoon", "teaspoon")):
        for name, both in SPOONS_ML.items():
            rows.append((f"{name} {word}", both[index], name == book.house.spoon))
    rows += [(name, facts.numbers[name].value, False) for name in OTHER_SPOONS]
    rows.append(("pinch", facts.numbers["pinch"].value * house.teaspoon_ml, True))
    return tuple(_spoon_row(*row) for row in rows)


def _spoon_row(name: str, ml: float, ours: bool) -> SpoonRow:
    us_fl_oz, uk_fl_oz = ml / ML_PER_US_FLUID_OUNCE, ml / ML_PER_UK_FLUID_OUNCE
    return SpoonRow(
        measure=name,
        volume_ml=ml,
        us_fl_oz=us_fl_oz,
        uk_fl_oz=uk_fl_oz,
        shown_ml=rounding.half_up(ml, 0.1),
        us_fl_oz_shown=rounding.half_up(us_fl_oz, 0.01),
        uk_fl_oz_shown=rounding.half_up(uk_fl_oz, 0.01),
        of_the_house=ours,
    )


def egg_rows(book: Book, facts: Facts) -> tuple[EggRow, ...]:
    """Egg classes, in the order of the standards."""
    shell = facts.numbers["shell share of egg"]
    return tuple(
        EggRow(
            egg_class=name,
            shell_low_g=egg.shell_low_g,
            shell_high_g=egg.shell_high_g,
            shelled_g=egg.shelled_g,
            white_g=egg.white_g,
            yolk_g=egg.yolk_g,
            shelled_shown_g=rounding.half_up(egg.shelled_g, 1.0),
            white_shown_g=rounding.half_up(egg.white_g, 1.0),
            yolk_shown_g=rounding.half_up(egg.yolk_g, 1.0),
            shelled_low_g=_out_of_shell(egg.shell_low_g, shell.high),
            shelled_high_g=_out_of_shell(egg.shell_high_g, shell.low),
            of_the_house=name == book.house.eggs,
        )
        for name, egg in facts.eggs.items()
    )


def _out_of_shell(in_shell_g: float | None, share: float | None) -> float | None:
    """The bound of a class without its shell, whole grams; None for an open end."""
    return None if in_shell_g is None else rounding.half_up(in_shell_g * (1 - (share or 0.0)), 1.0)


def cup_rows(book: Book, facts: Facts) -> tuple[CupRow, ...]:
    """Every ingredient of the house that has a volume measure, by name."""
    spoons = book.house.spoons
    cup_ml = spoons.cup_ml or CUPS_ML["US cup"]
    rows = []
    for name, card in sorted(book.cards.items()):
        density = g_per_ml(card, facts)
        if density is None:
            continue
        fact = facts.densities[card.weighs_as] if card.weighs_as else None
        rows.append(
            CupRow(
                ingredient=name,
                cup_g=rounding.half_up(density * cup_ml, 1.0),
                tablespoon_g=rounding.half_up(density * spoons.tablespoon_ml, 0.5),
                teaspoon_g=rounding.half_up(density * spoons.teaspoon_ml, 0.1),
                cup_oz=rounding.ounces(density * cup_ml / GRAMS_PER_OUNCE),
                kind=fact.kind if fact else "measured by the house",
                source=fact.source if fact else "house",
            )
        )
    return tuple(rows)


def flour_rows(facts: Facts) -> tuple[FlourRow, ...]:
    """Plain flour and baking powder for round weights of self-raising flour."""
    share = facts.numbers["baking powder in self-raising"].value
    teaspoon_g = facts.numbers["teaspoon of baking powder"].value
    rows = []
    for self_raising_g in (100.0, 150.0, 200.0, 225.0, 250.0, 340.0, 425.0, 500.0):
        plain_g, powder_g = scaling.plain_for_self_raising(self_raising_g, share)
        rows.append(
            FlourRow(
                self_raising_g,
                rounding.half_up(plain_g, 1.0),
                rounding.half_up(powder_g, 1.0),
                rounding.spoon(powder_g / teaspoon_g),
            )
        )
    return tuple(rows)


def conversions(book: Book, facts: Facts) -> Conversions:
    """All tables of the page of measures."""
    share, fan = facts.numbers["baking powder in self-raising"], facts.numbers["fan difference"]
    return Conversions(
        oven=oven_rows(facts),
        heat=heat_rows(facts),
        spoons=spoon_rows(book, facts),
        eggs=egg_rows(book, facts),
        cups=cup_rows(book, facts),
        flour=flour_rows(facts),
        cup_name=book.house.cup or "US cup",
        oven_worked=Worked(
            "°F = 275 + 25 × (mark − 1), for marks under one 275 + 25 × log2(mark); °C = (°F − 32) × 5 / 9; "
            f"fan = conventional − {fan.value:g} °C",
            ("printed figures differ between tables by up to 10 °C, so the range in print stands beside",),
            tuple(dict.fromkeys([*(mark.source for mark in facts.marks), fan.source])),
        ),
        heat_worked=Worked(
            f"°F = °C × 9 / 5 + 32; fan = conventional − {fan.value:g} °C",
            (f"ovens differ: fan lower by {fan.low:g} to {fan.high:g} °C", "gas mark: the nearest, by its exact °C"),
            (fan.source, *dict.fromkeys(mark.source for mark in facts.marks)),
        ),
        spoons_worked=Worked(
            "exact by definition: an inch is 25.4 mm, a pound 453.59237 g",
            (f"the house measures with {_house_spoons(book)}", *_ranges(facts)),
            ("GNU units", facts.numbers["pinch"].source),
        ),
        eggs_worked=Worked(
            "shelled = in shell × (1 − share of the shell)",
            (
                f"shell {facts.numbers['shell share of egg'].value:.1%} of the egg; each class by its middle",
                "the range: the bounds of the class, and the shell at its heaviest and lightest",
            ),
            tuple(dict.fromkeys(egg.source for egg in facts.eggs.values())),
        ),
        cups_worked=Worked("grams = weight of 1 ml × ml of the cup or spoon", (f"{_house_spoons(book)}",), ()),
        flour_worked=Worked(
            "powder = share × plain flour; plain + powder = self-raising",
            (f"share {share.value:.0%} of the plain flour ({share.low:.0%} to {share.high:.0%} in print)",),
            (share.source,),
        ),
    )


def _ranges(facts: Facts) -> list[str]:
    """What is met under those names which no law fixes."""
    rows = [facts.numbers[name] for name in (*OTHER_CUPS, *OTHER_SPOONS, "pinch")]
    return [f"{row.key} {row.low:.4g} to {row.high:.4g} {row.unit}" for row in rows]


def _house_spoons(book: Book) -> str:
    spoons = book.house.spoons
    cup = book.house.cup or "no cup of its own (a US cup is shown)"
    return f"{cup}, tablespoon {spoons.tablespoon_ml:.4g} ml, teaspoon {spoons.teaspoon_ml:.4g} ml"
