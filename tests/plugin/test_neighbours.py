"""The links of a list of contents lead where MkDocs says, from wherever they are seen."""

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


def test_links_stand_between_the_entries_that_the_template_draws(nav: Navigation) -> None:
    section = nav.items[1]
    assert isinstance(section, Section)
    kinds, sponge = section.children[2], section.children[1]
    assert isinstance(sponge, Page)
    own, after = Neighbours(prune=True).runs(section.children, sponge, "/")
    assert (own.entry, own.place, own.links) == (sponge, 2, "")
    assert (after.entry, after.links.count("<li"), after.links.count(">Kinds<")) == (None, 4, 1)
    own, open_, after = Neighbours(prune=False).runs(section.children, sponge, "/")
    assert (open_.entry, open_.place, open_.links) == (kinds, 3, "")
    assert after.links.count("<li") == 3


def test_the_section_a_page_is_in_is_drawn(nav: Navigation) -> None:
    section, mud = nav.items[1], next(page for page in nav.pages if page.title == "Mud")
    mud.active = True
    home, rest = Neighbours(prune=True).runs(nav.items, mud, "/", top=True)
    assert (home.entry, home.place, home.links.count("<li")) == (section, 2, 1)
    assert rest.links == ""


def test_every_link_leads_from_every_page_where_mkdocs_says(nav: Navigation) -> None:
    section = nav.items[1]
    assert isinstance(section, Section)
    made = Neighbours(prune=True)
    for page in (*nav.pages, None):
        links = "".join(run.links for run in made.runs(section.children, page, "/book"))
        for entry in section.children[1:]:
            leaf = entry.children[0] if isinstance(entry, Section) else entry
            assert isinstance(leaf, (Page, Link))
            if page not in (entry, leaf):
                assert f'href="{normalize_url(leaf.url or "", page, "/book")}"' in links, (page, entry)
