"""The conduction solver against a textbook; tests/engine holds the engine's closed form against the solver."""

from __future__ import annotations

import pytest
from tests.oracles.conduction import centre_heat


def test_a_short_cylinder_of_a_textbook() -> None:
    """Cengel, Heat and Mass Transfer, the example of a short brass cylinder (from memory): 10 cm across, 12 cm high,
    120 °C in air at 25 °C with 60 W/m²K; after 900 s its centre is at 63 °C, read from charts."""
    told = centre_heat(
        0.10, 0.12, 900, start_c=120, air_c=25, surface_w_m2k=60, conductivity_w_mk=110, diffusivity_m2_s=33.9e-6
    )
    assert told[-1][1] == pytest.approx(63, abs=1.0)
