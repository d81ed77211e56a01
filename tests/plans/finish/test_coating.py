"""Filling, dam, coats and border of one cake."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Border, Finish
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.coating import border_marks, coat_row, coats_of, roles_of
from tinbook.tins import Tin

CAKE = Cake(Tin(shape="square", sizes_mm=(200.0,)), 100.0, 4)


@pytest.fixture
def settled(facts: Facts) -> Finishing:
    return finishing(Finish(), facts)


def test_a_square_by_hand(settled: Finishing, facts: Facts) -> None:
    made = coats_of(CAKE, settled, facts)
    assert made.filling_ml == pytest.approx(3 * 20 * 20 * 0.5)
    assert made.crumb_ml == pytest.approx(20.2 * 20.2 * 10.1 - 20 * 20 * 10)
    assert made.final_ml == pytest.approx(21 * 21 * 10.5 - 20.2 * 20.2 * 10.1)
    assert made.border_ml == made.dam_ml == 0.0


def test_a_dam_is_taken_out_of_the_filling(settled: Finishing, facts: Facts) -> None:
    plain, dammed = coats_of(CAKE, settled, facts), coats_of(CAKE, replace(settled, dam_mm=10.0), facts)
    assert dammed.filling_ml + dammed.dam_ml == pytest.approx(plain.filling_ml)
    assert dammed.filling_ml == pytest.approx(3 * 18 * 18 * 0.5)
    assert coats_of(Cake(CAKE.tin, 100.0, 1), replace(settled, dam_mm=10.0), facts).dam_ml == 0.0


def test_without_a_final_coat_the_filling_goes_to_the_edge(facts: Facts) -> None:
    """Nothing is there to pipe a dam with: what a dam would have held is filling, and none of it goes missing."""
    bare = finishing(Finish.model_validate({"dam": "10 mm", "crumb coat": "none", "final coat": "none"}), facts)
    made = coats_of(CAKE, bare, facts)
    assert (made.filling_ml, made.dam_ml) == (pytest.approx(3 * 20 * 20 * 0.5), 0.0)


def test_a_border_goes_round_the_coated_cake(settled: Finishing, facts: Facts) -> None:
    border = Border.model_validate({"opening": "8 mm", "pitch": "14 mm", "stroke": "20 mm", "edges": "top and foot"})
    assert border_marks(CAKE, border, 5.0) == 2 * round(4 * 210 / 14)
    made = coats_of(CAKE, replace(settled, border=border), facts)
    star = facts.numbers["star left open"].value
    assert made.border_ml == pytest.approx(
        border_marks(CAKE, border, 5.0) * 0.7853982 * 64 * 20 * star / 1000, rel=1e-5
    )
    asked = border.model_copy(update={"count": 30})
    assert border_marks(CAKE, asked, 5.0) == 60


def test_curd_is_filling_alone(settled: Finishing, facts: Facts, batch: Callable[..., Batch]) -> None:
    curd = batch(kind="curd", tins=None, makes="500 g", bake=None, mix=["250 g butter", "250 g caster sugar"])
    row = coat_row(curd, CAKE, True, settled, facts, roles=("filling",))
    assert row.filling_g == pytest.approx(600 * curd.kind.gravity.typical)
    assert (row.crumb_g, row.final_g, row.border_g) == (0.0, 0.0, 0.0)


def test_each_coat_has_its_own_weight(settled: Finishing, facts: Facts, batch: Callable[..., Batch]) -> None:
    icing = batch(kind="buttercream", tins=None, bake=None, makes="1 kg", mix=["500 g butter", "500 g caster sugar"])
    volumes, row = (
        coats_of(CAKE, settled, facts),
        coat_row(icing, CAKE, True, settled, facts, roles=roles_of(icing, finishing(Finish(), facts))),
    )
    per_ml = icing.kind.gravity.typical
    assert volumes.crumb_ml < volumes.final_ml
    assert row.filling_g == pytest.approx(volumes.filling_ml * per_ml)
    assert row.crumb_g == pytest.approx(volumes.crumb_ml * per_ml)
    assert row.final_g == pytest.approx((volumes.final_ml + volumes.dam_ml) * per_ml)


def test_a_coat_that_closes_a_tube_is_refused(settled: Finishing, facts: Facts) -> None:
    narrow = Cake(Tin(shape="ring", sizes_mm=(200.0, 10.0)), 100.0, 1)
    with pytest.raises(ValueError, match="closes the tube"):
        coats_of(narrow, settled, facts)
