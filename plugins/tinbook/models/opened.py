"""Which packs were opened when: house/opened.yaml, which only ever grows."""

from __future__ import annotations

from typing import Annotated

from tinbook.models.finish import Day
from tinbook.models.reading import Private, Text, Written, such_as


class PackOpened(Written):
    """One pack, opened one day."""

    day: Annotated[Day, such_as("2026-12-01")]
    """The day you opened it: year, month, day."""
    of: Annotated[Text, such_as("self-raising flour")]
    """What is in it: an ingredient, by any name on its card."""
    pack: Annotated[Text, such_as("L2306 B")]
    """The number on the pack by which its maker can trace it; if there is none, a word of your own."""
    best_before: Annotated[Day | None, such_as("2027-03-31")] = None
    """The date on the pack. Left out: it has none, or you did not look."""
    finished: Annotated[Day | None, such_as("2026-12-09")] = None
    """The day it was used up. Left out: it lasts until the next pack of the same thing is opened."""


class OpenedLog(Written):
    """A log of the packs you open, so that a pack that is called back can be followed into what you baked, and a cake
    back to its packs."""

    opened: Annotated[
        tuple[PackOpened, ...],
        such_as("- {day: 2026-12-01, of: butter, pack: L2306 B, best before: 2027-01-15}"),
    ]
    """The packs, one line each. `tinbook log pack` adds to it."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""
