"""The page that lists everything, for who has no script."""

from collections.abc import Callable

from tinbook.pages.base.page import Desk
from tinbook.pages.finding.everything import find_pages, finds


def test_every_kind_of_thing_can_be_found(desk: Desk) -> None:
    assert {each.kind for each in finds(desk)} == {
        "mixture", "note", "technique", "step", "fault", "cake", "section", "ingredient", "tin", "colour",
    }  # fmt: skip


def test_the_list_has_every_mixture_technique_and_ingredient(desk: Desk, filled: Callable[[str], str]) -> None:
    (page,) = find_pages(desk)
    assert (page.address, page.listed) == ("find", False)
    groups = {group.title: [entry.name for entry in group.entries] for group in page.view.items}
    assert len(groups["Mixtures"]) == len(desk.book.mixtures)
    assert len(groups["Techniques"]) == len(desk.book.techniques)
    assert groups["Cakes"] == [
        "Estuary wedding cake", "First season cake", "Lighthouse cake", "Night-watch cake", "Pier anniversary cake", "Sea-garden cups",
        "Thrift island cake",
    ]  # fmt: skip
    assert len(groups["Ingredients"]) == len(desk.card_pages)
    assert groups["Ingredients"][:2] == sorted(groups["Ingredients"], key=str.casefold)[:2]
    text = filled("find")
    assert "Lighthouse Madeira" in text and "Icing sugar" in text
