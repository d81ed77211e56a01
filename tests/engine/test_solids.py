"""Volumes against numeric integration (scipy) and a mesh library (trimesh), weights against the laws of scaling."""

from __future__ import annotations

from collections.abc import Callable
from math import pi, sqrt

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from tests.every import every

from tinbook.engine import solids
from tinbook.tins import SHAPES

NEAR = 0.002
"""Volumes are to agree within 0.2 %."""
D, LONG, TOP = 30.0, 55.0, 14.0


def teardrop_radius(z: float) -> float:
    """Radius at height z above the foot: the circle, then the tangent from the tip, found without the closed form."""
    r, tip = D / 2, LONG - D / 2
    touch = r + r * r / tip
    if z <= touch:
        return sqrt(max(0.0, r * r - (z - r) ** 2))
    return (LONG - z) / (LONG - touch) * sqrt(r * r - (touch - r) ** 2)


RADII: dict[str, tuple[tuple[float, ...], float, Callable[[float], float]]] = {
    "ball": ((D,), D, lambda z: sqrt(max(0.0, (D / 2) ** 2 - (z - D / 2) ** 2))),
    "egg": ((D, LONG), LONG, lambda z: D / 2 * sqrt(max(0.0, 1 - (2 * z / LONG - 1) ** 2))),
    "cone": ((D, LONG), LONG, lambda z: D / 2 * (1 - z / LONG)),
    "frustum": ((D, LONG, TOP), LONG, lambda z: (D + (TOP - D) * z / LONG) / 2),
    "cylinder": ((D, LONG), LONG, lambda z: D / 2),
    "teardrop": ((D, LONG), LONG, teardrop_radius),
}


@every("form", RADII)
def test_numeric_integration(form: str) -> None:
    sizes, high, radius = RADII[form]
    wanted, _ = quad(lambda z: pi * radius(z) ** 2, 0.0, high, limit=200)
    assert solids.solid_mm3(form, sizes) == pytest.approx(wanted, rel=NEAR)
    assert solids.solid_mm3(form, sizes, "half") == pytest.approx(wanted / 2, rel=NEAR)


@every("form", RADII)
def test_the_mesh_library(form: str) -> None:
    sizes, high, radius = RADII[form]
    line = [(0.0, 0.0), *((radius(z), z) for z in np.linspace(0.0, high, 400)), (0.0, high)]
    mesh = trimesh.creation.revolve(np.array(line), sections=360)
    assert mesh.is_volume or form in ("cone", "ball", "egg", "teardrop")
    assert solids.solid_mm3(form, sizes) == pytest.approx(abs(mesh.volume), rel=NEAR)


def test_primitives_of_the_mesh_library() -> None:
    assert solids.ball_mm3(D) == pytest.approx(
        trimesh.creation.icosphere(subdivisions=5, radius=D / 2).volume, rel=NEAR
    )
    made = trimesh.creation.cylinder(radius=D / 2, height=LONG, sections=360)
    assert solids.cylinder_mm3(D, LONG) == pytest.approx(made.volume, rel=NEAR)
    assert solids.slab_mm3(20, 30, 8) == pytest.approx(trimesh.creation.box((20, 30, 8)).volume)


def test_a_sheet_is_an_extrusion() -> None:
    ring = ((0.0, 0.0), (60.0, 0.0), (60.0, 20.0), (20.0, 20.0), (20.0, 50.0), (0.0, 50.0))
    hole = ((5.0, 5.0), (5.0, 15.0), (15.0, 15.0), (15.0, 5.0))
    import shapely

    made = trimesh.creation.extrude_polygon(shapely.Polygon(ring, [hole]), 2.0, engine="earcut") if _earcut() else None
    wanted = made.volume if made is not None else shapely.Polygon(ring, [hole]).area * 2.0
    assert solids.sheet_mm3(solids.rings_mm2((ring, hole)), 2.0) == pytest.approx(wanted, rel=NEAR)


def _earcut() -> bool:
    try:
        import mapbox_earcut  # noqa: F401
    except ImportError:
        return False
    return True


def test_a_flattened_figure(practice: Callable[[str], tuple[float, ...]]) -> None:
    """Common practice, no source: tests/data/common_practice.csv."""
    grams, wide, long = practice("grams of paste and the mm wide and long that a flattened figure is pressed to")
    least, most = practice("least and most mm that figure is thick")
    for density in (1.35, 1.4):
        assert least <= solids.flattened_mm(grams / density * 1000.0, wide, long) <= most


@given(st.sampled_from(sorted(solids.VOLUMES)), st.floats(0.3, 4.0), st.floats(5.0, 60.0), st.floats(1.1, 3.0))
def test_grams_of_a_solid_go_by_the_cube(form: str, s: float, d: float, slim: float) -> None:
    sizes = {"ball": (d,), "frustum": (d, d * slim, d / 2), "slab": (d, d * slim, d / 3)}.get(form, (d, d * slim))
    one = solids.grams(solids.solid_mm3(form, sizes), 1.4)
    other = solids.grams(solids.solid_mm3(form, tuple(size * s for size in sizes)), 1.4)
    assert other == pytest.approx(one * s**3)
    pressed = [solids.depth_mm(form, tuple(x * k for x in sizes), "flattened", (d * k, 2 * d * k)) for k in (1.0, s)]
    assert pressed[1] == pytest.approx(pressed[0] * s)


@given(st.floats(0.3, 4.0))
def test_grams_of_a_sheet_go_by_the_square(s: float) -> None:
    ring = solids.oval(40.0, 25.0)
    one, other = (solids.sheet_mm3(solids.rings_mm2(solids.scaled((ring,), k)), 1.0) for k in (1.0, s))
    assert other == pytest.approx(one * s**2)


@every("form", sorted(solids.VOLUMES))
def test_silhouettes_have_the_sizes_written(form: str) -> None:
    sizes = {"ball": (D,), "slab": (D, LONG, 8.0)}.get(form, (D, LONG, TOP) if form == "frustum" else (D, LONG))
    wide, high = solids.bounds((solids.silhouette(form, sizes),))
    assert (wide, high) == (pytest.approx(D, rel=0.001), pytest.approx(D if form == "ball" else LONG, rel=0.001))
    assert solids.depth_mm(form, sizes, "half") == solids.depth_mm(form, sizes) / 2


def test_a_disc_of_the_same_area() -> None:
    tin = SHAPES["round"]
    assert solids.same_area_mm(tin.area_mm2((200.0,))) == pytest.approx(200.0)


def test_a_teardrop_has_a_tip() -> None:
    with pytest.raises(ValueError, match="longer than it is across"):
        solids.teardrop_mm3(20.0, 20.0)
    ring = solids.silhouette("teardrop", (20.0, 40.0))
    # the flanks touch the circle: no point lies further from its middle than the radius, but those on the way to the tip
    assert all(x * x + (y + 10.0) ** 2 <= 100.0 + 1e-6 for x, y in ring[:-1])


def test_a_rope_of_strands_is_as_thick_as_the_circle_round_them() -> None:
    """By packing equal circles in a circle: 1, 2, 1 + 2 / √3, 1 + √2, 3 times as thick."""
    for strands, times in ((1, 1.0), (2, 2.0), (3, 1 + 2 / sqrt(3)), (4, 1 + sqrt(2)), (6, 3.0)):
        assert solids.twisted_mm(5.0, strands) == pytest.approx(5.0 * times)


def test_a_coil_is_as_wide_as_its_spiral() -> None:
    """Oracle: the turns of a spiral of that pitch summed up to its length."""
    long, thick = 800.0, 8.0
    walked, turn = 0.0, 0.0
    while walked < long:
        turn += 1e-4
        walked += thick * turn * 2.0 * pi * 1e-4
    assert solids.coil_mm(long, thick) == pytest.approx(2.0 * thick * turn, rel=0.02)
    assert solids.coil_mm(long, thick, 2, 30.0) == pytest.approx(solids.coil_mm(long - 2 * pi * 38.0, thick))
    assert solids.coil_mm(100.0, thick, 1, 30.0) == 0.0
