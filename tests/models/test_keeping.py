"""Seasons and how long things keep, read from bench spelling."""

import pytest
from tests.every import every

from tinbook.models import Mixture, read_model
from tinbook.models.keeping import SEASONS, Keep, read_keep, read_season
from tinbook.models.steps import DAY_MIN
from tinbook.units import METRIC, Misread


@every(
    ("text", "months"),
    [
        ("autumn", (9, 10, 11)),
        ("Winter", (12, 1, 2)),
        ("fall", (9, 10, 11)),
        ("October", (10,)),
        ("oct", (10,)),
        ("Oct to Dec", (10, 11, 12)),
        ("November to February", (11, 12, 1, 2)),
        ("autumn to spring", (9, 10, 11, 12, 1, 2, 3, 4, 5)),
        ("May–July", (5, 6, 7)),
        ("June to June", (6,)),
        ("all year", tuple(range(1, 13))),
    ],
)
def test_a_season(text: str, months: tuple[int, ...]) -> None:
    season = read_season(text, METRIC)
    assert (season.months, season.written) == (months, text)


def test_the_seasons_make_a_year() -> None:
    """Three months each, December first in winter: the Met Office, Seasons (metoffice.gov.uk), from memory."""
    months = [month for season in SEASONS.values() for month in season]
    assert sorted(months) == list(range(1, 13))
    assert all(len(season) == 3 for season in SEASONS.values())


@every(
    ("text", "hint", "span"),
    [
        ("autum", 'did you mean "autumn"?', "autum"),
        ("Octobre", 'did you mean "October"?', "Octobre"),
        ("October to Yule", "write spring", "Yule"),
        ("monsoon", "write spring", "monsoon"),
        ("October to", 'did you mean "October"?', "October to"),
        ("to May", 'did you mean "May"?', "to May"),
    ],
)
def test_what_is_no_season(text: str, hint: str, span: str) -> None:
    with pytest.raises(Misread) as told:
        read_season(text, METRIC)
    assert hint in told.value.hint
    assert text[told.value.start : told.value.end] == span


@pytest.mark.parametrize(
    ("text", "keep"),
    [
        ("3 days", Keep(3 * DAY_MIN, "somewhere cool", "3 days")),
        ("1 week in the fridge", Keep(7 * DAY_MIN, "in the fridge", "1 week in the fridge")),
        ("2 months in the freezer", Keep(60 * DAY_MIN, "in the freezer", "2 months in the freezer")),
        ("10 days somewhere cool", Keep(10 * DAY_MIN, "somewhere cool", "10 days somewhere cool")),
        ("12 h", Keep(720, "somewhere cool", "12 h")),
    ],
)
def test_how_long_it_keeps(text: str, keep: Keep) -> None:
    assert read_keep(text, METRIC) == keep


@pytest.mark.parametrize("text", ["ages", "3 days in the boat", "in the fridge", "3-5 days", "2 years in the freezer"])
def test_what_is_no_keeping(text: str) -> None:
    with pytest.raises(Misread) as told:
        read_keep(text, METRIC)
    assert told.value.message and told.value.hint
    assert 0 <= told.value.start <= told.value.end <= len(text)


def test_one_or_a_list_of_them() -> None:
    data = {"name": "x", "kind": "creamed", "mix": ["1 kg butter"], "seasons": "May", "keeps for": ["1 day", "1 week"]}
    made, flaws = read_model(Mixture, data, "a mixture")
    assert made is not None, flaws
    assert [season.months for season in made.seasons] == [(5,)]
    assert [keep.minutes for keep in made.keeps_for] == [DAY_MIN, 7 * DAY_MIN]
