"""The demo's kitchen, at a moment, for its pages about money."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk

NOW = datetime(2026, 12, 5, 8)
WEDDING, GONE, CLASS = "2026-12-12-boathouse-wedding", "2026-10-03-point-light", "2026-12-08-rope-class"


@pytest.fixture(scope="session")
def money_desk(demo: Loaded) -> Desk:
    return Desk(demo.book, demo.facts, {}, NOW)


def with_others(desk: Desk, **others: Any) -> Desk:
    """The same with other files of the house."""
    return replace(desk, book=replace(desk.book, others={**desk.book.others, **others}))


def number(text: str) -> float:
    """A printed sum."""
    return float(text.replace("−", "-").replace(",", "").replace("+", "").partition(" ")[0])
