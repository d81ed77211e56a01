"""Covering at a glance: one cake with everything on it says what the tables of each thing say."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Finish, Made
from tinbook.plans.base.weighing import weigh
from tinbook.plans.finish.boards import board_table
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.plans.finish.covered import covered_table
from tinbook.plans.finish.covering import coat_table, paste_table

Mixing = Callable[..., Any]
ICING = {"kind": "buttercream", "tins": None, "bake": None, "mix": ["300 g butter", "600 g caster sugar"]}
CURD = {"kind": "curd", "tins": None, "bake": None, "mix": ["300 g butter", "300 g caster sugar"]}
PASTE = {"kind": "sugarpaste", "tins": None, "makes": "1 kg", "bake": None, "mix": ["1 kg sugarpaste"]}


@pytest.fixture
def book(kitchen: Book, mixture: Mixing) -> Book:
    mixtures = {name: mixture(**keys) for name, keys in (("icing", ICING), ("curd", CURD), ("paste", PASTE))}
    return replace(kitchen, mixtures={**mixtures, "sponge": mixture()})


def made_with(book: Book, made: Mapping[str, str], **figures: Any) -> Book:
    finish = {**Finish().model_dump(), **figures, "made_with": Made(**made)}
    return replace(book, finish=Finish.model_construct(**finish))


def test_one_mixture_for_all_is_as_on_its_own_page(book: Book, facts: Facts) -> None:
    book = made_with(book, {"filling": "icing", "crumb coat": "icing", "final coat": "icing", "cover": "paste"})
    made = covered_table(usual_cakes(book, facts), book, facts)
    icing = coat_table(weigh("icing", book.mixtures["icing"], book, facts), book, facts)
    paste = paste_table(weigh("paste", book.mixtures["paste"], book, facts), book, facts)
    boards = board_table(usual_cakes(book, facts), book, facts, chosen=True)
    own = {row.cake.tin: row for row in icing.rows}
    net = {row.cake.tin: row for row in paste.rows}
    assert len(made.rows) > 30 and list(made.mixtures) == ["icing"] and made.missing == ()
    for row, board in zip(made.rows, boards.rows, strict=True):
        tin = row.cake.tin
        (one,) = row.made
        assert one.made_g == pytest.approx(own[tin].made_g)
        assert (one.made_shown_g, one.batches) == (own[tin].made_shown_g, own[tin].batches)
        assert row.paste == net[tin]
        assert row.board == board


def test_two_mixtures_share_the_cake(book: Book, facts: Facts) -> None:
    book = made_with(book, {"filling": "curd", "crumb coat": "icing", "final coat": "icing"}, dam=10.0)
    made = covered_table(usual_cakes(book, facts), book, facts)
    curd = coat_table(weigh("curd", book.mixtures["curd"], book, facts), book, facts)
    icing = coat_table(weigh("icing", book.mixtures["icing"], book, facts), book, facts)
    filled = {row.cake.tin: row.made_g for row in curd.rows}
    coated = {row.cake.tin: row for row in icing.rows}
    bowl = 1 - made.finishing["stays_in_the_bowl"]
    for row in made.rows:
        fill, coat = row.made
        around = coated[row.cake.tin]
        assert fill.made_g == pytest.approx(filled[row.cake.tin])
        # the dam is piped with what coats
        assert (coat.made_g - coat.bag_g) * bowl == pytest.approx(around.crumb_g + around.final_g + around.border_g)
        assert row.paste is None
    assert made.missing == ("cover",)


@pytest.mark.parametrize(
    ("named", "missing"),
    [
        ({}, ("filling", "crumb_coat", "final_coat", "cover")),
        (
            {"filling": "sponge", "final coat": "curd", "cover": "icing"},
            ("filling", "crumb_coat", "final_coat", "cover"),
        ),
        ({"filling": "curd", "crumb coat": "gone", "cover": "paste"}, ("crumb_coat", "final_coat")),
    ],
)
def test_what_cannot_play_a_role_is_missing(
    named: dict[str, str], missing: tuple[str, ...], book: Book, facts: Facts
) -> None:
    house = made_with(book, named)
    made = covered_table(usual_cakes(house, facts), house, facts)
    assert made.missing == missing
    assert made.rows and all(len(row.made) == len(made.mixtures) for row in made.rows)


def test_higher_cakes_take_more_but_no_more_filling(demo: Loaded) -> None:
    book, facts = demo.book, demo.facts
    low, high = (covered_table(usual_cakes(book, facts, mm), book, facts) for mm in (75.0, 150.0))
    for one, other in zip(low.rows, high.rows, strict=True):
        assert one.coat_g(0, "filling") == pytest.approx(other.coat_g(0, "filling"))
        if one.cake.solid == "upright":
            assert one.made[0].made_g < other.made[0].made_g
            assert one.paste and other.paste and one.paste.net_g < other.paste.net_g
