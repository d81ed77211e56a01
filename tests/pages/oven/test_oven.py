"""The page of the oven: what the plans say, and what it does not allow for."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from tinbook.models import House, Mixture
from tinbook.pages.base.page import Desk
from tinbook.pages.oven.oven import OvenView, oven_pages
from tinbook.plans.baking.loads import written_loads
from tinbook.plans.base.weighing import Batch
from tinbook.site import build_site, contents

N = "\u00a0"


def told(desk: Desk) -> str:
    (page,) = oven_pages(desk)
    return page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}")


def test_it_says_what_oven_it_is_and_what_to_set(filled: Callable[[str], str]) -> None:
    text = filled("oven")
    assert "We have a fan oven" in text and "hotter than its dial" in text
    assert re.search(rf'<th scope="row">160</th><td class="tb-main">135{N}°C{N}fan</td><td[^>]*>140<', text)
    assert "/measures#dial" in text
    assert "97" in text and "(93 to 99)" in text and "skewer" in text and "Ovens differ" in text


def test_it_says_what_it_does_not_allow_for(filled: Callable[[str], str]) -> None:
    text = filled("oven")
    assert "Not allowed for: several tins at once, and an oven that is not yet hot." in text
    assert "batter straight from the fridge" in text


def test_loads_and_ways_are_those_of_the_plans(desk: Desk) -> None:
    view = OvenView(desk)
    dials, ways, loads = view.items
    assert [grid.anchor for grid in (dials, ways, loads)] == ["dial", "ways", "loads"]
    baked = [batch for batch in desk.batches.values() if batch.tins and desk.bakes.of(batch)]
    assert [row.head for row in ways.rows] == [batch.mixture.name for batch in baked]
    plan = [each for batch in baked for each in written_loads(batch, desk.bakes.of(batch), desk.book, desk.facts)]
    assert len(loads.rows) == len(plan) >= len(baked)
    for row, load in zip(loads.rows, plan, strict=True):
        cells = [cell.text for cell in row.cells]
        assert cells[0] == f"{load.mixes}" and cells[2] == f"{load.fit.bakes}"
        assert cells[3].startswith(f"{load.oven_low_min:g}") and cells[3].endswith(f"{load.oven_high_min:g}")
    # a batter 60 mm deep may be baked cooler, one of 44 mm need not
    by_name = {row.head: [cell.text for cell in row.cells] for row in ways.rows}
    assert "no need" in by_name["Creamed butter sponge"] and "no need" not in by_name["Winter-mooring fruit cake"]


def test_too_full_and_above_the_rim_are_told(
    desk: Desk, mixture: Callable[..., Mixture], batch: Callable[..., Batch]
) -> None:
    deep = batch(book=desk.book, tins="round 20 cm x 10 cm")
    baked_mm = deep.depth_mm * deep.rise
    kinds = {
        "above": mixture(tins=f"round 20 cm x {baked_mm / 1.08:.2f} mm"),
        "full": mixture(tins=f"round 20 cm x {baked_mm / 1.3:.2f} mm"),
    }
    other = replace(desk, book=replace(desk.book, mixtures=kinds, tins=()))
    said = [row.cells[5].text for row in OvenView(other).items[2].rows]
    assert "above the rim: may spill" in said[0]
    assert re.match(rf"too full: fill 2 tins, [\d,]+{N}g in each at most", said[1])


def test_every_bake_is_there_newest_first(desk: Desk, filled: Callable[[str], str]) -> None:
    view = OvenView(desk)
    assert len(view.log) == len(desk.book.bakes)
    days = re.findall(r"<th scope=row>(\d{4}-\d\d-\d\d)<small>", filled("oven"))
    assert days == sorted(days, reverse=True) and len(days) == len(desk.book.bakes)
    assert "Harbour wall, bottom tier." in filled("oven")


def test_without_a_log_it_answers_and_says_so(desk: Desk) -> None:
    text = told(replace(desk, book=replace(desk.book, bakes=())))
    assert "No bakes have been logged yet, so every span is wide" in text and "Nothing is logged yet." in text
    assert "Other ways to bake it" in text and "What each bake involves" in text


def test_a_house_that_bakes_nothing_still_has_its_dial(desk: Desk, house: Callable[..., House]) -> None:
    bare = replace(desk.book, mixtures={}, bakes=(), house=house(oven_shelf=None, mixer_bowl=None))
    text = told(replace(desk, book=bare))
    assert (
        "Nobody has checked it with a thermometer yet" in text
        and "No size is given for the shelf or the mixer bowl" in text
    )
    assert "What to set on the dial" in text and "What each bake involves" not in text


def test_it_stands_in_the_contents(desk: Desk) -> None:
    entries = contents(build_site(desk.book, desk.facts, {}))
    titles = [title for entry in entries if isinstance(entry, Mapping) for title in entry]
    assert "Oven" in titles
