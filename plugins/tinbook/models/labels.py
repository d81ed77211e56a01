"""What the house puts on its labels: house/labels.yaml."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from tinbook.models.house import Millimetres
from tinbook.models.reading import Private, Text, Written, YesNo, one_of, such_as, whole_number

ENGLAND, WALES, SCOTLAND, NORTHERN_IRELAND = "England", "Wales", "Scotland", "Northern Ireland"
EU, USA = "the EU", "the USA"
GREAT_BRITAIN = (ENGLAND, WALES, SCOTLAND)
NATIONS = (*GREAT_BRITAIN, NORTHERN_IRELAND, EU, USA)
PACKED_HERE, PREPACKED, TO_ORDER, LOOSE, DISTANCE = (
    "packed here", "packed for others to sell", "made to order", "loose", "at a distance",
)  # fmt: skip
SALES = (PACKED_HERE, PREPACKED, TO_ORDER, LOOSE, DISTANCE)
MERGED, BRACKETS = "merged", "in brackets"


class LabelSheet(Written):
    """A sheet of labels, by its measures. Measure yours with a ruler: the first label's edges, and from one label's
    edge to the same edge of the next."""

    columns: Annotated[int, whole_number(1, 20), such_as("2")]
    """How many labels there are side by side."""
    rows: Annotated[int, whole_number(1, 50), such_as("4")]
    """How many there are one above the other."""
    wide: Annotated[Millimetres, such_as("99 mm")]
    """How wide one label is."""
    high: Annotated[Millimetres, such_as("68 mm")]
    """How high one label is."""
    left: Annotated[Millimetres, such_as("5 mm")]
    """From the left edge of the sheet to the first label."""
    top: Annotated[Millimetres, such_as("13 mm")]
    """From the top edge of the sheet to the first label."""
    across: Annotated[Millimetres | None, such_as("101 mm")] = None
    """From the left edge of one label to the left edge of the next. Left out: they touch."""
    down: Annotated[Millimetres | None, such_as("68 mm")] = None
    """From the top edge of one label to the top edge of the next. Left out: they touch."""
    letter_paper: Annotated[YesNo, such_as("yes")] = False
    """Whether the sheet is US Letter, not A4."""

    @property
    def across_mm(self) -> float:
        """From one label to the next."""
        return self.across or self.wide

    @property
    def down_mm(self) -> float:
        """From one row to the next."""
        return self.down or self.high

    @property
    def paper_mm(self) -> tuple[float, float]:
        """The sheet's width and height."""
        return (215.9, 279.4) if self.letter_paper else (210.0, 297.0)

    @property
    def count(self) -> int:
        """How many labels are on it."""
        return self.columns * self.rows


class Labelling(Written):
    """How your cakes are sold, and what goes on their labels. The book says which rule each line follows, but your
    local authority has the last word."""

    sold_in: Annotated[str | None, one_of(*NATIONS), such_as("England", "Northern Ireland", "the USA")] = None
    """Where you sell: the rules differ. Left out: the book tells you the allergens, and prints no label."""
    sold: Annotated[str, one_of(*SALES), such_as("packed here", "loose")] = TO_ORDER
    """How you sell. `packed here`: you wrap it where you sell it, before anyone has chosen it. `packed for others to
    sell`: it goes to a shop. `at a distance`: by telephone or online."""
    maker: Annotated[Text | None, such_as('"Harbour kitchen, 1 Slip Lane"')] = None
    """The name and address that go on a label. No page shows them. Left out: labels that must have them are not
    printed."""
    own_mixtures: Annotated[str, one_of(MERGED, BRACKETS), such_as("in brackets")] = MERGED
    """Whether what is in your own sponges and fillings goes into one list, `merged`, or each has a list of its own, `in
    brackets`. The law allows either."""
    sheets: Annotated[
        Mapping[str, LabelSheet],
        such_as("{big: {columns: 2, rows: 4, wide: 99 mm, high: 68 mm, left: 5 mm, top: 13 mm, across: 101 mm}}"),
    ] = {}
    """The sheets of labels you have, each under a name of your own. Left out: labels are printed on plain paper, to cut
    out."""
    strip: Annotated[Millimetres | None, such_as("62 mm")] = None
    """How wide the roll in your label printer is. Left out: you have none."""
    private: Annotated[Private, such_as("[maker]")] = False
    """What to leave out of a public site."""


NOTHING_SAID = Labelling()
"""A house that has not said how it sells."""
