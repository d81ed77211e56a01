"""Coats and pastes for every tin, coats against published charts of amounts by cake.

Sources, each named in the head of its table in tests/data: ganache_uk.csv (fills a cake with one layer of filling and
coats it), batter_us_3in_deep.csv (cakes in 3 in deep pans: icing to fill, cover and edge a cake of two layers). The charts name inches, so the cakes here are exact inches.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from scipy.optimize import linprog, minimize_scalar

from tinbook.engine import coats
from tinbook.facts import Facts
from tinbook.models import Book, Finish
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.coating import coat_row, roles_of
from tinbook.plans.finish.covering import coat_table, covers, fills, paste_table, weighed_out
from tinbook.tins import Tin

INCH = 25.4
US_CUP_ML = 236.588
Row = dict[str, str]
Table = Callable[[str], list[Row]]
Batched = Callable[..., Batch]


def cake(row: Row, height_mm: float, layers: int = 2) -> Cake:
    return Cake(Tin(shape=row["shape"], sizes_mm=(float(row["size_in"]) * INCH,)), height_mm, layers)


def errors(said: Sequence[float], published: Sequence[float]) -> np.ndarray:
    return np.array(said) / np.array(published) - 1.0


# Ganache


def ganache_ml(row: Row, thickness_mm: float) -> float:
    """One filling and a coat, both as thick; the chart's cakes stand about 10 cm high."""
    made = cake(row, 100.0)
    return coats.filling_ml(made.outline.area_mm2, thickness_mm, 2) + made.shell_ml(0.0, thickness_mm)


@pytest.mark.parametrize(("fitted", "scored"), [("round", "square"), ("square", "round")])
@pytest.mark.parametrize("chocolate", ["dark", "white"])
def test_ganache_by_a_chart(table: Table, facts: Facts, chocolate: str, fitted: str, scored: str) -> None:
    density = facts.kinds["ganache"].gravity.typical

    def published(row: Row) -> float:
        return float(row[f"{chocolate}_choc_g"]) + float(row[f"{chocolate}_cream_ml"])

    def off(thickness: float, shape: str) -> np.ndarray:
        rows = [row for row in table("ganache_uk") if row["shape"] == shape]
        return errors([ganache_ml(row, thickness) * density for row in rows], list(map(published, rows)))

    best = minimize_scalar(lambda t: np.abs(off(t, fitted)).max(), bounds=(2.0, 9.0), method="bounded").x
    print(chocolate, fitted, round(best, 2), "mm;", scored, off(best, scored).round(3))
    assert np.abs(off(best, scored)).max() <= 0.08
    # what the book takes for a filling is what the chart comes to
    assert facts.numbers["filling"].low <= best <= facts.numbers["filling"].high


@pytest.mark.parametrize("chocolate", ["dark", "white"])
def test_ganache_as_the_book_has_it_meets_the_chart(table: Table, facts: Facts, batch: Batched, chocolate: str) -> None:
    """How much ganache do I need, bakewithsarah.com/?p=2322: nothing fitted, the book's own figures as they stand."""
    ganache = batch(kind="ganache", tins=None, makes="900 g", bake=None, mix=["600 g butter", "300 g caster sugar"])
    off = []
    for row in table("ganache_uk"):
        asked = coat_row(
            ganache,
            cake(row, 100.0),
            True,
            finishing(Finish(), facts),
            facts,
            roles=roles_of(ganache, finishing(Finish(), facts)),
        )
        published = float(row[f"{chocolate}_choc_g"]) + float(row[f"{chocolate}_cream_ml"])
        off.append(asked.made_g / published - 1.0)
        print(chocolate, row["shape"], row["size_in"], f"{asked.made_g:.0f} g for {published:.0f} g, {off[-1]:+.1%}")
    assert max(map(abs, off)) <= 0.08


def test_icing_as_the_book_has_it_meets_the_chart(table: Table, facts: Facts, batch: Batched) -> None:
    """Wedding cake data chart for 3 in deep pans, rounds and squares: one filling, coats and borders, in US cups. What
    stays in the bag is read off this chart's smallest and largest cakes; filling and coats are not."""
    mix = ["300 g butter", "600 g caster sugar"]
    icing = batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=mix)
    off = []
    for row in table("batter_us_3in_deep"):
        if row["shape"] not in ("round", "square"):
            continue
        asked = coat_row(
            icing,
            cake(row, 3 * INCH),
            True,
            finishing(Finish(), facts),
            facts,
            roles=roles_of(icing, finishing(Finish(), facts)),
        )
        made_ml = asked.made_g / icing.kind.gravity.typical
        off.append(made_ml / (float(row["icing_us_cups"]) * US_CUP_ML) - 1.0)
        print(row["shape"], row["size_in"], f"{made_ml:.0f} ml for {row['icing_us_cups']} cups, {off[-1]:+.1%}")
    assert max(map(abs, off)) <= 0.12


# Icing: filling, coats and borders


def icing_parts(row: Row) -> np.ndarray:
    """What grows with the top (filling and top coat), with the side (its coat), and what does not grow with the cake."""
    made = cake(row, 3.0 * INCH)
    outline = made.outline
    return np.array([outline.area_mm2 / 1000.0, outline.edge_mm * 3.0 * INCH / 1000.0, 1.0])


@pytest.mark.parametrize(("fitted", "scored"), [("round", "square"), ("square", "round")])
def test_icing_by_a_chart(table: Table, fitted: str, scored: str) -> None:
    """Millimetres on the top and on the side, and a share for the bowl: fitted on one shape, scored on the other."""
    rows = [row for row in table("batter_us_3in_deep") if row["shape"] in (fitted, scored)]

    def parts(shape: str) -> tuple[np.ndarray, np.ndarray]:
        chosen = [row for row in rows if row["shape"] == shape]
        published = np.array([float(row["icing_us_cups"]) * US_CUP_ML for row in chosen])
        return np.array([icing_parts(row) for row in chosen]), published

    known, cups = parts(fitted)
    share = known / cups[:, None]
    ones = np.ones((len(cups), 1))
    fit = linprog(
        [0.0, 0.0, 0.0, 1.0],
        A_ub=np.vstack([np.hstack([share, -ones]), np.hstack([-share, -ones])]),
        b_ub=np.concatenate([np.ones(len(cups)), -np.ones(len(cups))]),
    )
    asked, published = parts(scored)
    off = asked @ fit.x[:3] / published - 1.0
    print(fitted, "top, side mm, rest ml:", fit.x[:3].round(1), scored, off.round(3))
    assert np.abs(off).max() <= 0.12
    # a coat of 4 to 7 mm on the side, and twice about that for filling and top: what the book works with
    assert 4.0 <= fit.x[1] <= 7.0
    assert 8.0 <= fit.x[0] <= 12.0


# The tables


@pytest.fixture
def icing(batch: Callable[..., Batch]) -> Batch:
    return batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=["300 g butter", "600 g caster sugar"])


@pytest.fixture
def paste(batch: Callable[..., Batch]) -> Batch:
    return batch(kind="sugarpaste", tins=None, makes="1 kg", bake=None, mix=["1 kg sugarpaste"])


def test_every_row_adds_up(icing: Batch, kitchen: Book, facts: Facts) -> None:
    made = coat_table(icing, kitchen, facts)
    assert len(made.rows) > 30
    for row in made.rows:
        on_the_cake = row.filling_g + row.crumb_g + row.final_g + row.border_g
        assert on_the_cake == pytest.approx((row.made_g - row.bag_g) * (1 - made.finishing["stays_in_the_bowl"]))
        assert row.bag_g == pytest.approx(240 * icing.kind.gravity.typical)
        assert row.batches * icing.makes_g == pytest.approx(row.made_g + row.over_g)
        assert 0 <= row.over_g < icing.makes_g
        assert row.made_shown_g >= row.made_g


def test_what_is_made_is_weighed_out_by_its_lines(icing: Batch, kitchen: Book, facts: Facts) -> None:
    table = coat_table(icing, kitchen, facts)
    for row, version in zip(table.rows, weighed_out(table, facts), strict=True):
        butter, sugar = version.amounts
        assert butter.exact == pytest.approx(row.made_g / 3) and sugar.exact == pytest.approx(row.made_g * 2 / 3)
        assert (butter.unit, sugar.unit) == ("g", "g")


def test_higher_cakes_and_thicker_coats_take_more(icing: Batch, kitchen: Book, facts: Facts) -> None:
    usual = coat_table(icing, kitchen, facts)
    higher = coat_table(icing, kitchen, facts, 150.0)
    thicker = coat_table(icing, with_finish(kitchen, final_coat=8.0), facts)
    by_cake = {row.cake.tin: row.made_g for row in usual.rows}
    for row in (*higher.rows, *thicker.rows):
        more = row.made_g - by_cake[row.cake.tin]
        assert more > 0 if row.cake.solid == "upright" or row in thicker.rows else more == pytest.approx(0)


def with_finish(book: Book, **figures: Any) -> Book:
    return replace(book, finish=Finish.model_construct(**{**Finish().model_dump(), **figures}))


def test_paste_on_the_cake_lies_in_the_trades_range(paste: Batch, kitchen: Book, facts: Facts) -> None:
    for row in paste_table(paste, kitchen, facts).rows:
        assert row.net_low_g <= row.net_g <= row.net_high_g
        assert row.made_g >= row.net_g
        assert row.back_g == pytest.approx(row.made_g - row.net_g)


def test_whose_range_it_is_is_said_of_each_paste(paste: Batch, batch: Batched, kitchen: Book, facts: Facts) -> None:
    def told(kind: str) -> list[str]:
        made = batch(kind=kind, tins=None, makes="1 kg", bake=None, mix=["1 kg sugarpaste"])
        return [each for each in inputs_of(paste_table(made, kitchen, facts).worked) if "the range" in each]

    every = "the range: three publishers' charts work out at 4.6 to 9.3 mm of sugarpaste, middle figure 6.4 mm"
    assert len(told("sugarpaste")) == 1 and told("sugarpaste")[0].startswith(every)
    assert told("marzipan")[1].endswith(
        "one chart for marzipan works out at 5.2 to 9.3 mm, with a middle figure of 8.2 mm"
    )
    assert told("chocolate paste")[1].endswith("we know of no published chart for chocolate paste")
    assert {"sugarpaste chart", "sugarpaste guide", "covering tips"} <= set(
        paste_table(paste, kitchen, facts).worked.sources
    )


def test_what_fills_does_not_cover(icing: Batch, paste: Batch, batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:  # fmt: skip
    assert (fills(icing), covers(icing)) == (True, False)
    assert (fills(paste), covers(paste)) == (False, True)
    with pytest.raises(AskError, match="does not cover"):
        paste_table(icing, kitchen, facts)
    with pytest.raises(AskError, match="neither fills nor coats"):
        coat_table(batch(), kitchen, facts)
