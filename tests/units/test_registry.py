"""The sizes that stand in `sizes.py`, worked out anew by pint from kitchen.txt."""

from pathlib import Path

import pytest

from tinbook.units import registry, sizes


def test_the_sizes_are_those_of_kitchen_txt() -> None:
    """To the last digit. Where this fails, kitchen.txt was changed: `registry` says how to write the sizes anew."""
    assert {table: dict(getattr(sizes, table)) for table in registry.BASES} == registry.sizes()
    assert {name: getattr(sizes, name) for name in registry.heats()} == registry.heats()


def test_the_module_is_as_it_was_written() -> None:
    assert Path(sizes.__file__).read_text("utf-8") == registry.module()


def test_every_unit_of_kitchen_txt_has_its_size() -> None:
    text = Path(registry.__file__).with_name("kitchen.txt").read_text("utf-8")
    named = {line.partition(" =")[0] for line in text.splitlines() if " = " in line and not line.startswith("#")}
    heats = {name for name in named if name == "kelvin" or name.startswith("degree")}
    written = {name for table in registry.BASES for name in getattr(sizes, table)}
    assert named - heats - set(registry.BASES.values()) == written


def test_a_size_that_is_off_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sizes, "GRAMS", {**sizes.GRAMS, "pound": 453.592})
    assert registry.sizes()["GRAMS"] != sizes.GRAMS
