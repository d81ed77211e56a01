"""Sizes of portions in bench spelling."""

from __future__ import annotations

import pytest

from tinbook.models import Finish, read_model, read_sides
from tinbook.units import METRIC, Misread


def test_two_lengths() -> None:
    assert read_sides("25 mm x 5 cm", METRIC) == (25.0, 50.0)
    assert read_sides("1 in × 2 in", METRIC) == (pytest.approx(25.4), pytest.approx(50.8))
    said, flaws = read_model(Finish, {"portions": {"tea slice": "4 cm x 5 cm"}}, "it", METRIC)
    assert not flaws and said is not None
    assert said.portions == {"tea slice": (40.0, 50.0)}


@pytest.mark.parametrize(
    ("text", "told", "place"),
    [
        ("25 mm", "is not two lengths", (0, 5)),
        ("25 mm x 50 mm x 10 cm", "is not two lengths", (0, 21)),
        ("25 mm x 0 mm", "nothing at all", (8, 12)),
        ("-25 mm x 50 mm", "has a sign in front of it", (0, 3)),
    ],
)
def test_what_is_no_portion_has_its_place(text: str, told: str, place: tuple[int, int]) -> None:
    with pytest.raises(Misread, match=told) as caught:
        read_sides(text, METRIC)
    assert (caught.value.start, caught.value.end) == place
