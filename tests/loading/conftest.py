"""A small sound book on disk, for tests to spoil."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book

BASE = {
    "house/house.yaml": "book: 1\nname: Lamp Room house book\n",
    "house/tins.yaml": "tins:\n  - {tin: round 20 cm x 7.5 cm, have: 2}\n",
    "house/ingredients.yaml": """\
ingredients:
  butter:
    weighs as: butter
    allergens: [milk]
  caster sugar:
    also: [superfine sugar]
    weighs as: caster sugar
    allergens: none
  egg:
    each: whole egg
    allergens: [egg]
    care: [raw egg]
  self-raising flour:
    weighs as: self-raising flour
    allergens: [wheat]
    care: [raw flour]
  lavender:
    allergens: none
""",
    "mixtures/plain-sponge.yaml": """\
name: Plain sponge
kind: creamed
tins: 2 round 20 cm x 7.5 cm
mix:
  - 300 g butter
  - 300 g caster sugar
  - 6 eggs
  - 300 g self-raising flour
bake: {oven: 160 °C, time: 35-40 min}
techniques: [line-a-tin]
""",
    "techniques/line-a-tin.yaml": """\
name: Line a tin
purpose: So that the cake comes out whole.
steps:
  - Cut the paper to the base.
mixtures: [plain-sponge]
""",
}

# What a log speaks of.
ICING = """\
name: Plain icing
kind: buttercream
makes: 600 g
mix: [200 g butter, 400 g caster sugar]
"""
# What a cake leans on.
OF_CAKES = {
    "mixtures/plain-icing.yaml": ICING,
    "house/colours.yaml": 'colours:\n  lamp red: {per 100 g: 2 g gel, swatch: "#B3261E"}\n',
    "techniques/set-a-sail.yaml": """\
name: Set a sail
purpose: For the front.
steps: [Cut it.]
parts for: round 20 cm
parts:
  - {part: sail, solid: ball 50 mm, paste: butter, colour: lamp red}
""",
}
MORE = {"used": {"mixtures/plain-icing.yaml": ICING}, "bakes": {"mixtures/plain-icing.yaml": ICING}, "cakes": OF_CAKES}
"""What stands in the small book beside a bad file, by where that is."""

Write = Callable[..., Path]
Told = Callable[[Path, bool], Loaded]
BAD = Path(__file__).parents[1] / "source" / "bad"
CASES = sorted(BAD.glob("*/*.yaml"))
"""Bad files, each by itself for a place in the small book."""
HOUSE = ("house", "tins", "ingredients", "finish", "used", "bakes", "colours", "cutters")


def write_book(folder: Path, files: Mapping[str, str | bytes | None]) -> Path:
    """The small book in `folder`, with some of its `files` written anew, added, or with None left out."""
    for name, content in {**BASE, **files}.items():
        if content is not None:
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return folder


def address(path: Path) -> str:
    """Where a bad file stands in the book."""
    where = path.parent.name
    return f"house/{where}" if where in HOUSE else f"{where}/{path.stem}"


def case(path: Path) -> str:
    """A bad file's name."""
    return f"{path.parent.name}/{path.stem}"


@pytest.fixture(scope="session")
def told(tmp_path_factory: pytest.TempPathFactory) -> Told:
    """told(path, kitchen): the small book with that bad file in it, which is loaded once."""
    folder = tmp_path_factory.mktemp("bad") / "recipes"
    put: list[Path] = []

    @cache
    def load(path: Path, kitchen: bool) -> Loaded:
        more = MORE.get(path.parent.name, {})
        here = f"{address(path)}.yaml"
        for name in put:
            name.unlink()
        put[:] = [folder / name for name in {**more, here: ""}]
        return load_book(write_book(folder, {**more, here: path.read_bytes()}), kitchen)

    return load


@pytest.fixture
def write(tmp_path: Path) -> Write:
    """`write({"mixtures/x.yaml": "..."})`: the folder of the small book, with these files in it."""
    return lambda files=None: write_book(tmp_path / "recipes", files or {})


@pytest.fixture(scope="session")
def base() -> Mapping[str, str]:
    """The files of the small book."""
    return BASE
