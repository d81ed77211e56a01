"""The lists."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.sheets import ROWS
from tinbook.pages.lists.lists import (
    FEW,
    Entry,
    Group,
    ListView,
    in_sheets,
    kind_groups,
    list_pages,
    marks,
    mixture_entry,
)


def test_every_mixture_stands_under_its_kind(desk: Desk, demo: Loaded) -> None:
    listed = {entry.address for group in kind_groups(desk) for entry in group.entries}
    assert listed == {f"mixtures/{slug}" for slug in demo.book.mixtures}


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


def test_kinds_stand_beside_a_list_over_sheets_alone(desk: Desk, filled: Callable[[str], str]) -> None:
    (page,) = [page for page in list_pages(desk) if page.address == "mixtures/index"]
    assert {linked.address for linked in page.view.kinds} == {group.address for group in kind_groups(desk)}
    assert "By kind" not in filled("mixtures/index")
    lots = tuple(replace(group, entries=group.entries * 20) for group in page.view.items)
    first, *_ = in_sheets(replace(page, view=replace(page.view, items=lots)))
    assert "tinbook:parts/list_kinds" in first.markdown and "tinbook:parts/sheets" in first.markdown


def test_groups_go_on_over_sheets_under_their_heading() -> None:
    def group(name: str, count: int) -> Group:
        lines = (Entry(address=f"{name}{at}", name=f"{name}{at}", left="", second="") for at in range(count))
        return Group(name, "", tuple(lines), f"kind-{name}")

    view = ListView(title="L", lead="All.", items=(group("a", 40), group("b", ROWS + 20), group("c", 5)))
    whole = Page(address="things/index", title="L", template="list", view=view, section=("L",))
    first, last = in_sheets(whole)
    assert [each.title for each in first.view.items] == ["a", "b"] and first.view.count == ROWS
    assert [each.title for each in last.view.items] == ["b", "c"] and last.view.count == view.count - ROWS
    rows = [entry.address for page in (first, last) for each in page.view.items for entry in each.entries]
    assert rows == [entry.address for each in view.items for entry in each.entries]
    assert (first.address, first.title, first.listed) == ("things/index", "L", True)
    assert (last.address, last.title, last.listed) == ("lists/things/2", "L, page 2", False)
    # the search engine of the house knows the list by its first page
    assert "search: {exclude: true}" in last.markdown and "search:" not in first.markdown
    assert "## b { #kind-b }" in first.markdown and "## b { #kind-b }" in last.markdown
    (alone,) = in_sheets(replace(whole, view=replace(view, items=(group("a", ROWS),))))
    assert alone.sheet is None and alone.address == "things/index"


def test_a_sheet_has_room_for_one_button_and_narrows_however_short() -> None:
    marked = (
        Entry(address=str(at), name=str(at), left="", second="", marks=marks(kind=(str(at),))) for at in range(152)
    )
    view = ListView(title="L", lead="", items=(Group("", "", tuple(marked)),))
    _, last = in_sheets(Page(address="l", title="L", template="list", view=view))
    text = last.fill(last.markdown, lambda to, anchor="": f"/{to}")
    assert 'style="--groups:0"' in text and 'data-narrow="L"' in text and text.count("<li") == 2
    assert 'data-rows="152"' in text and '<a href="/lists/l/2" aria-current="page">2</a>' in text
