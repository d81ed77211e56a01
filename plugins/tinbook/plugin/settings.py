"""What the book asks of the theme: its styles, its three looks, its picture in the browser's tab."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError

THEME = Path(__file__).parent / "theme"
STYLES = tuple(f"assets/tinbook/{name}.css" for name in ("tokens", "theme", "parts", "bench", "print"))
LOOKS = (
    {"media": "(prefers-color-scheme)", "icon": "light", "name": "Follows the device; choose light"},
    {"media": "(prefers-color-scheme: light)", "scheme": "default", "icon": "light", "name": "Light; choose dark"},
    {"media": "(prefers-color-scheme: dark)", "scheme": "slate", "icon": "dark", "name": "Dark; choose high contrast"},
    {"scheme": "contrast", "icon": "contrast", "name": "High contrast; choose by the device"},
)


def settle(config: MkDocsConfig) -> None:
    """Set the theme up for the book; what mkdocs.yml says of looks and pictures stays. PluginError: another theme."""
    if config.theme.name != "material":
        raise PluginError('Tinbook builds on the theme material: write "theme: {name: material}" in mkdocs.yml')
    config.extra_css[:0] = [style for style in STYLES if style not in config.extra_css]
    config.theme.dirs.insert(0, str(THEME))
    if "attr_list" not in config.markdown_extensions:
        config.markdown_extensions.append("attr_list")
    if not config.theme.get("palette"):
        config.theme["palette"] = [_look(**look) for look in LOOKS]
    if config.theme["favicon"] == "assets/images/favicon.png":
        config.theme["favicon"] = "assets/tinbook/icon-192.png"


def _look(media: str = "", scheme: str = "default", icon: str = "", name: str = "") -> dict[str, Any]:
    """One choice of the theme's palette switch."""
    toggle = {"icon": f"tinbook/{icon}", "name": name}
    return {"scheme": scheme, "toggle": toggle, **({"media": media} if media else {})}
