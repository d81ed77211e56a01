"""What the bench says about the written tins before any script: word for word what the script says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.base.page import Desk
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.baking.loads import load
from tinbook.plans.base.scaling import TinRow, TinTable, factor_by
from tinbook.plans.base.weighing import Batch
from tinbook.tins.trade import called_mm

DEEPER = "no tin of this size is sold that deep"


@dataclass(frozen=True, slots=True)
class FactsSaid:
    """`1.00 × recipe`, any remark (with the comma before it, or nothing), and the weight in each tin."""

    factor: str
    remarks: str
    each: str


def facts_said(batch: Batch, table: TinTable | None, desk: Desk) -> FactsSaid:
    """For the first of the written tins, or for one batch."""
    if table is None:
        remarks, factor = ["eggs not rounded"] if batch.eggs else [], 1.0
        each = f"{formats.grams(batch.mass_shown_g)} of ingredients"
    else:
        row = _written(batch, table, desk)
        remarks, factor, each = list(_remarks(batch, row)), row.whole.factor_shown, _each(row)
    said = f", {'; '.join(remarks)}" if remarks else ""
    return FactsSaid(f"{formats.fixed(factor, 2)} × recipe", said, each)


def _written(batch: Batch, table: TinTable, desk: Desk) -> TinRow:
    """The row of the written tin; for cups, as many as are written, as a row of cups is for one tray."""
    count, tin = batch.tins[0]
    row = table.rows[table.written]
    if not tin.kind.in_trays:
        return row
    made = load(batch, None, desk.book, desk.facts, count, tin)
    return row._replace(whole=made.version, beaten=False, fit=made.fit, mixes=made.mixes)


def _remarks(batch: Batch, row: TinRow) -> Iterator[str]:
    tin, fit = row.tin, row.fit
    yield spell(factor_by((tin,)))
    if batch.eggs:
        yield _off(row)
    if tin.holes == 1 and fit.needed == fit.count:
        deep = fit.least_mm and called_mm(fit.least_mm, tin.sold) / 10
        yield f"use a tin at least {formats.with_unit(formats.number(deep), 'cm')} deep" if deep else DEEPER
    yield from spelled_all(fit.remarks)
    if row.mixes > 1:
        yield f"mix in {row.mixes} lots to fit the bowl"


def _off(row: TinRow) -> str:
    off = row.whole.off_percent
    if row.beaten or not off:
        return "eggs not rounded"
    return f"{formats.number(abs(off))}% {'more' if off > 0 else 'less'} than exact"


def _each(row: TinRow) -> str:
    tin, fit = row.tin, row.fit
    if fit.count <= 1:
        return _together(row.whole.mass_shown_g)
    return f"{formats.grams(fit.each_shown_g)} in each {'case' if tin.holes > 1 else 'tin'}"


def _together(mass_g: float) -> str:
    return f"{formats.grams(mass_g)} in all"
