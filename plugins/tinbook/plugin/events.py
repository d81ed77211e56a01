"""MkDocs events. Headings and prose go in early as Markdown; tables and drawings last of all, as HTML.

Late HTML skips Markdown, the search's parser and the theme: measured four to five times faster than tables in Markdown.
"""

from __future__ import annotations

import atexit
import gc
from collections.abc import Mapping
from html import escape
from pathlib import Path
from typing import Any, Literal

from jinja2 import Environment
from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url
from mkdocs.utils.templates import TemplateContext

from tinbook.loading import load_book
from tinbook.pages.base.page import Link
from tinbook.pages.base.page import Page as BookPage
from tinbook.pages.base.render import compiled
from tinbook.pages.lists.schema_org import script_of
from tinbook.plugin.ahead import Ahead, spare_processes
from tinbook.plugin.neighbours import Neighbours
from tinbook.plugin.offline import set_for_folder, sort_scripts, write_offline
from tinbook.plugin.printing import CACHE, set_templates
from tinbook.plugin.squeeze import squeeze
from tinbook.problems import spell
from tinbook.site import Site, build_site, contents

log = get_plugin_logger("tinbook")
THEME = Path(__file__).parent / "theme"
OURS = THEME / "assets" / "tinbook"
STYLES = tuple(f"assets/tinbook/{name}.css" for name in ("tokens", "theme", "parts", "bench", "print"))
OWN_FILES = {
    "css": (
        "home", "tins", "on_hand", "technique", "measures", "ingredient", "portions", "cuts", "guests", "colours",
        "oven", "sources", "broken",
    ),
    "js": ("home", "tins", "technique", "measures", "guests"),
}  # fmt: skip
"""Kinds of page with a style or a script of their own, named after the page's template."""
NARROW = "data-narrow="
"""Stands in a page with a list that narrows; such a page loads narrow.js and narrow.css."""
LINKS = '<ul class="tb-links'
"""Stands in a page with a row of links; such a page loads links.css."""
STYLES_MARK, SCRIPTS_MARK = "<!--tinbook-styles-->", "<!--tinbook-scripts-->"
"""Where a page's own styles and scripts go once it is whole."""
ROOMS = {"Mixtures": "mixtures/index", "Techniques": "techniques/index", "Tins": "tins", "Measures": "measures"}
MORE = {
    "Portions": "portions/index", "Covering": "covering", "Boards": "boards", "Colours": "colours", "Oven": "oven",
    "Ingredients": "ingredients", "Tags": "tags", "Sources": "sources", "On the tablet": "on-the-tablet",
    "Changes": "changes",
}  # fmt: skip
LOOKS = (
    {"media": "(prefers-color-scheme)", "icon": "light", "name": "Follows the device; choose light"},
    {"media": "(prefers-color-scheme: light)", "scheme": "default", "icon": "light", "name": "Light; choose dark"},
    {"media": "(prefers-color-scheme: dark)", "scheme": "slate", "icon": "dark", "name": "Dark; choose high contrast"},
    {"scheme": "contrast", "icon": "contrast", "name": "High contrast; choose by the device"},
)


class TinbookConfig(Config):  # type: ignore[no-untyped-call]
    """`recipes`: the folder of the book's sources, beside mkdocs.yml. `kitchen`: show what is private.

    `folder`: build a book that is copied as a folder and opened from there, without a server.
    """

    recipes = config_options.Type(str, default="recipes")
    kitchen = config_options.Type(bool, default=False)
    folder = config_options.Type(bool, default=False)


class TinbookPlugin(BasePlugin[TinbookConfig]):  # type: ignore[no-untyped-call]
    """Turns the recipes folder into pages of the site."""

    site: Site
    neighbours: Neighbours
    _serving = False
    _made_nav: list[Any] | None = None
    _ahead: Ahead | None = None
    _thin: dict[str, str]
    """Pages without their late parts, by address."""
    _collects = False
    """Whether Python looked for garbage in circles before the build; during it, it would look through the book."""

    @property
    def hosted(self) -> bool:
        """Whether the built site goes to a host, from which a device may keep it."""
        return not (self._serving or self.config.folder)

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        self._serving = command == "serve"
        # as the process ends Python would look through the whole book for garbage, a tenth of the time of a large build
        atexit.register(gc.freeze)

    @property
    def _folder(self) -> Path:
        return Path(self._beside, self.config.recipes)

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        if config.theme.name != "material":
            raise PluginError('Tinbook builds on the theme material: write "theme: {name: material}" in mkdocs.yml')
        self._collects = gc.isenabled()
        gc.disable()
        self._beside = Path(config.config_file_path).parent
        config.extra_css[:0] = [style for style in STYLES if style not in config.extra_css]
        config.theme.dirs.insert(0, str(THEME))
        if "attr_list" not in config.markdown_extensions:
            config.markdown_extensions.append("attr_list")
        if not config.theme.get("palette"):
            config.theme["palette"] = [_look(**look) for look in LOOKS]
        if config.theme["favicon"] == "assets/images/favicon.png":
            config.theme["favicon"] = "assets/tinbook/icon-192.png"
        if self.config.folder:
            set_for_folder(config)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        loaded = load_book(self._folder, kitchen=self.config.kitchen)
        for problem in loaded.problems:
            (log.warning if problem.severity == "error" else log.info)(spell(problem))
        self.site = build_site(loaded.book, loaded.facts, loaded.broken)
        own = [file.src_uri.removesuffix(".md") for file in files.documentation_pages()]
        made = {
            address: File.generated(config, f"{address}.md", content="")
            for address in self.site.pages
            if address not in own
        }
        for address, file in made.items():
            if not self.site.pages[address].listed:
                file.inclusion = InclusionLevel.NOT_IN_NAV
            files.append(file)
        for path, content in self.site.photos.items():
            files.append(File.generated(config, path, content=content))
        for path, content in set_templates(self.site.templates, Path(self._beside, CACHE)):
            files.append(File.generated(config, path, content=content))
        sort_scripts(files, config, OURS, self.config.folder)
        self._files = {file.src_uri: file for file in files}
        self._thin = {}
        spare = 0 if self._serving else spare_processes(len(self.site.pages))
        self._ahead = Ahead(self.site.pages, self._link_from, spare) if spare else None
        # the other processes have begun
        for address, file in made.items():
            file.content_string = self.site.pages[address].markdown
        if config.nav is None or config.nav is self._made_nav:
            config.nav = self._made_nav = _as_nav(contents(self.site, own))
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        self._files = {file.src_uri: file for file in files}
        self.neighbours = Neighbours("navigation.prune" in config.theme.get("features", ()))
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        env.bytecode_cache = compiled()
        return env

    @event_priority(-100)
    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        here = page.file.src_uri.removesuffix(".md")
        made = self.site.pages.get(here)
        heads = {
            "rooms": _rooms(ROOMS, self._files, here),
            "more_rooms": _rooms(MORE, self._files, here),
            "measures": self.site.measures,
            "own_styles": STYLES_MARK if made else "",
            "own_scripts": SCRIPTS_MARK if made else "",
            "schema_org": script_of(made) if made else "",
        }
        context.update(heads)  # type: ignore[typeddict-item]
        return context

    @event_priority(-100)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        made = self.site.pages.get(page.file.src_uri.removesuffix(".md"))
        if made is None:
            return output
        if self._ahead and not self._ahead.ready(made.address):
            self._thin[made.address] = output
            return output
        return self._whole(made, output)

    @event_priority(100)
    def _fill_the_rest(self, *, config: MkDocsConfig) -> None:
        """Pages that were written before their late parts were ready."""
        for address, output in self._thin.items():
            made = self.site.pages[address]
            written = Path(self._files[f"{address}.md"].abs_dest_path)
            written.write_bytes(self._whole(made, output).encode("utf-8", "xmlcharrefreplace"))
        self._thin = {}

    def _whole(self, made: BookPage, output: str) -> str:
        """A page as it is read: with its late parts, and the styles and scripts that these want."""
        ready = self._ahead.parts(made.address) if self._ahead else {}
        whole = made.fill(output, self._link_from(made.address), ready)
        url = self._files[f"{made.address}.md"].url
        styles = "\n".join(
            f'<link rel="stylesheet" href="{get_relative_url(file, url)}">' for file in _own_files(made, whole, "css")
        )
        scripts = "\n".join(
            f'<script type="module" src="{get_relative_url(file, url)}"></script>'
            for file in ([] if self.config.folder else _own_files(made, whole, "js"))
        )
        return whole.replace(STYLES_MARK, styles, 1).replace(SCRIPTS_MARK, scripts, 1)

    def _link_from(self, address: str) -> Link:
        files = self._files
        here = files[f"{address}.md"]
        return lambda address, anchor="": _link(here, files, address, anchor)

    def on_build_error(self, *, error: Exception) -> None:
        self._let_go()

    def _let_go(self) -> None:
        """What the build had for itself: other processes, and Python's whole attention."""
        if self._ahead:
            self._ahead.close()
        if self._collects:
            # the whole book goes among what is looked through rarely: now it would be looked through for nothing
            gc.freeze()
            gc.unfreeze()
            gc.enable()

    @event_priority(-100)
    def _finish(self, *, config: MkDocsConfig) -> None:
        self._let_go()
        if not self._serving:
            squeeze(Path(config.site_dir, "assets", "tinbook"))
        write_offline(config, self.hosted, self.config.folder)

    on_post_build = CombinedEvent(_fill_the_rest, _finish)

    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Any) -> LiveReloadServer:
        if self._folder.is_dir():
            server.watch(str(self._folder))
        return server


def _own_files(made: BookPage, whole: str, ending: str) -> list[str]:
    """The file of a page's own kind, beside those every page has, and what narrows its lists where it has such."""
    names = [made.template] if made.template in OWN_FILES[ending] else []
    names += ["narrow"] if NARROW in whole else []
    names += ["links"] if ending == "css" and LINKS in whole else []
    return [f"assets/tinbook/{name}.{ending}" for name in names]


def _link(here: File, files: Mapping[str, File], address: str, anchor: str) -> str:
    """The way from a page to an address or a photo of the book; one that is not there is a developer's mistake."""
    target = files.get(f"{address}.md") or files.get(address)
    if target is None:
        raise LookupError(f"{here.src_uri} links to {address}, which is no page of the book")
    return target.url_relative_to(here) + (f"#{anchor}" if anchor else "")


def _look(media: str = "", scheme: str = "default", icon: str = "", name: str = "") -> dict[str, Any]:
    """One choice of the theme's palette switch."""
    toggle = {"icon": f"tinbook/{icon}", "name": name}
    return {"scheme": scheme, "toggle": toggle, **({"media": media} if media else {})}


def _rooms(rooms: dict[str, str], files: Mapping[str, File], here: str) -> list[dict[str, Any]]:
    """Links for the running head or foot, as far as the book has such a page."""
    return [
        {
            "title": title,
            "url": file.url,
            "here": here == address or (address.endswith("/index") and here.startswith(address.removesuffix("index"))),
        }
        for title, address in rooms.items()
        if (file := files.get(f"{address}.md"))
    ]


def _as_nav(entries: list[Any]) -> list[Any]:
    """Contents as MkDocs wants them: addresses become file names."""
    return [_nav_entry(entry) for entry in entries]


def _nav_entry(entry: Any) -> Any:
    if isinstance(entry, str):
        return f"{entry}.md"
    # the theme prints titles as they are, so what a baker called a thing is made text here
    return {
        escape(title): _as_nav(inner) if isinstance(inner, list) else f"{inner}.md" for title, inner in entry.items()
    }
