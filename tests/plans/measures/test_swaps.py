"""What may stand in: the sums of a table, its spoons, its allergens."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, House
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.measures.flour import flour_rows
from tinbook.plans.measures.swaps import shares, swap_table


def test_parts_of_a_whole_add_up_as_printed(demo: Loaded) -> None:
    checked = 0
    for key, swap in demo.facts.swaps.items():
        made = swap_table(key, demo.book, demo.facts)
        assert [row.amount for row in made.rows] == list(swap.amounts)
        if swap.together:
            assert sum(shares(swap).values()) == pytest.approx(1)
            for row in made.rows:
                assert sum(part.shown for part in row.parts) == pytest.approx(row.amount), key
                assert sum(part.exact for part in row.parts) == pytest.approx(row.amount), key
                checked += 1
    assert checked > 20


def test_twice_as_much_is_twice_as_much(demo: Loaded) -> None:
    for key, swap in demo.facts.swaps.items():
        doubled = swap.model_copy(update={"amounts": tuple(2 * amount for amount in swap.amounts)})
        facts = replace(demo.facts, swaps={key: doubled})
        for one, two in zip(
            swap_table(key, demo.book, demo.facts).rows, swap_table(key, demo.book, facts).rows, strict=True
        ):
            assert [2 * part.exact for part in one.parts] == pytest.approx([part.exact for part in two.parts])


def test_self_raising_is_as_on_the_page_of_measures(kitchen: Book, facts: Facts) -> None:
    rows = {row.amount: row for row in swap_table("self-raising from plain", kitchen, facts).rows}
    compared = 0
    for flour in flour_rows(facts):
        if flour.self_raising_g in rows:
            plain, powder = rows[flour.self_raising_g].parts
            assert (plain.shown, powder.shown) == (flour.plain_g, flour.powder_g)
            assert powder.spoons is not None
            assert (powder.spoons.shown, powder.spoons.unit) == (flour.powder_tsp, "tsp")
            compared += 1
    assert compared >= 5


def test_eggs_are_those_of_the_house(
    kitchen: Book, facts: Facts, house: Callable[..., House], table: Callable[[str], list[dict[str, str]]]
) -> None:
    """One part of powder to seven of water. White of one egg by eggs.csv: 39.4 g of UK large, 32.9 g of US large."""
    whites = {(row["system"], row["class"]): row["white_g_58pct_of_inshell"] for row in table("eggs")}
    for name, key in (("UK large", ("EU/UK", "L")), ("US large", ("USA", "Large"))):
        made = swap_table("white from powder", replace(kitchen, house=house(eggs=name)), facts)
        powder, water = made.rows[0].parts
        assert powder.exact + water.exact == pytest.approx(float(whites[key]), abs=0.05)
        assert water.exact / powder.exact == pytest.approx(7)
        assert any(name in line for line in inputs_of(made.worked))


def test_spoons_by_the_houses_spoon(kitchen: Book, facts: Facts) -> None:
    """15 ml of lemon juice is one metric tablespoon; it has no card here, and needs none."""
    row = next(row for row in swap_table("buttermilk from milk", kitchen, facts).rows if row.amount == 250)
    juice = row.parts[1]
    assert (juice.shown, juice.unit) == (15, "ml")
    assert juice.spoons is not None and (juice.spoons.shown, juice.spoons.unit) == (1, "tbsp")
    assert row.parts[0].spoons is None, "nobody measures 235 ml by the spoon"


def test_allergens_come_with_what_stands_in(kitchen: Book, facts: Facts, card: Callable[..., Card]) -> None:
    made = swap_table("buttermilk from milk", kitchen, facts)
    assert (made.contains, made.unknown) == (("milk",), ("lemon juice",))
    unsaid = replace(kitchen, cards={**kitchen.cards, "milk": card(weighs_as="milk")})
    assert swap_table("buttermilk from milk", unsaid, facts).unknown == ("milk", "lemon juice")
    salted = swap_table("salted for unsalted", kitchen, facts)
    assert salted.unknown == ("salted butter",), "salt is left out, so it brings nothing"


def test_every_swap_says_its_range_and_its_source(demo: Loaded) -> None:
    for key, swap in demo.facts.swaps.items():
        worked = swap_table(key, demo.book, demo.facts).worked
        assert set(worked.sources) >= {part.source for part in swap.parts}
        for part in swap.parts:
            told = next(line for line in inputs_of(worked) if line.startswith(f"{part.key} "))
            if part.low is not None and part.low != part.high:
                assert f"({part.low:g} to {part.high:g})" in told
