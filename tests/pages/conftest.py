"""The demo book's desk, and a page of it filled."""

from collections.abc import Callable

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk, Page
from tinbook.site import build_site


@pytest.fixture(scope="session")
def desk(demo: Loaded) -> Desk:
    return Desk(demo.book, demo.facts, {})


@pytest.fixture(scope="session")
def page(demo: Loaded) -> Callable[[str], Page]:
    pages = build_site(demo.book, demo.facts, {}).pages
    return lambda address: pages[address]


@pytest.fixture(scope="session")
def filled(page: Callable[[str], Page]) -> Callable[[str], str]:
    def fill(address: str) -> str:
        made = page(address)
        return made.fill(made.markdown, lambda to, anchor="": f"/{to}#{anchor}")

    return fill
