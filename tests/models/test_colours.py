"""Colours and cutters of the house, typed."""

from __future__ import annotations

import pytest

from tinbook.models import ColourCards, CutterDrawer, read_model


def test_a_colour() -> None:
    card = {"per 100 g": ["2 g gel food colour, poppy red"], "swatch": "b3261e", "fades": "yes", "additives": "E129"}
    cards, flaws = read_model(ColourCards, {"colours": {"lamp red": card}}, "it")
    assert not flaws
    assert cards is not None
    colour = cards.colours["lamp red"]
    assert (colour.swatch, colour.fades, colour.deepens, colour.additives) == ("#B3261E", True, False, ("E129",))
    assert (colour.per_100_g[0].name, colour.per_100_g[0].wanted) == ("gel food colour", "poppy red")


def test_a_drawer() -> None:
    drawer, flaws = read_model(CutterDrawer, {"cutters": ["round 40 mm", {"cutter": "star 30 mm", "have": "0"}]}, "it")
    assert not flaws
    assert drawer is not None
    assert [(each.cutter.form, each.have) for each in drawer.cutters] == [("round", 1), ("star", 0)]


@pytest.mark.parametrize("swatch", ["red", "#12345", "#12345G"])
def test_no_swatch(swatch: str) -> None:
    cards, flaws = read_model(ColourCards, {"colours": {"x": {"per 100 g": "2 g gel", "swatch": swatch}}}, "it")
    assert cards is None
    assert "#B3261E" in flaws[0].hint
