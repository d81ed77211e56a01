"""A technique as one sheet that goes along by itself: by mail, on paper, to another kitchen.

What goes along is the list of fields of `Sheet`, and nothing else: its templates are handed no book. The same values
make the web page in one file (`sheet_page`) and, as plain data, the PDF that a door of the program sets from
`templates/sheet/sheet.typ`.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass, replace
from typing import Any

from markupsafe import Markup

from tinbook.models import Picture, PictureFile
from tinbook.pages import formats
from tinbook.pages.cake_templates import template_pages
from tinbook.pages.page import Desk
from tinbook.pages.parts import cake_parts, mixed, spoken
from tinbook.pages.phrases import Phrase, phrases
from tinbook.pages.pictures import drawing
from tinbook.pages.render import render
from tinbook.pages.technique import TechniqueView
from tinbook.pages.true_size import PaperPage
from tinbook.plans.papers import PAPERS, Paper
from tinbook.plans.safety import AllergenStrip
from tinbook.plans.technique import Kit, in_measure
from tinbook.tins import Tin

A4_MM = (210.0, 297.0)
LETTERS = "Atkinson Hyperlegible Next"
"""The name the book's letters go by in their file, for what sets drawings from it."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A picture: an element for the page, the bytes of its file under a `name`, what it shows, its caption."""

    name: str
    element: Markup
    content: bytes
    width: float
    height: float
    alt: str
    caption: str


@dataclass(frozen=True, slots=True)
class Row:
    """Something to have ready: how much of it, what, how it is wanted, and whether it is no food."""

    amount: str
    name: str
    wanted: str
    not_food: bool


@dataclass(frozen=True, slots=True)
class Words:
    """A piece of a step; an amount stands out."""

    text: str
    is_amount: bool


@dataclass(frozen=True, slots=True)
class SheetStep:
    """A step: its words, its times, when it is done, how long it may stand or keep, and its picture, or none."""

    number: int
    words: tuple[Words, ...]
    times: tuple[str, ...]
    done: str
    windows: tuple[str, ...]
    pictures: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """A caution or a fault and its cure: what it is, and what to do."""

    title: str
    text: str


@dataclass(frozen=True, slots=True)
class SheetCake:
    """Parts, colours and templates for one cake, what to say of weight; `shown` before another is chosen."""

    cake: str
    shown: bool
    total: str
    heavy: str
    parts: tuple[Told, ...]
    colours: tuple[Told, ...]
    templates: tuple[PaperPage, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """All that goes along: the list of what may leave the house."""

    slug: str
    house: str
    name: str
    purpose: tuple[tuple[Phrase, ...], ...]
    people: str
    leads: tuple[tuple[str, str], ...]
    materials: tuple[Row, ...]
    tools: tuple[Row, ...]
    cakes: tuple[SheetCake, ...]
    contains: tuple[Told, ...]
    unknown: str
    steps: tuple[SheetStep, ...]
    pictures: tuple[Shown, ...]
    checks: tuple[str, ...]
    faults: tuple[Told, ...]
    not_food: str
    taken_away: str
    counted: tuple[str, ...]
    cautions: tuple[Told, ...]
    tips: tuple[str, ...]
    address: str
    code: Markup

    @property
    def chooses(self) -> bool:
        """Whether it goes along with more than one cake."""
        return len(self.cakes) > 1

    @property
    def shown(self) -> SheetCake | None:
        """The cake that shows."""
        return next((each for each in self.cakes if each.shown), None)


@dataclass(frozen=True, slots=True)
class Dress:
    """What a sheet wears: the book's tokens.css, its two fonts as woff2 (for words and for figures)."""

    tokens: str
    words: bytes
    figures: bytes


def sheet_of(slug: str, desk: Desk, people: int = 1, cake: Tin | None = None, paper: str = "A4") -> Sheet:
    """The sheet of a technique of the (public) book, every amount for `people` but of what they share.

    Its parts and their templates are for one `cake`, or for all to choose from if none is named.
    """
    technique, house = desk.book.techniques[slug], desk.book.house
    view = TechniqueView(slug, technique, desk, people, house.measures)
    pictures = {each.file: each for each in technique.pictures if each.file in desk.book.pictures}
    shown = {step.picture for step in technique.steps}
    steps = tuple(
        SheetStep(
            number,
            tuple(_words(step.pieces)),
            tuple(time.words for time in step.times),
            step.done,
            tuple(formats.title(window) + "." for window in step.windows),
            _shown([pictures[file]] if file in pictures else [], desk.book.pictures, f"step-{number}"),
        )
        for number, (step, file) in enumerate(
            zip(view.steps, (written.picture for written in technique.steps), strict=True), 1
        )
    )
    leads = (("For", technique.level or ""), ("Makes", technique.makes or ""), *view.times)
    return Sheet(
        slug=slug,
        house=house.name,
        name=technique.name,
        purpose=phrases(technique.purpose),
        people=f"For {people} people. Every amount is for all of them." if people > 1 else "",
        leads=tuple((name, words) for name, words in leads if words),
        materials=tuple(_materials(view)),
        tools=tuple(
            Row(f"{tool.count} ×" if tool.count > 1 else "", tool.name, "", tool.not_food) for tool in view.kit.tools
        ),
        cakes=tuple(_cakes(view, cake, PAPERS[paper])),
        contains=_contains(view.strip),
        unknown=formats.sentence(view.strip.unknown) if view.strip and view.strip.unknown else "",
        steps=steps,
        pictures=_shown([each for file, each in pictures.items() if file not in shown], desk.book.pictures, "picture"),
        checks=technique.checks,
        faults=tuple(Told(each.fault, each.cure) for each in technique.faults),
        not_food=view.not_food,
        taken_away=view.taken_away,
        counted=tuple(_counted(view.kit)),
        cautions=(
            *(Told("Warning by law", words) for words in (view.parts.warnings if view.parts else ())),
            *(Told("", caution) for caution in technique.cautions),
            *(Told(caution.title, caution.advice) for caution in view.cautions),
        ),
        tips=technique.tips,
        address=view.address,
        code=view.code,
    )


def _cakes(view: TechniqueView, cake: Tin | None, paper: Paper) -> Iterator[SheetCake]:
    for made in view.parts.made_for(cake) if view.parts else ():
        told = cake_parts(made)
        yield SheetCake(
            told.cake, told.shown or cake is not None, told.total, told.heavy,
            tuple(Told(*each) for each in spoken(told.parts)), tuple(Told(*each) for each in mixed(told.colours)),
            template_pages(made, paper, view.desk),
        )  # fmt: skip


def _words(pieces: Iterable[Any]) -> Iterator[Words]:
    for piece in pieces:
        if piece.is_amount:
            yield Words(piece.amount, True)
            yield Words(f" {piece.text}", False)
        else:
            yield Words(piece.text, False)


def _materials(view: TechniqueView) -> Iterator[Row]:
    for row in view.kit.materials:
        share = ("to share",) if row.shared and view.people > 1 else ()
        wanted = "; ".join((*share, *([row.wanted] if row.wanted else [])))
        amount = in_measure(row, 1, view.measure, view.desk.book)
        yield Row(formats.spelled(amount), formats.title(row.name), wanted, row.not_food)


def _contains(strip: AllergenStrip | None) -> tuple[Told, ...]:
    if strip is None:
        return ()
    told = tuple(Told(each.allergen, formats.sentence(each.ingredients)) for each in strip.contains)
    return told or (Told("", "nothing named on the cards of its ingredients"),)


def _counted(kit: Kit) -> Iterator[str]:
    """What is not food, each with its number and where it is, to be ticked off when it is out again."""
    for each in kit.not_food:
        where = f" ({each.wanted})" if each.wanted else ""
        done = "all out and counted" if each.hidden else "taken away"
        yield f"{formats.counted(each.amount, each.name)}{where}: {done}"


def _shown(pictures: Iterable[Picture], files: Mapping[str, PictureFile], name: str) -> tuple[Shown, ...]:
    found = []
    for number, picture in enumerate(pictures, 1):
        file = files[picture.file]
        if file.kind == "drawing":
            ending, content = "svg", file.svg.replace("<svg", f'<svg font-family="{LETTERS}"', 1).encode()
            element = drawing(file, picture.alt)
        else:
            ending, content = "jpg", file.copies[0].content
            element = Markup('<img src="{}" width="{}" height="{}" alt="{}">').format(
                _data("image/jpeg", content), file.copies[0].width, file.copies[0].height, picture.alt
            )
        caption = picture.shows or ""
        found.append(
            Shown(f"{name}-{number}.{ending}", element, content, file.width, file.height, picture.alt, caption)
        )
    return tuple(found)


def sheet_page(sheet: Sheet, dress: Dress) -> str:
    """The sheet as one web page that asks for nothing: styles, script, letters and pictures are all inside.

    Its own policy forbids any request, and any script but the one of the ticks.
    """
    laid = [page for each in sheet.cakes for page in each.templates]
    short, long = sorted((laid[0].width_mm, laid[0].height_mm)) if laid else A4_MM
    style = render(
        "sheet/sheet.css", ink=_ink(dress.tokens), words=_font(dress.words), figures=_font(dress.figures),
        upright=f"{short:g}mm {long:g}mm", sideways=f"{long:g}mm {short:g}mm",
    )  # fmt: skip
    script = render("sheet/sheet.js")
    policy = (
        f"default-src 'none'; style-src '{_sum(style)}'; script-src '{_sum(script)}'; img-src data:; font-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    return render("sheet/sheet.html", sheet=sheet, style=Markup(style), script=Markup(script), policy=policy)


def as_plain(sheet: Sheet) -> dict[str, Any]:
    """The sheet as plain data for the cake that shows, its pictures by the names of their files."""
    bare = tuple(replace(each, templates=()) for each in sheet.cakes if each.shown)
    return _plain(asdict(replace(sheet, cakes=bare)))  # type: ignore[no-any-return]


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items() if key not in ("content", "element", "templates")}
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    return str(value) if isinstance(value, str) else value


def picture_files(sheet: Sheet) -> dict[str, bytes]:
    """The pictures of a sheet by the names of their files."""
    shown = (*(picture for step in sheet.steps for picture in step.pictures), *sheet.pictures)
    return {picture.name: picture.content for picture in shown}


def _ink(tokens: str) -> dict[str, str]:
    """The book's colours and measures by look, taken from its tokens; a token file without them is a fault of ours."""
    looks = {"light": r":root,\s+\[data-md-color-scheme\]", "dark": r'\[data-md-color-scheme="?slate"?\]'}
    found = {}
    for look, selector in looks.items():
        block = re.search(selector + r" \{([^}]*)\}", tokens)
        if block is None:
            raise ValueError(f"the tokens have no {look} look")
        found[look] = " ".join(block[1].split())
    return found


def _font(content: bytes) -> str:
    return _data("font/woff2", content)


def _data(kind: str, content: bytes) -> str:
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"


def _sum(text: str) -> str:
    """The sum of a style or script by which a page's policy knows it: Content Security Policy Level 3, W3C."""
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
