"""An order: what somebody has asked for, and when it goes out (recipes/orders)."""

from __future__ import annotations

import re
from datetime import datetime
from typing import Annotated

from pydantic import Field

from tinbook.models.cakes import CakeDesign, Tiers
from tinbook.models.currency import Away, OneSum
from tinbook.models.finish import OneCake, Slug
from tinbook.models.reading import (
    Private,
    Text,
    Texts,
    Written,
    WrittenLine,
    like,
    one_of,
    spelled,
    such_as,
    whole_number,
)
from tinbook.units import Measures, Misread, patterns, read_time

STATES = ("asked", "agreed", "done", "gone")
"""How far an order has got: nothing is promised yet; it is promised; it is ready; it has gone out."""
OPEN = STATES[:2]
"""While there is still work to do on it."""
MOST_MIN = 24 * 60
LONGEST_HANDLE = 40
_MOMENT = re.compile(r"(\d{4}-\d{2}-\d{2})[ T](\d{1,2}[:.]\d{2})")


def read_moment(text: str, _: Measures) -> datetime:
    """`2026-12-05 11:00`, by the kitchen's clock; raises Misread."""
    found = _MOMENT.fullmatch(" ".join(text.split()))
    if found is None:
        raise Misread(f'"{text}" is not a day and a time', "write both, such as 2026-12-05 11:00", 0, len(text))
    day, time = found[1], found[2].replace(".", ":").zfill(5)
    try:
        return datetime.fromisoformat(f"{day} {time}")
    except ValueError:
        hint = "write year, month, day and time, such as 2026-12-05 11:00"
        raise Misread(f'there is no "{text}" in the calendar', hint, 0, len(text)) from None


def read_minutes(text: str, _: Measures) -> float:
    """A time within a day, in minutes; raises Misread."""
    minutes = read_time(text).base
    if not 0 < minutes <= MOST_MIN:
        raise Misread(f'"{text}" is longer than a day, or no time at all', "write it such as 25 min", 0, len(text))
    return minutes


def _handle(text: str, _: Measures) -> str:
    if not text or len(text) > LONGEST_HANDLE:
        hint = 'write a word or two you will know it by, such as "slipway birthday"'
        raise Misread(f"a handle has between 1 and {LONGEST_HANDLE} letters", hint, 0, len(text))
    return text


MOMENT = r"[0-9]{4}-[0-9]{2}-[0-9]{2}[ T][0-9]{1,2}[:.][0-9]{2}"
Moment = Annotated[datetime, spelled(read_moment, like(MOMENT, "day and time"))]
"""A day and a time by the kitchen's clock."""
InMinutes = Annotated[float, spelled(read_minutes, like(patterns.TIME, "one time"))]


class OrderChange(CakeDesign):
    """What is different about the cake for this order. Any key of a cake that you write here replaces what the cake
    itself says; everything else stays."""

    name: Annotated[Text | None, such_as("Headland cake in lemon")] = None  # type: ignore[assignment]
    """What it is called for this order. Left out: what the cake is called."""
    tiers: Annotated[Tiers, such_as("[20 cm, 15 cm]")] = ()
    """Its tiers, from the bottom up, if they differ. Left out: the tiers of the cake."""


class OrderedMixture(WrittenLine):
    """A recipe that is ordered by itself: cupcakes, a plain cake, a tub of buttercream. If one of it is all there is to
    say, write its name without a key."""

    chief = "mixture"

    mixture: Annotated[Slug, such_as("cupcakes")]
    """The recipe, by the name of its file without `.yaml`."""
    count: Annotated[int, whole_number(1, 999), such_as("48")] = 1
    """How many: of cupcakes, how many cupcakes; of cakes, how many tins of it; of anything made by weight, how many
    times the amount its recipe makes."""
    tin: Annotated[OneCake | None, such_as("round 20 cm")] = None
    """The tin it is baked in. Left out: the first tin in its recipe."""


class OrderedClass(Written):
    """A class you teach."""

    techniques: Annotated[Texts, such_as("[rope-edge, cover-a-board]")]
    """What is taught, by the names of the techniques' files without `.yaml`."""
    people: Annotated[int, whole_number(1, 99), such_as("6")] = 1
    """How many people come."""
    lasts: Annotated[InMinutes, such_as("3 h")]
    """How long it lasts."""


class Order(Written):
    """Each file in `recipes/orders` is one order: a cake, recipes by themselves, or a class, and when it goes out. Name
    the file in small letters with hyphens. These files never leave the kitchen: no public page shows them, and git
    leaves them out. All the same, write no names, numbers or addresses in them, only a handle that you know it by.
    """

    handle: Annotated[str, spelled(_handle), such_as("slipway birthday")]
    """A word or two that you know it by. Never somebody's name."""
    hand_over: Annotated[Moment, such_as("2026-12-05 11:00")]
    """When it is collected, or has to be there: day and time. For a class, when it begins."""
    cake: Annotated[Slug | None, such_as("lighthouse-cake")] = None
    """The cake, by the name of its file without `.yaml`. Left out: write `mixtures` or `class` instead."""
    change: Annotated[OrderChange | None, such_as("{filling: lemon-buttercream}")] = None
    """What is different about the cake this time, by the keys of a cake. Left out: it is made as it is in the book."""
    size: Annotated[Text | None, such_as("small", "+1")] = None
    """The size of the cake: the name you gave it in the cake's own `sizes`, or how many steps up or down, as `+1` or
    `-1`. Left out: its own size, or what serves the guests."""
    guests: Annotated[int | None, whole_number(1, 999), such_as("40")] = None
    """How many guests it has to serve. Left out: as many as the size serves."""
    mixtures: Annotated[tuple[OrderedMixture, ...], such_as("- {mixture: cupcakes, count: 48}", "- madeira-cake")] = ()
    """Recipes ordered by themselves. Left out: there are none."""
    class_: Annotated[
        OrderedClass | None,
        Field(alias="class", examples=["{techniques: [rope-edge], people: 6, lasts: 3 h}"]),
    ] = None
    """A class, if that is what is booked. Left out: it is not a class."""
    delivered: Annotated[InMinutes | None, such_as("25 min")] = None
    """How long the drive is, if you take it there. Left out: it is collected."""
    must_be_free_from: Annotated[Texts, such_as("[nuts, milk]", "[sesame, almond extract]")] = ()
    """What a guest must not have: any of the fourteen allergens, or an ingredient. Every crumb of the order is checked
    for it. Left out: nothing is checked."""
    state: Annotated[str, one_of(*STATES), such_as("agreed")] = "asked"
    """How far it has got. `asked` is only a question so far; `agreed` is promised; `done` is ready; `gone` has gone
    out, and is never checked again."""
    distance: Annotated[Away | None, such_as("18 km", "11 miles")] = None
    """How far it is, one way, if you take it there. Left out: the price has nothing for the road."""
    quoted: Annotated[OneSum | None, such_as("410")] = None
    """The price you have named. Left out: a quote names the one that is worked out."""
    agreed: Annotated[OneSum | None, such_as("400")] = None
    """The price you have both agreed to. Left out: there is none yet."""
    deposit: Annotated[OneSum | None, such_as("120")] = None
    """What has been paid of it beforehand. Left out: nothing."""
    notes: Annotated[Texts, such_as("[Box goes back to the shed.]")] = ()
    """What you want to remember about it. Left out: nothing is shown."""
    private: Annotated[Private, such_as("yes")] = False
    """An order never leaves the kitchen, whatever you write here."""

    @property
    def open(self) -> bool:
        """Whether there is still work to do on it."""
        return self.state in OPEN
