"""Measures: every conversion at a glance, each with its range and its source."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.conversions import Conversions, EggRow, conversions
from tinbook.plans.measures.eggs import Eggs, eggs
from tinbook.plans.measures.lengths import LengthTable, lengths
from tinbook.plans.measures.pieces import EACH_G, EGGS, SmallSums, small_sums
from tinbook.plans.measures.pounds import Pounds, pounds

OURS = "of this house"
number, fixed, mixed, title = formats.number, formats.fixed, formats.mixed, formats.title


@dataclass(frozen=True)
class MeasuresView:
    """Everything the page of measures says. `items` are its tables, in the order of the page."""

    desk: Desk

    @cached_property
    def sums(self) -> Conversions:
        """Oven, spoons, eggs, cups, flour."""
        return conversions(self.desk.book, self.desk.facts)

    @cached_property
    def small(self) -> SmallSums:
        """The small sums of a bake."""
        return small_sums(self.desk.facts)

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """All tables."""
        weighed, bowl = pounds(self.desk.facts), eggs(self.desk.book, self.desk.facts)
        return (
            self._oven(),
            self._heat(),
            self._spoons(),
            *self._pounds(weighed),
            self._lengths(lengths()),
            self._eggs(),
            self._bowl(bowl),
            self._parts(bowl),
            self._pieces(),
            self._needed(),
            self._left(),
            self._cups(),
            self._flour(),
        )

    @property
    def script_data(self) -> dict[str, Any]:
        """What the page's own script needs for its sums."""
        small = self.small
        return {"lost": small.lost, "lost_low": small.lost_low, "lost_high": small.lost_high, "off": small.baked_off}

    def _worked(self, worked: Worked) -> WorkedView:
        return worked_view((worked,), self.desk.facts)

    def _oven(self) -> Grid:
        rows = tuple(
            GridRow(
                head=row.gas_mark,
                cells=cells(
                    row.conventional_c, row.fan_c, number(row.fahrenheit_f), _span(row.low_c, row.high_c), main=3
                ),
            )
            for row in self.sums.oven
        )
        heads = (
            Head("Gas mark"), Head("Conventional", "°C"), Head("Fan", "°C"), Head("Fahrenheit", "°F"),
            Head("In print", "°C"),
        )  # fmt: skip
        after = "Ovens differ. An oven thermometer on the shelf tells you what yours does."
        return Grid(
            title="Oven by gas mark",
            anchor="oven",
            heads=heads,
            rows=rows,
            worked=self._worked(self.sums.oven_worked),
            after=after,
            short="Gas mark",
        )

    def _heat(self) -> Grid:
        rows = tuple(
            GridRow(
                head=number(row.conventional_c),
                cells=(
                    *cells(number(row.fan_c), number(row.fahrenheit_f), main=2),
                    Cell(row.gas_mark, note=_off(row.gas_off_c)),
                    Cell(_span(row.fan_low_c, row.fan_high_c)),
                ),
            )
            for row in self.sums.heat
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
            worked=self._worked(self.sums.heat_worked),
            short="Oven dial",
        )

    def _spoons(self) -> Grid:
        rows = tuple(
            GridRow(
                head=title(row.measure),
                cells=cells(number(row.shown_ml), number(row.us_fl_oz_shown), number(row.uk_fl_oz_shown), main=1),
                note=OURS if row.of_the_house else "",
            )
            for row in self.sums.spoons
        )
        heads = (Head("Measure"), Head("Holds", "ml"), Head("US", "fl oz"), Head("UK", "fl oz"))
        lead = "A cup is not a cup and a spoon is not a spoon: ask whose kitchen the recipe comes from."
        return Grid(
            title="Spoons and cups",
            anchor="spoons",
            heads=heads,
            rows=rows,
            worked=self._worked(self.sums.spoons_worked),
            lead=lead,
        )

    def _pounds(self, made: Pounds) -> tuple[Grid, ...]:
        ounces = tuple(
            GridRow(
                head=formats.ounces(row.ounces_oz),
                cells=cells(number(row.shown_g), _span(row.print_low_g, row.print_high_g), main=1),
            )
            for row in made.ounces
        )
        grams = tuple(
            GridRow(head=number(row.grams_g), cells=cells(formats.ounces(row.shown_oz), main=1)) for row in made.grams
        )
        pints = tuple(
            GridRow(
                head=number(row.fluid_ounces),
                cells=cells(number(row.uk_shown_ml), number(row.us_shown_ml), main=2),
                note=row.name,
            )
            for row in made.pints
        )
        worked = self._worked(made.worked)
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
                heads=(Head("Grams", "g"), Head("Ounces", "to a quarter")),
                rows=grams,
                worked=worked,
                short="Grams",
            ),
            Grid(
                title="Fluid ounces and pints",
                anchor="pints",
                heads=(Head("Fluid ounces"), Head("UK", "ml"), Head("US", "ml")),
                rows=pints,
                worked=self._worked(made.pints_worked),
                short="Pints",
            ),
        )

    def _lengths(self, made: LengthTable) -> Grid:
        rows = tuple(
            GridRow(
                head=mixed(row.inches_in),
                cells=(
                    Cell(number(row.shown_mm), main=True),
                    Cell("none" if row.trade_mm is None else number(row.trade_mm / 10), main=True),
                    Cell("none" if row.off_mm is None else formats.signed(row.off_mm)),
                ),
            )
            for row in made.rows
        )
        heads = (Head("Inches", "in"), Head("Exact", "mm"), Head("Tin sold as", "cm"), Head("Off exact", "mm"))
        lead = "An 8 in tin and a 20 cm tin are one tin to the trade. Measure a length that matters in millimetres."
        return Grid(
            title="Inches and centimetres",
            anchor="lengths",
            heads=heads,
            rows=rows,
            worked=self._worked(made.worked),
            lead=lead,
            short="Inches",
        )

    def _eggs(self) -> Grid:
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
            for row in self.sums.eggs
        )
        heads = (
            Head("Class"), Head("In its shell", "g"), Head("Out of it", "g"), Head("White", "g"), Head("Yolk", "g"),
        )  # fmt: skip
        return Grid(
            title="Eggs by class", anchor="eggs", heads=heads, rows=rows, worked=self._worked(self.sums.eggs_worked)
        )

    def _bowl(self, made: Eggs) -> Grid:
        ours = made.classes.index(made.house)
        rows = tuple(
            GridRow(
                head=number(row.count),
                cells=tuple(Cell(number(g), index == ours) for index, g in enumerate(row.shown_g)),
            )
            for row in made.bowl
        )
        heads = (Head("Eggs"), *(Head(name, "g") for name in made.classes))
        lead = "Out of their shells. Go along to swap one size for another: look for the nearest weight."
        return Grid(
            title="Eggs in the bowl", anchor="bowl", heads=heads, rows=rows, worked=self._worked(made.worked), lead=lead
        )

    def _parts(self, made: Eggs) -> Grid:
        rows = tuple(
            GridRow(
                head=number(row.count),
                cells=(
                    Cell(number(row.whole_g), True, _span(row.whole_low_g, row.whole_high_g)),
                    Cell(number(row.white_g), True, _span(row.white_low_g, row.white_high_g)),
                    Cell(number(row.yolk_g), True, _span(row.yolk_low_g, row.yolk_high_g)),
                ),
            )
            for row in made.parts
        )
        heads = (Head("Eggs", made.house), Head("Whole", "g"), Head("Whites", "g"), Head("Yolks", "g"))
        return Grid(
            title="Whites and yolks of this house's eggs",
            anchor="whites",
            heads=heads,
            rows=rows,
            worked=self._worked(made.worked),
            short="Whites and yolks",
        )

    def _pieces(self) -> Grid:
        by_batter: dict[float, list[Cell]] = {}
        for row in self.small.pieces:
            met = "" if row.count_low == row.count_high else f"{row.count_low}–{row.count_high}"
            by_batter.setdefault(row.batter_g, []).append(Cell(str(row.count), True, met))
        rows = tuple(GridRow(head=formats.grams(batter), cells=tuple(found)) for batter, found in by_batter.items())
        heads = (Head("Batter"), *(Head(formats.grams(each), "each") for each in EACH_G))
        lead = "How many cupcakes of one weight come out of a batter."
        return Grid(
            title="How many cupcakes",
            anchor="pieces",
            heads=heads,
            rows=rows,
            worked=self._worked(self.small.pieces_worked),
            lead=lead,
            sums=True,
            short="How many",
        )

    def _needed(self) -> Grid:
        by_count: dict[int, list[Cell]] = {}
        for row in self.small.needed:
            met = _span(row.batter_low_g, row.batter_high_g)
            by_count.setdefault(row.count, []).append(Cell(number(row.batter_g), True, met))
        rows = tuple(GridRow(head=str(count), cells=tuple(found)) for count, found in by_count.items())
        heads = (Head("Cupcakes"), *(Head(formats.grams(each), "each; g to mix") for each in EACH_G))
        return Grid(
            title="How much to mix",
            anchor="needed",
            heads=heads,
            rows=rows,
            worked=self._worked(self.small.needed_worked),
        )

    def _left(self) -> Grid:
        by_asked: dict[float, list[Cell]] = {}
        for row in self.small.left:
            by_asked.setdefault(row.asked, []).append(Cell(fixed(row.factor_shown, 2), row.asked == row.left))
        rows = tuple(GridRow(head=number(asked), cells=tuple(found)) for asked, found in by_asked.items())
        heads = (Head("The recipe asks"), *(Head(str(left), "left") for left in EGGS))
        lead = "The recipe asks so many eggs, and so many are left: multiply everything by this."
        return Grid(
            title="From what is left",
            anchor="left",
            heads=heads,
            rows=rows,
            worked=self._worked(self.small.left_worked),
            lead=lead,
        )

    def _cups(self) -> Grid:
        pages, sums = self.desk.card_pages, self.sums
        rows = tuple(
            GridRow(
                head=title(row.ingredient),
                cells=(
                    Cell(number(row.cup_g), True),
                    *cells(mixed(row.cup_oz), number(row.tablespoon_g), number(row.teaspoon_g), row.source),
                ),
                address=pages[row.ingredient],
            )
            for row in sums.cups
            if row.ingredient in pages
        )
        heads = (
            Head("Ingredient"), Head(sums.cup_name, "g"), Head(sums.cup_name, "oz"), Head("Tablespoon", "g"),
            Head("Teaspoon", "g"), Head("Weighed by", words=True),
        )  # fmt: skip
        lead = "The range of each is on its own page."
        return Grid(
            title="Ingredients by the cup",
            anchor="cups",
            heads=heads,
            rows=rows,
            worked=self._worked(sums.cups_worked),
            lead=lead,
            narrow="ingredients",
            short="By the cup",
        )

    def _flour(self) -> Grid:
        rows = tuple(
            GridRow(
                head=number(row.self_raising_g),
                cells=cells(number(row.plain_g), number(row.powder_g), mixed(row.powder_tsp), main=2),
            )
            for row in self.sums.flour
        )
        powder = "Baking powder"
        heads = (Head("Self-raising", "g"), Head("Plain flour", "g"), Head(powder, "g"), Head(powder, "tsp"))
        return Grid(
            title="Self-raising flour from plain",
            anchor="flour",
            heads=heads,
            rows=rows,
            worked=self._worked(self.sums.flour_worked),
            short="Self-raising",
        )


def _span(low: float, high: float) -> str:
    return number(low) if low == high else f"{number(low)}–{number(high)}"


def _off(celsius: float) -> str:
    """How far the nearest mark is off, in words."""
    return f"{formats.signed(celsius)} °C" if celsius else "exact"


def _bounds(row: EggRow) -> str:
    """What an egg of the class weighs at the least and the most, out of its shell."""
    low, high = row.shelled_low_g, row.shelled_high_g
    if low is None or high is None:
        return f"to {number(high)}" if high is not None else f"from {number(low or 0.0)}"
    return _span(low, high)


def in_shell(row: EggRow) -> str:
    """The bounds of a class in the shell, in words."""
    low, high = row.shell_low_g, row.shell_high_g
    if low and high:
        return f"{number(low)} to under {number(high)}"
    if high:
        return f"under {number(high)}"
    return f"{number(low)} and over" if low else "no bound"


def measures_pages(desk: Desk) -> Iterator[Page]:
    """The one page of measures."""
    yield Page(
        address="measures", title="Measures", template="measures", view=MeasuresView(desk), section=("Measures",)
    )
