"""A cake in one of its sizes as one self-contained sheet: by mail or on paper, for anyone who bakes or builds it with
you.

It contains the fields of `CakeSheet` and nothing else: its templates are not given the book.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.models import Book
from tinbook.pages.base.page import Desk, cross_contact
from tinbook.pages.cake.jobs import JobGroup, JobLine, cake_mixtures
from tinbook.pages.cake.sheet_drawing import PaperElevation, on_paper
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.used_view import BESIDES, many
from tinbook.pages.cake.view import CakeView
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.phrases import Phrase, phrases
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.sheet import Advice, contains_said
from tinbook.pages.technique.sheet_file import Dress, dressed
from tinbook.plans.base.versions import Amount, Version
from tinbook.plans.base.weighing import Batch, Ingredient
from tinbook.plans.cakes.sizes import CakeSize
from tinbook.plans.cakes.totals import tier_said
from tinbook.plans.cakes.used import by_weight, pastes_used
from tinbook.plans.cakes.whole import whole_cake

WEIGHED = ("Ingredients", "Colours")
"""What stands with what is weighed out, mixture by mixture and paste by paste."""


@dataclass(frozen=True, slots=True)
class TierFigure:
    """A figure of the table, and a word below it."""

    text: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TierOnSheet:
    """A tier: where it stands and how high it is, its tins, what it is baked from, its figures, its portions."""

    place: str
    tins: str
    mixture: str
    cells: tuple[TierFigure, ...]
    portions: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeSheetLine:
    """Something to tick: figure, unit, what it is, a second line, what it must not be taken for."""

    figure: str
    unit: str
    name: str
    note: str
    flag: str


@dataclass(frozen=True, slots=True)
class CakeSheetGroup:
    """Lines of one kind."""

    title: str
    lines: tuple[CakeSheetLine, ...]


@dataclass(frozen=True, slots=True)
class JobDay:
    """A day of an order: `Sat 5 Dec`, and for each task when it begins, how long it takes and what it is."""

    name: str
    tasks: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPart:
    """What an order adds to the sheet of its cake: its handle, when and how it goes out, what it must be free from,
    its days, how long the cake keeps, and what it is cut into."""

    handle: str
    out: str
    free_from: tuple[str, ...]
    notes: tuple[str, ...]
    days: tuple[JobDay, ...]
    keeps: str
    cut: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeSheet:
    """Everything a cake's sheet carries: the list of what may leave the house."""

    slug: str
    house: str
    name: str
    about: tuple[tuple[Phrase, ...], ...]
    size: str
    portion: str
    facts: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]
    drawing: PaperElevation | None
    heads: tuple[TierFigure, ...]
    tiers: tuple[TierOnSheet, ...]
    sums: tuple[TierFigure, ...]
    portions: str
    jobs: tuple[CakeSheetGroup, ...]
    weighings: tuple[CakeSheetGroup, ...]
    things: tuple[CakeSheetGroup, ...]
    making: tuple[CakeSheetGroup, ...]
    take: str
    said: tuple[str, ...]
    tools: tuple[str, ...]
    contains: tuple[Advice, ...]
    unknown: str
    cross_contact: str
    law: str
    hidden: str
    shown: str
    at_work: str
    cautions: tuple[Advice, ...]
    notes: tuple[str, ...]
    address: str
    job: JobPart | None = None

    @property
    def ticked_as(self) -> str:
        """What its ticks are kept under: the cake and its size."""
        return f"orders/{self.job.handle}" if self.job else f"cakes/{self.slug} {self.size}"


def cake_sheet_of(slug: str, size: CakeSize, desk: Desk) -> CakeSheet:
    """The sheet of a cake of the (public) book in a size that it can be made in."""
    view = CakeView(slug=slug, desk=desk)
    design, heights = view.design, view.looked_at.heights
    cake = whole_cake(slug, design, desk.book, desk.facts, tins=size.tins, heights=heights, bakes=desk.bakes)
    names = () if size.steps is not None else (size.key,)
    return sheet_of_made(view, CakeInSize(cake=cake, size=size, names=names, desk=desk))


def sheet_of_made(view: CakeView, made: CakeInSize, job: JobPart | None = None) -> CakeSheet:
    """The sheet of a cake that is worked out in a size; `job`: for an order."""
    slug, desk, design, size, names = view.slug, view.desk, view.design, made.size, made.names
    strip, table, drawing = view.strip, made.table, made.drawing
    named = (f", {names[0]}" if names else "") if size.steps != 0 else ""
    return CakeSheet(
        slug=slug,
        house=desk.book.house.name,
        name=design.name,
        about=phrases(design.about) if design.about else (),
        size=f"{made.tins_said}{named}",
        portion=f"{view.portion_kind} portions of {view.portion}",
        facts=made.facts,
        remarks=made.remarks,
        drawing=on_paper(drawing, made.drawn) if drawing else None,
        heads=tuple(TierFigure(head.name, head.unit) for head in table.heads),
        tiers=tuple(
            TierOnSheet(
                place=", ".join(word for word in (row.place, row.high) if word),
                tins=row.tins,
                mixture=", ".join((row.mixture, *row.notes)),
                cells=tuple(TierFigure(cell.text, cell.note) for cell in row.cells),
                portions=row.portions,
            )
            for row in table.rows
        ),
        sums=tuple(TierFigure(cell.text, cell.note) for cell in table.sums),
        portions=table.portions,
        jobs=tuple(map(_group, made.jobs)),
        weighings=tuple(_weighings(made)),
        things=tuple(_things(made)),
        making=tuple(_making(made)),
        take=made.carried.take if made.carried.boxes else "",
        said=(*made.carried.weight_notes, *made.carried.held_notes, *made.carried.steps),
        tools=view.tools,
        contains=contains_said(strip),
        unknown=formats.sentence(strip.unknown) if strip.unknown else "",
        cross_contact=cross_contact(desk),
        law=view.law,
        hidden=made.not_food.hidden,
        shown=made.not_food.shown,
        at_work=made.not_food.at_work,
        cautions=tuple(Advice(each.title, each.advice) for each in view.cautions),
        notes=design.notes,
        address=f"{desk.book.house.address}/{view.address}/" if desk.book.house.address and not job else "",
        job=job,
    )


def _group(group: JobGroup) -> CakeSheetGroup:
    return CakeSheetGroup(group.title, tuple(map(_line, group.lines)))


def _line(line: JobLine) -> CakeSheetLine:
    return CakeSheetLine(
        figure=line.figure, unit=line.unit, name=formats.title(line.name), note=line.note, flag=line.flag
    )


def _things(made: CakeInSize) -> Iterator[CakeSheetGroup]:
    """What is had ready besides what is weighed out: each thing once, so not what stands with the work already."""
    told = {(line.name, line.note) for group in made.jobs for line in group.lines}
    # the long list last: short ones fill what a page has left
    for group in sorted(made.used, key=lambda group: group.title == BESIDES):
        lines = tuple(line for line in group.lines if (line.name, line.note) not in told)
        if lines and group.title not in WEIGHED:
            yield CakeSheetGroup(group.title, tuple(map(_line, lines)))


def _making(made: CakeInSize) -> Iterator[CakeSheetGroup]:
    """Oven loads, weights, supports and boxes."""
    if made.oven:
        loads = tuple(
            CakeSheetLine(
                figure=load.check,
                unit="min",
                name=f"Load {load.number}: {load.tins}",
                note="; ".join((f"done in {load.span}", *load.mixed)),
                flag="",
            )
            for load in made.oven.loads
        )
        yield CakeSheetGroup(f"Oven loads: {made.oven.heat}" if made.oven.heat else "Oven loads", loads)
    carried = made.carried
    for title, lines in (
        ("What it weighs", carried.weights), ("What holds it up", carried.held), ("Boxes and transport", carried.boxes),
    ):  # fmt: skip
        if lines:
            yield CakeSheetGroup(title, tuple(map(_line, lines)))


def _weighings(made: CakeInSize) -> Iterator[CakeSheetGroup]:
    """What to weigh out for each tier's mixture, each filling and icing, and each paste that is made."""
    cake, facts = made.cake, made.desk.facts
    several = len(cake.every_tier) > 1
    for tier in cake.every_tier:
        if tier.baked:
            where = f", {spell(tier_said(tier, len(cake.tiers)))}" if several else ""
            yield _weighing(f"{tier.baked.batch.mixture.name}{where}", tier.baked.batch, tier.baked.whole, made)
    for total in cake.mixtures:
        if total.batch.slug in cake_mixtures(cake):
            name = f"{total.batch.mixture.name}, {formats.grams(total.made_shown_g)}"
            yield _weighing(name, total.batch, by_weight(total.batch, total.factor, facts), made)
    for batch, mass_g in pastes_used(cake):
        if not batch.bought:
            yield _weighing(batch.mixture.name, batch, by_weight(batch, mass_g / batch.makes_g, facts), made)


def _weighing(title: str, batch: Batch, version: Version, made: CakeInSize) -> CakeSheetGroup:
    lines = zip(batch.ingredients, version.amounts, strict=True)
    return CakeSheetGroup(title, tuple(_weighed(line, amount, made.desk.book) for line, amount in lines))


def _weighed(line: Ingredient, amount: Amount, book: Book) -> CakeSheetLine:
    name = line.name if amount.unit else many(line.name, amount.shown, book)
    return CakeSheetLine(
        figure=formats.figure(amount), unit=amount.unit, name=formats.title(name), note=line.wanted, flag=""
    )


def cake_sheet_page(sheet: CakeSheet, dress: Dress) -> str:
    """The sheet as one self-contained web page."""
    return dressed("sheet/cake.html", sheet, dress)
