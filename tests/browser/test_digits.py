"""The browser's sums against Python's, to the printed digit: 2,000 pairs of a mixture and its tins.

Python writes what should be printed, by plans.scale, plans.measures and pages.formats; the page's own modules get the
JSON that the page embeds. In the browser a sum is done again from other parts, so agreement is not built in.
"""

from __future__ import annotations

import json
import random
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pytest
from playwright.sync_api import Page

from tinbook.engine import scaling
from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.pages.spelling import formats
from tinbook.plans.base.answering import Scaled, scale
from tinbook.plans.base.asking import Query
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.versions import Amount, Version, amount, raising_points
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.measures.spooned import measured
from tinbook.plans.mixtures.bench import area_shares
from tinbook.tins import SHAPES, Tin

pytestmark = pytest.mark.browser

PAIRS = 2000
SHARES = (1 / 2, 1 / 3, 0.25, 2 / 3)

ASK = """async ([base, text]) => {
  const asked = JSON.parse(text);
  const { work, spelt } = await import(`${base}assets/tinbook/work.js`);
  const { fixed, number, figure } = await import(`${base}assets/tinbook/spell.js`);
  const { recipeOf } = await import(`${base}assets/tinbook/embedded.js`);
  const { write } = await import(`${base}assets/tinbook/keep.js`);
  const join = ([text, unit]) => unit ? `${text}\\u00a0${unit}` : text;
  const recipes = {};
  for (const slug of new Set(asked.map(each => each.slug))) {
    const text = await (await fetch(`${base}mixtures/${slug}/`)).text();
    recipes[slug] = recipeOf(new DOMParser().parseFromString(text, "text/html"));
  }
  const got = asked.map(() => ({ lines: {}, parts: {} }));
  for (const measure of ["grams", "ounces", "cups"]) {
    write("measure", measure);
    asked.forEach(({ slug, choice, share }, at) => {
      const recipe = recipes[slug], { shown } = work(recipe, choice);
      got[at].lines[measure] = recipe.lines.map((_, index) => join(spelt(recipe, index, shown)));
      got[at].parts[measure] = recipe.lines.map((_, index) => join(spelt(recipe, index, shown, share)));
    });
  }
  asked.forEach(({ slug, choice }, at) => {
    const made = work(recipes[slug], choice);
    Object.assign(got[at], { factor: fixed(made.shown.factorShown, 2), mass: number(made.shown.massShown),
      each: number(made.inEach), off: number(made.shown.offPercent), beaten: made.beaten, needed: made.needed,
      mixes: made.mixes, bakes: made.bakes });
  });
  return JSON.stringify(got);
}"""


@pytest.fixture(scope="module")
def batches(demo: Loaded) -> dict[str, Batch]:
    assert demo.book.mixtures
    return dict(weigh_all(demo.book, demo.facts))


def kept(batch: Batch, width_mm: float, facts: Facts) -> float:
    """The share of the raising agent that stays in a tin so wide."""
    return 1.0 if batch.mixture.raising == "level" else scaling.wide_tin_raising(width_mm, raising_points(facts))


def scaled_lines(batch: Batch, made: Version, width_mm: float, facts: Facts, share: float = 1.0) -> Batch:
    """The mixture as if it had been written for this factor: then every measure comes from plans.measures."""
    lines = []
    for line in batch.ingredients:
        factor = made.factor * share * (kept(batch, width_mm, facts) if line.raises else 1.0)
        ml = line.volume_ml * factor if line.volume_ml is not None else None
        lines.append(replace(line, amount=line.amount * factor, mass_g=line.mass_g * factor, volume_ml=ml))
    return replace(batch, ingredients=tuple(lines))


def printed(amounts: tuple[Amount, ...], lines: Batch, book: Book) -> dict[str, list[str]]:
    """Every line in the three measures. What is counted stays counted, what has no volume stays in grams."""
    every = measured(lines, book)
    grams = [formats.spelled(got) for got in amounts]
    ounces = [
        each if got.unit == "" else formats.ounces(row.ounces)
        for each, got, row in zip(grams, amounts, every, strict=True)
    ]
    cups = [each if row.spoons is None else formats.spoons(row.spoons) for each, row in zip(grams, every, strict=True)]
    return {"grams": grams, "ounces": ounces, "cups": cups}


def expected(
    batch: Batch, answer: Scaled, exact: bool, share: float, width_mm: float, book: Book, facts: Facts
) -> dict[str, Any]:
    """What the page must print for one answer, in one of its two versions, and of a `share` of each line in a step."""
    made = answer.exact if exact else answer.whole
    part = scaled_lines(batch, made, width_mm, facts, share)
    weighed = tuple(amount(line, 1.0, batch.steps, by_weight=True) for line in part.ingredients)
    return {
        "lines": printed(made.amounts, scaled_lines(batch, made, width_mm, facts), book),
        "parts": printed(weighed, part, book),
        "factor": formats.fixed(made.factor_shown, 2),
        "mass": formats.number(made.mass_shown_g),
        "off": formats.number(made.off_percent),
        "beaten": answer.beaten,
    }  # fmt: skip


def questions(
    batches: dict[str, Batch], book: Book, facts: Facts
) -> Iterator[tuple[str, dict[str, Any], Tin | None, int]]:
    """Slug, choice of the browser, the same tin for Python, how many. The seed is fixed: a failure comes back."""
    dice = random.Random(20)
    rows = {
        slug: [row.tin for row in tin_table(batch, book, facts).rows] for slug, batch in batches.items() if batch.tins
    }
    for number in range(PAIRS):
        slug = sorted(rows)[number % len(rows)]
        count, exact = dice.randint(1, 6), dice.random() < 0.5
        kind = dice.random()
        if kind < 0.6:
            tin = dice.choice(rows[slug])
            count *= 6 if tin.holes > 1 else 1
            yield slug, {"tin": tin.name, "count": count, "exact": exact}, tin, count
        elif kind < 0.9:
            shape = dice.choice(list(area_shares()))
            # odd tenths, so that no tin of the house, which may be measured, is meant
            width, length = (round(dice.uniform(60, 500), 1) + 0.03 for _ in range(2))
            two = SHAPES[shape].in_two_sizes
            sizes = (width, length) if two else (width,)
            choice = {"any": {"shape": shape, "width": width, "length": length if two else width}}
            yield slug, {**choice, "count": count, "exact": exact}, Tin(shape=shape, sizes_mm=sizes), count
        else:
            ml = float(dice.randint(150, 9000))
            # a narrow tin of that water: nothing is known of its width
            tin = Tin(shape="round", sizes_mm=(100.0,), depth_mm=75.0, measured_ml=ml)
            yield slug, {"any": {"ml": ml}, "count": count, "exact": exact}, tin, count


def answers(tab: Page, base: str, asked: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What the page's own modules print. As one text: a hundred thousand small values would travel slowly."""
    tab.goto(base)
    found: list[dict[str, Any]] = json.loads(tab.evaluate(ASK, [base, json.dumps(asked)]))
    return found


def test_two_thousand_pairs_print_the_same(
    page: Callable[..., Page], demo_url: str, demo: Loaded, batches: dict[str, Batch]
) -> None:
    book, facts = demo.book, demo.facts
    asked, wanted = [], []
    for slug, choice, tin, count in questions(batches, book, facts):
        by_water, share = "ml" in choice.get("any", {}), SHARES[len(asked) % len(SHARES)]
        answer = scale(batches[slug], book, facts, Query(tins=((count, tin),), deep=by_water))
        want = expected(batches[slug], answer, choice["exact"], share, tin.bounds_mm[0], book, facts)
        if "tin" in choice and not choice["exact"]:
            fit = answer.fits[0]
            want |= {"each": formats.number(fit.each_shown_g), "needed": fit.needed, "bakes": fit.bakes}
            want |= {"mixes": answer.mixes}
        wanted.append(want)
        asked.append({"slug": slug, "choice": choice, "share": share})
    got = answers(page(), demo_url, asked)
    assert len(got) == PAIRS
    wrong = [
        (question["slug"], question["choice"], name, want[name], found[name])
        for question, want, found in zip(asked, wanted, got, strict=True)
        for name in want
        if want[name] != found[name]
    ]
    assert not wrong, f"{len(wrong)} of {PAIRS}: {str(wrong[:3])[:2000]}"


def test_fillings_by_batch_and_by_weight(
    page: Callable[..., Page], demo_url: str, demo: Loaded, batches: dict[str, Batch]
) -> None:
    dice, asked, wanted = random.Random(7), [], []
    for slug, batch in batches.items():
        for _ in range(0 if batch.tins else 60):
            if dice.random() < 0.5:
                count = dice.randint(1, 12) / 2
                query = Query(batches=count)
            else:
                grams = dice.randint(50, 5000)
                count = grams / batch.makes_g
                query = Query(weight_g=float(grams))
            choice = {"tin": "", "count": count, "exact": False}
            answer = scale(batch, demo.book, demo.facts, query)
            asked.append({"slug": slug, "choice": choice, "share": 0.5})
            wanted.append(expected(batch, answer, False, 0.5, 0.0, demo.book, demo.facts))
    assert asked, "the demo book has no mixture made by weight"
    got = answers(page(), demo_url, asked)
    for question, want, found in zip(asked, wanted, got, strict=True):
        assert {name: found[name] for name in want} == want, question


TIE = """async base => {
  const { versions } = await import(`${base}assets/tinbook/sums.js`);
  const recipe = { eggs: 1, egg_tolerance: 0.08, raising: null, lines: [], steps: { step: 5, fine: 1, fine_below: 50 } };
  return [25 / 9, (25 / 15) ** 2, 2.7777, 2.778].map(factor => versions(recipe, factor, 250).beaten);
}"""


def test_eggs_that_are_just_near_enough_stay_whole(page: Callable[..., Page], demo_url: str) -> None:
    """From a round 15 cm to one of 25 cm an egg becomes 25/9; three are 8 % more, to the last digit a float holds."""
    tab = page()
    tab.goto(demo_url)
    assert tab.evaluate(TIE, demo_url) == [False, False, True, False]
