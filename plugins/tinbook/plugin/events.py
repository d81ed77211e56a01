"""MkDocs events. Headings and prose go in early as Markdown; tables and drawings last of all, as HTML."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

from jinja2 import Environment
from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, BuildError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from tinbook.loading import load_book
from tinbook.loading.unsure import UNSURE
from tinbook.models.register import kinds
from tinbook.pages.base.render import compiled
from tinbook.pages.finding.find import Find
from tinbook.pages.lists.schema_org import script_of
from tinbook.pages.spelling.descriptions import described
from tinbook.plugin.ahead import spare_processes
from tinbook.plugin.alike import Alike
from tinbook.plugin.attention import Attention
from tinbook.plugin.finding import page_found, write_index
from tinbook.plugin.guard import guarded
from tinbook.plugin.neighbours import Neighbours
from tinbook.plugin.offline import set_for_folder, sort_scripts, write_offline
from tinbook.plugin.printing import CACHE, set_templates
from tinbook.plugin.settings import THEME, lean, settle
from tinbook.plugin.squeeze import squeeze, tight
from tinbook.plugin.standing import LastGood
from tinbook.plugin.stopped import NOT_BUILT, is_of_files, why_stopped
from tinbook.plugin.together import together
from tinbook.plugin.ways import MORE, ROOMS, as_nav, rooms_from
from tinbook.plugin.whole import SCRIPTS_MARK, STYLES_MARK, WholePages, dressed
from tinbook.problems import spell
from tinbook.site import Site, build_site, contents

log = get_plugin_logger("tinbook")
HOUSE = kinds()["house"].path
OURS = THEME / "assets" / "tinbook"


class TinbookConfig(Config):  # type: ignore[no-untyped-call]
    """`recipes`: the folder of the book's sources, next to mkdocs.yml. `kitchen`: show what is private.

    `folder`: build a book to be copied as a folder and opened from there, without a server.
    """

    recipes = config_options.Type(str, default="recipes")
    kitchen = config_options.Type(bool, default=False)
    folder = config_options.Type(bool, default=False)


class TinbookPlugin(BasePlugin[TinbookConfig]):  # type: ignore[no-untyped-call]
    """Turns the recipes folder into pages of the site."""

    site: Site
    neighbours: Neighbours
    _serving = False
    _dirty = False
    _standing: LastGood | None = None
    _site: Path | None = None
    _house_broken = False
    _made_nav: list[Any] | None = None
    _whole: WholePages | None = None

    def __init__(self) -> None:
        super().__init__()
        self._attention = Attention()
        self._on_pages: list[Find] = []
        self._alike = Alike()

    @property
    def hosted(self) -> bool:
        """Whether the built site goes to a host, from which a device may keep it."""
        return not (self._serving or self.config.folder)

    @property
    def _folder(self) -> Path:
        return Path(self._beside, self.config.recipes)

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        self._serving, self._dirty = command == "serve", dirty
        self._attention.as_the_process_ends()

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        self._beside, self._site = Path(config.config_file_path).parent, Path(config.site_dir)
        settle(config)
        if any(name.rpartition("/")[2] == "search" for name in config.plugins):
            log.info('The book has a search of its own: take the plugin "search" out of mkdocs.yml.')
        self._attention.hold()
        if self.config.folder:
            set_for_folder(config)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        self.site = self._read()
        self._on_pages, self._alike = [], Alike()
        own = [file.src_uri.removesuffix(".md") for file in files.documentation_pages()]
        made = self._add_files(files, own, config)
        lean(files, config)
        sort_scripts(files, config, OURS, self.config.folder)
        spare = 0 if self._serving else spare_processes(len(self.site.pages))
        by_name = {file.src_uri: file for file in files}
        self._whole = WholePages(self.site.pages, by_name, spare, scripts=not self.config.folder)
        # the other processes have begun
        for address, file in made.items():
            file.content_string = self.site.pages[address].markdown
        if config.nav is None or config.nav is self._made_nav:
            config.nav = self._made_nav = as_nav(contents(self.site, own))
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        if self._whole:
            self._whole.files = {file.src_uri: file for file in files}
        self.neighbours = Neighbours("navigation.prune" in config.theme.get("features", ()))
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        env.bytecode_cache = compiled()
        return env

    @event_priority(-100)
    def on_page_markdown(self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        return self._alike.begin(markdown, page)

    @event_priority(100)
    def _as_others(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        return self._alike.end(html, page)

    @event_priority(-100)
    def _found_on(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        address = page.file.src_uri.removesuffix(".md")
        search = page.meta.get("search")
        if not (isinstance(search, dict) and search.get("exclude")):
            made = self.site.pages.get(address)
            self._on_pages += page_found(address, str(page.title or ""), html, made.template if made else "")
        return html

    on_page_content = CombinedEvent(_as_others, _found_on)

    @event_priority(-100)
    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        here = page.file.src_uri.removesuffix(".md")
        made = self.site.pages.get(here)
        told = page.meta.get("description") or config.site_description
        heads = {
            **self._frame(here),
            "description": "" if told else described(made.template if made else "", str(page.title), config.site_name),
            "own_styles": STYLES_MARK,
            "own_scripts": SCRIPTS_MARK,
            "schema_org": script_of(made) if made else "",
        }
        context.update(heads)  # type: ignore[typeddict-item]
        return context

    def on_template_context(
        self, context: TemplateContext, *, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        context.update(self._frame(""))  # type: ignore[typeddict-item]
        return context

    def _frame(self, here: str) -> dict[str, Any]:
        """What the header and footer of every page say, seen from an address."""
        files = self._whole.files if self._whole else {}
        return {
            "rooms": rooms_from(here, ROOMS, files),
            "more_rooms": rooms_from(here, MORE, files),
            "measures": self.site.measures,
            "house_broken": self._house_broken,
        }

    @event_priority(-100)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        address, output = page.file.src_uri.removesuffix(".md"), self._guarded(tight(output))
        if self._whole and address in self.site.pages:
            return self._whole.fill(address, output)
        return dressed(together(output), page.file.url, scripts=not self.config.folder)

    @event_priority(-100)
    def on_post_template(self, output_content: str, *, template_name: str, config: MkDocsConfig) -> str:
        return self._guarded(tight(output_content)) if template_name.endswith(".html") else output_content

    @event_priority(100)
    def _fill_the_rest(self, *, config: MkDocsConfig) -> None:
        if self._whole:
            self._whole.fill_the_rest()

    @event_priority(-100)
    def _finish(self, *, config: MkDocsConfig) -> None:
        self._let_go()
        if not self._serving:
            squeeze(Path(config.site_dir, "assets", "tinbook"))
        files = self._whole.files if self._whole else {}
        urls = {name.removesuffix(".md"): file.url for name, file in files.items()}
        write_index(config.site_dir, (*self.site.finds, *self._on_pages), urls)
        write_offline(config, self.hosted)

    on_post_build = CombinedEvent(_fill_the_rest, _finish)

    @event_priority(-100)
    def on_build_error(self, *, error: Exception) -> None:
        self._let_go()
        if self._site and isinstance(error, OSError) and is_of_files(error):
            log.error(why_stopped(error, self._site, self._serving))
            raise Abort(NOT_BUILT)
        if self._serving and isinstance(error, BuildError):
            log.error(str(error))  # MkDocs would report it only the first time
            raise Abort(NOT_BUILT)

    @event_priority(-100)  # other plugins may pass MkDocs' own builder to the server
    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Any) -> LiveReloadServer:
        if self._folder.is_dir():
            server.watch(str(self._folder))
        self._standing = LastGood(server, Path(config.config_file_path), self._dirty)
        self._standing.begin()
        return server

    def on_shutdown(self) -> None:
        if self._standing:
            self._standing.end()

    def _read(self) -> Site:
        """The pages of the book; what is wrong with its sources is reported."""
        loaded = load_book(self._folder, kitchen=self.config.kitchen)
        self._house_broken = any(HOUSE in problem.place.file for problem in loaded.errors)
        for problem in loaded.problems:
            strict = problem.severity == "error" or problem.code == UNSURE
            (log.warning if strict else log.info)(spell(problem))
        return build_site(loaded.book, loaded.facts, loaded.broken)

    def _add_files(self, files: Files, own: list[str], config: MkDocsConfig) -> dict[str, File]:
        """Add pages, photos and templates to the site's files; returns the files of pages not written by hand."""
        made = {
            address: File.generated(config, f"{address}.md", content="")
            for address in self.site.pages
            if address not in own
        }
        for address, file in made.items():
            if not self.site.pages[address].listed:
                file.inclusion = InclusionLevel.NOT_IN_NAV
            files.append(file)
        for path, photo in self.site.photos.items():
            files.append(File.generated(config, path, content=photo))
        for path, template in set_templates(self.site.templates, Path(self._beside, CACHE)):
            files.append(File.generated(config, path, content=template))
        return made

    def _guarded(self, html: str) -> str:
        return html if self._serving else guarded(html)

    def _let_go(self) -> None:
        """Stop the workers, turn the collector on again."""
        if self._whole:
            self._whole.close()
        self._attention.let_go()
