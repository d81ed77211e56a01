"""What the book asks of the theme, and what a baker's own settings keep."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import get_files

from tinbook.plugin.settings import STYLE, STYLES, THEME, lean, settle


def config_of(tmp_path: Path, **theme: Any) -> MkDocsConfig:
    (tmp_path / "docs").mkdir(exist_ok=True)
    settings = {"site_name": "Lamp Room", "docs_dir": str(tmp_path / "docs"), "plugins": []}
    return load_config(config_file_path=None, theme={"name": "material", **theme}, **settings)


def test_the_theme_is_set_up_once(tmp_path: Path) -> None:
    config = config_of(tmp_path)
    settle(config)
    settle(config)
    assert list(config.extra_css) == [STYLE]
    assert config.theme.dirs[0] == str(THEME)
    assert config.theme["palette"] is None
    assert config.theme["favicon"] == "assets/tinbook/icon-192.png"
    assert config.markdown_extensions.count("attr_list") == 1


def test_a_bakers_own_looks_and_picture_stay(tmp_path: Path) -> None:
    config = config_of(tmp_path, palette={"scheme": "slate"}, favicon="assets/gull.png")
    settle(config)
    assert config.theme["palette"] == {"scheme": "slate"}
    assert config.theme["favicon"] == "assets/gull.png"


@pytest.mark.parametrize(
    "palette",
    [{"scheme": "default"}, {"primary": "teal"}, {"media": "(prefers-color-scheme)"}, [{"scheme": "slate"}, {"scheme": "default"}]],
)  # fmt: skip
def test_a_palette_that_says_what_the_book_does_by_itself_goes(tmp_path: Path, palette: Any) -> None:
    config = config_of(tmp_path, palette=palette)
    settle(config)
    assert config.theme["palette"] is None


def test_the_site_has_our_styles_in_one_file_and_nothing_of_the_theme_but_what_a_house_asks_for(tmp_path: Path) -> None:
    config = config_of(tmp_path, favicon="assets/images/favicon.png")
    (tmp_path / "docs/assets/stylesheets").mkdir(parents=True)
    (tmp_path / "docs/assets/stylesheets/house.css").write_text("h1 { color: navy }", "utf-8")
    settle(config)
    config.theme["favicon"] = "assets/images/favicon.png"
    files = get_files(config)
    files.add_files_from_theme(config.theme.get_env(), config)
    before = {file.src_uri for file in files}
    config.plugins._current_plugin = "tinbook"
    assert any("bundle" in name for name in before) and set(STYLES) < before
    lean(files, config)
    left = {file.src_uri for file in files}
    assert {name for name in left if not name.startswith("assets/tinbook/")} == {
        "assets/stylesheets/house.css", "assets/images/favicon.png",
    }  # fmt: skip
    assert not left & set(STYLES)
    text = next(file for file in files if file.src_uri == STYLE).content_string
    parts = [(THEME / style).read_text("utf-8") for style in STYLES]
    assert text == "".join(parts)


def test_a_look_is_told_alike_wherever_it_is_asked_for() -> None:
    """By the device or by choice: the same colours, said twice as no rule of CSS covers both."""
    rules = re.findall(
        r"\{((?:\s+--[\w-]+: [^;{}]+;)+)\s+(?:color-scheme: dark;\s+)?\}", (THEME / STYLES[0]).read_text("utf-8")
    )
    dark = [rule for rule in rules if "#0d1a20" in rule]
    contrast = [rule for rule in rules if "--most-paper, #fff" in rule]
    assert len(dark) == len(contrast) == 2
    assert dark[0] == dark[1] and contrast[0] == contrast[1]


def test_every_style_is_there() -> None:
    assert all((THEME / style).is_file() for style in STYLES)


def test_another_theme_is_refused_with_the_cure(tmp_path: Path) -> None:
    with pytest.raises(PluginError, match=r'write "theme: \{name: material\}"'):
        settle(config_of(tmp_path, name="mkdocs"))
