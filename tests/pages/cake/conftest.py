"""Cakes of the demo's kitchen, worked out, and the pages of its own."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any
from xml.etree import ElementTree

import pytest
from tests.plans.cakes.conftest import bakes, design, made

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.view import CakeView

__all__ = ["bakes", "design", "made"]
DOME = re.compile(r"M(\S+) (\S+)A(\S+) (\S+) 0 0 1 (\S+) (\S+)Z")
FIGURED: Mapping[str, Any] = {
    "tiers": ["25 cm", {"tier": "20 cm", "on pillars": "60 mm"}, {"tier": "15 cm", "dummy": "yes"}],
    "mixture": "madeira-cake",
    "height": "10 cm",
    "decorations": [
        {"technique": "lighthouse-for-the-front", "on": "board"},
        {"technique": "lighthouse-for-the-front", "on": "top", "count": "2"},
        {"technique": "heron-for-the-side", "on": "side", "tier": "2"},
        {"technique": "heron-for-the-side", "on": "side", "tier": "1"},
    ],
}
"""A cake with something everywhere."""


@pytest.fixture(scope="session")
def views(desk: Desk) -> dict[str, CakeView]:
    """The demo's cakes."""
    return {slug: CakeView(slug=slug, desk=desk) for slug in desk.book.cakes}


@pytest.fixture(scope="session")
def in_sizes(views: dict[str, CakeView]) -> list[CakeInSize]:
    """All of them in every size they can be made in."""
    return [size for view in views.values() for size in view.sizes]


def shapes(svg: str, of: str) -> list[dict[str, str]]:
    """The attributes of every element of a class in a drawing."""
    tree = ElementTree.fromstring(re.sub(r"\sstyle=\"[^\"]*\"", "", svg))
    return [dict(each.attrib) for each in tree.iter() if of in each.get("class", "").split()]


def box(rect: Mapping[str, str]) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of a rectangle or the half ellipse of a dome, y upwards from the bench."""
    if dome := DOME.fullmatch(rect.get("d", "")):
        left, foot, _, high, right, _ = map(float, dome.groups())
        return left, high - foot, right, -foot
    x, y, wide, high = (float(rect[name]) for name in ("x", "y", "width", "height"))
    return x, -y, x + wide, -y - high
