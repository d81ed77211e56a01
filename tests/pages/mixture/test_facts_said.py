"""What the bench says of the written tins before any script."""

from dataclasses import replace

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.facts_said import FactsSaid
from tinbook.pages.mixture.view import MixtureView
from tinbook.tins import read_tin

N = "\u00a0"


def facts(desk: Desk, slug: str) -> FactsSaid:
    return MixtureView(desk.batches[slug], desk).facts


def test_two_tins_as_written(desk: Desk) -> None:
    said = facts(desk, "creamed-butter-sponge")
    assert said == FactsSaid(
        "1.00 × recipe",
        f", same batter depth; eggs not rounded; use a tin at least 7.5{N}cm deep",
        f"620{N}g in each tin",
    )


def test_one_tin_weighs_all_of_it(desk: Desk) -> None:
    assert facts(desk, "madeira-cake").each.endswith("g in all")


def test_cups_go_by_the_brim_and_have_no_depth(desk: Desk) -> None:
    said = facts(desk, "cupcakes")
    assert said.remarks.startswith(", filled as full as in the recipe") and "deep" not in said.remarks
    assert said.each.endswith("in each case") and said.factor == "1.00 × recipe"


def test_what_is_made_by_weight_has_no_remark(desk: Desk) -> None:
    said = facts(desk, "dark-ganache")
    assert (said.factor, said.remarks) == ("1.00 × recipe", "") and said.each.endswith("g of ingredients")
    assert facts(desk, "lemon-curd").remarks == ", eggs not rounded"


def test_fewer_tins_and_a_small_bowl_are_said(desk: Desk) -> None:
    count, tin = read_tin("2 round 30 cm x 7.5 cm")
    batch = replace(desk.batches["creamed-butter-sponge"], tins=((count, tin),))
    said = MixtureView(batch, desk).facts.remarks
    assert "one after the other" in said or "oven loads" in said
