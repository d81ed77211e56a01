"""Figures of parts, rounded as they are shown."""

from __future__ import annotations

from tinbook.plans.techniques.shown import shown_g, shown_mm, shown_percent, shown_pot_g


def test_figures() -> None:
    assert [round(shown_mm(value), 9) for value in (0.1, 12.24, 12.25, 49.8, 104.4)] == [0.5, 12.0, 12.5, 50.0, 104.0]
    assert [round(shown_g(value), 9) for value in (0.01, 1.25, 9.94, 68.5)] == [0.1, 1.3, 9.9, 69.0]
    assert [round(shown_pot_g(value), 9) for value in (0.001, 0.125, 2.44)] == [0.01, 0.13, 2.4]
    assert shown_percent(-0.184) == 18.0
