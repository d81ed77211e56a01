"""How soon heat can reach the middle of a batter by conduction alone: a time no bake can beat.

A block of batter `width_mm` square and `depth_mm` deep, heated alike on every face. Its middle follows the product of
three slabs (Newman's rule), and each slab its Fourier series: θ = Σ 4 sin ζ / (2 ζ + sin 2ζ) · exp(-ζ² Fo), with ζ tan
ζ = Bi. Air bubbles, steam and a crust only slow a real cake down.
"""

from __future__ import annotations

from functools import lru_cache
from math import exp, pi, sin, tan

SURFACE_W_M2K = 48.0
"""Heat transfer from the oven's air to batter or tin, W/m²K. The top of what ovens give; our own judgement."""
DIFFUSIVITY_M2_S = 1.6e-7
"""Thermal diffusivity of cake batter, m²/s. From memory of food engineering tables."""
CONDUCTIVITY_W_MK = 0.4
"""Thermal conductivity of cake batter, W/mK. From memory; the top of its range, which gives the longer bound."""
TERMS = 6
EARLY = 0.03
"""Fourier number before which the middle feels nothing; six terms are too few there."""
STEPS = 48
WIDEST_MM = 5000.0


def centre_minutes(width_mm: float, depth_mm: float, oven_c: float, start_c: float, centre_c: float) -> float:
    """Minutes until the middle of the block goes from `start_c` to `centre_c` in an oven at `oven_c`, all in °C.

    ValueError unless start < centre < oven and both lengths are above 0.
    """
    if not (start_c < centre_c < oven_c and width_mm > 0.0 and depth_mm > 0.0):
        raise ValueError(f"no middle reaches {centre_c!r} °C from {start_c!r} °C in an oven at {oven_c!r} °C")
    left = (oven_c - centre_c) / (oven_c - start_c)
    low, high = 0.0, 1.0
    while _block(width_mm, depth_mm, high) > left:
        low, high = high, 2.0 * high
    for _ in range(STEPS):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if _block(width_mm, depth_mm, middle) > left else (low, middle)
    return 0.5 * (low + high)


@lru_cache(maxsize=4096)
def slab_minutes(depth_mm: float, oven_c: float, start_c: float, centre_c: float) -> float:
    """The same for a block so wide that its edges do not matter: no block of this depth takes longer."""
    return centre_minutes(WIDEST_MM, depth_mm, oven_c, start_c, centre_c)


def is_reached(
    width_mm: float, depth_mm: float, minutes: float, oven_c: float, start_c: float, centre_c: float
) -> bool:  # fmt: skip
    """Whether the middle of the block has reached `centre_c` after this many minutes; cheaper than asking when."""
    return _block(width_mm, depth_mm, minutes) <= (oven_c - centre_c) / (oven_c - start_c)


def _block(width_mm: float, depth_mm: float, minutes: float) -> float:
    return _slab(width_mm, minutes) ** 2 * _slab(depth_mm, minutes)


def _slab(thick_mm: float, minutes: float) -> float:
    """The share of the temperature difference left in the middle of a slab; 1 at the start."""
    half_m = thick_mm / 2000.0
    fourier = DIFFUSIVITY_M2_S * 60.0 * minutes / half_m**2
    if fourier < EARLY:
        return 1.0
    series = sum(size * exp(-(root**2) * fourier) for root, size in _terms(SURFACE_W_M2K * half_m / CONDUCTIVITY_W_MK))
    return min(1.0, series)


@lru_cache(maxsize=4096)
def _terms(biot: float) -> tuple[tuple[float, float], ...]:
    """The first roots of ζ tan ζ = Bi, and the weight of each in the middle."""
    terms = []
    for number in range(TERMS):
        low, high = number * pi, number * pi + pi / 2.0
        for _ in range(STEPS):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if middle * tan(middle) < biot else (low, middle)
        root = 0.5 * (low + high)
        terms.append((root, 4.0 * sin(root) / (2.0 * root + sin(2.0 * root))))
    return tuple(terms)
