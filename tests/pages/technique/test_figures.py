"""Figures of parts in words."""

from __future__ import annotations

from tinbook.pages.technique.figures import hours, mm, percent, pot_g, runs, weight_g


def test_figures() -> None:
    assert [mm(value) for value in (0.1, 12.24, 12.25, 49.8, 104.4)] == ["0.5", "12", "12.5", "50", "104"]
    assert [weight_g(value) for value in (0.01, 1.25, 9.94, 68.5)] == ["0.1", "1.3", "9.9", "69"]
    assert [pot_g(value) for value in (0.001, 0.125, 2.44)] == ["0.01", "0.13", "2.4"]
    assert (hours(12, 24), percent(-0.184)) == ("12–24\N{NO-BREAK SPACE}h", "18%")


def test_runs() -> None:
    assert runs("ABCDEFG", [0, 1, 2, 3, 4, 5, 6]) == "A to G"
    assert runs("ABCDEFG", [6, 0, 1, 3, 4, 5]) == "A, B and D to G"
    assert runs("ABC", [1]) == "B"
