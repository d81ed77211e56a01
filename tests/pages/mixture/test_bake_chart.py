"""The chart of time against width: every point lies where its figures say."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.bake_chart import GROUND, LEFT, RIGHT, TOP, bake_chart
from tinbook.pages.mixture.view import MixtureView
from tinbook.plans.baking.tin_times import TinTimes


def points(path: str) -> list[tuple[int, int]]:
    return [(int(x), int(y)) for x, y in re.findall(r"(-?\d+) (-?\d+)", path)]


def sums(desk: Desk, slug: str) -> TinTimes:
    made = MixtureView(desk.batches[slug], desk).baking
    assert made is not None
    return made.sums


@pytest.mark.parametrize("slug", ["mud-cake", "cupcakes", "whisked-sponge", "rich-fruit-cake"])
def test_it_is_drawn_to_scale(desk: Desk, slug: str) -> None:
    made = sums(desk, slug)
    chart = bake_chart(made)
    ends = {int(tick.text) * 10: tick.at for tick in chart.across}
    (low_mm, low_x), *_, (high_mm, high_x) = ends.items()
    per_mm = (high_x - low_x) / (high_mm - low_mm)
    zero, other = chart.up[0], chart.up[-1]
    per_min = (zero.at - other.at) / int(other.text)
    assert (zero.text, zero.at) == ("0", GROUND) and 3 <= len(chart.up) <= 6

    def expected(width: float, minutes: float) -> tuple[float, float]:
        return low_x + per_mm * (width - low_mm), GROUND - per_min * minutes

    def near(drawn: tuple[int, int], width: float, minutes: float) -> bool:
        x, y = expected(width, minutes)
        return abs(drawn[0] - x) <= 2 and abs(drawn[1] - y) <= 2

    line, band = points(chart.curve), points(chart.band)
    assert len(line) == len(made.curve) and len(band) == 2 * len(line)
    for at, (width, time) in enumerate(made.curve):
        assert near(line[at], width, time.likely_min)
        assert near(band[at], width, time.high_min) and near(band[-1 - at], width, time.low_min)
    logged = [point for point in made.known.points if point.entry]
    assert all(near(dot, point.width_mm, point.minutes) for dot, point in zip(points(chart.dots), logged, strict=True))
    own = next(point for point in made.known.points if point.entry is None)
    assert chart.ring is not None and near((chart.ring.x, chart.ring.y), own.width_mm, own.minutes)
    assert all(LEFT <= x <= RIGHT and TOP <= y <= GROUND for x, y in [*line, *band, *points(chart.dots)])


def test_it_says_the_same_in_words_and_is_small(desk: Desk, filled: Callable[[str], str]) -> None:
    chart = bake_chart(sums(desk, "mud-cake"))
    assert re.match(r"15 cm: \d+ to \d+ min; 20 cm: \d+ to \d+ min; 30 cm: ", chart.words)
    assert "20 cm 104 min" in chart.words and "25 cm 128 min" in chart.words
    text = filled("mixtures/mud-cake/tables")
    found = re.search(r"<svg [^>]*><title>Time in the oven.*?</svg>", text)
    assert found and len(found[0].encode()) <= 2048
    assert f"<desc>{chart.words}</desc>" in found[0] and 'role="img"' in found[0]
    assert "The dots are our own bakes" in text
    # nothing logged: the ring alone
    assert bake_chart(sums(desk, "whisked-sponge")).dots == ""
    assert "no bakes have been logged yet" in filled("mixtures/whisked-sponge/tables")
