"""schema.org data in built pages: there, whole, and never the end of its script."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from click.testing import CliRunner
from mkdocs.commands.build import build
from mkdocs.config import load_config

from tinbook.cli import main
from tinbook.cli.importing import find_recipe

HOSTILE = "</script><script>window.bad=1</script><!-- <script> & {{ 7*7 }}"


class Scripts(HTMLParser):
    """The text of each script, by its type."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[tuple[str, str]] = []
        self.kind: str | None = None
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "script":
            self.kind = dict(attrs).get("type") or ""
            self.found.append((self.kind, ""))

    def handle_endtag(self, tag: str) -> None:
        self.kind = None

    def handle_data(self, data: str) -> None:
        if self.kind is not None:
            self.found[-1] = (self.kind, self.found[-1][1] + data)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new book with a hostile mixture, built."""
    folder = tmp_path_factory.mktemp("data") / "tide house"
    assert CliRunner().invoke(main, ["new", "book", str(folder)]).exit_code == 0
    sponge = folder / "recipes" / "mixtures" / "plain-sponge.yaml"
    text = re.sub(r"(?m)^name: .*$", f"name: {json.dumps(HOSTILE)}", sponge.read_text("utf-8"))
    text = text.replace("tags: [everyday]", f"tags: [{json.dumps(HOSTILE)}]\nprivate: [keeps, about]")
    (sponge.parent / "hostile.yaml").write_text(text.replace("A sponge to begin with.", "Cormorant"), "utf-8")
    config = load_config(str(folder / "mkdocs.yml"))
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    return folder / "site"


def told(page: Path) -> list[dict[str, object]]:
    return [json.loads(text) for kind, text in Scripts(page.read_text("utf-8")).found if kind == "application/ld+json"]


def test_a_recipe_and_a_technique_say_what_they_are(site: Path) -> None:
    (recipe,) = told(site / "mixtures" / "plain-sponge" / "index.html")
    (technique,) = told(site / "techniques" / "line-a-tin" / "index.html")
    assert (recipe["@type"], recipe["name"]) == ("Recipe", "Plain sponge")
    assert (technique["@type"], technique["name"]) == ("HowTo", "Line a tin")
    assert told(site / "tins" / "index.html") == [] == told(site / "index.html")


def test_hostile_text_stays_text(site: Path) -> None:
    page = site / "mixtures" / "hostile" / "index.html"
    (recipe,) = told(page)
    assert recipe["name"] == HOSTILE
    plain = Scripts((site / "mixtures" / "plain-sponge" / "index.html").read_text("utf-8")).found
    assert [kind for kind, _ in Scripts(page.read_text("utf-8")).found] == [kind for kind, _ in plain]


def test_what_is_private_is_not_said(site: Path) -> None:
    (recipe,) = told(site / "mixtures" / "hostile" / "index.html")
    assert "description" not in recipe
    assert "Cormorant" not in (site / "mixtures" / "hostile" / "index.html").read_text("utf-8")


def test_a_built_page_is_read_back(site: Path) -> None:
    found = find_recipe((site / "mixtures" / "plain-sponge" / "index.html").read_text("utf-8"), "page", "Plain sponge")
    assert found.ingredients[:3] == ("225 g butter, soft", "225 g caster sugar", "4 eggs")
    assert (len(found.steps), found.yields, found.cook) == (5, ("2 round 20 cm x 5 cm",), "PT30M")
