"""Home and the lists."""

from collections.abc import Callable

from tinbook.loading import Loaded
from tinbook.pages.lists import FEW, Entry, Group, HomeView, kind_groups, tag_groups
from tinbook.pages.page import Desk


def test_every_mixture_stands_under_its_kind(desk: Desk, demo: Loaded) -> None:
    listed = {entry.address for group in kind_groups(desk) for entry in group.entries}
    assert listed == {f"mixtures/{slug}" for slug in demo.book.mixtures}


def test_every_tag_leads_to_what_carries_it(desk: Desk, demo: Loaded) -> None:
    tags = {group.title: {entry.address for entry in group.entries} for group in tag_groups(desk)}
    for slug, mixture in demo.book.mixtures.items():
        assert all(f"mixtures/{slug}" in tags[tag] for tag in mixture.tags)


def test_a_long_list_of_names_is_cut() -> None:
    entries = tuple(Entry(str(at), f"n{at}", "", "") for at in range(FEW + 3))
    assert Group("x", "", entries).names.endswith("and 3 more")
    assert "more" not in Group("x", "", entries[:FEW]).names


def test_home_says_what_is_in_the_house(desk: Desk, filled: Callable[[str], str]) -> None:
    text = filled("index")
    assert "Heronsmouth house book" in text and "Sponges and cakes" in text
    assert sum(len(group.entries) for group in HomeView(desk).groups) == len(desk.book.mixtures)
    assert "The tins of the house in plan" in text
