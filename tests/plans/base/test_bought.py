"""What is bought ready and used like a mixture: by its name or as its card says, with its packs and its own weight."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, Made, read_model
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.bought import bought, made_or_bought
from tinbook.plans.tables import TABLES


def with_card(book: Book, name: str, **keys: Any) -> Book:
    card, flaws = read_model(Card, keys, "a card")
    assert card is not None and not flaws
    return replace(book, cards={**book.cards, name: card})


def test_by_its_name_or_as_its_card_says(kitchen: Book, facts: Facts) -> None:
    book = with_card(kitchen, "white blocks", **{"used as": "sugarpaste", "packs": ["1 kg", "250 g"]})
    batch = made_or_bought("white-blocks", book, facts)
    assert batch and batch.bought and (batch.kind.key, batch.makes_g) == ("sugarpaste", 250.0)
    assert batch.packs_g == (1000.0, 250.0)
    assert bought("butter", book, facts) is None and made_or_bought("no-such", book, facts) is None


def test_its_own_weight_by_volume_wins(kitchen: Book, facts: Facts) -> None:
    plain = with_card(kitchen, "sugarpaste")
    dense = with_card(kitchen, "sugarpaste", weighs="1.33 g/ml")
    usual, own = (bought("sugarpaste", book, facts) for book in (plain, dense))
    assert usual and own
    assert (usual.kind.gravity.typical, own.kind.gravity.typical) == (facts.kinds["sugarpaste"].gravity.typical, 1.33)


def test_its_own_weight_goes_into_covers_and_boards(demo: Loaded) -> None:
    """1.38 g/ml by its card, where sugarpaste of the trade weighs 1.4: on the cake, and 3 mm thick on a 33 cm drum."""
    book = with_card(demo.book, "white blocks", **{"used as": "sugarpaste", "packs": ["2 kg"], "weighs": "1.38 g/ml"})
    trade = with_card(demo.book, "plain blocks", **{"used as": "sugarpaste", "packs": ["2 kg"]})
    own, usual = (
        {row["tin"]: dict(row) for row in TABLES["covers"].rows(house, demo.facts, Query(of=of)).rows}
        for house, of in ((book, "white-blocks"), (trade, "plain-blocks"))
    )
    for tin, row in own.items():
        assert row["on_the_cake_g"] == pytest.approx(usual[tin]["on_the_cake_g"] * 1.38 / 1.4, abs=0.01)
        assert row["pack_total_g"] == 2000.0 * row["pack_count"]
    for of, g_per_ml in (("white-blocks", 1.38), ("chocolate-paste", 1.35), (None, 1.4)):
        made = Made(board=of) if of else None
        finish = demo.book.finish.model_copy(update={"board": "wide", "made_with": made})
        rows = TABLES["boards"].rows(replace(book, finish=finish), demo.facts, Query()).rows
        (row,) = [row for row in rows if row["tin"] == "round 23 cm"]
        assert (row["taken_width_mm"], row["wide_width_mm"]) == (330.0, 330.0)
        assert row["wide_whole_board_g"] == pytest.approx(math.pi / 4 * 330**2 * 3 / 1000 * g_per_ml, abs=0.01)


@pytest.mark.parametrize("paste", ["sugarpaste", "ready-made-marzipan", "ready-marzipan", "chocolate-paste"])
def test_bought_pastes_cover_a_cake_in_whole_packs(demo: Loaded, paste: str) -> None:
    rows = TABLES["covers"].rows(demo.book, demo.facts, Query(of=paste)).rows
    assert len(rows) > 30
    for row in rows:
        assert isinstance(row["pack_total_g"], float) and isinstance(row["roll_out_g"], float)
        assert row["pack_total_g"] >= row["roll_out_g"] and row["batches"] is None


def test_modelling_paste_covers_none(demo: Loaded) -> None:
    with pytest.raises(AskError, match="does not cover"):
        TABLES["covers"].rows(demo.book, demo.facts, Query(of="modelling-paste"))


@pytest.mark.parametrize(("of", "none"), [("royal-icing", ("filling_g",)), ("dark-ganache", ("border_g", "bag_g"))])
def test_what_a_mixture_is_not_for_takes_nothing(demo: Loaded, of: str, none: tuple[str, ...]) -> None:
    for row in TABLES["coats"].rows(demo.book, demo.facts, Query(of=of)).rows:
        assert [row[key] for key in none] == [0.0] * len(none)
        assert isinstance(row["final_coat_g"], float) and row["final_coat_g"] > 0
