"""What has been done, and how long it really took: house/hours.yaml, which only ever grows."""

from __future__ import annotations

from typing import Annotated

from tinbook.models.finish import Slug
from tinbook.models.orders import InMinutes, Moment
from tinbook.models.reading import Private, Text, Written, such_as


class WorkDone(Written):
    """One task that is done."""

    done: Annotated[Moment, such_as("2026-12-05 10:40")]
    """When you had finished it, by the kitchen's clock."""
    task: Annotated[Text, such_as("slipway-birthday/rope-edge-2")]
    """Which task of the plan it was: the tablet writes this."""
    of: Annotated[Slug | None, such_as("rope-edge")] = None
    """The technique or recipe, by its file name. Left out: nothing is learned from this entry."""
    said: Annotated[InMinutes | None, such_as("35 min")] = None
    """How long its steps say that much of it keeps your hands busy. Left out: nothing is learned from this entry."""
    took: Annotated[InMinutes | None, such_as("45 min")] = None
    """How long it really kept your hands busy. Left out: nothing is learned from this entry."""


class HoursLog(Written):
    """A log of what you have done. The plan leaves out what is in it, and works with your own minutes from then on."""

    hours: Annotated[
        tuple[WorkDone, ...],
        such_as("- {done: 2026-12-05 10:40, task: slipway/rope-edge-2, of: rope-edge, said: 35 min, took: 45 min}"),
    ]
    """What has been done, one line for each task. `tinbook plan --done FILE` adds to it."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""
