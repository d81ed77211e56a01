"""What the head of a page holds, unseen: its description, its data for other programs, its styles and scripts."""

from __future__ import annotations

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.pages import Page as Leaf

from tinbook.pages.base.descriptions import described
from tinbook.pages.base.page import Page
from tinbook.pages.lists.schema_org import script_of
from tinbook.plugin.whole import SCRIPTS_MARK, STYLES_MARK


def heads_of(made: Page | None, leaf: Leaf, config: MkDocsConfig) -> dict[str, str]:
    """What the theme's template puts there; `made` is the page of the book, None for one written by hand."""
    told = leaf.meta.get("description") or config.site_description
    return {
        "description": "" if told else described(made.template if made else "", str(leaf.title), config.site_name),
        "own_styles": STYLES_MARK,
        "own_scripts": SCRIPTS_MARK,
        "schema_org": script_of(made) if made else "",
    }
