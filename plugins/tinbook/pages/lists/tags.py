"""Everything with each tag: all on one page, or in a large book a page for each tag."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked, file_names, plural, tag_anchor
from tinbook.pages.base.sheets import ROWS
from tinbook.pages.lists.lists import Entry, Group, ListView, cake_entry, in_sheets, mixture_entry, technique_entry
from tinbook.pages.spelling import formats

ADDRESS, TITLE = "tags", "Tags"
SOME = 3
MOST = 2 * ROWS
"""More rows than this under all tags together, and each tag has its own page."""


def tag_groups(desk: Desk) -> tuple[Group, ...]:
    """Mixtures, techniques and cakes by tag, tags in alphabetical order."""
    tagged: dict[str, list[Entry]] = {}
    for slug, mixture in desk.book.mixtures.items():
        for tag in mixture.tags:
            tagged.setdefault(tag, []).append(_tagged(mixture_entry(desk, slug)))
    for slug, technique in desk.book.techniques.items():
        for tag in technique.tags:
            tagged.setdefault(tag, []).append(_tagged(technique_entry(desk, slug), "Technique"))
    for slug, design in desk.book.cakes.items():
        for tag in design.tags:
            tagged.setdefault(tag, []).append(_tagged(cake_entry(desk, slug)))
    return tuple(Group(tag, "", tuple(tagged[tag]), tag_anchor(tag)) for tag in sorted(tagged))


def _tagged(entry: Entry, kind: str = "") -> Entry:
    """A line under a tag: there is no choice by tag there, and techniques are of one kind."""
    others = tuple((name, kind if kind and name == "kind" else text) for name, text in entry.marks if name != "tag")
    return replace(entry, marks=others)


def _some(group: Group) -> str:
    """The first names under a tag, and how many more there are."""
    names, more = ", ".join(entry.name for entry in group.entries[:SOME]), group.count - SOME
    return f"{names} and {more} more" if more > 0 else names


def tag_pages(desk: Desk) -> Iterator[Page]:
    """All of it on one page; of a large book only the tags, each with its page. Either way a recipe's tag leads to its
    anchor there."""
    groups = tag_groups(desk)
    if sum(group.count for group in groups) <= MOST:
        view = ListView(title=TITLE, lead="What goes together.", items=groups)
        yield Page(address=ADDRESS, title=TITLE, template="list", view=view, section=(TITLE,))
        return
    names = file_names(group.title for group in groups)
    addresses = {tag: f"{ADDRESS}/{name}" for tag, name in names.items()}
    # a line for each, on one page however many: others lead to its anchor
    few = len(groups) <= ROWS
    lines = tuple(
        Entry(
            address=addresses[group.title],
            name=group.title,
            left=plural(group.count, "page"),
            second=_some(group) if few else "",
            anchor=group.anchor,
        )
        for group in groups
    )
    lead = "What goes together: a page for each tag."
    view = ListView(title=TITLE, lead=lead, items=(Group("", "", lines),))
    yield Page(address=ADDRESS, title=TITLE, template="list", view=view, section=(TITLE,))
    for group in groups:
        title = formats.title(group.title)
        view = ListView(
            title=title,
            lead=f"{plural(group.count, 'page')} with this tag.",
            items=(Group("", "", group.entries),),
            asides=(Linked(ADDRESS, "All tags"),),
        )
        yield from in_sheets(
            Page(address=addresses[group.title], title=title, template="list", view=view, section=(TITLE,))
        )
