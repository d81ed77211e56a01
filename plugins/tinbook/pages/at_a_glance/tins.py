"""Tins at a glance: the factor from any round or square to any other, and what every tin holds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from tinbook.pages.at_a_glance.on_hand import shows_on_hand
from tinbook.pages.base.icons import icon, paths
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.shelf import Shelf, TinFacts, shelf
from tinbook.tins import SHAPES, Tin
from tinbook.tins.trade import called_mm

WALL_MM = 350.0
"""The widest tin on the wall chart: more columns would be too small to read from a metre."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixHead:
    """A tin above a column: its shape's name, its size in cm and in inches."""

    shape: str
    metric: str
    inches: str
    owned: bool
    first: bool
    far: bool


@dataclass(frozen=True, slots=True)
class MatrixCell:
    """A factor, spelled; `more` when it takes more mixture than the tin on the left; `far` off the wall chart."""

    text: str
    more: bool
    same: bool
    far: bool


@dataclass(frozen=True, slots=True)
class MatrixLine:
    """A tin on the left and the factors to every tin above."""

    head: MatrixHead
    cells: tuple[MatrixCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeLine:
    """A tin's sizes, spelled."""

    name: str
    icon: Markup
    shape: str
    inches: str
    owned: bool
    first: bool
    cells: tuple[str, ...]
    say: str


@dataclass(frozen=True, slots=True)
class ShapeWords:
    """A shape and its sizes in words, for reading and for the search."""

    title: str
    anchor: str
    sizes: tuple[str, ...]


@dataclass(frozen=True)
class TinsView:
    """Everything the page of tins says."""

    desk: Desk

    @cached_property
    def shelf(self) -> Shelf:
        """The sums."""
        return shelf(self.desk.book)

    @cached_property
    def heads(self) -> tuple[MatrixHead, ...]:
        """The tins of the matrix."""
        tins = self.shelf.matrix
        shapes = [tin.shape for tin, _ in tins]
        return tuple(
            MatrixHead(
                shape=SHAPES[tin.shape].title,
                metric=formats.number(tin.across_mm / 10),
                inches=tin.size_label_in.removesuffix(" in"),
                owned=owned,
                first=index == 0 or shapes[index - 1] != tin.shape,
                far=tin.across_mm > WALL_MM,
            )
            for index, (tin, owned) in enumerate(tins)
        )

    @property
    def lines(self) -> tuple[MatrixLine, ...]:
        """The matrix, a line each tin."""
        return tuple(
            MatrixLine(
                head,
                tuple(
                    MatrixCell(formats.fixed(factor, 2), factor > 1, row == column, self.heads[column].far)
                    for column, factor in enumerate(factors)
                ),
            )
            for row, (head, factors) in enumerate(zip(self.heads, self.shelf.factors_shown, strict=True))
        )

    @property
    def tins(self) -> tuple[dict[str, Any], ...]:
        """What the browser is handed: each tin's name, size and the ml that are compared."""
        return tuple(
            {
                "name": row.tin.name,
                "inches": row.tin.size_label_in,
                "shape": row.tin.shape,
                "title": row.tin.kind.title,
                "width_mm": row.tin.bounds_mm[0],
                "length_mm": row.tin.bounds_mm[1],
                "drawn": paths(row.tin),
                "owned": row.owned,
                "ml": row.compared_ml,
                "brim": formats.litres(row.brim_shown_ml),
                "near": row.nearest.name if row.nearest else "",
                "near_factor": row.nearest_factor_shown,
            }
            for row in self.shelf.tins
        )

    @property
    def sizes(self) -> tuple[SizeLine, ...]:
        """What every tin measures and holds."""
        shape, lines = "", []
        for row in self.shelf.tins:
            lines.append(_size_line(row, row.tin.shape != shape))
            shape = row.tin.shape
        return tuple(lines)

    @property
    def shapes(self) -> tuple[ShapeWords, ...]:
        """Each shape with the names of its sizes."""
        return tuple(
            ShapeWords(SHAPES[key].title, key.replace(" ", "-"), tuple(_words(tin) for tin in tins))
            for key, tins in self._by_shape.items()
        )

    @cached_property
    def _by_shape(self) -> dict[str, list[Tin]]:
        """The tins of each shape that has any."""
        by_shape: dict[str, list[Tin]] = {}
        for row in self.shelf.tins:
            by_shape.setdefault(row.tin.shape, []).append(row.tin)
        return by_shape

    @property
    def on_hand(self) -> bool:
        """Whether there is a page of what the tins on hand allow."""
        return shows_on_hand(self.desk.book)

    @property
    def sizes_worked(self) -> WorkedView:
        """How what they hold was worked out."""
        return worked_view((self.shelf.sizes_worked,), self.desk.facts)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.shelf.worked,), self.desk.facts)


def _words(tin: Tin) -> str:
    """`20 cm or 8 inch`: as both sides of the Atlantic look for it."""
    inches = tin.size_label_in.replace(" in", " inch")
    return f"{tin.size_label} or {inches}" if inches else tin.size_label


def _size_line(row: TinFacts, first: bool) -> SizeLine:
    near = "none owned"
    if row.nearest:
        near = f"{formats.tin_words(row.nearest.name)}, × {formats.fixed(row.nearest_factor_shown, 2)}"
    if row.tin.kind.in_trays:
        near = f"tray of {row.tin.holes}"
    measured = "measured" if row.tin.measured_ml else "worked out"
    return SizeLine(
        name=formats.tin_words(row.tin.name),
        icon=icon(row.tin, row.owned),
        shape=row.tin.shape.replace(" ", "-"),
        inches=formats.tin_words(row.tin.size_label_in),
        owned=row.owned,
        first=first,
        cells=(
            formats.number(called_mm(row.depth_mm, row.tin.sold) / 10),
            formats.litres(row.brim_shown_ml),
            measured,
            formats.number(row.area_shown_cm2),
            formats.number(row.perimeter_shown_cm),
        ),
        say=near,
    )


def tins_pages(desk: Desk) -> Iterator[Page]:
    """The one page of tins."""
    yield Page(address="tins", title="Tins at a glance", template="tins", view=TinsView(desk), section=("Tins",))
