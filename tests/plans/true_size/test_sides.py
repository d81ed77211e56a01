"""The side strip: its length against other libraries' outlines, its divisions, its drops."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pyclipper
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.base.asking import AskError
from tinbook.plans.true_size.sides import coated_mm, side_mm, strip
from tinbook.tins import read_tin

CAKES = [
    "round 20 cm",
    "square 20 cm",
    "heart 25 cm",
    "petal 25 cm",
    "hexagon 23 cm",
    "rectangle 20 cm x 30 cm",
    "ring 25 cm",
]
Make = Callable[..., object]


def clipper_mm(ring: tuple[tuple[float, float], ...], out_mm: float) -> float:
    """The edge of an outline moved out, by Clipper (Angus Johnson's library, offset with mitred corners)."""
    moving = pyclipper.PyclipperOffset(miter_limit=10)
    scale = 2**16
    moving.AddPath(
        [(round(x * scale), round(y * scale)) for x, y in ring], pyclipper.JT_MITER, pyclipper.ET_CLOSEDPOLYGON
    )
    return max(Polygon(path).length for path in moving.Execute(out_mm * scale)) / scale


@every("cake", CAKES)
@every("count", [2, 8, 13])
def test_as_long_as_the_coated_cake_is_round(kitchen: Book, facts: Facts, cake: str, count: int) -> None:
    _, tin = read_tin(cake)
    made = strip(tin, kitchen, facts, count)
    outline = made.strokes[0]
    assert outline.kind == "cut"
    long = max(x for x, _ in outline.points) - min(x for x, _ in outline.points)
    wanted = clipper_mm(tin.outline_mm()[0], coated_mm(kitchen, facts))
    assert long == pytest.approx(wanted, rel=2e-4)
    # coats fill the notches of a petal, so that it may come out shorter
    assert long > tin.perimeter_mm or tin.shape == "petal"
    folds = sorted(stroke.points[0][0] for stroke in made.strokes if stroke.kind == "fold")
    assert len(folds) == count - 1
    for one, other in pairwise([0.0, *folds, long]):
        assert other - one == pytest.approx(long / count)


@pytest.mark.parametrize("curve", ["parabola", "catenary"])
def test_drops(kitchen: Book, facts: Facts, curve: str) -> None:
    _, tin = read_tin("round 20 cm")
    made = strip(tin, kitchen, facts, 8, 40.0, curve, from_top_mm=10.0)
    drops = [stroke for stroke in made.strokes if stroke.kind == "inner"]
    assert len(drops) == 8
    for one, other in pairwise(drops):
        assert one.points[-1] == pytest.approx(other.points[0], abs=1e-6)
    assert {round(max(y for _, y in each.points), 6) for each in drops} == {50.0}
    assert curve in " ".join(spelled_all(made.notes)) and spell(made.name) == "Side strip, 8 drops"
    assert "panels" in spell(strip(tin, kitchen, facts, 8).name)


@given(st.integers(1, 40), st.floats(0.0, 100.0))
def test_a_drop_stays_on_its_strip(kitchen: Book, facts: Facts, count: int, deep: float) -> None:
    _, tin = read_tin("round 20 cm")
    made = strip(tin, kitchen, facts, count, deep)
    high = max(y for _, y in made.strokes[0].points)
    assert all(-1e-6 <= y <= high + 1e-6 for stroke in made.strokes for _, y in stroke.points)
    assert side_mm(tin, coated_mm(kitchen, facts)) == pytest.approx(max(x for x, _ in made.strokes[0].points))


@every(
    ("cake", "asked", "told"),
    [
        ("round 20 cm", {"count": 0}, "a strip needs drops or panels to divide it"),
        ("round 20 cm", {"count": -3}, "a strip needs drops or panels to divide it"),
        ("round 20 cm", {"count": 8, "deep_mm": 200.0}, "is more than the height of the cake"),
        ("round 20 cm", {"count": 8, "deep_mm": 70.0, "from_top_mm": 60.0}, "a drop 130 mm deep is more than the height of the cake"),
        ("round 20 cm", {"count": 8, "deep_mm": -1.0}, "a drop cannot hang upwards"),
        ("round 20 cm", {"count": 8, "deep_mm": 9.0, "curve": "bow"}, 'a drop cannot hang as a "bow"'),
        ("round 20 cm", {"count": 300}, "would be only 2.5 mm wide"),
        ("dome 20 cm", {"count": 8}, "the side of a dome is not upright"),
    ],
)  # fmt: skip
def test_what_cannot_be(kitchen: Book, facts: Facts, cake: str, asked: dict[str, object], told: str) -> None:
    with pytest.raises(AskError, match=told) as caught:
        strip(read_tin(cake)[1], kitchen, facts, **asked)  # type: ignore[arg-type]
    assert caught.value.hint
