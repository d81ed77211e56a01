"""Markdown run once for pages that are alike but for their titles gives each page what its own run would."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

from tinbook.plugin.alike import Alike

TABLES = '<div class="tb-top">\n<h1>{}</h1>\n</div>\n\n## Every tin {{ #tins }}\n\n<!--tinbook:tables/tins-->\n{}'


@pytest.fixture
def config(tmp_path: Path) -> MkDocsConfig:
    (tmp_path / "docs").mkdir()
    (tmp_path / "mkdocs.yml").write_text("site_name: Book\nplugins: []\nmarkdown_extensions: [attr_list]\n", "utf-8")
    loaded = load_config(str(tmp_path / "mkdocs.yml"))
    loaded.plugins._current_plugin = None  # as it is once MkDocs has run an event
    return loaded


def run(alike: Alike | None, name: str, markdown: str, config: MkDocsConfig) -> tuple[Page, str]:
    """A page, and what reached Markdown."""
    file = File.generated(config, f"{name}.md", content=markdown)
    page = Page(title=None, file=file, config=config)
    page.read_source(config)
    given = page.markdown = alike.begin(page.markdown or "", page) if alike else page.markdown or ""
    page.render(config, Files([file]))
    page.content = alike.end(page.content or "", page) if alike else page.content
    return page, given


def test_a_second_page_alike_is_what_its_own_run_makes(config: MkDocsConfig) -> None:
    alike = Alike()
    for name, runs in (("Curlew & dunlin cake", True), ("Heron *cake*", False)):
        made, given = run(alike, "cake", TABLES.format(name, ""), config)
        own, _ = run(None, "cake", TABLES.format(name, ""), config)
        assert bool(given) is runs
        assert made.content == own.content and f"<h1>{name}</h1>" in str(made.content)
        assert [(head.title, head.url) for head in made.toc] == [(head.title, head.url) for head in own.toc]
        assert (made.markdown, made.present_anchor_ids) == (own.markdown, own.present_anchor_ids)


@pytest.mark.parametrize("more", ["\nA word of [its own](#tins).\n", "\n[There][1]\n\n[1]: #tins\n"])
def test_a_page_that_links_is_always_run(config: MkDocsConfig, more: str) -> None:
    alike = Alike()
    assert all(run(alike, name, TABLES.format(name, more), config)[1] for name in ("one", "two"))


def test_a_page_that_begins_otherwise_is_left_alone(config: MkDocsConfig) -> None:
    alike = Alike()
    assert all(run(alike, name, "# Tins\n\nWords.\n", config)[1] for name in ("one", "two"))
    assert run(alike, "none", "", config)[0].content == ""
