"""How soon heat can reach the middle of a batter by conduction alone: a time no bake can beat.

A block of batter `width_mm` square and `depth_mm` deep, warmed alike on every face. Its middle follows the product of
three slabs (Newman's rule), and each slab its Fourier series: θ = Σ 4 sin ζ / (2 ζ + sin 2ζ) · exp(-ζ² Fo), with
ζ tan ζ = Bi. Air bubbles, steam and a crust only slow a real cake down.
"""

from __future__ import annotations

from functools import lru_cache
from math import exp, pi, sin, tan

SURFACE_W_M2K = 48.0
"""Heat from the air of the oven to batter or tin, W/m²K. Upper end of what ovens give; house judgement."""
DIFFUSIVITY_M2_S = 1.6e-7
"""Thermal diffusivity of a cake batter, m²/s. From memory of food engineering tables."""
CONDUCTIVITY_W_MK = 0.4
"""Thermal conductivity of the same, W/mK. From memory; the upper end, which makes the bound the longer."""
TERMS = 6
EARLY = 0.03
"""Fourier number before which the middle feels nothing: six terms are too few for it."""
STEPS = 48
WIDEST_MM = 5000.0


def centre_minutes(width_mm: float, depth_mm: float, oven_c: float, start_c: float, centre_c: float) -> float:
    """Minutes until the middle of the block is at `centre_c`, °C, from `start_c` in an oven at `oven_c`.

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
    """The same for a block without edges, so wide that they do not matter: no block so deep takes longer."""
    return centre_minutes(WIDEST_MM, depth_mm, oven_c, start_c, centre_c)


def is_reached(
    width_mm: float, depth_mm: float, minutes: float, oven_c: float, start_c: float, centre_c: float
) -> bool:  # fmt: skip
    """Whether the middle of the block is at `centre_c` after so many minutes: cheaper than asking when."""
    return _block(width_mm, depth_mm, minutes) <= (oven_c - centre_c) / (oven_c - start_c)


def _block(width_mm: float, depth_mm: float, minutes: float) -> float:
    return _slab(width_mm, minutes) ** 2 * _slab(depth_mm, minutes)


def _slab(thick_mm: float, minutes: float) -> float:
    """What is left of the difference in heat in the middle of a slab, 1 at the start."""
    half_m = thick_mm / 2000.0
    fourier = DIFFUSIVITY_M2_S * 60.0 * minutes / half_m**2
    if fourier < EARLY:
        return 1.0
    series = sum(size * exp(-(root**2) * fourier) for root, size in _terms(SURFACE_W_M2K * half_m / CONDUCTIVITY_W_MK))
    return min(1.0, series)


@lru_cache(maxsize=4096)
def _terms(biot: float) -> tuple[tuple[float, float], ...]:
    """The first roots of ζ tan ζ = Bi and what each weighs in the middle."""
    terms = []
    for number in range(TERMS):
        low, high = number * pi, number * pi + pi / 2.0
        for _ in range(STEPS):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if middle * tan(middle) < biot else (low, middle)
        root = 0.5 * (low + high)
        terms.append((root, 4.0 * sin(root) / (2.0 * root + sin(2.0 * root))))
    return tuple(terms)
