"""How much longer a large book takes to build with a long log of bakes.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import shutil
from itertools import islice, product
from pathlib import Path
from typing import Any

import pytest
from tests.bench.books import repeated
from tests.bench.test_build import built

from tinbook.loading import load_book

ENTRIES = 2000
MOST = 1.1
"""How many times as long as without its log the book may take."""


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A book of 300 recipes."""
    return repeated(tmp_path / "book", 300)


def seconds(folder: Path) -> float:
    """One build of which nothing is known."""
    shutil.rmtree(folder / ".cache", ignore_errors=True)
    return built(folder).s


@pytest.fixture
def logged(book: Path, tmp_path: Path) -> Path:
    """That book with a log: bakes of every cake in one of its own tins, minutes about those it is written with."""
    folder = tmp_path / "logged"
    shutil.copytree(book, folder, ignore=shutil.ignore_patterns("site"))
    found = load_book(folder / "recipes").book.mixtures
    mixtures = {
        slug: mixture
        for slug, mixture in found.items()
        if mixture.bake and mixture.tins and not mixture.tins[0][1].kind.in_trays
    }
    lines = ["bakes:"]
    for number, mixture_of in islice(product(range(99), mixtures.items()), ENTRIES):
        slug, mixture = mixture_of
        assert mixture.bake is not None
        minutes = mixture.bake.time.low.base * (0.92 + 0.03 * (number % 7))
        lines.append(
            f'  - {{day: 2026-{number % 12 + 1:02d}-11, of: {slug}, tin: "{mixture.tins[0][1].full_name}", '
            f"batter depth: {24 + number % 5} mm, oven: {mixture.bake.oven.written}, done after: {minutes:.0f} min, "
            f"baked: {36 + number % 5} mm}}"
        )
    (folder / "recipes/house/bakes.yaml").write_text("\n".join(lines) + "\n", "utf-8")
    assert len(load_book(folder / "recipes").book.bakes) == ENTRIES
    return folder


def test_a_log_of_two_thousand_bakes_adds_a_tenth_at_most(benchmark: Any, book: Path, logged: Path) -> None:
    plain: list[float] = []
    longer: list[float] = []
    benchmark.pedantic(
        lambda: longer.append(seconds(logged)), setup=lambda: plain.append(seconds(book)), rounds=6, iterations=1
    )
    ratio = min(longer) / min(plain)
    told = {"with log s": round(min(longer), 2), "without s": round(min(plain), 2), "ratio": round(ratio, 3)}
    benchmark.extra_info.update(told)
    print("\n" + "\n".join(f"{name}: {figure}" for name, figure in told.items()))
    assert ratio <= MOST
