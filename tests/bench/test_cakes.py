"""What sixty whole cakes add to a build of three hundred recipes, and what an edit of one costs: whole processes.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import re
import shutil
import statistics
from pathlib import Path
from typing import Any

import pytest
from tests.bench.books import DEMO, repeated
from tests.bench.test_build import first
from tests.bench.test_preview import served, waited

RECIPES, CAKES, PAIRS = 300, 60, 5
MOST = 1.25
"""Times as long as without cakes."""
MOST_S = 1.0
"""From saving a cake to its page with the new words."""


def with_cakes(folder: Path, count: int) -> Path:
    """A book of RECIPES, with the demo's cakes over and over under other names, each time of the recipes of that time;
    none for 0."""
    repeated(folder, RECIPES)
    cakes = folder / "recipes/cakes"
    if not count:
        shutil.rmtree(cakes)
        return folder
    sources = sorted((DEMO / "cakes").glob("*.yaml"))
    recipes = "|".join(path.stem for path in (DEMO / "mixtures").glob("*.yaml"))
    for number in range(len(sources), count):
        source, again = sources[number % len(sources)], number // len(sources) + 1
        text = re.sub(r"^name: (.*)$", rf"name: \1 {again}", source.read_text("utf-8"), count=1, flags=re.MULTILINE)
        text = re.sub(r"^also: .*\n", "", text, flags=re.MULTILINE)
        text = re.sub(rf"(?<=: )({recipes})(?=[,}}\]\s])", rf"\1-{again}", text)
        (cakes / f"{source.stem}-{again}.yaml").write_text(text, "utf-8")
    return folder


def test_cakes_in_a_build(benchmark: Any, tmp_path_factory: pytest.TempPathFactory) -> None:
    bare, full = (with_cakes(tmp_path_factory.mktemp("book"), count) for count in (0, CAKES))
    for folder in (bare, full):
        first(folder)
    pairs: list[tuple[float, float]] = []
    benchmark.pedantic(lambda: pairs.append((first(bare).s, first(full).s)), rounds=PAIRS, iterations=1)
    ratio = statistics.median(cakes / none for none, cakes in pairs)
    without, within = (statistics.median(times) for times in zip(*pairs, strict=True))
    print(f"\n{RECIPES} recipes: {without:.2f} s, with {CAKES} cakes {within:.2f} s; ratio {ratio:.2f}")
    assert ratio <= MOST


def test_an_edited_cake_is_there(benchmark: Any, tmp_path_factory: pytest.TempPathFactory) -> None:
    book = with_cakes(tmp_path_factory.mktemp("book"), CAKES)
    took: list[float] = []
    with served(book) as address:
        file, page = book / "recipes/cakes/lighthouse-cake.yaml", f"{address}cakes/lighthouse-cake/"
        benchmark.pedantic(
            lambda: took.append(waited(file, "about: ", page, len(took))), rounds=PAIRS, iterations=1,
        )  # fmt: skip
    print(f"\nedit of a cake to its page {statistics.median(took):.2f} s ({', '.join(f'{each:.2f}' for each in took)})")
    assert statistics.median(took) <= MOST_S
