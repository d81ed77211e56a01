"""Names as a baker writes them, and what they lead to."""

from __future__ import annotations

import pytest

from tinbook.models.packs import read_amount
from tinbook.models.supplies import read_supply_size
from tinbook.plans.shopping.things import FOOD, LENGTH, PIECES, Things, same_size, sound_size


@pytest.mark.parametrize(
    ("text", "name", "unit"),
    [
        ("butter", "butter", FOOD),
        ("Unsalted butter", "butter", FOOD),
        ("gel food colour, black", "gel food colour, black", FOOD),
        ("drum, round 30 cm", "drum, round 30 cm", PIECES),
        ("drum round 12 in", "drum, round 30 cm", PIECES),
        ("drum, round 33 cm", "drum, round 33 cm", PIECES),
        ("lolly stick", "lolly sticks", PIECES),
        ("ribbon, 15 mm", "ribbon, 15 mm", LENGTH),
        ("centre dowel, 12 mm x 40 cm", "centre dowel, 12 mm x 40 cm", PIECES),
    ],
)
def test_what_a_name_leads_to(things: Things, text: str, name: str, unit: str) -> None:
    found = things.called(text)
    assert found is not None and (found.name, found.unit) == (name, unit)


@pytest.mark.parametrize("text", ["buter", "drum, round", "drum, 3 cm x 4 cm x 5 cm", "butter, black", "anchor"])
def test_what_leads_nowhere(things: Things, text: str) -> None:
    assert things.called(text) is None


def test_a_near_name_is_offered(things: Things) -> None:
    assert things.near("buter") == "butter" and things.near("lolly stik") in ("lolly stick", "lolly sticks")


@pytest.mark.parametrize(
    ("of", "said", "amount"),
    [
        ("butter", "4 x 250 g", 1000.0),
        ("milk", "0", 0.0),
        ("butter", "2", None),
        ("ribbon, 15 mm", "3 m", 3000.0),
        ("ribbon, 15 mm", "2", None),
        ("lolly sticks", "12", 12.0),
        ("lolly sticks", "12 g", None),
    ],
)
def test_amounts_in_a_things_own_unit(things: Things, of: str, said: str, amount: float | None) -> None:
    thing = things.called(of)
    assert thing is not None
    assert things.amount_of(thing, read_amount(said, things.book.house.spoons)) == amount


def test_trade_sizes_of_one_board_are_one(things: Things) -> None:
    spoons = things.book.house.spoons
    eight, twenty = read_supply_size("round 8 in", spoons), read_supply_size("20 cm", spoons)
    assert same_size(eight, twenty) and not same_size(read_supply_size("square 20 cm", spoons), twenty)
    assert not same_size(None, twenty)


def test_a_size_is_of_its_kind(things: Things) -> None:
    spoons = things.book.house.spoons
    box, round_ = read_supply_size("36 cm x 36 cm x 15 cm", spoons), read_supply_size("round 30 cm", spoons)
    assert sound_size("box", box) and not sound_size("drum", box) and not sound_size("box", round_)
    assert sound_size("lolly sticks", None) and not sound_size("box", None)
