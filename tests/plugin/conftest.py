"""A small book that was built once, for tests of what a later build makes of it."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.books import new_book
from tests.plugin.builds import Built

from tinbook.plugin import events


@pytest.fixture(scope="module", autouse=True)
def alone() -> Iterator[None]:
    """Small books are built here without another process: forked of one as large as the tests', it costs what a build
    does. Help is tried in `test_ahead.py`, and by every build of the demo."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(events, "spare_processes", lambda pages: 0)
        yield


@pytest.fixture(scope="session")
def first(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Built]:
    """A book that was built once, and its build."""
    book = new_book(tmp_path_factory.mktemp("first") / "book")
    return book, Built(book)


@pytest.fixture
def book(first: tuple[Path, Built], tmp_path: Path) -> Path:
    """The same book and what was kept of it, in another place."""
    return Path(shutil.copytree(first[0], tmp_path / "book"))
