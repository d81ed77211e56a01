"""Small books for labels, written as a baker would and loaded as any other."""

from __future__ import annotations

from collections.abc import Callable
from itertools import count
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book

Kitchen = Callable[..., Loaded]
CARDS = """
  flour: {weighs: no volume measure, allergens: [wheat], made of: fortified wheat flour}
  butter: {weighs: no volume measure, allergens: [milk], made of: itself}
  sugar: {weighs: no volume measure, allergens: none, made of: itself}
  egg: {each: whole egg, allergens: [egg], made of: itself}
  water: {weighs: 1 g/ml, allergens: none, packs: none}
  walnuts: {weighs: no volume measure, allergens: [walnut], made of: itself}
  sultanas: {weighs: no volume measure, allergens: none, made of: itself}
"""
SPONGE = """
name: {name}
kind: {kind}
tins: round 20 cm x 7.5 cm
bake: {{oven: 160 °C, time: 60 min}}
keeps for: 3 days
{more}mix:
{mix}
"""


@pytest.fixture
def kitchen(tmp_path: Path) -> Kitchen:
    """`kitchen("200 g flour", ..., cards=..., labels=...)`: a book with one mixture, `cake`; the cards come on top of
    the plain ones."""
    numbers = count()

    def made(
        *mix: str, cards: str = "", labels: str = "sold in: England\nsold: packed here\n", name: str = "Quay cake",
        kind: str = "creamed", more: str = "", files: dict[str, str] | None = None,
    ) -> Loaded:  # fmt: skip
        folder = tmp_path / str(next(numbers)) / "recipes"
        lines = "\n".join(f"  - {line}" for line in mix)
        every = {
            "house/house.yaml": "book: 1\nname: Small kitchen\neggs: UK large\n",
            "house/ingredients.yaml": f"ingredients:{CARDS}{cards}",
            "house/labels.yaml": labels,
            "mixtures/cake.yaml": SPONGE.format(name=name, kind=kind, more=more, mix=lines),
            **(files or {}),
        }
        for path, text in every.items():
            file = folder / path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(text, "utf-8")
        return load_book(folder)

    return made
