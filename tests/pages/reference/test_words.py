"""Headings of the groups of keys, and what is said of a file of the house."""

from __future__ import annotations

from dataclasses import replace

from tests.models.test_keys import MODELS

from tinbook.models.register import SeenBy, kinds
from tinbook.pages.reference.words import TITLES, more_of, title_of


def test_every_group_has_a_heading_of_its_own_and_none_lies_idle() -> None:
    assert set(TITLES) == {model.__name__ for model in MODELS}
    assert len(set(TITLES.values())) == len(TITLES)


def test_a_group_without_one_goes_by_its_own_name() -> None:
    assert title_of(type("Sieve", (), {})) == "Sieve"


def test_a_file_says_who_may_see_it_and_where_it_goes_on() -> None:
    tins, used, bakes = (kinds()[name] for name in ("tins", "used", "bakes"))
    assert more_of(tins) == ""
    assert more_of(bakes) == "When it gets long, carry on in a file for the year, such as `house/bakes-2027.yaml`."
    assert more_of(used).startswith("This file is private") and "house/used-2027.yaml" in more_of(used)
    assert "private" in more_of(replace(tins, seen_by=SeenBy.KITCHEN))
