"""The parts of a modelled or cut decoration, and marks repeated on a surface, at the size of one cake.

A part is one of: `solid`, `sheet` with how `thick`, `strip` (wide x long) with how `thick`, `rope` (thick x long).
"""

from __future__ import annotations

from typing import Annotated

from tinbook.models.forms import CutterText, MarkText, SheetText, SolidText, TwoLengths
from tinbook.models.house import Grams, Millimetres
from tinbook.models.reading import ONE_OR_MORE, Text, Written, YesNo, one_of, spelled, such_as, whole_number
from tinbook.units import Measures, Misread, patterns, read_number

PLACES = ("top", "side", "board")
"""Where a part goes: stands or lies on top, hangs on the side, or lies on the board."""
SURFACES = ("top of the cake", "side of the cake")
"""What a repeat may go on, other than a named part."""
SETS = ("staggered", "straight", "bricks")
BEHIND, BELOW = "from behind", "from below"
"""How a support goes in."""


FURTHEST = 3.0
"""How far off a part another one that lies against it may be, in heights or widths of it."""


def _place(text: str, _: Measures) -> float:
    minus = text[:1] in ("-", "\N{MINUS SIGN}")
    share, end = read_number(text, int(minus), "1/3")
    if text[end:].strip() or share > FURTHEST:
        hint = "write 0 for one end, 1 for the other, such as 1/3; below 0 or above 1 is beyond the part"
        raise Misread(f'"{text}" is not a place on a part', hint, 0, len(text))
    return -share if minus else share


def _turn(text: str, _: Measures) -> float:
    minus = text[:1] in ("-", "\N{MINUS SIGN}")
    degrees, end = read_number(text, int(minus), "20°")
    if text[end:].strip() not in ("", "°") or degrees > 180.0:
        raise Misread(
            f'"{text}" is not how far something is turned', "write degrees, such as 20° or -20°", 0, len(text)
        )
    return -degrees if minus else degrees


PLACE = {"type": ["number", "string"], "pattern": patterns.whole(rf"[-−]?{patterns.NUMBER}")}
TURN = {"type": ["number", "string"], "pattern": patterns.whole(rf"[-−]?{patterns.NUMBER}\s*°?")}
PlaceOnPart = Annotated[float, spelled(_place, PLACE)]
Places = Annotated[tuple[PlaceOnPart, ...], ONE_OR_MORE]
TurnOfPart = Annotated[float, spelled(_turn, TURN)]
Turns = Annotated[tuple[TurnOfPart, ...], ONE_OR_MORE]


class Support(Written):
    """What holds a part up and is not food. `length` of it goes into the part, and the rest into the cake or into
    another part.

    From behind it may reach no further than the part is thick; from below no further than it is high.
    """

    what: Annotated[Text, such_as("bamboo skewer, 3 mm")]
    """What it is, and how thick."""
    count: Annotated[int, whole_number(1, 99), such_as("2")] = 1
    """How many each part needs."""
    length: Annotated[Millimetres, such_as("10 mm")]
    """How far it goes into the part."""
    in_the_cake: Annotated[Millimetres | None, such_as("50 mm")] = None
    """How far it goes into the cake. Left out: it does not go into the cake."""
    rest: Annotated[Millimetres | None, such_as("15 mm")] = None
    """How far it goes into another part. Left out: it goes into no other part."""
    rest_in: Annotated[Text | None, such_as("rock")] = None
    """Which part that is. Left out: it goes into no other part."""
    goes_in: Annotated[str, one_of(BEHIND, BELOW), such_as(BELOW)] = BEHIND
    """Which way it goes into the part."""

    @property
    def behind(self) -> bool:
        """Whether it goes in from behind."""
        return self.goes_in == "from behind"


class Part(Written):
    """One part of a decoration, sized for the cake in `parts for`. It is a `solid`, a `sheet`, a `strip` or a `rope`:
    one of the four.
    """

    part: Annotated[Text, such_as("tower")]
    """What it is called. Drawings, tables and steps use its letter."""
    solid: Annotated[SolidText | None, such_as("half egg 20 mm x 30 mm", "frustum 36 mm x 70 mm, top 24 mm")] = None
    """A modelled shape with its sizes. Left out: it is a sheet, a strip or a rope."""
    sheet: Annotated[SheetText | None, such_as("round 40 mm", "M0 18V6A6 6 0 0 1 12 6V18Z")] = None
    """A flat piece, by its outline. Use `thick` to say how thick you roll it. Left out: it is a solid, a strip or a
    rope."""
    strip: Annotated[TwoLengths | None, such_as("15 mm x 200 mm")] = None
    """A strip: how wide, and how long. Use `thick` to say how thick you roll it. Left out: it is a solid, a sheet or a
    rope."""
    rope: Annotated[TwoLengths | None, such_as("12 mm x 690 mm")] = None
    """A rolled rope: how thick, and how long. Left out: it is a solid, a sheet or a strip."""
    thick: Annotated[Millimetres | None, such_as("1 mm")] = None
    """How thick you roll a sheet or a strip. Left out: it is a solid or a rope, whose size gives its thickness."""
    count: Annotated[int, whole_number(1, 999), such_as("6")] = 1
    """How many of them one cake needs."""
    paste: Annotated[Text, such_as("modelling-paste", "sugarpaste")]
    """What it is made of: a recipe, by its file name, or an ingredient with a card."""
    colour: Annotated[Text | None, such_as("lamp red")] = None
    """Its colour, by its name in `house/colours.yaml`. Left out: the paste is not coloured."""
    weighed: Annotated[Grams | None, such_as("14 g")] = None
    """What one of them weighed on the scales, for the cake the parts are sized for. Left out: it is
    worked out from its size."""
    cutter: Annotated[CutterText | None, such_as("round 40 mm", "round 3/4")] = None
    """The cutter you cut or mark it with. A fraction means a fraction of the part's width. Left out: no cutter is
    needed."""
    cutter_shared: Annotated[YesNo, such_as("yes")] = False
    """Whether one cutter will do for a whole class."""
    support: Annotated[
        Support | None, such_as("{what: cocktail stick, count: 2, length: 10 mm, in the cake: 30 mm}")
    ] = None
    """What holds it up and is not food. The book counts these, and adds a caution. Left out: it needs no support."""
    on: Annotated[str, one_of(*PLACES), such_as("board")] = "top"
    """Where it goes: on top of the cake, on its side, or on the board."""
    stands_on: Annotated[Text | None, such_as("rock")] = None
    """Another part it stands on, centred. Left out: it does not stand on a part."""
    lies_on: Annotated[Text | None, such_as("tower")] = None
    """Another part it lies against, at the front. A strip is wrapped round it, unless `across` says where it is. Left
    out: it does not lie on a part."""
    up: Annotated[Places, such_as("[1/3, 2/3]")] = ()
    """How far up that part the middle of each one is: 0 is its foot, 1 its top. Left out: they start at the bottom."""
    across: Annotated[Places, such_as("[0.2, 0.5, 0.8]")] = ()
    """How far across that part the middle of each one is: 0 is its left end, 1 its right. Left out: in the middle, or
    one on each where there are as many of both; several standing in a row are spread evenly."""
    turned: Annotated[Turns, such_as("[-20°, 20°]")] = ()
    """How far each one leans to the right in the assembled drawing, or to the left with a minus. Left out: none
    does."""
    behind: Annotated[int, whole_number(0, 999), such_as("1")] = 0
    """How many of them, the last ones, lie behind that part instead of in front of it."""
    sunk: Annotated[Millimetres | None, such_as("3 mm")] = None
    """How far it goes into the part it stands on, or that part into it. Left out: it stands on its surface."""
    upright: Annotated[YesNo, such_as("yes")] = False
    """Whether a sheet stands on its edge; otherwise it lies flat."""
    coiled: Annotated[int | None, whole_number(0, 9), such_as("2")] = None
    """For a rope, how many turns of it go round the part it lies on, from the foot up, before the rest is coiled flat
    beside that: 0 for none. Several are twisted into one rope. Left out: it is not coiled."""
    laid: Annotated[YesNo, such_as("yes")] = False
    """Whether the whole figure is laid down flat on this part: the assembled drawing then shows it from above."""
    note: Annotated[Text | None, such_as("dried for two days")] = None
    """A short note beside it. Left out: nothing is shown."""

    @property
    def form(self) -> str:
        """Which of the four it is; empty if none or more than one is written."""
        written = [key for key in ("solid", "sheet", "strip", "rope") if getattr(self, key) is not None]
        return written[0] if len(written) == 1 else ""


class Repeat(Written):
    """A mark repeated over a part, or over the top or side of the cake. Marks keep their size on every cake; how many
    you need is worked out.

    With neither `thick` nor `solid` a mark is pressed in; `thick` cuts each from a sheet, `solid` models each.
    """

    repeat: Annotated[Text, such_as("shingle")]
    """What the marks are called."""
    on: Annotated[Text, such_as("hull", "side of the cake")]
    """Where they go: on a part, by its name, or on `top of the cake` or `side of the cake`."""
    mark: Annotated[MarkText, such_as("6 mm", "12 mm x 6 mm")]
    """How big one mark is: how far across, or how wide and how high."""
    gap: Annotated[Millimetres, such_as("6 mm")]
    """How much space there is between one mark and the next."""
    set: Annotated[str, one_of(*SETS), such_as("bricks")] = "staggered"
    """How each row is set against the one below."""
    high: Annotated[Millimetres | None, such_as("40 mm")] = None
    """How high a band they fill. You have to give this for the side of the cake. Left out: they fill the whole part,
    or the whole top."""
    thick: Annotated[Millimetres | None, such_as("1 mm")] = None
    """How thick you roll the sheet you cut them from. Left out: you press them in, or model them."""
    solid: Annotated[SolidText | None, such_as("ball 6 mm")] = None
    """The shape of each one, if you model them. Left out: you press them in, or cut them."""
    paste: Annotated[Text | None, such_as("modelling-paste")] = None
    """What they are made of, if you cut or model them. Left out: you press them in."""
    colour: Annotated[Text | None, such_as("slate")] = None
    """Their colour, by its name in `house/colours.yaml`. Left out: the paste is not coloured."""
    note: Annotated[Text | None, such_as("press with the edge of the ruler")] = None
    """A short note beside them. Left out: nothing is shown."""
