"""The oven's tables by name: times, the log, loads."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.loads import Load
from tinbook.plans.baking.loads import loads as load_rows
from tinbook.plans.baking.oven import log_worked
from tinbook.plans.baking.times import Baking, Time, baking_worked
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin


def _batch_and_baking(book: Book, facts: Facts, query: Query) -> tuple[Batch, Baking]:
    batch = batch_asked(book, facts, query)
    baking = Bakes(book, facts).of(batch)
    if baking is None or not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is not baked in tins', "ask about a cake")
    return batch, baking


def _time(time: Time, before: str = "") -> dict[str, Cell]:
    return {
        f"{before}check_min": time.check_shown_min,
        f"{before}low_min": time.low_shown_min,
        f"{before}high_min": time.high_shown_min,
        f"{before}likely_exact_min": round(time.likely_min, 3),
        f"{before}low_exact_min": round(time.low_min, 3),
        f"{before}high_exact_min": round(time.high_min, 3),
    }


def times(book: Book, facts: Facts, query: Query) -> Result:
    """Minutes in the oven for every tin or those asked for: when to look first, and the span for 8 bakes in 10; the
    same with half the batter in each of two tins and, where a tin is wide or deep, in a cooler oven."""
    batch, baking = _batch_and_baking(book, facts, query)
    if query.tins:
        cakes = [(fit.tin, fit.batter_mm) for fit in scale(batch, book, facts, query).fits]
    else:
        cakes = [(row.tin, row.fit.batter_mm) for row in tin_table(batch, book, facts).rows]
    oven_c = baking.oven_c if query.oven_c is None else query.oven_c
    try:
        whole = baking.times(cakes, oven_c, query.start_c)
        halves = baking.times([(tin, depth / 2) for tin, depth in cakes], oven_c, query.start_c)
    except ValueError as error:
        raise AskError(str(error), "ask for a hotter oven") from None
    rows: list[Row] = []
    for (tin, depth), time, half in zip(cakes, whole, halves, strict=True):
        row: dict[str, Cell] = {"tin": tin.full_name, "batter_mm": round(depth, 2), "oven_c": round(oven_c, 1)}
        row |= {**_time(time), "held_by_conduction": time.held}
        row |= {"two_tins_check_min": half.check_shown_min, "two_tins_likely_exact_min": round(half.likely_min, 3)}
        row |= _cooler(baking, tin, depth, oven_c, query, facts)
        row["baked_before"] = baking.told(tin, depth)
        rows.append(row)
    return Result(
        saying("time_in_the_oven", mixture=batch.mixture.name), tuple(rows), baking_worked(baking, facts, whole)
    )


def _cooler(baking: Baking, tin: Tin, depth: float, oven_c: float, query: Query, facts: Facts) -> dict[str, Cell]:
    cooler = baking.cooler_c(tin, depth, oven_c, facts)
    if cooler is None:
        return {"cooler_oven_c": None, "cooler_likely_exact_min": None}
    time = baking.times([(tin, depth)], cooler, query.start_c)[0]
    return {"cooler_oven_c": round(cooler, 1), "cooler_likely_exact_min": round(time.likely_min, 3)}


def bakes(book: Book, facts: Facts, query: Query) -> Result:
    """Every bake in the log, or those of one mixture: what it was, and what is now expected of such a bake."""
    slugs = [batch_asked(book, facts, query).slug] if query.of else sorted(book.bakes_of)
    known, rows = Bakes(book, facts), list[Row]()
    sources: dict[str, None] = {}
    for slug in slugs:
        batch = weigh(slug, book.mixtures[slug], book, facts)
        baking = known.of(batch)
        sources |= dict.fromkeys(baking_worked(baking, facts).sources if baking else ())
        for point in baking.points if baking else ():
            if point.entry is None or baking is None:
                continue
            entry, off_c = point.entry, book.house.oven.off_c
            expected = baking.times([(point.tin, point.depth_mm)], entry.oven.celsius + off_c, entry.start)[0]
            rows.append(
                {
                    "day": entry.day.isoformat(),
                    "mixture": batch.mixture.name,
                    "tin": point.tin.full_name,
                    "batter_mm": round(point.depth_mm, 2),
                    "oven_c": round(entry.oven.celsius + off_c, 1),
                    "done_after_min": entry.done_after,
                    "expected_min": round(expected.likely_min, 2),
                    "rise": round(entry.baked / point.depth_mm, 4) if entry.baked else None,
                    "loss_share": round(1 - entry.out / entry.batter, 4) if entry.out and entry.batter else None,
                    "note": entry.note,
                }
            )
    return Result(saying("bakes_of_the_log"), tuple(rows), log_worked(book, tuple(sources)))


def loads(book: Book, facts: Facts, query: Query) -> Result:
    """Mixes, tins, oven loads and hours: for the tins asked for, or every tin owned."""
    batch, baking = _batch_and_baking(book, facts, query)
    rows = tuple(_load(load) for load in load_rows(batch, baking, book, facts, query))
    limit, bowl_g = facts.numbers["rim limit"], book.house.mixer_bowl
    worked = Worked(
        saying("loads_worked"),
        (
            saying("refused_above", limit=limit.value),
            saying("bowl_holds", grams=bowl_g) if bowl_g else saying("bowl_unknown"),
        ),
        (limit.source,),
    )
    return Result(saying("loads_of", mixture=batch.mixture.name), rows, worked)


def _load(load: Load) -> Mapping[str, Cell]:
    return {
        "tin": load.fit.tin.full_name,
        "count": load.fit.count,
        "factor": round(load.version.factor, 6),
        "factor_by": load.factor_by,
        "all_in_mm": round(load.all_in_mm, 2),
        "above_rim_mm": round(load.above_mm, 2),
        "verdict": load.verdict,
        "most_each_g": load.most_g,
        "fill_tins": load.fit.needed,
        "each_tin_g": round(load.fit.each_g, 2),
        "mixes": load.mixes,
        "at_once": load.fit.per_bake,
        "bakes": load.fit.bakes,
        "check_min": load.time.check_shown_min if load.time else None,
        "oven_low_min": load.oven_low_min,
        "oven_high_min": load.oven_high_min,
        "nearest_owned": load.nearest.name if load.nearest else None,
        "nearest_factor": round(load.nearest_factor, 6) if load.nearest else None,
    }
