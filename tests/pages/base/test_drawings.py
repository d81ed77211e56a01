"""Drawings as numbers."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from tinbook.pages.base.drawings import LABEL_MM, nested_plans, spread
from tinbook.tins import read_tin


def tins(*words: str) -> list[object]:
    return [read_tin(text)[1] for text in words]


def test_rounds_and_squares_stand_on_one_ground_to_one_scale() -> None:
    plans = nested_plans(tins("round 20 cm x 7.5 cm", "round 15 cm x 7.5 cm", "square 25 cm x 7.5 cm"))  # type: ignore[arg-type]
    assert plans is not None
    assert [(tin.is_round, tin.radius * 2, tin.label) for tin in plans.tins] == [
        (True, 200, "20"),
        (True, 150, "15"),
        (False, 250, "25"),
    ]
    assert {tin.centre_y + tin.radius for tin in plans.tins} == {plans.ground}
    assert plans.words == "rounds of 15, 20 cm; squares of 25 cm"
    assert max(tin.x for tin in plans.tins) < plans.width


def test_nothing_to_draw() -> None:
    assert nested_plans(tins("2 lb loaf")) is None  # type: ignore[arg-type]


@given(st.lists(st.floats(0, 400), max_size=12))
def test_labels_never_run_into_each_other(heights: list[float]) -> None:
    moved = spread(sorted(heights), LABEL_MM)
    assert all(below - above >= LABEL_MM - 1e-9 for above, below in pairwise(moved))
    assert all(new >= old for new, old in zip(moved, sorted(heights), strict=True))
