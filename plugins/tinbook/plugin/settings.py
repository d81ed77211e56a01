"""What the book takes from the theme: its pages and words, not its styles and scripts; an icon for the tab."""

from __future__ import annotations

from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import get_plugin_logger
from mkdocs.structure.files import File, Files

log = get_plugin_logger("tinbook")
THEME = Path(__file__).parent / "theme"
STYLE = "assets/tinbook/book.css"
"""The styles of every page, in one file."""
STYLES = tuple(
    f"assets/tinbook/{name}.css" for name in ("tokens", "prose", "page", "parts", "bench", "large", "forced", "print")
)
"""The files it is made from, in order."""
FIXED = ("slate", "contrast")
"""Looks a house can choose for its book, by the theme's names."""


def settle(config: MkDocsConfig) -> None:
    """Set the theme up for the book; what mkdocs.yml says about a look or an icon stays. PluginError: another theme.

    A palette with one dark look, or the contrast look, stays; any other means what the book does anyway: follow the
    device, and let the reader choose.
    """
    if config.theme.name != "material":
        raise PluginError('Tinbook builds on the theme material: write "theme: {name: material}" in mkdocs.yml')
    if any(name.rpartition("/")[2] == "search" for name in config.plugins):
        log.info('The book has a search of its own: take the plugin "search" out of mkdocs.yml.')
    config.extra_css[:0] = [STYLE] if STYLE not in config.extra_css else []
    config.theme.dirs.insert(0, str(THEME))
    if "attr_list" not in config.markdown_extensions:
        config.markdown_extensions.append("attr_list")
    palette = config.theme.get("palette")
    if not (isinstance(palette, dict) and palette.get("scheme") in FIXED):
        config.theme["palette"] = None
    if config.theme["favicon"] == "assets/images/favicon.png":
        config.theme["favicon"] = "assets/tinbook/icon-192.png"


def lean(files: Files, config: MkDocsConfig) -> None:
    """Leave the theme's files for its own pages out of the site, and add our styles, as one file.

    The house's own files stay, wherever they are.
    """
    themes = [place for place in config.theme.dirs if Path(place, "mkdocs_theme.yml").is_file()]
    for file in list(files):
        from_theme = file.src_dir in themes and not file.is_documentation_page()
        if file.src_uri in STYLES or (from_theme and file.src_uri != config.theme["favicon"]):
            files.remove(file)
    text = "".join((THEME / style).read_text("utf-8") for style in STYLES)
    files.append(File.generated(config, STYLE, content=text))
