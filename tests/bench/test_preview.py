"""From saving a recipe to the page with the new words: whole processes, asked each 50 ms, medians of five.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import os
import socket
import statistics
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from tests.bench.books import plain, repeated

ROUNDS = 5
MOST_S = {300: 1.0, 1000: 2.0}
"""For the page that was edited, by the number of recipes."""
OF_THEME = 0.5
"""Of what the theme's own preview takes with as many plain pages."""
ASK_S = 0.05
REST_S = 4.0
"""So that what follows an edited page is done before the next edit."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a book that is served; it has been asked for its first page."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "mkdocs", "serve", "-q", "--livereload", "-f", str(folder / "mkdocs.yml")]
    process = subprocess.Popen(
        [*command, "-a", f"127.0.0.1:{port}"], env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    try:
        address, until = f"http://127.0.0.1:{port}/", time.monotonic() + 300
        while time.monotonic() < until:
            try:
                page(address)
                break
            except OSError:
                time.sleep(0.2)
        yield address
    finally:
        process.terminate()
        process.wait()


def page(address: str) -> str:
    with urllib.request.urlopen(address, timeout=120) as answer:
        return str(answer.read().decode("utf-8"))


def waited(file: Path, mark: str, address: str, number: int) -> float:
    """Seconds from closing a file with a new word after its mark to the answer that has it."""
    before, word = file.read_text("utf-8"), f"tide{number}x{time.monotonic_ns()}"
    file.write_text(before.replace(mark, f"{mark}{word} ", 1), "utf-8")
    start = time.perf_counter()
    while word not in page(address):
        assert time.perf_counter() - start < 120
        time.sleep(ASK_S)
    took = time.perf_counter() - start
    time.sleep(REST_S)
    file.write_text(before, "utf-8")
    time.sleep(REST_S)
    return took


@pytest.mark.parametrize("recipes", MOST_S)
def test_an_edited_page_is_there(benchmark: Any, recipes: int, tmp_path_factory: pytest.TempPathFactory) -> None:
    book = repeated(tmp_path_factory.mktemp("book"), recipes)
    ours: list[float] = []
    with served(book) as address:
        pages = len(list((book / "recipes/mixtures").iterdir())) * 2
        file = book / "recipes/mixtures/madeira-cake.yaml"
        benchmark.pedantic(
            lambda: ours.append(waited(file, "about: |\n  ", f"{address}mixtures/madeira-cake/", len(ours))),
            rounds=ROUNDS, iterations=1,
        )  # fmt: skip
        house = waited(book / "recipes/house/house.yaml", "name: ", address, 0)
    alone = plain(tmp_path_factory.mktemp("plain"), pages)
    page_7, marked = alone / "docs/mixtures/page-7.md", "# Page 7\n\n"
    with served(alone) as address:
        theirs = [waited(page_7, marked, f"{address}mixtures/page-7/", number) for number in range(ROUNDS)]
    edit, theme = statistics.median(ours), statistics.median(theirs)
    print(
        f"\n{recipes} recipes: edit to page {edit:.2f} s ({', '.join(f'{each:.2f}' for each in ours)}); a word of the "
        f"house {house:.2f} s; the theme alone with {pages} pages {theme:.2f} s; ratio {edit / theme:.2f}"
    )
    assert edit <= MOST_S[recipes]
    assert edit / theme < OF_THEME
