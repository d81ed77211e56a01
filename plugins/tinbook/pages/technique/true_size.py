"""Templates on paper at true size: every line and word of each page, in mm from its top left corner.

The same pages make the SVG files and, as plain data, the PDF that a door of the program sets from
`templates/sheet/template.typ`. Lines as LOOK.md has them for paper; nothing is smaller than 9 pt.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, replace
from functools import cached_property
from itertools import groupby
from typing import Any, Literal

from markupsafe import Markup

from tinbook.pages.base.render import render
from tinbook.plans.true_size.drawn import KINDS, Point, Template
from tinbook.plans.true_size.papers import Paper, SheetTile, on_its_side, on_paper

PT_MM = 25.4 / 72.0
SIDE_MM, ABOVE_MM = 14.0, 10.0
NAME_PT, STRONG_PT, TEXT_PT = 15.0, 11.0, 9.5
LINE_MM = 4.4
FOOT_MM = 30.0
TEXT_WIDE_MM = 1.72
"""A letter of the text is about that wide, on the safe side."""
DIAMOND_MM = 3.0
BESIDE = ((0, -1, True, False), (0, 1, False, False), (-1, 0, True, True), (1, 0, False, True))
"""A tile's neighbours: rows and columns away, whether before it, whether the joint runs across the paper."""
BARS = ((100.0, "100 mm"), (4 * 25.4, "4 in"))
LINES: dict[str, tuple[float, tuple[float, ...]]] = {
    "cut": (0.45, ()),
    "inner": (0.25, ()),
    "fold": (0.3, (4.0, 1.2, 0.4, 1.2)),
    "centre": (0.25, (9.0, 2.0)),
    "hidden": (0.35, (2.0, 1.6)),
    "leader": (0.18, ()),
    "joint": (0.25, (0.8, 1.0)),
    "bar": (0.45, ()),
    "rule": (0.35, ()),
}
"""How thick each line is, and its dashes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLine:
    """A line of a page; `closed` where it ends where it began."""

    points: tuple[Point, ...]
    kind: str
    width: float
    dash: tuple[float, ...]
    closed: bool

    @property
    def path(self) -> str:
        """As SVG spells it, to the hundredth of a mm."""
        inner = self.points[:-1] if self.closed else self.points
        return "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in inner) + ("Z" if self.closed else "")


@dataclass(frozen=True, slots=True, kw_only=True)
class PageWords:
    """Words of a page on a baseline; `anchor`: which end of them stands at (x, y), `turned`: they run upwards."""

    x: float
    y: float
    text: str
    size_pt: float = TEXT_PT
    figures: bool = False
    anchor: Literal["start", "middle", "end"] = "start"
    turned: bool = False

    @property
    def size_mm(self) -> float:
        """How large, for SVG."""
        return round(self.size_pt * PT_MM, 4)

    @property
    def turn(self) -> str:
        """As SVG spells it; empty for words that lie flat."""
        return f"rotate(-90 {self.x:.3f} {self.y:.3f})" if self.turned else ""


@dataclass(frozen=True, kw_only=True)
class PaperPage:
    """One sheet of paper."""

    key: str
    title: str
    width_mm: float
    height_mm: float
    lines: tuple[PageLine, ...]
    words: tuple[PageWords, ...]

    @property
    def wide(self) -> bool:
        """Whether it lies on its side."""
        return self.width_mm > self.height_mm

    @cached_property
    def paths(self) -> Markup:
        """Its lines as SVG spells them, those of one kind that follow each other in a group."""
        found = []
        for (kind, width, dash), lines in groupby(self.lines, lambda line: (line.kind, line.width, line.dash)):
            dashes = f' stroke-dasharray="{" ".join(f"{each:g}" for each in dash)}"' if dash else ""
            paths = "".join(f'<path d="{line.path}"/>' for line in lines)
            found.append(f'<g class="{kind}" stroke-width="{width}"{dashes}>{paths}</g>')
        return Markup("\n".join(found))

    @property
    def svg(self) -> Markup:
        """The page as a drawing that measures what the paper measures."""
        return Markup(render("sheet/template.svg", page=self).strip())

    @property
    def lined(self) -> str:
        """The same without its words, for what sets those by itself."""
        return render("sheet/lines.svg", page=self).strip()


def paper_pages(templates: Sequence[Template], paper: Paper, overlap_mm: float, house: str) -> tuple[PaperPage, ...]:
    """All pages of some templates; each says which of all it is."""
    laid = [(template, *_laid(template, paper, overlap_mm)) for template in templates]
    total, number, pages = sum(len(tiles) for *_, tiles in laid), 0, []
    for template, page, top, tiles in laid:
        for tile in tiles:
            number += 1
            lines = list(_drawn(template, tile, (SIDE_MM, top)))
            words = list(_told(template, tile, (SIDE_MM, top)))
            for joint_lines, joint_words in _joints(tile, tiles, (SIDE_MM, top), overlap_mm):
                lines += joint_lines
                words += joint_words
            for some_lines, some_words in (_head(template, page, tile, tiles), _foot(page, number, total, house)):
                lines += some_lines
                words += some_words
            which = "" if len(tiles) == 1 else f"-{tile.name.lower()}"
            title = f"{template.name}, for {template.cake.name}" + (f", {tile.name}" if which else "")
            pages.append(
                PaperPage(
                    key=f"{template.key}{which}",
                    title=title,
                    width_mm=page.width_mm,
                    height_mm=page.height_mm,
                    lines=tuple(lines),
                    words=tuple(words),
                )
            )
    return tuple(pages)


def _laid(template: Template, paper: Paper, overlap_mm: float) -> tuple[Paper, float, tuple[SheetTile, ...]]:
    """The paper upright or on its side, whichever takes fewer sheets; where its window begins; the tiles."""
    tried = []
    for page in (paper, on_its_side(paper)):
        top = ABOVE_MM + 17.0 + LINE_MM * len(_notes(template, page))
        window = (page.width_mm - 2.0 * SIDE_MM, page.height_mm - FOOT_MM - top)
        tried.append((page, top, on_paper(template, window, overlap_mm)))
    return min(tried, key=lambda each: len(each[2]))


def _notes(template: Template, page: Paper) -> list[str]:
    signs = int((page.width_mm - 2.0 * SIDE_MM) / TEXT_WIDE_MM)
    return [line for note in template.notes for line in textwrap.wrap(note, signs)]


def _line(kind: str, *points: Point) -> PageLine:
    width, dash = LINES[kind]
    return PageLine(
        points=points, kind=kind, width=width, dash=dash, closed=len(points) > 2 and points[0] == points[-1]
    )


def _drawn(template: Template, tile: SheetTile, at: Point) -> Iterator[PageLine]:
    for stroke in template.strokes:
        for piece in tile.clipped(stroke.points):
            yield _line(stroke.kind, *((x - tile.left + at[0], y - tile.top + at[1]) for x, y in piece))


def _told(template: Template, tile: SheetTile, at: Point) -> Iterator[PageWords]:
    for label in template.labels:
        x, y = label.at
        if tile.left <= x <= tile.right and tile.top <= y <= tile.bottom:
            size = STRONG_PT if label.strong else TEXT_PT
            # a middle, told as a baseline
            down = size * PT_MM * 0.35
            yield PageWords(
                x=x - tile.left + at[0],
                y=y - tile.top + at[1] + down,
                text=label.text,
                size_pt=size,
                figures=label.strong,
                anchor="middle",
            )


def _head(
    template: Template, page: Paper, tile: SheetTile, tiles: Sequence[SheetTile]
) -> tuple[list[PageLine], list[PageWords]]:  # fmt: skip
    right, y = page.width_mm - SIDE_MM, ABOVE_MM + 5.0
    words = [PageWords(x=SIDE_MM, y=y, text=template.name, size_pt=NAME_PT, figures=True)]
    if len(tiles) > 1:
        words.append(
            PageWords(x=right, y=y, text=f"{tile.name} of {len(tiles)}", size_pt=NAME_PT, figures=True, anchor="end")
        )
    said = f"{template.size}. For {template.cake.name}. Scale 1:1, on {page.name}."
    words.append(PageWords(x=SIDE_MM, y=y + 5.5, text=said))
    y += 5.5
    for note in _notes(template, page):
        y += LINE_MM
        words.append(PageWords(x=SIDE_MM, y=y, text=note))
    y += LINE_MM + 0.6
    lines, x = [], SIDE_MM
    for kind in template.kinds:
        lines.append(_line(kind, (x, y - 1.2), (x + 12.0, y - 1.2)))
        words.append(PageWords(x=x + 14.0, y=y, text=KINDS[kind]))
        x += 19.0 + len(KINDS[kind]) * TEXT_WIDE_MM
    return lines, words


def _foot(page: Paper, number: int, total: int, house: str) -> tuple[list[PageLine], list[PageWords]]:
    lines, words = [], []
    for row, (long, name) in enumerate(BARS):
        y = page.height_mm - 21.5 + row * 7.0
        lines.append(_line("bar", (SIDE_MM, y), (SIDE_MM + long, y)))
        lines += [_line("bar", (x, y - 1.6), (x, y + 1.6)) for x in (SIDE_MM, SIDE_MM + long)]
        words.append(PageWords(x=SIDE_MM + BARS[1][0] + 3.0, y=y + 1.2, text=name, size_pt=STRONG_PT, figures=True))
    x, y = SIDE_MM + BARS[1][0] + 27.0, page.height_mm - 20.3
    words.append(PageWords(x=x, y=y, text="Measure this first.", size_pt=STRONG_PT, figures=True))
    words += [
        PageWords(x=x, y=y + 4.4, text="Print at 100 %, never"),
        PageWords(x=x, y=y + 8.4, text="fitted to the page."),
    ]
    y = page.height_mm - 8.0
    words.append(PageWords(x=SIDE_MM, y=y, text=house))
    words.append(PageWords(x=page.width_mm - SIDE_MM, y=y, text=f"Page {number} of {total}", anchor="end"))
    lines.append(_line("rule", (SIDE_MM, y - 18.5), (page.width_mm - SIDE_MM, y - 18.5)))
    return lines, words


def _joints(
    tile: SheetTile, tiles: Sequence[SheetTile], at: Point, overlap_mm: float
) -> Iterator[tuple[list[PageLine], list[PageWords]]]:  # fmt: skip
    """The line in the middle of what two sheets share, two diamonds on it, and which sheet meets it there."""
    names = {(each.row, each.column): each.name for each in tiles}
    wide, high = tile.right - tile.left, tile.bottom - tile.top
    half = overlap_mm / 2.0
    for row, column, low, across in (
        (0, -1, True, False),
        (0, 1, False, False),
        (-1, 0, True, True),
        (1, 0, False, True),
    ):
        name = names.get((tile.row + row, tile.column + column))
        if name is None:
            continue
        long, short = (wide, high) if across else (high, wide)
        place = half if low else short - half
        told = f"cut here, lay on {name}" if low else f"{name} is laid on here"
        # in the half of the strip that lies at the paper's edge
        text = place - half * 0.35 if low else place + half * 0.65
        origin = at

        def put(along: float, off: float, across: bool = across, origin: Point = origin) -> Point:
            return (origin[0] + along, origin[1] + off) if across else (origin[0] + off, origin[1] + along)

        lines = [_line("joint", put(0.0, place), put(long, place))]
        for share in (0.12, 0.88):
            d, middle = DIAMOND_MM, long * share
            corners = (
                put(middle - d, place), put(middle, place - d), put(middle + d, place), put(middle, place + d),
            )  # fmt: skip
            lines.append(_line("inner", *corners, corners[0]))
        # beside the middle, where drawings have their middle lines
        x, y = put(long * 0.375, text)
        yield lines, [PageWords(x=x, y=y, text=told, anchor="middle", turned=not across)]


def as_plain(title: str, pages: Sequence[PaperPage]) -> dict[str, Any]:
    """Pages as plain data: the lines of each as a drawing, its words, mm to the ten-thousandth."""
    return {
        "title": title,
        "pages": [
            {
                "title": page.title,
                "width_mm": page.width_mm,
                "height_mm": page.height_mm,
                "drawing": page.lined,
                "words": [asdict(replace(each, x=round(each.x, 4), y=round(each.y, 4))) for each in page.words],
            }
            for page in pages
        ],
    }
