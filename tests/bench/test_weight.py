"""What a reader's device has to carry: a recipe's page, the book's own scripts and styles, the search's index.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).parents[2]
RECIPES = 300
PAGE_KB, OURS_KB, INDEX_KB = 60, 50, 1024
"""The most, kB of 1000 bytes, before compression; styles and scripts are all that a page loads, the theme's are gone."""
OURS = "assets/tinbook/"


@pytest.fixture(scope="session")
def large(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of a book of 300 recipes: those of the demo under other names."""
    folder = tmp_path_factory.mktemp("weight")
    shutil.copytree(ROOT / "recipes", folder / "recipes")
    shutil.copytree(ROOT / "book_src", folder / "book_src")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    mixtures = sorted((folder / "recipes/mixtures").glob("*.yaml"))
    for number in range(RECIPES - len(mixtures)):
        file = mixtures[number % len(mixtures)]
        data = yaml.load(file.read_text("utf-8"), yaml.BaseLoader)
        data["name"] = f"{data['name']} {number}"
        text = yaml.safe_dump(data, allow_unicode=True, sort_keys=False)
        file.with_name(f"{file.stem}-{number}.yaml").write_text(text, "utf-8")
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", str(folder / "mkdocs.yml"), "-d", "site"]
    run = subprocess.run(
        command, cwd=folder, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"}, capture_output=True, text=True, timeout=300
    )
    assert run.returncode == 0, run.stdout + run.stderr
    return folder / "site"


def ours(site: Path, page: Path) -> set[Path]:
    """Our scripts and styles that a page loads, with all that they import."""
    text = page.read_text("utf-8")
    found = re.findall(r'(?:src|href)="([^"]*' + OURS + r'[^"]+\.(?:js|css))"', text)
    wanted, files = [(page.parent / name).resolve() for name in found], set[Path]()
    while wanted:
        file = wanted.pop()
        if file not in files:
            files.add(file)
            wanted += [file.parent / name for name in re.findall(r'from\s*"\./([\w-]+\.js)"', file.read_text("utf-8"))]
    return files


def kb(files: Any) -> float:
    return sum(file.stat().st_size for file in files) / 1000


def test_a_large_book_is_light(benchmark: Any, large: Path) -> None:
    pages = sorted(page for page in large.glob("mixtures/*/index.html") if page.parent.name != "kinds")
    assert len(pages) == RECIPES
    heaviest = max(pages, key=lambda page: page.stat().st_size)
    files = benchmark(ours, large, heaviest)
    assert {file.name for file in files} >= {"main.js", "bench.js", "book.css"}
    told = {
        "recipe page, kB": (kb([heaviest]), PAGE_KB),
        "its scripts and styles, kB": (kb(files), OURS_KB),
        "search index, kB": (kb([large / "assets/tinbook/find-index.js"]), INDEX_KB),
    }
    middle = kb(pages) / RECIPES
    benchmark.extra_info.update({name: round(figure, 1) for name, (figure, _) in told.items()})
    print(f"\nrecipe page on average, kB: {middle:.1f}")
    for name, (figure, most) in told.items():
        print(f"{name}: {figure:.1f} of {most}")
    assert {name: figure for name, (figure, most) in told.items() if figure > most} == {}
