"""Flaws: each slip told once, at a place that is in the data, with what to write instead; and never a traceback."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.every import every

from tinbook.models import Card, Flaw, House, Larder, Mixture, Technique, TinShelf, read_model

MODELS = {"house": House, "tins": TinShelf, "larder": Larder, "card": Card, "mixture": Mixture, "technique": Technique}
SOUND: dict[str, Any] = {
    "house": {"book": "1", "name": "A house", "scales": {"step": "5 g"}, "oven shelf": "44 cm x 36 cm"},
    "tins": {"tins": [{"tin": "round 15 cm x 7.5 cm", "have": "2"}, {"tin": "standard cups", "have": "24"}]},
    "larder": {"ingredients": {"egg": {"each": "whole egg", "allergens": ["egg"]}}},
    "card": {"also": ["a", "b"], "weighs": "1 g/ml", "care": ["raw egg"]},
    "mixture": {
        "name": "Sponge", "kind": "creamed",
        "tins": ["2 round 15 cm x 7.5 cm", "square 20 cm x 5 cm"],
        "mix": ["250 g butter, soft", {"take": "6 eggs", "note": "beaten"}],
        "bake": {"oven": "170 °C", "time": "55-65 min"}, "method": ["Beat.", {"do": "Bake.", "waiting": "1 h"}],
    },
    "technique": {"name": "Line", "purpose": "So.", "steps": [{"do": "Cut.", "hands on": "2 min"}, "Fold."]},
}  # fmt: skip

TEXT = st.sampled_from(
    ["", " ", "x", "yes", "250 g butter", "250 zz", "round 15 cm", "0 g", "-3", "½", "1/0", "a: b", "é" * 40]
)
JUNK = st.recursive(
    st.none() | TEXT | st.text(max_size=12),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["take", "do", "tin", "x"]), inner, max_size=3)
    ),
    max_leaves=6,
)


def flaws_of(cls: Any, data: Any) -> tuple[Flaw, ...]:
    model, flaws = read_model(cls, data, "it")
    assert (model is None) == bool(flaws)
    for flaw in flaws:
        assert flaw.message and flaw.hint, flaw
        assert there(data, flaw), flaw
    return flaws


def there(data: Any, flaw: Flaw) -> bool:
    """Whether the path leads to something written, and the span lies in its text."""
    for step in flaw.path:
        if (isinstance(data, Mapping) and step in data) or (
            isinstance(data, list) and isinstance(step, int) and 0 <= step < len(data)
        ):
            data = data[step]
        else:
            return False
    if flaw.start is None or flaw.end is None:
        return flaw.start is flaw.end is None
    return isinstance(data, str) and 0 <= flaw.start < flaw.end <= len(data)


def nodes(data: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    pairs = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [path, *(node for key, value in pairs for node in nodes(value, (*path, key)))]


def put(data: Any, path: tuple[Any, ...], value: Any) -> Any:
    """A copy of `data` with `value` at `path`."""
    if not path:
        return value
    head, *rest = path
    if isinstance(data, dict):
        return {**data, head: put(data[head], tuple(rest), value)}
    return [put(each, tuple(rest), value) if index == head else each for index, each in enumerate(data)]


@every("name", MODELS)
def test_what_is_sound_is_read(name: str) -> None:
    model, flaws = read_model(MODELS[name], SOUND[name], "it")
    assert model is not None, flaws


@every("name", MODELS)
@settings(max_examples=60)
@given(data=JUNK)
def test_no_plain_data_makes_a_traceback(name: str, data: Any) -> None:
    flaws_of(MODELS[name], data)


@every("name", MODELS)
@settings(max_examples=60)
@given(data=st.data(), junk=JUNK)
def test_one_slip_in_a_sound_file_is_told_where_it_is(name: str, data: st.DataObject, junk: Any) -> None:
    """Whatever is put in one place, every flaw lies at that place, inside it, or on the way to it."""
    path = data.draw(st.sampled_from(nodes(SOUND[name])))
    for flaw in flaws_of(MODELS[name], put(SOUND[name], path, junk)):
        common = min(len(path), len(flaw.path))
        assert flaw.path[:common] == path[:common], (path, flaw)


@every("name", MODELS)
@every("data", [None, "text", ["a"], []])
def test_a_file_is_keys_and_values(name: str, data: Any) -> None:
    (flaw,) = flaws_of(MODELS[name], data)
    assert flaw.path == ()


@every(
    ("name", "path", "value", "code", "at", "cure"),
    [
        ("mixture", ("kidn",), "creamed", "unknown key", ("kidn",), '"kind"'),
        ("mixture", ("mix", 1, "prat"), "x", "unknown key", ("mix", 1, "prat"), '"part"'),
        ("mixture", ("bake", "tmie"), "1 h", "unknown key", ("bake", "tmie"), '"time"'),
        ("house", ("scales", "fine setp"), "1 g", "unknown key", ("scales", "fine setp"), '"fine step"'),
        ("card", ("eech",), "58 g", "unknown key", ("eech",), '"each"'),
        ("tins", ("tins", 0, "hav"), "2", "unknown key", ("tins", 0, "hav"), '"have"'),
    ],
)  # fmt: skip
def test_an_unknown_key_names_the_nearest(name: str, path: Any, value: Any, code: str, at: Any, cure: str) -> None:
    *above, key = path
    inner = SOUND[name]
    for step in above:
        inner = inner[step]
    (flaw,) = flaws_of(MODELS[name], put(SOUND[name], tuple(above), {**inner, key: value}))
    assert (flaw.code, flaw.path, flaw.on_key) == (code, at, True)
    assert cure in flaw.hint


@every(
    ("name", "path", "at"),
    [
        ("mixture", ("kind",), ()),
        ("mixture", ("bake", "time"), ("bake",)),
        ("mixture", ("method", 1, "do"), ("method", 1)),
        ("technique", ("steps",), ()),
        ("tins", ("tins", 1, "tin"), ("tins", 1)),
        ("house", ("book",), ()),
    ],
)
def test_a_missing_key_is_told_where_it_belongs(name: str, path: Any, at: Any) -> None:
    *above, key = path
    inner = SOUND[name]
    for step in above:
        inner = inner[step]
    rest = {each: value for each, value in inner.items() if each != key}
    (flaw,) = flaws_of(MODELS[name], put(SOUND[name], tuple(above), rest))
    assert (flaw.code, flaw.path) == ("missing", at)
    assert f'"{key}"' in flaw.message and f"{key}:" in flaw.hint


@every(
    ("name", "path"),
    [("mixture", ("kind",)), ("mixture", ("mix", 0)), ("mixture", ("mix", 1, "take")), ("mixture", ("tins", 1)),
     ("mixture", ("bake",)), ("house", ("scales", "step")), ("technique", ("steps", 1)), ("card", ("care",))],
)  # fmt: skip
def test_nothing_written_is_told_once(name: str, path: Any) -> None:
    (flaw,) = flaws_of(MODELS[name], put(SOUND[name], path, None))
    assert (flaw.code, flaw.path) == ("empty", path)


@every(
    ("name", "path", "text", "wrong"),
    [
        ("mixture", ("mix", 0), "250 cm butter", "250 cm"),
        ("mixture", ("mix", 1, "take"), "x eggs", "x"),
        ("mixture", ("tins", 1), "trianglish 20 cm", "trianglish"),
        ("mixture", ("tins",), "round 20 cmm", "cmm"),
        ("mixture", ("bake", "time"), "55 minz", "minz"),
        ("mixture", ("method", 1, "waiting"), "2 days", "days"),
        ("house", ("oven shelf",), "44 cm x 36 zz", "zz"),
        ("tins", ("tins", 1, "tin"), "standrd cups", "standrd"),
        ("larder", ("ingredients", "egg", "each"), "58 zz", "58 zz"),
    ],
)
def test_the_piece_that_is_wrong_is_pointed_at(name: str, path: Any, text: str, wrong: str) -> None:
    (flaw,) = flaws_of(MODELS[name], put(SOUND[name], path, text))
    assert flaw.path == path
    assert flaw.start is not None and wrong in text
    assert text[flaw.start : flaw.end].startswith(wrong) or text[flaw.start : flaw.end] in wrong


def test_all_slips_are_told_at_once() -> None:
    data = put(
        put(put(SOUND["mixture"], ("mix", 0), "2 cups butter"), ("bake", "oven"), "hot"), ("tins", 0), "2 rund 15 cm"
    )
    assert {flaw.path for flaw in flaws_of(Mixture, data)} == {("mix", 0), ("bake", "oven"), ("tins", 0)}


def test_two_tins_are_both_told() -> None:
    paths = [flaw.path for flaw in flaws_of(Mixture, {**SOUND["mixture"], "tins": ["rund 15 cm", "round 0 cm"]})]
    assert paths == [("tins", 0), ("tins", 1)]


def test_a_span_counts_from_the_text_as_written() -> None:
    (flaw,) = flaws_of(Mixture, put(SOUND["mixture"], ("mix", 0), "   2 cups butter"))
    assert (flaw.start, flaw.end) == (3, 9)
