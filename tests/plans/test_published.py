"""One column of a published recipe-by-tin table predicts the others.

Sources, in tests/data: sponge, the table of sponge ingredients by tin at afternoontea4two.com, 20 July 2013
(recipe_sponge_by_tin.csv); mud, "Chocolate mud cake" at the-wedding-information-site.com/chocolate-mud-cake.html
(recipe_mud_by_tin.csv, rounds).

Each 8 in row is written as a mixture of ours in a round tin 4 in deep, so that it fits, and scaled to the other
rounds: batter depth constant, the exact factor, before eggs are made whole. Compared are total weights. Eggs are
UK medium, 58 g in the shell, in both: they match the sponge's 200 g each to 4 eggs, and are nearest to the Australian
egg of 55 to 60 g that the mud cake's readers have (from memory); spoons and ml go by the densities of the facts.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, House
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import Batch
from tinbook.tins import Tin, read_tin
from tinbook.units import Sold

MEAN, WORST = 0.09, 0.15
LINES = {
    "self_raising_flour_g": "g self-raising flour",
    "plain_flour_g": "g plain flour",
    "caster_sugar_g": "g caster sugar",
    "butter_g": "g butter",
    "dark_choc_g": "g dark chocolate",
    "cocoa_g": "g cocoa powder",
    "water_ml": "ml water",
    "buttermilk_ml": "ml buttermilk",
    "coffee_tsp": "tsp instant coffee",
    "bicarb_tsp": "tsp bicarbonate of soda",
    "oil_tsp": "tsp oil",
    "eggs_n": "eggs",
}
TABLES = {"recipe_sponge_by_tin": "creamed", "recipe_mud_by_tin": "mud"}
SIZES = {
    # As printed: the inch is exact, so that the rule is tested and nothing else.
    "printed inches": "round {inches:.1f} mm x 101.6 mm",
    # As a house reads them whose tins are sold in inches, and one whose tins are sold in centimetres: there 7 in is
    # 18 cm and 8 in 20 cm, which alone makes the 7 in tin 6 % larger beside the 8 in one.
    "sold in inches": "round {inch} in x 4 in",
    "sold in cm": "round {inch} in x 4 in",
}
SOLD_IN: dict[str, Sold] = {"printed inches": "cm", "sold in inches": "inches", "sold in cm": "cm"}


@dataclass(frozen=True)
class Predicted:
    inch: int
    published_g: float
    predicted_g: float

    @property
    def off(self) -> float:
        return self.predicted_g / self.published_g - 1


@pytest.fixture(scope="module")
def predict(
    batch: Callable[..., Batch], kitchen: Book, house: Callable[..., House], facts: Facts, table: Any
) -> Callable[[str, str], list[Predicted]]:
    books = {
        sizes: replace(kitchen, house=house(eggs="UK medium", tins_sold_in=SOLD_IN[sizes]), tins=()) for sizes in SIZES
    }

    def tin_text(inch: int, sizes: str) -> str:
        return SIZES[sizes].format(inch=inch, inches=inch * 25.4)

    def written(row: dict[str, str], kind: str, sizes: str) -> Batch:
        mix = [f"{row[column]} {words}" for column, words in LINES.items() if column in row]
        return batch(book=books[sizes], kind=kind, tins=tin_text(int(row["round_in"]), sizes), mix=mix)

    def predictions(name: str, sizes: str) -> list[Predicted]:
        rows = {int(row["round_in"]): row for row in table(name)}
        eight = written(rows[8], TABLES[name], sizes)
        assert eight.baked_mm < 101.6, "the 8 in cake must fit its tin"
        found = []
        for inch, row in rows.items():
            tin: Tin = read_tin(tin_text(inch, sizes), sold=SOLD_IN[sizes])[1]
            answer = scale(eight, books[sizes], facts, Query(tins=((1, tin),)))
            found.append(Predicted(inch, written(row, TABLES[name], sizes).mass_g, answer.exact.mass_g))
        return found

    return predictions


def report(name: str, sizes: str, rows: list[Predicted]) -> str:
    lines = [f"{name}, {sizes}"]
    lines += [f"{row.inch:2} in  {row.published_g:5.0f} g  {row.predicted_g:5.0f} g  {row.off:+.1%}" for row in rows]
    return "\n".join(lines)


@pytest.mark.parametrize("name", TABLES)
@pytest.mark.parametrize("sizes", SIZES)
def test_the_8_in_row_predicts_the_others(
    predict: Callable[[str, str], list[Predicted]], name: str, sizes: str, request: pytest.FixtureRequest
) -> None:
    if (name, sizes) == ("recipe_mud_by_tin", "sold in cm"):
        reason = "mean 11.4 %, worst 16.0 %: the trade's centimetres make the 7 in tin 6 % larger beside the 8 in one"
        request.applymarker(pytest.mark.xfail(reason=reason, raises=AssertionError, strict=True))
    rows = predict(name, sizes)
    print(report(name, sizes, rows))
    offs = [abs(row.off) for row in rows if row.inch != 8]
    told = report(name, sizes, rows)
    assert len(offs) == 3, told
    assert sum(offs) / len(offs) <= MEAN, told
    assert max(offs) <= WORST, told


def test_inches_err_no_more_than_centimetres(predict: Callable[[str, str], list[Predicted]]) -> None:
    """Both tables are printed in inches; a house whose tins are sold so reads them as they are meant.

    In centimetres the mud cake errs by 11.4 % (worst 16.0), the sponge by 6.7 % (10.4); in inches by 7.6 % (9.6) and
    7.7 % (10.4).
    """
    inches, cm, printed = (
        [abs(row.off) for name in TABLES for row in predict(name, sizes) if row.inch != 8]
        for sizes in ("sold in inches", "sold in cm", "printed inches")
    )
    assert sum(inches) < sum(cm) and max(inches) < max(cm)
    assert inches == pytest.approx(printed, abs=1e-3)


@every("name", TABLES)
@every("sizes", SIZES)
def test_the_8_in_row_predicts_itself(predict: Callable[[str, str], list[Predicted]], name: str, sizes: str) -> None:
    (itself,) = [row for row in predict(name, sizes) if row.inch == 8]
    assert itself.off == pytest.approx(0.0, abs=1e-4)


def test_the_weights_read_are_those_printed(predict: Callable[[str, str], list[Predicted]]) -> None:
    """By hand: 3 x 325 g and 6 eggs of 51.33 g; and the mud cake's row of twelve things."""
    sponge, mud = (predict(name, "printed inches") for name in TABLES)
    assert {row.inch: row.published_g for row in sponge}[8] == pytest.approx(3 * 325 + 6 * 58 * 0.885, abs=0.01)
    # Grams; water; 4 tsp coffee; 1/4 tsp soda; 3 eggs; 6 tsp oil at 0.9 g/ml; 95 ml buttermilk at 1.02 g/ml.
    by_hand = 190 + 190 + 110 + 110 + 40 + 420 + 140 + 4 + 1.2 + 3 * 51.33 + 27 + 97.6
    assert {row.inch: row.published_g for row in mud}[8] == pytest.approx(by_hand, abs=3)
