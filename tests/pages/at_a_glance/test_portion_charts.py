"""Charts of portions as numbers."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from tinbook.loading import Loaded
from tinbook.pages.at_a_glance.portion_charts import HIGH, TOP, UNDER, Chart, charts
from tinbook.plans.portions.glance import glance


@pytest.fixture(scope="module")
def made(demo: Loaded) -> tuple[Chart, ...]:
    return charts(glance(demo.book, demo.facts))


def test_each_line_ends_in_its_name_and_count(made: tuple[Chart, ...]) -> None:
    dessert = made[0]
    assert [curve.name for curve in dessert.curves] == ["Square 128", "Round 98"]
    assert "24 at 20 cm" in dessert.words
    assert dessert.has_points and not made[-1].has_points


def test_points_stand_where_the_published_counts_are(made: tuple[Chart, ...]) -> None:
    """Sixteen inches square serve 128 in the chart, out of an axis that ends at 150."""
    last = re.findall(r"M[\d.]+ ([\d.]+)h7\.2v7\.2", made[0].curves[0].points)[-1]
    top = made[0].up[-1]
    assert top.text == "150"
    assert float(last) + 3.6 == pytest.approx(HIGH - UNDER - 128 / 150 * (HIGH - UNDER - TOP), abs=0.2)


def test_names_do_not_run_into_each_other(made: tuple[Chart, ...]) -> None:
    for chart in made:
        heights = sorted(curve.y for curve in chart.curves)
        assert all(other - one >= 15 for one, other in pairwise(heights))
