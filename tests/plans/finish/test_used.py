"""The log of what cakes really took moves the amounts, damped; a wild entry is told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Finish, Used
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.covering import coat_table
from tinbook.plans.finish.used import learned, ratio_of, used_flaws


@pytest.fixture
def icing(batch: Callable[..., Batch]) -> Batch:
    return batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=["300 g butter", "600 g caster sugar"])


@pytest.fixture
def logging(kitchen: Book, icing: Batch) -> Book:
    return replace(kitchen, mixtures={icing.slug: icing.mixture})


def entry(used: str, **keys: str) -> Used:
    return Used.model_validate(
        {"day": "2026-05-02", "of": "plain-sponge", "cake": "round 20 cm", "height": "10 cm", "used": used, **keys}
    )


def test_a_few_entries_move_it_a_little(logging: Book, icing: Batch, facts: Facts) -> None:
    usual = next(row for row in coat_table(icing, logging, facts).rows if row.cake.tin.name == "round 20 cm")
    more = entry(f"{usual.made_g * 1.2:.3f} g")
    assert ratio_of(more, icing, logging, facts) == pytest.approx(1.2, rel=1e-4)
    for count in (1, 5, 60):
        logged = replace(logging, used=(more,) * count)
        found = learned(icing, logged, facts)
        assert found.entries == count
        assert found.factor == pytest.approx(1.2 ** (count / (count + 3)), rel=1e-3)
        row = next(row for row in coat_table(icing, logged, facts).rows if row.cake.tin.name == "round 20 cm")
        assert row.made_g == pytest.approx(usual.made_g * found.factor)
    table = coat_table(icing, replace(logging, used=(more,) * 5), facts)
    assert inputs_of(table.worked)[-1] == "5 of your cakes took 12.1% more than calculated"


def test_no_entry_no_word(logging: Book, icing: Batch, facts: Facts) -> None:
    found = learned(icing, logging, facts)
    assert (found.factor, found.entries, found.told) == (1.0, 0, None)


def test_a_wild_entry_is_told_and_not_learned_from(logging: Book, icing: Batch, facts: Facts) -> None:
    wild = entry("9 kg")
    (flaw,) = used_flaws(wild, logging, facts)
    assert "will not learn from it" in flaw.message
    assert learned(icing, replace(logging, used=(wild,)), facts).entries == 0
    assert not list(used_flaws(entry("1 kg"), logging, facts))


@pytest.mark.parametrize(("kind", "told"), [("syrup", "neither fills nor covers"), ("creamed", "neither fills")])
def test_of_what_covers_no_cake(kind: str, told: str, batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    made = batch(kind=kind, tins=None, makes="900 g", bake=None)
    (flaw,) = used_flaws(entry("1 kg"), replace(kitchen, mixtures={made.slug: made.mixture}), facts)
    assert told in flaw.message


def test_a_tube_too_narrow_for_the_coats(logging: Book, facts: Facts) -> None:
    thick = replace(logging, finish=Finish.model_validate({"crumb coat": "2 mm"}))
    (flaw,) = used_flaws(entry("1 kg", cake="ring 21 cm x 7.5 cm, tube 11 mm"), thick, facts)
    assert "closes the tube" in flaw.message
