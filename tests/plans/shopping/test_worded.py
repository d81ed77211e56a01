"""Materials as techniques word them."""

from __future__ import annotations

import pytest

from tinbook.plans.shopping.things import SizedNeed
from tinbook.plans.shopping.worded import sized_material


def need(what: str, shape: str, *sides_mm: float, count: int = 1) -> SizedNeed:
    return SizedNeed(what=what, shape=shape, sides_mm=sides_mm, count=count)


@pytest.mark.parametrize(
    ("name", "wanted", "count", "found"),
    [
        ("cake drum", "round 30 cm, 12 mm thick", 2.0, (need("drum", "round", 300.0, count=2),)),
        ("board", "square 25 cm", 1.0, (need("drum", "square", 250.0),)),
        ("cards", "round 15 and 20 cm", 2.0, (need("card", "round", 150.0), need("card", "round", 200.0))),
        ("dowels", "6 mm thick, 15 cm long", 4.0, (need("dowel", "", 6.0, 150.0, count=4),)),
        ("through-dowel", "12 mm across, 40 cm long", 1.0, (need("centre dowel", "", 12.0, 400.0),)),
        ("cards", "round 15 and 20 cm", 3.0, ()),
        ("drum", "large", 1.0, ()),
        ("lolly stick", "11 cm long", 1.0, ()),
        ("dowel", "thick", 1.0, ()),
    ],
)
def test_words_with_a_size(name: str, wanted: str, count: float, found: tuple[SizedNeed, ...]) -> None:
    assert sized_material(name, wanted, count) == found
