"""Small sums of a bake: how many pieces a batter makes, and how much batter they need. Weights in g, shares of one."""

from __future__ import annotations

from tinbook.engine.tolerance import whole_down


def pieces_from(batter_g: float, each_g: float, lost: float) -> tuple[int, float]:
    """How many pieces of `each_g` come out of `batter_g`, and the grams left over, when a share `lost` stays in the
    bowl.

    n = floor(batter (1 - lost) / each); left = batter (1 - lost) - n each. ValueError unless `batter_g` >= 0, `each_g`
    > 0 and 0 <= `lost` < 1.
    """
    if batter_g < 0 or each_g <= 0 or not 0 <= lost < 1:
        raise ValueError(f"no pieces of {each_g} g from {batter_g} g, {lost} lost")
    out_g = batter_g * (1 - lost)
    count = whole_down(out_g / each_g)
    return count, max(0.0, out_g - count * each_g)


def batter_for(count: int, each_g: float, lost: float) -> float:
    """Grams of batter for `count` pieces of `each_g` when a share `lost` stays in the bowl.

    batter = n each / (1 - lost). ValueError as for `pieces_from`.
    """
    if count < 0 or each_g <= 0 or not 0 <= lost < 1:
        raise ValueError(f"no batter for {count} pieces of {each_g} g, {lost} lost")
    return count * each_g / (1 - lost)
