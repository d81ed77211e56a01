"""The closed form of heat by conduction: its laws, the textbook series, and a solver that knows no closed form."""

from __future__ import annotations

from math import exp, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.oracles.conduction import minutes_to

from tinbook.engine import conduction

lengths = st.floats(15, 500)
ovens = st.floats(120, 230)


@given(lengths, lengths, ovens)
def test_thicker_and_cooler_is_slower(width_mm: float, depth_mm: float, oven_c: float) -> None:
    minutes = conduction.centre_minutes(width_mm, depth_mm, oven_c, 20, 97)
    assert conduction.centre_minutes(width_mm, depth_mm * 1.1, oven_c, 20, 97) >= minutes * (1 - 1e-9)
    assert conduction.centre_minutes(width_mm * 1.1, depth_mm, oven_c, 20, 97) >= minutes * (1 - 1e-9)
    assert conduction.centre_minutes(width_mm, depth_mm, oven_c + 10, 20, 97) < minutes
    assert conduction.centre_minutes(width_mm, depth_mm, oven_c, 5, 97) > minutes


@given(st.floats(40, 400), st.floats(20, 90), st.floats(130, 220))
def test_without_edges_it_is_slowest(width_mm: float, depth_mm: float, oven_c: float) -> None:
    slab = conduction.slab_minutes(depth_mm, oven_c, 20, 97)
    assert slab >= conduction.centre_minutes(width_mm, depth_mm, oven_c, 20, 97) * (1 - 1e-9)


def test_a_skin_without_resistance_gives_the_textbook_series(monkeypatch: pytest.MonkeyPatch) -> None:
    """With a very large Bi the roots are odd multiples of π/2: θ = 4/π Σ (-1)^n/(2n+1) exp(-((2n+1)π/2)² Fo)."""
    monkeypatch.setattr(conduction, "SURFACE_W_M2K", 1e9)
    fourier = 0.2
    seconds = fourier * 0.02**2 / conduction.DIFFUSIVITY_M2_S
    series = 4 / pi * sum((-1) ** n / (2 * n + 1) * exp(-(((2 * n + 1) * pi / 2) ** 2) * fourier) for n in range(50))
    assert conduction._slab(40.0, seconds / 60) == pytest.approx(series, rel=1e-6)


@pytest.mark.parametrize("asked", [(200, 40, 90, 20, 97), (200, 40, 170, 98, 97), (0, 40, 170, 20, 97)])
def test_what_never_gets_there_is_refused(asked: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="no middle reaches"):
        conduction.centre_minutes(*asked)


BATTER = {
    "surface_w_m2k": conduction.SURFACE_W_M2K,
    "conductivity_w_mk": conduction.CONDUCTIVITY_W_MK,
    "diffusivity_m2_s": conduction.DIFFUSIVITY_M2_S,
}


@pytest.mark.parametrize(("across_mm", "high_mm"), [(60, 25), (150, 40), (200, 40), (200, 75), (400, 35)])
def test_the_engines_block_takes_no_less_than_the_cylinder_in_it(across_mm: float, high_mm: float) -> None:
    cylinder = minutes_to(across_mm, high_mm, 170, 97, 20, **BATTER)
    block = conduction.centre_minutes(across_mm, high_mm, 170, 20, 97)
    assert cylinder * 0.995 <= block <= cylinder * 1.35


def test_a_wide_cake_is_a_slab_in_both() -> None:
    cylinder = minutes_to(1500, 40, 170, 97, 20, **BATTER)
    assert conduction.centre_minutes(1500, 40, 170, 20, 97) == pytest.approx(cylinder, rel=0.01)
