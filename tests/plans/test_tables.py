"""The register of tables: each answers for the demo in plain cells whose keys say their unit, and the sums agree."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import formula_of, spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.covering import covers, fills
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin

UNITS = ("_g", "_ml", "_mm", "_cm", "_cm2", "_in", "_oz", "_c", "_f", "_tsp", "_tbsp", "_pieces", "_percent", "_min")
PLAIN = {
    # names and words
    "tin", "tin_in", "from", "to", "version", "ingredient", "allergen", "measure", "egg_class", "gas_mark", "remark",
    "spoon", "kind", "source", "name", "swap", "instead", "part", "unit", "part_unit", "nearest_owned", "mixture", "rule", "stands", "counts_as",
    # printed figures or ranges, as text
    "conventional_c", "fan_c",
    # counts and ratios
    "count", "fill_tins", "bakes", "mixes", "factor", "exact_factor", "nearest_factor", "pieces", "spoons",
    "per_100", "low", "high", "eggs", "fluid_ounces", "amount", "exact", "shown", "asked", "left", "factor_shown",
    "count_low", "count_high",
    "tins", "layers", "cut_into", "recipes", "batches", "whole_egg_factor",
    # bakes
    "baked_before", "verdict", "day", "note", "at_once", "rise", "loss",
    # parts of a technique
    "cake", "letter", "shape", "paste", "colour", "on", "cutter_wanted", "cutter_owned", "supports", "small_hard",
    "warning", "pot", "shade", "marks", "set", "by_area", "cut_by_the_edge",
    # portions: counts, plans, the mean piece in portions; sets for guests
    "finger", "dessert", "party", "finger_cut", "dessert_cut", "party_cut", "finger_each", "dessert_each", "party_each",
    "finger_in_rings", "dessert_in_rings", "party_in_rings", "guests", "tiers", "beside", "serves", "over",
    # boards, with their sizes
    "least", "usual", "wide", "taken", "box", "rolled",
    # yes or no
    "round",
    "owned", "as_written", "near", "beaten_egg", "measured", "of_the_house", "kept", "leave_out",
    # fluid ounces carry whose
    "us_fl_oz", "uk_fl_oz", "us_fl_oz_shown", "uk_fl_oz_shown",
}  # fmt: skip
ONLY: dict[str, Callable[[Batch], bool]] = {
    "tins": lambda batch: bool(batch.tins), "fits": lambda batch: bool(batch.tins),
    "times": lambda batch: bool(batch.tins), "loads": lambda batch: bool(batch.tins),
    "layers": lambda batch: bool(batch.tins), "coats": fills, "covers": covers,
}  # fmt: skip
"""Tables that are of some mixtures only."""
TIN = (2, read_tin("round 20 cm x 7.5 cm")[1])


def ask(demo: Loaded, name: str, **asked: Any) -> Result:
    return TABLES[name].rows(demo.book, demo.facts, Query(**asked))


def answers(demo: Loaded) -> Iterator[tuple[str, Result]]:
    """Every table of the register, for every mixture it can be asked of."""
    for name, table in TABLES.items():
        if table.of == "technique":
            yield name, ask(demo, name, of="boat-on-the-shingle")
            continue
        for slug in sorted(demo.book.mixtures) if table.of else [None]:
            if slug and name in ONLY and not ONLY[name](weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts)):
                continue
            if name == "balance" and slug and not has_rule(demo, slug):
                continue
            yield name, ask(demo, name, of=slug, tins=(TIN,) if name == "fits" else ())


def has_rule(demo: Loaded, slug: str) -> bool:
    return any(demo.book.mixtures[slug].kind in rule.kinds for rule in demo.facts.balance.values())


@pytest.fixture(scope="module")
def told(demo: Loaded) -> list[tuple[str, Result]]:
    return list(answers(demo))


def test_every_table_answers(told: list[tuple[str, Result]]) -> None:
    assert {name for name, _ in told} == set(TABLES)
    for name, result in told:
        assert spell(result.title) and formula_of(result.worked)
        assert result.rows or name == "allergens", name


def test_every_key_says_its_unit_or_is_a_known_word(told: list[tuple[str, Result]]) -> None:
    for name, result in told:
        for row in result.rows:
            for key, cell in row.items():
                assert key == key.lower().strip("_") or "_exact_g" in key or key.endswith(UNITS), (name, key)
                assert key in PLAIN or key.endswith(UNITS), (name, key)
                if isinstance(cell, float):
                    assert key not in {"tin", "from", "to", "remark"}, (name, key)


def test_cells_are_plain_and_survive_json(told: list[tuple[str, Result]]) -> None:
    for name, result in told:
        rows = [
            {key: spell(cell) if isinstance(cell, Saying) else cell for key, cell in row.items()} for row in result.rows
        ]
        assert json.loads(json.dumps(rows, allow_nan=False)) == rows, name
        for row in rows:
            assert all(isinstance(cell, str | int | float | bool | None) for cell in row.values()), name


def test_every_source_can_be_looked_up(demo: Loaded, told: list[tuple[str, Result]]) -> None:
    for name, result in told:
        assert set(result.worked.sources) <= set(demo.facts.sources), name


def exact_g(row: Row) -> float:
    return sum(float(cell) for key, cell in row.items() if key.endswith("_exact_g") and cell is not None)


def test_lines_add_up_to_the_mixture(told: list[tuple[str, Result]]) -> None:
    summed = 0
    for name, result in told:
        if name in ("tins", "scaled"):
            for row in result.rows:
                assert exact_g(row) == pytest.approx(float(row["mixture_g"] or 0), abs=0.002), (name, row)
                summed += 1
    assert summed > 200


@pytest.mark.parametrize(
    ("name", "asked", "message", "cure"),
    [
        ("tins", {}, "one mixture", "--of"),
        ("written", {"of": "creamed-buter-sponge"}, "no mixture", '"creamed-butter-sponge"'),
        ("written", {"of": "zzz"}, "no mixture", "creamed-butter-sponge"),
        ("tins", {"of": "dark-ganache"}, "by weight", "scaled"),
        ("fits", {"of": "creamed-butter-sponge"}, "of tins", "--tin"),
        ("fits", {"of": "dark-ganache", "tins": (TIN,)}, "by weight", "weight"),
        ("scaled", {"of": "dark-ganache", "eggs": 3.0}, "no whole eggs", "weight"),
    ],
)
def test_a_question_that_does_not_fit(demo: Loaded, name: str, asked: Any, message: str, cure: str) -> None:
    with pytest.raises(AskError, match=message) as told:
        ask(demo, name, **asked)
    assert cure in told.value.hint


@pytest.mark.parametrize("name", [name for name, table in TABLES.items() if table.of])
def test_a_table_of_one_thing_says_so(demo: Loaded, name: str) -> None:
    with pytest.raises(AskError, match=f"one {TABLES[name].of}"):
        ask(demo, name)
