"""Entries of the bake log that cannot be right: each with what to check."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.engine.baking import Prior
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Baked, Book, Flaw
from tinbook.plans.baking.bakes import heat_of, prior
from tinbook.plans.baking.times import BakePoint, width_mm
from tinbook.plans.base.bake_log import batter_mm
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.rules.fields import COOLEST_C

LEAST_CENTRE_C, MOST_CENTRE_C = 80.0, 105.0
"""Outside these a cake is raw, or the thermometer touched the tin: water boils away first."""
LEAST_RISE, MOST_RISE = 0.7, 3.0
MOST_LOSS = 0.35
COLDEST_BATTER_C, WARMEST_BATTER_C = -5.0, 60.0


def bake_flaws(entry: Baked, batch: Batch, book: Book, facts: Facts) -> Iterator[Flaw]:
    """What is wrong with one entry of the mixture `batch`."""
    before = prior(batch.kind, facts)
    if before is None:
        yield Flaw(code="not baked", path=("of",), message=f'"{batch.mixture.name}" is not baked', hint="log a cake")
        return
    flaws = [*_weight_flaws(entry), *_heat_flaws(entry, book)]
    yield from flaws
    tin = as_owned(entry.tin, book)
    depth_mm = batter_mm(entry, batch.mass_g / batch.batter_ml, tin)
    if depth_mm is None:
        hint = 'write what went into this tin, "batter: 1250 g", or "batter depth: 38 mm"'
        yield Flaw(code="no batter", path=(), message="how much batter was in the tin?", hint=hint)
        return
    if not fits(depth_mm, tin.brim_mm):
        message = f"the batter would be {depth_mm:.0f} mm deep, but the tin is only {tin.brim_mm:g} mm"
        key = "batter depth" if entry.batter_depth else "batter"
        yield Flaw(code="too deep", path=(key,), message=message, hint="weigh or measure again")
        return
    if entry.baked and not LEAST_RISE <= entry.baked / depth_mm <= MOST_RISE:
        rise = entry.baked / depth_mm
        message = f"{entry.baked:g} mm is {rise:.2g} times the batter's {depth_mm:.0f} mm; no cake rises that much"
        yield Flaw(code="wild entry", path=("baked",), message=message, hint="measure again, or leave it out")
    if not flaws:
        yield from _minute_flaws(entry, batch, depth_mm, before, book, facts)


def _weight_flaws(entry: Baked) -> Iterator[Flaw]:
    if entry.out is None:
        return
    if entry.batter is None:
        message = "the weight after baking tells us nothing without the weight before"
        hint = 'write what went into this tin: "batter: 1250 g"'
        yield Flaw(code="no batter", path=("out",), message=message, hint=hint)
    elif entry.out >= entry.batter:
        message, hint = "a cake weighs less than its batter", "weigh it cold, without its tin"
        yield Flaw(code="wild entry", path=("out",), message=message, hint=hint)
    elif entry.out < entry.batter * (1.0 - MOST_LOSS):
        message = f"no cake loses {1.0 - entry.out / entry.batter:.0%} of its weight"
        yield Flaw(code="wild entry", path=("out",), message=message, hint="weigh it whole, before it is levelled")


def _heat_flaws(entry: Baked, book: Book) -> Iterator[Flaw]:
    centre = entry.centre
    if centre is not None and not LEAST_CENTRE_C <= centre <= MOST_CENTRE_C:
        message = f"no cake comes out with its centre at {centre:g} °C"
        hint = "a baked centre reads between 93 and 99 °C"
        yield Flaw(code="wild entry", path=("centre",), message=message, hint=hint)
    elif entry.oven.celsius + book.house.oven.off_c <= max(COOLEST_C, centre or 0.0):
        message = f"no cake bakes at {entry.oven.written}"
        yield Flaw(code="too cool", path=("oven",), message=message, hint="check the dial")
    if entry.start is not None and not COLDEST_BATTER_C <= entry.start <= WARMEST_BATTER_C:
        message = f"no batter goes into the oven at {entry.start:g} °C"
        hint = "leave this out if it was at room temperature"
        yield Flaw(code="wild entry", path=("start",), message=message, hint=hint)


def _minute_flaws(
    entry: Baked, batch: Batch, depth_mm: float, before: Prior, book: Book, facts: Facts
) -> Iterator[Flaw]:
    """Minutes that are far out for such a cake, whatever was baked before."""
    tin = as_owned(entry.tin, book)
    point = BakePoint(tin=tin, width_mm=width_mm(tin), depth_mm=depth_mm, minutes=entry.done_after, entry=entry)
    usual_min = before.minutes(point.width_mm, depth_mm, heat_of(point, batch, book, facts))
    most = facts.numbers["wild bake"].value
    if not usual_min / most <= entry.done_after <= usual_min * most:
        message = (
            f"{entry.done_after:g} min is far from the {usual_min:.0f} min a cake like this takes; "
            "the book will not learn from it"
        )
        hint = "check the time and the tin"
        yield Flaw(code="wild entry", path=("done after",), message=message, hint=hint)
