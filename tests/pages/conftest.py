"""The demo book's desk, and a page of it filled."""

from collections.abc import Callable, Iterable
from typing import Any, TypeVar

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.rows import HouseRows
from tinbook.site import build_site

R = TypeVar("R", bound=Any)


@pytest.fixture(scope="session")
def desk(demo: Loaded) -> Desk:
    return Desk(demo.book, demo.facts, {})


@pytest.fixture(scope="session")
def page(demo: Loaded) -> Callable[[str], Page]:
    pages = build_site(demo.book, demo.facts, {}).pages
    return lambda address: pages[address]


def both(rows: HouseRows) -> str:
    """The rows of the house's own tins and those in the fold, one a line."""
    return "\n".join(str(part) for part in (rows.own, rows.rest) if part)


def owned_first(rows: Iterable[R]) -> list[R]:
    """What the plans say of each tin, in the order in which pages show it."""
    return sorted(rows, key=lambda row: not row.owned)


@pytest.fixture(scope="session")
def filled(page: Callable[[str], Page]) -> Callable[[str], str]:
    def fill(address: str) -> str:
        made = page(address)
        return made.fill(made.markdown, lambda to, anchor="": f"/{to}#{anchor}")

    return fill
