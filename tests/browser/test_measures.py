"""The small sums of the page of measures: the browser against Python, digit for digit, and the page without a script."""

from __future__ import annotations

import json
import random
from collections.abc import Callable
from itertools import product

import pytest
from playwright.sync_api import Page
from tests.every import check_every

from tinbook.engine import pieces, rounding, scaling
from tinbook.pages.spelling import formats

pytestmark = pytest.mark.browser

Open = Callable[..., Page]

ASK = """async ([base, asked]) => {
  const { piecesFrom, batterFor } = await import(`${base}assets/tinbook/pieces.js`);
  const { halfUp } = await import(`${base}assets/tinbook/rounding.js`);
  const { number } = await import(`${base}assets/tinbook/spell.js`);
  return JSON.stringify(JSON.parse(asked).map(([batter, each, lost]) => {
    const got = piecesFrom(batter, each, lost);
    return [number(got.count), number(halfUp(got.left, 1)), number(halfUp(batterFor(got.count, each, lost), 1))];
  }));
}"""


def told(batter_g: float, each_g: float, lost: float) -> list[str]:
    count, left_g = pieces.pieces_from(batter_g, each_g, lost)
    mixed = pieces.batter_for(count, each_g, lost)
    return [formats.number(count), *(formats.number(rounding.half_up(each, 1.0)) for each in (left_g, mixed))]


def test_the_browser_agrees_with_python(page: Open, demo_url: str) -> None:
    tab = page()
    dice = random.Random(45)
    asked = [[float(dice.randint(1, 9000)), float(dice.randint(1, 250)), dice.choice((0, 0.01, 0.02, 0.05))]
             for _ in range(1000)]  # fmt: skip
    asked += [[45.0 * count, 45.0, 0.0] for count in range(1, 60)]
    tab.goto(f"{demo_url}measures/")
    got = json.loads(tab.evaluate(ASK, [demo_url, json.dumps(asked)]))
    assert got == [told(*each) for each in asked]


def answers(page: Page) -> list[str]:
    return [text.replace("\u00a0", " ") for text in page.locator("#tb-sums output b").all_inner_texts()]


def test_cupcakes_from_a_batter_and_what_is_left(page: Open, demo_url: str) -> None:
    """1200 g less 2 % is 28 times the 41 g of the log and 28 g over, by hand; 24 of them want 984 g over 0.98; 300 g asked and 250 g there is 0.83."""
    tab = page()
    tab.goto(f"{demo_url}measures/")
    assert answers(tab) == ["28", "1004 g", "× 0.83"]
    many = tab.locator("#tb-sums > div").first
    assert "28 g left over" in many.inner_text().replace("\u00a0", " ")
    assert "27 to 28" in many.inner_text()
    many.get_by_label("Batter, g").fill("900")
    many.get_by_label("One weighs, g").fill("60,5")
    count, _ = pieces.pieces_from(900, 60.5, 0.02)
    assert answers(tab)[0] == str(count)
    tab.reload()
    assert answers(tab)[0] == str(count), "what was asked is remembered"
    for wrong in ("", "much", "0", "-3", "1e9"):
        many.get_by_label("Batter, g").fill(wrong)
        assert answers(tab)[0] == ""
        assert "Write figures" in many.inner_text()


def test_eggs_follow_what_is_left(page: Open, demo_url: str) -> None:
    tab = page()
    tab.goto(f"{demo_url}measures/")
    left = tab.locator("#tb-sums > div").last
    for asks, there, eggs in (("300", "250", "4"), ("4", "5", "4"), ("200", "90", "3")):
        for label, text in (("The recipe asks for", asks), ("You have left", there), ("Eggs in it", eggs)):
            left.get_by_label(label).fill(text)
        whole = scaling.whole_eggs(float(eggs), float(there) / float(asks))
        assert f"{whole.eggs} egg" in left.inner_text()


def test_without_a_script_the_tables_say_it(page: Open, demo_url: str) -> None:
    tab = page(java_script_enabled=False)
    tab.goto(f"{demo_url}measures/")
    assert not tab.locator("#tb-sums").is_visible()
    row = tab.locator("#pieces-rows tbody tr", has=tab.get_by_role("rowheader", name="1200"))
    assert row.locator("td").nth(2).inner_text().split() == ["28", "27–28"], "41 g, as logged"
    assert tab.locator("#left-rows").is_visible()


def test_nothing_sticks_out(page: Open, demo_url: str) -> None:
    tab = page()

    def fits(case: tuple[int, str]) -> None:
        width, address = case
        tab.set_viewport_size({"width": width, "height": 820})
        tab.goto(f"{demo_url}{address}/")
        assert tab.evaluate("document.documentElement.scrollWidth") <= width

    addresses = ("measures", "ingredients", "ingredients/egg", "ingredients/self-raising-flour")
    check_every(product((390, 820, 1180), addresses), fits)


def test_the_larder_narrows_by_allergen_and_by_another_name(page: Open, demo_url: str) -> None:
    tab = page()
    tab.goto(f"{demo_url}ingredients/")
    shown = tab.locator("#larder > li:visible b")
    tab.get_by_role("searchbox").fill("superfine")
    assert shown.all_inner_texts() == ["Caster sugar"]
    tab.get_by_role("searchbox").fill("")
    tab.locator("summary", has_text="any").click()
    tab.get_by_role("button", name="soya", exact=True).click()
    found = shown.all_inner_texts()
    assert "Soya drink" in found and "Butter" not in found
