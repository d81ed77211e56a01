"""Rows as plain mappings."""

from dataclasses import dataclass

from tinbook.plans.base.result import plain_rows, short


@dataclass(frozen=True)
class Heap:
    name: str
    weight_g: float
    pieces: int | None


def test_a_row_is_its_fields() -> None:
    (row,) = plain_rows([Heap("flour", 1 / 3, None)])
    assert row == {"name": "flour", "weight_g": 0.333333, "pieces": None}


def test_only_numbers_are_shortened() -> None:
    assert [short(cell) for cell in ("0.12345678", 0.12345678, 7, True, None)] == [
        "0.12345678",
        0.123457,
        7,
        True,
        None,
    ]
