"""What the house has baked: house/bakes.yaml, one entry for each bake; times, rise and losses are learned from them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Annotated, Any

from pydantic import PlainValidator, ValidationInfo

from tinbook.models.finish import Day, Slug
from tinbook.models.house import Celsius, Grams, Millimetres, OvenHeat
from tinbook.models.reading import (
    Private,
    Text,
    Written,
    like,
    measures_in,
    spelled,
    such_as,
    text_of,
    tins_in,
)
from tinbook.tins import Tin, read_tins
from tinbook.units import Measures, Misread, patterns, read_time

LEAST_MIN, MOST_MIN = 3.0, 720.0
"""No cake bakes faster than the first, or takes longer than the second."""


def _tin(value: Any, info: ValidationInfo) -> Tin:
    text = text_of(value)
    tins = read_tins(text, tins_in(info), measures_in(info).tins)
    if len(tins) != 1 or (tins[0][0] != 1 and not tins[0][1].kind.in_trays):
        raise Misread(
            "only one tin can go here", 'write one entry for each, such as "round 20 cm x 7.5 cm"', 0, len(text)
        )
    return tins[0][1]


def _minutes(text: str, _: Measures) -> float:
    minutes = read_time(text).base
    if not LEAST_MIN <= minutes <= MOST_MIN:
        raise Misread(f"no cake bakes in {text}", "write how long it was in the oven, such as 62 min", 0, len(text))
    return minutes


OneTime = Annotated[float, spelled(_minutes, like(patterns.TIME, "one time"))]
"""How long a cake was in the oven, minutes."""
LoggedTin = Annotated[Tin, PlainValidator(_tin, json_schema_input_type=str)]


class Baked(Written):
    """One bake, in one tin."""

    day: Annotated[Day, such_as("2026-05-02")]
    """The day you baked it: year, month, day."""
    of: Annotated[Slug, such_as("creamed-butter-sponge")]
    """What you baked, by file name, without `.yaml`."""
    tin: Annotated[LoggedTin, such_as("round 20 cm x 7.5 cm", "standard cups")]
    """The tin it was in. Write an entry for each tin."""
    batter: Annotated[Grams | None, such_as("1250 g")] = None
    """What the batter in that tin weighed; for cupcakes, the batter in one of them. Left out: write `batter depth`
    instead."""
    batter_depth: Annotated[Millimetres | None, such_as("38 mm")] = None
    """How deep the batter was in the tin. Left out: it is worked out from the weight."""
    oven: Annotated[OvenHeat, such_as("160 °C fan")]
    """What the dial was set to."""
    done_after: Annotated[OneTime, such_as("62 min", "1 h 2 min")]
    """How long it was in the oven until it was done."""
    centre: Annotated[Celsius | None, such_as("97 °C")] = None
    """How hot the middle was when it came out. Left out: the usual figure is assumed."""
    start: Annotated[Celsius | None, such_as("8 °C")] = None
    """How warm the batter was when it went in. Left out: the usual figure is assumed."""
    baked: Annotated[Millimetres | None, such_as("58 mm")] = None
    """How high it was before you levelled it. Left out: nothing is learned about its rise."""
    out: Annotated[Grams | None, such_as("1130 g")] = None
    """What it weighed when cold, out of its tin. Left out: nothing is learned about how much weight it loses."""
    note: Annotated[Text | None, such_as("Back of the shelf browned first.")] = None
    """A note about that bake. Left out: nothing is shown."""


class BakeLog(Written):
    """A log of what came out of your oven, so that the next time is closer."""

    bakes: Annotated[
        tuple[Baked, ...],
        such_as(
            "- {day: 2026-05-02, of: plain-sponge, tin: round 20 cm, batter: 1250 g, oven: 170 °C, done after: 62 min}"
        ),
    ]
    """What came out of your oven, one bake after another. Baking times are learned from it."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave it out of a public site, along with everything learned from it."""


def by_mixture(bakes: Iterable[Baked]) -> Mapping[str, tuple[Baked, ...]]:
    """The entries for each mixture, by its slug, in the order of the log."""
    found: dict[str, list[Baked]] = {}
    for entry in bakes:
        found.setdefault(entry.of, []).append(entry)
    return {slug: tuple(entries) for slug, entries in found.items()}
