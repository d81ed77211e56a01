"""What there is at home: house/stock.yaml, which only ever grows."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from tinbook.models.finish import Day
from tinbook.models.packs import HowMuch
from tinbook.models.reading import Private, Text, Texts, Written, such_as

ACTS = ("counted", "bought", "taken")
"""What an entry is about."""


class StockEntry(Written):
    """One thing counted, bought, or taken for something that was no order."""

    day: Annotated[Day, such_as("2026-12-01")]
    """The day of it: year, month, day."""
    of: Annotated[Text, such_as("butter", "gel food colour, black", "drum, round 30 cm")]
    """What it is: an ingredient by any name on its card, a colour with its shade, or a thing with its size."""
    counted: Annotated[HowMuch | None, such_as("500 g", "3 x 250 g", "0")] = None
    """All there is of it, as you have counted or weighed it. It replaces everything that was known before. Left out:
    write `bought` or `taken` instead."""
    bought: Annotated[HowMuch | None, such_as("4 x 250 g", "12")] = None
    """What was added to it. Left out: write `counted` or `taken` instead."""
    taken: Annotated[HowMuch | None, such_as("200 g")] = None
    """What went otherwise than into an order: baked for the house, given or thrown away. Left out: write `counted` or
    `bought` instead."""
    opened: Annotated[Day | None, such_as("2026-11-28")] = None
    """The day a pack of it was opened, if it has been. What a card says under `keeps opened` counts from there. Left
    out: it is all unopened."""
    in_opened: Annotated[HowMuch | None, such_as("180 g")] = None
    """How much of what is counted is in the opened pack. Left out: all of it, if `opened` is written."""
    good_until: Annotated[Day | None, such_as("2026-12-14")] = None
    """The last day on which you would use it. Left out: it keeps."""
    for_: Annotated[Texts, Field(alias="for", examples=["[2026-12-11-slipway-birthday]"])] = ()
    """The orders it was bought for, by the names of their files; other orders only get what these leave. Left out: it
    is for whichever order comes first."""
    line: Annotated[Text | None, such_as("butter/3")] = None
    """The line of the shopping list that was ticked: the tablet writes this, so that a line counts once. Left out: it
    was not on a list."""


class StockLog(Written):
    """A log of what there is at home. The shopping list asks only for what is missing: what orders that are done have
    used since a count is taken off, and what was bought is added."""

    stock: Annotated[
        tuple[StockEntry, ...],
        such_as("- {day: 2026-12-01, of: butter, counted: 500 g}\n- {day: 2026-12-03, of: butter, bought: 4 x 250 g}"),
    ]
    """What was counted, bought or taken, one line each. `tinbook log stock` and `tinbook shop --done FILE` add to
    it."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""
