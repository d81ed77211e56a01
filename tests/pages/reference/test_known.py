"""What the facts say of keys: the words that may stand there, and the figure of the trade."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import pytest
from tests.models.test_keys import KEYS, MODELS

from tinbook.loading import Loaded
from tinbook.models import Finish
from tinbook.models.keys import KeyWords, keys_of
from tinbook.pages.reference.known import FIGURE_OF, WORDS, known_words, usual_figure
from tinbook.plans.base.finishing import finishing

NBSP = "\N{NO-BREAK SPACE}"
BY_NAME = {(model.__name__, key.name): (model, key) for model, key in KEYS}


def texts(value: Any) -> Iterable[str]:
    return value if isinstance(value, list) else (value,)


@pytest.mark.parametrize("name", WORDS, ids=" ".join)
def test_examples_are_words_that_the_book_knows(name: tuple[str, str], demo: Loaded) -> None:
    model, key = BY_NAME[name]
    known = known_words(model, key, demo.facts)
    assert len(known) > 3
    assert {text for value in key.values for text in texts(value)} <= set(known)


def test_a_key_of_few_words_names_them(demo: Loaded) -> None:
    (measures,) = (key for key in keys_of(BY_NAME["House", "measures"][0]) if key.name == "measures")
    assert known_words(BY_NAME["House", "measures"][0], measures, demo.facts) == ("grams", "ounces", "cups")


def test_the_trades_figure_is_the_one_that_sums_go_by(demo: Loaded) -> None:
    settled = finishing(Finish(), demo.facts)
    figures = {key.name: usual_figure(Finish, key, demo.facts) for key in keys_of(Finish)}
    said = {name: figure.replace(NBSP, " ") for name, figure in figures.items()}
    assert said["filling"] == f"{settled['filling']:g} mm"
    assert said["layers"].startswith(f"{settled.layers:g} ")
    assert said["heights"] == f"{settled.heights_mm[0]:g} mm"
    assert said["level off"] == f"{settled['level_off']:.0%}"
    assert said["dam"] == ""


def test_it_is_told_where_the_words_promise_it() -> None:
    def promises(key: KeyWords) -> bool:
        return key.left_out == "the trade's usual figure."

    told = {(model.__name__, key.name) for model in MODELS for key in keys_of(model) if promises(key)}
    assert told == set(FIGURE_OF)
