"""JSON Schema of the sources, judged by jsonschema (draft 2020-12): the demo is right, and what is wrong is seen."""

from __future__ import annotations

import re
from importlib import resources
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator
from tests.every import every

from tinbook.models.json_schema import schema_of
from tinbook.models.keys import groups_below, keys_of
from tinbook.models.register import VARIATIONS, kinds
from tinbook.source import read_yaml

ROOT = Path(__file__).parents[2]
STARTER = resources.files("tinbook.cli").joinpath("starter")
SOURCES = [
    (name, path)
    for folder in (ROOT / "recipes", Path(str(STARTER)) / "recipes")
    for name, kind in kinds().items()
    for path in sorted(folder.glob(kind.path))
]


class CoreLoader(yaml.SafeLoader):
    """YAML as editors read it: truths, whole numbers and numbers of the core schema (YAML 1.2.2, 10.3.2), else text."""


CoreLoader.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("bool", r"true|True|TRUE|false|False|FALSE", "tTfF"),
    ("int", r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", "-+.0123456789"),
    ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
):
    CoreLoader.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), list(first))


@pytest.fixture(scope="module")
def validators() -> dict[str, Draft202012Validator]:
    return {name: Draft202012Validator(schema_of(name)) for name in kinds()}


@every("name", kinds())
def test_a_schema_is_one(name: str) -> None:
    Draft202012Validator.check_schema(schema_of(name))


@every(("name", "path"), SOURCES, ids=lambda each: getattr(each, "stem", each))
def test_every_source_of_the_demo_and_of_a_new_book_is_right(
    name: str, path: Path, validators: dict[str, Draft202012Validator]
) -> None:
    document, _ = read_yaml(path.read_bytes(), path.name)
    assert document is not None
    for data in (document.data, yaml.load(path.read_text("utf-8"), CoreLoader)):
        assert [(list(error.path), error.message) for error in validators[name].iter_errors(data)] == []


def test_every_file_of_the_demo_has_its_schema() -> None:
    covered = {path for _, path in SOURCES}
    assert set((ROOT / "recipes").rglob("*.yaml")) <= covered


SPONGE: dict[str, Any] = {"name": "x", "kind": "creamed", "mix": ["250 g butter"], "makes": "900 g"}


@every(
    ("name", "changes", "right"),
    [
        ("mixture", {}, True),
        ("mixture", {"tagz": ["a"]}, False),
        ("mixture", {"mix": "250 g butter"}, False),
        ("mixture", {"mix": [{"take": "250 g butter", "note": "soft"}]}, True),
        ("mixture", {"mix": [{"note": "soft"}]}, False),
        ("mixture", {"mix": ["butter"]}, False),
        ("mixture", {"mix": [["250 g butter"]]}, False),
        ("mixture", {"makes": 900}, False),
        ("mixture", {"makes": "2 lb 4 oz"}, True),
        ("mixture", {"makes": "900 ml"}, False),
        ("mixture", {"tags": "one"}, True),
        ("mixture", {"tags": {"one": 1}}, False),
        ("mixture", {"about": None}, False),
        ("mixture", {"cooked": True}, True),
        ("mixture", {"cooked": "perhaps"}, False),
        ("mixture", {"raising": "less"}, False),
        ("mixture", {"bake": {"oven": "gas mark 4", "time": "55-65 min"}}, True),
        ("mixture", {"bake": {"oven": "180", "time": "55-65 min"}}, False),
        ("mixture", {"method": ["Beat.", {"do": "Fold.", "hands on": "1 h 5 min"}]}, True),
        ("mixture", {"method": [{"do": "Fold.", "hands on": "five"}]}, False),
        ("mixture", {"from": "other", "mix": None}, False),
        ("technique", {"name": "x", "purpose": "y", "steps": []}, True),
        ("technique", {"name": "x", "purpose": "y"}, False),
    ],
)
def test_shapes(name: str, changes: dict[str, Any], right: bool, validators: dict[str, Draft202012Validator]) -> None:
    data = {**SPONGE, **changes} if name == "mixture" else changes
    assert validators[name].is_valid(data) == right


def test_a_variation_needs_no_kind_and_no_mix(validators: dict[str, Draft202012Validator]) -> None:
    data = {"name": "x", "from": "y", "change": [{"swap": "milk", "for": "buttermilk"}]}
    assert validators["mixture"].is_valid(data)
    assert not validators["mixture"].is_valid({**data, "change": [{"swop": "milk"}]})
    assert not validators["mixture"].is_valid({"name": "x"})


def said_in(name: str) -> dict[str, dict[str, Any]]:
    """What a schema says of each key, by the model it stands in."""
    found = {}
    for model, schema in schema_of(name)["$defs"].items():
        group = next((each for each in schema.get("anyOf", [schema]) if "properties" in each), None)
        if group is not None:
            found[model] = group["properties"]
    return found


@pytest.mark.parametrize("name", kinds())
def test_an_editor_is_told_what_each_key_means(name: str) -> None:
    """The words, the default and the examples of the models, at every key of every group."""
    told = said_in(name)
    roots = (kinds()[name].model, *(VARIATIONS[model] for model in (kinds()[name].model,) if model in VARIATIONS))
    groups = {group for root in roots for group in groups_below(root)}
    assert set(told) == {group.__name__ for group in groups}
    for group in groups:
        for key in keys_of(group):
            said = told[group.__name__][key.name]
            assert said["description"] == key.described
            assert said.get("default", "") == key.default
            assert said["examples"] == list(key.values)


@pytest.mark.parametrize("name", kinds())
def test_every_example_is_right_by_its_schema(name: str) -> None:
    schema = schema_of(name)
    for model, keys in said_in(name).items():
        for key, said in keys.items():
            only = Draft202012Validator({**said, "$defs": schema["$defs"]})
            wrong = [(model, key, error.message) for each in said["examples"] for error in only.iter_errors(each)]
            assert wrong == []


def test_nothing_that_no_editor_asks_for_is_in_it() -> None:
    """What a text is read into is no group of keys."""
    assert "Tin" not in schema_of("tins")["$defs"] and "Quantity" not in schema_of("mixture")["$defs"]


def test_numbers_as_an_editor_reads_them(validators: dict[str, Draft202012Validator]) -> None:
    for have, right in ((2, True), ("2", True), (-1, False), (1000, False), ("two", False), (1.5, False)):
        assert validators["tins"].is_valid({"tins": [{"tin": "round 20 cm", "have": have}]}) == right, have


def test_a_card_may_be_empty_and_nothing_else(validators: dict[str, Draft202012Validator]) -> None:
    assert validators["ingredients"].is_valid({"ingredients": {"butter": None}})
    assert not validators["ingredients"].is_valid({"ingredients": {"butter": {"also": None}}})
    assert not validators["ingredients"].is_valid({"ingredients": None})
