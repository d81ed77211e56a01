"""Portions at a glance, and the pages of all portions and plans."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.at_a_glance.cuts import cuts_pages, plan_addresses, sides, tin_anchor
from tinbook.pages.at_a_glance.portion_charts import Chart, charts
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, Titled, cells
from tinbook.pages.base.icons import icon
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import SourceLine, WorkedView, source_anchor, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import portion_sizes
from tinbook.plans.portions.glance import Glance, TinPortions, glance
from tinbook.plans.portions.tables import cut_said
from tinbook.tins import SHAPES, Tin

TITLE = "Portions"
INDEX = "portions/index"
AGAINST = Titled("Compared with a published chart", "beside-a-published-chart")
GRAMS = Titled("What a portion weighs", "what-a-portion-weighs")
SAME = Titled("The same weight from a cake of another height", "the-same-weight-from-another-height")
TABLES = (AGAINST, GRAMS, SAME)


@dataclass(frozen=True, slots=True, kw_only=True)
class PortionLine:
    """A tin's row: its name, drawn if the house owns it, page and place there, its counts, and how dessert is cut."""

    name: str
    icon: Markup
    address: str
    anchor: str
    owned: bool
    first: bool
    counts: tuple[Cell, ...]
    way: str


@dataclass(frozen=True, slots=True)
class PortionTable:
    """Rows of tins under one name."""

    label: str
    lines: tuple[PortionLine, ...]


@dataclass(frozen=True)
class PortionsView:
    """Everything the page of portions says."""

    desk: Desk

    @cached_property
    def glance(self) -> Glance:
        """The sums."""
        return glance(self.desk.book, self.desk.facts)

    @property
    def lead(self) -> str:
        """The sizes of portions and the height of cake."""
        book, facts = self.desk.book, self.desk.facts
        sizes = formats.sentence([f"{kind} {sides(portion)}" for kind, portion in portion_sizes(book, facts).items()])
        height_mm = finishing(book.finish, facts).heights_mm[0]
        return f"A portion, seen from above: {sizes}. Cakes {formats.centimetres(height_mm)} high."

    @property
    def own(self) -> PortionTable:
        """The tins of the house; where it has none, every tin."""
        if not self.is_folded:
            return PortionTable("Portions from each tin", tuple(self._lines(self.glance.tins)))
        return PortionTable("Portions from our tins", tuple(self._lines(row for row in self.glance.tins if row.owned)))

    @property
    def others(self) -> PortionTable:
        """The tins it has not."""
        return PortionTable(
            "Portions from all other tins", tuple(self._lines(row for row in self.glance.tins if not row.owned))
        )

    @property
    def is_folded(self) -> bool:
        """Whether the other tins are in a section that opens, as the house has its own."""
        return any(row.owned for row in self.glance.tins)

    def _lines(self, rows: Iterable[TinPortions]) -> Iterator[PortionLine]:
        shape, addresses = "", dict[Tin, str]()
        for row in rows:
            tin = row.tin
            if tin.shape != shape:
                addresses = plan_addresses(self.desk, tin.shape)
            yield PortionLine(
                name=formats.tin_words(tin.name),
                icon=icon(tin) if row.owned else Markup(""),
                address=addresses[tin],
                anchor=tin_anchor(tin),
                owned=row.owned,
                first=tin.shape != shape,
                counts=tuple(Cell(str(cut.count or "none"), kind == "dessert") for kind, cut in row.cuts.items()),
                way=_way(row.cuts["dessert"]),
            )
            shape = tin.shape

    @property
    def charts(self) -> tuple[Chart, ...]:
        """The counts drawn."""
        return charts(self.glance)

    @property
    def chart_source(self) -> SourceLine:
        """Where the points come from."""
        key = "portion chart"
        return SourceLine(source_anchor(key), self.desk.facts.sources[key].title)

    @property
    def tables(self) -> tuple[Titled, ...]:
        """The small tables by name."""
        return TABLES

    @property
    def items(self) -> tuple[Grid, ...]:
        """The small tables."""
        return (self._against, self._grams, self._same)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.glance.worked,), self.desk.facts)

    @property
    def _against(self) -> Grid:
        rows, shape = [], ""
        for size in self.glance.against:
            served = size.served
            title = SHAPES[served.shape].title.lower()
            inches = " × ".join(formats.number(inch) for inch in served.inches)
            counts = (
                Cell(str(served.dessert)), Cell(str(size.dessert), True),
                Cell(formats.signed(size.dessert_off_percent)),
                Cell(str(served.broad)), Cell(str(size.broad), True),
                Cell(formats.signed(size.broad_off_percent)),
            )  # fmt: skip
            head = formats.with_unit(f"{title} {inches}", "in")
            rows.append(GridRow(head=head, cells=counts, first=served.shape != shape))
            shape = served.shape
        heads = (
            Head("Cake"), Head("Dessert", "chart"), Head("Dessert", "ours"), Head("Out by", "%"),
            Head("1½ × 2 in", "chart"), Head("1½ × 2 in", "ours"), Head("Out by", "%"),
        )  # fmt: skip
        formula = "out by = (ours − the chart's) / the chart's; ours by the cutting plan"
        worked = WorkedView((formula,), ("sizes in exact inches; dessert 1 × 2 in",), (self.chart_source,))
        lead = (
            "For squares and rounds, dessert portions agree. The chart's 1½ × 2 in portions from rounds come to "
            "more cake "
            "than there is, up to twice its area. It promises more from hearts than there is room for, and less from "
            "petals."
        )
        return Grid(**AGAINST._asdict(), heads=heads, rows=tuple(rows), worked=worked, lead=lead)

    @property
    def _grams(self) -> Grid:
        heads = [Head("Cake")]
        for kind in self.glance.portions:
            heads += [
                Head(formats.title(kind), f"g, {formats.number(height / 10)} cm") for height in self.glance.heights_mm
            ]
        rows = tuple(
            GridRow(
                head=cake.title,
                cells=cells(*(formats.number(g) for kind in self.glance.portions for g in cake.grams[kind])),
            )
            for cake in self.glance.weights
        )
        lead = "Baked and levelled, from the usual weight, rise and loss of its batter; filling and coats are extra."
        kinds = [kind for kind in self.desk.facts.kinds.values() if kind.rise]
        sources = tuple(dict.fromkeys(figure.source for kind in kinds for figure in kind.ranges))
        lines = tuple(SourceLine(source_anchor(key), self.desk.facts.sources[key].title) for key in sources)
        formula = "area of a portion × height × weight of 1 ml of batter × (1 − loss) / rise"
        worked = WorkedView((formula,), ("to 5 g",), lines)
        return Grid(**GRAMS._asdict(), heads=tuple(heads), rows=rows, worked=worked, lead=lead)

    @property
    def _same(self) -> Grid:
        short_mm = {kind: portion.short_mm for kind, portion in self.glance.portions.items()}
        rows = tuple(
            GridRow(
                head=formats.centimetres(cake.height_mm),
                cells=cells(
                    *(
                        f"{formats.number(short_mm[kind])} × {formats.number(cake.long_shown_mm[kind])}"
                        for kind in short_mm
                    )
                ),
            )
            for cake in self.glance.same
        )
        heads = (Head("Cake", "high"), *(Head(formats.title(kind), "mm") for kind in short_mm))
        lead = "A taller cake is cut into smaller portions: these all weigh the same."
        worked = worked_view((self.glance.same_worked,), self.desk.facts)
        return Grid(**SAME._asdict(), heads=heads, rows=rows, lead=lead, worked=worked)


def _way(cut: Cut) -> str:
    return spell(cut_said(cut)).replace(" x ", " × ")


def portions_pages(desk: Desk) -> Iterator[Page]:
    """The page of all portions, then those of each shape."""
    yield Page(
        address=INDEX,
        title="Portions at a glance",
        template="portions",
        view=PortionsView(desk),
        section=("Tins", TITLE),
    )
    for shape in dict.fromkeys(tin.shape for tin, _ in all_outlines(desk.book)):
        yield from cuts_pages(desk, shape, ("Tins", TITLE, SHAPES[shape].title))
