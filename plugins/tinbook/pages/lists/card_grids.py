"""The grids of an ingredient's page: what it weighs, an egg of each class, what can replace it."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.measures.eggs import PIECES as PIECES_SHOWN
from tinbook.plans.measures.eggs import by_class
from tinbook.plans.measures.ingredients import IngredientWeights, MeasureRow
from tinbook.plans.measures.swaps import InPlace, SwapRow, SwapTable

PIECES = {"whole egg": "Eggs", "egg white": "Whites", "egg yolk": "Yolks"}


def weight_grid(name: str, weight: IngredientWeights, facts: Facts) -> Grid | None:
    """By every cup and spoon, if it has a volume measure."""
    if weight.worked is None:
        return None
    rows = tuple(_measure_row(row) for row in weight.measures)
    rounds = "; ".join(f"{formats.grams(row.grams)} is {formats.spoons(row.spoons)}" for row in weight.rounds)
    source = f"Source: {weight.source}." if weight.source else "Weighed in this kitchen."
    return Grid(
        title=f"{formats.title(name)} by cup and spoon",
        anchor="weighs",
        heads=(Head("Measure"), Head("Weighs", "g"), Head("Range", "g"), Head("Weighs", "oz")),
        rows=rows,
        worked=worked_view((weight.worked,), facts),
        after=f"In our cups and spoons, {rounds}. {source}",
    )


def _measure_row(row: MeasureRow) -> GridRow:
    met = "" if row.low_g is None or row.high_g is None else formats.bounds(row.low_g, row.high_g)
    figures = (
        Cell(formats.number(row.shown_g), main=True),
        Cell(met or "weighed here"),
        Cell(formats.mixed(row.shown_oz)),
    )
    return GridRow(head=formats.title(spell(row.measure)), cells=figures, note="used here" if row.of_the_house else "")


def egg_grid(part: str, desk: Desk) -> Grid:
    """An egg or a part of it by weight: one class for another."""
    rows, worked = by_class(part, desk.book, desk.facts)
    lines = tuple(
        GridRow(
            head=formats.title(row.egg_class),
            cells=cells(*(formats.number(grams) for grams in row.grams_g), main=1),
            note="used here" if row.of_the_house else "",
        )
        for row in rows
    )
    heads = (Head("Size"), *(Head(str(count), "g") for count in PIECES_SHOWN))
    lead = f"{PIECES[part]} of each size, weighed without the shell. Swap one size for another by weight."
    return Grid(
        title="By weight",
        anchor="by-weight",
        heads=heads,
        rows=lines,
        worked=worked_view((worked,), desk.facts),
        lead=lead,
    )


def swap_grid(table: SwapTable, facts: Facts) -> Grid:
    """A swap as a small table: what is asked for on the left, what goes in on the right."""
    swap = table.swap
    replaced = Head(PIECES.get(swap.each, formats.title(swap.instead)), "number" if swap.unit == "piece" else swap.unit)
    parts = tuple(Head(formats.title(part.key), _part_unit(part.unit, part.leave)) for part in swap.parts)
    rows = tuple(_swap_row(row) for row in table.rows)
    return Grid(
        title=swap.title,
        anchor="-".join(table.key.lower().split()),
        heads=(replaced, *parts),
        rows=rows,
        worked=worked_view((table.worked,), facts),
        after=f"{swap.note} {_brings(table)}".strip(),
    )


def _part_unit(unit: str, leave: bool) -> str:
    return f"{unit}, left out" if leave else unit


def _swap_row(row: SwapRow) -> GridRow:
    return GridRow(head=formats.mixed(row.amount), cells=tuple(_in_place(part) for part in row.parts))


def _in_place(part: InPlace) -> Cell:
    shown = formats.mixed(part.shown) if part.unit == "tsp" else formats.number(part.shown)
    return Cell(shown, main=True, note=formats.spoons(part.spoons) if part.spoons else "")


def _brings(table: SwapTable) -> str:
    """The allergens that come with it, and which labels nobody has read."""
    what = "an allergen" if len(table.contains) == 1 else "allergens"
    sentences = [f"This swap contains {formats.sentence(table.contains)} ({what})."] if table.contains else []
    sentences += [f"Read the label on {formats.sentence(table.unknown)}."] if table.unknown else []
    return " ".join(sentences)
