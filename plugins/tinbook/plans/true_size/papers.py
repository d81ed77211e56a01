"""Paper that templates are printed on, and the sheets each takes."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import tiling
from tinbook.engine.tiling import Line, Point
from tinbook.plans.true_size.drawn import Template


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper. A4 by ISO 216, Letter 8.5 × 11 in by ANSI/ASME Y14.1."""

    name: str
    width_mm: float
    height_mm: float


PAPERS = {"A4": Paper("A4", 210.0, 297.0), "Letter": Paper("Letter", 215.9, 279.4)}


def on_its_side(paper: Paper) -> Paper:
    """The same paper turned."""
    return Paper(paper.name, paper.height_mm, paper.width_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetTile:
    """The part of a template that one sheet shows; A1, A2, B1: rows by letters, columns by numbers."""

    name: str
    row: int
    column: int
    left: float
    top: float
    right: float
    bottom: float
    _tile: tiling.Tile

    def clipped(self, line: tuple[Point, ...]) -> tuple[Line, ...]:
        """The pieces of a line that lie in it."""
        return tuple(tiling.clipped(line, self._tile))


def on_paper(template: Template, window_mm: tuple[float, float], overlap_mm: float) -> tuple[SheetTile, ...]:
    """The tiles of a template on sheets with this window."""
    return tuple(
        SheetTile(
            name=tile.name,
            row=tile.row,
            column=tile.column,
            left=tile.left,
            top=tile.top,
            right=tile.right,
            bottom=tile.bottom,
            _tile=tile,
        )
        for tile in tiling.tiled(template.bounds_mm, window_mm, overlap_mm)
    )
