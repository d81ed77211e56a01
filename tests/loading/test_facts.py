"""The facts that come with the package."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tinbook import facts as room
from tinbook.loading import load_facts

DATA = Path(room.__file__).parent / "data"


@pytest.fixture(autouse=True)
def fresh() -> Iterator[None]:
    """Each test reads the files for itself, and leaves nothing behind."""
    load_facts.cache_clear()
    yield
    load_facts.cache_clear()


def test_every_file_is_read_and_they_are_read_once() -> None:
    facts = load_facts()
    assert load_facts() is facts
    for section in ("sources", "numbers", "densities", "eggs", "marks", "kinds", "allergens", "cautions"):
        assert (DATA / f"{section}.yaml").is_file()
        assert len(getattr(facts, section)) > 5


def test_a_number_of_the_trade_arrives_as_a_number() -> None:
    """An inch mark of text would not do: 20 °C between a fan oven and another is common practice."""
    assert load_facts().numbers["fan difference"].value == 20.0


@pytest.fixture
def spoilt(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the data that the loader takes for its own."""
    for path in DATA.glob("*.yaml"):
        (tmp_path / "data").mkdir(exist_ok=True)
        (tmp_path / "data" / path.name).write_bytes(path.read_bytes())
    monkeypatch.setattr(room, "__file__", str(tmp_path / "__init__.py"))
    return tmp_path / "data"


def test_a_copy_reads_the_same(spoilt: Path) -> None:
    assert load_facts().eggs
    assert spoilt.is_dir()


def test_a_fault_in_a_data_file_raises_with_its_place(spoilt: Path) -> None:
    lines = (spoilt / "eggs.yaml").read_text(encoding="utf-8").split("\n")
    (spoilt / "eggs.yaml").write_text("\n".join([*lines, "two: eggs", "two: eggs", ""]), encoding="utf-8")
    with pytest.raises(ValueError, match=rf'eggs\.yaml:{len(lines) + 2}:1: "two" is written twice'):
        load_facts()


def test_a_missing_data_file_raises(spoilt: Path) -> None:
    (spoilt / "marks.yaml").unlink()
    with pytest.raises(ValueError, match="marks"):
        load_facts()
