"""What is paid and asked leaves no trace in the public book, not even in what is left out of it or in its order."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from tests.conftest import BUILT_THERE
from tests.plugin.test_repeatable import content

ROOT = Path(__file__).parents[2]


@pytest.mark.long
def test_the_public_book_is_the_same_to_the_byte_whatever_is_paid(
    demo_site: Path, build: Callable[..., Path], tmp_path: Path
) -> None:
    """Built with other money, without a price paid, and with no sum in any order."""
    book = tmp_path / "book"
    for name in ("recipes", "book_src"):
        shutil.copytree(ROOT / name, book / name)
    shutil.copy(ROOT / "mkdocs.yml", book / "mkdocs.yml")
    house, changed = book / "recipes" / "house", 0
    assert "an hour: " in (house / "money.yaml").read_text("utf-8")
    (house / "money.yaml").write_text("currency: JPY\nan hour: 7193\nmargin: 41 %\n", "utf-8")
    (house / "prices.yaml").unlink()
    for path in (book / "recipes" / "orders").glob("*.yaml"):
        lines = path.read_text("utf-8").splitlines(keepends=True)
        kept = [line for line in lines if line.partition(":")[0] not in ("quoted", "agreed", "deposit", "distance")]
        changed += kept != lines
        path.write_text("".join(kept), "utf-8")
    assert changed > 1
    first, second = content(demo_site), content(build(book / "site", config=book / "mkdocs.yml", **BUILT_THERE))
    assert set(first) == set(second) and len(first) > 100
    assert [name for name in first if first[name] != second[name]] == []
