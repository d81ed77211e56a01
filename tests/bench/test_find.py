"""What Find costs in a book of a thousand recipes: its index, the opening of it, and the answer to each key.

The recipes' sentences are words of the demo book in a new order, each in its own, so that nothing compresses better
than in a real book. Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import csv
import gzip
import random
import shutil
import statistics
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import sync_playwright
from tests.browser.conftest import launched

from tinbook.loading import load_book
from tinbook.pages.finding.index import index_of
from tinbook.plugin.finding import INDEX, as_script
from tinbook.site import build_site

ROOT = Path(__file__).parents[2]
RECIPES = 1000
MOST_KB, MOST_KEY_MS = 400, 50
TEXTS = ("about", "keeps")


def shuffled(text: str, words: list[str], chance: random.Random) -> str:
    """As many words as a text has, drawn from those of the whole book as often as they stand there."""
    return " ".join(chance.choices(words, k=len(text.split()))).capitalize() + "."


def another(data: dict[str, Any], number: int, words: list[str], names: list[str], chance: random.Random) -> Any:
    """A recipe like `data` in all but its words."""
    name = f"{' '.join(chance.sample(names, 2)).capitalize()} {data['name'].split()[-1]} {number}"
    data = {key: value for key, value in data.items() if key not in ("from", "change")}
    data |= {"name": name, "also": [" ".join(chance.sample(names, 2)) + f" {number}" for _ in range(3)]}
    data |= {key: shuffled(data[key], words, chance) for key in TEXTS if key in data}
    data["notes"] = [shuffled("word " * 14, words, chance) for _ in range(3)]
    steps = [step if isinstance(step, dict) else {"do": step} for step in data.get("method", ())]
    return data | {"method": [step | {"do": shuffled(step["do"] + " word" * 4, words, chance)} for step in steps]}


@pytest.fixture(scope="module")
def index(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The script of the index of such a book."""
    folder, chance = tmp_path_factory.mktemp("thousand"), random.Random(7)
    shutil.copytree(ROOT / "recipes", folder / "recipes")
    files = sorted((folder / "recipes/mixtures").glob("*.yaml"))
    recipes = [yaml.load(file.read_text("utf-8"), yaml.BaseLoader) for file in files]
    bases = [data for data in recipes if "from" not in data and "method" in data]
    prose = " ".join(str(step) for data in bases for step in (*data["method"], data.get("about", "")))
    words = [word for word in prose.split() if word.isalpha()]
    cards = yaml.load((folder / "recipes/house/ingredients.yaml").read_text("utf-8"), yaml.BaseLoader)["ingredients"]
    names = sorted({word for text in (*words, *cards) for word in text.lower().split() if len(word) > 3})
    for number in range(RECIPES - len(files)):
        data = another(bases[number % len(bases)], number, words, names, chance)
        path = folder / f"recipes/mixtures/made-{number}.yaml"
        path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")
    loaded = load_book(folder / "recipes")
    assert len(loaded.book.mixtures) == RECIPES, [problem.message for problem in loaded.problems][:5]
    finds = build_site(loaded.book, loaded.facts, loaded.broken).finds
    return as_script(index_of((found, f"{found.address}/") for found in finds))


TYPE = """async questions => {
  const field = document.querySelector("#tb-asked"), took = [];
  for (const words of questions) {
    for (let end = 1; end <= words.length; end++) {
      field.value = words.slice(0, end);
      const start = performance.now();
      field.dispatchEvent(new Event("input"));
      document.querySelector(".tb-found").getBoundingClientRect();
      took.push(performance.now() - start);
    }
  }
  return took;
}"""


def test_a_thousand_recipes(benchmark: Any, index: str, tmp_path: Path) -> None:
    site = tmp_path / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", str(ROOT / "mkdocs.yml"), "-d", str(site)]
    subprocess.run(command, check=True, timeout=300)
    (site / INDEX).write_text(index, "utf-8")
    packed = len(gzip.compress(index.encode(), 9)) / 1024
    with (ROOT / "tests/data/questions.csv").open(encoding="utf-8") as file:
        questions = [row["words"] for row in csv.DictReader(file)]
    server = subprocess.Popen(
        [sys.executable, "-m", "http.server", "0", "-b", "127.0.0.1", "-d", str(site)],
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        assert server.stdout
        port = server.stdout.readline().split(" port ")[1].split()[0]
        with sync_playwright() as play:
            browser = launched(play.chromium)
            tab = browser.new_page()
            tab.goto(f"http://127.0.0.1:{port}/")
            tab.locator(".tb-find").click()
            tab.locator(".tb-mean a").wait_for()
            keys = benchmark.pedantic(lambda: tab.evaluate(TYPE, questions), rounds=1, iterations=1)
            opened = tab.evaluate("performance.getEntriesByName('tb-find ready')[0].duration")
            browser.close()
    finally:
        server.terminate()
    told = {
        "index, kB of 1024 bytes": round(len(index.encode()) / 1024), "packed by gzip": round(packed),
        "made ready, ms": round(opened), "a key, ms, median": round(statistics.median(keys), 1),
        "slowest of twenty": round(sorted(keys)[-len(keys) // 20], 1), "slowest": round(max(keys), 1),
    }  # fmt: skip
    benchmark.extra_info.update(told)
    print("\n" + "\n".join(f"{name}: {figure}" for name, figure in told.items()))
    assert packed <= MOST_KB
    assert statistics.median(keys) <= MOST_KEY_MS
