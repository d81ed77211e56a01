"""Ingredient lines: the amount first or last, in cells, several run together; doubtful ones say why."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.notes.kitchens import UNKNOWN
from tinbook.notes.lines import Lines, is_order


@pytest.fixture(scope="module")
def lines(demo: Loaded) -> Lines:
    return Lines(demo.book, demo.facts, UNKNOWN)


@every(
    ("line", "texts"),
    [
        ("250 g butter, soft", ["250 g butter, soft"]),
        ("Butter: 225 g", ["225 g butter"]),
        ("Eggs 10", ["10 Eggs"]),
        ("butter - 225g (soft)", ["225 g butter, soft"]),
        ("Butter\t400\tg\tsoft", ["400 g Butter, soft"]),
        ("200g butter (at room temperature)", ["200 g butter, at room temperature"]),
        ("3 eggs (large)", ["3 eggs, large"]),
        (
            "225 g each of butter, caster sugar and plain flour",
            ["225 g butter", "225 g caster sugar", "225 g plain flour"],
        ),
        ("175 g butter, 3 eggs and 1 tsp baking powder.", ["175 g butter", "3 eggs", "1 tsp baking powder"]),
        ("8oz plain flour - 4oz butter", ["8oz plain flour", "4oz butter"]),
        ("Half a pound of butter", ["1/2 pound butter"]),
        ("1 cup (225g) butter", ["225 g butter"]),
        ("2½ cups (320 g) all-purpose flour", ["320 g all-purpose flour"]),
        ("3 large egg whites", ["3 egg white"]),
    ],
)
def test_what_is_read(lines: Lines, line: str, texts: list[str]) -> None:
    found = lines.read(line)
    assert lines.has_amount(line)
    assert [read.text.lower() for read in found] == [text.lower() for text in texts]
    assert all(not read.doubt for read in found)


@every(
    "line",
    [
        "200 g cob nuts", "2 medium eggs", "3 knobs butter", "zest of 2 lemons", "juice of 1", "110 g butter or margarine",
        "225 g butter, plus 2 tbsp for the tin", "150 g butter, 50 g of it melted", "1 tsp baking powder, lemon zest",
        "a pinch", "20O g flour", "1 cup (900g) butter", "225 g (1 tbsp) butter", "100 g 5 oz butter",
    ],
)  # fmt: skip
def test_what_is_not_certain(lines: Lines, line: str) -> None:
    assert any(read.doubt for read in lines.read(line))


def test_an_unknown_name_is_told(lines: Lines) -> None:
    (read,) = lines.read("150 g sea-buckthorn purée")
    assert (read.text, read.unknown) == ("150 g sea-buckthorn purée", "sea-buckthorn purée")


def test_a_sentence_with_amounts_in_it(lines: Lines) -> None:
    found = lines.told("I take 250 g butter, 5 eggs and 250 g self-raising flour and beat them with 20 g whelk.")
    assert [read.text for read in found] == ["250 g butter", "5 eggs", "250 g self-raising flour", ""]
    assert found[-1].doubt and lines.tallies("250 g butter and 5 eggs") == 2


@pytest.mark.parametrize("line", ["Method", "Beat for 5 min.", "A cake for the regatta", "20 cm tin", "45 minutes"])
def test_what_is_no_ingredient(lines: Lines, line: str) -> None:
    assert not lines.has_amount(line)


def test_orders() -> None:
    assert is_order("Beat the butter") and is_order("Gently fold") and not is_order("Butter and sugar")
