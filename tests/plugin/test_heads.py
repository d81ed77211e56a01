"""What the head of a page says out of sight."""

from __future__ import annotations

from typing import Any

import pytest
from mkdocs.config import load_config
from mkdocs.structure.files import File
from mkdocs.structure.pages import Page as Leaf

from tinbook.loading import Loaded
from tinbook.plugin.heads import heads_of
from tinbook.site import build_site


def heads(demo: Loaded, address: str, **settings: Any) -> dict[str, str]:
    config = load_config(config_file_path=None, site_name="Our book", **settings)
    config.plugins._current_plugin = "tinbook"
    site = build_site(demo.book, demo.facts, demo.broken)
    made = site.pages.get(address)
    return heads_of(
        made, Leaf(made.title if made else "By hand", File.generated(config, "a.md", content=""), config), config
    )


def test_a_recipe_has_data_and_a_description(demo: Loaded) -> None:
    told = heads(demo, "mixtures/madeira-cake")
    assert '"@type":"Recipe"' in told["schema_org"].replace(" ", "")
    assert told["description"]


@pytest.mark.parametrize("address", ["by-hand", "measures"])
def test_other_pages_have_no_data(demo: Loaded, address: str) -> None:
    assert heads(demo, address)["schema_org"] == ""


def test_a_description_in_the_settings_is_the_themes_to_show(demo: Loaded) -> None:
    assert heads(demo, "mixtures/madeira-cake", site_description="Ours")["description"] == ""
