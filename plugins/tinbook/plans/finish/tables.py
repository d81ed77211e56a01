"""The tables of a cake's layers and what it takes to finish it, by name."""

from __future__ import annotations

from itertools import starmap

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.finish.boards import Drum, board_table
from tinbook.plans.finish.cakes import Cakes, baked_cakes, usual_cakes
from tinbook.plans.finish.coating import CoatRow
from tinbook.plans.finish.covered import CoveredTable, covered_table
from tinbook.plans.finish.covering import coat_table, paste_table, paste_worked
from tinbook.plans.finish.layers import Stack, stack_table, wanted
from tinbook.plans.finish.pasting import PasteRow


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
            message = "layers need a height and a single tin"
            raise AskError(message, 'write --layers 4 --layer "28 mm" --tin "round 15 cm"')
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
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask about a cake")
    table = stack_table(tin_table(batch, book, facts), book, facts)
    rows: tuple[Row, ...] = tuple({**_stack(line.stack), "owned": line.owned} for line in table.rows)
    return Result(saying("in_layers", mixture=batch.mixture.name), rows, table.worked)


def coats(book: Book, facts: Facts, query: Query) -> Result:
    """A filling or icing in and round a cake from every tin; or, for a cake, what it takes, one row for each
    mixture."""
    batch = stuff_asked(book, facts, query)
    if batch.tins:
        table = _covered_asked(batch, book, facts, query)
        if not table.mixtures:
            raise AskError(
                "the house has not said what its cakes are filled and coated with",
                'add "made with:" to house/finish.yaml, such as "{filling: american-buttercream}"',
            )
        found = [
            (table.mixtures[slug], row)
            for line in table.rows
            for slug, row in zip(table.mixtures, line.made, strict=True)
        ]
        return Result(saying("in_and_round", mixture=batch.mixture.name), tuple(starmap(_coat, found)), table.worked)
    asked = coat_table(batch, book, facts, query.height_mm)
    rows = tuple(_coat(batch, row) for row in asked.rows)
    return Result(saying("in_and_round", mixture=batch.mixture.name), rows, asked.worked)


def _coat(batch: Batch, row: CoatRow) -> Row:
    return {
        "tin": row.cake.tin.name,
        "owned": row.owned,
        "mixture": batch.mixture.name,
        "height_mm": round(row.cake.stands_mm, 2),
        "layers": row.cake.layers,
        "filling_g": round(row.filling_g, 2),
        "crumb_coat_g": round(row.crumb_g, 2),
        "final_coat_g": round(row.final_g, 2),
        "border_g": round(row.border_g, 2),
        "bag_g": round(row.bag_g, 2),
        "made_g": round(row.made_g, 2),
        "recipes": round(row.factor, 4),
        "batches": row.batches,
        "over_g": round(row.over_g, 2),
    }


def covers(book: Book, facts: Facts, query: Query) -> Result:
    """A paste over a cake from every tin; or, for a cake, the paste the house covers it with."""
    batch = stuff_asked(book, facts, query)
    if batch.tins:
        table = _covered_asked(batch, book, facts, query)
        if table.cover is None:
            raise AskError(
                "the house has not said what its cakes are covered with",
                'add "made with:" to house/finish.yaml, such as "{cover: sugarpaste}"',
            )
        cover = table.cover
        rows = tuple(_cover(cover, row.paste) for row in table.rows if row.paste)
        worked = paste_worked(cover, table.finishing, table.cakes.said, table.learned[cover.slug], facts)
        return Result(saying("over_a_cake", mixture=batch.mixture.name), rows, worked)
    asked = paste_table(batch, book, facts, query.height_mm)
    return Result(
        saying("over_a_cake", mixture=batch.mixture.name),
        tuple(_cover(batch, row) for row in asked.rows),
        asked.worked,
    )


def _cover(batch: Batch, row: PasteRow) -> Row:
    return {
        "tin": row.cake.tin.name,
        "owned": row.owned,
        "paste": batch.mixture.name,
        "height_mm": round(row.cake.stands_mm, 2),
        "on_the_cake_g": round(row.net_g, 2),
        "some_get_by_on_g": round(row.net_low_g, 2),
        "rolled": saying("rolled_to_a_disc") if row.disc else saying("rolled_to_a_rectangle"),
        "rolled_width_mm": round(row.rolled_mm[0], 1),
        "rolled_length_mm": round(row.rolled_mm[1], 1),
        "roll_out_g": round(row.made_g, 2),
        "comes_back_g": round(row.back_g, 2),
        "batches": None if batch.bought else row.batches,
        "pack_count": sum(count for count, _ in row.packs) if row.packs else None,
        "pack_total_g": round(sum(count * size for count, size in row.packs), 1) if row.packs else None,
        "some_makers_allow_g": round(row.net_high_g, 2),
    }


def stuff_asked(book: Book, facts: Facts, query: Query) -> Batch:
    """A mixture, or what is bought to fill or cover a cake. AskError if the book has none by that name."""
    batch = made_or_bought(query.of, book, facts) if query.of else None
    return batch or batch_asked(book, facts, query)


def _covered_asked(batch: Batch, book: Book, facts: Facts, query: Query) -> CoveredTable:
    return covered_table(own_cakes(batch, book, facts, query), book, facts)


def own_cakes(batch: Batch, book: Book, facts: Facts, query: Query) -> Cakes:
    """A mixture's own cakes. AskError if it is not baked in tins, and for a height asked for together with the
    mixture."""
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask about a cake")
    if query.height_mm:
        hint = "leave out --height, or leave out --of for a cake of any height"
        raise AskError(f'"{batch.mixture.name}" is as high as it bakes', hint)
    return baked_cakes(tin_table(batch, book, facts), book, facts)


def _sides(name: str, sides_mm: tuple[float, ...] | None, *sides: str) -> dict[str, Cell]:
    """The `sides` of a thing, each under its own key in mm; None if it is not sold that large."""
    keys = [f"{name}_{side}_mm" for side in sides or ("width", "length")]
    return dict(zip(keys, sides_mm, strict=True)) if sides_mm else dict.fromkeys(keys)


def boards(book: Book, facts: Facts, query: Query) -> Result:
    """Drum, card, paste, ribbon and box for a cake from every tin: a mixture's own, or as high as asked."""
    if query.of:
        cakes = own_cakes(batch_asked(book, facts, query), book, facts, query)
    else:
        cakes = usual_cakes(book, facts, query.height_mm)
    table = board_table(cakes, book, facts)
    rows: tuple[Row, ...] = tuple(
        {
            "tin": row.cake.tin.name,
            "owned": row.owned,
            "height_mm": round(row.cake.stands_mm, 2),
            **_drum("least", row.drums["least"]),
            **_drum("usual", row.drums["usual"]),
            **_drum("wide", row.drums["wide"]),
            **_sides("taken", row.chosen.board.size_mm),
            "round": row.chosen.board.disc,
            "cake_ribbon_mm": round(row.cake_ribbon_mm, 1),
            "guide_mm": round(row.guide_mm[0], 1),
        }
        for row in table.rows
    )
    return Result(saying("boards_and_ribbon"), rows, table.worked)


def _drum(name: str, drum: Drum) -> dict[str, Cell]:
    return {
        **_sides(name, drum.board.size_mm),
        f"{name}_whole_board_g": None if drum.whole_g is None else round(drum.whole_g, 2),
        f"{name}_ring_only_g": None if drum.ring_g is None else round(drum.ring_g, 2),
        f"{name}_ribbon_mm": None if drum.ribbon_mm is None else round(drum.ribbon_mm, 1),
        **_sides(f"{name}_box", drum.box_shown_mm, "width", "length", "height"),
    }
