"""Tables for every tin: a filling or icing round a cake, a paste over it."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.versions import Version, version_each
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.cake import house_cakes
from tinbook.plans.finish.coating import ONLY_FILLS, CoatRow, coat_row
from tinbook.plans.finish.pasting import PasteRow, paste_row
from tinbook.plans.finish.used import PASTES, Correction, learned

FILLS = ("filling", "coat")
"""Groups of kinds that fill and coat a cake."""


@dataclass(frozen=True, kw_only=True)
class CoatTable:
    """A filling or icing on cakes of every tin, at one height, all coats from it."""

    batch: Batch
    finishing: Finishing
    height_mm: float
    rows: tuple[CoatRow, ...]
    learned: Correction
    worked: Worked


@dataclass(frozen=True, kw_only=True)
class PasteTable:
    """A paste over cakes of every tin, at one height, their coats on."""

    batch: Batch
    finishing: Finishing
    height_mm: float
    rows: tuple[PasteRow, ...]
    learned: Correction
    worked: Worked


def fills(batch: Batch) -> bool:
    """Whether it fills and coats cakes."""
    return batch.kind.group in FILLS


def only_fills(batch: Batch) -> bool:
    """Whether it goes between the layers and nowhere else."""
    return batch.kind.key in ONLY_FILLS


def covers(batch: Batch) -> bool:
    """Whether it is rolled out over them. What is modelled is not."""
    return batch.kind.group == PASTES and batch.kind.key != "modelling paste"


def coat_table(batch: Batch, book: Book, facts: Facts, height_mm: float | None = None) -> CoatTable:
    """A filling or icing on every cake, as high as asked or as the house usually makes them."""
    if not fills(batch):
        raise AskError(f'"{batch.mixture.name}" neither fills nor coats a cake', "ask for a filling or an icing")
    settled, found = finishing(book.finish, facts), learned(batch, book, facts)
    height_mm = height_mm or settled.heights_mm[0]
    rows = tuple(
        coat_row(batch, cake, owned, settled, facts, found.factor, only_fills(batch))
        for cake, owned in house_cakes(book, height_mm, settled.layers, settled.coats_mm)
    )
    return CoatTable(
        batch=batch,
        finishing=settled,
        height_mm=height_mm,
        rows=rows,
        learned=found,
        worked=_coats_worked(batch, settled, height_mm, found),
    )


def weighed_out(table: CoatTable, facts: Facts) -> list[Version]:
    """What goes into the amounts made, a version each row: of a ganache chocolate and cream."""
    factors = [row.factor for row in table.rows]
    widths_mm = [row.cake.tin.bounds_mm[0] for row in table.rows]
    return version_each(table.batch, factors, factors, widths_mm, facts, by_weight=True)


def paste_table(batch: Batch, book: Book, facts: Facts, height_mm: float | None = None) -> PasteTable:
    """A paste over every cake, as high as asked or as the house usually makes them."""
    if not covers(batch):
        raise AskError(f'"{batch.mixture.name}" does not cover a cake', "ask for sugarpaste or marzipan")
    settled, found = finishing(book.finish, facts), learned(batch, book, facts)
    height_mm = height_mm or settled.heights_mm[0]
    rows = tuple(
        paste_row(batch, cake, owned, settled, facts, found.factor)
        for cake, owned in house_cakes(book, height_mm, settled.layers, settled.coats_mm)
    )
    return PasteTable(
        batch=batch,
        finishing=settled,
        height_mm=height_mm,
        rows=rows,
        learned=found,
        worked=_paste_worked(batch, settled, height_mm, found),
    )


def _coats_worked(batch: Batch, settled: Finishing, height_mm: float, found: Correction) -> Worked:
    gravity, border = batch.kind.gravity, settled.border
    said: list[Saying | str] = [
        f"cake {height_mm:g} mm high in {settled.layers} layers, before its coats",
        *_figures(settled, "filling", "crumb_coat", "final_coat"),
        f"1 ml weighs {gravity.typical:g} g ({gravity.low:g} to {gravity.high:g})",
        f"{settled['stays_in_the_bowl']:.0%} of what is made stays in the bowl",
    ]
    if border:
        said.append(
            f"border at the {border.edges}: {border.marks} {border.pitch:g} mm apart, "
            f"each pressed {border.stroke:g} mm out of a nozzle open {border.opening:g} mm"
        )
    formula = "filling = area × thickness × (layers − 1); a coat = the cake with it less the cake without it"
    return Worked(formula, tuple(said + _found(found)), _sources(batch, settled, "filling", "crumb_coat", "final_coat"))


def _paste_worked(batch: Batch, settled: Finishing, height_mm: float, found: Correction) -> Worked:
    gravity = batch.kind.gravity
    said: list[Saying | str] = [
        f"cake {height_mm:g} mm high and coats of {settled.coats_mm:g} mm",
        *_figures(settled, "paste", "paste_rolled", "paste_over"),
        f"1 ml weighs {gravity.typical:g} g ({gravity.low:g} to {gravity.high:g})",
        "published amounts differ by 20 to 190 %",
    ]
    formula = (
        "on the cake = (top + sides) × thickness; rolled = top + both sides + what hangs over, as wide and as long"
    )
    return Worked(formula, tuple(said + _found(found)), _sources(batch, settled, "paste", "paste_rolled"))


def _figures(settled: Finishing, *keys: str) -> list[Saying]:
    figures = [settled.figures[key] for key in keys]
    return [saying("figure_of_house", name=row.name, value_mm=row.value, said_by=row.said_by) for row in figures]


def _found(found: Correction) -> list[Saying | str]:
    return [found.words] if found.words else []


def _sources(batch: Batch, settled: Finishing, *keys: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys((batch.kind.source, *(settled.figures[key].fact.source for key in keys))))
