"""What is said of each key: there for every key of every model, true to its default, and its examples are read."""

from __future__ import annotations

import re
from typing import Annotated

import pytest

from tinbook.loading.private import private_flaws
from tinbook.models import CakeVariation, Scales, Variation, Written, read_model
from tinbook.models.keys import (
    BY_ITS_KEYS,
    KeyWords,
    as_lines,
    groups_below,
    keys_of,
    lead_of,
    minimal,
    value_of,
)
from tinbook.models.reading import Text, such_as, whole_number
from tinbook.models.register import REGISTER
from tinbook.source import read_yaml
from tinbook.units import measures_of

MODELS = tuple(
    dict.fromkeys(
        group for root in (*(kind.model for kind in REGISTER), Variation, CakeVariation) for group in groups_below(root)
    )
)
MEASURES = measures_of("US cup", "metric", "cm")
KEYS = [(model, key) for model in MODELS for key in keys_of(model)]


def lacking(key: KeyWords) -> list[str]:
    """What is not said of a key that ought to be."""
    told = {"a meaning": key.meaning, "an example": key.examples}
    missing = [name for name, words in told.items() if not words]
    answers = sum(map(bool, (key.required, key.default, key.left_out)))
    return missing if answers == 1 else [*missing, "one answer to what happens if it is left out"]


def test_every_key_has_its_words() -> None:
    assert len(MODELS) > 30 and len(KEYS) > 250
    assert {f"{model.__name__}.{key.name}": said for model, key in KEYS if (said := lacking(key))} == {}
    assert [model.__name__ for model in MODELS if not lead_of(model)] == []


class Mute(Written):
    """A model as somebody in a hurry adds it."""

    bare: Text | None = None
    unsaid: Annotated[Text | None, such_as("x")] = None
    """What it means, and not what happens without it."""
    needed_too: Annotated[Text, such_as("x")]
    """What it means. Left out: it cannot be."""
    sound: Annotated[int, whole_number(1, 9), such_as("2")] = 1
    """How many."""


def test_a_key_without_words_is_seen() -> None:
    said = {key.name: len(lacking(key)) for key in keys_of(Mute)}
    assert said == {"bare": 3, "unsaid": 1, "needed too": 1, "sound": 0}


@pytest.mark.parametrize("model", MODELS, ids=lambda model: model.__name__)
def test_every_example_of_every_key_is_read(model: type[Written]) -> None:
    """By the reader of files, with no more than the keys that have to be there beside it."""
    wrong = []
    for key in keys_of(model):
        for lines, value in zip(key.written, key.values, strict=True):
            document, problems = read_yaml(f"{lines}\n".encode(), "example")
            assert document is not None and document.data == {key.name: value}, lines
            read, flaws = read_model(model, {**minimal(model), **document.data}, "an example", MEASURES)
            wrong += [(lines, each) for each in (*problems, *flaws)]
            wrong += [(lines, each) for each in (private_flaws(read) if read else ()) if value != "yes"]
    assert wrong == []


def test_an_example_that_no_reader_takes_is_seen() -> None:
    _, flaws = read_model(Mute, {"needed too": "x", "sound": value_of("ten")}, "an example")
    assert flaws
    with pytest.raises(ValueError, match="not valid YAML"):
        value_of("{open: yes")


def test_a_default_that_is_told_is_the_one_that_is_taken() -> None:
    told = 0
    for model, key in KEYS:
        field = next(field for name, field in model.model_fields.items() if (field.alias or name) == key.name)
        if key.default:
            read, flaws = read_model(model, {**minimal(model), key.name: key.default}, "a default", MEASURES)
            assert read is not None, (model, key.name, flaws)
            name = next(name for name, each in model.model_fields.items() if each is field)
            assert getattr(read, name) == field.default, (model, key.name)
            told += 1
        elif not key.required:
            assert not field.default or key.left_out == BY_ITS_KEYS, (model, key.name)
    assert told > 40


def test_the_words_are_whole_sentences() -> None:
    odd = []
    for model, key in KEYS:
        for text in (key.meaning, f"{key.left_out[:1].upper()}{key.left_out[1:]}"):
            bare = re.sub(r"`[^`]*`", "X", text)
            if text and (not bare.endswith(".") or bare.endswith("..") or "`" in bare or not bare[0].isupper()):
                odd.append((model.__name__, key.name, text))
        assert not key.left_out[:1].isupper() or key.left_out.startswith("`"), (model, key.name, key.left_out)
        assert len(key.described) < 320, (model, key.name)
    assert odd == []


def test_a_key_of_a_list_stands_over_its_lines() -> None:
    assert as_lines("name", "Harbour sponge") == "name: Harbour sponge"
    assert as_lines("mix", "- 250 g butter\n- 4 eggs") == "mix:\n  - 250 g butter\n  - 4 eggs"
    assert as_lines("ingredients", "salt:\n  raises: no") == "ingredients:\n  salt:\n    raises: no"


def test_groups_are_found_wherever_they_stand() -> None:
    names = [group.__name__ for group in groups_below(Variation)]
    assert names[0] == "Variation" and {"MixLine", "StepChange", "Change", "Finish", "Border"} <= set(names)


def test_only_what_a_model_says_itself() -> None:
    own = {key.name for key in keys_of(Variation, own=True)}
    assert own == {"from", "kind", "mix", "method", "change"}


def test_a_default_has_its_unit() -> None:
    assert [key.default for key in keys_of(Scales)] == ["5 g", "1 g", "50 g"]
