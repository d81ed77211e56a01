"""Whose cup, whose spoons."""

import pytest
from tests.every import every

from tinbook.units import CUPS_ML, METRIC, Measures, Misread, measures_of


@every("cup", ["US cup", "metric cup", "UK cup"])
@every(("spoon", "tablespoon", "teaspoon"), [("metric", 15, 5), ("US", 14.7868, 4.9289), ("Australian", 20, 5)])
def test_any_cup_goes_with_any_spoons(cup: str, spoon: str, tablespoon: float, teaspoon: float) -> None:
    measures = measures_of(cup, spoon)
    assert measures.cup_ml == CUPS_ML[cup]
    assert measures.tablespoon_ml == pytest.approx(tablespoon, abs=1e-4)
    assert measures.teaspoon_ml == pytest.approx(teaspoon, abs=1e-4)


def test_a_house_that_has_not_said() -> None:
    assert measures_of(None, "metric") == METRIC == Measures(cup_ml=None, tablespoon_ml=15, teaspoon_ml=5)


def test_the_cup_says_whose_fluid_ounce() -> None:
    us, uk, metric = (measures_of(cup, "metric").fluid_ounce_ml for cup in ("US cup", "UK cup", "metric cup"))
    assert us == pytest.approx(29.5735, abs=1e-4)
    assert uk == pytest.approx(28.4131, abs=1e-4)
    assert metric is None


@pytest.mark.parametrize(
    ("cup", "spoon", "message", "hint"),
    [
        ("us cup", "metric", 'there is no cup called "us cup"', 'did you mean "US cup"?'),
        ("American", "metric", 'there is no cup called "American"', "write US cup, metric cup or UK cup"),
        ("", "metric", 'there is no cup called ""', "write US cup, metric cup or UK cup"),
        ("US cup", "metrik", 'there is no set of spoons called "metrik"', 'did you mean "metric"?'),
        (None, "silver", 'there is no set of spoons called "silver"', "write metric, US or Australian"),
    ],
)
def test_an_unknown_measure(cup: str | None, spoon: str, message: str, hint: str) -> None:
    with pytest.raises(Misread) as told:
        measures_of(cup, spoon)
    assert (told.value.message, told.value.hint) == (message, hint)
