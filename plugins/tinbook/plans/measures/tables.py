"""The tables of the page of measures, and of what may stand in for what, to be asked for by name."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import Query
from tinbook.plans.base.result import Cell, Result, Row, plain_rows, short
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.conversions import conversions
from tinbook.plans.measures.eggs import eggs as in_the_bowl
from tinbook.plans.measures.ingredients import weights as weighed
from tinbook.plans.measures.lengths import lengths as in_inches
from tinbook.plans.measures.pieces import BATTERS_G, SmallSums, small_sums
from tinbook.plans.measures.pounds import pounds
from tinbook.plans.measures.swaps import swap_table


def oven(book: Book, facts: Facts, query: Query) -> Result:
    """Gas marks in °C, fan °C and °F."""
    page = conversions(book, facts)
    return Result("Oven", plain_rows(page.oven), page.oven_worked)


def heat(book: Book, facts: Facts, query: Query) -> Result:
    """A dial in °C as fan, °F and gas mark."""
    page = conversions(book, facts)
    return Result("Oven, by the dial", plain_rows(page.heat), page.heat_worked)


def spoons(book: Book, facts: Facts, query: Query) -> Result:
    """Cups and spoons by whose kitchen."""
    page = conversions(book, facts)
    return Result("Spoons and cups", plain_rows(page.spoons), page.spoons_worked)


def ounces(book: Book, facts: Facts, query: Query) -> Result:
    """Ounces in grams."""
    made = pounds(facts)
    return Result("Ounces and pounds", plain_rows(made.ounces), made.worked)


def grams(book: Book, facts: Facts, query: Query) -> Result:
    """Grams in ounces."""
    made = pounds(facts)
    return Result("Grams in ounces", plain_rows(made.grams), made.worked)


def pints(book: Book, facts: Facts, query: Query) -> Result:
    """Fluid ounces and pints in ml."""
    made = pounds(facts)
    return Result("Pints and fluid ounces", plain_rows(made.pints), made.pints_worked)


def lengths(book: Book, facts: Facts, query: Query) -> Result:
    """Inches in mm, and the size a tin of so many inches is sold as."""
    made = in_inches()
    return Result("Inches", plain_rows(made.rows), made.worked)


def eggs(book: Book, facts: Facts, query: Query) -> Result:
    """Egg classes by weight."""
    page = conversions(book, facts)
    return Result("Eggs", plain_rows(page.eggs), page.eggs_worked)


def bowl(book: Book, facts: Facts, query: Query) -> Result:
    """So many eggs out of their shells, by class."""
    made = in_the_bowl(book, facts)
    rows: list[Row] = []
    for row in made.bowl:
        cells: dict[str, Cell] = {"eggs": row.count}
        for name, exact, shown in zip(made.classes, row.exact_g, row.shown_g, strict=True):
            key = name.replace(" ", "_")
            cells |= {f"{key}_exact_g": short(exact), f"{key}_g": shown}
        rows.append(cells)
    return Result("Eggs in the bowl", tuple(rows), made.worked)


def parts(book: Book, facts: Facts, query: Query) -> Result:
    """So many eggs of the house: whole, white and yolk."""
    made = in_the_bowl(book, facts)
    return Result(f"Whites and yolks, {made.house}", plain_rows(made.parts), made.worked)


def cups(book: Book, facts: Facts, query: Query) -> Result:
    """Ingredients by the house's cup and spoons."""
    page = conversions(book, facts)
    return Result("By the cup", plain_rows(page.cups), page.cups_worked)


def weights(book: Book, facts: Facts, query: Query) -> Result:
    """Every ingredient by every cup and spoon, with its range."""
    rows: list[Row] = []
    for name, card in sorted(book.cards.items()):
        made = weighed(card, book, facts)
        rows += [{"ingredient": name, **row, "kind": made.kind} for row in plain_rows(made.measures)]
    sources = dict.fromkeys(fact.source for fact in facts.densities.values())
    return Result(
        "What they weigh", tuple(rows), Worked("grams = weight of 1 ml × ml of the cup or spoon", (), tuple(sources))
    )


def flour(book: Book, facts: Facts, query: Query) -> Result:
    """Self-raising flour from plain flour and baking powder."""
    page = conversions(book, facts)
    return Result("Self-raising from plain", plain_rows(page.flour), page.flour_worked)


def swaps(book: Book, facts: Facts, query: Query) -> Result:
    """What may stand in for what, a row a part."""
    rows: list[Row] = []
    for key in facts.swaps:
        made = swap_table(key, book, facts)
        for row in made.rows:
            for part, told in zip(made.swap.parts, row.parts, strict=True):
                rows.append(
                    {
                        "swap": key,
                        "instead": made.swap.instead,
                        "amount": row.amount,
                        "unit": made.swap.unit,
                        "part": part.key,
                        "leave_out": part.leave,
                        "exact": short(told.exact),
                        "shown": told.shown,
                        "part_unit": told.unit,
                        "spoons": told.spoons.shown if told.spoons else None,
                        "spoon": told.spoons.unit if told.spoons else None,
                    }
                )
    every = dict.fromkeys(part.source for swap in facts.swaps.values() for part in swap.parts)
    worked = Worked("each part = its rate, or its share of the whole, × the amount asked", (), tuple(every))
    return Result("What may stand in", tuple(rows), worked)


def _sums(facts: Facts, query: Query) -> SmallSums:
    return small_sums(facts, BATTERS_G if query.weight_g is None else (query.weight_g,))


def pieces(book: Book, facts: Facts, query: Query) -> Result:
    """How many cupcakes from a batter; with --weight from that."""
    made = _sums(facts, query)
    return Result("How many from a batter", plain_rows(made.pieces), made.pieces_worked)


def needed(book: Book, facts: Facts, query: Query) -> Result:
    """The batter for so many cupcakes."""
    made = _sums(facts, query)
    return Result("Batter for so many", plain_rows(made.needed), made.needed_worked)


def left(book: Book, facts: Facts, query: Query) -> Result:
    """What to multiply a recipe by for what is left."""
    made = _sums(facts, query)
    return Result("From what is left", plain_rows(made.left), made.left_worked)
