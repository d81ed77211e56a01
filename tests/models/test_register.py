"""The register of the house's files: every line is whole, and what is made from it says the same."""

from __future__ import annotations

from collections import Counter
from dataclasses import fields
from pathlib import Path

import pytest
from tests.every import every

from tinbook.models import Book
from tinbook.models.register import REGISTER, Merged, SeenBy, SourceKind, house_files, kinds, of_the_kitchen, rooms

ROOT = Path(__file__).parents[2]
WORKED_OUT = {"varies", "cake_bases", "pictures", "unsure", "others"}
"""What of a book is not written in a file of its own: differences, pictures of techniques, marks, files without a field."""


def test_every_field_of_a_book_has_its_file() -> None:
    """A field that no line names would not be in a public book."""
    assert {kind.field for kind in REGISTER if kind.field} == {field.name for field in fields(Book)} - WORKED_OUT


def test_names_paths_and_fields_are_each_their_own() -> None:
    for attribute in ("name", "path", "model", "field"):
        counted = Counter(getattr(kind, attribute) for kind in REGISTER if getattr(kind, attribute))
        assert max(counted.values()) == 1, attribute


@every("kind", REGISTER, ids=lambda kind: kind.name)
def test_a_line_is_whole(kind: SourceKind) -> None:
    in_entries = kind.merged in (Merged.LIST, Merged.CARDS)
    assert in_entries == bool(kind.key) == (kind.entry is not None)
    keys = {field.alias or name for name, field in kind.model.model_fields.items()}
    assert not kind.key or kind.key in keys
    assert "private" in keys
    if kind.merged is Merged.WHOLE:
        assert isinstance(kind.nothing, kind.model)
    if kind.seen_by is SeenBy.NOBODY:
        assert kind.kept, "of what nobody sees the sums must be named"


@pytest.mark.parametrize("kind", [kind for kind in REGISTER if kind.kept], ids=lambda kind: kind.name)
def test_what_is_kept_back_from_nobody_is_there_and_is_what_is_needed(kind: SourceKind) -> None:
    """Keys that a private entry keeps are keys of it; of what it must write, those that are not kept may be empty."""
    assert kind.entry is not None
    written = kind.entry.model_fields
    assert kind.kept <= {field.alias or name for name, field in written.items()}
    lost = [field for name, field in written.items() if field.is_required() and (field.alias or name) not in kind.kept]
    assert all(str(field.annotation).startswith("tuple") for field in lost)


def test_what_the_names_lead_to() -> None:
    assert kinds()["bakes"].address == "house/bakes"
    assert kinds()["mixture"].address == "mixtures/"
    assert rooms() == ("house", "mixtures", "techniques", "cakes", "orders")
    assert house_files()[:3] == ("house", "tins", "ingredients")
    assert of_the_kitchen() == (
        "house/opened.yaml", "house/opened-*.yaml", "house/kitchen.yaml", "house/hours.yaml", "house/hours-*.yaml",
        "house/stock.yaml", "house/stock-*.yaml", "house/money.yaml", "house/prices.yaml", "house/prices-*.yaml",
        "orders/*.yaml",
    )  # fmt: skip


def test_the_table_for_developers_is_the_register() -> None:
    """Written anew from what this test tells."""
    lines = ["| file | what it is loaded as | who may see it |", "|---|---|---|"]
    lines += [f"| `{kind.path}` | {kind.merged.value} | {kind.seen_by.value} |" for kind in REGISTER]
    assert "\n".join(lines) in (ROOT / "DEVELOPERS.md").read_text("utf-8")
