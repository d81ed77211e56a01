"""The nearest board, box, dowel or ribbon that will do."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.plans.shopping.fitting import Fitter
from tinbook.plans.shopping.things import SizedNeed, Things


def need(what: str, shape: str, *sides_mm: float, count: int = 1) -> SizedNeed:
    return SizedNeed(what=what, shape=shape, sides_mm=sides_mm, count=count)


def chosen(things: Things, *needs: SizedNeed, **home: float) -> dict[str, float]:
    return Fitter(things, {name.replace("_", " ").replace(";", ","): count for name, count in home.items()}).choose(
        needs
    )


@pytest.mark.parametrize(
    ("wanted", "name"),
    [
        (need("drum", "round", 300.0), "drum, round 30 cm"),
        (need("drum", "round", 305.0), "drum, round 30 cm"),
        (need("drum", "round", 310.0), "drum, round 36 cm"),
        (need("drum", "square", 280.0), "drum, square 30 cm"),
        (need("drum", "round", 480.0), "drum, round 48 cm"),
        (need("box", "", 300.0, 250.0, 140.0), "box, 31 cm x 31 cm x 15 cm"),
        (need("box", "", 250.0, 250.0, 160.0), "box, 41 cm x 41 cm x 20 cm"),
        (need("box", "", 500.0, 500.0, 160.0), "box, 50 cm x 50 cm x 16 cm"),
        (need("ribbon", "", 15.0, 900.0), "ribbon, 15 mm"),
        (need("ribbon", "", 25.0, 900.0), "ribbon, 25 mm"),
    ],
)
def test_the_smallest_that_will_do_or_the_thing_itself(things: Things, wanted: SizedNeed, name: str) -> None:
    assert list(chosen(things, wanted)) == [name]


def test_what_is_at_home_is_taken_once(things: Things) -> None:
    two = need("drum", "round", 330.0, count=2)
    fitter = Fitter(things, {"drum, round 33 cm": 1.0})
    assert fitter.choose([two]) == {"drum, round 33 cm": 1.0, "drum, round 36 cm": 1.0}
    assert fitter.home["drum, round 33 cm"] == 0.0


def test_ends_of_dowels_serve_the_next_order(things: Things) -> None:
    fitter = Fitter(things, {})
    short = need("dowel", "", 6.0, 100.0, count=2)
    assert fitter.choose([short]) == {"dowel, 6 mm x 30 cm": 1.0}
    assert fitter.choose([need("dowel", "", 6.0, 100.0)]) == {"dowel, 6 mm x 30 cm": 0.0}
    assert fitter.choose([short]) == {"dowel, 6 mm x 30 cm": 1.0}


@given(st.tuples(*[st.floats(50.0, 600.0)] * 2), st.floats(50.0, 300.0))
def test_a_box_holds_what_goes_in(things: Things, sides: tuple[float, float], high: float) -> None:
    (name,) = chosen(things, need("box", "", *sides, high))
    thing = things.called(name)
    assert thing is not None and thing.size is not None
    *floor, top = thing.size.sides_mm
    assert top >= high - 1.0
    assert any(
        all(have >= want - 1.0 for have, want in zip(floor, turned, strict=True)) for turned in permutations(sides)
    )
