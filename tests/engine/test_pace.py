"""How long hands really take: laws of the mean, and one case reckoned by hand."""

from __future__ import annotations

import math
import random

import pytest
from tests.every import check_every

from tinbook.engine.pace import FASTEST, SLOWEST, pace


def test_nothing_known_changes_nothing() -> None:
    assert pace([]) == 1.0
    assert pace([1.0] * 9) == pytest.approx(1.0)


def test_one_case_by_hand() -> None:
    """60 min for what is said to take 30, and 45 for 30: (2 x 1.5 x 1) to the power of a third."""
    assert pace([2.0, 1.5]) == pytest.approx(3.0 ** (1 / 3))


def test_the_order_does_not_matter_and_more_of_the_same_comes_nearer() -> None:
    def case(seed: int) -> None:
        luck = random.Random(seed)
        ratios = [math.exp(luck.uniform(-1.2, 1.2)) for _ in range(luck.randint(1, 9))]
        assert pace(ratios) == pytest.approx(pace(ratios[::-1]))
        assert min(*ratios, 1.0) - 1e-9 <= pace(ratios) <= max(*ratios, 1.0) + 1e-9
        assert abs(pace([ratios[0]] * 20) - ratios[0]) <= abs(pace([ratios[0]]) - ratios[0]) + 1e-12

    check_every(range(100), case)


def test_a_wild_sitting_says_no_more_than_the_bounds() -> None:
    assert pace([900.0]) == pace([SLOWEST]) and pace([0.001]) == pace([FASTEST])
