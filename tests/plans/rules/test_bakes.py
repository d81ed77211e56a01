"""Entries that cannot be; tests/source/bad/bakes has each with its place and words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Baked, Book, House
from tinbook.plans.base.weighing import Batch
from tinbook.plans.rules.bakes import bake_flaws

SOUND = {
    "day": "2026-05-02", "of": "plain-sponge", "tin": "round 20 cm x 7.5 cm", "batter": "1 kg", "oven": "160 °C",
    "done after": "60 min", "centre": "97 °C", "baked": "55 mm", "out": "900 g",
}  # fmt: skip


def codes(batch: Batch, book: Book, facts: Facts, **changes: str) -> list[tuple[str, object]]:
    data = {**SOUND, **{key.replace("_", " "): value for key, value in changes.items()}}
    entry = Baked.model_validate({key: value for key, value in data.items() if value})
    return [(flaw.code, flaw.path[0] if flaw.path else "") for flaw in bake_flaws(entry, batch, book, facts)]


@every(
    ("changes", "found"),
    [
        ({}, []),
        ({"batter": "", "out": ""}, [("no batter", "")]),
        ({"batter": ""}, [("no batter", "out"), ("no batter", "")]),
        ({"batter": "", "batter_depth": "80 mm", "out": ""}, [("too deep", "batter depth")]),
        ({"batter": "3 kg"}, [("wild entry", "out"), ("too deep", "batter")]),
        ({"done_after": "5 h"}, [("wild entry", "done after")]),
        ({"done_after": "10 min"}, [("wild entry", "done after")]),
        ({"baked": "14 cm"}, [("wild entry", "baked")]),
        ({"baked": "2 cm"}, [("wild entry", "baked")]),
        ({"out": "1 kg"}, [("wild entry", "out")]),
        ({"out": "600 g"}, [("wild entry", "out")]),
        ({"centre": "70 °C"}, [("wild entry", "centre")]),
        ({"oven": "100 °C"}, [("too cool", "oven")]),
        ({"start": "70 °C"}, [("wild entry", "start")]),
    ],
)
def test_what_cannot_be(
    batch: Callable[..., Batch], kitchen: Book, facts: Facts, changes: dict[str, str], found: list[tuple[str, str]]
) -> None:
    assert codes(batch(), kitchen, facts, **changes) == found


def test_an_oven_that_is_cooler_than_its_dial(
    batch: Callable[..., Batch], kitchen: Book, facts: Facts, house: Callable[..., House]
) -> None:
    cool = replace(kitchen, house=house(oven={"dial": "180 °C", "thermometer": "150 °C"}))
    assert codes(batch(book=cool), cool, facts, oven="125 °C") == [("too cool", "oven")]
    assert codes(batch(), kitchen, facts, oven="125 °C") == []


def test_icing_is_not_baked(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    icing = batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=["300 g butter", "600 g caster sugar"])
    assert codes(icing, kitchen, facts) == [("not baked", "of")]
