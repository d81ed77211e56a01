"""No breach of WCAG 2.2 A and AA that axe-core can find, on every kind of page, in every look, at two sizes.

axe-core: https://github.com/dequelabs/axe-core, as shipped by the Python package axe-playwright-python.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib import resources
from typing import Any

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
LOOKS = ("default", "slate", "contrast")
SIZES = {"tablet": {"width": 820, "height": 1180}, "phone": {"width": 390, "height": 844}}
AXE = resources.files("axe_playwright_python").joinpath("axe.min.js").read_text("utf-8")


def wear(tab: Page, look: str) -> None:
    """The look as the theme's switch sets it."""
    tab.evaluate("look => document.body.setAttribute('data-md-color-scheme', look)", look)


def breaches(tab: Page) -> list[str]:
    """What axe finds, each with the element it is about."""
    if not tab.evaluate("typeof axe === 'object'"):
        tab.evaluate(AXE)
    found: list[dict[str, Any]] = tab.evaluate(
        "async tags => (await axe.run(document, { runOnly: { type: 'tag', values: tags } })).violations", TAGS
    )
    return [f"{each['id']}: {node['target']} {node['failureSummary'][:200]}" for each in found for node in each["nodes"]]


@pytest.mark.parametrize("size", SIZES)
def test_every_kind_of_page_in_every_look(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str], size: str
) -> None:
    tab, found = page(viewport=SIZES[size], has_touch=True), []
    for kind, address in kinds.items():
        tab.goto(demo_url + address)
        tab.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true; })")
        for look in LOOKS:
            wear(tab, look)
            found += [f"{kind}, {look}: {told}" for told in breaches(tab)]
    assert not found, "\n".join(found)
