"""Light books: a new one without its larder; and many mixtures written from one source, for long lists."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml
from click.testing import CliRunner
from tests.conftest import CARDS, HOUSE, MIXTURE, TINS

from tinbook.cli import main

LARDER = "\n# A larder to start from."
"""Where in the cards of a new book those begin that its sponge does not take."""

ICING = {
    "name": "Plain icing",
    "kind": "buttercream",
    "makes": "750 g",
    "mix": ["250 g butter, soft", "500 g caster sugar", "30 ml milk"],
}
SETTINGS = {
    "site_name": "Long lists",
    "docs_dir": "book_src",
    "theme": {"name": "material", "font": False, "features": ["navigation.indexes", "navigation.prune"]},
    "extra": {"generator": False},
}


def new_book(folder: Path) -> Path:
    """A book of one's own as `tinbook new book` writes it, but with few cards: two pages in three are for its larder."""
    made = CliRunner().invoke(main, ["new", "book", str(folder)])
    assert made.exit_code == 0, made.output
    cards = folder / "recipes/house/ingredients.yaml"
    few, larder, _ = cards.read_text("utf-8").partition(LARDER)
    assert larder
    cards.write_text(few, "utf-8")
    return folder


def write(path: Path, data: Any) -> None:
    """Data as YAML."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")


def light(place: Path, count: int, every: int = 4, **options: bool) -> Path:
    """A book of `count` mixtures; of `every` so many one is an icing, the others are sponges baked in tins.

    Each has two tags; the last has a name of its own. `options`: the plugin's, in mkdocs.yml.
    """
    recipes = place / "recipes"
    write(recipes / "house/house.yaml", HOUSE)
    write(recipes / "house/tins.yaml", {"tins": TINS})
    write(recipes / "house/ingredients.yaml", {"ingredients": CARDS})
    for number in range(count):
        source, word = (ICING, "icing") if number % every == 0 else (MIXTURE, "sponge")
        name = "Wherry sponge" if number == count - 1 else f"Plain {word} {number:03}"
        data = {**source, "name": name, "tags": ["everyday", "for winter" if number % 2 else "for summer"]}
        write(recipes / f"mixtures/m{number:04}.yaml", data)
    (place / "book_src").mkdir()
    write(place / "mkdocs.yml", {**SETTINGS, "plugins": [{"tinbook": options}]})
    return place
