"""Templates laid on paper at actual size: tiles and their joints, a head and a foot on every page.

Lines are as the book's look has them on paper; nothing is smaller than 9 pt.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.pages.technique.paper import PT_MM, TEXT_PT, PageLine, PageWords, PaperPage, page_line
from tinbook.plans.true_size.drawn import KINDS, Point, Template
from tinbook.plans.true_size.papers import Paper, SheetTile, on_its_side, on_paper

SIDE_MM, ABOVE_MM = 14.0, 10.0
NAME_PT, STRONG_PT = 15.0, 11.0
LINE_MM = 4.4
FOOT_MM = 30.0
TEXT_WIDE_MM = 1.72
"""About how wide a letter of the text is, on the safe side."""
DIAMOND_MM = 3.0
NEIGHBOURS = ((0, -1, True, False), (0, 1, False, False), (-1, 0, True, True), (1, 0, False, True))
"""A tile's neighbours: how many rows and columns away, whether before it, whether the join runs across the paper."""
BARS = ((100.0, "100 mm"), (4 * 25.4, "4 in"))


def paper_pages(templates: Sequence[Template], paper: Paper, overlap_mm: float, house: str) -> tuple[PaperPage, ...]:
    """All pages of some templates; each says which of how many it is."""
    laid = [(template, *_laid(template, paper, overlap_mm)) for template in templates]
    total, number, pages = sum(len(tiles) for *_, tiles in laid), 0, []
    for template, page, top, tiles in laid:
        for tile in tiles:
            number += 1
            lines = list(_drawn(template, tile, (SIDE_MM, top)))
            words = list(_labelled(template, tile, (SIDE_MM, top)))
            for joint_lines, joint_words in _joints(tile, tiles, (SIDE_MM, top), overlap_mm):
                lines += joint_lines
                words += joint_words
            for some_lines, some_words in (_head(template, page, tile, tiles), _foot(page, number, total, house)):
                lines += some_lines
                words += some_words
            which = "" if len(tiles) == 1 else f"-{tile.name.lower()}"
            title = f"{spell(template.name)}, for {template.cake.name}" + (f", {tile.name}" if which else "")
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
    ways = []
    for page in (paper, on_its_side(paper)):
        top = ABOVE_MM + 17.0 + LINE_MM * len(_notes(template, page))
        window = (page.width_mm - 2.0 * SIDE_MM, page.height_mm - FOOT_MM - top)
        ways.append((page, top, on_paper(template, window, overlap_mm)))
    return min(ways, key=lambda way: len(way[2]))


def _notes(template: Template, page: Paper) -> list[str]:
    signs = int((page.width_mm - 2.0 * SIDE_MM) / TEXT_WIDE_MM)
    return [line for note in spelled_all(template.notes) for line in textwrap.wrap(note, signs)]


def _drawn(template: Template, tile: SheetTile, corner: Point) -> Iterator[PageLine]:
    for stroke in template.strokes:
        for piece in tile.clipped(stroke.points):
            yield page_line(stroke.kind, *((x - tile.left + corner[0], y - tile.top + corner[1]) for x, y in piece))


def _labelled(template: Template, tile: SheetTile, corner: Point) -> Iterator[PageWords]:
    for label in template.labels:
        x, y = label.at
        if tile.left <= x <= tile.right and tile.top <= y <= tile.bottom:
            size = STRONG_PT if label.strong else TEXT_PT
            # a middle, as a baseline
            down = size * PT_MM * 0.35
            yield PageWords(
                x=x - tile.left + corner[0],
                y=y - tile.top + corner[1] + down,
                text=spell(label.text),
                size_pt=size,
                figures=label.strong,
                anchor="middle",
            )


def _head(
    template: Template, page: Paper, tile: SheetTile, tiles: Sequence[SheetTile]
) -> tuple[list[PageLine], list[PageWords]]:  # fmt: skip
    right, y = page.width_mm - SIDE_MM, ABOVE_MM + 5.0
    words = [PageWords(x=SIDE_MM, y=y, text=spell(template.name), size_pt=NAME_PT, figures=True)]
    if len(tiles) > 1:
        words.append(
            PageWords(x=right, y=y, text=f"{tile.name} of {len(tiles)}", size_pt=NAME_PT, figures=True, anchor="end")
        )
    below = f"{spell(template.size)}. For {template.cake.name}. Scale 1:1, on {page.name}."
    words.append(PageWords(x=SIDE_MM, y=y + 5.5, text=below))
    y += 5.5
    for note in _notes(template, page):
        y += LINE_MM
        words.append(PageWords(x=SIDE_MM, y=y, text=note))
    y += LINE_MM + 0.6
    lines, x = [], SIDE_MM
    for kind in template.kinds:
        lines.append(page_line(kind, (x, y - 1.2), (x + 12.0, y - 1.2)))
        meaning = spell(KINDS[kind])
        words.append(PageWords(x=x + 14.0, y=y, text=meaning))
        x += 19.0 + len(meaning) * TEXT_WIDE_MM
    return lines, words


def _foot(page: Paper, number: int, total: int, house: str) -> tuple[list[PageLine], list[PageWords]]:
    lines, words = [], []
    for row, (long, name) in enumerate(BARS):
        y = page.height_mm - 21.5 + row * 7.0
        lines.append(page_line("bar", (SIDE_MM, y), (SIDE_MM + long, y)))
        lines += [page_line("bar", (x, y - 1.6), (x, y + 1.6)) for x in (SIDE_MM, SIDE_MM + long)]
        words.append(PageWords(x=SIDE_MM + BARS[1][0] + 3.0, y=y + 1.2, text=name, size_pt=STRONG_PT, figures=True))
    x, y = SIDE_MM + BARS[1][0] + 27.0, page.height_mm - 20.3
    words.append(PageWords(x=x, y=y, text="Measure this first.", size_pt=STRONG_PT, figures=True))
    words += [
        PageWords(x=x, y=y + 4.4, text="Print at 100%, never"),
        PageWords(x=x, y=y + 8.4, text="fitted to the page."),
    ]
    y = page.height_mm - 8.0
    words.append(PageWords(x=SIDE_MM, y=y, text=house))
    words.append(PageWords(x=page.width_mm - SIDE_MM, y=y, text=f"Page {number} of {total}", anchor="end"))
    lines.append(page_line("rule", (SIDE_MM, y - 18.5), (page.width_mm - SIDE_MM, y - 18.5)))
    return lines, words


def _joints(
    tile: SheetTile, tiles: Sequence[SheetTile], corner: Point, overlap_mm: float
) -> Iterator[tuple[list[PageLine], list[PageWords]]]:  # fmt: skip
    """The line down the middle of what two sheets share, two diamonds on it, and which sheet joins there."""
    names = {(neighbour.row, neighbour.column): neighbour.name for neighbour in tiles}
    wide, high = tile.right - tile.left, tile.bottom - tile.top
    half = overlap_mm / 2.0
    for row, column, low, across in NEIGHBOURS:
        name = names.get((tile.row + row, tile.column + column))
        if name is None:
            continue
        long, short = (wide, high) if across else (high, wide)
        place = half if low else short - half
        meeting = f"cut here, lay on {name}" if low else f"{name} goes on here"
        # in the half of the strip that lies at the paper's edge
        text = place - half * 0.35 if low else place + half * 0.65

        def put(along: float, off: float, across: bool = across) -> Point:
            return (corner[0] + along, corner[1] + off) if across else (corner[0] + off, corner[1] + along)

        lines = [page_line("joint", put(0.0, place), put(long, place))]
        for share in (0.12, 0.88):
            d, middle = DIAMOND_MM, long * share
            corners = (
                put(middle - d, place), put(middle, place - d), put(middle + d, place), put(middle, place + d),
            )  # fmt: skip
            lines.append(page_line("inner", *corners, corners[0]))
        # off the middle, where drawings have their centre lines
        x, y = put(long * 0.375, text)
        yield lines, [PageWords(x=x, y=y, text=meeting, anchor="middle", turned=not across)]
