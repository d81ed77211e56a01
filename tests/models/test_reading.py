"""The kinds of field: one text, one of some words, a whole number, yes or no, a list, what is private."""

from __future__ import annotations

from typing import Annotated, Any

import pytest
from pydantic import ValidationError
from tests.every import every

from tinbook.models import Flaw, Written, read_model
from tinbook.models.reading import Private, Text, Texts, YesNo, one_of, spelled, text_of, whole_number
from tinbook.units import METRIC, Measures, Misread, measures_of, read_volume


class Sample(Written):
    """One field of every kind."""

    plain_text: Text = "-"
    words: Texts = ()
    size: Annotated[str, one_of("small", "medium", "large")] = "small"
    count: Annotated[int, whole_number(2, 12)] = 2
    wet: YesNo = False
    volume: Annotated[float, spelled(lambda text, measures: read_volume(text, measures).base)] = 0.0
    private: Private = False


def read(data: Any, measures: Measures = METRIC) -> Sample:
    model, flaws = read_model(Sample, data, "a sample", measures)
    assert model is not None, flaws
    return model


def flaw(data: Any) -> Flaw:
    model, flaws = read_model(Sample, data, "a sample")
    assert model is None and len(flaws) == 1, flaws
    assert flaws[0].message and flaws[0].hint
    return flaws[0]


def test_keys_are_plain_words_with_spaces() -> None:
    assert read({"plain text": "x"}).plain_text == "x"
    told = flaw({"plain_text": "x"})
    assert (told.code, told.path, told.on_key) == ("unknown key", ("plain_text",), True)
    assert '"plain text"' in told.hint


def test_a_text_is_stripped_and_not_empty() -> None:
    assert read({"plain text": "  a b  "}).plain_text == "a b"
    for empty in ("", "   "):
        assert flaw({"plain text": empty}).path == ("plain text",)


@pytest.mark.parametrize("value", [["a"], {"a": "b"}, {}, []])
def test_a_group_or_list_is_no_text(value: Any) -> None:
    assert flaw({"plain text": value}).path == ("plain text",)
    with pytest.raises(Misread):
        text_of(value)


def test_one_text_counts_as_a_list_of_one() -> None:
    assert read({"words": "a"}).words == ("a",)
    assert read({"words": ["a", " b "]}).words == ("a", "b")
    assert flaw({"words": ["a", "", "b"]}).path == ("words", 1)
    assert flaw({"words": ["a", ["b"]]}).path == ("words", 1)


def test_one_of_some_words() -> None:
    assert read({"size": "large"}).size == "large"
    told = flaw({"size": "lage"})
    assert (told.path, told.start, told.end) == (("size",), 0, 4)
    assert '"large"' in told.hint
    assert all(word in flaw({"size": "zzz"}).hint for word in ("small", "medium", "large"))


def test_a_whole_number_within_its_limits() -> None:
    for number in (*range(-3, 20), 102, 1000000000):
        model, _ = read_model(Sample, {"count": str(number)}, "a sample")
        assert (model is not None) == (2 <= number <= 12), number
        assert model is None or model.count == number


@every("text", ["2.0", "two", "²", "٣", "1e1", "3 ", "+3"])
def test_digits_and_nothing_else(text: str) -> None:
    if text.strip() == "3":
        assert read({"count": text}).count == 3
    else:
        assert flaw({"count": text}).path == ("count",)


@pytest.mark.parametrize(("text", "answer"), [("yes", True), ("NO", False), ("true", True), ("false", False)])
def test_yes_or_no_and_nothing_else(text: str, answer: bool) -> None:
    assert read({"wet": text}).wet is answer
    for other in ("y", "on", "1", "si"):
        assert flaw({"wet": other}).path == ("wet",)


def test_private_is_yes_no_or_a_list() -> None:
    assert read({"private": "yes"}).private is True
    assert read({"private": "no"}).private is False
    assert read({"private": ["words", "size"]}).private == ("words", "size")
    assert flaw({"private": "words"}).path == ("private",)


def test_a_spelling_knows_the_measures_of_the_house() -> None:
    assert read({"volume": "1 cup"}, measures_of("metric cup", "metric")).volume == 250.0
    assert read({"volume": "1 tbsp"}, measures_of(None, "Australian")).volume == 20.0
    # Without a word of the house nobody knows whose cup it is.
    told = flaw({"volume": "1 cup"})
    assert told.path == ("volume",) and "metric cup" in told.hint


def test_a_model_does_not_change() -> None:
    with pytest.raises(ValidationError):
        read({}).wet = True  # type: ignore[misc]
