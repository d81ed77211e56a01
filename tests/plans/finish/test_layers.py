"""Layers of a cake in every tin, and the mixture for layers asked for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Finish
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.elevations import elevations
from tinbook.plans.finish.layers import layers_in, stack_table, wanted
from tinbook.tins import Tin, read_tin

DEEP = {
    "kind": "madeira",
    "tins": "2 round 15 cm x 10 cm",
    "mix": ["400 g butter", "400 g caster sugar", "5 eggs", "400 g self-raising flour"],
}


def test_two_deep_tins_give_four_layers(
    batch: Callable[..., Batch], kitchen: Book, facts: Facts, practice: Callable[[str], tuple[float, ...]]
) -> None:
    """Common practice, no source: tests/data/common_practice.csv. With so much flour to the egg and less egg than
    butter that sponge is by its balance a Madeira, and rises like one."""
    each, eggs = practice("the same of a quarter more of it for two deep 15 cm rounds")
    least, most = practice("least and most mm of a layer when those two are levelled and halved into four")
    mix = [f"{each:g} g butter", f"{each:g} g caster sugar", f"{eggs:g} eggs", f"{each:g} g self-raising flour"]
    made = batch(**{**DEEP, "mix": mix})
    rows = stack_table(tin_table(made, kitchen, facts), kitchen, facts).rows
    stack = next(row.stack for row in rows if row.stack.tin.name == "round 15 cm")
    assert (stack.tins, stack.cut, stack.layers) == (2, 2, 4)
    assert least <= stack.layer_mm <= most
    assert stack.stack_mm == pytest.approx(4 * stack.layer_mm + 3 * 5.0)
    assert stack.coated_mm == pytest.approx(stack.stack_mm + 5.0)
    # 8 % goes off as steam, and the tenth that is cut off is eaten in the kitchen
    assert stack.weight_g == pytest.approx(made.mass_g * 0.92 * 0.9, rel=0.02)


def test_the_house_has_found_another_rise(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    house = replace(kitchen, finish=Finish.model_validate({"rise": {"madeira": "1.2"}}))
    usual, found = (batch(book=book, **DEEP) for book in (kitchen, house))
    assert (usual.rise, found.rise) == (1.4, 1.2)
    low, high = (stack_table(tin_table(made, book, facts), book, facts).rows[2].stack
                 for made, book in ((found, house), (usual, kitchen)))  # fmt: skip
    assert low.levelled_mm / low.batter_mm == pytest.approx(1.2 * 0.9)
    assert high.levelled_mm / high.batter_mm == pytest.approx(1.4 * 0.9)
    worked = stack_table(tin_table(found, house, facts), house, facts).worked
    assert "rise 1.2, as measured in this kitchen" in inputs_of(worked)


def test_cups_are_not_cut(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    rows = stack_table(tin_table(batch(), kitchen, facts), kitchen, facts).rows
    assert rows
    assert not any(row.stack.tin.kind.in_trays for row in rows)


@pytest.mark.parametrize(
    ("layers", "layer_mm", "tin", "tins", "cut"),
    [(4, 28.0, "round 15 cm", 2, 2), (4, 28.0, "round 15 cm x 4 cm", 4, 1), (3, 20.0, "square 20 cm", 1, 3)],
)
def test_layers_asked_for(layers: int, layer_mm: float, tin: str, tins: int, cut: int, batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:  # fmt: skip
    made = batch(**DEEP)
    answer = wanted(made, kitchen, facts, read_tin(tin)[1], layers, layer_mm)
    assert (answer.stack.tins, answer.stack.cut, answer.stack.layers) == (tins, cut, layers)
    assert answer.stack.layer_mm == pytest.approx(layer_mm)
    # there and back: the mixture it says gives the batter it says
    area_mm2 = read_tin(tin)[1].area_mm2
    batter_ml = tins * area_mm2 * answer.stack.batter_mm / 1000
    assert answer.exact.factor * made.batter_ml == pytest.approx(batter_ml)
    assert answer.least_mm is None or answer.least_mm >= answer.stack.baked_mm


@pytest.mark.parametrize(
    ("changes", "tin", "layer_mm", "told"),
    [
        ({}, "round 15 cm x 4 cm", 60.0, "needs a tin 67 mm deep"),
        ({}, "12 standard cups", 20.0, "not cut into layers"),
        ({"tins": None, "makes": "900 g", "bake": None, "kind": "buttercream"}, "round 15 cm", 20.0, "not cut into"),
    ],
)
def test_layers_that_cannot_be(changes: dict[str, Any], tin: str, layer_mm: float, told: str, batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:  # fmt: skip
    with pytest.raises(AskError, match=told):
        wanted(batch(**changes), kitchen, facts, read_tin(tin)[1], 2, layer_mm)


def test_measured_tins_keep_their_measure(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    tin = Tin(shape="round", sizes_mm=(230.0,), depth_mm=75.0, measured_ml=2850.0)
    answer = wanted(batch(**DEEP), kitchen, facts, tin, 2, 25.0)
    plain = wanted(batch(**DEEP), kitchen, facts, Tin(shape="round", sizes_mm=(230.0,), depth_mm=75.0), 2, 25.0)
    assert answer.exact.factor / plain.exact.factor == pytest.approx(2850 / plain.stack.tin.brim_ml())


def test_a_stack_as_it_stands(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    made = batch(tins=["2 round 15 cm x 10 cm", "ring 23 cm x 7.5 cm, tube 7.5 cm", "dome 15 cm"])
    plain, ring = elevations(made, finishing(kitchen.finish, facts), kitchen, facts)
    assert (plain.across_mm, plain.tube_mm, plain.stack.tins) == (pytest.approx(150.0), 0.0, 2)
    assert (ring.across_mm, ring.tube_mm) == (pytest.approx(230.0, rel=1e-3), pytest.approx(75.0, rel=1e-3))
    # a drum 3 in wider than a 6 in cake, as the house leaves it to the trade's usual
    assert (plain.board_mm, plain.drum_mm) == (230.0, 12.0)
    # the batter stands as deep in every tin it is written for
    assert plain.stack.batter_mm == pytest.approx(ring.stack.batter_mm, rel=1e-3)


def test_cups_have_no_elevation(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    assert (
        elevations(batch(tins="24 standard cups", kind="cupcake"), finishing(kitchen.finish, facts), kitchen, facts)
        == ()
    )


@pytest.mark.parametrize(("tin", "layer_mm", "layers"), [("round 20 cm x 7.5 cm", 22.5, 3), ("round 20 cm x 7.5 cm", 67.5, 1),
                                                         ("round 20 cm", 90.0, 1)])  # fmt: skip
def test_how_many_layers_a_tin_has_room_for(tin: str, layer_mm: float, layers: int) -> None:
    """A tenth of what it holds is dome; a tin without a depth is as deep as the deepest sold."""
    assert layers_in(read_tin(tin)[1], layer_mm, 0.1) == layers
    with pytest.raises(AskError, match="needs a tin"):
        layers_in(read_tin("round 20 cm x 7.5 cm")[1], 68.0, 0.1)
