"""How high an x is printed, by the font's own measures; against its outline in tests/press/test_labels.py."""

from __future__ import annotations

import pytest

from tinbook.press.letters import FIGURES, POINT_MM, WORDS, size_pt, x_mm, x_share


def test_from_mm_to_points_and_back() -> None:
    for high in (0.9, 1.2, 1.5):
        assert x_mm(size_pt(high)) == pytest.approx(high)
    assert size_pt(1.2) == pytest.approx(1.2 / 0.3527777 / x_share(WORDS), rel=1e-5)
    assert pytest.approx(25.4 / 72) == POINT_MM


def test_an_x_is_about_half_of_the_type() -> None:
    for font in (WORDS, FIGURES):
        assert 0.4 < x_share(font) < 0.6
