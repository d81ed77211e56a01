"""The register of computed tables: every calculation in the book, to be asked for and checked from outside.

Add a table with one line in TABLES, which says what it can be asked with; anything else is refused, never ignored. Its
rows are plain mappings whose keys carry the unit (`_g`, `_mm`, `_ml`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import OPTIONS, AskError, Query
from tinbook.plans.base.late import LateRoom
from tinbook.plans.base.result import Result

if TYPE_CHECKING:
    from tinbook.plans.baking import tables as bake_tables
    from tinbook.plans.base import tables as amounts
    from tinbook.plans.cakes import tables as whole
    from tinbook.plans.finish import tables as finished
    from tinbook.plans.labels import tables as labels
    from tinbook.plans.making import tables as making
    from tinbook.plans.measures import tables as kitchen
    from tinbook.plans.mixtures import tables as mixtures
    from tinbook.plans.money import tables as money
    from tinbook.plans.portions import tables as served
    from tinbook.plans.techniques import tables as decorated
    from tinbook.plans.true_size import tables as templates
else:
    # one table is asked for at a time: starting up need not pay for the others
    bake_tables, amounts, finished, kitchen, mixtures, served, decorated, templates, whole, making, labels, money = (
        LateRoom(f"tinbook.plans.{room}.tables")
        for room in (
            "baking",
            "base",
            "finish",
            "measures",
            "mixtures",
            "portions",
            "techniques",
            "true_size",
            "cakes",
            "making",
            "labels",
            "money",
        )
    )

Sums = Callable[[Book, Facts, Query], Result]

IN_TINS = "tins count measured deep"
AMOUNTS = f"{IN_TINS} eggs weight_g batches plus left"
SIZED = "size guests keep_top portion"
PARTY = "of guests stacked portion height_mm keep_top owned beside"


@dataclass(frozen=True, slots=True)
class Table:
    """A table that can be asked for by name. `of`: what it is about, if it is about one thing.

    `takes`: what else it can be asked with, names of OPTIONS separated by spaces.
    """

    title: str
    sums: Sums
    of: str = ""
    takes: str = ""

    @property
    def options(self) -> tuple[str, ...]:
        """The names of everything it can be asked with, in the order of OPTIONS."""
        taken = {*self.takes.split(), *(["of"] if self.of else [])}
        return tuple(name for name in OPTIONS if name in taken)

    def rows(self, book: Book, facts: Facts, query: Query) -> Result:
        """Its answer. Raises AskError for a question that does not fit it, and for an option it cannot use."""
        self.refuse(query.asked)
        return self.sums(book, facts, query)

    def refuse(self, asked: Iterable[str]) -> None:
        """AskError if it is asked with what it cannot use, or with what needs a tin and has none."""
        given = set(asked)
        name = next((name for name, table in TABLES.items() if table is self), self.title)
        for key in OPTIONS:
            if key in given and key not in self.options:
                raise AskError(f'the table "{name}" cannot use {OPTIONS[key]}', _instead(key, self.options))
            if key in given and key in ("count", "above", "deep") and "tins" not in given:
                message = f'the table "{name}" cannot use {OPTIONS[key]} without --tin'
                raise AskError(message, f'say which, such as --tin "round 20 cm x 7.5 cm" {OPTIONS[key]}')


def _instead(key: str, options: Iterable[str]) -> str:
    """What a table takes, and which others take what it was asked with."""
    takes = [OPTIONS[each] for each in options]
    others = [name for name, table in TABLES.items() if key in table.options]
    own = f"it takes {', '.join(takes)}" if takes else "it takes no options"
    if key == "count":
        own = f"ask about one tin at a time; {own}"
    return f"{own}; {OPTIONS[key]} goes with {', '.join(others)}"


TABLES: Mapping[str, Table] = {
    "tins": Table("a mixture for every tin", amounts.tins, of="mixture"),
    "scaled": Table(
        "a mixture for certain tins, a number of eggs, a weight, batches, a bit more, or what you have left",
        amounts.scaled,
        of="mixture",
        takes=AMOUNTS,
    ),
    "fits": Table("how a mixture fits the tins you name", amounts.fits, of="mixture", takes=IN_TINS),
    "written": Table("a mixture as written, in every measure", kitchen.written, of="mixture"),
    "allergens": Table(
        "the allergens of a mixture or a cake and where they come from; of everything in the book, without --of",
        labels.allergens,
        takes="of",
    ),
    "ingredients-list": Table(
        "the ingredients of a mixture or a cake as a label lists them",
        labels.ingredients_list,
        of="product",
        takes="made",
    ),
    "balance": Table("a mixture compared with the balance rules for its kind", mixtures.rules, of="mixture"),
    "percentages": Table("bakers' percentages of a mixture", mixtures.percentages, of="mixture"),
    "layers": Table(
        "what a mixture becomes in every tin: layers, heights, weight",
        finished.layers,
        of="mixture",
        takes="tins measured layers layer_mm",
    ),
    "times": Table(
        "how long a mixture bakes in every tin, or in --tin",
        bake_tables.times,
        of="mixture",
        takes=f"{IN_TINS} oven_c start_c",
    ),
    "loads": Table(
        "how many mixes, tins, oven loads and hours a mixture takes", bake_tables.loads, of="mixture", takes=IN_TINS
    ),
    "bakes": Table("the bakes in the log, and what was expected", bake_tables.bakes, takes="of"),
    "coats": Table(
        "how much of a filling or icing a cake from each tin takes", finished.coats, of="mixture", takes="height_mm"
    ),
    "covers": Table(
        "how much of a paste covers a cake from each tin", finished.covers, of="mixture", takes="height_mm"
    ),
    "boards": Table(
        "drum, card, paste, ribbon and box for a cake from each tin", finished.boards, takes="of height_mm"
    ),
    "portions": Table(
        "how many portions each tin cuts into, and how", served.portions, takes="of tins portion height_mm"
    ),
    "guests": Table("which tins serve a number of guests with the least left over", served.guests, takes=PARTY),
    "parts": Table(
        "the parts of a technique for every cake, or for --tin", decorated.part_rows, of="technique", takes="tins"
    ),
    "colours": Table(
        "how much paste and food colour a technique's parts take", decorated.colour_rows, of="technique", takes="tins"
    ),
    "pastes": Table(
        "how much paste to have ready for the parts of a technique", decorated.paste_rows, of="technique", takes="tins"
    ),
    "marks": Table("marks repeated on the parts of a technique", decorated.mark_rows, of="technique", takes="tins"),
    "dowels": Table(
        "dowels in every cake under a tier, or in --tin under --above", templates.dowels, takes="tins above"
    ),
    "cake": Table("a whole cake, tier by tier", whole.cake, of="cake", takes=SIZED),
    "used": Table("everything used for a whole cake", whole.used, of="cake", takes=SIZED),
    "cake-weights": Table("what a whole cake weighs, tier by tier", making.weights, of="cake", takes=SIZED),
    "cake-supports": Table(
        "what holds each tier of a cake up, and the load it carries", making.supports, of="cake", takes=SIZED
    ),
    "cake-loads": Table("a whole cake through the oven, load by load", making.oven_loads, of="cake", takes=SIZED),
    "cake-ahead": Table("what can be made ahead for a cake, and how it keeps", making.ahead, of="cake"),
    "price": Table(
        "what a cake costs and what to ask for it; of a mixture, what its ingredients cost",
        money.price,
        of="cake",
        takes="size guests",
    ),
    "factors": Table("factors from each tin to every other", amounts.factors, takes="tins measured"),
    "sizes": Table("what every tin measures and holds, and the nearest you own", amounts.sizes, takes="tins measured"),
    "on-hand": Table("which mixtures fit the tins you have, exactly or nearly", mixtures.on_hand),
    "oven": Table("gas marks, °C, fan and °F", kitchen.oven),
    "heat": Table("oven settings in °C, as fan, °F and gas mark", kitchen.heat),
    "spoons": Table("spoons and cups, country by country", kitchen.spoons),
    "ounces": Table("ounces and pounds in grams", kitchen.ounces),
    "grams": Table("grams in ounces", kitchen.grams),
    "pints": Table("fluid ounces and pints in ml", kitchen.pints),
    "lengths": Table("inches in mm, and as tins are sold", kitchen.lengths),
    "eggs": Table("egg sizes by weight", kitchen.eggs),
    "bowl": Table("eggs in the bowl: how many, by size", kitchen.bowl),
    "egg-parts": Table("your own eggs: how many, white and yolk", kitchen.parts),
    "cups": Table("ingredients by the cup and spoon", kitchen.cups),
    "weights": Table("ingredients by every cup and spoon, with the range", kitchen.weights),
    "flour": Table("self-raising flour from plain", kitchen.flour),
    "swaps": Table("what you can use instead of what", kitchen.swaps),
    "pieces": Table("how many cupcakes a batter makes, or --weight of it", kitchen.pieces, takes="weight_g"),
    "needed": Table("how much batter to mix for a number of cupcakes", kitchen.needed),
    "left": Table("what to multiply by to use up what is left", kitchen.left),
}
