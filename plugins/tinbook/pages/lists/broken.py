"""Pages for what cannot be shown, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.base.page import Desk, Page
from tinbook.problems import spell


@dataclass(frozen=True)
class BrokenView:
    """A page that cannot be shown, and why."""

    name: str
    problems: tuple[str, ...]


def broken_pages(desk: Desk) -> Iterator[Page]:
    """A page of problems for each source that could not be read."""
    for address, problems in desk.broken.items():
        name = address.rpartition("/")[2].replace("-", " ")
        title = f"{name[:1].upper()}{name[1:]} (broken)"
        section = "Mixtures" if address.startswith("mixtures/") else "Techniques"
        yield Page(
            address=address,
            title=title,
            template="broken",
            view=BrokenView(title, tuple(map(spell, problems))),
            section=(section,),
        )
