"""The register of computed tables: every sum of the book, to be asked and checked from outside.

A table joins by one line in TABLES. Its rows are plain mappings whose keys carry the unit (`_g`, `_mm`, `_ml`).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking import tables as bake_tables
from tinbook.plans.base import scaling, shelf
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, batch_asked
from tinbook.plans.base.scaling import Fit, TinRow
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish import tables as finished
from tinbook.plans.measures import spooned
from tinbook.plans.measures import tables as kitchen
from tinbook.plans.mixtures import safety
from tinbook.plans.mixtures.balance import balance
from tinbook.plans.mixtures.on_hand import hand_table
from tinbook.plans.portions.tables import guests, portions
from tinbook.plans.techniques.tables import colour_rows, mark_rows, part_rows

UNIT_KEYS = {"g": "g", "ml": "ml", "tsp": "tsp", "tbsp": "tbsp", "": "pieces"}


Rows = Callable[[Book, Facts, Query], Result]


@dataclass(frozen=True, slots=True)
class Table:
    """A table that can be asked for by name. `of` says whether it is of one thing, `what` of which."""

    title: str
    rows: Rows
    of: bool = False
    what: str = "mixture"


def amounts(batch: Batch, made: Version) -> dict[str, Cell]:
    """Every line of a version: exact grams, and the amount as measured out in its own unit.

    Of two lines that go by one name the second is numbered.
    """
    cells: dict[str, Cell] = {}
    seen: Counter[str] = Counter()
    for line, got in zip(batch.ingredients, made.amounts, strict=True):
        key = _key(line.name, line.part)
        seen[key] += 1
        key = f"{key}_{seen[key]}" if seen[key] > 1 else key
        cells[f"{key}_exact_g"] = round(line.mass_g * got.exact / _written(line.amount, line.mass_g, got.unit), 4)
        cells[f"{key}_{UNIT_KEYS[got.unit]}"] = got.shown
    return cells


def _written(amount: float, mass_g: float, unit: str) -> float:
    return mass_g if unit == "g" else amount


def _key(name: str, part: str) -> str:
    return "_".join(f"{part} {name}".replace("-", " ").replace("'", "").split())


def _version(made: Version, beaten: bool = False) -> dict[str, Cell]:
    return {
        "factor": round(made.factor, 6),
        "off_percent": round(made.off * 100, 4),
        "beaten_egg": beaten,
        "mixture_g": round(made.mass_g, 3),
        "weight_error_percent": round(made.weight_error * 100, 3),
        "spoon_error_percent": round(made.spoon_error * 100, 3),
    }


def _fit(fit: Fit) -> dict[str, Cell]:
    return {
        "tin": fit.tin.full_name,
        "count": fit.count,
        "fill_tins": fit.needed,
        "each_tin_g": round(fit.each_g, 2),
        "batter_mm": round(fit.batter_mm, 2),
        "baked_mm": round(fit.baked_mm, 2),
        "least_depth_mm": fit.least_mm,
        "bakes": fit.bakes,
        "remark": fit.words,
    }


def tins(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture for every tin: whole-egg version, and the exact factor beside it."""
    batch = batch_asked(book, facts, query)
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "ask the table scaled, by weight")
    table = scaling.tin_table(batch, book, facts)

    def row(each: TinRow) -> Row:
        names = {"tin": each.tin.name, "tin_in": each.tin.size_label_in or None, "owned": each.owned}
        exact = {"exact_factor": round(each.exact.factor, 6)}
        whole = _version(each.whole, each.beaten)
        return {
            **_fit(each.fit),
            **names,
            **exact,
            **whole,
            "mixes": each.mixes,
            **amounts(batch, each.whole),
        }

    return Result(f"{batch.mixture.name}, every tin", tuple(row(each) for each in table.rows), table.worked)


def scaled(book: Book, facts: Facts, query: Query) -> Result:
    """One question answered: a row for the exact version, one for whole eggs."""
    batch = batch_asked(book, facts, query)
    answer = scaling.scale(batch, book, facts, query)
    rows: list[Row] = []
    for name, made in (("exact", answer.exact), ("whole eggs", answer.whole)):
        if name == "exact" or batch.eggs:
            beaten = answer.beaten and name != "exact"
            rows.append({"version": name, **_version(made, beaten), "mixes": answer.mixes, **amounts(batch, made)})
    return Result(f"{batch.mixture.name}, scaled", tuple(rows), answer.worked)


def fits(book: Book, facts: Facts, query: Query) -> Result:
    """The tins of a question, a row each: batter, depths, how many to fill, bakes."""
    batch = batch_asked(book, facts, query)
    if not query.tins:
        raise AskError("this table is of tins", 'say which, such as --tin "round 20 cm x 7.5 cm"')
    answer = scaling.scale(batch, book, facts, query)
    return Result(f"{batch.mixture.name}, in its tins", tuple(_fit(each) for each in answer.fits), answer.worked)


def written(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture as written, in grams, ounces, spoons and cups."""
    batch = batch_asked(book, facts, query)
    rows = tuple(
        {
            "ingredient": each.line.name,
            "pieces": each.pieces,
            "exact_g": round(each.line.mass_g, 4),
            "shown_g": each.grams,
            "shown_oz": each.ounces,
            "volume_ml": round(each.line.volume_ml, 3) if each.line.volume_ml else None,
            "spoons": each.spoons.shown if each.spoons else None,
            "spoon": each.spoons.unit if each.spoons else "no volume measure",
        }
        for each in spooned.measured(batch, book)
    )
    return Result(f"{batch.mixture.name}, as written", rows, batch.worked)


def allergens(book: Book, facts: Facts, query: Query) -> Result:
    """The allergens of a mixture and where they come from; what is unknown is a row too."""
    batch = batch_asked(book, facts, query)
    strip = safety.allergens(batch, book, facts)
    rows = [{"allergen": each.allergen, "from": ", ".join(each.ingredients)} for each in strip.contains]
    rows += [{"allergen": "unknown", "from": name} for name in strip.unknown]
    worked = Worked(
        "the allergens on the card of each ingredient",
        (),
        tuple(dict.fromkeys(each.source for each in facts.allergens.values())),
    )
    return Result(f"{batch.mixture.name}, allergens", tuple(rows), worked)


def balanced(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture against the balance rules of its kind, a row each; figures for 100 of what the rule compares with."""
    batch = batch_asked(book, facts, query)
    made = balance(batch, book, facts)
    if not made.standings:
        raise AskError(f'no rule of balance is known for the kind "{batch.mixture.kind}"', "ask the table percentages")
    rows: tuple[Row, ...] = tuple(
        {
            "rule": each.rule.title,
            "per_100": None if each.value is None else round(each.value, 4),
            "low": each.low_shown,
            "high": each.high_shown,
            "stands": each.side,
            "kept": each.within,
            "source": each.rule.source,
        }
        for each in made.standings
    )
    return Result(f"{batch.mixture.name}, balance", rows, made.worked)


def percentages(book: Book, facts: Facts, query: Query) -> Result:
    """Bakers' percentages of a mixture: each ingredient for 100 of its flour, or of its sugar where it has no flour."""
    batch = batch_asked(book, facts, query)
    made = balance(batch, book, facts)
    rows: tuple[Row, ...] = tuple(
        {
            "ingredient": each.name,
            "counts_as": each.part,
            "exact_g": round(each.mass_g, 4),
            "per_100": round(each.per_100, 4),
        }
        for each in made.lines
    )
    return Result(f"{batch.mixture.name}, for 100 of {made.base}", rows, made.worked)


def factors(book: Book, facts: Facts, query: Query) -> Result:
    """From every tin to every tin, or from one with --tin."""
    depth_mm = shelf.batter_depth_mm(book)
    outlines = [tin for tin, _ in shelf.all_outlines(book)]
    froms = [as_owned(tin, book) for _, tin in query.tins] or outlines
    rows: tuple[Row, ...] = tuple(
        {"from": one.name, "to": other.name, "factor": round(shelf.factor_between(one, other, depth_mm), 6)}
        for one in froms
        for other in outlines
    )
    return Result("From tin to tin", rows, shelf.shelf(book).worked)


def sizes(book: Book, facts: Facts, query: Query) -> Result:
    """Every tin: area, perimeter, what it holds, the nearest one the house owns."""
    made = shelf.shelf(book)
    rows: tuple[Row, ...] = tuple(
        {
            "tin": each.tin.name,
            "tin_in": each.tin.size_label_in or None,
            "owned": each.owned,
            "depth_mm": each.depth_mm,
            "area_cm2": round(each.area_cm2, 3),
            "perimeter_mm": round(each.perimeter_mm, 2),
            "brim_ml": round(each.brim_ml, 2),
            "measured": each.tin.measured_ml is not None,
            "nearest_owned": each.nearest.name if each.nearest else None,
            "nearest_factor": round(each.nearest_factor, 6) if each.nearest else None,
        }
        for each in made.tins
    )
    return Result("Tins", rows, made.worked)


def on_hand(book: Book, facts: Facts, query: Query) -> Result:
    """What the tins on hand allow: a row for each choice, the best first."""
    made = hand_table(book, facts)
    rows: tuple[Row, ...] = tuple(
        {
            "mixture": row.batch.mixture.name,
            "tin": ", ".join(f"{count} {tin.name}" for count, tin in each.tins),
            "factor": round(each.factor, 6),
            "bakes": each.bakes,
            "as_written": each.written,
            "near": each.near,
        }
        for row in made.rows
        for each in row.choices
    )
    return Result("What the tins on hand allow", rows, made.worked)


TABLES: Mapping[str, Table] = {
    "tins": Table("a mixture for every tin", tins, of=True),
    "scaled": Table("a mixture for tins, eggs, a weight, batches, more, or what is left", scaled, of=True),
    "fits": Table("how a mixture goes into the tins asked for", fits, of=True),
    "written": Table("a mixture as written, in every measure", written, of=True),
    "allergens": Table("the allergens of a mixture and where they come from", allergens, of=True),
    "balance": Table("a mixture against the balance rules of its kind", balanced, of=True),
    "percentages": Table("bakers' percentages of a mixture", percentages, of=True),
    "layers": Table("what a mixture becomes in every tin: layers, heights, weight", finished.layers, of=True),
    "times": Table("how long a mixture bakes in every tin, or in --tin", bake_tables.times, of=True),
    "loads": Table("mixes, tins, goes in the oven and its hours", bake_tables.loads, of=True),
    "bakes": Table("the bakes of the log, and what was expected", bake_tables.bakes),
    "coats": Table("a filling or icing in and round a cake of every tin", finished.coats, of=True),
    "covers": Table("a paste over a cake of every tin", finished.covers, of=True),
    "boards": Table("drum, card, paste, ribbon and box for a cake of every tin", finished.boards),
    "portions": Table("how many portions every tin cuts into, and how", portions),
    "guests": Table("which tins serve so many guests with least over", guests),
    "parts": Table("the parts of a technique for every cake, or for --tin", part_rows, True, "technique"),
    "colours": Table("paste and pots for the colours of a technique's parts", colour_rows, True, "technique"),
    "marks": Table("marks repeated on the parts of a technique", mark_rows, True, "technique"),
    "factors": Table("from every tin to every tin", factors),
    "sizes": Table("what every tin measures and holds, and the nearest one owned", sizes),
    "on-hand": Table("which mixtures the tins on hand allow, as written or nearly", on_hand),
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
