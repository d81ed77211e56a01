"""The tables of a mixture in other amounts, and of the tins, by name."""

from __future__ import annotations

from collections import Counter

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import UNIT_KEYS, Cell, Result, Row, batch_asked
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import Fit, TinRow, factor_by, owned_count, tin_table
from tinbook.plans.base.shelf import all_outlines, batter_depth_mm, factor_between, tin_facts
from tinbook.plans.base.shelf import shelf as whole_shelf
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.tins import Tin


def _amounts(batch: Batch, version: Version) -> dict[str, Cell]:
    """Every line of a version: exact grams, and the amount as measured out in its own unit.

    A second line with the same name gets a number.
    """
    cells: dict[str, Cell] = {}
    names: Counter[str] = Counter()
    for line, amount in zip(batch.ingredients, version.amounts, strict=True):
        key = _key(line.name, line.part)
        names[key] += 1
        key = f"{key}_{names[key]}" if names[key] > 1 else key
        written = line.mass_g if amount.unit == "g" else line.amount
        cells[f"{key}_exact_g"] = round(line.mass_g * amount.exact / written, 4)
        cells[f"{key}_{UNIT_KEYS[amount.unit]}"] = amount.shown
    return cells


def _key(name: str, part: str) -> str:
    return "_".join(f"{part} {name}".replace("-", " ").replace("'", "").split())


def inch_name(tin: Tin) -> str | None:
    """What the trade calls it in inches, such as `round 8 in`; None if it has no such name."""
    return tin.names[-1] if tin.size_label_in else None


def _version(version: Version, beaten: bool = False) -> dict[str, Cell]:
    return {
        "factor": round(version.factor, 6),
        "off_percent": round(version.off * 100, 4),
        "beaten_egg": beaten,
        "mixture_g": round(version.mass_g, 3),
        "weight_error_percent": round(version.weight_error * 100, 3),
        "spoon_error_percent": round(version.spoon_error * 100, 3),
    }


def _fit(fit: Fit) -> dict[str, Cell]:
    return {
        "tin": fit.tin.full_name,
        "count": fit.count,
        "fill_tins": fit.needed,
        "each_tin_g": round(fit.each_g, 2),
        "batter_mm": round(fit.batter_mm, 2),
        "baked_mm": round(fit.baked_mm, 2),
        "least_depth_mm": fit.least_mm,
        "bakes": fit.bakes,
        "remark": saying("remarks", remarks=fit.remarks) if fit.remarks else "",
    }


def tins(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture for every tin: whole-egg version, and the exact factor beside it."""
    batch = batch_asked(book, facts, query)
    if not batch.tins:
        raise AskError(
            f'"{batch.mixture.name}" is made by weight, not by tins', 'try the table "scaled", with a weight'
        )
    table = tin_table(batch, book, facts)

    rows = tuple(_tin_row(batch, row) for row in table.rows)
    return Result(saying("every_tin", mixture=batch.mixture.name), rows, table.worked)


def _tin_row(batch: Batch, row: TinRow) -> Row:
    return {
        **_fit(row.fit),
        "tin": row.tin.name,
        "tin_by_inches": inch_name(row.tin),
        "owned": row.owned,
        "exact_factor": round(row.exact.factor, 6),
        "factor_by": factor_by([row.tin]),
        **_version(row.whole, row.beaten),
        "mixes": row.mixes,
        **_amounts(batch, row.whole),
    }


def scaled(book: Book, facts: Facts, query: Query) -> Result:
    """One question answered: a row for the exact version, one for whole eggs."""
    batch = batch_asked(book, facts, query)
    answer = scale(batch, book, facts, query)
    by = factor_by((tin for _, tin in query.tins), query.deep) if query.tins else saying("by_asked")
    versions = [(saying("exact_version"), answer.exact, False)]
    if batch.eggs:
        versions.append((saying("whole_eggs"), answer.whole, answer.beaten))
    rows = tuple(
        {
            "version": name,
            **_version(version, beaten),
            "factor_by": by,
            "mixes": answer.mixes,
            **_amounts(batch, version),
        }
        for name, version, beaten in versions
    )
    return Result(saying("scaled", mixture=batch.mixture.name), rows, answer.worked)


def fits(book: Book, facts: Facts, query: Query) -> Result:
    """The tins of a question, one row each: batter, depths, how many to fill, bakes."""
    batch = batch_asked(book, facts, query)
    if not query.tins:
        raise AskError("this table needs a tin", 'say which, such as --tin "round 20 cm x 7.5 cm"')
    answer = scale(batch, book, facts, query)
    return Result(saying("in_its_tins", mixture=batch.mixture.name), tuple(map(_fit, answer.fits)), answer.worked)


def factors(book: Book, facts: Facts, query: Query) -> Result:
    """From every tin to every tin, or from one with --tin."""
    depth_mm = batter_depth_mm(book)
    outlines = [tin for tin, _ in all_outlines(book)]
    written = [as_owned(tin, book) for _, tin in query.tins] or outlines
    rows: tuple[Row, ...] = tuple(
        {
            "from": old.name,
            "to": new.name,
            "factor": round(factor_between(old, new, depth_mm), 6),
            "factor_by": factor_by([old, new]),
        }
        for old in written
        for new in outlines
    )
    return Result(saying("tin_factors"), rows, whole_shelf(book).worked)


def sizes(book: Book, facts: Facts, query: Query) -> Result:
    """Every tin, or those asked for with --tin: area, perimeter, what it holds, the nearest one the house owns."""
    shelf = whole_shelf(book)
    tins = [as_owned(tin, book) for _, tin in query.tins]
    found = [tin_facts(tin, owned_count(book, tin) > 0, book) for tin in tins] or shelf.tins
    rows: tuple[Row, ...] = tuple(
        {
            "tin": row.tin.name,
            "tin_by_inches": inch_name(row.tin),
            "owned": row.owned,
            "depth_mm": row.depth_mm,
            "area_cm2": round(row.area_cm2, 3),
            "perimeter_mm": round(row.perimeter_mm, 2),
            "brim_ml": round(row.brim_ml, 2),
            "measured": row.tin.measured_ml is not None,
            "nearest_owned": row.nearest.name if row.nearest else None,
            "nearest_factor": round(row.nearest_factor, 6) if row.nearest else None,
            "factor_by": factor_by([row.tin, row.nearest]) if row.nearest else None,
        }
        for row in found
    )
    return Result(saying("tin_sizes"), rows, shelf.sizes_worked)
