"""The house's own oven: what to set its dial to, other ways to bake a mixture, and what it has baked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Baked, Book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.times import Baking, Time
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import fit, wanted_ml
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.heat import HeatRow, heat_rows, heat_worked, mark_for
from tinbook.tins import Tin
from tinbook.units import FAN_DIFFERENCE_C, fahrenheit

USUAL_C = (120.0, 200.0)
"""The coolest and hottest oven that cakes are baked in. Common practice."""
EXPECTED = saying("expected_of_a_bake")
"""How the expected time for a logged bake was worked out."""


def dial(oven_c: float, book: Book, facts: Facts) -> Saying:
    """The setting that makes the house's oven as hot as one without fan at `oven_c`: `135 °C fan`.

    To 5 °C, or the nearest gas mark; in °F where the house wrote its dial so.
    """
    own = book.house.oven
    wanted = oven_c - own.off_c
    if own.kind == "gas":
        return saying("gas_mark", mark=mark_for(wanted, facts).mark)
    wanted -= FAN_DIFFERENCE_C if own.fan else 0.0
    if own.dial is not None and own.dial.written.upper().removesuffix("FAN").strip().endswith("F"):
        return saying("on_the_dial", degrees=rounding.dial(fahrenheit(wanted)), unit="°F", fan=own.fan)
    return saying("on_the_dial", degrees=rounding.dial(wanted), unit="°C", fan=own.fan)


def own_dial(oven_c: float, book: Book, facts: Facts) -> Saying | None:
    """The same for a fan or gas oven, or one whose dial is out; None if the recipe says it already."""
    own = book.house.oven
    return dial(oven_c, book, facts) if own.kind != "conventional" or own.off_c else None


def oven_told(book: Book) -> Saying:
    """How far out the house's oven dial is."""
    off_c = book.house.oven.off_c
    return saying("oven_off_its_dial", off_c=off_c) if off_c else saying("oven_as_its_dial")


def log_worked(book: Book, sources: tuple[str, ...]) -> Worked:
    """How the expected time for a bake was worked out; `sources` for what was known before any bake."""
    return Worked(EXPECTED, (oven_told(book), saying("eight_in_ten")), sources or ("common practice",))


def dial_worked(book: Book, facts: Facts) -> Worked:
    """How the setting for this house's oven was worked out."""
    worked = heat_worked(facts)
    return Worked(
        saying("dial_of_the_house", fan_c=FAN_DIFFERENCE_C), (oven_told(book), *worked.inputs), worked.sources
    )


def dials(book: Book, facts: Facts) -> list[tuple[HeatRow, Saying]]:
    """The usual temperatures of the measures page, each with what to set here."""
    low, high = USUAL_C
    rows = [row for row in heat_rows(facts) if low <= row.conventional_c <= high]
    return [(row, dial(row.conventional_c, book, facts)) for row in rows]


class WaysToBake(NamedTuple):
    """A mixture in the first of its written tins, at its batter depth: as written, half the batter in each of two tins,
    and in a cooler oven, where the tin is wide or the batter deep."""

    known: Baking
    tin: Tin
    batter_mm: float
    whole: Time
    half: Time
    cooler_c: float | None
    cooler: Time | None


def ways(known: Baking, book: Book, facts: Facts) -> WaysToBake:
    """The ways to bake a mixture written for tins."""
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
    """A bake in the log: its tin, its batter depth, how hot the oven was, and what is now expected of such a bake."""

    entry: Baked
    batch: Batch
    tin: Tin
    depth_mm: float
    oven_c: float
    expected: Time


def bakes(batches: Iterable[Batch], known: Bakes, book: Book) -> list[LoggedBake]:
    """Every bake that is learned from, newest first."""
    logged: list[LoggedBake] = []
    for batch in batches:
        if not book.bakes_of.get(batch.slug) or (baking := known.of(batch)) is None:
            continue
        alike: dict[tuple[float, float | None], list[tuple[Baked, Tin, float]]] = {}
        for point in baking.points:
            if point.entry is not None:
                oven_c = point.entry.oven.celsius + book.house.oven.off_c
                cake = point.entry, point.tin, point.depth_mm
                alike.setdefault((oven_c, point.entry.start), []).append(cake)
        for (oven_c, start_c), cakes in alike.items():
            times = baking.times([(tin, depth) for _, tin, depth in cakes], oven_c, start_c)
            logged += [
                LoggedBake(entry=entry, batch=batch, tin=tin, depth_mm=depth, oven_c=oven_c, expected=time)
                for (entry, tin, depth), time in zip(cakes, times, strict=True)
            ]
    return sorted(logged, key=lambda bake: bake.entry.day, reverse=True)


def logged_count(batches: Mapping[str, Batch], known: Bakes, book: Book) -> int:
    """How many bakes `bakes` has."""
    found = (known.of(batches[slug]) for slug in book.bakes_of if slug in batches)
    return sum(baking.logged for baking in found if baking)
