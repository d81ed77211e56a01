"""The register of computed tables: every sum of the book, to be asked and checked from outside.

A table joins by one line in TABLES. Its rows are plain mappings whose keys carry the unit (`_g`, `_mm`, `_ml`).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import Query
from tinbook.plans.base.late import LateRoom
from tinbook.plans.base.result import Result

if TYPE_CHECKING:
    from tinbook.plans.baking import tables as bake_tables
    from tinbook.plans.base import tables as amounts
    from tinbook.plans.finish import tables as finished
    from tinbook.plans.measures import tables as kitchen
    from tinbook.plans.mixtures import tables as mixtures
    from tinbook.plans.portions import tables as served
    from tinbook.plans.techniques import tables as decorated
else:
    # one table is asked at a time: a start need not pay for the others
    bake_tables, amounts, finished, kitchen, mixtures, served, decorated = (
        LateRoom(f"tinbook.plans.{room}.tables")
        for room in ("baking", "base", "finish", "measures", "mixtures", "portions", "techniques")
    )

Rows = Callable[[Book, Facts, Query], Result]


@dataclass(frozen=True, slots=True)
class Table:
    """A table that can be asked for by name. `of` says whether it is of one thing, `what` of which."""

    title: str
    rows: Rows
    of: bool = False
    what: str = "mixture"


TABLES: Mapping[str, Table] = {
    "tins": Table("a mixture for every tin", amounts.tins, of=True),
    "scaled": Table("a mixture for tins, eggs, a weight, batches, more, or what is left", amounts.scaled, of=True),
    "fits": Table("how a mixture goes into the tins asked for", amounts.fits, of=True),
    "written": Table("a mixture as written, in every measure", kitchen.written, of=True),
    "allergens": Table("the allergens of a mixture and where they come from", mixtures.allergens, of=True),
    "balance": Table("a mixture against the balance rules of its kind", mixtures.rules, of=True),
    "percentages": Table("bakers' percentages of a mixture", mixtures.percentages, of=True),
    "layers": Table("what a mixture becomes in every tin: layers, heights, weight", finished.layers, of=True),
    "times": Table("how long a mixture bakes in every tin, or in --tin", bake_tables.times, of=True),
    "loads": Table("mixes, tins, goes in the oven and its hours", bake_tables.loads, of=True),
    "bakes": Table("the bakes of the log, and what was expected", bake_tables.bakes),
    "coats": Table("a filling or icing in and round a cake of every tin", finished.coats, of=True),
    "covers": Table("a paste over a cake of every tin", finished.covers, of=True),
    "boards": Table("drum, card, paste, ribbon and box for a cake of every tin", finished.boards),
    "portions": Table("how many portions every tin cuts into, and how", served.portions),
    "guests": Table("which tins serve so many guests with least over", served.guests),
    "parts": Table("the parts of a technique for every cake, or for --tin", decorated.part_rows, True, "technique"),
    "colours": Table("paste and pots for the colours of a technique's parts", decorated.colour_rows, True, "technique"),
    "marks": Table("marks repeated on the parts of a technique", decorated.mark_rows, True, "technique"),
    "factors": Table("from every tin to every tin", amounts.factors),
    "sizes": Table("what every tin measures and holds, and the nearest one owned", amounts.sizes),
    "on-hand": Table("which mixtures the tins on hand allow, as written or nearly", mixtures.on_hand),
    "oven": Table("gas marks, °C, fan and °F", kitchen.oven),
    "heat": Table("oven dials in °C, as fan, °F and gas mark", kitchen.heat),
    "spoons": Table("spoons and cups by whose kitchen", kitchen.spoons),
    "ounces": Table("ounces and pounds in grams", kitchen.ounces),
    "grams": Table("grams in ounces", kitchen.grams),
    "pints": Table("fluid ounces and pints in ml", kitchen.pints),
    "lengths": Table("inches in mm, and as tins are sold", kitchen.lengths),
    "eggs": Table("egg classes by weight", kitchen.eggs),
    "bowl": Table("so many eggs in the bowl, by class", kitchen.bowl),
    "egg-parts": Table("so many eggs of the house, white and yolk", kitchen.parts),
    "cups": Table("ingredients by the cup and spoon", kitchen.cups),
    "weights": Table("ingredients by every cup and spoon, with the range", kitchen.weights),
    "flour": Table("self-raising flour from plain", kitchen.flour),
    "swaps": Table("what may stand in for what", kitchen.swaps),
    "pieces": Table("how many cupcakes from a batter, or from --weight", kitchen.pieces),
    "needed": Table("the batter for so many cupcakes", kitchen.needed),
    "left": Table("what to multiply by for what is left", kitchen.left),
}
