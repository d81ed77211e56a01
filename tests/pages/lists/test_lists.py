"""The lists."""

from collections.abc import Callable

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.lists.lists import (
    FEW,
    Entry,
    Group,
    ListView,
    kind_groups,
    marks,
    mixture_entry,
    tag_groups,
)


def test_every_mixture_stands_under_its_kind(desk: Desk, demo: Loaded) -> None:
    listed = {entry.address for group in kind_groups(desk) for entry in group.entries}
    assert listed == {f"mixtures/{slug}" for slug in demo.book.mixtures}


def test_every_tag_leads_to_what_carries_it(desk: Desk, demo: Loaded) -> None:
    tags = {group.title: {entry.address for entry in group.entries} for group in tag_groups(desk)}
    for slug, mixture in demo.book.mixtures.items():
        assert all(f"mixtures/{slug}" in tags[tag] for tag in mixture.tags)


def test_a_long_list_of_names_is_cut() -> None:
    entries = tuple(Entry(address=str(at), name=f"n{at}", left="", second="") for at in range(FEW + 3))
    assert Group("x", "", entries).names.endswith("and 3 more")
    assert "more" not in Group("x", "", entries[:FEW]).names


def test_a_row_says_what_it_can_be_narrowed_by(desk: Desk) -> None:
    said = dict(mixture_entry(desk, "rich-fruit-cake").marks)
    assert said["kind"] == "Rich fruit cake" and said["season"] == "autumn|winter"
    assert said["keeps"] == "3 days|a week|a month"
    assert "under marzipan" in said["tag"].split("|") and "Christmas cake" in said["also"].split("|")
    assert marks(kind=["x"], tag=()) == (("kind", "x"),)


def test_only_a_long_list_narrows(filled: Callable[[str], str]) -> None:
    entries = tuple(Entry(address=str(at), name=f"n{at}", left="", second="") for at in range(FEW + 1))
    assert ListView(title="x", lead="", items=(Group("", "", entries[:5]), Group("", "", entries[5:]))).narrows
    assert not ListView(title="x", lead="", items=(Group("", "", entries[:FEW]),)).narrows
    assert 'data-narrow="Mixtures"' in filled("mixtures/index") and 'data-season="autumn|winter"' in filled(
        "mixtures/index"
    )
    assert 'data-narrow-kind="Level"' in filled("techniques/index")
    assert "data-narrow" not in filled("mixtures/kinds/mud")


def test_rows_of_choices_are_counted_so_that_their_place_is_kept() -> None:
    def entry(at: int, **values: tuple[str, ...]) -> Entry:
        return Entry(address=str(at), name=str(at), left="", second="", marks=marks(**values))

    def choices(*entries: Entry) -> int:
        return ListView(title="x", lead="", items=(Group("", "", entries),)).choices

    assert choices(entry(1, kind=("a",)), entry(2, kind=("b",))) == 1
    assert choices(entry(1, kind=("a",)), entry(2, kind=("a",))) == 0
    # a tag of one row is found by its words
    assert choices(entry(1, tag=("a",)), entry(2)) == 0
    assert choices(entry(1, tag=("a",)), entry(2, tag=("a",)), entry(3, season=("spring",))) == 2


def test_under_a_tag_there_is_no_choice_by_tag(desk: Desk) -> None:
    names = {name for group in tag_groups(desk) for entry in group.entries for name, _ in entry.marks}
    assert names == {"kind", "season", "keeps", "also"}
    kinds = {dict(entry.marks)["kind"] for group in tag_groups(desk) for entry in group.entries}
    assert "Technique" in kinds and "steady hands" not in kinds
