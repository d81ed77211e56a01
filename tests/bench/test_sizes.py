"""What ten thousand bakes and ten thousand tins cost: whole processes, `tinbook check` on the demo book.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import time
from pathlib import Path
from statistics import median
from typing import Any

import pytest
from tests.bench.books import repeated

from tinbook.loading import load_book

DEMO = Path(__file__).parents[2] / "recipes"
MANY = 10_000
RECIPES = 1_000
MOST_BAKES_S, MOST_TINS_S, MOST_AGAIN_S = 1.0, 4.0, 1.0
ROUNDS = 5
YEARS = 5
BAKE = (
    "  - {{day: {year}-{month:02d}-{day:02d}, of: {of}, tin: round {wide} cm x 7.5 cm, batter depth: {deep} mm, "
    "oven: 140 °C, done after: {minutes} min}}\n"
)
CAKES = (("mud-cake", 15, 60), ("creamed-butter-sponge", 20, 38), ("madeira-cake", 25, 75))


def bakes(year: int, count: int) -> str:
    """A file of the log."""
    lines = []
    for number in range(count):
        of, wide, minutes = CAKES[number % 3]
        lines.append(BAKE.format(year=year, month=1 + number % 12, day=1 + number % 28, of=of, wide=wide,
                                 deep=38 + number % 9, minutes=minutes + number % 7))  # fmt: skip
    return "bakes:\n" + "".join(lines)


@pytest.fixture
def books(tmp_path: Path) -> dict[str, Path]:
    """The demo without a log, with ten thousand bakes in five years, and with ten thousand tins, no two alike."""
    found = {name: tmp_path / name for name in ("none", "bakes", "tins")}
    for folder in found.values():
        shutil.copytree(DEMO, folder / "recipes")
        (folder / "recipes/house/bakes.yaml").unlink()
    for year in range(YEARS):
        name = "bakes.yaml" if not year else f"bakes-{2021 + year}.yaml"
        text = bakes(2021 + year, MANY // YEARS)
        (found["bakes"] / "recipes/house" / name).write_text(text, "utf-8")
    tins = (f"  - {{tin: round {100 + number} mm x 75 mm}}\n" for number in range(900))
    more = (
        f"  - {{tin: rectangle {100 + number % 100} mm x {100 + number // 100} mm x 5 cm}}\n" for number in range(9100)
    )
    (found["tins"] / "recipes/house/tins.yaml").write_text("tins:\n" + "".join([*tins, *more]), "utf-8")
    assert len(load_book(found["bakes"] / "recipes").book.bakes) == MANY
    assert len(load_book(found["tins"] / "recipes").book.tins) == MANY
    return found


def seconds(folder: Path, afresh: bool = True) -> float:
    """One check; `afresh`: of a book that was never checked."""
    if afresh:
        shutil.rmtree(folder / ".cache", ignore_errors=True)
    start = time.perf_counter()
    command = [sys.executable, "-c", "from tinbook.cli import main; main()", "--book", str(folder), "check"]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return time.perf_counter() - start


def test_ten_thousand(benchmark: Any, books: dict[str, Path]) -> None:
    taken: dict[str, list[float]] = {name: [] for name in books}

    def once() -> None:
        for name, folder in books.items():
            taken[name].append(seconds(folder))

    benchmark.pedantic(once, rounds=ROUNDS, iterations=1)
    least = {name: min(times) for name, times in taken.items()}
    told = {name: f"{least[name]:.2f} s, at most {max(taken[name]):.2f}" for name in books}
    benchmark.extra_info.update(told)
    print("\n" + "\n".join(f"{name}: {figure}" for name, figure in told.items()))
    assert least["bakes"] - least["none"] <= MOST_BAKES_S
    assert least["tins"] <= MOST_TINS_S


def test_a_book_of_a_thousand_that_was_checked_before(benchmark: Any, tmp_path: Path) -> None:
    folder = repeated(tmp_path, RECIPES)
    afresh = [seconds(folder) for _ in range(ROUNDS)]
    again: list[float] = []
    benchmark.pedantic(lambda: again.append(seconds(folder, afresh=False)), rounds=ROUNDS, iterations=1)
    print(f"\nchecked before {median(again):.2f} s, afresh {median(afresh):.2f} s")
    assert median(again) <= MOST_AGAIN_S
