"""A mixture at one factor, or at many at once: every line as it is measured out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import repeat
from typing import NamedTuple

from tinbook.engine import rounding, scaling
from tinbook.engine.tolerance import GRAIN
from tinbook.facts import Facts
from tinbook.plans.base.weighing import SPOONS, Batch, Ingredient

WIDE_TINS = (
    (250.0, "wide tin raising 10 in"),
    (300.0, "wide tin raising 12 in"),
    (350.0, "wide tin raising 14 in"),
)


class Amount(NamedTuple):
    """One ingredient's amount in `unit` (g, ml, tsp, tbsp, "" for pieces): exact, and as it is measured out."""

    exact: float
    shown: float
    unit: str


@dataclass(frozen=True, slots=True)
class Column:
    """One line of a mixture at many factors: `exact[i]` in `units[i]`, measured out as `shown[i]`."""

    exact: Sequence[float]
    shown: Sequence[float]
    units: Sequence[str]


@dataclass(slots=True, eq=False, kw_only=True)  # if frozen, it would take four times as long to make
class Version:
    """All amounts at one factor: row `at` of `columns`, which it shares with the versions worked out alongside it.

    `off` is its signed distance from the exact factor, as a share. What ends in `shown` or `percent` is rounded for
    print.
    """

    factor: float
    off: float
    mass_g: float
    mass_shown_g: float
    columns: tuple[Column, ...]
    at: int

    def __eq__(self, other: object) -> bool:
        """Equal if they hold the same figures, whatever they were worked out alongside."""
        if not isinstance(other, Version):
            return NotImplemented
        return (self.factor, self.off, self.mass_g, self.amounts) == (
            other.factor,
            other.off,
            other.mass_g,
            other.amounts,
        )

    __hash__ = None  # type: ignore[assignment]

    @property
    def amounts(self) -> tuple[Amount, ...]:
        """Every line, in order."""
        at = self.at
        return tuple(Amount(column.exact[at], column.shown[at], column.units[at]) for column in self.columns)

    @property
    def factor_shown(self) -> float:
        """The factor as printed."""
        return rounding.factor(self.factor)

    @property
    def off_percent(self) -> float:
        """`off` as printed."""
        return rounding.percent(self.off)

    @property
    def weight_error(self) -> float:
        """The largest rounding error in a weight (or in ml, read on the same scales), as a share."""
        return largest_errors([self])[0]

    @property
    def spoon_error(self) -> float:
        """The largest rounding error in a spoon measure, as a share."""
        return largest_errors([self])[1]


def largest_errors(versions: Iterable[Version]) -> tuple[float, float]:
    """The largest rounding errors in any of these, as shares: in weights, and in spoons."""
    weight_error, spoon_error = 0.0, 0.0
    together: dict[int, list[Version]] = {}
    for version in versions:
        together.setdefault(id(version.columns), []).append(version)
    for group in together.values():
        rows = {version.at: None for version in group}
        for column in group[0].columns:
            exact, shown = column.exact, column.shown
            off = max([rounding.error(exact[row], shown[row]) for row in rows])
            if column.units[group[0].at] in SPOONS:
                spoon_error = max(spoon_error, off)
            else:
                weight_error = max(weight_error, off)
    return weight_error, spoon_error


def column_at(
    line: Ingredient, factors: Sequence[float], steps: rounding.ScaleSteps, by_weight: bool = False
) -> Column:
    """One line at each factor, rounded for scales, spoons or pieces; a part of a piece is weighed."""
    if line.unit in SPOONS:
        exact = [line.amount * factor for factor in factors]
        return Column(exact, [rounding.spoon(amount) for amount in exact], [line.unit] * len(exact))
    if line.unit == "" and not by_weight:
        pieces = [_piece(line, factor, steps) for factor in factors]
        return Column(*zip(*pieces, strict=True)) if pieces else Column((), (), ())
    base, unit = (line.amount, "ml") if line.unit == "ml" else (line.mass_g, "g")
    exact = [base * factor for factor in factors]
    return Column(exact, rounding.scales_each(exact, steps), [unit] * len(exact))


def _piece(line: Ingredient, factor: float, steps: rounding.ScaleSteps) -> Amount:
    exact = line.amount * factor
    if abs(exact - round(exact)) < GRAIN:
        return Amount(exact, float(round(exact)), "")
    exact = line.mass_g * factor
    return Amount(exact, rounding.scales(exact, steps), "g")


def amount(line: Ingredient, factor: float, steps: rounding.ScaleSteps, by_weight: bool = False) -> Amount:
    """One line at one factor."""
    column = column_at(line, (factor,), steps, by_weight)
    return Amount(column.exact[0], column.shown[0], column.units[0])


def raising_points(facts: Facts) -> tuple[tuple[float, float], ...]:
    """Widths (mm) and the share of raising agent kept at each."""
    return tuple((width_mm, facts.numbers[key].value) for width_mm, key in WIDE_TINS)


def version_each(
    batch: Batch,
    factors: Sequence[float],
    exact_factors: Iterable[float],
    widths_mm: Iterable[float],
    facts: Facts,
    by_weight: bool = False,
) -> list[Version]:
    """The mixture at each factor, for tins of these widths (only raising agents ask): all factors at once, line by
    line.

    With `by_weight`, what is counted, such as eggs, is weighed.
    """
    pairs = [(factor, factor) for factor in factors]
    if batch.mixture.raising != "level":
        points = raising_points(facts)
        shares = [scaling.wide_tin_raising(width_mm, points) for width_mm in widths_mm]
        pairs = [(factor, factor * share) for factor, share in zip(factors, shares, strict=True)]
    # many tins take the same number of eggs: what they share is worked out once
    places = {pair: place for place, pair in enumerate(dict.fromkeys(pairs))}
    plain, raised = zip(*places, strict=True) if places else ((), ())
    columns = tuple(
        column_at(line, raised if line.raises else plain, batch.steps, by_weight) for line in batch.ingredients
    )
    raising_g = sum(line.mass_g for line in batch.ingredients if line.raises)
    rest_g = batch.mass_g - raising_g
    masses_g = [rest_g * factor + raising_g * raising for factor, raising in places]
    shown_g = rounding.scales_each(masses_g, batch.steps)
    rows = [places[pair] for pair in pairs]
    return [
        Version(
            factor=factor,
            off=factor / exact - 1,
            mass_g=masses_g[row],
            mass_shown_g=shown_g[row],
            columns=columns,
            at=row,
        )
        for (factor, _), exact, row in zip(pairs, exact_factors, rows, strict=True)
    ]


def versions_each(
    batch: Batch, factors: Sequence[float], widths_mm: Sequence[float], facts: Facts
) -> list[tuple[Version, Version, bool]]:
    """For each factor the exact version, the whole-egg version, and whether egg is beaten and weighed instead."""
    exact = version_each(batch, factors, factors, widths_mm, facts, by_weight=True)
    if not batch.eggs:
        return list(zip(exact, version_each(batch, factors, factors, widths_mm, facts), repeat(False)))
    tolerance = facts.numbers["egg tolerance"].value
    eggs = [scaling.whole_eggs(batch.eggs, factor) for factor in factors]
    near = [row for row, snapped in enumerate(eggs) if scaling.within(snapped.off, tolerance)]
    columns = [snapped.factor for snapped in eggs], factors, widths_mm
    snapped, meant, wide = ([column[row] for row in near] for column in columns)
    whole = dict(zip(near, version_each(batch, snapped, meant, wide, facts), strict=True))
    return [(version, whole.get(row, version), row not in whole) for row, version in enumerate(exact)]


def versions(batch: Batch, factor: float, width_mm: float, facts: Facts) -> tuple[Version, Version, bool]:
    """The same for one factor."""
    return versions_each(batch, (factor,), (width_mm,), facts)[0]
