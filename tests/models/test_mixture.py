"""What a mixture and a technique say, read from plain data."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from pydantic import ValidationError
from tests.every import every

from tinbook.models import Mixture, Step, Technique, read_model, read_take
from tinbook.tins import Tin
from tinbook.units import METRIC, Misread, measures_of

Make = Callable[..., Mixture]


@every(
    ("text", "base", "name", "wanted"),
    [
        ("250 g butter, soft", 250.0, "butter", "soft"),
        ("6 eggs", 6.0, "eggs", ""),
        ("1 1/2 tbsp vanilla extract, good, warm", 22.5, "vanilla extract", "good, warm"),
        ("½ lemon", 0.5, "lemon", ""),
        ("1 lb 4 oz sugar", 566.990463, "sugar", ""),
        ("60ml milk,at room heat", 60.0, "milk", "at room heat"),
    ],
)
def test_a_line_of_a_mix(text: str, base: float, name: str, wanted: str) -> None:
    """Pound and ounce are exact by definition: 453.59237 g."""
    take = read_take(text, METRIC)
    assert (take.name, take.wanted, take.written) == (name, wanted, text)
    assert take.quantity.base == pytest.approx(base, rel=1e-8)
    assert text[take.at :].startswith(name)


@every("text", ["250 g", "250 g , soft", "butter", "20 cm butter", "30 min rest", "1 cup milk", ""])
def test_what_is_no_line_of_a_mix(text: str) -> None:
    with pytest.raises(Misread) as told:
        read_take(text, METRIC)
    assert told.value.message and told.value.hint
    assert 0 <= told.value.start <= told.value.end <= len(text)


def test_whose_cup_the_house_says() -> None:
    assert read_take("1 cup milk", measures_of("metric cup", "metric")).quantity.base == 250.0


@pytest.mark.parametrize("tins", ["2 round 15 cm x 7.5 cm", ["2 round 6 in x 3 in"]])
def test_one_tin_or_a_list_of_them(mixture: Make, tins: Any) -> None:
    """To the trade 6 x 3 in and 15 x 7.5 cm are one tin."""
    assert mixture(tins=tins).tins == ((2, Tin(shape="round", sizes_mm=(150.0,), depth_mm=75.0)),)


def test_several_tins_keep_their_order(mixture: Make) -> None:
    found = mixture(tins=["square 20 cm", "12 standard cups"]).tins
    assert [(count, tin.name) for count, tin in found] == [(1, "square 20 cm"), (12, "standard cups")]


def test_short_and_long_form_are_one_line(mixture: Make) -> None:
    short, long = mixture(mix=["20 g cocoa powder, sifted", {"take": "20 g cocoa powder, sifted"}]).mix
    assert short == long
    (full,) = mixture(mix=[{"take": "20 g cocoa powder", "note": "sifted", "part": "for the glaze"}]).mix
    assert (full.note, full.part) == ("sifted", "for the glaze")


def test_a_step_is_a_text_or_a_group(mixture: Make) -> None:
    text, group = mixture(method=["Beat.", {"do": "Bake.", "waiting": "55-65 min", "done": "It springs back."}]).method
    assert (text.do, text.hands_on, text.waiting) == ("Beat.", None, None)
    assert group.waiting is not None
    assert (group.waiting.low.base, group.waiting.high.base, group.done) == (55.0, 65.0, "It springs back.")


def test_the_bake(mixture: Make) -> None:
    bake = mixture(bake={"oven": "160 °C fan", "time": "1 h 15 min", "done": "A clean skewer."}).bake
    assert bake is not None
    # A fan oven's dial stands 20 °C lower: common practice.
    assert (bake.oven.celsius, bake.oven.fan, bake.time.low.base, bake.time.high.base) == (180.0, True, 75.0, 75.0)


def test_what_is_left_out(mixture: Make) -> None:
    plain = mixture()
    assert (plain.raising, plain.cooked, plain.private, plain.makes, plain.batter_depth) == (
        "level",
        False,
        False,
        None,
        None,
    )
    assert (plain.also, plain.tags, plain.notes, plain.techniques, plain.method) == ((), (), (), (), ())


def test_what_is_written(mixture: Make) -> None:
    full = mixture(
        also="butter sponge", tags=["everyday", "vanilla"], raising="less in wide tins", cooked="yes",
        batter_depth="44 mm", private=["notes"], off_balance="On purpose.", makes="1 lb", keeps="Three days.",
    )  # fmt: skip
    assert (full.also, full.tags) == (("butter sponge",), ("everyday", "vanilla"))
    assert (full.raising, full.cooked, full.batter_depth, full.private) == ("less in wide tins", True, 44.0, ("notes",))
    assert full.makes == pytest.approx(453.59237)
    assert (full.off_balance, full.keeps) == ("On purpose.", "Three days.")


def test_a_mixture_does_not_change(mixture: Make) -> None:
    with pytest.raises(ValidationError):
        mixture().kind = "mud"  # type: ignore[misc]


def test_a_technique() -> None:
    data = {
        "name": "Line a tin",
        "purpose": "Straight sides.",
        "tools": ["pencil", "paper"],
        "related": "level-and-cut",
        "steps": [{"do": "Draw round the base.", "hands on": "2 min"}, "Cut it out."],
    }
    made, flaws = read_model(Technique, data, "a technique")
    assert made is not None, flaws
    assert [each.tool for each in made.tools] == ["pencil", "paper"]
    assert (made.related, made.mixtures) == (("level-and-cut",), ())
    assert [type(step) for step in made.steps] == [Step, Step]
    assert made.steps[0].hands_on is not None and made.steps[0].hands_on.low.base == 2.0
