"""The house's own oven: what to set on its dial, other ways to bake a mixture, and what it has baked."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Baked, Book
from tinbook.plans.baking.times import Bakes, Baking, Time
from tinbook.plans.base.scaling import fit, wanted_ml
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.measures.heat import HeatRow, heat_rows
from tinbook.tins import Tin
from tinbook.units import FAN_DIFFERENCE_C, fahrenheit

USUAL_C = (120.0, 200.0)
"""The coolest and the hottest oven that cakes are baked in. Common practice."""


def dial(oven_c: float, book: Book, facts: Facts) -> str:
    """What to set on the house's oven so that it is as hot as one without fan at `oven_c`: `135 °C fan`.

    To 5 °C, or the nearest gas mark; in °F where the house wrote its dial so.
    """
    own = book.house.oven
    wanted = oven_c - own.off_c
    if own.kind == "gas":
        return f"gas mark {min(facts.marks, key=lambda mark: abs(mark.celsius - wanted)).mark}"
    fan = " fan" if own.fan else ""
    wanted -= FAN_DIFFERENCE_C if own.fan else 0.0
    if own.dial is not None and own.dial.written.upper().removesuffix("FAN").strip().endswith("F"):
        return f"{rounding.dial(fahrenheit(wanted)):g} °F{fan}"
    return f"{rounding.dial(wanted):g} °C{fan}"


def own_dial(oven_c: float, book: Book, facts: Facts) -> str:
    """The same of a fan or gas oven, or of one that is off its dial; "" where the recipe says it already."""
    own = book.house.oven
    return dial(oven_c, book, facts) if own.kind != "conventional" or own.off_c else ""


def dials(book: Book, facts: Facts) -> list[tuple[HeatRow, str]]:
    """The usual heats of the page of measures, each with what to set here."""
    low, high = USUAL_C
    rows = [row for row in heat_rows(facts) if low <= row.conventional_c <= high]
    return [(row, dial(row.conventional_c, book, facts)) for row in rows]


class WaysToBake(NamedTuple):
    """A mixture in the first of its written tins, its batter so deep: as written, half the batter in each of two tins,
    and in a cooler oven, where the tin is wide or the batter deep."""

    known: Baking
    tin: Tin
    batter_mm: float
    whole: Time
    half: Time
    cooler_c: float | None
    cooler: Time | None


def ways(known: Baking, book: Book, facts: Facts) -> WaysToBake:
    """The ways to bake a mixture that is written for tins."""
    batch = known.batch
    count, written = batch.tins[0]
    tin = as_owned(written, book)
    volume_ml = wanted_ml(batch, tin, count)
    depth = fit(batch, book, facts, tin, count, volume_ml, batch.mass_g * volume_ml / batch.batter_ml).batter_mm
    whole, half = known.times([(tin, depth), (tin, depth / 2.0)])
    cooler_c = known.cooler_c(tin, depth, known.oven_c, facts)
    cooler = known.times([(tin, depth)], cooler_c)[0] if cooler_c is not None else None
    return WaysToBake(known=known, tin=tin, batter_mm=depth, whole=whole, half=half, cooler_c=cooler_c, cooler=cooler)


class LoggedBake(NamedTuple):
    """A bake of the log: its tin, its batter so deep, how hot the oven was, and what is expected of such a bake now."""

    entry: Baked
    batch: Batch
    tin: Tin
    depth_mm: float
    oven_c: float
    expected: Time


def bakes(batches: Iterable[Batch], known: Bakes, book: Book) -> list[LoggedBake]:
    """All that was baked and is learned from, newest first."""
    found = []
    for batch in batches:
        if not book.bakes_of.get(batch.slug) or (made := known.of(batch)) is None:
            continue
        alike: dict[tuple[float, float | None], list[tuple[Baked, Tin, float]]] = {}
        for point in made.points:
            if point.entry is not None:
                oven_c = point.entry.oven.celsius + book.house.oven.off_c
                told = point.entry, point.tin, point.depth_mm
                alike.setdefault((oven_c, point.entry.start), []).append(told)
        for (oven_c, start_c), all_told in alike.items():
            times = made.times([(tin, depth) for _, tin, depth in all_told], oven_c, start_c)
            found += [
                LoggedBake(entry=entry, batch=batch, tin=tin, depth_mm=depth, oven_c=oven_c, expected=time)
                for (entry, tin, depth), time in zip(all_told, times, strict=True)
            ]
    return sorted(found, key=lambda each: each.entry.day, reverse=True)
