"""The links of a list of contents lead where MkDocs says, from wherever they are seen."""

from __future__ import annotations

import re
from typing import Any

import pytest
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Link, Navigation, Section, get_navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import normalize_url

from tinbook.plugin.neighbours import BESIDE, MANY, Neighbours, Run

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


@pytest.fixture(params=[True, False], ids=["folders", "files"])
def long(request: pytest.FixtureRequest, tmp_path: Any) -> Navigation:
    """A section of many pages, and two sections in it."""
    names = [f"cakes/c{number:03}" for number in range(MANY + 30)]
    inside: list[Any] = [{f"C {number:03}": f"{name}.md"} for number, name in enumerate(names)]
    inside.insert(3, {"Kinds": [{"Mud": "cakes/kinds/mud.md"}]})
    inside.append({"Late": [{"Last": "cakes/late/last.md"}]})
    (tmp_path / "docs").mkdir()
    (tmp_path / "mkdocs.yml").write_text("site_name: Book\nplugins: [search]\n", "utf-8")
    nav = [{"Home": "index.md"}, {"Cakes": ["cakes/index.md", *inside]}]
    config: MkDocsConfig = load_config(str(tmp_path / "mkdocs.yml"), nav=nav, use_directory_urls=request.param)
    config.plugins._current_plugin = "search"
    files = ("index", "cakes/index", *names, "cakes/kinds/mud", "cakes/late/last")
    return get_navigation(Files([File.generated(config, f"{name}.md", content="") for name in files]), config)


def titles(runs: list[Run]) -> list[str]:
    """What the list shows, in order: links, and the entries between them."""
    found: list[str] = []
    for run in runs:
        found += re.findall(r">([^<]+)</a>", run.links)
        found += [str(run.entry.title)] if run.entry else []
    return found


def test_of_a_long_list_the_pages_near_the_open_one_are_shown_and_all_its_sections(long: Navigation) -> None:
    section = long.items[1]
    assert isinstance(section, Section)
    made = Neighbours(prune=True)
    by_title = {page.title: page for page in long.pages}
    for number, pages in ((20, 2 * BESIDE + 1), (0, BESIDE), (MANY + 29, BESIDE + 1)):
        page = by_title[f"C {number:03}"]
        here = section.children.index(page)
        near = [
            each for each in section.children[1:] if each.children or abs(section.children.index(each) - here) <= BESIDE
        ]
        shown = titles(made.runs(section.children, page, "/"))
        assert shown == [each.title for each in near], number
        # the page itself is among them, and a section counts as a neighbour
        assert page.title in shown and {"Kinds", "Late"} <= set(shown)
        assert sum(title.startswith("C ") for title in shown) == pages, number
    # from elsewhere only the sections
    assert titles(made.runs(section.children, long.pages[0], "/")) == ["Kinds", "Late"]
    assert titles(made.runs(section.children, by_title["Mud"], "/")) == ["Kinds", "Late"]
    assert titles(made.runs(section.children, None, "/book")) == ["Kinds", "Late"]


def test_what_is_near_leads_where_mkdocs_says(long: Navigation) -> None:
    section, known = long.items[1], {str(page.title): page for page in long.pages}
    assert isinstance(section, Section)
    made = Neighbours(prune=True)
    for page in long.pages[2::7]:
        links = "".join(run.links for run in made.runs(section.children, page, "/"))
        told = re.findall(r'href="([^"]+)">(C \d+)<', links)
        assert all(url == normalize_url(known[title].url, page, "/") for url, title in told)
        assert len(told) >= (BESIDE - 1 if str(page.title).startswith("C ") else 0)


def test_what_a_page_says_of_others_is_what_it_shows(long: Navigation) -> None:
    """A page is handed on as it was only while its list of contents is the same: what is not shown does not count."""
    made, section = Neighbours(prune=True), long.items[1]
    assert isinstance(section, Section)
    page = next(page for page in long.pages if page.title == "C 020")
    said = [entry[0] for entry in made.outline(section.children, page) if isinstance(entry, tuple)]
    assert said == titles(made.runs(section.children, page, "/"))
    assert made.outline(section.children, page) == Neighbours(prune=True).outline(section.children, page)


def test_a_list_of_few_shows_all(long: Navigation) -> None:
    section = long.items[1]
    assert isinstance(section, Section)
    few = [section.children[0], *section.children[1 : MANY + 2]]  # its first page, a section and as many as go in
    page = few[5]
    assert isinstance(page, Page) and sum(not each.children for each in few[1:]) == MANY
    assert len(titles(Neighbours(prune=True).runs(few, page, "/"))) == MANY + 1
    more = [*few, section.children[MANY + 2]]
    assert len(titles(Neighbours(prune=True).runs(more, page, "/"))) < MANY
