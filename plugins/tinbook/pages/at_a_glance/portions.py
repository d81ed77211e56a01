"""Portions at a glance, and for each shape the plans to cut its sizes by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.at_a_glance.cut_drawings import CutDrawing, drawn, steps
from tinbook.pages.at_a_glance.portion_charts import Chart, charts
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, Titled, cells
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import SourceLine, WorkedView, source_anchor, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import KINDS, Portion, portion_sizes
from tinbook.plans.portions.glance import Glance, glance, plans_of, shown_g, usual_grams
from tinbook.plans.portions.tables import cut_words
from tinbook.tins import SHAPES, Tin

TITLE = "Portions"
INDEX = "portions/index"
AGAINST = Titled("Beside a published chart", "beside-a-published-chart")
GRAMS = Titled("What a portion weighs", "what-a-portion-weighs")
SAME = Titled("The same weight from another height", "the-same-weight-from-another-height")
TABLES = (AGAINST, GRAMS, SAME)


def shape_address(shape: str) -> str:
    """The page of a shape's plans."""
    return f"portions/{shape.replace(' ', '-')}"


def tin_anchor(tin: Tin) -> str:
    """A tin's place on that page."""
    return "-".join("".join(sign if sign.isalnum() else " " for sign in tin.name.lower()).split())[:80]


@dataclass(frozen=True, slots=True, kw_only=True)
class PortionLine:
    """A tin's row: its name, page and place there, its counts, and how dessert portions are cut."""

    name: str
    address: str
    anchor: str
    owned: bool
    first: bool
    finger: str
    dessert: str
    party: str
    in_rings: str
    way: str


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
        told = formats.sentence([f"{kind} {_sides(each)}" for kind, each in portion_sizes(book, facts).items()])
        height_mm = finishing(book.finish, facts).heights_mm[0]
        return f"A portion, seen from above: {told}. Cakes {formats.centimetres(height_mm)} high."

    @property
    def lines(self) -> tuple[PortionLine, ...]:
        """A row each tin."""
        found, shape = [], ""
        for each in self.glance.tins:
            finger, dessert, party = (str(each.cuts[kind].count or "none") for kind in KINDS)
            second = each.ring_cuts.get("dessert")
            rings, way = str(second.count) if second else "none", _way(each.cuts["dessert"])
            address, anchor = shape_address(each.tin.shape), tin_anchor(each.tin)
            name, first = formats.tin_words(each.tin.name), each.tin.shape != shape
            line = PortionLine(
                name=name,
                address=address,
                anchor=anchor,
                owned=each.owned,
                first=first,
                finger=finger,
                dessert=dessert,
                party=party,
                in_rings=rings,
                way=way,
            )
            found.append(line)
            shape = each.tin.shape
        return tuple(found)

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
        for each in self.glance.against:
            served = each.served
            title = SHAPES[served.shape].title.lower()
            size = " × ".join(formats.number(inches) for inches in served.inches)
            off = formats.signed(each.dessert_off_percent), formats.signed(each.party_off_percent)
            told = (
                Cell(str(served.dessert)), Cell(str(each.dessert), True), Cell(off[0]),
                Cell(str(served.party)), Cell(str(each.party), True), Cell(off[1]),
            )  # fmt: skip
            head = formats.with_unit(f"{title} {size}", "in")
            rows.append(GridRow(head=head, cells=told, first=served.shape != shape))
            shape = served.shape
        heads = (
            Head("Cake"), Head("Dessert", "chart"), Head("Dessert", "ours"), Head("Off", "%"),
            Head("Party", "chart"), Head("Party", "ours"), Head("Off", "%"),
        )  # fmt: skip
        worked = WorkedView((), ("sizes in exact inches; dessert 1 × 2 in, party 1½ × 2 in",), (self.chart_source,))
        lead = (
            "Dessert portions of squares and rounds agree. The chart's party portions of rounds come to more cake than "
            "there is: up to twice its area. Its hearts promise more than their area holds, its petals less."
        )
        return Grid(**AGAINST._asdict(), heads=heads, rows=tuple(rows), worked=worked, lead=lead)

    @property
    def _grams(self) -> Grid:
        made = self.glance
        heads = [Head("Cake")]
        for kind in KINDS:
            heads += [Head(formats.title(kind), f"g, {formats.number(height / 10)} cm") for height in made.heights_mm]
        rows = tuple(
            GridRow(head=each.title, cells=cells(*(formats.number(g) for kind in KINDS for g in each.grams[kind])))
            for each in made.weights
        )
        lead = "Baked and levelled, by the usual weight, rise and loss of its batter; filling and coats come on top."
        kinds = [kind for kind in self.desk.facts.kinds.values() if kind.rise]
        sources = tuple(dict.fromkeys(one.source for kind in kinds for one in kind.ranges))
        lines = tuple(SourceLine(source_anchor(key), self.desk.facts.sources[key].title) for key in sources)
        formula = "area of a portion × height × weight of 1 ml of batter × (1 − loss) / rise"
        worked = WorkedView((formula,), ("to 5 g",), lines)
        return Grid(**GRAMS._asdict(), heads=tuple(heads), rows=rows, worked=worked, lead=lead)

    @property
    def _same(self) -> Grid:
        made = self.glance
        rows = tuple(
            GridRow(
                head=formats.centimetres(each.height_mm),
                cells=cells(
                    *(
                        f"{formats.number(made.portions[kind].short_mm)} × {formats.number(each.long_shown_mm[kind])}"
                        for kind in KINDS
                    )
                ),
            )
            for each in made.same
        )
        heads = (Head("Cake", "high"), *(Head(formats.title(kind), "mm") for kind in KINDS))
        lead = "A taller cake is cut smaller: what these weigh is the same."
        return Grid(**SAME._asdict(), heads=heads, rows=rows, lead=lead)


def _sides(portion: Portion) -> str:
    short, long = formats.number(portion.short_mm), formats.number(portion.long_mm)
    return f"{short}{formats.NBSP}×{formats.NBSP}{formats.with_unit(long, 'mm')}"


def _way(cut: Cut) -> str:
    return cut_words(cut).replace(" x ", " × ")


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFigure:
    """A plan: how many of what, how it is cut, what a piece weighs, its drawing and its name for a link."""

    anchor: str
    count: str
    what: str
    steps: tuple[str, ...]
    weighs: str
    drawing: CutDrawing


@dataclass(frozen=True, slots=True)
class CutSection:
    """A tin and its plans, made when the page is."""

    title: str
    anchor: str
    tin: Tin
    desk: Desk

    @property
    def figures(self) -> Iterator[CutFigure]:
        """The first plan of each kind of portion, then the second of a round."""
        cuts, ring_cuts = plans_of(self.tin, self.desk.book, self.desk.facts)
        for kind in KINDS:
            yield self._figure(cuts[kind], kind, "")
            if kind in ring_cuts:
                yield self._figure(ring_cuts[kind], kind, ring_cuts[kind].way)

    def _figure(self, cut: Cut, kind: str, way: str) -> CutFigure:
        book, facts = self.desk.book, self.desk.facts
        portion = portion_sizes(book, facts)[kind]
        height = self.height_mm
        what = f"{kind} {'portion' if cut.count == 1 else 'portions'}{f', in {way}' if way else ''}"
        name = f"{formats.tin_words(self.title)} cut into {cut.count} {what}"
        if cut.way in ("one each", "none"):
            weighs = ""
        else:
            shown = shown_g(cut.each * usual_grams(portion, book, facts, height))
            grams = formats.with_unit(formats.number(shown), "g")
            weighs = f"About {grams} each, creamed sponge {formats.centimetres(height)} high."
        anchor = f"{self.anchor}-{kind}{'-' + way if way else ''}"
        return CutFigure(
            anchor=anchor,
            count=str(cut.count),
            what=f"{what}, {_sides(portion)}",
            steps=steps(cut),
            weighs=weighs,
            drawing=drawn(cut, name, anchor),
        )

    @property
    def height_mm(self) -> float:
        """How high cakes are."""
        return finishing(self.desk.book.finish, self.desk.facts).heights_mm[0]


@dataclass(frozen=True)
class CutsView:
    """The page of one shape."""

    desk: Desk
    shape: str

    @cached_property
    def items(self) -> tuple[CutSection, ...]:
        """A section each size."""
        return tuple(
            CutSection(_title(tin), tin_anchor(tin), tin, self.desk)
            for tin, _ in all_outlines(self.desk.book)
            if tin.shape == self.shape
        )

    @property
    def title(self) -> str:
        """The shape's name."""
        return SHAPES[self.shape].title


def _title(tin: Tin) -> str:
    inches = f", {tin.size_label_in}" if tin.size_label_in else ""
    return formats.tin_words(formats.title(tin.name) + inches)


def portions_pages(desk: Desk) -> Iterator[Page]:
    """The page of all portions, then one for each shape."""
    yield Page(
        address=INDEX,
        title="Portions at a glance",
        template="portions",
        view=PortionsView(desk),
        section=("Tins", TITLE),
    )
    for shape in dict.fromkeys(tin.shape for tin, _ in all_outlines(desk.book)):
        title = SHAPES[shape].title
        yield Page(
            address=shape_address(shape),
            title=f"Cutting plans: {title.lower()}",
            template="cuts",
            view=CutsView(desk, shape),
            section=("Tins", TITLE, title),
        )
