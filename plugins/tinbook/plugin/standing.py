"""A served book that keeps going whatever is broken: it shows the last good site, says what is wrong, and carries on
when that is put right.

On its own MkDocs prints a traceback, has thrown away the pages it had, leaves every browser waiting, and never again
follows a file or folder that was gone for a moment.
"""

from __future__ import annotations

import os
import shutil
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Literal

from mkdocs.exceptions import Abort, ConfigurationError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import get_plugin_logger
from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

from tinbook.plugin.slips import PlainSlips, refused
from tinbook.plugin.stopped import NOT_BUILT
from tinbook.problems.disk import why_not

log = get_plugin_logger("tinbook")
STANDS = "The book is shown as it last was. It is rebuilt as soon as this is fixed."
TOLD_BEFORE = frozenset(("Aborted with a configuration error!", NOT_BUILT))
"""How a build ends whose mistake has been reported already."""


WRITTEN = ("created", "modified", "moved", "deleted")
Outcome = Literal["too far", "shown", "more to show"]
"""How remaking after a change can end: it affects the whole site; everything has been shown; more has changed."""
Remake = Callable[[Callable[[], None], Callable[[], bool]], Outcome]
"""Makes it again, given how to show what is ready and whether another change is waiting."""


class _Told(FileSystemEventHandler):
    """Passes on that a file was written, and not that one was read."""

    def __init__(self, ask: Callable[[], None]) -> None:
        self._ask = ask

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Something happened to a file."""
        if not event.is_directory and event.event_type in WRITTEN:
            self._ask()


class LastGood:
    """Takes the place of MkDocs' own builder in the server, and looks after what the server watches."""

    def __init__(self, server: LiveReloadServer, settings: Path, sources: Path, dirty: bool, remake: Remake) -> None:
        self._server, self._settings, self._sources = server, settings, sources
        self._dirty, self._remake = dirty, remake
        self._at_once = Observer()
        self._build: Callable[[], None] = server.builder
        self._lost: dict[str, bool] = {}
        """What was being watched and is gone, and whether with everything in it."""
        self._ended = threading.Event()

    def begin(self) -> None:
        """Start."""
        PlainSlips(self._settings).listen()
        self._server.builder = self
        # MkDocs looks every half second; the system tells at once, where it can
        with suppress(OSError):
            self._at_once.schedule(_Told(self._ask), str(self._sources), recursive=True)
            self._at_once.start()
        threading.Thread(target=self._look_after, daemon=True).start()

    def end(self) -> None:
        """Stop."""
        self._ended.set()
        with suppress(RuntimeError):  # it never began
            self._at_once.stop()
        PlainSlips(self._settings).leave()

    def __call__(self) -> None:
        """Make again what has changed, or all of the site; if that fails, put the last one back."""
        if not self._dirty and self._remade():
            return
        site = Path(self._server.root)
        before = site.with_name(f"{site.name}_before")
        try:
            if self._put_aside(site, before):
                self._build_or_put_back(site, before)
        finally:
            shutil.rmtree(before, ignore_errors=True)

    def _remade(self) -> bool:
        """Whether making again what a change to the sources affects was enough."""
        try:
            outcome = self._remake(self._show, lambda: self._server._want_rebuild)
        except Exception as error:
            log.debug("All of it is built: %s", error)
            return False
        if outcome == "more to show":
            self._server._wanted_epoch = max(self._server._wanted_epoch + 1, round(time.monotonic() * 1000))
        return outcome != "too far"

    def _show(self) -> None:
        """Let browsers have what is written so far."""
        with self._server._epoch_cond:
            self._server._visible_epoch = self._server._wanted_epoch
            self._server._epoch_cond.notify_all()

    def _put_aside(self, site: Path, before: Path) -> bool:
        try:
            if self._dirty:
                shutil.copytree(site, before)
            else:
                site.rename(before)  # MkDocs starts by emptying its folder
        except OSError as error:
            log.error(f"The last site cannot be set aside: {why_not(error)}. {STANDS}")
            return False
        return True

    def _build_or_put_back(self, site: Path, before: Path) -> None:
        try:
            self._build()
        except Exception as error:
            shutil.rmtree(site, ignore_errors=True)
            before.rename(site)
            self._tell(error)

    def _tell(self, error: Exception) -> None:
        if isinstance(error, ConfigurationError | OSError):
            log.error(refused(self._settings, error))
        elif not isinstance(error, Abort):
            log.error(str(error), exc_info=error)  # not the baker's fault: whoever mends it needs all of it
        elif error.message not in TOLD_BEFORE:
            log.error(error.message)
        log.error(STANDS)

    def _look_after(self) -> None:
        """Watch again what was gone. A folder's watcher ends when the folder is missing."""
        observer = self._server.observer
        while not self._ended.wait(observer.timeout):
            if not observer.is_alive():
                continue
            changed = False
            for emitter in list(observer.emitters):
                if not emitter.is_alive():
                    path = os.path.abspath(emitter.watch.path)
                    self._lost[path] = emitter.watch.is_recursive
                    while path in self._server._watched_paths:
                        self._server.unwatch(path)
                    changed = True
            for path, recursive in list(self._lost.items()):
                if os.path.exists(path) and self._follow(path, recursive):
                    del self._lost[path]
                    changed = True
            if changed:
                self._ask()

    def _follow(self, path: str, recursive: bool) -> bool:
        with suppress(OSError):
            self._server.watch(path, recursive=recursive)
            return True
        self._server._watched_paths.pop(path, None)  # it went again in between
        return False

    def _ask(self) -> None:
        """Ask for a new site."""
        with self._server._rebuild_cond:
            self._server._want_rebuild = True
            self._server._rebuild_cond.notify_all()
