"""Tins as notes name them, in a spelling the tins' own reader takes; inches of the trade are its centimetres there."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.notes.tinning import tins_of
from tinbook.tins import read_tin


@every(
    ("text", "tins"),
    [
        ("Grease 2 x 8in sandwich tins", "2 round 8 in"),
        ("two 20cm/8in sandwich tins", "2 round 20 cm"),
        ("a deep 20cm round tin", "round 20 cm"),
        ("a deep 23cm/9in round cake tin", "round 23 cm"),
        ("3 x 20 cm round tins", "3 round 20 cm"),
        ("two 9-inch round pans", "2 round 9 in"),
        ("greased 13x9 pan", "rectangle 13 in x 9 in"),
        ("a 9x13-inch pan", "rectangle 9 in x 13 in"),
        ("a 20 x 30cm tin", "rectangle 20 cm x 30 cm"),
        ("8 x 8 inch pan", "square 8 in"),
        ("a 2lb loaf tin", "2 lb loaf"),
        ("a 900g loaf tin", "2 lb loaf"),
        ("7 in sq tin", "square 7 in"),
        ("a 12-hole muffin tin", "12 standard cups"),
        ("one 18cm round tin, 7.5 cm deep", "round 18 cm x 7.5 cm"),
        ("a 23cm springform tin", "round 23 cm"),
        ("bake at gas 3 in a round 20 cm tin", "round 20 cm"),
    ],
)
def test_what_is_read(text: str, tins: str) -> None:
    named = tins_of([text])
    assert named is not None and (named.text, named.doubt) == (tins, "")
    assert read_tin(named.text)


@pytest.mark.parametrize("text", ["a 20cm tin", "a 20cm round tin or a 18 cm square tin", "an 18x18 tin"])
def test_what_is_not_certain(text: str) -> None:
    named = tins_of([text])
    assert named is not None and named.doubt


@pytest.mark.parametrize(
    "text", ["cut into 24 squares", "a large tin", "1 tin condensed milk", "Bake 20 minutes", "2 cups"]
)
def test_what_is_no_tin(text: str) -> None:
    assert tins_of([text]) is None
