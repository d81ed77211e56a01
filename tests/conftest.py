"""What the tests of several rooms start from: facts, the demo book, a small kitchen, published tables, GNU units."""

from __future__ import annotations

import csv
import os
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache
from itertools import islice
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from tests.every import SEEDS

from tinbook.facts import Facts
from tinbook.loading import Loaded, load_book, load_facts
from tinbook.models import Book, Card, House, Mixture, OwnedTin, read_model
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.units import Measures, measures_of

# A busy machine is no reason to fail. What an ordinary run tries is the same each time, so what fails does so again.
settings.register_profile("book", deadline=None, max_examples=SEEDS, derandomize=True, database=None)
settings.register_profile("all seeds", deadline=None, print_blob=True)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--all-seeds", action="store_true", help="properties by their full number of seeds, new ones")


def pytest_xdist_auto_num_workers() -> int:
    """One process more than there are cores: some of them wait for a browser."""
    return len(os.sched_getaffinity(0)) + 1 if hasattr(os, "sched_getaffinity") else (os.cpu_count() or 1) + 1


def pytest_configure(config: pytest.Config) -> None:
    # A run starts a hundred processes of Python: what one has compiled, the others need not compile again.
    sys.dont_write_bytecode = False
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    settings.load_profile("all seeds" if config.getoption("--all-seeds") else "book")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Long tests are begun first, each process with its own: or the last of them would run while the others are idle.

    They are dealt to the fronts of the shares that pytest-xdist hands out to begin with.
    """
    processes = getattr(config, "workerinput", {}).get("workercount", 0)
    long = [item for item in items if item.get_closest_marker("long")]
    rest = iter([item for item in items if not item.get_closest_marker("long")])
    left, dealt = len(items), list[pytest.Item]()
    for place in range(processes):
        share, first = left // (processes - place), long[place::processes]
        dealt += [*first, *islice(rest, max(0, share - len(first)))]
        left -= share
    items[:] = [*dealt, *rest] if processes else items


ROOT = Path(__file__).parents[1]
SPOONS = measures_of("US cup", "metric")

HOUSE = {
    "book": "1",
    "name": "A small kitchen",
    "cup": "US cup",
    "eggs": "UK large",
    "scales": {"step": "5 g", "fine step": "1 g", "fine below": "50 g"},
    "mixer bowl": "2.5 kg",
    "oven shelf": "44 cm x 36 cm",
}
CARDS: dict[str, dict[str, Any]] = {
    "butter": {"also": ["sweet butter"], "weighs as": "butter", "allergens": ["milk"], "notes": ["Soft."]},
    "caster sugar": {"also": ["superfine sugar"], "weighs as": "caster sugar", "allergens": "none"},
    "egg": {"each": "whole egg", "allergens": ["egg"], "care": ["raw egg"], "notes": ["At room heat.", "Fresh."]},
    "egg white": {"each": "egg white", "allergens": ["egg"], "care": ["raw egg"]},
    "egg yolk": {"each": "egg yolk", "allergens": ["egg"], "care": ["raw egg"]},
    "self-raising flour": {
        "weighs as": "self-raising flour", "allergens": ["wheat"], "care": ["raw flour"], "plain": "plain flour",
    },
    "plain flour": {"weighs as": "plain flour, spooned", "allergens": ["wheat"], "care": ["raw flour"]},
    "baking powder": {"weighs as": "baking powder", "allergens": "none", "raises": "yes"},
    "bicarbonate of soda": {"weighs as": "bicarbonate of soda", "allergens": "none", "raises": "yes"},
    "milk": {"weighs as": "milk", "allergens": ["milk"]},
    "buttermilk": {"weighs as": "buttermilk", "allergens": ["milk"]},
    "oil": {"weighs as": "oil", "allergens": "none"},
    "water": {"weighs": "1 g/ml", "allergens": "none"},
    "vanilla extract": {"weighs as": "vanilla extract", "allergens": "none"},
    "instant coffee": {"weighs": "1 g per tsp", "allergens": "none"},
    "cocoa powder": {"weighs as": "cocoa, spooned", "allergens": "none"},
    "dark chocolate": {"weighs": "no volume measure", "allergens": ["milk", "soya"]},
    "lemon": {"each": "120 g", "allergens": "none"},
    "honey": {"weighs as": "honey", "allergens": "none", "care": ["honey"]},
    "sugarpaste": {"weighs": "no volume measure"},
}  # fmt: skip
TINS = [
    {"tin": "round 15 cm x 7.5 cm", "have": "2"},
    {"tin": "round 23 cm x 7.5 cm", "measured": "2850 ml"},
    {"tin": "square 20 cm x 5 cm", "have": "1"},
]
MIXTURE = {
    "name": "Plain sponge",
    "kind": "creamed",
    "tins": "2 round 15 cm x 10 cm",
    "mix": [
        "240 g butter, soft", "240 g caster sugar", "4 eggs", "2 tsp vanilla extract", "240 g self-raising flour",
        "60 ml milk",
    ],
    "bake": {"oven": "160 °C", "time": "55-65 min"},
}  # fmt: skip


def read(cls: type[Any], data: Mapping[str, Any], measures: Measures = SPOONS) -> Any:
    """A model of plain data that must be sound."""
    model, flaws = read_model(cls, data, "it", measures)
    assert model is not None, flaws
    return model


@pytest.fixture(scope="session")
def once(
    tmp_path_factory: pytest.TempPathFactory, pytestconfig: pytest.Config
) -> Callable[[str, Callable[[Path], object]], Path]:
    """`once("name", make)`: the folder that `make(folder)` filled, once for all processes of a run. Nobody writes in it."""
    base = tmp_path_factory.getbasetemp()
    base = base.parent if hasattr(pytestconfig, "workerinput") else base

    def folder(name: str, make: Callable[[Path], object]) -> Path:
        place = base / f"once {name}"
        made, done, failed = place / name, place / "done", place / "failed"
        try:
            place.mkdir()
        except FileExistsError:
            until = time.monotonic() + 600
            while not done.exists():
                assert not failed.exists(), f"{name} could not be made: see the test that tried first"
                assert time.monotonic() < until, f"{name} was never made"
                time.sleep(0.1)
        else:
            try:
                make(made)
            except BaseException:
                failed.touch()
                raise
            done.touch()
        return made

    return folder


@pytest.fixture(scope="session")
def build() -> Callable[..., Path]:
    """build(out, config=mkdocs.yml, NAME="value of the environment") builds a book into `out` by MkDocs' own command."""

    def run(out: Path, config: Path = ROOT / "mkdocs.yml", **environment: str) -> Path:
        command = [sys.executable, "-m", "mkdocs", "build", "--strict", "-f", str(config), "-d", str(out)]
        environment = {"TINBOOK_KEEP": "false", **environment}
        done = subprocess.run(command, env={**os.environ, **environment}, capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stderr
        return out

    return run


BUILT_THERE = {"SOURCE_DATE_EPOCH": "1700000000", "TZ": "Pacific/Auckland", "PYTHONHASHSEED": "1"}


@pytest.fixture(scope="session")
def demo_site(build: Callable[..., Path], once: Callable[..., Path]) -> Path:
    """The demo book, built as for a host and without a warning, to be read; at a set time, for a build elsewhere to be
    equal to it."""
    return once("hosted", lambda out: build(out, **BUILT_THERE))


@pytest.fixture(scope="session")
def demo_folder(build: Callable[..., Path], once: Callable[..., Path]) -> Path:
    """The demo book, built as a folder, to be read."""
    return once("folder", lambda out: build(out, TINBOOK_FOLDER="true"))


@pytest.fixture(scope="session")
def facts() -> Facts:
    """The facts of the package."""
    return load_facts()


@cache
def demo_book() -> Loaded:
    """The demo book, as the kitchen sees it, read once by each process; for cases that are listed before there are
    fixtures."""
    return load_book(ROOT / "recipes")


@pytest.fixture(scope="session")
def demo() -> Loaded:
    """The same for tests."""
    return demo_book()


@pytest.fixture(scope="session")
def card() -> Callable[..., Card]:
    """`card(weighs_as="butter")`: an ingredient's card; underscores stand for spaces."""
    return lambda **keys: read(Card, {key.replace("_", " "): value for key, value in keys.items()})


@pytest.fixture(scope="session")
def house() -> Callable[..., House]:
    """`house(eggs="UK medium")`: the small kitchen's house with keys changed, or left out by None."""
    return lambda **changes: read(House, changed(HOUSE, changes))


@pytest.fixture(scope="session")
def kitchen(card: Callable[..., Card], house: Callable[..., House]) -> Book:
    """A small house with its cards and tins, no mixtures: it does not change when the demo does."""
    cards = {name: read(Card, keys) for name, keys in CARDS.items()}
    return Book(house=house(), tins=tuple(read(OwnedTin, tin) for tin in TINS), cards=cards)


@pytest.fixture(scope="session")
def mixture() -> Callable[..., Mixture]:
    """`mixture(tins="round 20 cm x 10 cm")`: a plain sponge with keys changed, or left out by None."""
    return lambda **changes: read(Mixture, changed(MIXTURE, changes))


@pytest.fixture(scope="session")
def batch(kitchen: Book, facts: Facts) -> Callable[..., Batch]:
    """`batch(mix=[...])`: that sponge weighed in the small kitchen, or in `book`, as long as its tins are sold."""

    def weighed(book: Book = kitchen, **changes: Any) -> Batch:
        made = read(Mixture, changed(MIXTURE, changes), replace(SPOONS, tins=book.house.tins_sold_in))
        return weigh("plain-sponge", made, book, facts)

    return weighed


def changed(base: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    data = {**base, **{key.replace("_", " "): value for key, value in changes.items()}}
    return {key: value for key, value in data.items() if value is not None}


@pytest.fixture(scope="session")
def table() -> Callable[[str], list[dict[str, str]]]:
    """Rows of a published table in tests/data; the lines that open with # name its source."""

    def rows(name: str) -> list[dict[str, str]]:
        path = ROOT / "tests" / "data" / f"{name}.csv"
        lines = [line for line in path.read_text("utf-8").splitlines() if not line.startswith("#")]
        return list(csv.DictReader(lines))

    return rows


@pytest.fixture(scope="session")
def practice(table: Callable[[str], list[dict[str, str]]]) -> Callable[[str], tuple[float, ...]]:
    """`practice("mm between pressed marks")`: the figures of that row of tests/data/common_practice.csv."""
    rows = {row["what it checks"]: tuple(map(float, row["value"].split())) for row in table("common_practice")}
    return lambda what: rows[what]


@pytest.fixture(scope="session")
def gnu_units() -> Callable[[list[tuple[str, str]]], list[float]]:
    """Values of (expression, unit) pairs by the GNU units program, which the tests need installed."""

    def convert(questions: list[tuple[str, str]]) -> list[float]:
        text = "".join(f"{have}\n{want}\n" for have, want in questions)
        command = ["units", "--quiet", "--terse", "--digits", "12"]
        run = subprocess.run(command, input=text, capture_output=True, text=True, check=True, timeout=60)
        answers = [float(line) for line in run.stdout.split()]
        assert len(answers) == len(questions)
        return answers

    return convert
