"""The whole files on the pages of reference are a sound book."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book
from tinbook.models.register import REGISTER
from tinbook.pages.reference.examples import (
    CAKE,
    CAKE_FROM,
    EXPLAINED,
    FOLDER,
    ORDER,
    RECIPE,
    STARTS_FROM,
    TECHNIQUE,
    whole,
    whole_of,
)

TEMPLATES = Path(__file__).parents[3] / "plugins" / "tinbook" / "pages" / "templates"


@pytest.fixture(scope="module")
def example(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    folder = tmp_path_factory.mktemp("example")
    shutil.copytree(TEMPLATES / FOLDER, folder / "recipes")
    return load_book(folder / "recipes")


def test_it_has_nothing_to_mend(example: Loaded) -> None:
    assert example.problems == ()
    assert not example.broken


def test_every_file_of_the_house_is_in_it(example: Loaded) -> None:
    house = [kind for kind in REGISTER if kind.room == "house"]
    assert [kind.name for kind in house if not whole_of(kind)] == []
    assert all(getattr(example.book, kind.field) != kind.nothing for kind in house if kind.field)


def test_every_file_of_it_is_on_a_page() -> None:
    shown = {file.path for kind in REGISTER for file in whole_of(kind)}
    shown |= {whole(f"mixtures/{name}.yaml").path for name in (RECIPE, STARTS_FROM, EXPLAINED)}
    shown |= {whole(f"techniques/{TECHNIQUE}.yaml").path}
    shown |= {whole(f"cakes/{name}.yaml").path for name in (CAKE, CAKE_FROM)}
    shown |= {whole(f"orders/{ORDER}.yaml").path}
    assert shown == {f"recipes/{path.relative_to(TEMPLATES / FOLDER)}" for path in (TEMPLATES / FOLDER).rglob("*.yaml")}


def test_the_text_is_as_it_lies_in_the_file() -> None:
    file = whole("house/tins.yaml")
    assert file.path == "recipes/house/tins.yaml"
    assert file.text == (TEMPLATES / FOLDER / "house" / "tins.yaml").read_text("utf-8").rstrip()


def test_a_variation_takes_over_what_it_does_not_say(example: Loaded) -> None:
    base, made = (example.book.mixtures[name] for name in (RECIPE, STARTS_FROM))
    assert made.tins == base.tins and len(made.method) == len(base.method) + 1
