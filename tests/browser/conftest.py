"""The built demo book, a server for it and a real browser. A missing Chromium fails the tests; it does not skip them."""

from __future__ import annotations

import re
import shutil
import threading
import time
from collections.abc import Callable, Iterator, Mapping
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, BrowserType, Error, Locator, Page, sync_playwright
from tests.every import all_seeds

ROOT = Path(__file__).parents[2]
TABLES = re.compile(r"^mixtures/[^/]+/(?=tables\b)")
"""The second leaf of a mixture: alike for all of them."""
LEAF = re.compile(r"^(cakes/[^/]+/(?:used|making)|portions/[^/]+/[^/]+)\b")
"""The other leaves of a cake, and the plans of a tin: alike for all of them."""
BLOCK = re.compile(r"<(\w+)((?:\s[^<>]*)?)>")
MARK = re.compile(r'\b(data-[\w-]+|role|aria-\w+|class="[^"]*"|class=\S+)')
BROWSERS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
"""Chromium without a window needs a third less of the machine than Chromium that hides its own."""


STORE = """() => {
  try { localStorage.setItem("probe", "1"); return JSON.stringify({ ...localStorage }); } catch (error) { return String(error); }
}"""


class Host:
    """A plain static host: a folder on a free port of this machine. `root` can be changed while it runs, and what has
    an ending (`without`) be kept back."""

    def __init__(self, root: Path) -> None:
        self.root, self.without = root, ""
        host = self

        class Handler(SimpleHTTPRequestHandler):
            extensions_map = {  # noqa: RUF012  the standard library's own way to say it
                **SimpleHTTPRequestHandler.extensions_map,
                ".js": "text/javascript",
                ".webmanifest": "application/manifest+json",
                ".woff2": "font/woff2",
            }

            def __init__(self, *args: Any) -> None:
                super().__init__(*args, directory=str(host.root))

            def do_GET(self) -> None:
                if host.without and self.path.endswith(host.without):
                    self.send_response(204)
                    self.end_headers()
                else:
                    super().do_GET()

            def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
                missing = host.root / "404.html"
                if code != 404 or not missing.is_file():
                    super().send_error(code, message, explain)
                    return
                body = missing.read_bytes()
                self.send_response(404)
                self.send_header("Content-Type", "text/html")
                self.send_header("Content-Length", str(len(body)))
                self.end_headers()
                self.wfile.write(body)

            def log_message(self, *_: Any) -> None:
                """Silence: the tests speak."""

        self.server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.server.daemon_threads = True
        self.port = self.server.server_address[1]
        self.url = f"http://127.0.0.1:{self.port}/"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        self.server.shutdown()
        self.server.server_close()


@pytest.fixture
def host() -> Iterator[Callable[[Path], Host]]:
    """host(folder) is a server with `url`, `root`, `stop()`."""
    hosts: list[Host] = []

    def start(root: Path) -> Host:
        hosts.append(Host(root))
        return hosts[-1]

    yield start
    for each in hosts:
        each.stop()


@pytest.fixture
def serve(host: Callable[[Path], Host]) -> Callable[[Path], str]:
    """serve(folder) is its address, with a slash at the end."""
    return lambda root: host(root).url


@pytest.fixture(scope="session")
def demo_url(demo_site: Path) -> Iterator[str]:
    host = Host(demo_site)
    yield host.url
    host.stop()


@pytest.fixture(scope="session")
def kitchen_url(build: Callable[..., Path], once: Callable[..., Path]) -> Iterator[str]:
    """The demo's own book of its kitchen, planned from one morning."""
    site = once("planned", lambda out: build(out, TINBOOK_KITCHEN=str(out), TINBOOK_TODAY="2026-12-07T08:00"))
    host = Host(site)
    yield host.url
    host.stop()


def launched(kind: BrowserType, *flags: str) -> Browser:
    """Chromium with more flags."""
    path = next((found for name in BROWSERS if (found := shutil.which(name))), None)
    assert path, "Chromium is not installed; the browser tests need it (apt install chromium)"
    # letters as on a tablet's dense screen, which moves none of them to whole pixels
    usual = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--font-render-hinting=none")
    return kind.launch(executable_path=path, args=[*usual, *flags])


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    with sync_playwright() as play:
        browser = launched(play.chromium)
        yield browser
        browser.close()


def lettered(chromium: Browser, px: int) -> Iterator[Page]:
    browser = launched(chromium.browser_type, f"--blink-settings=defaultFontSize={px}")
    yield browser.new_context(service_workers="block", has_touch=True).new_page()
    browser.close()


@pytest.fixture(scope="module")
def large(chromium: Browser) -> Iterator[Page]:
    """A tab whose reader has set letters of 32 px instead of 16."""
    yield from lettered(chromium, 32)


@pytest.fixture(scope="module")
def largest(chromium: Browser) -> Iterator[Page]:
    """A tab whose reader has set letters of 64 px instead of 16."""
    yield from lettered(chromium, 64)


@pytest.fixture
def errors() -> list[str]:
    """What the pages of this test complained of: errors of the console and uncaught ones."""
    return []


class Tabs:
    """Tabs of fresh contexts, and what their pages complain of."""

    def __init__(self, chromium: Browser, errors: list[str]) -> None:
        self.chromium, self.errors = chromium, errors
        self.contexts: list[BrowserContext] = []

    def fresh(self, **options: Any) -> Page:
        context = self.chromium.new_context(**{"service_workers": "block", **options})
        self.contexts.append(context)
        context.on("page", self.watch)
        return context.new_page()

    def watch(self, tab: Page) -> None:
        tab.on("console", lambda said: self.errors.append(said.text) if said.type == "error" else None)
        tab.on("pageerror", lambda error: self.errors.append(str(error)))

    def close(self) -> None:
        for context in self.contexts:
            context.close()
        assert self.errors == []


@pytest.fixture
def page(chromium: Browser, errors: list[str]) -> Iterator[Callable[..., Page]]:
    """page(**options of the context) is a fresh tab of a fresh context; none may complain unless `errors` is cleared.

    Service workers are kept out unless asked for with service_workers="allow".
    """
    tabs = Tabs(chromium, errors)
    yield tabs.fresh
    tabs.close()


@pytest.fixture(scope="module")
def lasting_page(chromium: Browser) -> Iterator[Callable[..., Page]]:
    """The same for tabs that the tests of a module share: none of them changes what the next one sees."""
    tabs = Tabs(chromium, [])
    yield tabs.fresh
    tabs.close()


def comes_true(tab: Page, said: str, within_s: float = 120.0) -> None:
    """Waits until something said in JavaScript is true of a tab, which may open other pages meanwhile.

    Asked from outside: what the driver plants in a page to wait there, the page's own policy refuses.
    """
    until = time.monotonic() + within_s
    while True:
        try:
            if tab.evaluate(said) is True:
                return
        except Error:  # the page went while it was asked
            pass
        assert time.monotonic() < until, f"never true: {said}"
        time.sleep(0.1)


def placed(each: Locator, within_s: float = 10.0) -> dict[str, float]:
    """Where something stands on the screen: x, y, width, height in px.

    A script that fills its place anew takes it away for a moment; then it is asked again.
    """
    until = time.monotonic() + within_s
    while (box := each.bounding_box()) is None:
        assert time.monotonic() < until, f"never in sight: {each}"
        time.sleep(0.05)
    return dict(box)


def pictured(tab: Page) -> bytes:
    """What stands on the screen, as PNG. A busy machine now and then fails to draw it in time: then it is asked again."""
    for _ in range(3):
        try:
            return tab.screenshot()
        except Error:
            time.sleep(1.0)
    return tab.screenshot()


def stays(tab: Page, change: Callable[[], None], kept: Callable[[], bool]) -> None:
    """What a reader changes in a file's page is there when it is opened again.

    Seen twice in six whole runs, never alone: the browser's store of a file forgot or refused what it was given. So it
    is changed again, a few times; a page that never keeps it fails, and says what its store holds.
    """
    told = ""
    for _ in range(4):
        change()
        tab.reload()
        if kept():
            return
        told = tab.evaluate(STORE)
        time.sleep(1.0)
    raise AssertionError(f"not kept: {told}")


def blocks(text: str) -> set[str]:
    """The kinds of block of a page: its elements by their names, classes and other marks."""
    found = set[str]()
    for element, marks in set(BLOCK.findall(text)):
        told = [mark.removeprefix("class=").strip('"') for mark in MARK.findall(marks)]
        found |= {element, *(f"{element} {word}" for mark in told for word in mark.split())}
    return found


def few_alike(pages: Mapping[str, str]) -> list[str]:
    """Of pages that are alike, text by name, as few as have between them every kind of block that any of them has, and
    the longest; all of them with --all-seeds. None is named: a new kind of block is looked for where it is."""
    if all_seeds():
        return [*pages]
    had = {name: blocks(text) for name, text in pages.items()}
    few = [max(pages, key=lambda name: len(pages[name]))]
    while left := set().union(*had.values()) - set().union(*(had[name] for name in few)):
        few.append(max(pages, key=lambda name: (len(had[name] & left), len(pages[name]))))
    return [name for name in pages if name in few]


def few_of_each(site: Path, pattern: str = "**/*.html") -> list[str]:
    """Files of a built site, of every kind of page a few; those alone that fit a pattern."""
    files: dict[str, dict[str, str]] = {}
    for file in sorted(site.glob(pattern)):
        name, text = file.relative_to(site).as_posix(), file.read_text("utf-8")
        address = name.removesuffix("index.html").removesuffix(".html")
        files.setdefault(kind_of(address, text), {})[name] = text
    return [name for alike in files.values() for name in few_alike(alike)]


def kind_of(address: str, text: str) -> str:
    """What kind of page this is: its place in the book, and for both leaves of mixtures whether tins are chosen."""
    if 'id="tb-bench"' in text:
        return "mixture in tins" if '"rows":[[' in text else "mixture by weight"
    if leaf := LEAF.match(address):
        folder, *_, name = leaf[0].split("/")
        return f"{name} of a cake" if folder == "cakes" else "plans of a tin"
    if TABLES.match(address):
        return "tables in tins" if "data-eggs" in text else "tables by weight"
    folder, _, name = address.strip("/").rpartition("/")
    return f"one of {folder}" if folder else name or "home"


@pytest.fixture(scope="session")
def few(demo_site: Path) -> Callable[[str], list[str]]:
    """few("mixtures/*"): some of the demo's mixtures, by their slugs, with every kind of block among their pages."""
    return lambda pattern: [Path(name).parts[1] for name in few_of_each(demo_site, f"{pattern}/index.html")]


def one_of_each(site: Path) -> dict[str, str]:
    """A file for each kind of page of a built site: the longest of its kind."""
    found: dict[str, tuple[int, str]] = {}
    for file in sorted(site.rglob("*.html")):
        name, text = file.relative_to(site).as_posix(), file.read_text("utf-8")
        kind = kind_of(name.removesuffix("index.html").removesuffix(".html"), text)
        found[kind] = max(found.get(kind, (0, "")), (len(text), name))
    return {kind: name for kind, (_, name) in found.items()}


@pytest.fixture(scope="session")
def kinds(demo_site: Path) -> dict[str, str]:
    """An address for each kind of page of the demo book."""
    found = {kind: name.removesuffix("index.html") for kind, name in one_of_each(demo_site).items()}
    assert {"home", "mixture in tins", "mixture by weight", "one of techniques", "tins", "measures"} <= set(found)
    return found
