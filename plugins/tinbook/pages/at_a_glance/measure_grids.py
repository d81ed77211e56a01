"""The grids of kitchen measures: the oven, spoons and cups, ounces and pints, inches, ingredients by the cup."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.formats import mixed, number, title
from tinbook.pages.spelling.measures import FILLED
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.measures.cups import cup_name, cup_rows, cups_worked, spoon_rows, spoons_worked
from tinbook.plans.measures.heat import heat_rows, heat_worked, oven_rows, oven_worked
from tinbook.plans.measures.lengths import lengths
from tinbook.plans.measures.pounds import pounds

OURS = "used here"


def oven_grid(facts: Facts) -> Grid:
    """Gas marks."""
    rows = tuple(
        GridRow(
            head=row.gas_mark,
            cells=cells(
                row.conventional_c,
                spell(row.fan_c),
                number(row.fahrenheit_f),
                formats.bounds(row.low_c, row.high_c),
                main=3,
            ),
        )
        for row in oven_rows(facts)
    )
    heads = (
        Head("Gas mark"), Head("Conventional", "°C"), Head("Fan", "°C"), Head("Fahrenheit", "°F"),
        Head("In print", "°C"),
    )  # fmt: skip
    after = "Ovens differ. An oven thermometer on the shelf shows you what yours does."
    return Grid(
        title="Oven by gas mark",
        anchor="oven",
        heads=heads,
        rows=rows,
        worked=worked_view((oven_worked(facts),), facts),
        after=after,
        short="Gas mark",
    )


def dial_grid(facts: Facts) -> Grid:
    """The dial settings of an oven."""
    rows = tuple(
        GridRow(
            head=number(row.conventional_c),
            cells=(
                *cells(number(row.fan_c), number(row.fahrenheit_f), main=2),
                Cell(row.gas_mark, note=_off(row.gas_off_c)),
                Cell(formats.bounds(row.fan_low_c, row.fan_high_c)),
            ),
        )
        for row in heat_rows(facts)
    )
    heads = (
        Head("Conventional", "°C"), Head("Fan", "°C"), Head("Fahrenheit", "°F"), Head("Nearest gas mark"),
        Head("Fan, range", "°C"),
    )  # fmt: skip
    return Grid(
        title="Oven by the dial",
        anchor="dial",
        heads=heads,
        rows=rows,
        worked=worked_view((heat_worked(facts),), facts),
        short="Oven dial",
    )


def _off(celsius: float) -> str:
    """How far out the nearest mark is, in words."""
    return f"{formats.signed(celsius)} °C" if celsius else "exact"


def spoon_grid(book: Book, facts: Facts) -> Grid:
    """Spoons and cups of every kitchen."""
    rows = tuple(
        GridRow(
            head=title(spell(row.measure)),
            cells=cells(number(row.shown_ml), number(row.shown_us_fl_oz), number(row.shown_uk_fl_oz), main=1),
            note=OURS if row.of_the_house else "",
        )
        for row in spoon_rows(book, facts)
    )
    heads = (Head("Measure"), Head("Holds", "ml"), Head("US", "fl oz"), Head("UK", "fl oz"))
    lead = "Not all cups and spoons are the same size: check which country the recipe comes from."
    return Grid(
        title="Spoons and cups",
        anchor="spoons",
        heads=heads,
        rows=rows,
        worked=worked_view((spoons_worked(book, facts),), facts),
        lead=lead,
    )


def pound_grids(facts: Facts) -> tuple[Grid, ...]:
    """Ounces, grams, pints."""
    sums = pounds(facts)
    ounces = tuple(
        GridRow(
            head=formats.ounces(row.ounces_oz),
            cells=cells(number(row.shown_g), formats.bounds(row.print_low_g, row.print_high_g), main=1),
        )
        for row in sums.ounces
    )
    grams = tuple(
        GridRow(head=number(row.grams_g), cells=cells(formats.ounces(row.shown_oz), main=1)) for row in sums.grams
    )
    pints = tuple(
        GridRow(
            head=number(row.fluid_oz),
            cells=cells(number(row.uk_shown_ml), number(row.us_shown_ml), main=2),
            note=spell(row.name),
        )
        for row in sums.pints
    )
    worked = worked_view((sums.worked,), facts)
    return (
        Grid(
            title="Ounces to grams",
            anchor="ounces",
            heads=(Head("Ounces"), Head("Exact", "g"), Head("In print", "g")),
            rows=ounces,
            worked=worked,
            short="Ounces",
        ),
        Grid(
            title="Grams to ounces",
            anchor="grams",
            heads=(Head("Grams", "g"), Head("Ounces", "nearest quarter")),
            rows=grams,
            worked=worked,
            short="Grams",
        ),
        Grid(
            title="Fluid ounces and pints",
            anchor="pints",
            heads=(Head("Fluid ounces"), Head("UK", "ml"), Head("US", "ml")),
            rows=pints,
            worked=worked_view((sums.pints_worked,), facts),
            short="Pints",
        ),
    )


def length_grid(book: Book, facts: Facts) -> Grid:
    """Inches."""
    table = lengths(book.house.tins_sold_in)
    rows = tuple(
        GridRow(
            head=mixed(row.inches_in),
            cells=(
                Cell(number(row.shown_mm), main=True),
                Cell("none" if row.trade_mm is None else number(row.trade_mm / 10), main=True),
                Cell("none" if row.off_mm is None else formats.signed(row.off_mm)),
                Cell("none" if row.taken_mm is None else number(row.taken_mm)),
            ),
        )
        for row in table.rows
    )
    heads = (
        Head("Inches", "in"), Head("Exact", "mm"), Head("Tin sold as", "cm"), Head("Out by", "mm"),
        Head("We take it as", "mm"),
    )  # fmt: skip
    lead = (
        "To the trade an 8 in tin and a 20 cm tin are the same thing. Where the exact length matters, measure "
        "it in millimetres."
    )
    return Grid(
        title="Inches and centimetres",
        anchor="lengths",
        heads=heads,
        rows=rows,
        worked=worked_view((table.worked,), facts),
        lead=lead,
        short="Inches",
    )


def cup_grid(desk: Desk) -> Grid:
    """Ingredients by the cup, except those without a page."""
    book, facts = desk.book, desk.facts
    pages, cup = desk.card_pages, cup_name(book)
    rows = tuple(
        GridRow(
            head=title(row.ingredient),
            cells=(
                Cell(number(row.cup_g), True),
                *cells(mixed(row.cup_oz), number(row.tablespoon_g), number(row.teaspoon_g), row.source),
            ),
            address=pages[row.ingredient],
        )
        for row in cup_rows(book, facts)
        if row.ingredient in pages
    )
    heads = (
        Head("Ingredient"), Head(cup, "g"), Head(cup, "oz"), Head("Tablespoon", "g"),
        Head("Teaspoon", "g"), Head("Source", words=True),
    )  # fmt: skip
    lead = f"Every measure is {FILLED}. The range for each is on its own page."
    return Grid(
        title="Ingredients by the cup",
        anchor="cups",
        heads=heads,
        rows=rows,
        worked=worked_view((cups_worked(book, facts),), facts),
        lead=lead,
        narrow="ingredients",
        short="By the cup",
    )
