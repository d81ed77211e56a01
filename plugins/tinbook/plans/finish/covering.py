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
    settled, correction = finishing(book.finish, facts), learned(batch, book, facts)
    height_mm = height_mm or settled.heights_mm[0]
    rows = tuple(
        coat_row(batch, cake, owned, settled, facts, correction.factor, only_fills(batch))
        for cake, owned in house_cakes(book, height_mm, settled.layers, settled.coats_mm)
    )
    return CoatTable(
        batch=batch,
        finishing=settled,
        height_mm=height_mm,
        rows=rows,
        learned=correction,
        worked=_coats_worked(batch, settled, height_mm, correction),
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
    settled, correction = finishing(book.finish, facts), learned(batch, book, facts)
    height_mm = height_mm or settled.heights_mm[0]
    rows = tuple(
        paste_row(batch, cake, owned, settled, facts, correction.factor)
        for cake, owned in house_cakes(book, height_mm, settled.layers, settled.coats_mm)
    )
    return PasteTable(
        batch=batch,
        finishing=settled,
        height_mm=height_mm,
        rows=rows,
        learned=correction,
        worked=_paste_worked(batch, settled, height_mm, correction),
    )


def _coats_worked(batch: Batch, settled: Finishing, height_mm: float, correction: Correction) -> Worked:
    gravity, border = batch.kind.gravity, settled.border
    inputs = [
        saying("cake_before_coats", high_mm=height_mm, layers=settled.layers),
        *_figures(settled, "filling", "crumb_coat", "final_coat"),
        saying("weight_of_a_ml", grams=gravity.typical, low=gravity.low, high=gravity.high),
        saying("stays_in_bowl", share=settled["stays_in_the_bowl"]),
    ]
    if border:
        inputs.append(
            saying(
                "border_piped",
                edges=border.edges,
                marks=border.marks,
                pitch_mm=border.pitch,
                stroke_mm=border.stroke,
                opening_mm=border.opening,
            )
        )
    if correction.told:
        inputs.append(correction.told)
    sources = _sources(batch, settled, "filling", "crumb_coat", "final_coat")
    return Worked(saying("coats_worked"), tuple(inputs), sources)


def _paste_worked(batch: Batch, settled: Finishing, height_mm: float, correction: Correction) -> Worked:
    gravity = batch.kind.gravity
    inputs = [
        saying("cake_and_coats", high_mm=height_mm, coats_mm=settled.coats_mm),
        *_figures(settled, "paste", "paste_rolled", "paste_over"),
        saying("weight_of_a_ml", grams=gravity.typical, low=gravity.low, high=gravity.high),
        saying("published_pastes_differ"),
    ]
    if correction.told:
        inputs.append(correction.told)
    return Worked(saying("paste_worked"), tuple(inputs), _sources(batch, settled, "paste", "paste_rolled"))


def _figures(settled: Finishing, *keys: str) -> list[Saying]:
    figures = (settled.figures[key] for key in keys)
    return [saying("as_thick_as", name=figure.name, mm=figure.value, said_by=figure.said_by) for figure in figures]


def _sources(batch: Batch, settled: Finishing, *keys: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys((batch.kind.source, *(settled.figures[key].fact.source for key in keys))))
