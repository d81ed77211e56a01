"""The plans for cutting each size of a shape: a page for each shape, and for each tin that does not fit on it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.at_a_glance.cut_drawings import CutDrawing, drawn, edge_path, steps
from tinbook.pages.base.grids import UNWORKED
from tinbook.pages.base.icons import icon
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.spelling import formats
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import Portion, portion_sizes, room
from tinbook.plans.portions.glance import plans_of, shown_g, usual_grams
from tinbook.tins import SHAPES, Tin

USUAL = "dessert"
"""The kind of portion whose plan is shown first."""
PLAN, MOST = 25, 2300
"""A plan weighs as much as this many numbered pieces, 0.05 kB each; a page holds about so many. The plans of further
tins are on pages of their own."""


def shape_address(shape: str) -> str:
    """The page of a shape's plans."""
    return f"portions/{shape.replace(' ', '-')}"


def tin_anchor(tin: Tin) -> str:
    """A tin's place on that page."""
    return "-".join("".join(sign if sign.isalnum() else " " for sign in tin.name.lower()).split())[:80]


def shape_tins(desk: Desk, shape: str) -> list[tuple[Tin, bool]]:
    """The tins of a shape, and whether the house owns each; its own first."""
    tins = [(tin, owned) for tin, owned in all_outlines(desk.book) if tin.shape == shape]
    return sorted(tins, key=lambda each: not each[1])


def plan_addresses(desk: Desk, shape: str) -> dict[Tin, str]:
    """The page each tin's plans are on: the shape's own, until that is full."""
    sizes, height_mm = portion_sizes(desk.book, desk.facts), _height_mm(desk)
    ways = 2 if shape == "round" else 1
    addresses: dict[Tin, str] = {}
    drawn_there = 0.0
    for tin, _ in shape_tins(desk, shape):
        drawn_there += ways * sum(PLAN + room(tin, portion, height_mm) for portion in sizes.values())
        full = bool(addresses) and drawn_there > MOST
        addresses[tin] = f"{shape_address(shape)}/{tin_anchor(tin)}" if full else shape_address(shape)
    return addresses


def cuts_pages(desk: Desk, shape: str, section: tuple[str, ...]) -> Iterator[Page]:
    """The page of a shape, and those of the tins that do not fit on it."""
    view, title = CutsView(desk, shape), f"Cutting plans: {SHAPES[shape].title.lower()}"
    whole = Page(address=shape_address(shape), title=title, template="cuts", view=view, section=section)
    yield whole
    # tins of one name share a page
    names = {address: tin.name for tin, address in plan_addresses(desk, shape).items() if address != whole.address}
    for place, (address, name) in enumerate(names.items(), 1):
        title = f"Cutting plans: {formats.tin_words(name)}"
        yield replace(whole, address=address, title=title, listed=False, part=place)


def sides(portion: Portion) -> str:
    """`25 × 50 mm`, kept together."""
    short, long = formats.number(portion.short_mm), formats.number(portion.long_mm)
    return f"{short}{formats.NBSP}×{formats.NBSP}{formats.with_unit(long, 'mm')}"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFigure:
    """A plan: how many of what, how to cut it, what a piece weighs, its drawing and its name for a link.

    `kind` is its column in the list, `usual` the plan shown when only its tin is asked for.
    """

    anchor: str
    kind: str
    usual: bool
    count: str
    what: str
    steps: tuple[str, ...]
    weighs: str
    drawing: CutDrawing


@dataclass(frozen=True, slots=True, kw_only=True)
class CutSection:
    """A tin and its plans, made only when the page is."""

    title: str
    anchor: str
    tin: Tin
    owned: bool
    desk: Desk

    @property
    def icon(self) -> Markup:
        """The tin, drawn."""
        return icon(self.tin, self.owned)

    @property
    def name(self) -> str:
        """What the list calls it."""
        return formats.tin_words(self.tin.name)

    @property
    def edge_anchor(self) -> str:
        """The mark of its outline, which its plans share."""
        return f"{self.anchor}-edge"

    @property
    def edge(self) -> str:
        """The outline as a path."""
        return edge_path(self.tin)

    def figures(self) -> Iterator[CutFigure]:
        """The first plan of each kind of portion, then the second of a round."""
        cuts, ring_cuts = plans_of(self.tin, self.desk.book, self.desk.facts)
        for kind, cut in cuts.items():
            yield self._figure(cut, kind, "")
            if kind in ring_cuts:
                yield self._figure(ring_cuts[kind], kind, ring_cuts[kind].way)

    def _figure(self, cut: Cut, kind: str, way: str) -> CutFigure:
        book, facts = self.desk.book, self.desk.facts
        portion = portion_sizes(book, facts)[kind]
        what = f"{kind} {'portion' if cut.count == 1 else 'portions'}{f', in {way}' if way else ''}"
        name = f"{formats.tin_words(self.title)} cut into {cut.count} {what}"
        if cut.way in ("one_each", "none"):
            weighs = ""
        else:
            shown = shown_g(cut.each * usual_grams(portion, book, facts, self.height_mm))
            grams = formats.with_unit(formats.number(shown), "g")
            weighs = f"About {grams} each, creamed sponge {formats.centimetres(self.height_mm)} high."
        anchor = f"{self.anchor}-{kind.replace(' ', '-')}{'-' + way if way else ''}"
        return CutFigure(
            anchor=anchor,
            kind=_column(kind, way),
            usual=kind == USUAL and not way,
            count=str(cut.count),
            what=f"{what}, {sides(portion)}",
            steps=steps(cut),
            weighs=weighs,
            drawing=drawn(cut, name, anchor, self.edge_anchor),
        )

    @property
    def height_mm(self) -> float:
        """The height of the cakes."""
        return _height_mm(self.desk)


@dataclass(frozen=True, slots=True, kw_only=True)
class TinPlans:
    """A tin and its plans, in the order of the list's columns; `first` of those the house does not own.

    `address`: the page they are on; empty if that is the page of the list.
    """

    section: CutSection
    figures: tuple[CutFigure, ...]
    first: bool
    address: str


@dataclass(frozen=True, slots=True)
class CutPart:
    """What one page has: the list of all tins, and the plans of some."""

    tins: tuple[TinPlans, ...]

    @property
    def here(self) -> tuple[TinPlans, ...]:
        """The tins whose plans it has."""
        return tuple(each for each in self.tins if not each.address)


@dataclass(frozen=True)
class CutsView:
    """The pages of one shape: a list of its tins, the house's own first, that opens one plan. `items`: one for each
    page."""

    desk: Desk
    shape: str

    @property
    def unworked(self) -> str:
        """Why its list has no fold."""
        return UNWORKED["cuts"]

    @cached_property
    def items(self) -> tuple[CutPart, ...]:
        """The shape's page, then those of single tins."""
        pages = dict.fromkeys(each.address for each in self.plans)
        pages = dict.fromkeys((shape_address(self.shape), *pages))
        return tuple(
            CutPart(tuple(replace(each, address="" if each.address == page else each.address) for each in self.plans))
            for page in pages
        )

    @cached_property
    def plans(self) -> tuple[TinPlans, ...]:
        """The tins with their plans."""
        tins = shape_tins(self.desk, self.shape)
        addresses = plan_addresses(self.desk, self.shape)
        sections = [
            CutSection(title=_title(tin), anchor=tin_anchor(tin), tin=tin, owned=owned, desk=self.desk)
            for tin, owned in tins
        ]
        lent = next((place for place, section in enumerate(sections) if not section.owned), 0)
        return tuple(
            TinPlans(
                section=section,
                figures=tuple(section.figures()),
                first=place == lent > 0,
                address=addresses[section.tin],
            )
            for place, section in enumerate(sections)
        )

    @property
    def columns(self) -> tuple[str, ...]:
        """The kinds of plan: the same for every tin of a shape."""
        return tuple(formats.title(figure.kind) for figure in self.plans[0].figures)

    @property
    def is_cut(self) -> bool:
        """Whether it is cut at all; one cup is handed to each guest."""
        return not SHAPES[self.shape].in_trays

    @property
    def title(self) -> str:
        """The shape's name."""
        return SHAPES[self.shape].title


def _height_mm(desk: Desk) -> float:
    return finishing(desk.book.finish, desk.facts).heights_mm[0]


def _column(kind: str, way: str) -> str:
    return f"{kind}, in {way}" if way else kind


def _title(tin: Tin) -> str:
    inches = f", {tin.size_label_in}" if tin.size_label_in else ""
    return formats.tin_words(formats.title(tin.name) + inches)
