"""The small sums as tables: how many, how much, what is left."""

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.measures.pieces import EACH_G, logged_case_g, small_sums


def test_forty_five_grams_from_twelve_hundred(kitchen: Book, facts: Facts) -> None:
    """By hand: 1200 g less 2 % is 1176 g, 26 times 45 g and 6 g over; 1 % lost gives 26, 5 % gives 25."""
    row = next(row for row in small_sums(kitchen, facts).pieces if (row.batter_g, row.each_g) == (1200, 45))
    assert (row.count, row.count_low, row.count_high, row.left_g) == (26, 25, 26, 6)
    assert row.baked_g == 40, "45 g less 11 % in the oven"


def test_a_dirtier_bowl_gives_no_more(kitchen: Book, facts: Facts) -> None:
    made = small_sums(kitchen, facts)
    for row in made.pieces:
        assert row.count_low <= row.count <= row.count_high
        assert 0 <= row.left_g <= row.each_g
    for need in made.needed:
        assert need.batter_low_g <= need.batter_g <= need.batter_high_g
        assert need.count * need.each_g <= need.batter_g


def test_batters_asked_for(kitchen: Book, facts: Facts) -> None:
    assert {row.batter_g for row in small_sums(kitchen, facts, (777.0,)).pieces} == {777.0}


def test_what_is_left_undoes_itself(kitchen: Book, facts: Facts) -> None:
    factors = {(row.asked, row.left): row for row in small_sums(kitchen, facts).left}
    for (asked, left), row in factors.items():
        assert row.exact_factor * factors[left, asked].exact_factor == pytest.approx(1)
        assert row.shown_factor == pytest.approx(row.exact_factor, abs=0.00501)
    assert factors[4, 5].shown_factor == 1.25, "a quarter more of everything with one more egg"


def test_the_case_is_the_one_the_house_has_logged(demo: Loaded, kitchen: Book, facts: Facts) -> None:
    """The middle of the log of cupcakes in their own trays, by hand: 41 g, so 1200 g less 2 % is 28 times 41 g."""
    grams = sorted(entry.batter for entry in demo.book.bakes_of["cupcakes"] if entry.batter)
    assert logged_case_g(demo.book) == grams[len(grams) // 2] == 41
    made = small_sums(demo.book, facts)
    assert (made.case_g, made.logged, set(made.each_g)) == (41, True, {*EACH_G, 41})
    row = next(row for row in made.pieces if (row.batter_g, row.each_g) == (1200, 41))
    assert (row.count, row.left_g) == (28, 28)
    bare = small_sums(kitchen, facts)
    assert (bare.case_g, bare.logged, bare.each_g) == (45, False, EACH_G)
