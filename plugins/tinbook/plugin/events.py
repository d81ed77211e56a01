"""MkDocs events. Headings and prose go in early as Markdown; tables and drawings last of all, as HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import Any, Literal

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from tinbook.loading import Parses
from tinbook.pages.base.render import compiled
from tinbook.pages.finding.find import Find
from tinbook.plugin.ahead import spare_processes
from tinbook.plugin.alike import Alike
from tinbook.plugin.attention import Attention
from tinbook.plugin.finding import page_found, write_index
from tinbook.plugin.guard import guarded
from tinbook.plugin.handing_on import HandingOn
from tinbook.plugin.heads import heads_of
from tinbook.plugin.keeping import Keeping, KeptBook, leaf_of, surroundings
from tinbook.plugin.kept_file import KeptFile
from tinbook.plugin.kitchens import begin, settle_folder
from tinbook.plugin.neighbours import Neighbours
from tinbook.plugin.offline import set_for_folder, sort_scripts, write_offline
from tinbook.plugin.options import TinbookConfig
from tinbook.plugin.printing import CACHE
from tinbook.plugin.remaking import LastBuild, edited_first, outside_of, shape_of
from tinbook.plugin.settings import THEME, lean, settle
from tinbook.plugin.sources import SiteRead, add_files, read_site
from tinbook.plugin.squeeze import squeeze, tight
from tinbook.plugin.standing import LastGood, Outcome
from tinbook.plugin.stopped import NOT_BUILT, is_told
from tinbook.plugin.together import together
from tinbook.plugin.ways import as_nav, rooms_of, ways_from
from tinbook.plugin.whole import WholePages, dressed
from tinbook.site import Site, contents

OURS = THEME / "assets" / "tinbook"


class TinbookPlugin(BasePlugin[TinbookConfig]):  # type: ignore[no-untyped-call]
    """Turns the recipes folder into pages of the site."""

    site: Site
    neighbours: Neighbours
    _last: LastBuild
    _standing: LastGood | None = None
    _site: Path | None = None
    _serving = _dirty = _house_broken = _unfinished = False
    _ready: SiteRead | None = None
    _made_nav: list[Any] | None = None
    _whole: WholePages | None = None

    def __init__(self) -> None:
        super().__init__()
        self._attention = Attention()
        self._on_pages: dict[str, tuple[Find, ...]] = {}
        self._alike = Alike()
        self._parses = Parses()
        self._kept, self._store = KeptBook(), KeptFile(Path())
        self._keeping = Keeping(self._kept, b"")
        self._handing_on = HandingOn(Path())

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        self._serving, self._dirty = command == "serve", dirty
        begin(self.config, command)
        self._attention.as_the_process_ends(self._serving)

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        self._beside = Path(config.config_file_path).parent
        self._folder = self._beside / self.config.recipes
        self.hosted = not (self._serving or self.config.folder)  # and a device may keep it from there
        settle(config)
        self._site = settle_folder(config, self.config.kitchen, self._serving)
        self._attention.hold()
        if self.config.folder:
            set_for_folder(config)
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        self._handing_on = HandingOn(Path(config.site_dir))
        if not (self._serving or self._dirty):
            self._handing_on.begin()

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        cache, around = Path(self._beside, CACHE), surroundings(config, self._serving)
        store = KeptFile(cache, preview=self._serving, **self.config)
        if not self._kept.pages or store.path != self._store.path:
            self._store, self._kept = store, store.read(around)
            self._parses.learnt = self._kept.learnt
        self._keeping = Keeping(self._kept, around)
        self.site, self._house_broken = self._ready or self._read()
        self._ready, self._on_pages, self._alike = None, {}, Alike()
        own = [file.src_uri.removesuffix(".md") for file in files.documentation_pages()]
        self._made = add_files(self.site, files, own, config, cache, apart=not self._serving)
        lean(files, config)
        sort_scripts(files, config, OURS, self.config.folder)
        if config.nav is None or config.nav is self._made_nav:
            config.nav = self._made_nav = as_nav(contents(self.site, own))
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        self.neighbours = Neighbours("navigation.prune" in config.theme.get("features", ()))
        by_name = {file.src_uri: file for file in files}
        around = (rooms_of(by_name), self.site.measures, self._house_broken)
        leaves = {address: leaf_of(file, self.site.pages[address], config) for address, file in self._made.items()}
        frames = {address: (around, self.neighbours.frame(nav, leaf)) for address, leaf in leaves.items()}
        new = self._keeping.look(self.site, frames)
        self._begin(new, by_name)
        for address, leaf in leaves.items():
            if self._keeping.stands(address):
                self._keeping.hand_on(leaf)
            else:
                with self.site.reading(address):
                    leaf.file.content_string = self.site.pages[address].markdown
        if not self._serving:
            self._handing_on.take(self._made, self._keeping)
        self._last = LastBuild(config=config, files=files, nav=nav, leaves=leaves, frames=frames)
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        env.bytecode_cache = compiled()
        if self._serving:
            shape, outside = shape_of(self.site, self._house_broken), outside_of(config, self._folder)
            self._last = replace(self._last, env=env, shape=shape, outside=outside)
        else:
            self._handing_on.spare(files)
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
        if self._keeping.stands(address):
            self._on_pages[address] = self._keeping.finds(address)
            return html
        search, found = page.meta.get("search"), tuple[Find, ...]()
        if not (isinstance(search, dict) and search.get("exclude")):
            made = self.site.pages.get(address)
            found = tuple(page_found(address, str(page.title or ""), html, made.template if made else ""))
        self._keeping.learn(page, html, found)
        self._on_pages[address] = found
        return html

    on_page_content = CombinedEvent(_as_others, _found_on)

    @event_priority(-100)
    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        here = page.file.src_uri.removesuffix(".md")
        context["pages"] = self._handing_on.pages or context["pages"]
        if self._keeping.stands(here):
            return context
        with self.site.reading(here):
            heads = heads_of(self.site.pages.get(here), page, config)
        context.update({**self._frame(here), **heads})  # type: ignore[typeddict-item]
        return context

    def on_template_context(
        self, context: TemplateContext, *, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        context["pages"] = self._handing_on.pages or context["pages"]
        context.update(self._frame(""))  # type: ignore[typeddict-item]
        return context

    def _frame(self, here: str) -> dict[str, Any]:
        """What the header and footer of every page say, seen from an address."""
        said = {"measures": self.site.measures, "house_broken": self._house_broken}
        return {**ways_from(here, self._whole.files if self._whole else {}), **said}

    @event_priority(-100)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        address = page.file.src_uri.removesuffix(".md")
        if self._keeping.stands(address):
            return self._keeping.written(address).decode()
        self._attention.tidy()
        if not self._serving:
            page.content = ""  # a large book would fill the memory
        output = self._guarded(tight(output))
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
        self._handing_on.finish(self._keeping.written)
        if not self._serving:
            squeeze(Path(config.site_dir, "assets", "tinbook"))
        self._write_index(config)
        write_offline(config, self.hosted, self._handing_on.sums, self.config.kitchen)
        kept = self._keeping.book(self.site, self._parses.learnt)
        self._store.write(kept)
        self._kept = kept if self._serving else KeptBook()

    def _write_index(self, config: MkDocsConfig) -> None:
        files = self._whole.files if self._whole else {}
        urls = {name.removesuffix(".md"): file.url for name, file in files.items()}
        write_index(config.site_dir, chain(self.site.finds, *self._on_pages.values()), urls)

    on_post_build = CombinedEvent(_fill_the_rest, _finish)

    @event_priority(-100)
    def on_build_error(self, *, error: Exception) -> None:
        self._let_go()
        self._handing_on.stop()
        if self._site and is_told(error, self._site, self._serving):
            raise Abort(NOT_BUILT)

    @event_priority(-100)  # other plugins may pass MkDocs' own builder to the server
    def on_serve(self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Any) -> LiveReloadServer:
        if self._folder.is_dir():
            server.watch(str(self._folder))
        self._standing = LastGood(server, Path(config.config_file_path), self._folder, self._dirty, self._remake)
        self._standing.begin()
        return server

    def on_shutdown(self) -> None:
        if self._standing:
            self._standing.end()

    def _read(self) -> SiteRead:
        read = read_site(self._folder, self.config.kitchen, self._keeping.before.work, self._parses)
        if not self._serving:
            self._parses = Parses(self._parses.learnt)  # the files themselves are not needed again
            self._attention.set_aside()
        return read

    def _begin(self, new: list[str], by_name: Mapping[str, File]) -> None:
        """Begin to make pages."""
        spare = 0 if self._serving else spare_processes(len(new))
        self._whole = WholePages(
            self.site, by_name, new, processes=spare, scripts=not self.config.folder, done=self._keeping.keep
        )

    def _remake(self, show: Callable[[], None], waiting: Callable[[], bool]) -> Outcome:
        """Make again whatever a change to the sources affects. `show` is called once the edited pages can be read; if
        somebody is `waiting` for another change, that will make the rest."""
        with self._attention.held():
            return self._reached(show, waiting)

    def _reached(self, show: Callable[[], None], waiting: Callable[[], bool]) -> Outcome:
        last, self._ready = self._last, None
        if not self._kept.pages or last.outside != outside_of(last.config, self._folder):
            return "too far"
        if not (self._parses.differs(self._folder) or self._unfinished):
            return "shown"
        self._keeping = Keeping(self._kept, self._kept.surroundings)
        self._ready = self._read()
        if shape_of(*self._ready) != last.shape:
            return "too far"
        self.site, self._alike = self._ready.site, Alike()
        new = self._keeping.look(self.site, last.frames)
        self._begin(new, {file.src_uri: file for file in last.files})
        edited, others = edited_first(new, self.site.ledger.changed)
        unmade = last.make(self.site, edited, others, show, waiting)
        self._unfinished = bool(unmade)
        if unmade:
            self._kept = self._kept.without(set(new) - set(unmade))
            return "shown"
        self._write_index(last.config)
        self._kept = self._keeping.book(self.site, self._parses.learnt)
        return "more to show" if edited and any(map(self._keeping.differs, others)) else "shown"

    def _guarded(self, html: str) -> str:
        return html if self._serving else guarded(html)

    def _let_go(self) -> None:
        """Stop the workers, turn the collector on again."""
        if self._whole:
            self._whole.close()
        self._attention.let_go()
