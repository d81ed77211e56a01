"""How long a large book takes to build, against the theme alone with as many plain pages.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import os
import subprocess
import sys
from itertools import cycle, islice
from pathlib import Path
from typing import Any

import pytest
import yaml

from tinbook.tins import read_tin

RECIPES = 300
TINS = 60
MOST = 2.0
"""How many times as long as the theme alone the book may take."""

CAKES = ("creamed", "madeira", "mud", "rich fruit", "whisked", "oil", "cupcake")
WRITTEN_FOR = (
    "2 round 15 cm x 7.5 cm", "round 20 cm x 10 cm", "2 round 20 cm x 7.5 cm", "square 20 cm x 7.5 cm",
    "round 23 cm x 7.5 cm", "rectangle 23 cm x 33 cm x 5 cm", "24 standard cups", "ring 25 cm x 10 cm, tube 7.5 cm",
    "2 lb loaf", "square 25 cm x 7.5 cm", "3 round 18 cm x 5 cm",
)  # fmt: skip
PLACES = ["Estuary", "Lighthouse", "Harbour", "Curlew", "Mudflat", "Samphire", "Jetty", "Heron", "Ferry", "Tideline"]
WHATS = ["sponge", "cake", "layer", "bake", "gateau", "slab"]
USED = (
    "butter", "caster sugar", "egg", "self-raising flour", "plain flour", "baking powder", "vanilla extract", "salt",
    "milk", "cocoa powder",
)  # fmt: skip
"""The cards of what goes into the recipes: a card has a page of its own."""
WORDS = [
    "butter",
    "sugar",
    "eggs",
    "flour",
    "milk",
    "tin",
    "oven",
    "paper",
    "rack",
    "skewer",
    "batter",
    "crumb",
    "drum",
]
BUILD = """
import logging, sys, time
import mkdocs.commands.build, mkdocs.config, material, tinbook.plugin
logging.basicConfig(level=logging.WARNING)
start = time.perf_counter()
config = mkdocs.config.load_config(sys.argv[1], strict=True)
mkdocs.commands.build.build(config)
print(time.perf_counter() - start)
"""
"""A build in a process of its own, so that no cache of an earlier one helps it; what is imported is not counted."""

TECHNIQUE = {
    "name": "Line a tin",
    "purpose": "So that the cake lets go.",
    "tools": ["pencil", "scissors"],
    "steps": [{"do": "Draw round the base and cut.", "hands on": "2 min"}, "Butter the tin and lay the paper in."],
}
THEME: dict[str, Any] = {
    "name": "material",
    "font": False,
    "features": ["navigation.indexes", "navigation.prune", "toc.follow"],
}


def _dump(path: Path, data: Any) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")


def _mixture(number: int) -> tuple[str, dict[str, Any]]:
    """One recipe, unlike its neighbours in kind, tins, amounts and words; a light batter fills its tins well."""
    kind, tins = CAKES[number % len(CAKES)], WRITTEN_FOR[number % len(WRITTEN_FOR)]
    name = f"{PLACES[number % len(PLACES)]} {WHATS[number // len(PLACES) % len(WHATS)]} {number}"
    count, tin = read_tin(tins)
    base = round(count * tin.brim_ml() / 20) + number % 23
    low = 40 + number % 20
    data = {
        "name": name,
        "kind": kind,
        "also": [f"house cake {number}", f"{kind} cake of the {number % 31 + 1}th"],
        "tags": ["everyday", f"month {number % 12 + 1}"],
        "about": f"The {kind} cake that the ferry takes across, number {number}.\nIt cuts *cleanly* when a day old.",
        "tins": tins,
        "mix": [
            f"{base} g butter, soft", f"{base + 10} g caster sugar", f"{max(1, base // 60)} eggs, at room heat",
            f"{base} g self-raising flour, sifted", f"{1 + number % 3} tsp vanilla extract", "1/4 tsp salt",
            f"{10 + number % 20} ml milk", f"{10 + number % 20} g cocoa powder",
        ],
        "bake": {"oven": "170 °C", "time": f"{low}-{low + 15} min", "done": "A skewer is clean."},
        "method": [
            {"do": f"Heat the oven to 170 °C and line the tins, {number % 5 + 1} at a time.", "hands on": "8 min"},
            {"do": "Beat the butter and sugar until pale and light.", "hands on": "8 min", "done": "Nearly white."},
            {"do": "Beat in the eggs a little at a time, with a spoonful of the flour.", "hands on": "6 min"},
            {"do": "Fold in the flour, then the milk and the vanilla.", "hands on": "3 min"},
            {"do": "Bake until done.", "waiting": f"{low}-{low + 15} min"},
            {"do": "Cool in the tins, turn out, and rest overnight.", "hands on": "2 min", "waiting": "8 h"},
        ],
        "techniques": ["line-a-tin"],
        "raising": "less in wide tins" if number % 3 == 0 else "level",
        "keeps": "Three days in a tin.",
        "notes": ["Freezes well, unfilled.", f"Batch {number} wanted five minutes more."],
    }  # fmt: skip
    return name.lower().replace(" ", "-"), data


@pytest.fixture(scope="session")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book of 300 recipes, each for sixty tins and more."""
    folder = tmp_path_factory.mktemp("book")
    demo = Path(__file__).parents[2] / "recipes"
    odd = [f"round {size / 10:g} cm x 7.5 cm" for size in range(105, 400, 23)]
    odd += [f"square {size / 10:g} cm x 7.5 cm" for size in range(110, 400, 23)]
    house = yaml.safe_load((demo / "house/house.yaml").read_text("utf-8"))
    _dump(folder / "recipes/house/house.yaml", house)
    _dump(folder / "recipes/house/tins.yaml", {"tins": [{"tin": tin, "have": 2} for tin in odd]})
    cards = yaml.load((demo / "house/ingredients.yaml").read_text("utf-8"), yaml.BaseLoader)["ingredients"]
    _dump(folder / "recipes/house/ingredients.yaml", {"ingredients": {name: cards[name] for name in USED}})
    _dump(folder / "recipes/techniques/line-a-tin.yaml", TECHNIQUE)
    for slug, data in map(_mixture, range(RECIPES)):
        _dump(folder / f"recipes/mixtures/{slug}.yaml", data)
    (folder / "book_src").mkdir()
    settings = {"site_name": "Large", "docs_dir": "book_src", "theme": THEME, "plugins": ["tinbook"]}
    _dump(folder / "mkdocs.yml", {**settings, "extra": {"generator": False}})
    return folder


@pytest.fixture(scope="session")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """As many pages of 1 kB Markdown, in sections like those of the book, with the same theme and features."""
    folder = tmp_path_factory.mktemp("plain")
    words = cycle(WORDS)
    sections: dict[str, list[Any]] = {kind: [] for kind in CAKES}
    (folder / "docs/mixtures").mkdir(parents=True)
    (folder / "docs/index.md").write_text("# Home\n", "utf-8")
    for number in range(RECIPES):
        text = f"# Page {number}\n"
        while len(text) < 1024:
            text += f"\n## Part {len(text) // 300 + 1}\n\n{' '.join(islice(words, 45))}.\n"
        (folder / f"docs/mixtures/page-{number}.md").write_text(text[:1024], "utf-8")
        sections[CAKES[number % len(CAKES)]].append({f"Page {number}": f"mixtures/page-{number}.md"})
    settings = {"site_name": "Plain", "docs_dir": "docs", "theme": THEME, "plugins": ["search"]}
    nav = [{"Home": "index.md"}, {"Mixtures": [{kind: pages} for kind, pages in sections.items()]}]
    _dump(folder / "mkdocs.yml", {**settings, "nav": nav, "extra": {"generator": False}})
    return folder


def seconds(folder: Path) -> float:
    """What one strict build takes, from reading its settings to the last file written."""
    run = subprocess.run(
        [sys.executable, "-c", BUILD, str(folder / "mkdocs.yml")],
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"}, capture_output=True, text=True, timeout=300,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout + run.stderr
    return float(run.stdout.split()[-1])


def test_a_large_book_builds_in_twice_the_themes_own_time(benchmark: Any, book: Path, plain: Path) -> None:
    ours: list[float] = []
    alone: list[float] = []
    benchmark.pedantic(
        lambda: ours.append(seconds(book)), setup=lambda: alone.append(seconds(plain)), rounds=5, iterations=1
    )
    pages = sorted((book / "site/mixtures").glob("*-[0-9]*/index.html"))
    assert len(pages) == RECIPES
    tables = [page.parent / "tables/index.html" for page in pages]
    assert min(page.read_text("utf-8").partition('id="tins"')[2].count("<tr") for page in tables) >= TINS
    ratio, size = min(ours) / min(alone), sum(page.stat().st_size for page in pages) / RECIPES / 1024
    index = (book / "site/assets/tinbook/find-index.js").stat().st_size / 1024
    told = {
        "book s": round(min(ours), 2), "theme alone s": round(min(alone), 2), "ratio": round(ratio, 2),
        "recipe pages a second": round(RECIPES / min(ours), 1), "recipe page kB": round(size, 1),
        "search index kB": round(index),
    }  # fmt: skip
    benchmark.extra_info.update(told)
    print("\n" + "\n".join(f"{name}: {figure}" for name, figure in told.items()))
    assert ratio <= MOST
