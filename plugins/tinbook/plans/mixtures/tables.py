"""The tables of what is in a mixture and what fits the tins owned, by name."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row, batch_asked
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import factor_by
from tinbook.plans.base.worked import Worked
from tinbook.plans.mixtures import safety
from tinbook.plans.mixtures.balance import balance
from tinbook.plans.mixtures.on_hand import hand_table


def allergens(book: Book, facts: Facts, query: Query) -> Result:
    """The allergens of a mixture and where they come from; what is unknown is a row too."""
    batch = batch_asked(book, facts, query)
    strip = safety.allergens(batch, book, facts)
    rows: list[Row] = [
        {"allergen": contained.allergen, "from": saying("comes_from", ingredients=contained.ingredients)}
        for contained in strip.contains
    ]
    rows += [{"allergen": "unknown", "from": name} for name in strip.unknown]
    sources = dict.fromkeys(allergen.source for allergen in facts.allergens.values())
    names = dict.fromkeys(line.name for line in batch.ingredients)
    worked = Worked(saying("allergens_by_card"), (saying("cards_read", names=tuple(names)),), tuple(sources))
    return Result(saying("allergens_of", mixture=batch.mixture.name), tuple(rows), worked)


def rules(book: Book, facts: Facts, query: Query) -> Result:
    """A mixture against the balance rules of its kind, one row each; figures for 100 of what the rule compares with."""
    batch = batch_asked(book, facts, query)
    balanced = balance(batch, book, facts)
    if not balanced.standings:
        raise AskError(f'there are no balance rules for the kind "{batch.mixture.kind}"', 'try the table "percentages"')
    rows: tuple[Row, ...] = tuple(
        {
            "rule": standing.rule.title,
            "per_100": None if standing.value is None else round(standing.value, 4),
            "low_per_100": standing.low_shown,
            "high_per_100": standing.high_shown,
            "stands": standing.side,
            "kept": standing.within,
            "source": standing.rule.source,
        }
        for standing in balanced.standings
    )
    return Result(saying("balance_of", mixture=batch.mixture.name), rows, balanced.worked)


def percentages(book: Book, facts: Facts, query: Query) -> Result:
    """Bakers' percentages of a mixture: each ingredient for 100 of its flour, or of its sugar if it has no flour."""
    batch = batch_asked(book, facts, query)
    balanced = balance(batch, book, facts)
    rows: tuple[Row, ...] = tuple(
        {
            "ingredient": line.name,
            "counts_as": line.part,
            "exact_g": round(line.mass_g, 4),
            "per_100": round(line.per_100, 4),
        }
        for line in balanced.lines
    )
    title = saying("percentages_of", mixture=batch.mixture.name, base=balanced.base)
    return Result(title, rows, balanced.worked)


def on_hand(book: Book, facts: Facts, query: Query) -> Result:
    """What fits the tins owned: a row for each choice, best first."""
    table = hand_table(book, facts)
    rows: tuple[Row, ...] = tuple(
        {
            "mixture": row.batch.mixture.name,
            "tin": saying("tins_filled", tins=tuple((count, tin.name) for count, tin in choice.tins)),
            "factor": round(choice.factor, 6),
            "factor_by": factor_by(tin for _, tin in choice.tins),
            "bakes": choice.bakes,
            "as_written": choice.written,
            "near": choice.near,
        }
        for row in table.rows
        for choice in row.choices
    )
    return Result(saying("on_hand"), rows, table.worked)
