"""The links of a list of contents are the theme's own, from wherever they are seen."""

from __future__ import annotations

from typing import Any

import pytest
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Link, Navigation, Section, get_navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import normalize_url

from tinbook.plugin.neighbours import Neighbours

NAV: list[Any] = [
    {"Home": "index.md"},
    {"Cakes": [
        "cakes/index.md", {"Sponge": "cakes/sponge.md"}, {"Kinds": [{"Mud": "cakes/kinds/mud.md"}]},
        {"Loaf": "cakes/loaf.md"}, {"Tins": "tins.md"}, {"Far": "https://example.org/far"},
    ]},
]  # fmt: skip


@pytest.fixture(params=[True, False], ids=["folders", "files"])
def nav(request: pytest.FixtureRequest, tmp_path: Any) -> Navigation:
    (tmp_path / "docs").mkdir()
    (tmp_path / "mkdocs.yml").write_text("site_name: Book\nplugins: [search]\n", "utf-8")
    config: MkDocsConfig = load_config(str(tmp_path / "mkdocs.yml"), nav=NAV, use_directory_urls=request.param)
    names = ("index", "cakes/index", "cakes/sponge", "cakes/kinds/mud", "cakes/loaf", "tins")
    config.plugins._current_plugin = "search"
    return get_navigation(Files([File.generated(config, f"{name}.md", content="") for name in names]), config)


def test_links_stand_between_the_entries_that_the_theme_draws(nav: Navigation) -> None:
    section = nav.items[1]
    assert isinstance(section, Section)
    kinds, sponge = section.children[2], section.children[1]
    assert isinstance(sponge, Page)
    before, own, after = Neighbours().runs(section, sponge)
    assert (before.entry, before.place, before.links) == (sponge, 2, "")
    assert (own.entry, own.place, own.links) == (kinds, 3, "")
    assert after.entry is None
    assert after.links.count("<li") == 3


def test_every_link_leads_from_every_page_where_mkdocs_says(nav: Navigation) -> None:
    section = nav.items[1]
    assert isinstance(section, Section)
    made = Neighbours()
    for page in nav.pages:
        links = "".join(run.links for run in made.runs(section, page))
        for entry in section.children[1:]:
            if isinstance(entry, (Page, Link)) and entry is not page:
                assert f'href="{normalize_url(entry.url or "", page)}"' in links, (page.url, entry)
