"""A bake at the bench, from the chosen tin to the line for the log: as a baker does it, held to the engine's table."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tinbook.loading import Loaded, load_book
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.tables import times
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import weigh
from tinbook.tins import read_tin

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
SIZES: dict[str, dict[str, Any]] = {
    "tablet": {"viewport": {"width": 1180, "height": 820}, "has_touch": True},
    "phone": {"viewport": {"width": 390, "height": 844}, "has_touch": True},
}
CAKE, TIN = "mud-cake", "round 23 cm"
RAN_MIN = 126
STEP_MIN = 5.0


def bake(tab: Page, address: str, tin: str) -> str:
    """Choose the tin, start the bake, take it out after RAN_MIN minutes; the line that is offered."""
    tab.clock.install(time="2026-11-25T09:00:00")
    tab.goto(address)
    tab.clock.pause_at("2026-11-25T09:00:10")
    tab.locator(f'.tb-chip[data-tin="{tin}"]').tap()
    button = tab.locator(".tb-steps .tb-start", has_text="check")
    expect(button).to_have_count(1)
    button.tap()
    tab.clock.run_for(RAN_MIN * 60_000)
    tab.locator("#tb-tray").get_by_role("button", name="Done:").tap()
    code = tab.locator("#tb-tray code")
    expect(code).to_be_visible()
    return code.inner_text()


@pytest.mark.parametrize("size", SIZES)
def test_a_bake_from_the_tin_to_the_log(
    page: Callable[..., Page], demo_url: str, demo: Loaded, tmp_path: Path, size: str
) -> None:
    tab = page(**SIZES[size], permissions=["clipboard-read", "clipboard-write"])
    line = bake(tab, f"{demo_url}mixtures/{CAKE}/", TIN)
    row = next(row for row in times(demo.book, demo.facts, Query(of=CAKE)).rows if str(row["tin"]).startswith(TIN))
    said = tab.locator(".tb-oven")
    expect(said).to_contain_text(
        f"Check at {row['check_min']:g}\u00a0min, most likely done in {row['low_min']:g}–{row['high_min']:g}\u00a0min."
    )
    expect(tab.locator(".tb-far")).to_contain_text(spell(row["baked_before"]).replace(" cm", "\u00a0cm"))
    # the button says when to look first; on paper the step says the span
    step = tab.locator(".tb-steps li", has=tab.locator(".tb-start", has_text="check"))
    expect(step.locator(".tb-time span")).to_have_text(f"{row['low_min']:g}–{row['high_min']:g} min")
    expect(step.locator(".tb-start")).to_have_attribute("data-minutes", f"{row['check_min']:g}")

    tab.locator("#tb-tray").get_by_role("button", name="Copy").tap()
    expect(tab.locator("#tb-said")).to_have_text("Copied")
    assert tab.evaluate("navigator.clipboard.readText()") == line
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")

    # pasted below the others, the book reads it back
    shutil.copytree(ROOT / "recipes", tmp_path / "recipes")
    log = tmp_path / "recipes/house/bakes.yaml"
    log.write_text(log.read_text("utf-8").rstrip("\n") + "\n" + line + "\n", "utf-8")
    loaded = load_book(tmp_path / "recipes")
    assert not [problem for problem in loaded.problems if "bakes.yaml" in str(problem)]
    entry = loaded.book.bakes[-1]
    batch = weigh(CAKE, demo.book.mixtures[CAKE], demo.book, demo.facts)
    (fit,) = scale(batch, demo.book, demo.facts, Query(tins=((1, read_tin(TIN)[1]),))).fits
    assert (entry.of, entry.tin.name, entry.done_after) == (CAKE, TIN, RAN_MIN)
    assert entry.day.isoformat() == "2026-11-25" and entry.batter == fit.each_shown_g
    assert entry.oven.written == "135 °C fan"
    # set so, this oven is as hot as the recipe wants it
    assert entry.oven.celsius + demo.book.house.oven.off_c == demo.book.mixtures[CAKE].bake.oven.celsius  # type: ignore[union-attr]

    tab.reload()
    expect(tab.locator("#tb-tray code")).to_have_text(line)
    tab.locator("#tb-tray").get_by_role("button", name="Clear").tap()
    expect(tab.locator("#tb-tray")).to_be_hidden()


def test_from_a_folder_too(page: Callable[..., Page], demo_folder: Path) -> None:
    tab = page(**SIZES["phone"])
    line = bake(tab, (demo_folder / f"mixtures/{CAKE}.html").as_uri(), TIN)
    assert line.startswith(f"  - {{day: 2026-11-25, of: {CAKE}, tin: {TIN}, batter: ")
    assert line.endswith(f"done after: {RAN_MIN} min}}")
    tab.locator("#tb-tray").get_by_role("button", name="Copy").tap()
    assert tab.evaluate("getSelection().toString()").strip() == line.strip()


@pytest.mark.parametrize(("shape", "width", "length", "below", "above"), [
    ("round", 210, 210, "round 20 cm", "round 23 cm"), ("square", 240, 240, "round 23 cm", "round 25 cm"),
    ("rectangle", 180, 270, "round 20 cm", "round 23 cm"), ("square", 230, 230, "round 23 cm", "round 23 cm"),
])  # fmt: skip
def test_a_tin_of_another_size_bakes_as_the_rounds_beside_it(
    page: Callable[..., Page], demo_url: str, demo: Loaded, shape: str, width: int, length: int, below: str, above: str
) -> None:
    """And the engine's own time for it lies within what is said, to a step of the timer."""
    tab = page(**SIZES["tablet"])
    tab.goto(f"{demo_url}mixtures/{CAKE}/#for?shape={shape}&width={width}&length={length}&count=1")
    rows = {str(row["tin"]).partition(" x ")[0]: row for row in times(demo.book, demo.facts, Query(of=CAKE)).rows}
    said = tab.locator(".tb-oven")
    low, high, check = rows[below]["low_min"], rows[above]["high_min"], rows[below]["check_min"]
    expect(said).to_contain_text(f"Check at {check:g}\u00a0min, most likely done in {low:g}–{high:g}\u00a0min.")
    if below != above:
        expect(tab.locator(".tb-far")).to_contain_text(f"between {below} and {above}")
    tin = read_tin(f"{shape} {width / 10:g} cm" + (f" x {length / 10:g} cm" if length != width else ""))[1]
    (own,) = times(demo.book, demo.facts, Query(of=CAKE, tins=((1, tin),))).rows
    assert check - STEP_MIN <= own["check_min"] <= own["low_min"] and low - STEP_MIN <= own["low_min"]
    assert own["high_min"] <= high + STEP_MIN


def test_what_lies_beyond_the_rounds_has_no_time(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**SIZES["tablet"])
    tab.goto(f"{demo_url}mixtures/{CAKE}/#for?shape=round&width=610&length=610&count=1")
    expect(tab.locator(".tb-oven")).to_be_hidden()
    button = tab.locator(".tb-steps .tb-start[data-bake]")
    expect(button).to_have_attribute("data-minutes", "")
    expect(button).to_be_hidden()
    tab.goto("about:blank")
    tab.goto(f"{demo_url}mixtures/{CAKE}/#for?shape=round&width=210&length=210&count=1")
    expect(button).to_have_attribute(
        "data-bake", f"of: {CAKE}, tin: round 21 cm, batter: 1825 g, oven: 135 °C fan, done after: "
    )
    # known by its water alone it has no name to log
    tab.goto("about:blank")
    tab.goto(f"{demo_url}mixtures/{CAKE}/#for?ml=2100&count=1")
    expect(tab.locator(".tb-steps .tb-start[data-bake='']")).to_have_count(1)


def test_a_bake_of_a_minute_is_none(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**SIZES["tablet"])
    tab.clock.install(time="2026-11-25T09:00:00")
    tab.goto(f"{demo_url}mixtures/{CAKE}/")
    tab.clock.pause_at("2026-11-25T09:00:10")
    tab.locator(".tb-steps .tb-start", has_text="check").tap()
    tab.clock.run_for(60_000)
    tab.locator("#tb-tray").get_by_role("button", name="Done:").tap()
    expect(tab.locator("#tb-tray")).to_be_hidden()
