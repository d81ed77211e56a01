"""The house, its tins and its cards: what can be used of them where something in them cannot."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from tinbook.facts import Facts
from tinbook.loading.house import read_cards, read_house, read_tins
from tinbook.loading.intake import Intake

Write = Callable[..., Path]


def test_a_house_that_is_not_there_is_a_plain_one_and_told(write: Write, facts: Facts) -> None:
    folder = write({"house/house.yaml": None})
    intake = Intake(folder)
    assert read_house(intake, folder, facts).name == "House book"
    assert [problem.message for problem in intake.problems] == ["the book has no house.yaml"]


def test_of_a_broken_house_what_sums_need_is_kept(write: Write, facts: Facts) -> None:
    text = "book: 1\nname: Lamp Room\ncup: metric cup\nmixer bowl: huge\n"
    folder = write({"house/house.yaml": text})
    intake = Intake(folder)
    house = read_house(intake, folder, facts)
    assert (house.name, house.cup, house.mixer_bowl) == ("Lamp Room", "metric cup", None)
    assert intake.measures.cup_ml == 250.0
    assert intake.cup_said


def test_a_tin_with_a_slip_leaves_the_others(write: Write) -> None:
    intake = Intake(
        write(
            {
                "house/tins.yaml": "tins: [{tin: round 20 cm x 7.5 cm}, {tin: rund 20 cm}, {tin: square 15 cm x 7.5 cm}]\n"
            }
        )
    )
    assert [own.tin.shape for own in read_tins(intake)] == ["round", "square"]
    assert len(intake.problems) == 1


def test_a_tin_of_ones_own_goes_by_its_name_from_then_on(write: Write) -> None:
    line = "  - {tin: outline M0 0H80V160H0Z x 5 cm, name: Number One}\n"
    intake = Intake(write({"house/tins.yaml": f"tins:\n{line}"}))
    read_tins(intake)
    assert list(intake.tins) == ["number one"]


def test_a_broken_card_spoils_every_name_that_leads_to_it(write: Write, base: Mapping[str, str], facts: Facts) -> None:
    text = base["house/ingredients.yaml"].replace("weighs as: caster sugar", "weighs as: castor")
    cards, spoilt = read_cards(Intake(write({"house/ingredients.yaml": text})), facts)
    assert "caster sugar" not in cards and "butter" in cards
    assert set(spoilt.names) == {"caster sugar", "superfine sugar"}
    assert not spoilt.more


def test_a_card_with_nothing_on_it_is_a_card(write: Write, facts: Facts) -> None:
    cards, _ = read_cards(Intake(write({"house/ingredients.yaml": "ingredients:\n  sea salt:\n"})), facts)
    assert cards["sea salt"].allergens is None
