"""Tags: all on one page, or a page each."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.models import Mixture
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import tag_anchor
from tinbook.pages.lists.tags import MOST, SOME, tag_groups, tag_pages


def test_every_tag_leads_to_what_carries_it(desk: Desk, demo: Loaded) -> None:
    tags = {group.title: {entry.address for entry in group.entries} for group in tag_groups(desk)}
    for slug, mixture in demo.book.mixtures.items():
        assert all(f"mixtures/{slug}" in tags[tag] for tag in mixture.tags)


def test_under_a_tag_there_is_no_choice_by_tag(desk: Desk) -> None:
    names = {name for group in tag_groups(desk) for entry in group.entries for name, _ in entry.marks}
    assert names == {"kind", "season", "keeps", "also"}
    kinds = {dict(entry.marks)["kind"] for group in tag_groups(desk) for entry in group.entries}
    assert "Technique" in kinds and "steady hands" not in kinds


def told(page: Page) -> str:
    return page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}")


def test_the_tags_of_a_small_book_share_a_page(desk: Desk) -> None:
    (page,) = tag_pages(desk)
    assert page.address == "tags" and sum(group.count for group in tag_groups(desk)) <= MOST


def tagged(desk: Desk, mixture: Callable[..., Mixture], *tags: str, count: int = MOST) -> Desk:
    """A book of `count` mixtures that carry the tags, and one more."""
    many = {f"m{at:04}": mixture(name=f"M {at:04}", tags=list(tags)) for at in range(count)}
    many["other"] = mixture(name="Other", tags=["Plain & good", "plain-good"])
    return replace(desk, book=replace(desk.book, mixtures=many, techniques={}, cakes={}, bakes=()))


def test_each_tag_of_a_large_book_has_its_page(desk: Desk, mixture: Callable[..., Mixture]) -> None:
    index, *pages = tag_pages(tagged(desk, mixture, "everyday"))
    assert index.address == "tags"
    lines = told(index)
    # a recipe leads to the anchor, and from there it is one step
    for tag, address in (("everyday", "everyday"), ("Plain & good", "plain-good"), ("plain-good", "plain-good-2")):
        assert f'<li id="{tag_anchor(tag)}"' in lines and f'href="/tags/{address}#"' in lines, tag
    assert f"{MOST}\u00a0pages" in lines and "M 0002 and " in lines and f"M {SOME:04}" not in lines
    assert [page.address for page in pages if page.listed] == [
        "tags/Plain-good".lower(),
        "tags/everyday",
        "tags/plain-good-2",
    ]
    carried = [
        entry.address for page in pages if page.title.startswith("Everyday") for entry in page.view.items[0].entries
    ]
    assert carried == [f"mixtures/m{at:04}" for at in range(MOST)]
    assert "/tags#" in told(pages[0]) and "All tags" in told(pages[0])


def test_lines_of_very_many_tags_are_short(desk: Desk, mixture: Callable[..., Mixture]) -> None:
    index, *_ = tag_pages(tagged(desk, mixture, *(f"tag {at}" for at in range(400)), count=3))
    text = told(index)
    assert text.count("<li id=") == 402 and "M 0001" not in text
    assert len(text.encode()) / 402 < 160
