"""A technique as one self-contained sheet, to send by mail or on paper to another kitchen.

It contains the fields of `TechniqueSheet` and nothing else: its templates are not given the book. The same
values make the web page in one file and, as plain data, the PDF (`sheet_file`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from tinbook.pages.base.page import Desk
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.phrases import Phrase, phrases
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.assembled_drawing import SCALES, assembled_drawn
from tinbook.pages.technique.cake_templates import template_pages
from tinbook.pages.technique.colour_lines import mixed
from tinbook.pages.technique.paper import PaperPage
from tinbook.pages.technique.part_drawings import parts_drawn
from tinbook.pages.technique.parts import PartsTable, cake_parts
from tinbook.pages.technique.sheet_pictures import Shown, lettered_svg, shown_pictures
from tinbook.pages.technique.view import TechniqueView
from tinbook.plans.mixtures.safety import AllergenStrip
from tinbook.plans.techniques.kit import Kit, in_measure
from tinbook.plans.techniques.parts import Decoration
from tinbook.plans.true_size.papers import PAPERS, Paper
from tinbook.tins import Tin

APART_MM = 85.5
"""How wide parts side by side are on paper: their letters are 10 pt then."""
BESIDE_MM = 95.0
"""What leaves room for a table beside it on A4."""
WIDEST_MM = 122.0
"""What leaves room for the steps beside it on A4."""


@dataclass(frozen=True, slots=True)
class ReadyLine:
    """Something to have ready: how much of it, what, how it is wanted, and whether it is not food."""

    amount: str
    name: str
    wanted: str
    not_food: bool


@dataclass(frozen=True, slots=True)
class StepWords:
    """A piece of a step; an amount stands out, and so does the letter of a part."""

    text: str
    is_amount: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStep:
    """A step: its words, its times, when it is done, how long it may stand or keep, and its picture, or none."""

    number: int
    words: tuple[StepWords, ...]
    times: tuple[str, ...]
    done: str
    windows: tuple[str, ...]
    pictures: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class Advice:
    """A caution or a fault and its cure: what it is, and what to do."""

    title: str
    text: str


@dataclass(frozen=True, slots=True)
class SheetDrawing:
    """A drawing as SVG, how wide it is on paper, its scale in words (empty if a bar shows it), and what it shows."""

    svg: Markup
    wide_mm: float
    scale: str
    title: str

    @property
    def across(self) -> bool:
        """Whether it is too wide to stand beside a table on paper."""
        return self.wide_mm > BESIDE_MM


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetCake:
    """Parts, colours and templates for one cake, what to say about weight; `shown` before another is chosen. `drawings`
    are one drawing at some scales, the largest first."""

    cake: str
    shown: bool
    total: str
    ready: tuple[str, ...]
    heavy: str
    high: str
    drawings: tuple[SheetDrawing, ...]
    table: PartsTable
    colours: tuple[Advice, ...]
    templates: tuple[PaperPage, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TechniqueSheet:
    """Everything a sheet carries: the list of what may leave the house."""

    slug: str
    house: str
    name: str
    purpose: tuple[tuple[Phrase, ...], ...]
    people: str
    leads: tuple[tuple[str, str], ...]
    times: tuple[tuple[str, str], ...]
    windows: tuple[str, ...]
    materials: tuple[ReadyLine, ...]
    tools: tuple[ReadyLine, ...]
    cakes: tuple[SheetCake, ...]
    contains: tuple[Advice, ...]
    unknown: str
    made_with: str
    cross_contact: str
    steps: tuple[SheetStep, ...]
    pictures: tuple[Shown, ...]
    checks: tuple[str, ...]
    faults: tuple[Advice, ...]
    not_food: str
    taken_away: str
    counted: tuple[str, ...]
    cautions: tuple[Advice, ...]
    tips: tuple[str, ...]
    address: str
    code: Markup

    @property
    def chooses(self) -> bool:
        """Whether it carries more than one cake."""
        return len(self.cakes) > 1

    @property
    def shown(self) -> SheetCake | None:
        """The cake shown."""
        return next((cake for cake in self.cakes if cake.shown), None)


def sheet_of(slug: str, desk: Desk, people: int = 1, cake: Tin | None = None, paper: str = "A4") -> TechniqueSheet:
    """The sheet of a technique of the (public) book, every amount for `people`, except what they share.

    Its parts and their templates are for one `cake`, or for all to choose from if none is named.
    """
    technique, house = desk.book.techniques[slug], desk.book.house
    view = TechniqueView(slug=slug, technique=technique, desk=desk, people=people, measure=house.measures)
    pictures = {picture.file: picture for picture in technique.pictures if picture.file in desk.book.pictures}
    shown = {step.picture for step in technique.steps}
    steps = tuple(
        SheetStep(
            number=number,
            words=tuple(_words(step.pieces)),
            times=tuple(time.words for time in step.times),
            done=step.done,
            windows=tuple(formats.title(window) + "." for window in step.windows),
            pictures=shown_pictures([pictures[file]] if file in pictures else [], desk.book.pictures, f"step-{number}"),
        )
        for number, (step, file) in enumerate(
            zip(view.steps, (written.picture for written in technique.steps), strict=True), 1
        )
    )
    leads = (("Level:", technique.level or ""), ("Makes", technique.makes or ""))
    return TechniqueSheet(
        slug=slug,
        house=house.name,
        name=technique.name,
        purpose=phrases(technique.purpose),
        people=f"For {people} people. Every amount is for the whole group." if people > 1 else "",
        leads=tuple((name, words) for name, words in leads if words),
        times=view.times,
        windows=view.windows,
        materials=tuple(_materials(view)),
        tools=tuple(
            ReadyLine(f"{tool.count} ×" if tool.count > 1 else "", tool.name, "", tool.not_food)
            for tool in view.kit.tools
        ),
        cakes=tuple(_cakes(view, cake, PAPERS[paper])),
        contains=contains_said(view.strip),
        unknown=formats.sentence(view.strip.unknown) if view.strip and view.strip.unknown else "",
        made_with=_made_with(view.strip),
        cross_contact=view.cross_contact if view.strip else "",
        steps=steps,
        pictures=shown_pictures(
            [picture for file, picture in pictures.items() if file not in shown], desk.book.pictures, "picture"
        ),
        checks=technique.checks,
        faults=tuple(Advice(fault.fault, fault.cure) for fault in technique.faults),
        not_food=view.not_food,
        taken_away=view.taken_away,
        counted=tuple(_counted(view.kit)),
        cautions=(
            *(Advice("Statutory warning", words) for words in (view.parts.warnings if view.parts else ())),
            *(Advice(name, caution) for name, caution in view.said),
            *(Advice(caution.title, caution.advice) for caution in view.cautions),
        ),
        tips=technique.tips,
        address=view.address,
        code=view.code,
    )


def _cakes(view: TechniqueView, cake: Tin | None, paper: Paper) -> Iterator[SheetCake]:
    if view.parts is None:
        return
    for nth, sums in enumerate(view.parts.made_for(cake)):
        spelled = cake_parts(sums, view.parts.all, view.parts.ready(sums))
        put = assembled_drawn(sums)
        yield SheetCake(
            cake=spelled.cake,
            shown=spelled.shown or cake is not None,
            total=spelled.total,
            ready=tuple(f"Have {each.total} g of {each.paste} ready: some sticks to hands." for each in spelled.ready),
            heavy=spelled.heavy,
            high=put.high if put else "",
            drawings=tuple(_drawings(sums, f"tb-put-{nth}")),
            table=spelled.table,
            colours=tuple(Advice(*colour) for colour in mixed(spelled.colours, (each.paste for each in spelled.ready))),
            templates=template_pages(sums, paper, view.desk),
        )


def _drawings(sums: Decoration, name: str) -> Iterator[SheetDrawing]:
    """The parts put together at each scale, or side by side if they do not say how."""
    drawn = [(assembled_drawn(sums, scale, f"{name}-{nth}"), words) for nth, (scale, words) in enumerate(SCALES)]
    put = [SheetDrawing(each.svg, each.wide_mm, words, each.title) for each, words in drawn if each]
    yield from [each for each in put if each.wide_mm <= WIDEST_MM] or put[-1:]
    apart = None if put else parts_drawn(sums)
    if apart:
        yield SheetDrawing(Markup(lettered_svg(str(apart.svg))), APART_MM, "", apart.title)


def _words(pieces: Iterable[Any]) -> Iterator[StepWords]:
    for piece in pieces:
        if piece.is_amount:
            yield StepWords(piece.amount, True)
            yield StepWords(f" {piece.text}", False)
        else:
            yield StepWords(piece.text, piece.letter)


def _materials(view: TechniqueView) -> Iterator[ReadyLine]:
    for row in view.kit.materials:
        share = ("to share",) if row.shared and view.people > 1 else ()
        wanted = "; ".join((*share, *([words] if (words := view.wanted(row)) else [])))
        amount = in_measure(row, 1, view.measure, view.desk.book)
        yield ReadyLine(formats.spelled(amount), formats.title(row.name), wanted, row.not_food)


def contains_said(strip: AllergenStrip | None) -> tuple[Advice, ...]:
    """What something contains, each allergen with the ingredients it comes from; nothing where that is not known."""
    if strip is None or not strip.known:
        return ()
    named = tuple(Advice(allergen.allergen, formats.sentence(allergen.ingredients)) for allergen in strip.contains)
    # where something is unknown, what follows says that this is no promise
    no_promise = "" if strip.unknown else ", but that does not make the ingredients “free from”: check the packets"
    return named or (Advice("", f"None of the fourteen allergens is listed{no_promise}"),)


def _made_with(strip: AllergenStrip | None) -> str:
    """What it may be made with, and what that holds."""
    return "; ".join(f"{name}: {formats.sentence(words)}" for name, words in (strip.made_with if strip else ()))


def _counted(kit: Kit) -> Iterator[str]:
    """What is not food, each with its number and place, to be ticked off once it is out again."""
    for thing in kit.not_food:
        where = f" ({spell(thing.wanted)})" if thing.wanted else ""
        done = "all out and counted" if thing.hidden else "removed"
        yield f"{formats.counted(thing.amount, thing.name)}{where}: {done}"
