"""From guests to tins in the browser: the same answers as Python's, within 50 ms, kept, and whole without a script."""

from __future__ import annotations

import json
import random
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.every import check_every

from tinbook.loading import Loaded
from tinbook.plans.portions.choices import Choices, choices
from tinbook.plans.portions.guests import BESIDE, FEWEST, MOST, Wish, answers

pytestmark = pytest.mark.browser

Open = Callable[..., Page]
SHAPES = {None: "any", True: "stacked", False: "single"}
MOST_MS = 50
ASK = """async ([base, asked]) => {
  const { answers, setsOf } = await import(`${base}assets/tinbook/tiers.js`);
  const made = setsOf();
  const took = [];
  const found = JSON.parse(asked).map(wish => {
    const begun = performance.now(), best = answers(made, wish);
    took.push(performance.now() - begun);
    return best.map(each => [each.tiers, each.tray, each.cups, each.serves, each.over]);
  });
  return JSON.stringify({ found, most: took.sort((one, other) => one - other)[Math.floor(took.length * .95)] });
}"""


@pytest.fixture(scope="module")
def made(demo: Loaded) -> Choices:
    return choices(demo.book, demo.facts)


def test_the_browser_agrees_with_python_and_is_quick(page: Open, demo_url: str, made: Choices) -> None:
    dice = random.Random(40)
    wishes = [
        Wish(guests=dice.randint(FEWEST, MOST), kind=dice.randrange(3), keep_top=dice.random() < 0.3, owned=dice.random() < 0.3,
             beside=dice.choice(BESIDE), stacked=dice.choice((None, None, True, False)))
        for _ in range(300)
    ]  # fmt: skip
    asked = [
        {"guests": wish.guests, "kind": wish.kind, "top": wish.keep_top, "owned": wish.owned, "beside": wish.beside,
         "shape": SHAPES[wish.stacked]}
        for wish in wishes
    ]  # fmt: skip
    tab = page()
    tab.goto(f"{demo_url}guests/")
    got = json.loads(tab.evaluate(ASK, [demo_url, json.dumps(asked)]))
    for wish, found in zip(wishes, got["found"], strict=True):
        ours = [[list(each.tiers), each.tray, each.cups, each.serves, each.over] for each in answers(made, wish)]
        assert found == ours, wish
    assert got["most"] < MOST_MS


def test_a_question_is_answered_and_kept(page: Open, demo_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(f"{demo_url}guests/")
    tab.get_by_label("Guests", exact=True).fill("50")
    first = tab.locator(".tb-found li").first
    expect(first).to_contain_text("square 25\u00a0cm")
    expect(first).to_contain_text("serves 50, none left over")
    expect(first).to_contain_text("× the recipe")
    tab.get_by_label("Alongside").select_option("cupcakes")
    expect(first).to_contain_text("standard cupcakes")
    tab.get_by_label("Keep the top tier back").check()
    expect(first).to_contain_text("top tier kept back")
    tab.reload()
    expect(tab.get_by_label("Guests", exact=True)).to_have_value("50")
    expect(tab.get_by_label("Keep the top tier back")).to_be_checked()


def test_no_number_of_guests_is_told(page: Open, demo_url: str) -> None:
    tab = page()
    tab.goto(f"{demo_url}guests/")
    told = tab.get_by_text("Enter a number of guests from 10 to 200.")

    def answered(written: str) -> None:
        tab.get_by_label("Guests", exact=True).fill("40")
        expect(told).to_be_hidden()
        tab.get_by_label("Guests", exact=True).fill(written)
        expect(told).to_be_visible()

    check_every(["", "0", "-5", "9", "201", "forty", "12.5"], answered)


def test_whole_without_a_script(page: Open, demo_url: str) -> None:
    tab = page(java_script_enabled=False)
    tab.goto(f"{demo_url}guests/")
    row = tab.locator("#dessert-rows tbody tr", has=tab.get_by_role("rowheader", name="50", exact=True))
    expect(row).to_contain_text("square 25\u00a0cm")
    # the first answer stands there, and nothing that only a script answers
    expect(tab.locator(".tb-found li").first).to_contain_text("serves 43, 3 left over")
    expect(tab.get_by_text("For 40 guests, dessert")).to_be_visible()
    expect(tab.locator("#tb-ask :is(input, select)").first).to_be_hidden()


def test_letters_of_a_large_plan_can_be_read_on_paper(page: Open, demo_url: str, tmp_path: Path) -> None:
    """Nothing under 9 pt on a sheet of 200 pieces, fitted."""
    tab = page()
    tab.goto(f"{demo_url}portions/round/round-40-cm/#round-40-cm-finger")
    tab.pdf(path=str(tmp_path / "it.pdf"), format="A4", prefer_css_page_size=True)
    run = subprocess.run(
        ["pdftotext", "-bbox", str(tmp_path / "it.pdf"), "-"], capture_output=True, text=True, check=True
    )
    words = re.findall(r'<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">', run.stdout)
    assert len(words) > 200
    assert min(float(foot) - float(head) for head, foot in words) >= 9.0
    assert run.stdout.count("<page ") == 1


def test_one_plan_is_printed_at_full_size(page: Open, demo_url: str) -> None:
    """On paper the square of 15 cm is 150 mm wide: measured on the page as it is printed, 96 px to the inch."""
    tab = page(viewport={"width": 794, "height": 1123})
    tab.goto(f"{demo_url}portions/square/#square-15-cm-dessert")
    tab.emulate_media(media="print")
    figure = tab.locator("#square-15-cm-dessert")
    expect(figure).to_contain_text("On A4 at full size")
    wide_px = figure.locator("use.tb-edge").evaluate("edge => edge.getBBox().width * edge.getScreenCTM().a")
    assert wide_px / 96 * 25.4 == pytest.approx(150.0, abs=0.3)
    # The others are left out.
    expect(tab.locator("#square-20-cm-dessert")).to_be_hidden()
    expect(tab.locator(".tb-cut:visible")).to_have_count(1)
