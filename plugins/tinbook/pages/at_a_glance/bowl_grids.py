"""The grids of what goes in: eggs, cupcakes from a batter, what to make of leftovers, self-raising flour."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.pages.at_a_glance.measure_grids import OURS
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.formats import fixed, mixed, number, title
from tinbook.plans.measures.eggs import EggRow, Eggs, classes_worked, egg_rows
from tinbook.plans.measures.flour import flour_rows, flour_worked
from tinbook.plans.measures.pieces import EGGS, SmallSums


def egg_grid(book: Book, facts: Facts) -> Grid:
    """Eggs by class."""
    rows = tuple(
        GridRow(
            head=title(row.egg_class),
            cells=(
                Cell(in_shell(row)),
                Cell(number(row.shelled_shown_g), main=True, note=_bounds(row)),
                *cells(number(row.white_shown_g), number(row.yolk_shown_g)),
            ),
            note=OURS if row.of_the_house else "",
        )
        for row in egg_rows(book, facts)
    )
    heads = (
        Head("Size"), Head("In its shell", "g"), Head("Shelled", "g"), Head("White", "g"), Head("Yolk", "g"),
    )  # fmt: skip
    return Grid(
        title="Eggs by size",
        anchor="eggs",
        heads=heads,
        rows=rows,
        worked=worked_view((classes_worked(facts),), facts),
    )


def in_shell(row: EggRow) -> str:
    """The bounds of a class in the shell, in words."""
    low, high = row.shell_low_g, row.shell_high_g
    if low and high:
        return f"{number(low)} to under {number(high)}"
    if high:
        return f"under {number(high)}"
    return f"{number(low)} and over" if low else "no limit"


def _bounds(row: EggRow) -> str:
    """What an egg of the class weighs at the least and the most, out of its shell."""
    low, high = row.shelled_low_g, row.shelled_high_g
    if low is None or high is None:
        return f"to {number(high)}" if high is not None else f"from {number(low or 0.0)}"
    return formats.bounds(low, high)


def bowl_grid(eggs: Eggs, facts: Facts) -> Grid:
    """Numbers of eggs in each class."""
    ours = eggs.classes.index(eggs.house)
    rows = tuple(
        GridRow(
            head=number(row.count),
            cells=tuple(Cell(number(g), index == ours) for index, g in enumerate(row.shown_g)),
        )
        for row in eggs.bowl
    )
    heads = (Head("Eggs"), *(Head(name, "g") for name in eggs.classes))
    lead = "Weighed without the shell. Read across to swap one size for another: look for the nearest weight."
    return Grid(
        title="Eggs in the bowl",
        anchor="bowl",
        heads=heads,
        rows=rows,
        worked=worked_view((eggs.worked,), facts),
        lead=lead,
    )


def part_grid(eggs: Eggs, facts: Facts) -> Grid:
    """Numbers of the house's eggs, white and yolk."""
    rows = tuple(
        GridRow(
            head=number(row.count),
            cells=(
                Cell(number(row.whole_g), True, formats.bounds(row.whole_low_g, row.whole_high_g)),
                Cell(number(row.white_g), True, formats.bounds(row.white_low_g, row.white_high_g)),
                Cell(number(row.yolk_g), True, formats.bounds(row.yolk_low_g, row.yolk_high_g)),
            ),
        )
        for row in eggs.parts
    )
    heads = (Head("Eggs", eggs.house), Head("Whole", "g"), Head("Whites", "g"), Head("Yolks", "g"))
    return Grid(
        title="Whites and yolks of our eggs",
        anchor="whites",
        heads=heads,
        rows=rows,
        worked=worked_view((eggs.worked,), facts),
        short="Whites and yolks",
    )


def piece_grid(sums: SmallSums, facts: Facts) -> Grid:
    """How many cupcakes a batter makes."""
    by_batter: dict[float, list[Cell]] = {}
    for row in sums.pieces:
        met = "" if row.count_low == row.count_high else f"{row.count_low}–{row.count_high}"
        by_batter.setdefault(row.batter_g, []).append(Cell(str(row.count), True, met))
    rows = tuple(GridRow(head=formats.grams(batter), cells=tuple(counts)) for batter, counts in by_batter.items())
    heads = (Head("Batter"), *_cases(sums, "each"))
    lead = "How many cupcakes of a given weight a batter makes."
    return Grid(
        title="How many cupcakes",
        anchor="pieces",
        heads=heads,
        rows=rows,
        worked=worked_view((sums.pieces_worked,), facts),
        lead=lead,
        sums=True,
        short="How many",
    )


def needed_grid(sums: SmallSums, facts: Facts) -> Grid:
    """How much batter a number of cupcakes takes."""
    by_count: dict[int, list[Cell]] = {}
    for row in sums.needed:
        met = formats.bounds(row.batter_low_g, row.batter_high_g)
        by_count.setdefault(row.count, []).append(Cell(number(row.batter_g), True, met))
    rows = tuple(GridRow(head=str(count), cells=tuple(batters)) for count, batters in by_count.items())
    heads = (Head("Cupcakes"), *_cases(sums, "each; g to mix"))
    return Grid(
        title="How much to mix",
        anchor="needed",
        heads=heads,
        rows=rows,
        worked=worked_view((sums.needed_worked,), facts),
    )


def _cases(sums: SmallSums, told: str) -> Iterator[Head]:
    """A column for each weight of a case; the house's own says so."""
    for case_g in sums.each_g:
        own = sums.logged and case_g == sums.case_g
        yield Head(formats.grams(case_g), told.replace("each", "logged") if own else told)


def left_grid(sums: SmallSums, facts: Facts) -> Grid:
    """What to multiply by to use up what is left."""
    by_asked: dict[float, list[Cell]] = {}
    for row in sums.left:
        by_asked.setdefault(row.asked, []).append(Cell(fixed(row.shown_factor, 2), row.asked == row.left))
    rows = tuple(GridRow(head=number(asked), cells=tuple(factors)) for asked, factors in by_asked.items())
    heads = (Head("Recipe asks for"), *(Head(str(left), "left") for left in EGGS))
    lead = (
        "Find the number of eggs the recipe asks for and the number you have left, and multiply everything by "
        "the figure where they meet."
    )
    return Grid(
        title="Using up what is left",
        anchor="left",
        heads=heads,
        rows=rows,
        worked=worked_view((sums.left_worked,), facts),
        lead=lead,
    )


def flour_grid(facts: Facts) -> Grid:
    """Self-raising flour from plain."""
    rows = tuple(
        GridRow(
            head=number(row.self_raising_g),
            cells=cells(number(row.plain_g), number(row.powder_g), mixed(row.powder_tsp), main=2),
        )
        for row in flour_rows(facts)
    )
    powder = "Baking powder"
    heads = (Head("Self-raising", "g"), Head("Plain flour", "g"), Head(powder, "g"), Head(powder, "tsp"))
    return Grid(
        title="Self-raising flour from plain",
        anchor="flour",
        heads=heads,
        rows=rows,
        worked=worked_view((flour_worked(facts),), facts),
        short="Self-raising",
    )
