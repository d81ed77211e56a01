"""What a variation says, read from plain data."""

from __future__ import annotations

import pytest

from tinbook.models import Mixture, Variation, read_model
from tinbook.models.variation import NOT_TAKEN_OVER, read_instead
from tinbook.units import METRIC, Misread


@pytest.mark.parametrize(
    ("text", "name", "wanted", "grams"),
    [
        ("buttermilk", "buttermilk", "", None),
        ("buttermilk, at room heat", "buttermilk", "at room heat", None),
        ("60 g buttermilk, cold", "buttermilk", "cold", 60.0),
        ("½ lemon", "lemon", "", 0.5),
    ],
)
def test_what_goes_in_instead(text: str, name: str, wanted: str, grams: float | None) -> None:
    found = read_instead(text, METRIC)
    assert (found.name, found.wanted) == (name, wanted)
    assert (found.take and found.take.quantity.base) == grams


@pytest.mark.parametrize("text", ["", ", cold", "60 g", "20 cm milk"])
def test_what_nothing_can_go_in_for(text: str) -> None:
    with pytest.raises(Misread) as told:
        read_instead(text, METRIC)
    assert told.value.message and told.value.hint


def test_a_variation_needs_a_name_and_a_base() -> None:
    made, flaws = read_model(Variation, {"name": "A", "from": "b"}, "a variation")
    assert not flaws and made is not None and made.base == "b"
    _, flaws = read_model(Variation, {}, "this variation")
    assert [flaw.message for flaw in flaws] == ['this variation has no "name"', 'this variation has no "from"']


def test_every_key_of_a_mixture_may_be_written_in_a_variation() -> None:
    """So that what is added to mixtures is taken over and changed without a line here."""
    keys = {info.alias or name for name, info in Mixture.model_fields.items()}
    assert keys < {info.alias or name for name, info in Variation.model_fields.items()}
    assert set(Mixture.model_fields) > NOT_TAKEN_OVER


def test_what_is_written_is_known_from_what_is_not() -> None:
    made, _ = read_model(Variation, {"name": "A", "from": "b", "raising": "level"}, "a variation")
    assert made is not None and made.model_fields_set == {"name", "base", "raising"}
