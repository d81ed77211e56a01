"""Baking times against three published charts, each left out in turn: what is thought before any bake is learned from
the other two, and a chart is then scored as the book prints it, from one or two of its tins.

Sources, each named in the head of its table in tests/data: batter_us_3in_deep.csv (Wedding cake data chart for 3 in
deep pans, cakecentral.com, fromkarenskitchen.com), recipe_mud_by_tin.csv (Chocolate mud cake,
the-wedding-information-site.com), bake_times_chocolate.csv (chocolate cake chart of Busy Girls Guide to Cake
Decorating, 2012).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from math import ceil, exp, log, pi, sqrt
from statistics import median

import numpy as np
import pytest

from tinbook.engine import baking
from tinbook.engine.baking import Law, Prior
from tinbook.facts import Facts
from tinbook.plans.baking.bakes import prior
from tinbook.plans.baking.times import Baking, Time
from tinbook.plans.base.weighing import Batch
from tinbook.tins import Tin

IN_MM, CUP_ML = 25.4, 236.588
START_C, CENTRE_C = 20.0, 97.0
EACH, POOLED, NEAR_RATIO = 0.65, (0.70, 0.92), 1.8
Row = tuple[float, float, float, float]
"""Width mm, batter depth mm, oven °C, minutes."""
Table = Callable[[str], list[dict[str, str]]]
Floats = np.ndarray


def deep_pans(table: Table) -> list[Row]:
    """Batter by the cup, °F, from so many minutes to so many. A contour pan is taken as a round of its size with 0.9 of
    its area."""
    rows = []
    for row in table("batter_us_3in_deep"):
        sides = [float(side) * IN_MM for side in row["size_in"].split("x")]
        across = sides[0]
        area, edge = {
            "round": (pi * across**2 / 4, pi * across),
            "square": (across**2, 4 * across),
            "contour": (0.9 * pi * across**2 / 4, 0.97 * pi * across),
            "half-round": (pi * across**2 / 8, across + pi * across / 2),
            "sheet": (across * sides[-1], 2 * (across + sides[-1])),
        }[row["shape"]]
        deep = float(row["batter_us_cups"]) * CUP_ML * 1000 / area
        minutes = (float(row["bake_min_low"]) + float(row["bake_min_high"])) / 2
        rows.append((4 * area / edge, deep, (float(row["oven_F"]) - 32) / 1.8, minutes))
    return rows


def mud_tins(table: Table) -> list[Row]:
    """Rounds, at 160 °C. A ml of batter is taken as 1.05 g."""
    rows = []
    for row in table("recipe_mud_by_tin"):
        weight = sum(float(row[key]) for key in row if key.endswith(("_g", "_ml")))
        weight += 50 * float(row["eggs_n"]) + 5 * float(row["oil_tsp"])
        across = float(row["round_in"]) * IN_MM
        deep = weight / 1.05 * 1000 / (pi * across**2 / 4)
        rows.append((across, deep, 160.0, float(row["bake_min"])))
    return rows


def chocolate_tins(table: Table) -> list[Row]:
    """Squares, at 180 °C."""
    keys = ("size_in", "batter_depth_cm", "oven_C", "t_lo_min", "t_hi_min")
    rows = [tuple(float(row[key]) for key in keys) for row in table("bake_times_chocolate")]
    return [(inch * IN_MM, deep_cm * 10, oven_c, (low + high) / 2) for inch, deep_cm, oven_c, low, high in rows]


@pytest.fixture(scope="module")
def charts(table: Table) -> dict[str, list[Row]]:
    read = {"deep pans": deep_pans(table), "mud": mud_tins(table), "chocolate": chocolate_tins(table)}
    assert {name: len(rows) for name, rows in read.items()} == {"deep pans": 20, "mud": 4, "chocolate": 8}
    return read


# The method: a model of charts in which each has its own power of the width and its own scatter, learned by Bayes' rule
# on a grid. Charts are few, so what is not known of charts in general is kept and not set to nothing.

POWER = (1.0, 0.5)
"""The power of a chart, before any: between 0 (only the depth matters) and 2 (heat to the middle by conduction alone)."""
DIFFER = 0.5
"""How far powers differ from chart to chart: half a normal distribution of this width."""
SCATTER = (log(0.1), 0.5)
"""ln scatter of a chart, before any: a tenth, give or take a factor of 1.6."""
UNEQUAL = 0.5
"""How far ln scatter differs from chart to chart, again half a normal distribution."""
FEW = 25


@dataclass(frozen=True, kw_only=True)
class Learned:
    """What charts tell of one more chart: its power and how sure that is, how far powers differ, its scatter; each with
    the range that holds it in 80 % of cases."""

    power: float
    sure: float
    differ: float
    differ_range: tuple[float, float]
    scatter: float
    scatter_range: tuple[float, float]


def method(charts: Iterable[Sequence[Row]], depth: tuple[float, float]) -> Learned:
    """Of charts whose minutes go by a power of the depth of so much, give or take so much; each may be as long as it
    likes."""
    from scipy.stats import norm  # it takes a second to import

    powers = np.linspace(POWER[0] - 3 * POWER[1], POWER[0] + 3 * POWER[1], FEW)
    differs = np.linspace(0.0, 3 * DIFFER, FEW)
    ln_scatters = np.linspace(log(0.01), log(0.6), 2 * FEW)
    typical = np.linspace(SCATTER[0] - 3 * SCATTER[1], SCATTER[0] + 3 * SCATTER[1], FEW)
    unequal = np.linspace(0.04, 3 * UNEQUAL, FEW)

    of_power = norm.logpdf(powers, *POWER)[:, None] + norm.logpdf(differs, 0.0, DIFFER)[None, :]
    of_scatter = norm.logpdf(typical, *SCATTER)[:, None] + norm.logpdf(unequal, 0.0, UNEQUAL)[None, :]
    # how often a chart scatters so much, by what is typical and how unequal charts are
    often = norm.pdf(ln_scatters, typical[:, None, None], unequal[None, :, None])
    often = (often / often.sum(axis=2, keepdims=True)).reshape(-1, len(ln_scatters))
    told = of_power.reshape(-1, 1) + of_scatter.reshape(1, -1)
    for rows in charts:
        likely = _likelihood(rows, powers, differs, ln_scatters, depth).reshape(-1, len(ln_scatters))
        told = told + np.log(np.exp(likely - likely.max()) @ often.T + 1e-300)
    share = np.exp(told - told.max())
    share /= share.sum()

    power = share.sum(axis=1).reshape(len(powers), len(differs))
    mean = float(power.sum(axis=1) @ powers)
    differ = power.sum(axis=0)
    scatter = share.sum(axis=0) @ often
    return Learned(
        power=mean,
        sure=sqrt(power.sum(axis=1) @ (powers - mean) ** 2),
        differ=sqrt(differ @ differs**2),
        differ_range=_tenths(differ, differs),
        scatter=sqrt(scatter @ np.exp(2 * ln_scatters)),
        scatter_range=_tenths(scatter, np.exp(ln_scatters)),
    )


def _likelihood(
    rows: Sequence[Row], powers: Floats, differs: Floats, ln_scatters: Floats, depth: tuple[float, float]
) -> Floats:
    """ln likelihood of one chart, by power, how far powers differ, and scatter: jointly normal, its level left open."""
    wide = np.array([log(row[0] / baking.WIDTH_MM) for row in rows])
    deep = np.array([log(row[1] / baking.DEPTH_MM) for row in rows])
    seen = np.array([log(row[3] / baking.heat(row[2], START_C, CENTRE_C)) for row in rows])
    rest = (seen - seen.mean() - depth[0] * deep)[None, :] - powers[:, None] * wide[None, :]
    any_level, by_depth = 100.0 * np.ones((len(rows), len(rows))), depth[1] ** 2 * np.outer(deep, deep)
    found = np.empty((len(powers), len(differs), len(ln_scatters)))
    for at_differ, differ in enumerate(differs):
        for at_scatter, ln_scatter in enumerate(ln_scatters):
            scatter = exp(2 * ln_scatter) * np.eye(len(rows))
            cover = any_level + by_depth + differ**2 * np.outer(wide, wide) + scatter
            off = np.einsum("ij,jk,ik->i", rest, np.linalg.inv(cover), rest)
            found[:, at_differ, at_scatter] = -0.5 * (off + np.linalg.slogdet(cover)[1])
    return found


def _tenths(share: Floats, values: Floats) -> tuple[float, float]:
    """Between which values 80 % of a distribution lie, a tenth of it on either side."""
    low, high = np.interp([0.1, 0.9], share.cumsum() / share.sum(), values)
    return float(low), float(high)


# Scoring


@dataclass(frozen=True)
class Score:
    """Every choice of so many known tins of a chart, the rest guessed: how far off, whether in the span, and upper over
    lower end of those no more than an inch from a known one, exactly and as shown."""

    off: list[float]
    held: list[bool]
    near: list[float]
    near_shown: list[float]

    def __str__(self) -> str:
        return (
            f"median off {median(self.off):.1%}, worst {max(self.off):.0%}, in the span {np.mean(self.held):.0%}, "
            f"an inch off upper over lower at most {max(self.near):.2f}, as shown {max(self.near_shown):.2f}"
        )


@dataclass(frozen=True)
class PlainCake:
    """A cake of no chart, to ask the book for times of."""

    batch: Batch
    facts: Facts

    def prior(self, learned: Learned | None = None) -> Prior:
        """The facts', with what is `learned` in place of theirs; how long it takes is left open, for kinds of mixture
        have that of the charts themselves."""
        own = prior(self.batch.kind, self.facts)
        assert own is not None
        own = replace(own, mean=(4.0, *own.mean[1:]), spread=(1.0, *own.spread[1:]))
        if learned is None:
            return own
        return replace(
            own,
            mean=(4.0, learned.power, own.mean[2]),
            spread=(1.0, learned.sure, own.spread[2]),
            own=(own.own[0], learned.differ, own.own[2]),
            scatter=learned.scatter,
        )

    def times(self, law: Law, rows: Sequence[Row]) -> list[Time]:
        """As the book gives them, tins as wide as the charts'."""
        known = Baking(
            batch=self.batch, law=law, oven_c=170.0, start_c=START_C, centre_c=CENTRE_C, points=(), kin=0,
            check_share=self.facts.numbers["start checking"].value,
        )  # fmt: skip
        found: dict[Row, Time] = {}
        for oven_c in {row[2] for row in rows}:
            alike = [row for row in rows if row[2] == oven_c]
            cakes = [(Tin(shape="round", sizes_mm=(row[0],)), row[1]) for row in alike]
            found |= zip(alike, known.times(cakes, oven_c), strict=True)
        return [found[row] for row in rows]

    def score(self, rows: Sequence[Row], known: int, before: Prior) -> Score:
        """One chart, from every choice of so many of its tins."""
        score = Score([], [], [], [])
        for chosen in combinations(rows, known):
            rest = [row for row in rows if row not in chosen]
            heats = [baking.heat(row[2], START_C, CENTRE_C) for row in chosen]
            told = baking.evidence(*zip(*[row[:2] for row in chosen], strict=True), heats, [row[3] for row in chosen], before)  # fmt: skip
            for row, time in zip(rest, self.times(baking.learned(before, told), rest), strict=True):
                score.off.append(abs(time.likely_min / row[3] - 1.0))
                score.held.append(time.low_min <= row[3] <= time.high_min)
                if any(abs(row[0] - other[0]) <= IN_MM + 0.01 for other in chosen):
                    score.near.append(time.high_min / time.low_min)
                    score.near_shown.append(time.high_shown_min / time.low_shown_min)
        return score


@pytest.fixture
def plain(batch: Callable[..., Batch], facts: Facts) -> PlainCake:
    return PlainCake(batch(), facts)


@pytest.fixture(scope="module")
def depth(facts: Facts) -> tuple[float, float]:
    """The power of the depth and how far it may be off, from fact and from recipe to recipe: of no chart."""
    numbers = facts.numbers
    fact, own = numbers["bake depth exponent"], numbers["bake depth, recipe to recipe"]
    return fact.value, sqrt(baking.spread(fact.low or 0.0, fact.high or 0.0) ** 2 + own.value**2)


@pytest.fixture(scope="module")
def left_out(charts: Mapping[str, list[Row]], depth: tuple[float, float]) -> dict[str, Learned]:
    """For each chart what the others tell."""
    return {name: method((rows for other, rows in charts.items() if other != name), depth) for name in charts}


@pytest.mark.parametrize("known", [1, 2])
def test_a_chart_left_out_lies_in_the_spans_learned_from_the_others(
    charts: Mapping[str, list[Row]], left_out: Mapping[str, Learned], plain: PlainCake, known: int
) -> None:
    print(f"\nfrom {known} known")
    scores = {}
    for name, rows in charts.items():
        told = left_out[name]
        scores[name] = plain.score(rows, known, plain.prior(told))
        print(f"  {name}, by the others p {told.power:.2f} ± {told.sure:.2f}, from recipe to recipe {told.differ:.2f}, "
              f"scatter {told.scatter:.3f}: {scores[name]}")  # fmt: skip
        print(f"  {name}, by the facts: {plain.score(rows, known, plain.prior())}")
    pooled = [held for score in scores.values() for held in score.held]
    print(f"  together {np.mean(pooled):.0%} of {len(pooled)}, median off "
          f"{median(off for score in scores.values() for off in score.off):.1%}")  # fmt: skip
    for name, score in scores.items():
        assert np.mean(score.held) >= EACH, name
        assert max(score.near) <= NEAR_RATIO, name
    assert POOLED[0] <= np.mean(pooled) <= POOLED[1]
    # no chart is guessed worse than it was when one of two charts taught the other
    most = {("deep pans", 1): 0.17, ("deep pans", 2): 0.13, ("mud", 1): 0.12, ("mud", 2): 0.08}
    for name, score in scores.items():
        assert median(score.off) <= most.get((name, known), 0.06), name


def test_the_facts_are_what_the_method_gives_on_all_three(
    charts: Mapping[str, list[Row]], depth: tuple[float, float], facts: Facts
) -> None:
    """To two digits after the point; the range of each holds it in 80 % of cases."""
    told, numbers = method(charts.values(), depth), facts.numbers
    print(f"\n{told}")
    power, differ, scatter = (
        numbers[f"bake {name}"] for name in ("width exponent", "width, recipe to recipe", "scatter")
    )
    give = baking.EIGHTY_PERCENT * told.sure
    for fact, value, low, high in (
        (power, told.power, told.power - give, told.power + give),
        (differ, told.differ, *told.differ_range),
        (scatter, told.scatter, *told.scatter_range),
    ):
        assert (fact.low, fact.value, fact.high) == pytest.approx((low, value, high), abs=0.0051)
        assert {fact.source, *fact.also} == {"fill chart", "mud cake chart", "chocolate cake chart"}


def test_the_method_finds_what_a_chart_was_made_of(depth: tuple[float, float]) -> None:
    """Twelve charts made up: powers of 0.8 give or take 0.1, scatter of 0.05. Against the numbers they were made by."""
    chance = np.random.default_rng(12)
    charts = []
    for _ in range(12):
        power, level = chance.normal(0.8, 0.1), chance.normal(4.0, 0.3)
        widths = np.linspace(125.0, 400.0, 10)
        minutes = np.exp(level + power * np.log(widths / 200.0) + chance.normal(0.0, 0.05, 10))
        heat = baking.heat(170.0, START_C, CENTRE_C)
        charts.append([(width, 40.0, 170.0, float(each) * heat) for width, each in zip(widths, minutes, strict=True)])
    told = method(charts, depth)
    assert told.power == pytest.approx(0.8, abs=0.1)
    assert told.differ < 0.2
    assert told.scatter == pytest.approx(0.05, rel=0.35)
    few = method(charts[:2], depth)
    assert few.sure > told.sure and few.differ > told.differ and few.scatter > told.scatter


# A tin no more than a size from a known one, for any time it took


@pytest.mark.parametrize("minutes", [25.0, 40.0, 60.0, 90.0, 150.0])
def test_a_size_off_a_known_bake_the_span_is_narrow(plain: PlainCake, minutes: float) -> None:
    before = prior(plain.batch.kind, plain.facts)
    assert before is not None
    told = baking.evidence([200.0], [40.0], [baking.heat(170.0, START_C, CENTRE_C)], [minutes], before)
    rows = [(200.0 + off, 40.0, 170.0, 0.0) for off in (-IN_MM, 0.0, IN_MM)]
    for time in plain.times(baking.learned(before, told), rows):
        assert time.low_min <= time.likely_min <= time.high_min <= NEAR_RATIO * time.low_min
        assert time.low_shown_min <= ceil(time.likely_min) and round(time.likely_min) <= time.high_shown_min
