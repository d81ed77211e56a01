"""The register of tables: each answers for the demo in plain cells whose keys say their unit, and the sums agree."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, read_take
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base import scaling
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch, weigh, weigh_all
from tinbook.plans.finish.covering import covers, fills
from tinbook.plans.mixtures.safety import allergens
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
        if table.what == "technique":
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
        assert result.title and result.worked.formula
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


def test_tins_agree_with_the_plan(demo: Loaded, told: list[tuple[str, Result]]) -> None:
    batches = {batch.mixture.name: batch for batch in weigh_all(demo.book, demo.facts).values()}
    checked = 0
    for name, result in told:
        if name != "tins":
            continue
        batch = batches[result.title.removesuffix(", every tin")]
        table = scaling.tin_table(batch, demo.book, demo.facts)
        for row, planned in zip(result.rows, table.rows, strict=True):
            assert row["tin"] == planned.tin.name
            assert row["factor"] == pytest.approx(planned.whole.factor, abs=1e-6)
            assert row["mixture_g"] == pytest.approx(planned.whole.mass_g, abs=0.001)
            assert float(row["each_tin_g"] or 0) * int(row["fill_tins"] or 0) == pytest.approx(
                planned.whole.mass_g, abs=0.01 * int(row["fill_tins"] or 0)
            )
            shown = [cell for key, cell in row.items() if _is_shown(key)]
            assert shown == [got.shown for got in planned.whole.amounts]
            checked += 1
    assert checked > 100


def _is_shown(key: str) -> bool:
    own = {"each_tin_g", "mixture_g"}
    return key.endswith(("_g", "_ml", "_tsp", "_tbsp", "_pieces")) and not key.endswith("_exact_g") and key not in own


def test_scaled_tells_both_versions(demo: Loaded) -> None:
    rows = ask(demo, "scaled", of="creamed-butter-sponge", plus=0.3).rows
    assert [row["version"] for row in rows] == ["exact", "whole eggs"]
    # A third and more of 4 eggs: 5.2, so 5 of them, 3.8 % less.
    assert (rows[0]["factor"], rows[1]["factor"]) == (1.3, 1.25)
    assert rows[1]["off_percent"] == pytest.approx(100 * (1.25 / 1.3 - 1), abs=1e-4)
    assert rows[1]["egg_pieces"] == 5.0
    assert [row["butter_g"] for row in rows] == [440.0, 425.0]


def test_a_mixture_without_eggs_has_one_version(demo: Loaded) -> None:
    rows = ask(demo, "scaled", of="american-buttercream", weight_g=1580.0).rows
    assert [row["version"] for row in rows] == ["exact"]


def test_what_is_left_is_used_up(demo: Loaded) -> None:
    (exact, _) = ask(
        demo, "scaled", of="creamed-butter-sponge", left=read_take("510 g butter", demo.book.house.spoons)
    ).rows
    assert exact["butter_exact_g"] == 510.0
    assert exact["factor"] == 1.5


def test_fits_share_the_mixture(demo: Loaded) -> None:
    targets = (TIN, (1, read_tin("square 15 cm x 7.5 cm")[1]), (12, read_tin("standard cups")[1]))
    rows = ask(demo, "fits", of="creamed-butter-sponge", tins=targets).rows
    (exact, whole) = ask(demo, "scaled", of="creamed-butter-sponge", tins=targets).rows
    shared = sum(float(row["each_tin_g"] or 0) * int(row["fill_tins"] or 0) for row in rows)
    assert shared == pytest.approx(float(whole["mixture_g"] or 0), abs=0.1)
    assert [row["count"] for row in rows] == [2, 1, 12]
    assert exact["version"] == "exact"


def test_the_written_mixture_adds_up(demo: Loaded) -> None:
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        rows = ask(demo, "written", of=slug).rows
        assert [row["ingredient"] for row in rows] == [line.name for line in batch.ingredients]
        assert exact_g(row_sum(rows)) == pytest.approx(batch.mass_g, abs=0.001)
        for row in rows:
            assert float(row["shown_oz"] or 0) * 28.349523 == pytest.approx(
                float(row["exact_g"] or 0), rel=0.6, abs=3.6
            )


def row_sum(rows: tuple[Row, ...]) -> Row:
    return {f"line_{number}_exact_g": row["exact_g"] for number, row in enumerate(rows)}


def test_two_lines_of_one_name_keep_apart(
    batch: Callable[..., Batch], kitchen: Book, facts: Facts, mixture: Callable[..., Any]
) -> None:
    """Else the second would hide the first, and the sum of the cells would be short of the mixture."""
    from dataclasses import replace

    twice = mixture(mix=["100 g butter", "50 g butter", {"take": "7 g butter", "part": "top"}, "3 g butter", "4 eggs"])
    book = replace(kitchen, mixtures={"twice": twice})
    (row, _) = TABLES["scaled"].rows(book, facts, Query(of="twice", batches=2)).rows
    assert exact_g(row) == pytest.approx(2 * weigh("twice", twice, kitchen, facts).mass_g, abs=0.001)
    assert sorted(float(cell or 0) for key, cell in row.items() if "butter" in key and key.endswith("_exact_g")) == [
        6.0, 14.0, 100.0, 200.0,
    ]  # fmt: skip


def test_unknown_allergens_are_rows_too(demo: Loaded) -> None:
    unknown = 0
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        strip = allergens(batch, demo.book, demo.facts)
        rows = ask(demo, "allergens", of=slug).rows
        assert [row["from"] for row in rows if row["allergen"] == "unknown"] == list(strip.unknown)
        assert [row["allergen"] for row in rows if row["allergen"] != "unknown"] == [
            one.allergen for one in strip.contains
        ]
        unknown += len(strip.unknown)
    assert unknown, "the demo has an ingredient nobody has read the pack of"


def test_factors_from_every_tin_or_from_one(demo: Loaded) -> None:
    every = ask(demo, "factors").rows
    one = ask(demo, "factors", tins=(TIN,)).rows
    assert len(every) == len(one) ** 2
    by_pair = {(row["from"], row["to"]): float(row["factor"] or 0) for row in every}
    for (there, here), factor in by_pair.items():
        assert factor * by_pair[here, there] == pytest.approx(1.0, rel=5e-4)  # six decimals
    assert by_pair["round 20 cm", "round 40 cm"] == pytest.approx(4.0)
    for row in one:
        assert row["factor"] == pytest.approx(by_pair["round 20 cm", str(row["to"])], abs=1e-6)


def test_a_measured_tin_is_measured_in_every_table(demo: Loaded) -> None:
    """The house owns a 23 cm tin that it has filled with water."""
    (own,) = [each for each in demo.book.tins if each.measured and each.tin.shape == "round"]
    asked = ask(demo, "factors", tins=((1, own.tin),)).rows
    every = [row for row in ask(demo, "factors").rows if row["from"] == own.tin.name]
    assert [row["factor"] for row in asked] == [row["factor"] for row in every]
    (row,) = [row for row in ask(demo, "sizes").rows if row["tin"] == own.tin.name]
    assert (row["brim_ml"], row["measured"], row["owned"]) == (own.measured, True, True)


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
    with pytest.raises(AskError, match=f"one {TABLES[name].what}"):
        ask(demo, name)
