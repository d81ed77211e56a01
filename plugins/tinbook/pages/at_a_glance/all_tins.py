"""All tins: the factor from any round or square to any other, and what every tin holds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from tinbook.pages.at_a_glance.tin_to_tin import Matrix, TinToTinView, matrix, script_rows
from tinbook.pages.base.icons import icon
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.shelf import MATRIX_SHAPES, TinFacts
from tinbook.tins import SHAPES, Tin
from tinbook.tins.trade import called_mm

ADDRESS = "tins/all"


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

    @property
    def heading(self) -> str:
        """`Round tins`; those of cups are trays."""
        return "Cupcake trays" if self.kept_anchor else f"{self.title} tins"

    @property
    def kept_anchor(self) -> str:
        """The anchor of its heading, where that does not come from its words."""
        return "cups-tins" if self.anchor == "cups" else ""


@dataclass(frozen=True)
class AllTinsView(TinToTinView):
    """Everything the page of all tins says."""

    @cached_property
    def items(self) -> tuple[Matrix, ...]:
        """A matrix to every round, then to every square: one for both would be cut off at a tablet's edge."""
        tins, shown = self.shelf.matrix, self.shelf.factors_shown
        made = []
        for shape in MATRIX_SHAPES:
            places = [place for place, (tin, _) in enumerate(tins) if tin.shape == shape]
            factors = [[line[place] for place in places] for line in shown]
            title = f"Factors to a {SHAPES[shape].title.lower()} tin"
            made.append(matrix(title, tins, [tins[place] for place in places], factors))
        return tuple(made)

    @property
    def tins(self) -> dict[str, Any]:
        """What the browser gets."""
        return script_rows(self.shelf.tins, self.desk.book)

    @property
    def all_tins(self) -> str:
        """There are no more."""
        return ""

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
    def sizes_worked(self) -> WorkedView:
        """How what they hold was worked out."""
        return worked_view((self.shelf.sizes_worked,), self.desk.facts)


def _words(tin: Tin) -> str:
    """`20 cm or 8 inch`: as people on either side of the Atlantic search for it."""
    inches = tin.size_label_in.replace(" in", " inch")
    return f"{tin.size_label} or {inches}" if inches else tin.size_label


def _size_line(row: TinFacts, first: bool) -> SizeLine:
    near = "you have none"
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


def all_tins_pages(desk: Desk) -> Iterator[Page]:
    """The one page of all tins."""
    yield Page(address=ADDRESS, title="All tins", template="all_tins", view=AllTinsView(desk), section=("Tins",))
