"""Whatever is in a file: loading never raises, and every problem has a place that is in the file.

Random bytes and texts, random trees of a baker's words, and the demo's own files with pieces of them deleted, doubled,
swapped or changed.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from copy import deepcopy
from pathlib import Path
from random import Random
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from tests.every import many

from tinbook.loading import Loaded, load_book
from tinbook.models import Bake, Card, House, MixLine, Mixture, OwnedTin, Step, Technique
from tinbook.plans.base.weighing import weigh_all
from tinbook.problems import as_dict, spell

DEMO = Path(__file__).parents[2] / "recipes"
ADDRESSES = ("mixtures/x", "techniques/x", "house/house", "house/tins", "house/ingredients")


class Scratch:
    """A folder that holds one book after another."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder / "recipes"
        self.there: dict[str, bytes] = {}

    def load(self, files: Mapping[str, bytes], kitchen: bool = True) -> Loaded:
        for address in self.there.keys() - files.keys():
            (self.folder / f"{address}.yaml").unlink()
        for address, raw in files.items():
            if self.there.get(address) != raw:
                path = self.folder / f"{address}.yaml"
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(raw)
        self.there = dict(files)
        return load_book(self.folder, kitchen)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Scratch:
    return Scratch(tmp_path_factory.mktemp("bench"))


@pytest.fixture(scope="module")
def files(base: Mapping[str, str]) -> dict[str, bytes]:
    """The small book, by address."""
    return {name.removesuffix(".yaml"): text.encode() for name, text in base.items()}


def answered(loaded: Loaded, files: Mapping[str, bytes], whole: bool = True) -> None:
    """Every problem has a place in a file of the book, and every page is either in the book or told to be broken.

    `whole`: no problem falls through to the words of the library that reads the models.
    """
    lines = {f"recipes/{address}.yaml": _lines(raw) for address, raw in files.items()}
    told = [*loaded.problems, *(problem for found in loaded.broken.values() for problem in found)]
    for problem in told:
        place = problem.place
        assert problem.message
        assert problem.hint
        assert place.line >= 1
        assert place.column >= 1
        assert place.width >= 1
        if place.file == "recipes/house/house.yaml" and "house/house" not in files:
            continue
        texts = lines[place.file]
        if texts is not None and problem.code != "size":
            assert place.line <= len(texts), problem
            text = texts[place.line - 1]
            assert place.text == text, problem
            assert place.column - 1 + place.width <= max(len(text), place.column), problem
            assert place.column - 1 <= len(text), problem
        if whole:
            assert "this cannot be read" not in problem.message, problem
        assert spell(problem).startswith(f"{place.file}:{place.line}:{place.column}: ")
        assert as_dict(problem)["line"] == place.line
    errors = {problem.place.file for problem in loaded.errors}
    for address in files:
        if address.startswith(("mixtures/", "techniques/")):
            room, _, slug = address.partition("/")
            shown = slug in getattr(loaded.book, room)
            assert shown != (address in loaded.broken) or not loaded.book.mixtures | loaded.book.techniques, address
            assert not (shown and f"recipes/{address}.yaml" in errors)
    for batch in weigh_all(loaded.book, loaded.facts).values():
        assert math.isfinite(batch.mass_g)
        assert batch.mass_g > 0
        assert math.isfinite(batch.depth_mm)


def _lines(raw: bytes) -> list[str] | None:
    try:
        text = raw.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError:
        return None
    return re.split(r"\r\n|\r|\n", text)


SIGNS = [
    *[": ", ":", "- ", "\n", "\n  ", "\n- ", "[", "]", "{", "}", ", ", "'", '"', "|", ">", "&a ", "*a", "!x ", "#"],
    *"\t\0\u2028\u00a0%@`\\½蛋~",
    *["\r\n", "? ", "---\n", "...\n", "<<: ", "°C"],
]
KEYS = [
    *sorted({f.alias or n for cls in (Card, House, Mixture, OwnedTin, Technique) for n, f in cls.model_fields.items()}),
    *sorted({f.alias or n for cls in (Bake, MixLine, Step) for n, f in cls.model_fields.items()}),
    "ingredients",
    "butter",
    "egg",
]
WORDS = [
    *["creamed", "curd", "yes", "no", "none", "gluten", "driftwood", "duck", "1", "2", "grams", "US cup", "metric"],
    *["UK large", "whole egg", "plain flour, spooned"],
    *["250 g butter, soft", "6 eggs", "2 cups butter", "1 1/2 tsp caster sugar", "0 g egg", "300 butter", "1e9 g egg"],
    *["round 20 cm x 7.5 cm", "2 round 6 in", "24 standard cups", "ring 23 cm x 7.5 cm", "2 lb loaf", "round", "cups"],
    *["170 °C", "gas mark 4", "55-65 min", "2 h", "75 mm", "900 g", "2.5 kg", "0.85 g/ml", "200 g per cup", "wheat"],
    *["0.1 g per US cup", "1 g per 1 mm", "0 g/ml", "900 kg", "2300 ml", "milk", "raw egg", "line-a-tin", "../x", "/"],
    *["44 cm x 36 cm", "0 cm x 0 cm", "less in wide tins", "plain-sponge", "caster sugar", "999 round 100 cm x 30 cm"],
    *["", " ", "½", "1:30", "2026-11-25", "0x1F", "nan", "-1", "é" * 60, "999999999999999999999 g butter", "蛋 300 g"],
]
TEXTS = st.one_of(
    st.binary(max_size=200),
    st.text(max_size=80).map(lambda text: text.encode("utf-8", "surrogatepass")),
    st.lists(st.sampled_from([*SIGNS, *KEYS, *WORDS]), max_size=24).map(lambda parts: "".join(parts).encode()),
)
SEEDS = st.integers(0, 2**32)
# The keys of the groups a book is made of: a tree with most of them gets past the first checks.
GROUPS = {
    "mixtures/x": ("name", "kind", "tins", "makes", "mix", "bake", "method", "batter depth"),
    "techniques/x": ("name", "purpose", "steps", "related"),
    "house/house": ("book", "name", "cup", "eggs", "scales", "oven shelf", "private"),
    "house/tins": ("tin", "have", "measured"),
    "house/ingredients": ("also", "weighs", "weighs as", "each", "allergens", "care", "private"),
}


# What may well follow a key, the extreme and the absurd among it.
LINES = [
    *["300 g butter", "1 g butter, soft", "900 kg butter", "6 eggs", "0.001 egg", "999999 eggs", "300 g caster sugar"],
    *["1 US cup butter", "1/8 tsp superfine sugar", "300 g self-raising flour", "9 l butter", "2 lavender", "1 tsp x"],
    {"take": "20 g butter", "note": "melted", "part": "glaze"},
]
FITTING: dict[str, list[Any]] = {
    "name": ["A cake", "½", "蛋糕", "<b>", "é" * 60],
    "kind": ["creamed", "whisked", "cupcake", "rich fruit", "buttercream", "syrup"],
    "tins": ["2 round 20 cm x 7.5 cm", "round 10 cm", "24 standard cups", "1 lb loaf", ["ring 23 cm", "square 40 cm"]],
    "makes": ["900 g", "1 g", "900 kg", "2 lb 3 oz"],
    "bake": [{"oven": "160 °C", "time": "35-40 min"}, {"oven": "gas mark 4", "time": "4 h", "done": "x"}],
    "batter depth": ["44 mm", "1 mm", "7.5 cm", "300 mm"],
    "method": [["Beat.", {"do": "Bake.", "waiting": "1 h"}], "Beat."],
    "purpose": ["So."],
    "steps": [["Cut.", {"do": "Fold.", "hands on": "2 min"}]],
    "related": ["line-a-tin", ["x"]],
    "book": ["1"],
    "cup": ["US cup", "UK cup", "metric cup"],
    "eggs": ["US jumbo", "UK small"],
    "scales": [{"step": "5 g"}, {"step": "1 kg", "fine step": "0.001 g", "fine below": "900 kg"}],
    "oven shelf": ["44 cm x 36 cm", "1 mm x 1 mm"],
    "tin": ["round 20 cm x 7.5 cm", "round 20 cm", "standard cups", "square 23 cm x 5 cm", "2 lb loaf"],
    "have": ["1", "999"],
    "measured": ["2300 ml", "4 l", "1 ml", "100 ml"],
    "also": [["b"], "egg"],
    "weighs": ["0.85 g/ml", "200 g per US cup", "0.0001 g per 9 l", "900 kg per 1/8 tsp", "no volume measure"],
    "weighs as": ["butter", "caster sugar", "honey", "salt"],
    "each": ["58 g", "egg yolk", "900 kg", "0.0001 g"],
    "allergens": ["none", ["milk"], ["egg", "wheat"], "soya", ["oats"]],
    "care": [["raw egg"], "honey", ["raw flour", "alcohol"], "colour"],
    "private": ["yes", "no", ["notes"], ["also"]],
}
# Keys that do not go together, or mostly do harm.
OFTEN = {"tins": 0.6, "makes": 0.3, "batter depth": 0.2, "weighs": 0.2, "weighs as": 0.6, "private": 0.2, "also": 0.1}


def a_tree(dice: Random, depth: int = 4) -> Any:
    """Lists, groups and words of a book, joined at random."""
    kind = dice.random()
    if depth == 0 or kind < 0.6:
        return dice.choice([None, True, 0, 1.5, dice.choice(SIGNS), *dice.choices(WORDS, k=12)])
    if kind < 0.8:
        return [a_tree(dice, depth - 1) for _ in range(dice.randrange(4))]
    return {dice.choice(KEYS): a_tree(dice, depth - 1) for _ in range(dice.randrange(5))}


def a_group(dice: Random, keys: tuple[str, ...]) -> dict[str, Any]:
    """A group with most of these keys and mostly fitting values, and perhaps something else."""
    group: dict[str, Any] = {}
    for key in keys:
        if key == "mix":
            group[key] = [deepcopy(line) for line in dice.choices(LINES, k=dice.randrange(1, 5))]
        elif dice.random() < OFTEN.get(key, 0.85):
            group[key] = deepcopy(dice.choice(FITTING[key]))
    if dice.random() < 0.2:
        group[dice.choice(list(group) or KEYS)] = a_tree(dice)
    if dice.random() < 0.1:
        group[dice.choice(KEYS)] = a_tree(dice)
    return group


def a_file(dice: Random, address: str) -> Any:
    """The tree of a file that belongs there, more or less."""
    keys = GROUPS[address]
    if dice.random() < 0.2:
        return a_tree(dice)
    if address == "house/tins":
        return {"tins": [a_group(dice, keys) for _ in range(dice.randrange(4))]}
    if address == "house/ingredients":
        names = ["butter", "egg", "caster sugar", "self-raising flour", "x", "Egg"][: dice.randrange(7)]
        return {"ingredients": {name: a_group(dice, keys) for name in names}}
    return a_group(dice, keys)


@many(700)
@given(st.sampled_from(ADDRESSES), TEXTS, st.booleans())
def test_any_text(bench: Scratch, files: dict[str, bytes], address: str, raw: bytes, kitchen: bool) -> None:
    book = {**files, address: raw}
    loaded = bench.load(book, kitchen)
    if kitchen:
        answered(loaded, book, whole=False)


@many(1300)
@given(SEEDS)
def test_any_tree(bench: Scratch, files: dict[str, bytes], seed: int) -> None:
    dice = Random(seed)
    address, flow, kitchen = dice.choice(ADDRESSES), dice.choice([True, False, None]), dice.random() < 0.8
    tree = a_file(dice, address)
    raw = yaml.dump(tree, Dumper=yaml.CSafeDumper, allow_unicode=True, default_flow_style=flow, sort_keys=False)
    book = {**files, address: raw.encode()}
    loaded = bench.load(book, kitchen)
    if kitchen:
        answered(loaded, book)


PIECES = re.compile(r"[^\W\d_]+|\d+|\s+|.", re.DOTALL)
DEMO_FILES = {str(path.relative_to(DEMO).with_suffix("")): path.read_bytes() for path in sorted(DEMO.rglob("*.yaml"))}
# The house, and one page of each kind: a slip in a card is met by a mixture.
KEPT = {"house/house", "house/tins", "house/ingredients", "mixtures/creamed-butter-sponge", "techniques/line-a-tin"}


def spoilt(text: str, dice: Random) -> str:
    """The text with a few pieces deleted, doubled, swapped, or put in from elsewhere."""
    pieces = PIECES.findall(text)
    for _ in range(dice.randrange(1, 5)):
        change, at, there = dice.randrange(5), dice.randrange(len(pieces)), dice.randrange(len(pieces))
        if change == 0:
            del pieces[at : at + dice.randrange(1, 4)]
        elif change == 1:
            pieces[at:at] = pieces[at : at + dice.randrange(1, 13)]
        elif change == 2:
            pieces[at], pieces[there] = pieces[there], pieces[at]
        elif change == 3:
            pieces[at] = pieces[there]
        else:
            pieces.insert(at, dice.choice([*SIGNS, "0", "999999", "-", ",", ".", " "]))
    return "".join(pieces)


@many(100)
@given(SEEDS)
def test_the_demo_with_slips(bench: Scratch, seed: int) -> None:
    dice = Random(seed)
    address = dice.choice(list(DEMO_FILES))
    book = {name: raw for name, raw in DEMO_FILES.items() if name in KEPT or name == address}
    book[address] = spoilt(DEMO_FILES[address].decode(), dice).encode()
    answered(bench.load(book), book, whole=False)
    bench.load(book, kitchen=False)
