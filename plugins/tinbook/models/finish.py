"""How the house finishes its cakes (house/finish.yaml), and what it really used (house/used.yaml).

A mixture may say the same of itself under `finish`. What is left out goes by the usual figures of the trade.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Annotated

from tinbook.models.house import Grams, Millilitres, Millimetres
from tinbook.models.portions import Portions
from tinbook.models.reading import (
    FACTOR,
    ONE_OR_MORE,
    Private,
    Text,
    Written,
    like,
    one_of,
    spelled,
    such_as,
    whole_number,
)
from tinbook.tins import Tin, read_tin
from tinbook.units import Measures, Misread, patterns, read_length, read_number, read_percent


def _share(text: str, _: Measures) -> float:
    share = read_percent(text)
    if not 0.0 <= share < 0.6:
        raise Misread(f'"{text}" is too much', "write a part of the whole, such as 5 %", 0, len(text))
    return share


def _factor(text: str, _: Measures) -> float:
    value, end = read_number(text, 0)
    if end < len(text):
        raise Misread(f'"{text}" is not a number', "write baked depth over batter depth, such as 1.5", 0, len(text))
    if not 0.5 <= value <= 4.0:
        raise Misread(f"no cake rises {text} times", "write baked depth over batter depth, such as 1.5", 0, len(text))
    return value


def _day(text: str, _: Measures) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        hint = "write year, month and day, such as 2026-05-02"
        raise Misread(f'"{text}" is not a day of the calendar', hint, 0, len(text)) from None


def _coat(text: str, measures: Measures) -> float:
    return 0.0 if text == "none" else read_length(text, measures).base


def _one_cake(text: str, measures: Measures) -> Tin:
    count, tin = read_tin(text, sold=measures.tins)
    if count != 1 and not tin.kind.in_trays:
        raise Misread("one cake belongs here", 'write one entry for each, such as "round 20 cm"', 0, len(text))
    return tin


Day = Annotated[date, spelled(_day)]
Share = Annotated[float, spelled(_share, like(patterns.PERCENT))]
Coat = Annotated[float, spelled(_coat, like(rf"none|{patterns.LENGTH}", "thickness")), such_as("5 mm")]
"""A thickness in mm, or `none`."""
Slug = Annotated[Text, such_as("american-buttercream")]
OneCake = Annotated[Tin, spelled(_one_cake), such_as("round 20 cm")]


FEWEST_DOWELS, MOST_DOWELS = 3, 20
"""A tier on two dowels tips; more than that cut a cake to pieces (house judgement)."""


class Border(Written):
    """A border piped round an edge: one mark beside another, `pitch` apart, each a `stroke` long.

    `count` is how many are wanted on the edge, where the house does not leave that to the pitch.
    """

    marks: Annotated[str, one_of("shells", "loops", "rosettes", "beads")] = "shells"
    nozzle: Annotated[str, one_of("open star", "closed star", "round")] = "open star"
    opening: Annotated[Millimetres, such_as("8 mm")]
    pitch: Annotated[Millimetres, such_as("14 mm")]
    stroke: Annotated[Millimetres, such_as("30 mm")]
    edges: Annotated[str, one_of("top", "foot", "top and foot")] = "foot"
    count: Annotated[int, whole_number(1, 999)] | None = None

    @property
    def twice(self) -> bool:
        """Whether it goes round the cake twice, at the top and at the foot."""
        return self.edges == "top and foot"


class Made(Written):
    """What a cake is finished with: mixtures of the house by their files' names, or bought pastes by their cards'."""

    filling: Slug | None = None
    crumb_coat: Slug | None = None
    final_coat: Slug | None = None
    cover: Slug | None = None
    board: Slug | None = None


class Finish(Written):
    """house/finish.yaml, or `finish` in a mixture. Lengths in mm, shares as parts of one.

    `dowels` is how many the house sets under a tier; the house alone says so.
    """

    heights: Annotated[tuple[Millimetres, ...], ONE_OR_MORE, such_as("10 cm")] = ()
    layers: Annotated[int, whole_number(1, 20)] | None = None
    layer: Millimetres | None = None
    cut: Annotated[int, whole_number(1, 8)] | None = None
    level_off: Share | None = None
    rise: Mapping[str, Annotated[float, spelled(_factor, FACTOR)]] | None = None
    filling: Coat | None = None
    dam: Millimetres | None = None
    crumb_coat: Coat | None = None
    final_coat: Coat | None = None
    stays_in_the_bowl: Share | None = None
    stays_in_the_bag: Annotated[Millilitres | None, such_as("240 ml")] = None
    border: Border | None = None
    paste: Millimetres | None = None
    paste_rolled: Millimetres | None = None
    paste_over: Millimetres | None = None
    board: Annotated[str, one_of("usual", "wide", "least")] | None = None
    board_paste: Millimetres | None = None
    board_covered: Annotated[str, one_of("whole", "ring")] | None = None
    ribbon_over: Millimetres | None = None
    box_beside: Millimetres | None = None
    box_above: Millimetres | None = None
    dowels: Annotated[int, whole_number(FEWEST_DOWELS, MOST_DOWELS)] | None = None
    made_with: Annotated[Made | None, such_as("{filling: american-buttercream}")] = None
    portions: Annotated[Portions | None, such_as("{dessert: 25 mm x 50 mm}")] = None
    private: Private = False


class Used(Written):
    """What one cake really took of a mixture: `of` its file's name, for the coats or for the paste on the cake."""

    day: Annotated[Day, such_as("2026-05-02")]
    of: Slug
    cake: Annotated[Tin, spelled(_one_cake), such_as("round 20 cm")]
    height: Annotated[Millimetres, such_as("10 cm")]
    layers: Annotated[int, whole_number(1, 20)] | None = None
    used: Annotated[Grams, such_as("850 g")]
    note: Text | None = None


class UsedLog(Written):
    """used.yaml."""

    used: Annotated[tuple[Used, ...], such_as("- {day: 2026-05-02, of: american-buttercream, ...}")]
    private: Private = False
