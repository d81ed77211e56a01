"""From batter to a stack of layers. Heights in mm; shares as fractions of one."""

from __future__ import annotations

from math import ceil, floor


def levelled_mm(batter_mm: float, rise: float, dome: float) -> float:
    """The height of a baked, levelled cake: batter × rise × (1 − dome).

    rise: baked depth over batter depth; dome: the share of the baked depth that is cut off.
    """
    return batter_mm * rise * (1.0 - dome)


def batter_for_mm(levelled: float, rise: float, dome: float) -> float:
    """The inverse: the batter depth for a cake that is `levelled` high once levelled."""
    return levelled / (rise * (1.0 - dome))


def cuts(levelled: float, layer_mm: float) -> int:
    """How many equal layers to cut so that each is nearest to `layer_mm`; of two equally near, the thicker.

    At least 1. ValueError unless both are above 0.
    """
    if not (levelled > 0.0 and layer_mm > 0.0):
        raise ValueError(f"no layers of {layer_mm!r} mm from {levelled!r} mm")
    few = max(1, floor(levelled / layer_mm))
    many = max(1, ceil(levelled / layer_mm))
    return many if abs(levelled / many - layer_mm) < abs(levelled / few - layer_mm) else few


def stack_mm(layers: int, layer_mm: float, filling_mm: float) -> float:
    """Height of `layers` layers with filling between them: n × layer + (n − 1) × filling."""
    return layers * layer_mm + (layers - 1) * filling_mm


def layer_for_mm(height_mm: float, layers: int, filling_mm: float) -> float:
    """The height of each layer in a stack `height_mm` high. ValueError if the filling leaves nothing."""
    left = height_mm - (layers - 1) * filling_mm
    if layers < 1 or left <= 0.0:
        raise ValueError(f"{layers} layers with {filling_mm:g} mm between them do not fit in {height_mm:g} mm")
    return left / layers


def baked_g(batter_g: float, loss: float, cut_off: float = 0.0) -> float:
    """The weight of a baked cake: batter less the steam, less the share cut off."""
    return batter_g * (1.0 - loss) * (1.0 - cut_off)
