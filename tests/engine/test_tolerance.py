"""One tolerance: sums that miss by the last digits are equal, everything a baker could measure is not."""

from fractions import Fraction

from tests.every import every

from tinbook.engine.tolerance import GRAIN, fits, whole_down, whole_up


def test_what_floats_miss_by_is_no_difference() -> None:
    assert 3 * 0.1 > 0.3 and fits(3 * 0.1, 0.3)
    assert whole_up(0.1 * 3 / 0.1) == 3
    assert 0.7 / 0.1 < 7 and whole_down(0.7 / 0.1) == 7


@every("value", [0.0, 0.2, 1.0, 2.999, 3.001, 41.5, 1e5])
def test_what_can_be_measured_goes_by_the_exact_number(value: float) -> None:
    exact = Fraction(value)
    assert whole_down(value) == exact.__floor__()
    assert whole_up(value) == exact.__ceil__()
    assert fits(value, value) and not fits(value + 0.001, value)


def test_it_lies_between_the_last_digits_and_the_least_weight() -> None:
    assert 1e-15 * 1e4 < GRAIN < 0.001 / 1e4
