"""The tables of portions and guests, by name."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from tinbook.engine import portions as sums
from tinbook.facts import Facts, Kind
from tinbook.models import Book
from tinbook.plans.base.asking import OPTIONS, AskError, Query
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import owned_count, tin_table
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.layers import stack_table
from tinbook.plans.finish.tables import own_cakes
from tinbook.plans.portions.choices import Choices, choices
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import ASKED, Portion, portion_called, portion_sizes
from tinbook.plans.portions.guests import (
    BESIDE,
    GUESTS,
    Answer,
    Wish,
    answers,
    batter_ml,
    batter_mm,
    factor,
    own_batter_mm,
)
from tinbook.plans.portions.named_sets import judged, named_set
from tinbook.plans.portions.serving import servings
from tinbook.tins import Tin


def portions(book: Book, facts: Facts, query: Query) -> Result:
    """How many portions every tin cuts into, or those asked for with --tin; for a mixture, the weight of each too."""
    sizes = _portions_asked(book, facts, query)
    height_mm = query.height_mm or finishing(book.finish, facts).heights_mm[0]
    tins = [as_owned(tin, book) for _, tin in query.tins]
    rows = [(tin, owned_count(book, tin) > 0) for tin in tins] or list(all_outlines(book))
    if not query.of:
        return Result(
            saying("portions_of_tins"),
            tuple(_row(tin, owned, sizes, height_mm, None) for tin, owned in rows),
            portions_worked(sizes, saying("cake_to_cut", high_mm=height_mm), facts),
        )
    if tins:
        raise AskError("with a mixture, every tin is shown at once", "leave out --tin or --of")
    batch = _cake_asked(book, facts, query)
    cakes = own_cakes(batch, book, facts, query)
    baked_g = _weights(batch, book, facts)
    return Result(
        saying("portions_of_mixture", mixture=batch.mixture.name),
        tuple(_row(cake.tin, owned, sizes, cake.stands_mm, baked_g) for cake, owned in cakes.rows),
        portions_worked(sizes, cakes.said, facts),
    )


def _portions_asked(book: Book, facts: Facts, query: Query) -> Mapping[str, Portion]:
    sizes = portion_sizes(book, facts)
    if query.portion is None:
        return sizes
    if isinstance(query.portion, str):
        return {query.portion: portion_called(query.portion, sizes)}
    short, long = sorted(query.portion)
    return {ASKED: Portion(ASKED, short, long, ASKED)}


def _weights(batch: Batch, book: Book, facts: Facts) -> Mapping[Tin, float]:
    """The weight of a mixture's cake from every tin, baked and levelled."""
    stacks = stack_table(tin_table(batch, book, facts), book, facts)
    return {row.stack.tin: row.stack.weight_g for row in stacks.rows}


def _cake_asked(book: Book, facts: Facts, query: Query) -> Batch:
    batch = batch_asked(book, facts, query)
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask about a cake")
    return batch


def _row(
    tin: Tin,
    owned: bool,
    sizes: Mapping[str, Portion],
    height_mm: float,
    weights: Mapping[Tin, float] | None,
) -> Row:
    cells: dict[str, Cell] = {"tin": tin.name, "owned": owned}
    for name, serving in servings(tin, height_mm, (weights or {}).get(tin), sizes).items():
        cut, portion = serving.cut, sizes[name]
        if cut.count == 0:
            message = f"a portion of {portion.short_mm:g} x {portion.long_mm:g} mm is larger than {tin.name}"
            raise AskError(message, "ask for a smaller portion or a larger tin")
        key = re.sub(r"\W", "_", name)
        cells[f"{key}_count"] = cut.count
        cells[f"{key}_cut"] = cut_said(cut)
        cells[f"{key}_each_portions"] = round(cut.each, 4)
        if weights is not None:
            cells[f"{key}_g"] = None if serving.each_g is None else round(serving.each_g, 2)
    if weights is not None:
        cells["stands_mm"] = round(height_mm, 2)
    return cells


def cut_said(cut: Cut) -> Saying:
    """How a cake is cut: its way and the pieces of each strip or ring."""
    return saying("cut_as", way=cut.way, counts=cut.counts, parts=cut.parts)


def portions_worked(sizes: Mapping[str, Portion], cake: Saying, facts: Facts) -> Worked:
    """How the counts were worked out."""
    portions = sizes.values()
    return Worked(
        saying("portions_counted"),
        (
            *(
                saying("portion_size", kind=portion.kind, short_mm=portion.short_mm, long_mm=portion.long_mm)
                for portion in portions
            ),
            cake,
            saying("share_served", small=sums.SMALL_YIELD, known=sums.YIELDS, long=sums.LONG_YIELD),
            saying("strips_wide"),
            saying("outline_cut"),
        ),
        tuple(
            dict.fromkeys(
                (
                    *(portion.said_by for portion in portions if portion.said_by in facts.sources),
                    "common practice",
                    "our own judgement",
                )
            )
        ),
    )


def portion_grams(portion: Portion, kind: Kind, height_mm: float, rise: float) -> float:
    """The weight of a portion of one kind of cake, by the usual weight of its batter, its rise and its loss."""
    loss = kind.loss.typical if kind.loss else 0.0
    return sums.grams(portion.area_mm2, height_mm, kind.gravity.typical, rise, loss)


def guests(book: Book, facts: Facts, query: Query) -> Result:
    """The best sets that serve this many guests, or without a number the best for each usual one; or a named set,
    judged. With --of, the mixture they take."""
    laid, kind = _choices_asked(book, facts, query, query.portion or "dessert")
    wish = Wish(
        guests=query.guests or 0,
        kind=kind,
        keep_top=query.keep_top,
        owned=query.owned,
        beside=query.beside or BESIDE[0],
    )
    if query.stacked:
        return _judged(book, facts, query, laid.portions[kind])
    if query.guests:
        best = [(query.guests, answer) for answer in answers(laid, wish, 10)]
    else:
        best = [(count, answer) for count in GUESTS for answer in answers(laid, replace(wish, guests=count), 1)]
    if not best:
        message = f"no set of up to four tiers serves {query.guests}{', in tins you own' if query.owned else ''}"
        raise AskError(message, "bake more than one cake")
    batch = _cake_asked(book, facts, query) if query.of else None
    deep_mm = _deep_mm(batch, book, facts, query) if batch else 0.0
    rows: list[Row] = []
    for count, answer in best:
        row: dict[str, Cell] = {
            "guests": count,
            "tiers": saying("set_of_tiers", tins=tuple(laid.tiers[place].tin.name for place in answer.tiers)),
            "beside": beside_said(laid, answer),
            "serves": answer.serves,
            "over": answer.over,
            "tins": answer.tins,
            "owned": answer.owned,
        }
        if batch:
            row["factor"] = round(factor(batch, deep_mm, laid, answer), 4)
            row["batter_ml"] = round(batter_ml(deep_mm, laid, answer), 1)
        rows.append(row)
    inputs = _guest_size(laid.portions[kind], laid.height_mm), saying("tiers_apart"), saying("tins_that_serve")
    worked = Worked(saying("best_set"), inputs, ("common practice",))
    return Result(saying("tins_for_guests", guests=query.guests), tuple(rows), worked)


def _judged(book: Book, facts: Facts, query: Query, portion: Portion) -> Result:
    """What a named set serves, and how it stands."""
    for name in ("owned", "beside"):
        if getattr(query, name):
            raise AskError(
                f"--set names the whole cake; it cannot be used with {OPTIONS[name]}", "leave one of them out"
            )
    height_mm = query.height_mm or finishing(book.finish, facts).heights_mm[0]
    tiers = named_set(query.stacked, portion, book, facts, height_mm)
    counted = tiers[:-1] if query.keep_top else tiers
    if not counted:
        raise AskError("a single tier cannot be both cut and kept", "leave out --keep-top, or name more tiers")
    serves = sum(tier.serves[0] for tier in counted)
    row: dict[str, Cell] = {
        "tiers": saying("set_of_tiers", tins=tuple(tier.tin.name for tier in tiers)),
        "serves": serves,
    }
    if query.guests:
        row["guests"], row["over"] = query.guests, serves - query.guests
    if query.of:
        batch = _cake_asked(book, facts, query)
        batter = sum(tier.area_mm2 for tier in tiers) * _deep_mm(batch, book, facts, query) / 1000.0
        row["factor"], row["batter_ml"] = round(batter / batch.batter_ml, 4), round(batter, 1)
    short = [saying("set_short", short=query.guests - serves)] if query.guests and serves < query.guests else []
    row["judged"] = saying("set_judged", said=(*short, *judged(tiers, book, facts, height_mm)))
    worked = Worked(
        saying("set_serves"), (_guest_size(portion, height_mm), saying("tiers_apart")), ("common practice",)
    )
    return Result(saying("set_named"), (row,), worked)


def _guest_size(size: Portion, height_mm: float) -> Saying:
    return saying("guest_size", short_mm=size.short_mm, long_mm=size.long_mm, high_mm=height_mm)


def _deep_mm(batch: Batch, book: Book, facts: Facts, query: Query) -> float:
    """How deep a tier's batter stands in all its tins: as written, or for a cake as high as asked."""
    if query.height_mm is None:
        return own_batter_mm(batch)
    return batter_mm(batch, finishing(book.finish, facts, batch.mixture.finish), query.height_mm)


def _choices_asked(book: Book, facts: Facts, query: Query, portion: str | tuple[float, float]) -> tuple[Choices, int]:
    """What can be chosen from, and the place of the portion among its kinds."""
    if isinstance(portion, str):
        sizes = portion_sizes(book, facts)
        return choices(book, facts, query.height_mm), list(sizes.values()).index(portion_called(portion, sizes))
    own = _portions_asked(book, facts, replace(query, portion=portion))[ASKED]
    return choices(book, facts, query.height_mm, (own,)), 0


def beside_said(laid: Choices, answer: Answer) -> Saying | str | None:
    """What stands beside the cake: a tin's name, or a number of cups; None for nothing."""
    if answer.tray is not None:
        return laid.tiers[answer.tray].tin.name
    if answer.cups and laid.cups:
        return saying("cups_beside", count=answer.cups * laid.cups.tin.holes, tin=laid.cups.tin.name)
    return None
