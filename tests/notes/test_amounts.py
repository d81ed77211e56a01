"""Amounts as notes have them, in the book's spelling; two spellings of one are checked against each other."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.notes.amounts import APART, prepared, read_amount
from tinbook.notes.kitchens import KITCHENS, UNKNOWN, Kitchen
from tinbook.units import GRAMS_PER_OUNCE, METRIC

US, UK = KITCHENS["US"], KITCHENS["UK"]


def read(line: str, kitchen: Kitchen = UNKNOWN) -> tuple[str, str]:
    """The amount and what follows it."""
    text = prepared(line)
    amount = read_amount(text, kitchen, METRIC)
    return (amount.text, text[amount.end :].strip()) if amount else ("", text)


@every(
    ("line", "amount", "rest"),
    [
        ("225g butter", "225 g", "butter"),
        ("225g/8oz butter", "225 g", "butter"),
        ("8 oz (225 g) butter", "225 g", "butter"),
        ("225 g or 8 oz of butter", "225 g", "butter"),
        ("2 x 225 g butter", "450 g", "butter"),
        ("2 x 250 g packs butter", "500 g", "butter"),
        ("1 (8 oz) package cream cheese", "8 oz", "cream cheese"),
        ("1 lb 4 oz flour", "1 lb 4 oz", "flour"),
        ("a pinch of salt", "1 pinch", "salt"),
        ("Pinch salt", "1 pinch", "salt"),
        ("half a teaspoon salt", "1/2 tsp", "salt"),
        ("1½ tsp salt", "1½ tsp", "salt"),
        ("a teaspoon of salt", "1 tsp", "salt"),
        ("2 dessertspoons honey", "4 tsp", "honey"),
        ("4 eggs", "4", "eggs"),
        ("2 tbsp plus 1 tsp milk", "35 ml", "milk"),
        (".5 kg flour", "0.5 kg", "flour"),
        ("1,250 g flour", "1,250 g", "flour"),
    ],
)
def test_what_is_read(line: str, amount: str, rest: str) -> None:
    assert read(line) == (amount, rest)


@every(
    ("line", "kitchen", "amount"),
    [
        ("1 cup sugar", US, "1 US cup"),
        ("1 cup sugar", KITCHENS["Australian"], "1 metric cup"),
        ("2 tablespoons milk", KITCHENS["Australian"], "2 Australian tbsp"),
        ("2 sticks butter", US, "227 g"),
        ("1/2 cup (1 stick) butter", US, "113 g"),
        ("1/2 pint milk", UK, "284 ml"),
        ("1/2 pint milk", US, "237 ml"),
        ("5 fl oz milk", UK, "5 UK fl oz"),
        ("2½ cups (320 g) flour", UNKNOWN, "320 g"),
    ],
)
def test_by_whose_kitchen(line: str, kitchen: Kitchen, amount: str) -> None:
    assert read(line, kitchen)[0] == amount


@every(
    "line",
    [
        "1 heaped tbsp cocoa", "a knob of butter", "175-200 ml milk", "1 to 2 tbsp milk", "about 2 tbsp milk", "1 cup sugar",
        "1 pint milk", "1 stick butter", "8 oz (325 g) sugar", "25 g/2 oz flour", "1,5 kg flour",
        "a few drops vanilla", "1 tin condensed milk",
    ],
)  # fmt: skip
def test_what_is_no_certain_amount(line: str) -> None:
    amount = read_amount(prepared(line), UNKNOWN, METRIC)
    assert amount is not None and amount.text == "" and amount.doubt


@pytest.mark.parametrize(
    ("grams", "agree"), [(8 * GRAMS_PER_OUNCE * (1 - APART) + 1, True), (8 * GRAMS_PER_OUNCE * 0.93, False)]
)
def test_two_spellings_may_be_so_far_apart(grams: float, agree: bool) -> None:
    assert bool(read(f"{grams:.0f} g/8 oz butter")[0]) is agree


@pytest.mark.parametrize("line", ["butter", "Method", "", "eggs 4"])
def test_a_line_that_begins_with_none(line: str) -> None:
    assert read_amount(prepared(line), UNKNOWN, METRIC) is None
