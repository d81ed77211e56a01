"""Sets: several tins from one line."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.tins import read_tins
from tinbook.units import Misread


@every(
    ("text", "names"),
    [
        (
            "set of round 15, 20, 25 cm x 7.5 cm",
            ["round 15 cm x 7.5 cm", "round 20 cm x 7.5 cm", "round 25 cm x 7.5 cm"],
        ),
        ("Set of heart 6, 8 in x 3 in", ["heart 15 cm x 7.5 cm", "heart 20 cm x 7.5 cm"]),
        ("set of square 15 cm x 10 cm, 20 cm x 7.5 cm", ["square 15 cm x 10 cm", "square 20 cm x 7.5 cm"]),
        ("set of oval 15 x 20, 20 x 28 cm x 7.5 cm", ["oval 15 x 20 cm x 7.5 cm", "oval 20 x 28 cm x 7.5 cm"]),
        ("set of petal 15, 23 cm", ["petal 15 cm", "petal 23 cm"]),
        ("round 20 cm", ["round 20 cm"]),
    ],
)
def test_is_understood(text: str, names: list[str]) -> None:
    assert [(count, tin.full_name) for count, tin in read_tins(text)] == [(1, name) for name in names]


@every(
    ("text", "at", "message"),
    [
        ("set of round 20 cm x 7.5 cm", "set of round 20 cm x 7.5 cm", "a set is more than one tin"),
        ("set of 15, 20 cm", "set of 15, 20 cm", "a set of what?"),
        ("set of rond 15, 20 cm", "rond", 'there is no tin shape called "rond"'),
        ("set of round 15, 200 cm x 7.5 cm", "200 cm", "200 cm is too large for the diameter of a round tin"),
        ("set of round 15, 20 kg", "20 kg", None),
        ("set of round 15, 20 cm x 75 cm", "75 cm", "75 cm is too deep for a round tin"),
    ],
)
def test_a_slip_is_told_at_its_place(text: str, at: str, message: str | None) -> None:
    with pytest.raises(Misread) as caught:
        read_tins(text)
    wrong = caught.value
    assert text[wrong.start : wrong.end] == at
    assert message in (None, wrong.message)
    assert wrong.hint
