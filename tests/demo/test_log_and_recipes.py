"""The demo's log and its recipes tell one story: tins, batter, heat, minutes, heights, cases and what cakes took."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.conftest import demo_book
from tests.every import every

from tinbook.models import Baked, Used
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, same_outline, weigh
from tinbook.plans.finish.layers import stack_table

LOADED = demo_book()
BOOK, FACTS = LOADED.book, LOADED.facts
CAKES = sorted({entry.of for entry in BOOK.bakes})


def told(entry: Baked | Used) -> str:
    return f"{entry.of}, {entry.day}"


def batch(slug: str) -> Batch:
    return weigh(slug, BOOK.mixtures[slug], BOOK, FACTS)


@every("entry", BOOK.bakes, ids=told)
def test_a_logged_batter_is_what_the_recipe_gives_that_tin(entry: Baked) -> None:
    """Within a twentieth of the row for that tin, exact or with whole eggs."""
    (row,) = (row for row in tin_table(batch(entry.of), BOOK, FACTS).rows if same_outline(row.tin, entry.tin))
    assert entry.batter == pytest.approx(row.fit.each_g, rel=0.05)


@every("entry", BOOK.bakes, ids=told)
def test_a_logged_bake_was_in_an_owned_tin_at_the_heat_written(entry: Baked) -> None:
    """The dial of the house's fan oven stands 20 °C under what the recipe says (fan difference, common practice)."""
    written = BOOK.mixtures[entry.of].bake
    assert written is not None
    assert (entry.oven.fan, entry.oven.celsius) == (True, written.oven.celsius)
    assert any(own.have and same_outline(own.tin, entry.tin) for own in BOOK.tins)


@pytest.mark.parametrize("slug", CAKES)
def test_the_written_time_lies_in_the_band_of_the_log(slug: str) -> None:
    made = batch(slug)
    written = made.mixture.bake
    baking = Bakes(BOOK, FACTS).of(made)
    assert written is not None and baking is not None
    (time,) = baking.times([(made.tins[0][1], made.depth_mm)])
    low, high = written.time.low.base, written.time.high.base
    assert low < high
    assert time.low_min <= low and high <= time.high_min
    # the step that bakes says the same minutes
    waits = [step.waiting for step in made.mixture.method if "ake until done" in step.do or "ake at once" in step.do]
    assert [(wait.low.base, wait.high.base) for wait in waits if wait] == [(low, high)]


@every("entry", [each for each in BOOK.bakes if each.done_after], ids=told)
def test_the_oven_took_about_as_long_as_is_written(entry: Baked) -> None:
    """In the tin it is written for, a tenth outside the span at most."""
    written, made = BOOK.mixtures[entry.of].bake, batch(entry.of)
    assert written is not None
    if same_outline(entry.tin, made.tins[0][1]):
        assert 0.9 * written.time.low.base <= entry.done_after <= 1.1 * written.time.high.base


def test_a_case_takes_what_the_log_says() -> None:
    """240 g each of three and 4 eggs of 60 g in 24 cases, and a spoon or two: by hand a little over 40 g each."""
    made = batch("cupcakes")
    (entry,) = BOOK.bakes_of["cupcakes"]
    ((count, _),) = made.tins
    assert 4 * 240 / count == 40
    assert entry.batter == pytest.approx(made.mass_g / count, rel=0.03)
    # filled to half, as the method says
    assert made.share == pytest.approx(0.5, abs=0.05)
    assert any("Half fill each case" in step.do for step in made.mixture.method)


@pytest.mark.parametrize("entry", BOOK.used, ids=told)
def test_what_was_used_was_used_on_a_cake_that_was_baked(entry: Used) -> None:
    """On a cake of that size in the log, no later than then, whose layers stack as high, within a tenth."""
    before = {bake.of for bake in BOOK.bakes if bake.day <= entry.day and same_outline(bake.tin, entry.cake)}
    assert before
    stacks = [
        row.stack
        for slug in before
        for row in stack_table(tin_table(batch(slug), BOOK, FACTS), BOOK, FACTS).rows
        if same_outline(row.stack.tin, entry.cake)
    ]
    near = [stack for stack in stacks if stack.stack_mm == pytest.approx(entry.height, rel=0.1)]
    assert [stack.layers for stack in near if entry.layers in (None, stack.layers)], stacks


def test_the_drawings_and_tips_show_the_house_sponge() -> None:
    """Batter in the tin that is lined, and the layers that are cut: the sponge's own, to the millimetre."""
    made = batch("creamed-butter-sponge")
    pictures = Path(__file__).parents[2] / "recipes" / "pictures"
    assert f">batter, {made.depth_mm:.0f}<" in (pictures / "line-in-tin.svg").read_text("utf-8")
    rows = stack_table(tin_table(made, BOOK, FACTS), BOOK, FACTS).rows
    (stack,) = (row.stack for row in rows if row.stack.tin.name.startswith("round 20 cm"))
    technique = BOOK.techniques["level-and-cut"]
    assert f"{stack.layers} {stack.layer_mm:.0f} mm layers".replace("4", "four", 1) in " ".join(technique.tips)
    assert (pictures / "level-section.svg").read_text("utf-8").count(f">{stack.layer_mm:.0f}<") == 2


def test_six_eggs_stay_under_the_rim_and_seven_do_not() -> None:
    """What the sponge's notes say: batter, risen as the log has it, against a tin 75 mm deep."""
    made = batch("creamed-butter-sponge")
    baked_mm = [made.depth_mm * made.rise * eggs / 5 for eggs in (5, 6, 7)]
    assert baked_mm[0] < baked_mm[1] < made.tins[0][1].brim_mm < baked_mm[2] < 1.15 * made.tins[0][1].brim_mm


def test_the_whisked_sponge_says_one_thing() -> None:
    """Bare sides, ungreased: no paper to shrink from, and not the technique that greases and lines them."""
    made = BOOK.mixtures["whisked-sponge"]
    first = made.method[0].do
    assert "Do not grease" in first and "sides bare" in first
    assert "line-a-tin" not in made.techniques
    assert made.bake is not None and made.bake.done and "paper" not in made.bake.done
    assert any("peel off the paper" in step.do for step in made.method)
    assert not re.search(r"dry by|in (?:a|the) tin, well wrapped", f"{made.about} {made.keeps}")
    assert not any(line.take.name in ("butter", "baking powder", "self-raising flour") for line in made.mix)
