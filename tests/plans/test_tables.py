"""The register of tables: each answers for the demo in plain cells whose keys say their unit, and the sums agree."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from datetime import date
from typing import Any

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import formula_of, inputs_of, spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.covering import covers, fills
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin

UNITS = (
    "_g", "_ml", "_mm", "_cm2", "_oz", "_c", "_f", "_in", "_tsp", "_tbsp", "_cups", "_pieces", "_percent", "_min", "_share",
    "_count", "_portions", "_per_100", "_factor", "_money",
)  # fmt: skip
"""What a key of a number ends in: its unit, or what is counted."""
NUMBERS = {
    # how many of what
    "count", "count_low", "count_high", "fill_tins", "tins", "bakes", "mixes", "batches", "recipes", "layers", "cut_into",
    "pieces", "eggs", "at_once", "guests", "serves", "over", "supports", "by_area", "cut_by_the_edge", "dowels",
    "published_low", "published_high",
    # how many times, and what has no unit by its nature
    "factor", "rise", "gas_mark", "per_100", "asked", "left",
}  # fmt: skip
WORDS = {
    "tin", "tin_by_inches", "from", "to", "version", "ingredient", "allergen", "measure", "egg_class", "remark", "kind",
    "source", "name", "swap", "instead", "part", "nearest_owned", "mixture", "rule", "stands", "counts_as", "baked_before",
    "verdict", "day", "note", "cake", "letter", "shape", "paste", "colour", "on", "cutter_owned", "warning", "pot",
    "shade", "marks", "set", "finger_cut", "dessert_cut", "tea_slice_cut", "asked_cut", "tiers", "beside", "rolled", "held_by", "keeps", "least", "stands_on", "above",
    "what", "factor_by", "tier", "group", "for",
    # an answer for each allergen
    "product", "unknown", "allergens", "wheat", "egg", "soya", "milk", "almond", "hazelnut", "walnut", "sulphites",
}  # fmt: skip
YES_OR_NO = {
    "round", "owned", "as_written", "near", "beaten_egg", "measured", "of_the_house", "kept", "leave_out", "small_hard",
    "by_the_house", "fewer_have_room", "held_by_conduction",
}  # fmt: skip
A_NUMBER = re.compile(r"[-+~]?[\d¼½¾⅓⅔⅛.,\s/]+([–x×-]\s*[\d¼½¾⅓⅔⅛.,\s/]+)*\s*(mm|cm|in|g|kg|ml|oz|°C|°F|%|min|h)?")
"""Figures written as text."""
ONLY: dict[str, Callable[[Batch], bool]] = {
    "tins": lambda batch: bool(batch.tins), "fits": lambda batch: bool(batch.tins),
    "times": lambda batch: bool(batch.tins), "loads": lambda batch: bool(batch.tins),
    "layers": lambda batch: bool(batch.tins), "coats": fills, "covers": covers,
}  # fmt: skip
"""Tables that are of some mixtures only."""
OTHERWISE: tuple[tuple[str, dict[str, Any]], ...] = (
    *((name, {"of": "estuary-wedding-cake", "size": "+1"}) for name in ("cake", "used", "price")),
    ("price", {"of": "lighthouse-cake", "guests": 30}),
    ("price", {"of": "madeira-cake"}),
    ("cake", {"of": "estuary-wedding-cake", "guests": 20, "keep_top": True, "portion": "tea slice"}),
    ("layers", {"of": "madeira-cake", "tins": ((1, read_tin("round 20 cm")[1]),), "layers": 4, "layer_mm": 28.0}),
    ("portions", {"of": "madeira-cake"}),
    ("portions", {"portion": (30.0, 40.0)}),
    ("guests", {"of": "madeira-cake", "guests": 60, "beside": "cupcakes"}),
    ("bakes", {"of": "madeira-cake"}),
    *((name, {"tins": ((1, read_tin("round 20 cm x 7.5 cm")[1]),)}) for name in ("sizes", "factors", "dowels")),
    *(("scaled", {"of": "madeira-cake", **way}) for way in ({"plus": 0.25}, {"batches": 2.0}, {"weight_g": 900.0})),
    *((name, {"of": "madeira-cake", "tins": ((2, read_tin("round 20 cm")[1]),)}) for name in ("times", "loads")),
)
"""Questions that are answered in other rows, or worked out another way."""
TIN = (2, read_tin("round 20 cm x 7.5 cm")[1])


def ask(demo: Loaded, name: str, **asked: Any) -> Result:
    return TABLES[name].rows(demo.book, demo.facts, Query(**asked))


def answers(demo: Loaded) -> Iterator[tuple[str, Result]]:
    """Every table of the register, for every mixture it can be asked of."""
    for name, table in TABLES.items():
        if table.of == "technique":
            for slug, technique in demo.book.techniques.items():
                if technique.parts or technique.repeats:
                    yield name, ask(demo, name, of=slug)
            continue
        if table.of == "cake":
            yield from ((name, ask(demo, name, of=slug)) for slug in demo.book.cakes)
            continue
        if table.of == "product":
            yield from ((name, ask(demo, name, of=slug)) for slug in (*demo.book.mixtures, *demo.book.cakes))
            continue
        for slug in sorted(demo.book.mixtures) if table.of else [None]:
            if slug and name in ONLY and not ONLY[name](weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts)):
                continue
            if name == "balance" and slug and not has_rule(demo, slug):
                continue
            yield name, ask(demo, name, of=slug, tins=(TIN,) if name == "fits" else ())
    for name, asked in OTHERWISE:
        yield name, ask(demo, name, **asked)


def has_rule(demo: Loaded, slug: str) -> bool:
    return any(demo.book.mixtures[slug].kind in rule.kinds for rule in demo.facts.balance.values())


@pytest.fixture(scope="module")
def told(demo: Loaded) -> list[tuple[str, Result]]:
    return list(answers(demo))


def test_every_table_answers(told: list[tuple[str, Result]]) -> None:
    assert {name for name, _ in told} == set(TABLES)
    for name, result in told:
        assert spell(result.title) and formula_of(result.worked)
        assert result.rows or name in ("allergens", "marks"), name


def test_every_key_says_its_unit_and_holds_what_it_says(told: list[tuple[str, Result]]) -> None:
    """Numbers under a key that ends in a unit or counts something; words under a key of words, and never figures."""
    for name, result in told:
        for row in result.rows:
            for key, cell in row.items():
                assert re.fullmatch("[a-z][a-z0-9_]*", key) or key.endswith(UNITS), (name, key)
                if isinstance(cell, bool):
                    assert key in YES_OR_NO, (name, key, cell)
                elif isinstance(cell, int | float):
                    assert key in NUMBERS or key.endswith(UNITS), (name, key, cell)
                elif cell is not None:
                    assert key in WORDS, (name, key, cell)
                    said = spell(cell)
                    assert key == "day" or not A_NUMBER.fullmatch(said), (name, key, said)
                    assert key != "day" or date.fromisoformat(said)
                else:
                    assert key in NUMBERS | WORDS or key.endswith(UNITS), (name, key)


def test_figures_that_are_text_are_known() -> None:
    """What the law above looks for."""
    for text in ("20-25", "1 1/2", "160–170", "254 x 254 mm", "½", "20", "75 x 48", "4 in", "12 %"):
        assert A_NUMBER.fullmatch(text), text
    for text in ("round 20 cm", "2 round 15 cm", "strips 3+3", "none", "number 4", "disc"):
        assert not A_NUMBER.fullmatch(text), text


def test_cells_are_plain_and_survive_json(told: list[tuple[str, Result]]) -> None:
    for name, result in told:
        rows = [
            {key: spell(cell) if isinstance(cell, Saying) else cell for key, cell in row.items()} for row in result.rows
        ]
        assert json.loads(json.dumps(rows, allow_nan=False)) == rows, name
        for row in rows:
            assert all(isinstance(cell, str | int | float | bool | None) for cell in row.values()), name


def test_every_answer_names_its_formula_its_inputs_and_its_sources(
    demo: Loaded, told: list[tuple[str, Result]]
) -> None:
    for name, result in told:
        worked = result.worked
        assert formula_of(worked).strip(), name
        assert worked.inputs and all(line.strip() for line in inputs_of(worked)), name
        assert worked.sources and len(set(worked.sources)) == len(worked.sources), name
        assert set(worked.sources) <= set(demo.facts.sources), name


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


@every(
    ("name", "asked", "message", "cure"),
    [
        ("tins", {}, "needs a mixture", "--of"),
        ("written", {"of": "creamed-buter-sponge"}, "no mixture", '"creamed-butter-sponge"'),
        ("written", {"of": "zzz"}, "no mixture", "creamed-butter-sponge"),
        ("tins", {"of": "dark-ganache"}, "by weight", "scaled"),
        ("fits", {"of": "creamed-butter-sponge"}, "needs a tin", "--tin"),
        ("fits", {"of": "dark-ganache", "tins": (TIN,)}, "by weight", "weight"),
        ("scaled", {"of": "dark-ganache", "eggs": 3.0}, "no whole eggs", "weight"),
    ],
)
def test_a_question_that_does_not_fit(demo: Loaded, name: str, asked: Any, message: str, cure: str) -> None:
    with pytest.raises(AskError, match=message) as told:
        ask(demo, name, **asked)
    assert cure in told.value.hint


@every("name", [name for name, table in TABLES.items() if table.of])
def test_a_table_of_one_thing_says_so(demo: Loaded, name: str) -> None:
    with pytest.raises(AskError, match=f"needs a {TABLES[name].of}"):
        ask(demo, name)
