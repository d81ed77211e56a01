"""The words that lists are narrowed by."""

from collections.abc import Callable

import pytest

from tinbook.models import Mixture
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.mixtures.keeping import keep_marks, season_names

Make = Callable[..., Mixture]


@pytest.mark.parametrize(
    ("seasons", "names"),
    [
        (["October"], ("autumn",)),
        (["November to January"], ("autumn", "winter")),
        (["winter", "spring"], ("spring", "winter")),
        (["all year"], ("spring", "summer", "autumn", "winter")),
    ],
)
def test_seasons_in_the_order_of_the_year(mixture: Make, seasons: list[str], names: tuple[str, ...]) -> None:
    assert season_names(mixture(seasons=seasons)) == names


@pytest.mark.parametrize(
    ("keeps_for", "marks"),
    [
        (["2 days"], ()),
        (["3 days"], ("3 days",)),
        (["2 days", "1 week in the fridge"], ("3 days", "a week")),
        (["3 months"], ("3 days", "a week", "a month")),
        (["1 day", "2 months in the freezer"], ("frozen",)),
    ],
)
def test_so_long_and_less(mixture: Make, keeps_for: list[str], marks: tuple[str, ...]) -> None:
    assert spelled_all(keep_marks(mixture(keeps_for=keeps_for))) == marks


def test_where_nothing_is_said(mixture: Make) -> None:
    assert season_names(mixture()) == keep_marks(mixture()) == ()
