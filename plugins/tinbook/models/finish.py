"""How the house finishes its cakes (house/finish.yaml), and how much it really used (house/used.yaml).

A mixture may say the same about itself under `finish`. Where nothing is given, the usual figures of the trade are used.
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
        raise Misread(f'"{text}" is too much', "write a smaller share, such as 5 %", 0, len(text))
    return share


def _factor(text: str, _: Measures) -> float:
    value, end = read_number(text, 0)
    hint = "write baked depth divided by batter depth, such as 1.5"
    if end < len(text):
        raise Misread(f'"{text}" is not a number', hint, 0, len(text))
    if not 0.5 <= value <= 4.0:
        raise Misread(f"no cake rises to {text} times the depth of its batter", hint, 0, len(text))
    return value


def _day(text: str, _: Measures) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        hint = "write year, month and day, such as 2026-05-02"
        raise Misread(f'"{text}" is not a date', hint, 0, len(text)) from None


def read_coat(text: str, measures: Measures) -> float:
    """A length in mm, 0 for `none`. Raises Misread."""
    return 0.0 if text == "none" else read_length(text, measures).base


def _one_cake(text: str, measures: Measures) -> Tin:
    count, tin = read_tin(text, sold=measures.tins)
    if count != 1 and not tin.kind.in_trays:
        raise Misread("only one cake can go here", 'write one entry for each, such as "round 20 cm"', 0, len(text))
    return tin


Day = Annotated[date, spelled(_day)]
Share = Annotated[float, spelled(_share, like(patterns.PERCENT))]
Coat = Annotated[float, spelled(read_coat, like(rf"none|{patterns.LENGTH}", "thickness")), such_as("5 mm")]
"""A thickness in mm, or `none`."""
Slug = Annotated[Text, such_as("american-buttercream")]
OneCake = Annotated[Tin, spelled(_one_cake), such_as("round 20 cm")]


FEWEST_DOWELS, MOST_DOWELS = 3, 20
"""A tier on two dowels tips; more than the most would cut a cake to pieces (our own judgement)."""


class Border(Written):
    """A border piped round the edge of a cake, one mark next to another."""

    marks: Annotated[str, one_of("shells", "loops", "rosettes", "beads"), such_as("rosettes")] = "shells"
    """What you pipe."""
    nozzle: Annotated[str, one_of("open star", "closed star", "round"), such_as("round")] = "open star"
    """The sort of nozzle."""
    opening: Annotated[Millimetres, such_as("8 mm")]
    """How wide its opening is."""
    pitch: Annotated[Millimetres, such_as("14 mm")]
    """How far one mark is from the next, middle to middle."""
    stroke: Annotated[Millimetres, such_as("30 mm")]
    """How much icing goes into one mark, as a length piped from the nozzle."""
    edges: Annotated[str, one_of("top", "foot", "top and foot"), such_as("top and foot")] = "foot"
    """Which edge of the cake it goes round."""
    count: Annotated[int | None, whole_number(1, 999), such_as("36")] = None
    """How many marks you want round one edge. Left out: as many as there is room for."""

    @property
    def twice(self) -> bool:
        """Whether it goes round the cake twice, at the top and at the foot."""
        return self.edges == "top and foot"


class Made(Written):
    """What you finish a cake with: recipes, by their file names, or bought pastes, by their cards."""

    filling: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What goes between the layers. Left out: no choice is made."""
    crumb_coat: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What the first, thin coat is made of. Left out: no choice is made."""
    final_coat: Annotated[Slug | None, such_as("american-buttercream")] = None
    """What the coat on top of that is made of. Left out: no choice is made."""
    cover: Annotated[Slug | None, such_as("sugarpaste")] = None
    """The paste that covers the cake. Left out: no choice is made."""
    board: Annotated[Slug | None, such_as("sugarpaste")] = None
    """The paste that covers the board. Left out: no choice is made."""


class Finish(Written):
    """How you fill, coat, cover and box your cakes. A recipe can give its own figures under `finish`: these come before
    the house's, and the house's before the trade's usual ones.

    Lengths in mm, shares as parts of one.
    """

    heights: Annotated[tuple[Millimetres, ...], ONE_OR_MORE, such_as("10 cm", "[10 cm, 15 cm]")] = ()
    """How high a cake stands before it is iced. The first is your usual height; the others get tables too. Left out:
    the trade's usual figure."""
    layers: Annotated[int | None, whole_number(1, 20), such_as("4")] = None
    """How many layers of cake there are in a tier. Left out: the trade's usual figure."""
    layer: Annotated[Millimetres | None, such_as("25 mm")] = None
    """How thick you cut a layer. Left out: the trade's usual figure."""
    cut: Annotated[int | None, whole_number(1, 8), such_as("2")] = None
    """How many layers you cut from one baked cake. Left out: as many as its height allows."""
    level_off: Annotated[Share | None, such_as("10 %")] = None
    """How much of its height a cake loses when you cut the dome off. Left out: the trade's usual figure."""
    rise: Annotated[
        Mapping[str, Annotated[float, spelled(_factor, FACTOR)]] | None, such_as("{creamed: 1.5, mud: 1.2}")
    ] = None
    """How high a cake is when baked, as a multiple of the depth of its batter, by kind. Left out: what your bakes have
    shown, or whatever is usual for the kind."""
    filling: Annotated[Coat | None, such_as("5 mm", "none")] = None
    """How thick the filling is between two layers. Left out: the trade's usual figure."""
    dam: Annotated[Millimetres | None, such_as("10 mm")] = None
    """How wide a ring of stiff icing you pipe round a soft filling to hold it in. Left out: you pipe none."""
    crumb_coat: Annotated[Coat | None, such_as("1 mm", "none")] = None
    """How thick the first coat is, the one that holds the crumbs. Left out: the trade's usual figure."""
    final_coat: Annotated[Coat | None, such_as("4 mm", "none")] = None
    """How thick the coat on top of that is. Left out: the trade's usual figure."""
    stays_in_the_bowl: Annotated[Share | None, such_as("5 %")] = None
    """How much of an icing or filling stays in the bowl. Left out: the trade's usual figure."""
    stays_in_the_bag: Annotated[Millilitres | None, such_as("240 ml")] = None
    """How much stays on the beater and in the piping bag. Left out: the trade's usual figure."""
    border: Annotated[Border | None, such_as("{opening: 8 mm, pitch: 14 mm, stroke: 30 mm}")] = None
    """The border you pipe round a cake. Left out: you pipe none."""
    paste: Annotated[Millimetres | None, such_as("5 mm")] = None
    """How thick the paste is on the cake. Left out: the trade's usual figure."""
    paste_rolled: Annotated[Millimetres | None, such_as("5 mm")] = None
    """How thick you roll it before it goes over the cake. Left out: the trade's usual figure."""
    paste_over: Annotated[Millimetres | None, such_as("25 mm")] = None
    """How much further you roll it than the cake needs, to trim off at the foot. Left out: the trade's usual figure."""
    board: Annotated[str | None, one_of("usual", "wide", "least"), such_as("wide")] = None
    """How much wider than its cake the board is. `wide` leaves room for a figure. Left out: usual."""
    board_paste: Annotated[Millimetres | None, such_as("3 mm")] = None
    """How thick the paste is on the board. Left out: the trade's usual figure."""
    board_covered: Annotated[str | None, one_of("whole", "ring"), such_as("ring")] = None
    """Whether you cover the whole board, or only the ring that shows round the cake. Left out: the whole board."""
    card: Annotated[Millimetres | None, such_as("3 mm")] = None
    """How thick the card is under each tier of a stacked cake. Left out: the trade's usual figure."""
    ribbon_over: Annotated[Millimetres | None, such_as("20 mm")] = None
    """How far a ribbon overlaps itself. Left out: the trade's usual figure."""
    box_beside: Annotated[Millimetres | None, such_as("10 mm")] = None
    """How much room the box leaves beside the board. Left out: the trade's usual figure."""
    box_above: Annotated[Millimetres | None, such_as("30 mm")] = None
    """How much room the box leaves above the cake. Left out: the trade's usual figure."""
    dowels: Annotated[int | None, whole_number(FEWEST_DOWELS, MOST_DOWELS), such_as("5")] = None
    """How many dowels you put under a tier. Only house/finish.yaml can say this, not a recipe. Left out: the
    number published charts give."""
    made_with: Annotated[Made | None, such_as("{filling: american-buttercream, cover: sugarpaste}")] = None
    """Which of your recipes or bought pastes you use. Left out: no choice is made."""
    portions: Annotated[Portions | None, such_as("{dessert: 25 mm x 50 mm, tea slice: 4 cm x 5 cm}")] = None
    """What you call a portion, and how wide and how long it is, seen from above. Left out: finger and dessert portions,
    as the trade cuts them."""
    private: Annotated[Private, such_as("yes", "[made with]")] = False
    """What to leave out of a public site: `yes` for all of it, or the names of keys."""


class Used(Written):
    """What one cake really took of a coat or a paste."""

    day: Annotated[Day, such_as("2026-05-02")]
    """The day you did it: year, month, day."""
    of: Annotated[Slug, such_as("american-buttercream")]
    """What you used: a recipe, by its file name, or a paste, by its card."""
    cake: Annotated[OneCake, such_as("round 20 cm")]
    """The cake it went on."""
    height: Annotated[Millimetres, such_as("10 cm")]
    """How high the cake was."""
    layers: Annotated[int | None, whole_number(1, 20), such_as("4")] = None
    """How many layers it had. Left out: as many as your cakes usually have."""
    used: Annotated[Grams, such_as("850 g")]
    """How much really went on, by weight."""
    note: Annotated[Text | None, such_as("Warm day; it went on thick.")] = None
    """A note to yourself. No page shows it. Left out: there is none."""


class UsedLog(Written):
    """A log of what your cakes really took, so that the next amount is closer."""

    used: Annotated[
        tuple[Used, ...],
        such_as("- {day: 2026-05-02, of: american-buttercream, cake: round 20 cm, height: 10 cm, used: 850 g}"),
    ]
    """What each cake took. Amounts of icing and paste are worked out with these from then on."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether a public site works out its amounts without this log. No page ever shows what is written here."""
