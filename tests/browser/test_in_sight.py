"""What stands in sight at the propped tablet, and that it stays where it is."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.conftest import placed

from tinbook.loading import Loaded
from tinbook.plans.baking.dials import heating

pytestmark = pytest.mark.browser

SCREENS = {"landscape": (1180, 820, 6), "upright": (820, 1180, 6), "phone": (390, 844, 5)}
"""Width and height in CSS px, and how many weighings are in sight."""
IN_SIGHT = """() => [...document.querySelectorAll(".tb-weigh .tb-lines > li")]
  .filter(line => line.getBoundingClientRect().bottom <= innerHeight).length"""
WIDER = "() => document.documentElement.scrollWidth - innerWidth"
SIDEWAYS = """() => {
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  const wider = each => each.scrollWidth > each.clientWidth + 1;
  const page = document.documentElement;
  const scrolls = [...document.querySelectorAll("body *")].filter(each =>
    ["auto", "scroll"].includes(getComputedStyle(each).overflowX) && wider(each) && !each.matches(".tb-scroll, table"));
  const named = scrolls.map(each => `${each.tagName} ${each.className} ${each.scrollWidth - each.clientWidth}`);
  return [...(page.scrollWidth > innerWidth ? [`page ${page.scrollWidth - innerWidth}`] : []), ...new Set(named)];
}"""
CUT = """() => {
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  return [...document.querySelectorAll(".tb-scroll")].filter(each => each.scrollWidth > each.clientWidth)
    .map(each => each.getAttribute("aria-label"));
}"""
HEAR_SHIFTS = """() => {
  window.shifted = 0;
  new PerformanceObserver(list => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.shifted += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
}"""
KEPT_LETTERS = """() => performance.getEntriesByType("resource")
  .filter(each => each.name.endsWith(".woff2") && !each.transferSize).map(each => each.name)"""
STILL_MS = 600
"""So long after it was loaded nothing more moves."""
SCRIPTS = ("EvaluateScript", "v8.evaluateModule", "FunctionCall", "TimerFire", "RunMicrotasks", "v8.callFunction")
"""What a browser calls the running of a script in its trace."""
PLACES = """() => [...document.querySelectorAll(".tb-top, .tb-choose, .tb-cake, .tb-band, .tb-lines, .tb-steps > li")]
  .map(each => { const box = each.getBoundingClientRect(); return [box.x, box.y, box.width, box.height]; })"""


WRITTEN = """async () => {
  const told = page => ["b", ".tb-remarks", ".tb-oven"].map(place =>
    [...page.querySelectorAll(".tb-facts")].flatMap(each => [...each.querySelectorAll(place)].map(one => one.textContent)));
  const still = new DOMParser().parseFromString(await (await fetch(location.href)).text(), "text/html");
  return [told(still), told(document)];
}"""
"""What a bench says of its tins as it was written, and once its script has run."""


@pytest.mark.long
def test_every_bench_has_its_weighings_in_sight_and_says_of_its_tins_what_is_written(
    page: Callable[..., Page], demo_url: str, demo: Loaded
) -> None:
    """Each is opened once, and turned and made narrow."""
    tab, few, wide, differ = page(), {}, [], {}
    for slug, mixture in demo.book.mixtures.items():
        for screen, (width, height, wanted) in SCREENS.items():
            tab.set_viewport_size({"width": width, "height": height})
            if screen == "landscape":
                tab.goto(f"{demo_url}mixtures/{slug}/")
            if (seen := tab.evaluate(IN_SIGHT)) < min(wanted, len(mixture.mix)):
                few[slug, screen] = seen
            if tab.evaluate(WIDER) > 0:
                wide.append((slug, screen))
        written, said = tab.evaluate(WRITTEN)
        assert any(written), slug
        if written != said:
            differ[slug] = written, said
    assert (few, wide, differ) == ({}, [], {})


def test_letters_of_twice_the_size_fit_a_bench_of_320_px(
    large: Page, demo_url: str, few: Callable[[str], list[str]]
) -> None:
    large.set_viewport_size({"width": 320, "height": 640})
    wide = {}
    for slug in few("mixtures/*"):
        large.goto(f"{demo_url}mixtures/{slug}/")
        if (far := large.evaluate(WIDER)) > 0:
            wide[slug] = far
    assert wide == {}


def sideways(tab: Page, base: str, kinds: dict[str, str]) -> dict[str, list[str]]:
    """What scrolls sideways at 320 px on these pages, with all folds open, but tables in their own scrollers."""
    tab.set_viewport_size({"width": 320, "height": 640})
    found = {}
    for kind, address in kinds.items():
        tab.goto(base + address)
        if far := tab.evaluate(SIDEWAYS):
            found[kind] = far
    return found


def test_letters_of_four_times_the_size_fit_every_kind_of_page_of_320_px(
    largest: Page, demo_url: str, kinds: dict[str, str]
) -> None:
    """Beyond WCAG 2.2: 1.4.4 asks for 200 %, and 1.4.10 for 320 px without larger letters."""
    assert sideways(largest, demo_url, kinds) == {}
    assert largest.evaluate("parseFloat(getComputedStyle(document.documentElement).fontSize)") == 80


def test_letters_of_four_times_the_size_fit_a_bench(
    largest: Page, demo_url: str, few: Callable[[str], list[str]]
) -> None:
    benches = {slug: f"mixtures/{slug}/" for slug in few("mixtures/*")}
    assert sideways(largest, demo_url, benches) == {}


UNKNOWN = "Allergens not known"


def test_steps_stand_beside_the_weighings_from_one_height(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport={"width": 1180, "height": 820})
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/")
    lines, steps = placed(tab.locator(".tb-weigh")), placed(tab.locator(".tb-doing"))
    assert abs(lines["y"] - steps["y"]) < 1 and steps["x"] > lines["x"] + lines["width"]
    band = placed(tab.locator(".tb-band"))
    assert band["y"] + band["height"] <= lines["y"] + 1 and band["height"] < 70
    assert "Do not taste the raw mixture" in tab.locator(".tb-band").inner_text()


def test_what_is_in_it_is_in_sight_beside_the_weighings(page: Callable[..., Page], demo_url: str, demo: Loaded) -> None:
    tab = page(viewport={"width": 390, "height": 844})
    for slug in ("creamed-butter-sponge", "modelling-paste", "carrot-cake", "dark-ganache"):
        tab.goto(f"{demo_url}mixtures/{slug}/")
        band = placed(tab.locator(".tb-band"))
        assert band["y"] + band["height"] < 600, slug
        words = tab.locator(".tb-band").inner_text()
        strong = tab.locator("#safety .tb-allergens strong").all_inner_texts()
        assert all(name in words for name in strong), slug
        assert (UNKNOWN in tab.locator("#safety").inner_text()) == (UNKNOWN in words)


def test_the_dial_of_the_house_stands_large_in_the_step_that_heats_the_oven(
    page: Callable[..., Page], demo_url: str, demo: Loaded
) -> None:
    tab = page(viewport={"width": 1180, "height": 820})
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/")
    found = heating(demo.book.mixtures["creamed-butter-sponge"])
    assert found and found[0] == 0
    dial = tab.locator(".tb-steps > li").first.locator(".tb-dial")
    # 160 °C, a fan oven that runs 5 °C hot
    assert dial.inner_text() == "135\u00a0°C"
    size = dial.evaluate("each => parseFloat(getComputedStyle(each).fontSize)")
    assert size >= 26 and (box := placed(dial))["y"] + box["height"] < 820


@pytest.mark.long
def test_no_column_is_cut_off_at_a_tablets_edge_and_no_table_widens_a_phone(
    page: Callable[..., Page], demo_url: str, few: Callable[[str], list[str]]
) -> None:
    """The second leaves of mixtures: a table is as wide as its words."""
    tab, cut, wide = page(), {}, []
    for slug in few("mixtures/*/tables"):
        for screen, (width, height, _) in SCREENS.items():
            tab.set_viewport_size({"width": width, "height": height})
            if screen == "landscape":
                tab.goto(f"{demo_url}mixtures/{slug}/tables/")
            if (labels := tab.evaluate(CUT)) and screen != "phone":
                cut[slug, screen] = labels
            if tab.evaluate(WIDER) > 0:
                wide.append((slug, screen))
    assert (cut, wide) == ({}, [])


def shifts(page: Callable[..., Page], addresses: Iterable[str]) -> dict[tuple[str, str], float]:
    """How much pages shift, each opened on every screen by a browser that has nothing of the book yet, or that keeps
    nothing of it; of those that shift too much. The screens of a page wait together."""
    found = {}
    tabs = {name: page(viewport={"width": wide, "height": high}) for name, (wide, high, _) in SCREENS.items()}
    for tab in tabs.values():
        talk = tab.context.new_cdp_session(tab)
        talk.send("Network.enable")
        talk.send("Network.setCacheDisabled", {"cacheDisabled": True})
    for address in addresses:
        for tab in tabs.values():
            tab.goto(address)
            tab.evaluate(HEAR_SHIFTS)
        tab.wait_for_timeout(STILL_MS)
        for name, tab in tabs.items():
            if (shifted := tab.evaluate("window.shifted")) > 0.02:
                found[address, name] = shifted
            assert tab.evaluate(KEPT_LETTERS) == [], "the letters come anew with each page"
            tab.evaluate("localStorage.clear(); sessionStorage.clear()")
    return found


@pytest.mark.parametrize("leaf", ["", "tables/"])
def test_a_first_load_shifts_nothing(page: Callable[..., Page], demo_url: str, leaf: str) -> None:
    slugs = ("creamed-butter-sponge", "american-buttercream", "rich-fruit-cake")
    assert shifts(page, (f"{demo_url}mixtures/{slug}/{leaf}" for slug in slugs)) == {}


@pytest.mark.long
def test_a_first_load_of_no_technique_shifts_anything(
    page: Callable[..., Page], demo_url: str, few: Callable[[str], list[str]]
) -> None:
    assert shifts(page, (f"{demo_url}techniques/{slug}/" for slug in few("techniques/*"))) == {}


def test_a_page_that_shifts_is_seen(page: Callable[..., Page], tmp_path: Path) -> None:
    late = "<div id=a></div><h1>Low tide</h1><p>Herons.</p><script>setTimeout(() => { a.style.height = '300px'; }, 200);</script>"
    (tmp_path / "late.html").write_text(late, "utf-8")
    address = (tmp_path / "late.html").as_uri()
    assert set(shifts(page, [address])) == {(address, name) for name in SCREENS}


def script_tasks_ms(trace: bytes) -> list[float]:
    """How long the scripts of each task of a page ran, by the clock of its own thread: others on the machine do not
    count.
    """
    events = [event for event in json.loads(trace)["traceEvents"] if event.get("ph") == "X" and "tdur" in event]
    threads = Counter((event["pid"], event["tid"]) for event in events if event["name"] == "ParseHTML")
    ((thread, _),) = threads.most_common(1)
    own = [event for event in events if (event["pid"], event["tid"]) == thread]
    scripts = sorted((event for event in own if event["name"] in SCRIPTS), key=lambda each: (each["ts"], -each["dur"]))
    told = []
    for task in (event for event in own if event["name"].endswith("RunTask")):
        told.append(0.0)
        done = task["ts"]
        for script in scripts:
            # what one script calls is counted with it
            if done <= script["ts"] and script["ts"] + script["dur"] <= task["ts"] + task["dur"]:
                done = script["ts"] + script["dur"]
                told[-1] += script["tdur"] / 1000.0
    return told


@pytest.mark.parametrize("slug", ["lighthouse-for-the-front", "heron-for-the-side", "cover-a-board"])
def test_no_script_of_a_technique_holds_a_slow_phone_up(
    page: Callable[..., Page], chromium: Browser, demo_url: str, slug: str
) -> None:
    """At a quarter of this machine's speed no task has more than 50 ms of script. The best of three loads: what the
    machine does beside makes a load slower and never faster."""
    longest = []
    for _ in range(3):
        tab = page(viewport={"width": 390, "height": 844})
        tab.context.new_cdp_session(tab).send("Emulation.setCPUThrottlingRate", {"rate": 4})
        chromium.start_tracing(page=tab, categories=["devtools.timeline", "toplevel", "v8", "v8.execute"])
        tab.goto(f"{demo_url}techniques/{slug}/")
        tab.wait_for_timeout(500)
        told = script_tasks_ms(chromium.stop_tracing())
        assert max(told) > 1.0, "scripts ran, and were seen"
        longest.append(max(told))
        tab.context.close()
        if longest[-1] <= 50.0:
            break
    assert min(longest) <= 50.0, longest


@pytest.mark.parametrize("screen", SCREENS)
def test_other_size_opens_over_the_page(page: Callable[..., Page], demo_url: str, screen: str) -> None:
    width, height, _ = SCREENS[screen]
    tab = page(viewport={"width": width, "height": height})
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/")
    before: Any = tab.evaluate(PLACES)
    tab.locator(".tb-other > summary").click()
    expect(tab.locator(".tb-panel")).to_be_visible()
    assert tab.evaluate(PLACES) == before
    assert tab.evaluate(WIDER) <= 0


def test_the_bench_stands_without_a_script(page: Callable[..., Page], demo_url: str, demo: Loaded) -> None:
    tab = page(viewport={"width": 1180, "height": 820}, java_script_enabled=False)
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/")
    assert tab.locator(".tb-lines li").count() == len(demo.book.mixtures["creamed-butter-sponge"].mix)
    assert "Check at" in tab.locator(".tb-facts").inner_text()
    # what would do nothing is not shown
    assert not tab.locator(".tb-strip").is_visible() and not tab.locator(".tb-stepper").is_visible()


@pytest.mark.parametrize("screen", ["landscape", "upright"])
@pytest.mark.parametrize("address", ["covering/", "boards/", "oven/"])
def test_at_a_tablet_no_table_of_a_finished_cake_or_of_bakes_scrolls_inside(
    page: Callable[..., Page], demo_url: str, screen: str, address: str
) -> None:
    width, height, _ = SCREENS[screen]
    tab = page(viewport={"width": width, "height": height})
    tab.goto(demo_url + address)
    assert tab.locator(".tb-scroll .tb-table tbody tr").count() > 5
    assert tab.evaluate(CUT) == []
    assert tab.evaluate(WIDER) <= 0
