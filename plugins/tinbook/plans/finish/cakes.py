"""Which cakes to finish: one from every tin at the house's usual height, or those that a mixture makes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import TinRow, TinTable
from tinbook.plans.base.shelf import house_outlines
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.layers import stack_of


@dataclass(frozen=True, kw_only=True)
class Cakes:
    """The cakes of one table, each with whether its tin is owned, and the figures they are finished with.

    `height_mm`: the height of all of them before their coats, as asked or as the house usually makes them. None if
    each has the height it bakes to: `of` is then the mixture.
    """

    finishing: Finishing
    rows: tuple[tuple[Cake, bool], ...]
    height_mm: float | None
    of: Batch | None = None

    @property
    def usual_mm(self) -> float:
        """The height of all of them. ValueError if each has its own."""
        if self.height_mm is None:
            raise ValueError("each of these cakes has a height of its own")
        return self.height_mm

    @property
    def said(self) -> Saying:
        """Which cakes they are."""
        if self.of is not None:
            return saying("cakes_as_baked", mixture=self.of.mixture.name)
        return saying("cake_before_coats", high_mm=self.usual_mm, layers=self.finishing.layers)

    def with_room(self, under_mm: float) -> Iterator[tuple[Cake, bool]]:
        """Those whose tube stays open under coats of `under_mm`."""
        return (row for row in self.rows if row[0].room_for(under_mm))


def usual_cakes(book: Book, facts: Facts, height_mm: float | None = None) -> Cakes:
    """A cake from every tin, if no particular cake is meant: as high as asked or as the house usually makes them. Cups
    are not coated."""
    settled = finishing(book.finish, facts)
    height_mm = height_mm or settled.heights_mm[0]
    rows = tuple(
        (Cake(tin, height_mm, settled.layers), owned) for tin, owned in house_outlines(book) if not tin.kind.in_trays
    )
    return Cakes(finishing=settled, rows=rows, height_mm=height_mm)


def baked_cakes(table: TinTable, book: Book, facts: Facts) -> Cakes:
    """A mixture's own cake from every tin, its layers filled: as high as it bakes. A dome or ball has the layers it is
    cut into, or else the house's."""
    settled = finishing(book.finish, facts, table.batch.mixture.finish)
    return Cakes(
        finishing=settled,
        rows=tuple(_baked(table, settled)),
        height_mm=None,
        of=table.batch,
    )


def _baked(table: TinTable, settled: Finishing) -> Iterator[tuple[Cake, bool]]:
    for row in table.rows:
        if cake := baked_cake(table.batch, settled, row):
            yield cake, row.owned


def baked_cake(batch: Batch, settled: Finishing, row: TinRow) -> Cake | None:
    """A mixture's cake from one tin, its layers filled; None for cups."""
    if row.tin.kind.solid != "upright":
        return Cake(row.tin, row.tin.bounds_mm[0] / 2.0, settled.cut or settled.layers)
    if row.tin.kind.kept == "share":
        return None
    stack = stack_of(batch, settled, row.fit)
    return Cake(row.tin, stack.stack_mm, stack.layers)
