"""What is bought ready and used like a mixture: by its name or as its card says, with its packs and its own weight."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, read_model
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


@pytest.mark.parametrize("paste", ["sugarpaste", "ready-marzipan", "chocolate-paste"])
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
