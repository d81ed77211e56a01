"""The tables of labels, by name: a list of ingredients, and the allergens of one product or of the whole book."""

from __future__ import annotations

from datetime import date

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.labels.applying import label_name, rules_for
from tinbook.plans.labels.listing import IngredientsList, labelling_of, list_of
from tinbook.plans.labels.of_book import book_allergens
from tinbook.plans.labels.opened import Listed, keys_in
from tinbook.plans.labels.product import product_asked
from tinbook.plans.mixtures import tables as mixtures
from tinbook.plans.mixtures.safety import strip_of

NEVER = date(2026, 12, 1)
"""The day a list is for, if nobody has said one: that on which its rules were read."""


def ingredients_list(book: Book, facts: Facts, query: Query) -> Result:
    """The list of ingredients of a mixture or a cake, a row for each in order; then what is missing."""
    made, _ = product_asked(query.of, book, facts)
    listed = list_of(made, book, facts, query.made or NEVER)
    rows: list[Row] = [_row(each, listed, facts) for each in listed.listed]
    rows += [
        {"ingredient": name, "weight_g": None, "share_percent": None, "quid_percent": None, "allergens": "",
         "from": saying("left_out_water")}
        for name in listed.left_out
    ]  # fmt: skip
    rows += [{"ingredient": saying("not_complete", what=gap.what, cure=gap.cure)} for gap in listed.gaps]
    rules = rules_for(labelling_of(book), facts)
    inputs = (
        saying("finished_weighs", finished_g=listed.finished_g),
        *(saying("label_rule", says=rule.says, law=rule.law, read_on=rule.read_on) for rule in rules),
        saying("local_authority"),
    )
    title = saying("list_of", product=listed.name, complete=listed.complete, nation=listed.nation)
    return Result(title, tuple(rows), Worked(saying("listed_by_weight"), inputs, _sources(book, facts)))


def _row(each: Listed, listed: IngredientsList, facts: Facts) -> Row:
    names = tuple((key, label_name(key, facts, listed.nation)) for key in keys_in(each, facts))
    share = None if each.mass_g is None or not listed.finished_g else each.mass_g / listed.finished_g * 100.0
    return {
        "ingredient": saying("listed", entry=each, names=names),
        "weight_g": None if each.mass_g is None else round(each.mass_g, 4),
        "share_percent": None if share is None else round(share, 4),
        "quid_percent": None if each.quid is None else round(each.quid * 100.0, 4),
        "allergens": ", ".join(label for _, label in names),
        "from": ", ".join(each.cards),
    }


def _sources(book: Book, facts: Facts) -> tuple[str, ...]:
    rules = rules_for(labelling_of(book), facts)
    return tuple(dict.fromkeys((*(rule.source for rule in rules), "common practice")))


def allergens(book: Book, facts: Facts, query: Query) -> Result:
    """The allergens of a mixture or a cake and where they come from; of none, those of the whole book."""
    if query.of in book.mixtures:
        return mixtures.allergens(book, facts, query)
    if query.of is not None:
        made, _ = product_asked(query.of, book, facts)
        strip = strip_of(made.eaten.items(), facts)
        rows: list[Row] = [
            {"allergen": each.allergen, "from": saying("comes_from", ingredients=each.ingredients)}
            for each in strip.contains
        ]
        rows += [{"allergen": "unknown", "from": name} for name in strip.unknown]
        worked = Worked(saying("allergens_by_card"), (saying("cards_read", names=tuple(made.eaten)),), _laws(facts))
        return Result(saying("allergens_of", mixture=made.name), tuple(rows), worked)
    whole = book_allergens(book, facts)
    answers: tuple[Row, ...] = tuple(
        {
            "product": each.address,
            "name": each.name,
            **{column(key): each.says(key) for key in whole.keys},
            "unknown": ", ".join(each.unknown),
        }
        for each in whole.products
    )
    inputs = (saying("cards_read", names=tuple(book.cards)),)
    return Result(saying("allergens_of_all"), answers, Worked(saying("allergens_by_card"), inputs, _laws(facts)))


def column(key: str) -> str:
    """The key of an allergen's column: `brazil_nut`."""
    return key.lower().replace(" ", "_")


def _laws(facts: Facts) -> tuple[str, ...]:
    return tuple(dict.fromkeys(allergen.source for allergen in facts.allergens.values()))
