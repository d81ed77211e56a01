"""Sizes of boards, boxes, dowels and ribbon as they are written."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.models import read_model
from tinbook.models.supplies import Supply, cases_for, read_supply_size, size_written
from tinbook.units import METRIC, Misread


@pytest.mark.parametrize(
    ("text", "shape", "sides_mm"),
    [
        ("round 30 cm", "round", (300.0,)),
        ("oblong 30 cm x 40 cm", "oblong", (300.0, 400.0)),
        ("36 cm x 36 cm x 15 cm", "", (360.0, 360.0, 150.0)),
        ("6 mm × 30 cm", "", (6.0, 300.0)),
        ("15 mm", "", (15.0,)),
        ("Square 8 in", "square", (203.2,)),
    ],
)
def test_a_size(text: str, shape: str, sides_mm: tuple[float, ...]) -> None:
    found = read_supply_size(text, METRIC)
    assert (found.shape, found.written) == (shape, text) and found.sides_mm == pytest.approx(sides_mm)


@pytest.mark.parametrize(
    ("text", "at"),
    [("heart 30 cm", 0), ("round", 5), ("round 30", 6), ("30 cm x", 7), ("1 cm x 1 cm x 1 cm x 1 cm", 0)],
)
def test_no_size_says_where(text: str, at: int) -> None:
    with pytest.raises(Misread) as told:
        read_supply_size(text, METRIC)
    assert told.value.hint and told.value.start == at


@given(st.sampled_from(("", "round", "square")), st.lists(st.integers(5, 600), min_size=1, max_size=3))
def test_what_is_written_is_read_again(shape: str, sides: list[int]) -> None:
    made = size_written(shape, [float(side) for side in sides])
    again = read_supply_size(made.written, METRIC)
    assert again.shape == shape and again.sides_mm == pytest.approx(made.sides_mm)


def test_a_line_has_a_name() -> None:
    drum, _ = read_model(Supply, {"what": "drum", "size": "round 30 cm"}, "this thing")
    sticks, _ = read_model(Supply, {"what": "lolly sticks", "packs": ["50"]}, "this thing")
    assert drum and sticks and (drum.name, sticks.name) == ("drum, round 30 cm", "lolly sticks")
    assert cases_for("standard cups") == "cases for standard cups"
