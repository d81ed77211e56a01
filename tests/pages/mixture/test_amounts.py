"""Amounts where no tin is meant, as the plans have them."""

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.amounts import AmountsView
from tinbook.plans.mixtures.batches import BATCHES, CUPS, EGGS, WEIGHTS_G

N = "\u00a0"


def amounts(desk: Desk, slug: str) -> AmountsView:
    return AmountsView(desk.batches[slug], desk)


@pytest.mark.parametrize(
    ("slug", "title", "groups"),
    [
        ("creamed-butter-sponge", "By number of eggs", [len(EGGS)]),
        ("cupcakes", "By number of eggs", [len(EGGS), len(CUPS)]),
        ("dark-ganache", "By weight and batch", [len(BATCHES), len(WEIGHTS_G)]),
    ],
)
def test_a_line_each_amount_and_groups_parted(desk: Desk, slug: str, title: str, groups: list[int]) -> None:
    made = amounts(desk, slug)
    assert made.shown and made.title == title
    lines = list(made.lines)
    firsts = [place for place, line in enumerate(lines) if line.first]
    assert [end - start for start, end in zip(firsts, [*firsts[1:], len(lines)], strict=True)] == groups
    assert {len(line.cells) for line in lines} == {len(made.heads) + 1}
    assert [line.factor for line in lines] == [row.version.factor for row in made.table.rows]


def test_what_was_asked_stands_first(desk: Desk) -> None:
    heads = [str(line.head) for line in amounts(desk, "dark-ganache").lines]
    assert f"½{N}batch" in heads[0] and f"250{N}g" in heads[len(BATCHES)]
    assert f"1{N}egg" in str(next(amounts(desk, "creamed-butter-sponge").lines).head)


def test_the_row_as_written_has_the_written_amounts(desk: Desk) -> None:
    made = amounts(desk, "dark-ganache")
    row = next(line for line in made.lines if line.factor == 1.0)
    shown = [f"{line.amount:g}" for line in made.batch.ingredients]
    assert list(row.cells[: len(shown)]) == shown
    assert made.worked.formulas == ("factor = amount wanted / amount in the recipe",)
