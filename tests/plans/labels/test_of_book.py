"""The allergens of the whole book, and what a changed card changes."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.plans.base.asking import Query
from tinbook.plans.labels.of_book import NO, UNKNOWN, YES, AllergenChange, book_allergens, changes, product_allergens
from tinbook.plans.tables import TABLES


def test_unknown_is_never_no(demo: Loaded) -> None:
    found = product_allergens("cakes/x", "X", {"a": ("milk",), "b": None}, demo.facts)
    assert (found.says("milk"), found.says("egg"), found.unknown) == (YES, UNKNOWN, ("b",))
    known = product_allergens("cakes/x", "X", {"a": ("milk",), "b": ()}, demo.facts)
    assert (known.says("milk"), known.says("egg")) == (YES, NO)


def test_every_mixture_and_cake_is_in_it(demo: Loaded) -> None:
    found = book_allergens(demo.book, demo.facts)
    assert {each.address for each in found.products} == {
        *(f"mixtures/{slug}" for slug in demo.book.mixtures), *(f"cakes/{slug}" for slug in demo.book.cakes),
    }  # fmt: skip
    assert list(found.keys) == [key for key in demo.facts.allergens if key in found.keys]


def test_a_changed_card_changes_what_it_goes_into(demo: Loaded) -> None:
    sugar = demo.book.cards["caster sugar"].model_copy(update={"allergens": ("milk", "soya"), "made_of": None})
    changed = replace(demo.book, cards={**demo.book.cards, "caster sugar": sugar})
    before, after = (TABLES["allergens"].rows(book, demo.facts, Query()).rows for book in (demo.book, changed))
    told = list(changes(before, after))
    assert AllergenChange("mixtures/madeira-cake", "soya", "no", "yes") in told
    assert all(each.allergen in ("milk", "soya") for each in told)
    assert list(changes(before, before)) == []
    gone = list(changes(before, [row for row in before if row["product"] != "mixtures/madeira-cake"]))
    assert gone and all(each.product == "mixtures/madeira-cake" and each.now == "" for each in gone)
