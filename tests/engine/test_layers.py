"""Heights of layers and stacks: laws, and the trade's own check."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine.layers import baked_g, batter_for_mm, cuts, layer_for_mm, levelled_mm, stack_mm

heights = st.floats(10.0, 200.0)


@given(heights, st.floats(1.0, 2.0), st.floats(0.0, 0.5))
def test_back_from_the_levelled_cake_to_its_batter(batter: float, rise: float, dome: float) -> None:
    assert batter_for_mm(levelled_mm(batter, rise, dome), rise, dome) == pytest.approx(batter)


@given(heights, st.floats(5.0, 60.0))
def test_no_other_number_of_cuts_comes_nearer(levelled: float, wanted: float) -> None:
    count = cuts(levelled, wanted)
    off = abs(levelled / count - wanted)
    assert all(off <= abs(levelled / other - wanted) + 1e-9 for other in range(1, 60))


@given(st.integers(1, 12), heights, st.floats(0.0, 12.0))
def test_a_stack_is_its_layers_and_its_fillings(layers: int, layer: float, filling: float) -> None:
    stack = stack_mm(layers, layer, filling)
    assert stack >= layers * layer
    assert layer_for_mm(stack, layers, filling) == pytest.approx(layer)


def test_filling_that_leaves_no_cake() -> None:
    with pytest.raises(ValueError, match="4 layers"):
        layer_for_mm(30.0, 4, 10.0)


@pytest.mark.parametrize(("levelled", "layer"), [(0.0, 28.0), (50.0, 0.0), (-1.0, 28.0), (float("nan"), 28.0)])
def test_no_layers_from_nothing(levelled: float, layer: float) -> None:
    with pytest.raises(ValueError, match="no layers"):
        cuts(levelled, layer)


def test_weight_is_lost_as_steam_and_as_crumbs() -> None:
    assert baked_g(1000.0, 0.1) == pytest.approx(900.0)
    assert baked_g(1000.0, 0.1, 0.1) == pytest.approx(810.0)
