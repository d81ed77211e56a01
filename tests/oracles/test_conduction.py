"""The conduction solver against a textbook, and the closed form of the engine against the solver."""

from __future__ import annotations

import pytest
from tests.oracles.conduction import centre_heat, minutes_to

from tinbook.engine import conduction

BATTER = {
    "surface_w_m2k": conduction.SURFACE_W_M2K,
    "conductivity_w_mk": conduction.CONDUCTIVITY_W_MK,
    "diffusivity_m2_s": conduction.DIFFUSIVITY_M2_S,
}


def test_a_short_cylinder_of_a_textbook() -> None:
    """Cengel, Heat and Mass Transfer, the example of a short brass cylinder (from memory): 10 cm across, 12 cm high,
    120 °C in air at 25 °C with 60 W/m²K; after 900 s its centre is at 63 °C, read from charts."""
    told = centre_heat(
        0.10, 0.12, 900, start_c=120, air_c=25, surface_w_m2k=60, conductivity_w_mk=110, diffusivity_m2_s=33.9e-6
    )
    assert told[-1][1] == pytest.approx(63, abs=1.0)


@pytest.mark.parametrize(("across_mm", "high_mm"), [(60, 25), (150, 40), (200, 40), (200, 75), (400, 35)])
def test_the_engines_block_takes_no_less_than_the_cylinder_in_it(across_mm: float, high_mm: float) -> None:
    cylinder = minutes_to(across_mm, high_mm, 170, 97, 20, **BATTER)
    block = conduction.centre_minutes(across_mm, high_mm, 170, 20, 97)
    assert cylinder * 0.995 <= block <= cylinder * 1.35


def test_a_wide_cake_is_a_slab_in_both() -> None:
    cylinder = minutes_to(1500, 40, 170, 97, 20, **BATTER)
    assert conduction.centre_minutes(1500, 40, 170, 20, 97) == pytest.approx(cylinder, rel=0.01)
