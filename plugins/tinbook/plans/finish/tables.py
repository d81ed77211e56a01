"""The tables of what a cake becomes and what it takes to finish it, to be asked for by name."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import as_owned
from tinbook.plans.finish.boards import board_table
from tinbook.plans.finish.covering import coat_table, paste_table
from tinbook.plans.finish.layers import Stack, stack_table, wanted


def _stack(stack: Stack) -> dict[str, Cell]:
    return {
        "tin": stack.tin.full_name,
        "tins": stack.tins,
        "batter_mm": round(stack.batter_mm, 2),
        "baked_mm": round(stack.baked_mm, 2),
        "levelled_mm": round(stack.levelled_mm, 2),
        "cut_into": stack.cut,
        "layers": stack.layers,
        "layer_mm": round(stack.layer_mm, 2),
        "stack_mm": round(stack.stack_mm, 2),
        "coated_mm": round(stack.coated_mm, 2),
        "baked_g": round(stack.weight_g, 1),
    }


def layers(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture's layers in every tin; or, asked with layers, a layer's height and a tin, the mixture for them."""
    batch = batch_asked(book, facts, query)
    if query.layers or query.layer_mm or query.tins:
        if not (query.layers and query.layer_mm and len(query.tins) == 1):
            message = "layers are asked for with their height and one tin"
            raise AskError(message, 'ask with --layers 4 --layer "28 mm" --tin "round 15 cm"')
        tin = as_owned(query.tins[0][1], book)
        answer = wanted(batch, book, facts, tin, query.layers, query.layer_mm)
        row: Row = {
            "least_tin_depth_mm": answer.least_mm,
            **_stack(answer.stack),
            "factor": round(answer.exact.factor, 6),
            "mixture_g": round(answer.exact.mass_g, 2),
            "whole_egg_factor": round(answer.whole.factor, 6),
            "whole_egg_mixture_g": round(answer.whole.mass_g, 2),
            "beaten_egg": answer.beaten,
        }
        return Result(saying("for_layers", mixture=batch.mixture.name), (row,), answer.worked)
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask of a cake")
    table = stack_table(tin_table(batch, book, facts), book, facts)
    rows: tuple[Row, ...] = tuple({**_stack(line.stack), "owned": line.owned} for line in table.rows)
    return Result(saying("in_layers", mixture=batch.mixture.name), rows, table.worked)


def coats(book: Book, facts: Facts, query: Query) -> Result:
    """A filling or icing in and round a cake of every tin."""
    batch = batch_asked(book, facts, query)
    table = coat_table(batch, book, facts, query.height_mm)
    rows: tuple[Row, ...] = tuple(
        {
            "tin": row.cake.tin.name,
            "owned": row.owned,
            "height_mm": round(row.cake.stands_mm, 2),
            "layers": row.cake.layers,
            "filling_g": round(row.filling_g, 2),
            "crumb_coat_g": round(row.crumb_g, 2),
            "final_coat_g": round(row.final_g, 2),
            "border_g": round(row.border_g, 2),
            "made_g": round(row.made_g, 2),
            "recipes": round(row.factor, 4),
            "batches": row.batches,
            "over_g": round(row.over_g, 2),
        }
        for row in table.rows
    )
    return Result(saying("in_and_round", mixture=batch.mixture.name), rows, table.worked)


def covers(book: Book, facts: Facts, query: Query) -> Result:
    """A paste over a cake of every tin."""
    batch = batch_asked(book, facts, query)
    table = paste_table(batch, book, facts, query.height_mm)
    rows: tuple[Row, ...] = tuple(
        {
            "tin": row.cake.tin.name,
            "owned": row.owned,
            "height_mm": round(row.cake.stands_mm, 2),
            "on_the_cake_g": round(row.net_g, 2),
            "trade_low_g": round(row.net_low_g, 2),
            "trade_high_g": round(row.net_high_g, 2),
            "rolled": saying("rolled_to_a_disc") if row.disc else saying("rolled_to_a_rectangle"),
            "rolled_width_mm": round(row.rolled_mm[0], 1),
            "rolled_length_mm": round(row.rolled_mm[1], 1),
            "roll_out_g": round(row.made_g, 2),
            "comes_back_g": round(row.back_g, 2),
            "batches": row.batches,
        }
        for row in table.rows
    )
    return Result(saying("over_a_cake", mixture=batch.mixture.name), rows, table.worked)


def _sides(name: str, sides_mm: tuple[float, ...] | None, *sides: str) -> dict[str, Cell]:
    """The `sides` of a thing, each under its own key in mm; none of what is not sold so large."""
    keys = [f"{name}_{side}_mm" for side in sides or ("width", "length")]
    return dict(zip(keys, sides_mm, strict=True)) if sides_mm else dict.fromkeys(keys)


def boards(book: Book, facts: Facts, query: Query) -> Result:
    """Drum, card, paste, ribbon and box for a cake of every tin."""
    table = board_table(book, facts, query.height_mm)
    rows: tuple[Row, ...] = tuple(
        {
            "tin": row.cake.tin.name,
            "owned": row.owned,
            **_sides("least", row.least.size_mm),
            **_sides("usual", row.usual.size_mm),
            **_sides("wide", row.wide.size_mm),
            **_sides("taken", row.chosen.size_mm),
            "round": row.chosen.disc,
            "whole_board_g": None if row.whole_g is None else round(row.whole_g, 2),
            "ring_only_g": None if row.ring_g is None else round(row.ring_g, 2),
            "board_ribbon_mm": None if row.board_ribbon_mm is None else round(row.board_ribbon_mm, 1),
            "cake_ribbon_mm": round(row.cake_ribbon_mm, 1),
            "guide_mm": round(row.guide_mm[0], 1),
            **_sides("box", row.box_shown_mm, "width", "length", "height"),
        }
        for row in table.rows
    )
    return Result(saying("boards_and_ribbon"), rows, table.worked)
