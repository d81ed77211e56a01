"""Weights as a hand can tell them, and what is said of supports and the journey."""

from __future__ import annotations

from tests.every import every

from tinbook.pages.spelling.making import between, heavy
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.saying import saying


@every(
    ("mass_g", "told"),
    [(13.8, "14 g"), (99.6, "100 g"), (484.0, "480 g"), (995.0, "1000 g"), (1004.0, "1 kg"), (4550.8, "4.6 kg")],
)
def test_as_heavy_as_a_hand_can_tell(mass_g: float, told: str) -> None:
    assert heavy(mass_g).replace("\N{NO-BREAK SPACE}", " ") == told


@every(
    ("low", "high", "told"),
    [
        (4283.0, 4783.0, "4.3–4.8 kg"),
        (12.0, 16.0, "12–16 g"),
        (452.0, 524.0, "450–520 g"),
        (900.0, 1100.0, "0.9–1.1 kg"),
    ],
)
def test_a_range_in_one_unit(low: float, high: float, told: str) -> None:
    assert between(low, high).replace("\N{NO-BREAK SPACE}", " ") == told


def test_figures_with_and_without_a_known_centre() -> None:
    hung = spell(saying("hangs_on_a_side", figure="heron", each_g=13.8, centre_mm=None))
    assert hung == "heron: 14\N{NO-BREAK SPACE}g, hung on the side. On sticks, keep the figure just clear of the coat"
    stood = spell(saying("stands_on_top", figure="light", each_g=172.0, centre_mm=27.4))
    assert "its centre of gravity 27\N{NO-BREAK SPACE}mm up" in stood
