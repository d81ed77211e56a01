"""Every way to write a value that is more than words: its examples are read, and each key leads to its own."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import create_model
from tests.models.test_keys import KEYS, MEASURES

from tinbook.models import read_model
from tinbook.models.a_form import WrittenForm
from tinbook.models.keys import KeyWords
from tinbook.models.reading import TEXT, Written
from tinbook.models.written_forms import FORMS, form_of
from tinbook.tins import SHAPES, read_tins

PLAIN = {
    "tier", "address", "also show", "book", "have", "behind", "count", "layers", "cut", "dowels", "shelves", "swatch", "rise", "tins sold in",
    "for", "private", "hands", "mixers", "fridge", "guests", "people", "handle", "time zone", "coiled",
    "cakes a month", "offer stands",
    "columns", "rows",
}  # fmt: skip
"""Keys with a reader of their own whose words say all of it: whole numbers, a colour, the address, a factor."""


def holding(form: WrittenForm) -> type[Written]:
    fields: Any = {"it": (form.types[0], ...)}
    return create_model("Holding", __base__=Written, **fields)


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.name)
def test_every_example_is_read(form: WrittenForm) -> None:
    model = holding(form)
    wrong = [(text, flaws) for text in form.examples if (flaws := read_model(model, {"it": text}, "it", MEASURES)[1])]
    assert wrong == []
    assert len(form.examples) >= 2 or form.name == "a date"


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.name)
def test_what_is_no_such_thing_is_refused(form: WrittenForm) -> None:
    assert read_model(holding(form), {"it": "hardly that"}, "it", MEASURES)[1]


def test_no_two_forms_are_read_alike_and_none_is_idle() -> None:
    readers = [reader for form in FORMS for reader in form.readers]
    assert len(readers) == len(set(readers))
    assert {form.name for _, key in KEYS if (form := form_of(key))} == {form.name for form in FORMS}
    assert len({form.anchor for form in FORMS}) == len(FORMS)


def is_words(key: KeyWords) -> bool:
    return all(reader is TEXT for reader in key.readers)


def test_a_key_that_takes_more_than_words_says_how_it_is_written() -> None:
    left = {key.name for _, key in KEYS if not (form_of(key) or key.inside or key.choices or is_words(key))}
    assert left <= PLAIN


def test_every_shape_of_tin_is_among_the_examples() -> None:
    (tins,) = (form for form in FORMS if form.name == "a tin")
    assert {tin.shape for text in tins.examples for _, tin in read_tins(text)} == set(SHAPES)
