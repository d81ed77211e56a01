"""What the book asks of the theme, and what a baker's own settings keep."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError

from tinbook.plugin.settings import STYLES, THEME, settle


def config_of(tmp_path: Path, **theme: Any) -> MkDocsConfig:
    (tmp_path / "docs").mkdir(exist_ok=True)
    settings = {"site_name": "Lamp Room", "docs_dir": str(tmp_path / "docs"), "plugins": []}
    return load_config(config_file_path=None, theme={"name": "material", **theme}, **settings)


def test_the_theme_is_set_up_once(tmp_path: Path) -> None:
    config = config_of(tmp_path)
    settle(config)
    settle(config)
    assert list(config.extra_css) == list(STYLES)
    assert config.theme.dirs[0] == str(THEME)
    assert [look.get("scheme") for look in config.theme["palette"]] == ["default", "default", "slate", "contrast"]
    assert config.theme["favicon"] == "assets/tinbook/icon-192.png"
    assert config.markdown_extensions.count("attr_list") == 1


def test_a_bakers_own_looks_and_picture_stay(tmp_path: Path) -> None:
    config = config_of(tmp_path, palette={"scheme": "slate"}, favicon="assets/gull.png")
    settle(config)
    assert config.theme["palette"] == {"scheme": "slate"}
    assert config.theme["favicon"] == "assets/gull.png"


def test_every_style_is_there() -> None:
    assert all((THEME / style).is_file() for style in STYLES)


def test_another_theme_is_refused_with_the_cure(tmp_path: Path) -> None:
    with pytest.raises(PluginError, match=r'write "theme: \{name: material\}"'):
        settle(config_of(tmp_path, name="mkdocs"))
