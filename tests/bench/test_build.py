"""How long a large book takes to build, the first time and again, against the theme alone; how much memory it takes.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it. Whole processes, medians
of five pairs.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from tests.bench.books import plain, repeated

PAIRS = 5
AS_MANY, PER_RECIPE = {300: 1.5, 1000: 1.2}, {300: 2.0, 1000: 1.6}
"""How many times as long as the theme alone the book may take, by the number of its recipes: with as many plain pages as
the book has pages, and with one for each recipe."""
AGAIN = 0.25
"""How much of the first build the second may take, with one recipe changed."""
MOST_MB = 400.0
SIZES = (300, 1000, 3000)
COMPILED = tempfile.TemporaryDirectory()


class Run(NamedTuple):
    """A build: seconds, and the megabytes of its largest process."""

    s: float
    mb: float


def surroundings() -> dict[str, str]:
    """Those of a baker, whose Python keeps what it has compiled."""
    told = {"NO_MKDOCS_2_WARNING": "1", "PYTHONPYCACHEPREFIX": COMPILED.name}
    return {**os.environ, **told, "PYTHONDONTWRITEBYTECODE": ""}


def built(folder: Path) -> Run:
    """One build of a book, as a reader of the command's output waits for it."""
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(folder / "mkdocs.yml")]
    start = time.perf_counter()
    process = subprocess.Popen(command, env=surroundings(), stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    assert status == 0
    return Run(time.perf_counter() - start, used.ru_maxrss / 1024)


def first(folder: Path) -> Run:
    """A build that knows of none before it, but for the drawings that are set once for all books alike."""
    for kept in (folder / ".cache/tinbook").glob("*.sqlite"):
        kept.unlink()
    return built(folder)


@pytest.fixture(scope="session", params=SIZES[:2])
def book(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[int, Path]:
    folder = repeated(tmp_path_factory.mktemp("book"), request.param)
    built(folder)
    return request.param, folder


def test_a_build_against_the_theme_alone(
    benchmark: Any, book: tuple[int, Path], tmp_path_factory: pytest.TempPathFactory
) -> None:
    recipes, folder = book
    pages = len(list((folder / "site").rglob("index.html")))
    many, few = (plain(tmp_path_factory.mktemp("plain"), count) for count in (pages, recipes))
    runs: list[tuple[float, float, float]] = []
    benchmark.pedantic(lambda: runs.append((first(folder).s, built(many).s, built(few).s)), rounds=PAIRS, iterations=1)
    ours, as_many, per_recipe = (statistics.median(times) for times in zip(*runs, strict=True))
    ratios = statistics.median(a / b for a, b, _ in runs), statistics.median(a / c for a, _, c in runs)
    told = {
        "recipes": recipes, "pages": pages, "book s": ours, "theme alone, as many pages s": as_many,
        "theme alone, a page a recipe s": per_recipe, "ratios": ratios,
    }  # fmt: skip
    _tell(benchmark, told)
    assert ratios[0] <= AS_MANY[recipes] and ratios[1] <= PER_RECIPE[recipes]


def test_a_second_build_with_one_recipe_changed(benchmark: Any, book: tuple[int, Path]) -> None:
    recipes, folder = book
    file = folder / "recipes/mixtures/madeira-cake.yaml"
    before, pairs = file.read_text("utf-8"), list[tuple[float, float]]()

    def pair() -> None:
        file.write_text(before, "utf-8")
        whole = first(folder).s
        file.write_text(before.replace("about: |\n  ", f"about: |\n  Tide {len(pairs)}. ", 1), "utf-8")
        pairs.append((whole, built(folder).s))

    benchmark.pedantic(pair, rounds=PAIRS, iterations=1)
    file.write_text(before, "utf-8")
    ratio = statistics.median(again / whole for whole, again in pairs)
    medians = [statistics.median(times) for times in zip(*pairs, strict=True)]
    _tell(benchmark, {"recipes": recipes, "first s": medians[0], "second s": medians[1], "ratio": ratio})
    assert ratio < AGAIN


def test_memory_is_bounded_and_grows_with_the_book_alone(
    benchmark: Any, tmp_path_factory: pytest.TempPathFactory
) -> None:
    found: dict[int, float] = {}

    def measure() -> None:
        for recipes in SIZES:
            folder = repeated(tmp_path_factory.mktemp("memory"), recipes)
            found[recipes] = built(folder).mb
            shutil.rmtree(folder)

    benchmark.pedantic(measure, rounds=1, iterations=1)
    each = [(found[more] - found[few]) / (more - few) for few, more in pairwise(SIZES)]
    _tell(
        benchmark,
        {**{f"{recipes} recipes MB": mb for recipes, mb in found.items()}, "kB a recipe": [1024 * mb for mb in each]},
    )
    assert found[1000] < MOST_MB
    assert each[1] < 1.5 * each[0], "linear"


def _tell(benchmark: Any, told: dict[str, Any]) -> None:
    benchmark.extra_info.update(told)
    print("\n" + "\n".join(f"{name}: {_figure(value)}" for name, value in told.items()))


def _figure(value: Any) -> str:
    return (
        f"{value:.2f}"
        if isinstance(value, float)
        else str([_figure(each) for each in value])
        if isinstance(value, (list, tuple))
        else str(value)
    )
