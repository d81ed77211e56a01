"""The tables of the oven, to be asked for by name: times, the log, loads."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking.loads import Load
from tinbook.plans.baking.loads import loads as load_rows
from tinbook.plans.baking.times import Bakes, Baking, Time, baking_worked
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin

NO_BAKE = "ask about a cake"


def _asked(book: Book, facts: Facts, query: Query) -> tuple[Batch, Baking]:
    batch = batch_asked(book, facts, query)
    made = Bakes(book, facts).of(batch)
    if made is None or not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is not baked in tins', NO_BAKE)
    return batch, made


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
    """Minutes in the oven for every tin or those asked for: when to look first, the span of 8 bakes in 10; the same
    with half the batter in each of two tins, and, where a tin is wide or deep, in a cooler oven."""
    batch, made = _asked(book, facts, query)
    if query.tins:
        cakes = [(each.tin, each.batter_mm) for each in scale(batch, book, facts, query).fits]
    else:
        cakes = [(row.tin, row.fit.batter_mm) for row in tin_table(batch, book, facts).rows]
    oven_c = made.oven_c if query.oven_c is None else query.oven_c
    try:
        whole = made.times(cakes, oven_c, query.start_c)
        halves = made.times([(tin, depth / 2) for tin, depth in cakes], oven_c, query.start_c)
    except ValueError as error:
        raise AskError(str(error), "ask for a hotter oven") from None
    rows: list[Row] = []
    for (tin, depth), time, half in zip(cakes, whole, halves, strict=True):
        row: dict[str, Cell] = {"tin": tin.full_name, "batter_mm": round(depth, 2), "oven_c": round(oven_c, 1)}
        row |= _time(time)
        row |= {"two_tins_check_min": half.check_shown_min, "two_tins_likely_exact_min": round(half.likely_min, 3)}
        row |= _cooler(made, tin, depth, oven_c, query, facts)
        row["baked_before"] = made.told(tin, depth)
        rows.append(row)
    return Result(f"{batch.mixture.name}, time in the oven", tuple(rows), baking_worked(made, facts))


def _cooler(made: Baking, tin: Tin, depth: float, oven_c: float, query: Query, facts: Facts) -> dict[str, Cell]:
    cooler = made.cooler_c(tin, depth, oven_c, facts)
    if cooler is None:
        return {"cooler_oven_c": None, "cooler_likely_exact_min": None}
    time = made.times([(tin, depth)], cooler, query.start_c)[0]
    return {"cooler_oven_c": round(cooler, 1), "cooler_likely_exact_min": round(time.likely_min, 3)}


def bakes(book: Book, facts: Facts, query: Query) -> Result:
    """Every bake of the log, or those of one mixture: what it was, and what is expected of such a bake by now."""
    slugs = [batch_asked(book, facts, query).slug] if query.of else sorted(book.bakes_of)
    known, rows = Bakes(book, facts), list[Row]()
    for slug in slugs:
        batch = weigh(slug, book.mixtures[slug], book, facts)
        made = known.of(batch)
        for point in made.points if made else ():
            if point.entry is None or made is None:
                continue
            entry, off_c = point.entry, book.house.oven.off_c
            expected = made.times([(point.tin, point.depth_mm)], entry.oven.celsius + off_c, entry.start)[0]
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
                    "loss": round(1 - entry.out / entry.batter, 4) if entry.out and entry.batter else None,
                    "note": entry.note,
                }
            )
    formula = "expected = what the law learned from all bakes gives for such a tin, batter and oven"
    return Result("Bakes", tuple(rows), Worked(formula, (_dial(book),), ()))


def _dial(book: Book) -> str:
    off_c = book.house.oven.off_c
    if not off_c:
        return "the oven is taken to be as its dial says"
    return f"the oven is {abs(off_c):g} °C {'hotter' if off_c > 0 else 'cooler'} than its dial says"


def loads(book: Book, facts: Facts, query: Query) -> Result:
    """Mixes, tins, goes in the oven and hours of it: for the tins asked for, or every tin on hand."""
    batch, made = _asked(book, facts, query)
    rows = tuple(_load(each) for each in load_rows(batch, made, book, facts, query))
    limit = facts.numbers["rim limit"]
    worked = Worked(
        "baked = batter depth × rise; goes in the oven = tins to fill / tins at once on the shelves, or / tins owned; "
        "busy = goes × span",
        (
            f"above {limit.value:g} of the tin's depth it is refused, above the rim it may spill",
            f"bowl {book.house.mixer_bowl:g} g" if book.house.mixer_bowl else "no limit of the bowl is known",
        ),
        (limit.source,),
    )
    return Result(f"{batch.mixture.name}, loads", rows, worked)


def _load(each: Load) -> Mapping[str, Cell]:
    return {
        "tin": each.fit.tin.full_name,
        "count": each.fit.count,
        "factor": round(each.version.factor, 6),
        "all_in_mm": round(each.all_in_mm, 2),
        "above_rim_mm": round(each.above_mm, 2),
        "verdict": each.verdict,
        "most_each_g": each.most_g,
        "fill_tins": each.fit.needed,
        "each_tin_g": round(each.fit.each_g, 2),
        "mixes": each.mixes,
        "at_once": each.fit.per_bake,
        "bakes": each.goes,
        "check_min": each.time.check_shown_min if each.time else None,
        "oven_low_min": each.oven_low_min,
        "oven_high_min": each.oven_high_min,
        "nearest_owned": each.nearest.name if each.nearest else None,
        "nearest_factor": round(each.nearest_factor, 6) if each.nearest else None,
    }
