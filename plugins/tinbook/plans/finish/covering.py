"""Tables for every tin: a filling or icing round a cake, a paste over it."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.versions import Version, version_each
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.cakes import Cakes, usual_cakes
from tinbook.plans.finish.coating import ROLES, CoatRow, coat_row, roles_of
from tinbook.plans.finish.pasting import PasteRow, paste_row
from tinbook.plans.finish.used import Correction, learned


@dataclass(frozen=True, kw_only=True)
class CoatTable:
    """A filling or icing on cakes from every tin, at one height; it plays all the `roles` it can."""

    batch: Batch
    finishing: Finishing
    height_mm: float
    roles: tuple[str, ...]
    rows: tuple[CoatRow, ...]
    learned: Correction
    worked: Worked


@dataclass(frozen=True, kw_only=True)
class PasteTable:
    """A paste over cakes from every tin, at one height, with their coats on."""

    batch: Batch
    finishing: Finishing
    height_mm: float
    rows: tuple[PasteRow, ...]
    learned: Correction
    worked: Worked


def fills(batch: Batch) -> bool:
    """Whether it fills cakes, coats them, or both."""
    return bool(set(ROLES) & set(batch.kind.plays))


def covers(batch: Batch) -> bool:
    """Whether it is rolled out over them. Modelling paste is not."""
    return "cover" in batch.kind.plays


def coat_table(batch: Batch, book: Book, facts: Facts, height_mm: float | None = None) -> CoatTable:
    """A filling or icing on every cake, as high as asked or as the house usually makes them."""
    if not fills(batch):
        raise AskError(f'"{batch.mixture.name}" neither fills nor coats a cake', "ask for a filling or an icing")
    cakes, correction = usual_cakes(book, facts, height_mm), learned(batch, book, facts)
    settled = cakes.finishing
    roles = roles_of(batch, settled)
    rows = tuple(
        coat_row(batch, cake, owned, settled, facts, roles=roles, factor=correction.factor)
        for cake, owned in cakes.with_room(settled.coats_mm)
    )
    return CoatTable(
        batch=batch,
        finishing=settled,
        height_mm=cakes.usual_mm,
        roles=roles,
        rows=rows,
        learned=correction,
        worked=_coats_worked(batch, cakes, roles, correction),
    )


def weighed_out(table: CoatTable, facts: Facts) -> list[Version]:
    """What goes into the amounts made, one version for each row: chocolate and cream for a ganache."""
    factors = [row.factor for row in table.rows]
    widths_mm = [row.cake.tin.bounds_mm[0] for row in table.rows]
    return version_each(table.batch, factors, factors, widths_mm, facts, by_weight=True)


def paste_table(batch: Batch, book: Book, facts: Facts, height_mm: float | None = None) -> PasteTable:
    """A paste over every cake, as high as asked or as the house usually makes them."""
    if not covers(batch):
        raise AskError(f'"{batch.mixture.name}" does not cover a cake', "ask for sugarpaste or marzipan")
    cakes, correction = usual_cakes(book, facts, height_mm), learned(batch, book, facts)
    settled = cakes.finishing
    said = saying("cake_and_coats", high_mm=cakes.usual_mm, coats_mm=settled.coats_mm)
    rows = tuple(
        paste_row(batch, cake, owned, settled, facts, correction.factor)
        for cake, owned in cakes.with_room(settled.coats_mm)
    )
    return PasteTable(
        batch=batch,
        finishing=settled,
        height_mm=cakes.usual_mm,
        rows=rows,
        learned=correction,
        worked=paste_worked(batch, settled, said, correction, facts),
    )


def _coats_worked(batch: Batch, cakes: Cakes, roles: tuple[str, ...], correction: Correction) -> Worked:
    gravity, settled = batch.kind.gravity, cakes.finishing
    border = settled.border if "border" in roles else None
    keys = tuple(role.replace(" ", "_") for role in roles if role != "border")
    inputs = [
        saying("cake_before_coats", high_mm=cakes.height_mm, layers=settled.layers),
        *_figures(settled, *keys),
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
    if "border" in roles:
        inputs.append(saying("stays_in_bag", ml=settled["stays_in_the_bag"]))
    if correction.told:
        inputs.append(correction.told)
    return Worked(saying("coats_worked"), tuple(inputs), _sources(batch, settled, *keys))


def paste_worked(batch: Batch, settled: Finishing, cake: Saying, correction: Correction, facts: Facts) -> Worked:
    """How the paste over `cake` was worked out."""
    gravity = batch.kind.gravity
    inputs = [
        cake,
        *_figures(settled, "paste", "paste_rolled", "paste_over"),
        saying("weight_of_a_ml", grams=gravity.typical, low=gravity.low, high=gravity.high),
        *_published(batch, settled, facts),
    ]
    if correction.told:
        inputs.append(correction.told)
    return Worked(saying("paste_worked"), tuple(inputs), _sources(batch, settled, "paste", "paste_rolled"))


def _figures(settled: Finishing, *keys: str) -> list[Saying]:
    figures = (settled.figures[key] for key in keys)
    return [saying("as_thick_as", name=figure.name, mm=figure.value, said_by=figure.said_by) for figure in figures]


def _published(batch: Batch, settled: Finishing, facts: Facts) -> list[Saying]:
    """What published charts give, which is the range; for marzipan and other pastes, what is known about them."""
    every = settled.figures["paste"].fact
    told = [saying("published_pastes", low_mm=every.low, high_mm=every.high, mm=every.value)]
    if batch.kind.key == "marzipan":
        own = facts.numbers["marzipan on the cake"]
        told.append(saying("published_marzipan", low_mm=own.low, high_mm=own.high, mm=own.value))
    elif batch.kind.key != "sugarpaste":
        told.append(saying("no_chart_of_its_own", kind=batch.kind.title))
    return told


def _sources(batch: Batch, settled: Finishing, *keys: str) -> tuple[str, ...]:
    facts = [settled.figures[key].fact for key in keys]
    named = [source for fact in facts for source in (fact.source, *fact.also)]
    return tuple(dict.fromkeys((batch.kind.source, *named)))
