"""The tables of portions and of guests, to be asked for by name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tinbook.engine import portions as sums
from tinbook.facts import Facts, Kind
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.weighing import as_owned
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.layers import stack_table
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import KINDS, Portion, cut_of, portion_sizes, ring_cut
from tinbook.plans.portions.guests import GUESTS, Answer, Choices, Wish, answers, batter_ml, choices, factor
from tinbook.tins import Tin


def portions(book: Book, facts: Facts, query: Query) -> Result:
    """How many portions every tin cuts into, or those asked with --tin; of a mixture, what each weighs too."""
    sizes = _asked(book, facts, query)
    height_mm = query.height_mm or finishing(book.finish, facts).heights_mm[0]
    tins = [as_owned(tin, book) for _, tin in query.tins]
    rows = [(tin, any(own.have and own.tin == tin for own in book.tins)) for tin in tins] or list(all_outlines(book))
    weights = _weights(book, facts, query) if query.of else {}
    if tins and query.of:
        raise AskError("a mixture is asked of every tin at once", "leave out --tin or --of")
    return Result(
        "Portions",
        tuple(_row(tin, owned, sizes, height_mm, weights if query.of else None) for tin, owned in rows),
        portions_worked(sizes, height_mm, facts),
    )


def _asked(book: Book, facts: Facts, query: Query) -> Mapping[str, Portion]:
    sizes = portion_sizes(book, facts)
    if query.portion is None:
        return sizes
    if isinstance(query.portion, str):
        return {query.portion: sizes[query.portion]}
    short, long = sorted(query.portion)
    return {"asked": Portion("asked", short, long, "asked")}


def _weights(book: Book, facts: Facts, query: Query) -> Mapping[Tin, tuple[float, float]]:
    """How high a mixture stands in every tin, and what the cake weighs baked and levelled."""
    batch = batch_asked(book, facts, query)
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask of a cake")
    made = stack_table(tin_table(batch, book, facts), book, facts)
    return {each.stack.tin: (each.stack.stack_mm, each.stack.weight_g) for each in made.rows}


def _row(
    tin: Tin,
    owned: bool,
    sizes: Mapping[str, Portion],
    height_mm: float,
    weights: Mapping[Tin, tuple[float, float]] | None,
) -> Row:
    cells: dict[str, Cell] = {"tin": tin.name, "owned": owned}
    for name, portion in sizes.items():
        cut = cut_of(tin, portion, height_mm)
        if cut.count == 0:
            told = f"a portion of {portion.short_mm:g} x {portion.long_mm:g} mm is larger than {tin.name}"
            raise AskError(told, "ask for a smaller portion or a larger tin")
        cells[name] = cut.count
        cells[f"{name}_cut"] = cut_words(cut)
        cells[f"{name}_each"] = round(cut.each, 4)
        second = ring_cut(tin, portion)
        cells[f"{name}_in_rings"] = second.count if second else None
        if weights is not None:
            _, weight_g = weights.get(tin, (0.0, 0.0))
            cells[f"{name}_g"] = round(weight_g / cut.count, 2) if weight_g else None
    if weights is not None:
        cells["stands_mm"] = round(weights[tin][0], 2) if tin in weights else None
    return cells


def cut_words(cut: Cut) -> str:
    """`grid 4 x 8`, `strips 5+7+7+5`, `rings 16+8`, `one each`."""
    if cut.way == "grid":
        return f"grid {cut.counts[0]} x {len(cut.counts)}"
    if cut.way in ("one each", "none"):
        return cut.way
    told = f"{cut.way} {'+'.join(str(count) for count in cut.counts)}"
    return f"{told}, twice" if cut.parts == 2 else told


def portions_worked(sizes: Mapping[str, Portion], height_mm: float, facts: Facts) -> Worked:
    """How counts are come by."""
    return Worked(
        "a whole grid, or equal pieces of at least about one portion: never more than area of the cake / portion",
        (
            *(f"{each.kind} {each.short_mm:g} × {each.long_mm:g} mm" for each in sizes.values()),
            f"cake {height_mm:g} mm high; a dome and a ball are shared out by volume at that height",
            "strips of equal width while pieces lie within 7 % of their mean, else strips of uneven width",
            "a tin's outline half-way up; cups are one each",
        ),
        tuple(dict.fromkeys(each.said_by for each in sizes.values() if each.said_by in facts.sources)),
    )


def portion_grams(portion: Portion, kind: Kind, height_mm: float, rise: float) -> float:
    """What a portion of a kind of cake weighs, by the usual weight of its batter, its rise and its loss."""
    loss = kind.loss.typical if kind.loss else 0.0
    return sums.grams(portion.area_mm2, height_mm, kind.gravity.typical, rise, loss)


def guests(book: Book, facts: Facts, query: Query) -> Result:
    """The best sets that serve so many guests, or without a number the best for each usual one; with --of, the mixture
    they take."""
    made, at = _choices(book, facts, query, query.portion or "dessert")
    wish = Wish(guests=query.guests or 0, kind=at, keep_top=query.keep_top, owned=query.owned, beside=query.beside)
    if query.guests:
        found = [(query.guests, each) for each in answers(made, wish, 10)]
    else:
        found = [(many, each) for many in GUESTS for each in answers(made, replace(wish, guests=many), 1)]
    if not found:
        owned = ", from the tins it owns" if query.owned else ""
        raise AskError(f"no set of up to four tiers serves {query.guests}{owned}", "bake more than one cake")
    batch = batch_asked(book, facts, query) if query.of else None
    if batch and not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask of a cake")
    rows: list[Row] = []
    for many, each in found:
        row: dict[str, Cell] = {
            "guests": many,
            "tiers": " + ".join(made.tiers[place].tin.name for place in each.tiers),
            "beside": beside_words(made, each),
            "serves": each.serves,
            "over": each.over,
            "tins": each.tins,
        }
        if batch:
            settled = finishing(book.finish, facts, batch.mixture.finish)
            row["factor"] = round(factor(batch, settled, made, each), 4)
            row["batter_ml"] = round(batter_ml(batch, settled, made, each), 1)
        rows.append(row)
    size = made.portions[at]
    worked = Worked(
        "least over, then fewest tins, then least mixture",
        (
            f"{size.short_mm:g} × {size.long_mm:g} mm a guest, cakes {made.height_mm:g} mm high",
            "tiers of one shape, each at least 5 cm narrower than the one below",
        ),
        ("common practice",),
    )
    return Result(f"Tins for {query.guests} guests" if query.guests else "Tins for guests", tuple(rows), worked)


def _choices(book: Book, facts: Facts, query: Query, kind: str | tuple[float, float]) -> tuple[Choices, int]:
    made = choices(book, facts, query.height_mm)
    if isinstance(kind, str):
        return made, KINDS.index(kind)
    asked = _asked(book, facts, replace(query, portion=kind))["asked"]
    return choices(book, facts, query.height_mm, (asked,)), 0


def beside_words(made: Choices, each: Answer) -> str | None:
    """What stands beside the cake: `quarter sheet`, `24 standard cups`."""
    if each.tray is not None:
        return made.tiers[each.tray].tin.name
    if each.cups and made.cups:
        return f"{each.cups * made.cups.tin.holes} {made.cups.tin.name}"
    return None
