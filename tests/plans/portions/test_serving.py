"""What one cake serves, and what a portion of it weighs."""

import pytest

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.portions.cutting import portion_sizes
from tinbook.plans.portions.serving import servings
from tinbook.tins import Tin


def test_a_square_by_hand(kitchen: Book, facts: Facts) -> None:
    served = servings(Tin(shape="square", sizes_mm=(200.0,)), 100.0, 1600.0, portion_sizes(kitchen, facts))
    assert (served["finger"].cut.count, served["dessert"].cut.count) == (64, 32)
    assert served["dessert"].each_g == pytest.approx(50.0) and served["finger"].each_shown_g == 25.0


def test_what_nobody_has_weighed(kitchen: Book, facts: Facts) -> None:
    served = servings(Tin(shape="dome", sizes_mm=(200.0,)), 100.0, None, portion_sizes(kitchen, facts))
    assert all(each.each_g is None and each.each_shown_g is None for each in served.values())
