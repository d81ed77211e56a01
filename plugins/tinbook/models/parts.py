"""The parts of a modelled or cut decoration, and marks repeated on a surface, at the size of one cake.

A part is one of: `solid`, `sheet` with how `thick`, `strip` (wide x long) with how `thick`, `rope` (thick x long).
"""

from __future__ import annotations

from typing import Annotated

from tinbook.models.forms import CutterText, MarkText, SheetText, SolidText, TwoLengths
from tinbook.models.house import Grams, Millimetres
from tinbook.models.reading import FACTOR, ONE_OR_MORE, Text, Written, YesNo, one_of, spelled, such_as, whole_number
from tinbook.units import Measures, Misread, read_number

PLACES = ("top", "side", "board")
"""Where a part goes: stands or lies on top, hangs on the side, or lies on the board."""
SURFACES = ("top of the cake", "side of the cake")
"""What a repeat may go on, beside a part by its name."""
SETS = ("staggered", "straight", "bricks")
BEHIND, BELOW = "from behind", "from below"
"""How a support goes in."""


def _share(text: str, _: Measures) -> float:
    share, end = read_number(text, 0, "1/3")
    if text[end:].strip() or not 0.0 <= share <= 1.0:
        raise Misread(f'"{text}" is no share of a height', "write one from 0 to 1, such as 1/3", 0, len(text))
    return share


Shares = Annotated[tuple[Annotated[float, spelled(_share, FACTOR)], ...], ONE_OR_MORE]


class Support(Written):
    """What holds a part and is not food: `length` of it goes into the part, `in the cake` the rest; or
    `rest`, where that stands in another part, named by `rest in`.

    From behind it may reach no further than the part is thick; from below no further than it is high.
    """

    what: Annotated[Text, such_as("bamboo skewer, 3 mm")]
    count: Annotated[int, whole_number(1, 99)] = 1
    length: Annotated[Millimetres, such_as("10 mm")]
    in_the_cake: Annotated[Millimetres | None, such_as("50 mm")] = None
    rest: Annotated[Millimetres | None, such_as("15 mm")] = None
    rest_in: Annotated[Text | None, such_as("rock")] = None
    goes_in: Annotated[str, one_of(BEHIND, BELOW)] = BEHIND

    @property
    def behind(self) -> bool:
        """Whether it goes in from behind."""
        return self.goes_in == "from behind"


class Part(Written):
    """One part, `count` times. `paste` is a mixture by its file's name, or an ingredient; `colour` one of the house.

    `weighed` is what one of them really weighed at the cake it is written for. `cutter` cuts it, at that cake;
    `cutter shared`: one serves a whole class. `stands on` the top of another part, middle over middle, a sheet flat;
    or `lies on` its front, a strip wrapped round it: `up` says how far up that part the middle of each is, and without
    it they begin at its foot.
    """

    part: Annotated[Text, such_as("tower")]
    solid: SolidText | None = None
    sheet: SheetText | None = None
    strip: Annotated[TwoLengths | None, such_as("15 mm x 200 mm")] = None
    rope: TwoLengths | None = None
    thick: Annotated[Millimetres | None, such_as("1 mm")] = None
    count: Annotated[int, whole_number(1, 999)] = 1
    paste: Annotated[Text, such_as("modelling-paste")]
    colour: Annotated[Text | None, such_as("lamp red")] = None
    weighed: Annotated[Grams | None, such_as("14 g")] = None
    cutter: CutterText | None = None
    cutter_shared: YesNo = False
    support: Annotated[Support | None, such_as("{what: cocktail stick, count: 2, length: 10 mm}")] = None
    on: Annotated[str, one_of(*PLACES)] = "top"
    stands_on: Annotated[Text | None, such_as("rock")] = None
    lies_on: Annotated[Text | None, such_as("tower")] = None
    up: Annotated[Shares, such_as("[1/3, 2/3]")] = ()
    note: Text | None = None

    @property
    def form(self) -> str:
        """Which of the four it is; empty where none or several are written."""
        written = [key for key in ("solid", "sheet", "strip", "rope") if getattr(self, key) is not None]
        return written[0] if len(written) == 1 else ""


class Repeat(Written):
    """A mark repeated with a gap on a part, or on the cake's top or side (a band so `high`).

    Marks keep their size on every cake; their number follows. Nothing but a mark is pressed in; with `thick` each is
    cut of a sheet and laid on, with `solid` each is modelled.
    """

    repeat: Annotated[Text, such_as("shingle")]
    on: Annotated[Text, such_as("hull")]
    mark: MarkText
    gap: Annotated[Millimetres, such_as("6 mm")]
    set: Annotated[str, one_of(*SETS)] = "staggered"
    high: Annotated[Millimetres | None, such_as("40 mm")] = None
    thick: Annotated[Millimetres | None, such_as("1 mm")] = None
    solid: SolidText | None = None
    paste: Annotated[Text | None, such_as("modelling-paste")] = None
    colour: Annotated[Text | None, such_as("slate")] = None
    note: Text | None = None
