"""The book on a device, in a real browser: kept from a host and read with the network cut, or copied as a folder."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.books import new_book
from tests.browser.conftest import comes_true, one_of_each

from tinbook.plugin.classic import classic_script

pytestmark = pytest.mark.browser

FACES = """async () => {
  await document.fonts.ready;  // those that stand in until then are the device's own
  return [...document.fonts].filter(face => !face.family.endsWith("-like")).map(face => face.status);
}"""

ROOT = Path(__file__).parents[2]
KEPT = "The whole book is saved on this device."
SPONGE = "mixtures/creamed-butter-sponge"
PLAIN = "mixtures/plain-sponge"
"""Of the demo, and of a new book."""
# How the worker of a new build ends: "installed", or "redundant" when it was given up.
UPDATE = """() => new Promise(async done => {
  const book = await navigator.serviceWorker.getRegistration();
  const heard = worker => worker.addEventListener("statechange", () => done(worker.state));
  if (book.installing) return heard(book.installing);
  if (book.waiting) return done(book.waiting.state);
  book.addEventListener("updatefound", () => heard(book.installing));
  book.update();
})"""
# The same for a first visit, where the page itself registers too.
FIRST = """() => new Promise(async done => {
  const { installing } = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
  installing.addEventListener("statechange", () => done(installing.state));
})"""
VERSION = "() => [document.title.slice(-6), document.documentElement.dataset.script]"


def addresses(site: Path) -> list[str]:
    """Each page of a built site as a reader would address it."""
    pages = sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))
    return [page.removesuffix("index.html") for page in pages if page != "404.html"]


def title_of(site: Path, address: str) -> str:
    return title_in(
        (site / (f"{address}index.html" if not address or address.endswith("/") else address)).read_text("utf-8")
    )


def title_in(page: str) -> str:
    found = re.search(r"<title>(.*?)</title>", page, re.DOTALL)
    assert found
    return unescape(found[1]).strip()


def kept(tab: Page, url: str) -> None:
    """Visit, and wait until the whole book is on the device."""
    tab.goto(url)
    expect(tab.locator("#tb-kept")).to_have_text(KEPT, timeout=120_000)


def search(tab: Page, words: str) -> dict[str, str]:
    """What the book's own search finds: address and text of each result."""
    if not tab.locator(".tb-finder").is_visible():
        tab.locator(".tb-find").click()
        # the book's words have been read
        expect(tab.locator(".tb-mean a")).to_be_visible(timeout=60_000)
    tab.locator("#tb-asked").fill("")
    tab.locator("#tb-asked").press_sequentially(words)
    links = tab.locator(".tb-found a").evaluate_all("all => all.map(a => [a.href, a.innerText])")
    return {str(href): str(text) for href, text in links}


@pytest.fixture(scope="module")
def books(build: Callable[..., Path], once: Callable[..., Path]) -> dict[str, Path]:
    """Two builds of a small book, A and B, told apart by every page's title and by a script; B has a page that A has not."""
    folder = once("books", lambda folder: two_books(folder, build))
    return {name: folder / f"built {name}" for name in "AB"}


def two_books(folder: Path, build: Callable[..., Path]) -> None:
    folder.mkdir()
    for name in "AB":
        source = folder / f"source {name}"
        new_book(source)
        config, named = re.subn(
            r"(?m)^site_name: .*$", f"site_name: Book {name}", (source / "mkdocs.yml").read_text("utf-8")
        )
        assert named == 1
        (source / "mkdocs.yml").write_text(config + "extra_javascript:\n  - which.js\n", "utf-8")
        (source / "book_src" / "which.js").write_text(f'document.documentElement.dataset.script = "{name}";\n', "utf-8")
        if name == "B":
            (source / "book_src" / "only-now.md").write_text("# Only now\n\nNew in this book.\n", "utf-8")
        build(folder / f"built {name}", source / "mkdocs.yml")


def all_are(tab: Page, url: str, site: Path, name: str) -> None:
    """Every page of `site` is of book `name`, and so are the scripts and the search's words; some are opened."""
    for address in ("", "tins/", f"{PLAIN}/"):
        tab.goto(url + address)
        assert tab.evaluate(VERSION) == [f"Book {name}", name]
    asked = [url + address for address in [*addresses(site), "which.js", "assets/tinbook/find-index.js"]]
    texts = tab.evaluate(
        "asked => Promise.all(asked.map(async each => (await fetch(each, { cache: 'reload' })).text()))", asked
    )
    *pages, script, index = texts
    assert len(pages) > 20
    for address, text in zip(asked, pages, strict=False):
        assert f"Book {name}</title>" in text, address
    assert f'script = "{name}"' in script and ("only-now" in index) == (name == "B")


@pytest.mark.long
def test_after_the_first_visit_every_page_and_the_search_work_without_a_network(
    demo_site: Path, host: Callable[[Path], Any], page: Callable[..., Page], errors: list[str]
) -> None:
    server = host(demo_site)
    tab = page(service_workers="allow")
    kept(tab, server.url)
    server.stop()
    tab.context.set_offline(True)
    failed: list[str] = []
    # a page that is left before all of it has come gives up the rest
    left = "net::ERR_ABORTED"
    tab.on("requestfailed", lambda request: failed.append(request.url) if request.failure != left else None)

    pages = addresses(demo_site)
    assert len(pages) > 20
    texts = tab.evaluate("asked => Promise.all(asked.map(async each => (await fetch(each)).text()))", pages)
    for address, text in zip(pages, texts, strict=True):
        assert title_in(text) == title_of(demo_site, address)
    some = [name.removesuffix("index.html") for name in one_of_each(demo_site).values()]
    assert len(some) > 20
    for address in (each for each in some if each in pages):
        response = tab.goto(server.url + address, wait_until="domcontentloaded")
        assert response and response.ok and response.from_service_worker
        assert tab.title() == title_of(demo_site, address)
    tab.goto(server.url + SPONGE)
    assert tab.url == f"{server.url}{SPONGE}/", "an address without its slash goes to the page"
    faces = tab.evaluate(FACES)
    assert faces and set(faces) == {"loaded"}
    # said anew to this page: the browser's driver can forget it on the way; the host is gone either way
    tab.context.set_offline(False)
    tab.context.set_offline(True)
    expect(tab.locator("#tb-kept")).to_have_text("No network: this is the saved copy.", timeout=120_000)

    found = search(tab, "butter sponge")
    result = next(href for href in found if SPONGE in href)
    tab.goto(result)
    assert tab.title() == title_of(demo_site, f"{SPONGE}/")
    tab.goto(server.url)
    assert any("/tins/" in href and "8\u00a0in" in text for href, text in search(tab, "8 inch").items())
    assert failed == []

    assert errors == []
    missing = tab.goto(f"{server.url}no/such%page/")
    assert missing and missing.status == 404 and tab.title() == title_of(demo_site, "404.html")
    errors.clear()  # the browser tells of each 404


def test_the_book_can_be_installed(demo_site: Path, serve: Callable[[Path], str], page: Callable[..., Page]) -> None:
    """What Chromium itself asks of an installable site, by its own developer protocol."""
    url = serve(demo_site)
    tab = page(service_workers="allow")
    kept(tab, url)
    talk = tab.context.new_cdp_session(tab)
    # a fresh context counts as a private window, in which nothing can be installed
    found = {each["errorId"] for each in talk.send("Page.getInstallabilityErrors")["installabilityErrors"]}
    assert found <= {"in-incognito"}
    told = talk.send("Page.getAppManifest")
    assert told["errors"] == []
    manifest = json.loads(told["data"])
    assert manifest["name"] == "Heronsmouth house book"
    assert told["url"] == f"{url}manifest.webmanifest"
    purposes = set()
    for icon in manifest["icons"]:
        size = tab.evaluate(
            """async address => {
                const image = await createImageBitmap(await (await fetch(address)).blob());
                return `${image.width}x${image.height}`;
            }""",
            url + icon["src"],
        )
        assert size == icon["sizes"]
        purposes.add((size, icon["purpose"]))
    assert purposes >= {("192x192", "any"), ("512x512", "any"), ("512x512", "maskable")}


@pytest.mark.parametrize(("look", "paper"), [("Light", "#fbfcfa"), ("Dark", "#0d1a20"), ("More contrast", "#fff")])
def test_the_frame_of_the_device_has_the_colour_of_the_paper(
    demo_url: str, page: Callable[..., Page], look: str, paper: str
) -> None:
    tab = page()
    tab.goto(demo_url)
    tab.get_by_role("button", name=look, exact=True).click()
    expect(tab.locator("meta[name=theme-color]")).to_have_attribute("content", paper)


def test_two_books_are_never_mixed(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page], errors: list[str]
) -> None:
    server = host(books["A"])
    tab = page(service_workers="allow")
    kept(tab, server.url)
    other = tab.context.new_page()
    other.goto(f"{server.url}tins/")

    server.root = books["B"]
    tab.reload()
    ready = tab.locator("#tb-new")
    expect(ready).to_be_visible(timeout=120_000)
    expect(ready).to_contain_text("A new version of the book is ready.")
    all_are(tab, server.url, books["A"], "A")
    assert errors == []
    assert tab.goto(f"{server.url}only-now/").status == 404, "a page of the new book alone"  # type: ignore[union-attr]
    errors.clear()

    tab.goto(server.url)
    tab.get_by_role("button", name="Open it").click()
    for each in (tab, other):
        comes_true(each, "document.title.endsWith('Book B')")
        # the title is there before the rest of the page
        each.wait_for_load_state("domcontentloaded")
        assert each.evaluate(VERSION) == ["Book B", "B"]
        expect(each.locator("#tb-new")).to_be_hidden()
    all_are(tab, server.url, books["B"], "B")
    assert any("only-now" in href for href in search(tab, "only now"))
    assert len(tab.evaluate("caches.keys()")) == 1, "the old book is gone"


def test_with_no_tab_open_the_new_book_is_there_at_the_next_visit(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page]
) -> None:
    server = host(books["A"])
    tab = page(service_workers="allow")
    kept(tab, server.url)
    server.root = books["B"]
    assert tab.evaluate(UPDATE) == "installed"
    tab.goto("about:blank")
    until = time.monotonic() + 20
    while tab.goto(server.url) and tab.evaluate(VERSION) != ["Book B", "B"]:
        assert time.monotonic() < until
        tab.goto("about:blank")
        time.sleep(0.5)  # a browser waits a moment before it lets the old worker go
    all_are(tab, server.url, books["B"], "B")


@pytest.mark.parametrize("fault", ["page of the old book", "page missing", "cut short"])
def test_a_half_deployed_book_is_never_opened(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page], tmp_path: Path, fault: str
) -> None:
    half = tmp_path / "half"
    shutil.copytree(books["B"], half)
    victim = half / PLAIN / "index.html"
    if fault == "page missing":
        victim.unlink()
    elif fault == "cut short":
        victim.write_bytes(victim.read_bytes()[:-20])
    else:
        shutil.copy(books["A"] / PLAIN / "index.html", victim)

    server = host(books["A"])
    tab = page(service_workers="allow")
    kept(tab, server.url)
    server.root = half
    for _ in range(2):
        assert tab.evaluate(UPDATE) == "redundant"
        expect(tab.locator("#tb-new")).to_be_hidden()
        tab.reload()
    all_are(tab, server.url, books["A"], "A")

    server.root = books["B"]
    tab.goto(server.url)
    assert tab.evaluate(UPDATE) == "installed"
    tab.get_by_role("button", name="Open it").click()
    comes_true(tab, "document.title.endsWith('Book B')")
    all_are(tab, server.url, books["B"], "B")


def test_a_first_visit_to_a_half_deployed_book_keeps_nothing_and_tries_again(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page], tmp_path: Path
) -> None:
    half = tmp_path / "half"
    shutil.copytree(books["B"], half)
    (half / "tins" / "index.html").write_text("not yet", "utf-8")
    server = host(half)
    tab = page(service_workers="allow")
    tab.goto(server.url)
    assert tab.evaluate(FIRST) == "redundant"
    expect(tab.locator("#tb-kept")).to_have_text("")
    server.root = books["B"]
    kept(tab, server.url)


def test_a_password_or_a_new_book_can_always_be_reached_at_the_workers_address(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page]
) -> None:
    server = host(books["A"])
    tab = page(service_workers="allow")
    kept(tab, server.url)
    server.root = books["B"]
    got = tab.evaluate("async () => (await fetch('/sw.js', { cache: 'reload' })).text()")
    assert got == (books["B"] / "sw.js").read_text("utf-8")


def test_a_device_that_threw_the_book_away_reads_from_the_host_and_keeps_it_again(
    books: dict[str, Path], serve: Callable[[Path], str], page: Callable[..., Page]
) -> None:
    url = serve(books["A"])
    tab = page(service_workers="allow")
    kept(tab, url)
    tab.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
    response = tab.goto(f"{url}tins/")
    assert response and response.ok
    until = time.monotonic() + 60
    while tab.locator("#tb-kept").inner_text() != KEPT:
        assert time.monotonic() < until
        time.sleep(0.5)
        tab.reload()


def test_a_device_without_room_reads_from_the_host(
    demo_site: Path, serve: Callable[[Path], str], page: Callable[..., Page]
) -> None:
    url = serve(demo_site)
    tab = page(service_workers="allow")
    talk = tab.context.new_cdp_session(tab)
    talk.send("Storage.overrideQuotaForOrigin", {"origin": url.rstrip("/"), "quotaSize": 200_000})
    tab.goto(url)
    assert tab.evaluate(FIRST) == "redundant"
    assert tab.evaluate("caches.keys()") == [], "what was kept so far is given back"
    expect(tab.locator("#tb-kept")).to_have_text("")
    bench_works(tab, f"{url}{SPONGE}/")


def bench_works(tab: Page, url: str) -> None:
    """Another tin changes the amounts, a row can be ticked."""
    tab.goto(url)
    first = tab.locator(".tb-lines .tb-qty b").first
    before = first.inner_text()
    tab.locator(".tb-chip[data-tin='round 20 cm']").click()
    expect(first).not_to_have_text(before)
    tab.locator(".tb-lines > li").first.click()
    expect(tab.locator(".tb-tick").first).to_be_checked()


REFUSALS = {
    "the store throws": "for (const name of ['localStorage', 'sessionStorage'])"
    " Object.defineProperty(window, name, { configurable: true, get() { throw new DOMException('no', 'SecurityError'); } });",
    "there is no store": "for (const name of ['localStorage', 'sessionStorage'])"
    " Object.defineProperty(window, name, { configurable: true, value: null });",
    "the store is full": "Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); };",
    "no caches": "delete window.caches; delete window.CacheStorage;",
    "no workers": "delete Navigator.prototype.serviceWorker;",
    "workers are refused": "ServiceWorkerContainer.prototype.register ="
    " () => Promise.reject(new DOMException('no', 'SecurityError'));",
}


@pytest.mark.parametrize("refusal", REFUSALS)
def test_a_device_that_refuses_to_store_has_the_book_all_the_same(
    demo_url: str, page: Callable[..., Page], errors: list[str], refusal: str
) -> None:
    tab = page(service_workers="allow")
    tab.context.add_init_script(REFUSALS[refusal])
    bench_works(tab, f"{demo_url}{SPONGE}/")
    assert any("line-a-tin" in href for href in search(tab, "line a tin"))
    assert errors == []


@pytest.fixture
def serving(books: dict[str, Path]) -> Iterator[Callable[[int], None]]:
    """serving(port) runs `mkdocs serve` of book A's sources there."""
    started: list[subprocess.Popen[bytes]] = []

    def start(port: int) -> None:
        command = [sys.executable, "-m", "mkdocs", "serve", "--no-livereload", "--dev-addr", f"127.0.0.1:{port}"]
        quiet = subprocess.DEVNULL
        started.append(subprocess.Popen(command, cwd=books["A"].parent / "source A", stdout=quiet, stderr=quiet))
        for _ in range(120):
            try:
                urllib.request.urlopen(f"http://127.0.0.1:{port}/", timeout=5).close()
                return
            except OSError:
                time.sleep(0.5)
        raise AssertionError("mkdocs serve does not answer")

    yield start
    for process in started:
        process.terminate()
        process.wait(20)


def test_while_the_book_is_written_nothing_is_kept_and_a_kept_book_steps_aside(
    books: dict[str, Path],
    host: Callable[[Path], Any],
    page: Callable[..., Page],
    serving: Callable[[int], None],
    errors: list[str],
) -> None:
    server = host(books["A"])
    tab = page(service_workers="allow")
    kept(tab, server.url)
    server.stop()
    serving(server.port)
    tab.goto(server.url)
    comes_true(tab, "document.querySelector('meta[name=tinbook]:not([data-kept])') !== null")
    comes_true(tab, "async () => !(await navigator.serviceWorker.getRegistrations()).length")
    assert tab.evaluate("caches.keys()") == []
    response = tab.goto(f"{server.url}{PLAIN}/")
    assert response and response.ok and not response.from_service_worker
    assert tab.evaluate("navigator.serviceWorker.controller") is None
    left_behind(tab, errors)


def test_a_page_of_the_kept_book_that_came_while_it_left_goes_too(
    books: dict[str, Path], host: Callable[[Path], Any], page: Callable[..., Page], tmp_path: Path, errors: list[str]
) -> None:
    gone, live = tmp_path / "gone", tmp_path / "live"
    shutil.copytree(books["A"], gone)
    shutil.copy(ROOT / "plugins/tinbook/plugin/workers/gone.js", gone / "sw.js")
    shutil.copytree(gone, live)
    home = live / "index.html"
    home.write_text(home.read_text("utf-8").replace(" data-kept", ""), "utf-8")
    server = host(gone)
    tab = page(service_workers="allow")
    loads: list[str] = []
    tab.on("domcontentloaded", lambda tab: loads.append(tab.url))
    tab.goto(server.url)
    comes_true(tab, "Boolean(navigator.serviceWorker.controller)")
    comes_true(tab, "async () => !(await navigator.serviceWorker.getRegistrations()).length")
    assert len(loads) == 1, "a host that still gives out pages to be kept is not asked again"

    tab.context.add_init_script(
        "const had = ServiceWorkerContainer.prototype.getRegistration;"
        "ServiceWorkerContainer.prototype.getRegistration = async function (home) {"
        " await new Promise(go => { window.go = go; }); return had.call(this, home); };"
    )
    tab.goto(server.url)
    server.root = live
    tab.evaluate("window.go()")
    comes_true(tab, "document.querySelector('meta[name=tinbook]:not([data-kept])') !== null")
    comes_true(tab, "async () => !(await navigator.serviceWorker.getRegistrations()).length")
    left_behind(tab, errors)


def left_behind(tab: Page, errors: list[str]) -> None:
    """Close the tab before its host ends: the page that went may be left in the middle of its questions."""
    tab.context.close()
    errors.clear()


@pytest.fixture(scope="module")
def folder(demo_folder: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo book built as a folder, and copied to where a path has spaces and more."""
    place = tmp_path_factory.mktemp("elsewhere") / "My tablet, 2nd shelf" / "House book"
    shutil.copytree(demo_folder, place)
    return place


def test_a_copied_folder_opens_by_itself(folder: Path, page: Callable[..., Page], errors: list[str]) -> None:
    tab = page(service_workers="allow")
    requests: list[str] = []
    tab.context.on("request", lambda request: requests.append(request.url))
    home = folder.as_uri()

    for name in one_of_each(folder).values():
        tab.goto((folder / name).as_uri(), wait_until="domcontentloaded")
        assert tab.title() == title_of(folder, name)
    bench_works(tab, f"{home}/{SPONGE}.html")
    chosen = tab.locator(".tb-this").inner_text()
    tab.reload()
    expect(tab.locator(".tb-tick").first).to_be_checked()
    expect(tab.locator(".tb-this")).to_have_text(chosen)

    tab.goto(f"{home}/index.html")
    assert any("/tins.html" in href and "8\u00a0in" in text for href, text in search(tab, "8 inch").items())
    search(tab, "butter sponge")
    result = tab.locator(f".tb-found a[href*='{SPONGE}.html']").first
    expect(result).to_be_visible()
    result.click()
    tab.wait_for_url(f"{home}/{SPONGE}.html**")
    faces = tab.evaluate(FACES)
    assert faces and set(faces) == {"loaded"}

    assert [url for url in requests if not url.startswith((f"{home}/", "data:", "blob:", "about:"))] == []
    assert errors == []


def test_the_links_of_a_folder_name_files_in_it(folder: Path) -> None:
    checked = 0
    for file in folder.rglob("*.html"):
        if file.name == "404.html":  # a host alone shows it
            continue
        for link in re.findall(r'(?:href|src)="([^"#?:]+)[^":]*"', file.read_text("utf-8")):
            target = (file.parent / unescape(link)).resolve()
            assert target.is_file() and target.is_relative_to(folder), f"{file.name}: {link}"
            checked += 1
    assert checked > 500


def test_modules_as_one_script_keep_their_names_apart(chromium: Browser, tmp_path: Path) -> None:
    """Run by a browser: as modules in the test's own words, and as the script made of them."""
    modules = {
        "main": 'import { size as tin, twice } from "./one.js";\nimport { both } from "./two.js";\n'
        "const size = 3;\nwindow.made = [size, tin, twice(size), both()];",
        "one": "export const size = 20;\nconst hidden = 2;\nexport function twice(of) { return of * hidden; }",
        "two": 'import {\n  size,\n} from "./one.js";\nconst hidden = 5;\nexport const both = () => size * hidden;',
    }
    for name, text in modules.items():
        (tmp_path / f"{name}.js").write_text(text, "utf-8")
    tab = chromium.new_page()
    tab.evaluate(f"() => {{ {classic_script(tmp_path)} }}")
    assert tab.evaluate("window.made") == [3, 20, 6, 100]
    tab.close()
