"""Heat by conduction into a short cylinder, by finite volumes: what a baking time is held against.

No closed form is used: rings and layers exchange heat over their faces, the skin takes it from the air (Newton's law
of cooling), and the steps in time are implicit. Checked itself on a textbook's short cylinder in test_conduction.py.
"""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_array, identity
from scipy.sparse.linalg import splu


def centre_heat(
    diameter_m: float, height_m: float, seconds: float, *, start_c: float, air_c: float, surface_w_m2k: float,
    conductivity_w_mk: float, diffusivity_m2_s: float, rings: int = 24, layers: int = 24, steps: int = 240,
) -> list[tuple[float, float]]:  # fmt: skip
    """(second, °C of the centre) through the time asked, for a cylinder warmed or cooled on all its faces.

    Half of the height is reckoned, as the other half mirrors it.
    """
    dr, dz = diameter_m / 2 / rings, height_m / 2 / layers
    capacity = conductivity_w_mk / diffusivity_m2_s
    edges = np.arange(rings + 1) * dr
    floor = np.pi * (edges[1:] ** 2 - edges[:-1] ** 2)
    cell = np.arange(rings * layers).reshape(rings, layers)
    rows: list[np.ndarray] = []
    columns: list[np.ndarray] = []
    values: list[np.ndarray] = []

    def join(one: np.ndarray, other: np.ndarray, conductance: np.ndarray) -> None:
        for a, b, sign in ((one, one, 1), (other, other, 1), (one, other, -1), (other, one, -1)):
            rows.append(a.ravel()), columns.append(b.ravel()), values.append(sign * conductance.ravel())

    through = conductivity_w_mk * 2 * np.pi * edges[1:-1, None] * dz / dr * np.ones((1, layers))
    join(cell[:-1], cell[1:], through)
    join(cell[:, :-1], cell[:, 1:], conductivity_w_mk * floor[:, None] / dz * np.ones((1, layers - 1)))
    skin = np.zeros(rings * layers)
    half = 1 / surface_w_m2k
    skin[cell[-1]] += 2 * np.pi * edges[-1] * dz / (half + dr / 2 / conductivity_w_mk)
    skin[cell[:, -1]] += floor / (half + dz / 2 / conductivity_w_mk)
    flow = coo_array(
        (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), shape=(skin.size, skin.size)
    ).tocsc()
    mass = capacity * np.repeat(floor, layers) * dz
    step_s = seconds / steps
    system = splu((flow + identity(skin.size, format="csc").multiply(skin + mass / step_s)).tocsc())
    heat = np.full(skin.size, start_c)
    told = []
    for step in range(1, steps + 1):
        heat = system.solve(mass / step_s * heat + skin * air_c)
        told.append((step * step_s, float(heat[0])))
    return told


def minutes_to(
    diameter_mm: float, height_mm: float, oven_c: float, centre_c: float, start_c: float, *, surface_w_m2k: float,
    conductivity_w_mk: float, diffusivity_m2_s: float,
) -> float:  # fmt: skip
    """Minutes until the centre is at `centre_c`."""
    hours = 1.0
    while True:
        told = centre_heat(
            diameter_mm / 1000, height_mm / 1000, hours * 3600, start_c=start_c, air_c=oven_c,
            surface_w_m2k=surface_w_m2k, conductivity_w_mk=conductivity_w_mk, diffusivity_m2_s=diffusivity_m2_s,
        )  # fmt: skip
        times, heats = zip(*told, strict=True)
        if heats[-1] >= centre_c:
            return float(np.interp(centre_c, heats, times)) / 60
        hours *= 2
