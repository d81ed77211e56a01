"""The tables of the measures page, and of what can replace what, as they are asked for by name."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import Query
from tinbook.plans.base.result import Cell, Result, Row, batch_asked, in_units, plain_rows, short
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.cups import cup_rows, cups_worked, spoon_rows, spoons_worked
from tinbook.plans.measures.eggs import classes_worked, egg_rows
from tinbook.plans.measures.eggs import eggs as in_the_bowl
from tinbook.plans.measures.flour import flour_rows, flour_worked
from tinbook.plans.measures.heat import heat_rows, heat_worked, mark_number, oven_rows, oven_worked
from tinbook.plans.measures.ingredients import weights as weighed
from tinbook.plans.measures.lengths import lengths as in_inches
from tinbook.plans.measures.pieces import BATTERS_G, SmallSums, small_sums
from tinbook.plans.measures.pounds import pounds
from tinbook.plans.measures.spooned import Spooned, measured, measured_worked
from tinbook.plans.measures.swaps import swap_table


def oven(book: Book, facts: Facts, query: Query) -> Result:
    """Gas marks in °C, fan °C and °F: as printed, exact, and the range met in print."""
    rows: tuple[Row, ...] = tuple(
        {
            "gas_mark": mark_number(row.gas_mark),
            **_ends("conventional", row.conventional_ends_c),
            **_ends("fan", row.fan_ends_c),
            "fahrenheit_f": row.fahrenheit_f,
            "exact_c": short(row.exact_c),
            "print_low_c": row.low_c,
            "print_high_c": row.high_c,
        }
        for row in oven_rows(facts)
    )
    return Result(saying("oven_table"), rows, oven_worked(facts))


def _ends(name: str, ends_c: tuple[float, float]) -> Row:
    return {f"{name}_low_c": ends_c[0], f"{name}_high_c": ends_c[1]}


def heat(book: Book, facts: Facts, query: Query) -> Result:
    """A dial setting in °C as fan, °F and gas mark."""
    rows = tuple({**row, "gas_mark": mark_number(str(row["gas_mark"]))} for row in plain_rows(heat_rows(facts)))
    return Result(saying("dial_table"), rows, heat_worked(facts))


def spoons(book: Book, facts: Facts, query: Query) -> Result:
    """Cups and spoons, and whose kitchen they belong to."""
    return Result(saying("spoon_table"), plain_rows(spoon_rows(book, facts)), spoons_worked(book, facts))


def ounces(book: Book, facts: Facts, query: Query) -> Result:
    """Ounces in grams."""
    weights = pounds(facts)
    return Result(saying("ounce_table"), plain_rows(weights.ounces), weights.worked)


def grams(book: Book, facts: Facts, query: Query) -> Result:
    """Grams in ounces."""
    weights = pounds(facts)
    return Result(saying("gram_table"), plain_rows(weights.grams), weights.worked)


def pints(book: Book, facts: Facts, query: Query) -> Result:
    """Fluid ounces and pints in ml."""
    volumes = pounds(facts)
    return Result(saying("pint_table"), plain_rows(volumes.pints), volumes.pints_worked)


def lengths(book: Book, facts: Facts, query: Query) -> Result:
    """Inches in mm, and the size a tin of that many inches is sold as."""
    table = in_inches(book.house.tins_sold_in)
    return Result(saying("inch_table"), plain_rows(table.rows), table.worked)


def eggs(book: Book, facts: Facts, query: Query) -> Result:
    """Egg classes by weight."""
    return Result(saying("egg_table"), plain_rows(egg_rows(book, facts)), classes_worked(facts))


def bowl(book: Book, facts: Facts, query: Query) -> Result:
    """Numbers of eggs out of their shells, by class."""
    table = in_the_bowl(book, facts)
    rows: list[Row] = []
    for row in table.bowl:
        cells: dict[str, Cell] = {"eggs": row.count}
        for name, exact, shown in zip(table.classes, row.exact_g, row.shown_g, strict=True):
            key = name.replace(" ", "_")
            cells |= {f"{key}_exact_g": short(exact), f"{key}_g": shown}
        rows.append(cells)
    return Result(saying("bowl_table"), tuple(rows), table.worked)


def parts(book: Book, facts: Facts, query: Query) -> Result:
    """Numbers of the house's eggs: whole, white and yolk."""
    table = in_the_bowl(book, facts)
    return Result(saying("egg_part_table", egg_class=table.house), plain_rows(table.parts), table.worked)


def cups(book: Book, facts: Facts, query: Query) -> Result:
    """Ingredients by the house's cup and spoons."""
    return Result(saying("cup_table"), plain_rows(cup_rows(book, facts)), cups_worked(book, facts))


def weights(book: Book, facts: Facts, query: Query) -> Result:
    """Every ingredient by every cup and spoon, with its range."""
    rows: list[Row] = []
    for name, card in sorted(book.cards.items()):
        weight = weighed(card, book, facts)
        rows += [{"ingredient": name, **row, "kind": weight.kind} for row in plain_rows(weight.measures)]
    return Result(saying("weight_table"), tuple(rows), cups_worked(book, facts))


def flour(book: Book, facts: Facts, query: Query) -> Result:
    """Self-raising flour from plain flour and baking powder."""
    return Result(saying("flour_table"), plain_rows(flour_rows(facts)), flour_worked(facts))


ASKED_IN, GIVEN_IN, SPOONS = ("g", "ml", "tsp", ""), ("g", "ml", "tsp"), ("tsp", "tbsp", "cup")


def _spooned(name: str, spoons: Spooned | None) -> Row:
    """A spooned amount, under the name of its spoon or cup."""
    return in_units(name, spoons.shown if spoons else None, spoons.unit if spoons else "", SPOONS)


def swaps(book: Book, facts: Facts, query: Query) -> Result:
    """What can replace what, one row for each part."""
    rows: list[Row] = []
    each: list[Worked] = []
    for key in facts.swaps:
        table = swap_table(key, book, facts)
        each.append(table.worked)
        for row in table.rows:
            for part, amount in zip(table.swap.parts, row.parts, strict=True):
                rows.append(
                    {
                        "swap": key,
                        "instead": table.swap.instead,
                        **in_units("amount", row.amount, table.swap.unit, ASKED_IN),
                        "part": part.key,
                        "leave_out": part.leave,
                        **in_units("exact", short(amount.exact), amount.unit, GIVEN_IN),
                        **in_units("shown", amount.shown, amount.unit, GIVEN_IN),
                        **_spooned("spoons", amount.spoons),
                    }
                )
    inputs = dict.fromkeys(told for worked in each for told in worked.inputs)
    sources = dict.fromkeys(key for worked in each for key in worked.sources)
    return Result(saying("swap_table"), tuple(rows), Worked(saying("swap_by_either"), tuple(inputs), tuple(sources)))


def _sums(book: Book, facts: Facts, query: Query) -> SmallSums:
    return small_sums(book, facts, BATTERS_G if query.weight_g is None else (query.weight_g,))


def pieces(book: Book, facts: Facts, query: Query) -> Result:
    """How many cupcakes a batter makes; with --weight, that batter."""
    sums = _sums(book, facts, query)
    return Result(saying("piece_table"), plain_rows(sums.pieces), sums.pieces_worked)


def needed(book: Book, facts: Facts, query: Query) -> Result:
    """The batter for a number of cupcakes."""
    sums = _sums(book, facts, query)
    return Result(saying("needed_table"), plain_rows(sums.needed), sums.needed_worked)


def left(book: Book, facts: Facts, query: Query) -> Result:
    """What to multiply a recipe by to use up what is left."""
    sums = _sums(book, facts, query)
    return Result(saying("left_table"), plain_rows(sums.left), sums.left_worked)


def written(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture as written, in grams, ounces, spoons and cups."""
    batch = batch_asked(book, facts, query)
    rows = tuple(
        {
            "ingredient": row.line.name,
            "pieces": row.pieces,
            "exact_g": round(row.line.mass_g, 4),
            "shown_g": row.grams,
            "shown_oz": row.ounces,
            "volume_ml": round(row.line.volume_ml, 3) if row.line.volume_ml else None,
            **_spooned("measured", row.spoons),
        }
        for row in measured(batch, book)
    )
    return Result(saying("written_table", mixture=batch.mixture.name), rows, measured_worked(batch, book, facts))
