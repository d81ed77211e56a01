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
    """A border piped round an edge of the cake, one mark beside another."""

    marks: Annotated[str, one_of("shells", "loops", "rosettes", "beads"), such_as("rosettes")] = "shells"
    """What is piped."""
    nozzle: Annotated[str, one_of("open star", "closed star", "round"), such_as("round")] = "open star"
    """What sort of nozzle it is piped with."""
    opening: Annotated[Millimetres, such_as("8 mm")]
    """How wide the nozzle's opening is."""
    pitch: Annotated[Millimetres, such_as("14 mm")]
    """How far it is from one mark to the next, middle to middle."""
    stroke: Annotated[Millimetres, such_as("30 mm")]
    """How much is pressed out for one mark, as a length."""
    edges: Annotated[str, one_of("top", "foot", "top and foot"), such_as("top and foot")] = "foot"
    """Which edge of the cake it goes round."""
    count: Annotated[int | None, whole_number(1, 999), such_as("36")] = None
    """How many marks you want on one edge. Left out: as many as the pitch makes room for."""

    @property
    def twice(self) -> bool:
        """Whether it goes round the cake twice, at the top and at the foot."""
        return self.edges == "top and foot"


class Made(Written):
    """What a cake is finished with: recipes by the names of their files, or bought pastes by their cards."""

    filling: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What lies between the layers. Left out: it stays open which."""
    crumb_coat: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What the first, thin coat is of. Left out: it stays open which."""
    final_coat: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What the coat over it is of. Left out: it stays open which."""
    cover: Annotated[Slug | None, such_as("sugarpaste")] = None
    """The paste over the whole cake. Left out: it stays open which."""
    board: Annotated[Slug | None, such_as("sugarpaste")] = None
    """The paste on the board. Left out: it stays open which."""


class Finish(Written):
    """How this house fills, coats, covers and boxes its cakes. A recipe may say the same of itself under `finish`: what
    it says goes for that cake, the house for all others, and the trade where neither speaks.

    Lengths in mm, shares as parts of one.
    """

    heights: Annotated[tuple[Millimetres, ...], ONE_OR_MORE, such_as("10 cm", "[10 cm, 15 cm]")] = ()
    """How high a finished cake stands before it is iced; the first is the usual one. Left out: the trade's usual
    figure."""
    layers: Annotated[int | None, whole_number(1, 20), such_as("4")] = None
    """How many layers of cake one tier has. Left out: the trade's usual figure."""
    layer: Annotated[Millimetres | None, such_as("25 mm")] = None
    """How thick one layer of cake is cut. Left out: the trade's usual figure."""
    cut: Annotated[int | None, whole_number(1, 8), such_as("2")] = None
    """How many layers one baked cake is cut into. Left out: as many as it is high enough for."""
    level_off: Annotated[Share | None, such_as("10 %")] = None
    """How much of its height a baked cake loses when the dome is cut off. Left out: the trade's usual figure."""
    rise: Annotated[
        Mapping[str, Annotated[float, spelled(_factor, FACTOR)]] | None, such_as("{creamed: 1.5, mud: 1.2}")
    ] = None
    """How often its batter's depth a cake is high when baked, kind by kind. Left out: what the bakes taught, or else
    what is usual for the kind."""
    filling: Annotated[Coat | None, such_as("5 mm", "none")] = None
    """How thick the filling between two layers is. Left out: the trade's usual figure."""
    dam: Annotated[Millimetres | None, such_as("10 mm")] = None
    """How wide the ring of stiff coat is that is piped round a soft filling to hold it. Left out: there is none."""
    crumb_coat: Annotated[Coat | None, such_as("1 mm", "none")] = None
    """How thick the first coat is, which holds the crumbs. Left out: the trade's usual figure."""
    final_coat: Annotated[Coat | None, such_as("4 mm", "none")] = None
    """How thick the coat over it is. Left out: the trade's usual figure."""
    stays_in_the_bowl: Annotated[Share | None, such_as("5 %")] = None
    """How much of a coat or filling never leaves the bowl. Left out: the trade's usual figure."""
    stays_in_the_bag: Annotated[Millilitres | None, such_as("240 ml")] = None
    """How much of what is piped stays on the beater and in the bag. Left out: the trade's usual figure."""
    border: Annotated[Border | None, such_as("{opening: 8 mm, pitch: 14 mm, stroke: 30 mm}")] = None
    """The border that is piped round the cake. Left out: none is piped."""
    paste: Annotated[Millimetres | None, such_as("5 mm")] = None
    """How thick paste lies on the cake. Left out: the trade's usual figure."""
    paste_rolled: Annotated[Millimetres | None, such_as("5 mm")] = None
    """How thick it is rolled before it goes over the cake. Left out: the trade's usual figure."""
    paste_over: Annotated[Millimetres | None, such_as("25 mm")] = None
    """How far it is rolled beyond what the cake needs, for trimming at the foot. Left out: the trade's usual figure."""
    board: Annotated[str | None, one_of("usual", "wide", "least"), such_as("wide")] = None
    """How much wider than the cake its board is: `wide` leaves room for a figure. Left out: usual."""
    board_paste: Annotated[Millimetres | None, such_as("3 mm")] = None
    """How thick paste lies on the board. Left out: the trade's usual figure."""
    board_covered: Annotated[str | None, one_of("whole", "ring"), such_as("ring")] = None
    """Whether the whole board is covered, or only the ring that shows round the cake. Left out: whole."""
    ribbon_over: Annotated[Millimetres | None, such_as("20 mm")] = None
    """How far a ribbon laps over itself. Left out: the trade's usual figure."""
    box_beside: Annotated[Millimetres | None, such_as("10 mm")] = None
    """How much room the box has beside the board. Left out: the trade's usual figure."""
    box_above: Annotated[Millimetres | None, such_as("30 mm")] = None
    """How much room the box has above the cake. Left out: the trade's usual figure."""
    dowels: Annotated[int | None, whole_number(FEWEST_DOWELS, MOST_DOWELS), such_as("5")] = None
    """How many dowels go under a tier. It belongs in the house's file alone: they go by the tier, not by the recipe.
    Left out: what the published charts say."""
    made_with: Annotated[Made | None, such_as("{filling: american-buttercream, cover: sugarpaste}")] = None
    """Which mixtures or bought pastes it is done with. Left out: all of it stays open."""
    portions: Annotated[Portions | None, such_as("{dessert: 25 mm x 50 mm, tea slice: 4 cm x 5 cm}")] = None
    """What you call a portion, and how wide and long each is, seen from above. Left out: the trade's finger and dessert
    portions."""
    private: Annotated[Private, such_as("yes", "[made with]")] = False
    """What a public site leaves out: `yes` for all of it, or the names of keys."""


class Used(Written):
    """What one cake really took of a coat or a paste."""

    day: Annotated[Day, such_as("2026-05-02")]
    """The day it was done: year, month, day."""
    of: Annotated[Slug, such_as("american-buttercream")]
    """What was used: a mixture by the name of its file, or a paste by its card."""
    cake: Annotated[OneCake, such_as("round 20 cm")]
    """The cake it went on."""
    height: Annotated[Millimetres, such_as("10 cm")]
    """How high that cake stood."""
    layers: Annotated[int | None, whole_number(1, 20), such_as("4")] = None
    """How many layers it had. Left out: as many as the house's cakes have."""
    used: Annotated[Grams, such_as("850 g")]
    """What really went on, by weight."""
    note: Annotated[Text | None, such_as("A warm day, it went on thick.")] = None
    """A word for yourself. No page shows it. Left out: there is none."""


class UsedLog(Written):
    """The log of what cakes really took, so that the next sum is nearer."""

    used: Annotated[
        tuple[Used, ...],
        such_as("- {day: 2026-05-02, of: american-buttercream, cake: round 20 cm, height: 10 cm, used: 850 g}"),
    ]
    """What cakes took, an entry each. Coats and pastes are reckoned by it from then on."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether a public site does its sums without it. Its words are on no page in any case."""
