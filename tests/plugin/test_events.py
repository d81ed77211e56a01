"""Real builds of real books in folders of their own, by MkDocs' Python API; and the served book."""

from __future__ import annotations

import gc
import gzip
import logging
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urljoin, urlsplit

import pytest
from click.testing import CliRunner
from mkdocs.__main__ import cli as mkdocs_cli
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort
from tests.books import new_book
from tests.plugin.builds import SPONGE, built, change, write

from tinbook.cli import main
from tinbook.loading import load_book
from tinbook.plugin import sources
from tinbook.plugin.settings import STYLES

ROOT = Path(__file__).parents[2]
SECRET = "Cormorant"

pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning")


ASKED = "for?"
"""What a bench or a technique is asked for stands in the address like an anchor."""


def warnings(caplog: pytest.LogCaptureFixture) -> list[str]:
    return [each.getMessage() for each in caplog.records if each.levelno >= logging.WARNING]


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A small book of one's own, much as `tinbook new book` writes it."""
    return new_book(tmp_path / "our book")


@pytest.fixture(scope="session")
def sound(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """Such a book in a folder with blanks and an accent in its name, and its site."""
    folder = new_book(tmp_path_factory.mktemp("small") / "our cake book é")
    return folder, built(folder, strict=True)


def page(site: Path, address: str) -> str:
    return (site / address / "index.html").read_text("utf-8")


def everything(site: Path) -> Iterator[tuple[str, str]]:
    """Every file of a site as text, packed ones unpacked, and its name as text too."""
    for path in sorted(site.rglob("*")):
        if path.is_file():
            raw = gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()
            yield path.name, f"{path.relative_to(site)}\n{raw.decode('utf-8', 'replace')}"


def told_in(site: Path, word: str) -> list[str]:
    return [name for name, text in everything(site) if word.lower() in text.lower()]


class Links(HTMLParser):
    """The addresses of a page, by whether they are loaded or followed, and its anchors."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.loaded: list[str] = []
        self.followed: list[str] = []
        self.anchors: set[str] = set()
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = {name: value or "" for name, value in attrs}
        self.anchors |= {named[key] for key in ("id", "name") if key in named}
        (self.followed if tag in ("a", "form", "area") else self.loaded).extend(
            named[key] for key in ("href", "src", "action", "data", "poster", "xlink:href") if key in named
        )
        self.loaded += [each.split()[0] for each in named.get("srcset", "").split(",") if each.strip()]


def pages_of(site: Path) -> dict[str, Links]:
    """The pages of a site, by their address from its root."""
    return {f"/{path.relative_to(site).as_posix()}": Links(path.read_text("utf-8")) for path in site.rglob("*.html")}


@pytest.fixture(scope="session")
def pages(demo_site: Path) -> dict[str, Links]:
    return pages_of(demo_site)


def leading_nowhere(site: Path, pages: dict[str, Links]) -> list[str]:
    """Every address within the site that is no file of it, or no anchor of its page."""
    broken = []
    for here, links in pages.items():
        for address in (*links.loaded, *links.followed):
            way = urlsplit(urljoin(f"http://book{here}", address))
            if way.scheme != "http" or way.netloc != "book":
                continue
            path = unquote(way.path) + ("index.html" if way.path.endswith("/") else "")
            if not (site / path[1:]).is_file():
                broken.append(f"{here} -> {address}")
            elif (
                way.fragment and not way.fragment.startswith(ASKED) and unquote(way.fragment) not in pages[path].anchors
            ):
                broken.append(f"{here} -> {address}, no such anchor")
    return broken


def test_the_demo_builds_without_a_warning(demo_site: Path) -> None:
    """What builds it, for all tests, fails for one."""
    assert (demo_site / "index.html").is_file()


def test_every_address_of_the_site_leads_somewhere(demo_site: Path, pages: dict[str, Links]) -> None:
    assert len(pages) > 25
    assert sum(len(links.loaded) + len(links.followed) for links in pages.values()) > 1000
    assert leading_nowhere(demo_site, pages) == []


def test_an_address_that_leads_nowhere_is_seen(tmp_path: Path) -> None:
    write(tmp_path, "index.html", '<a href="other/#here">x</a><a href="gone/">x</a><img src="other/">')
    write(tmp_path, "other/index.html", '<p id="there"><a href="../#top"></a>')
    assert leading_nowhere(tmp_path, pages_of(tmp_path)) == [
        "/index.html -> other/#here, no such anchor",
        "/index.html -> gone/",
        "/other/index.html -> ../#top, no such anchor",
    ]


def test_nothing_is_loaded_from_elsewhere(demo_site: Path, pages: dict[str, Links]) -> None:
    away = [f"{here} {each}" for here, links in pages.items() for each in links.loaded if urlsplit(each).netloc]
    assert away == []
    for path in demo_site.rglob("*.css"):
        text = path.read_text("utf-8")
        assert "url(http" not in text and "url(//" not in text and "@import" not in text, path


def test_only_the_sources_lead_elsewhere(pages: dict[str, Links]) -> None:
    away = {here for here, links in pages.items() for each in links.followed if urlsplit(each).netloc}
    assert away <= {"/sources/index.html"}


def test_a_new_book_in_a_folder_with_blanks_builds_strictly(tmp_path: Path) -> None:
    """With all of its larder."""
    folder = tmp_path / "our cake book é"
    assert CliRunner().invoke(main, ["new", "book", str(folder)]).exit_code == 0
    site = built(folder, strict=True)
    assert "Plain sponge" in page(site, "mixtures/plain-sponge")
    assert len(pages_of(site)) > 150 and leading_nowhere(site, pages_of(site)) == []


BROKEN = """\
name: Broken sponge
kind: creemed
tins: 2 round 20 cm x 5 cm
mix: [225 g butter, 4 flurps]
bake: {oven: 180 °C, time: 25-30 min}
"""


def test_a_broken_mixture_leaves_the_others_standing(
    book: Path, sound: tuple[Path, Path], caplog: pytest.LogCaptureFixture
) -> None:
    write(book, "recipes/mixtures/broken-sponge.yaml", BROKEN)
    site = built(book)
    told = page(site, "mixtures/broken-sponge")
    assert "unknown" in told.lower() or "not known" in told
    assert "creemed" in told and "did you mean" in told and "flurps" in told
    assert "recipes/mixtures/broken-sponge.yaml:2:7" in told
    assert set(pages_of(site)) == {*pages_of(sound[1]), "/mixtures/broken-sponge/index.html"}
    assert 'id="tb-bench"' in page(site, "mixtures/plain-sponge")
    assert "1\u00a0page cannot be shown" in page(site, "")
    assert len(warnings(caplog)) == 2


def test_what_is_unsure_stands_on_the_page_and_no_strict_build_lets_it_out(
    book: Path, caplog: pytest.LogCaptureFixture
) -> None:
    path = book / SPONGE
    path.write_text(path.read_text("utf-8") + "# unsure: how long does it keep?\n", "utf-8")
    line = len(path.read_text("utf-8").splitlines())
    site = built(book)
    assert any("this is still marked unsure" in told for told in warnings(caplog))
    page = (site / "mixtures/plain-sponge/index.html").read_text("utf-8")
    assert f"Line {line} of its file is still marked unsure" in page
    with pytest.raises(Abort):
        built(book, strict=True)


@pytest.mark.parametrize("options", [{}, {"kitchen": True}], ids=["public", "kitchen"])
def test_with_a_broken_house_each_page_says_so(book: Path, options: dict[str, Any]) -> None:
    said = "Something in house.yaml needs putting right"
    assert not [path for path in built(book, **options).rglob("index.html") if said in path.read_text("utf-8")]
    write(book, "recipes/house/house.yaml", (book / "recipes/house/house.yaml").read_text("utf-8") + "driftwood: wet\n")
    pages = [path.read_text("utf-8") for path in built(book, **options).rglob("index.html")]
    assert len(pages) > 5 and all(said in text for text in pages)


def test_a_strict_build_tells_the_whole_list_and_fails(book: Path, caplog: pytest.LogCaptureFixture) -> None:
    write(book, "recipes/mixtures/broken-sponge.yaml", BROKEN)
    write(book, "recipes/techniques/broken-hand.yaml", "name: Broken hand\n")
    with pytest.raises(Abort, match=r"\d+ warnings"):
        built(book, strict=True)
    told = "\n".join(warnings(caplog))
    for word in ("creemed", "flurps", "broken-hand.yaml"):
        assert word in told


def test_a_book_without_recipes_says_so(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    write(tmp_path, "mkdocs.yml", "site_name: Empty\ndocs_dir: book_src\ntheme: {name: material}\nplugins: [tinbook]\n")
    (tmp_path / "book_src").mkdir()
    site = built(tmp_path)
    assert any("no such folder" in told for told in warnings(caplog))
    assert (site / "index.html").is_file()


def test_a_build_is_not_stopped_to_look_for_garbage(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """After it, or where it fails, Python does as it did before."""
    looked = []

    def load(*told: Any, **more: Any) -> Any:
        looked.append(gc.isenabled())
        return load_book(*told, **more)

    monkeypatch.setattr(sources, "load_book", load)
    built(book)
    assert gc.isenabled()
    monkeypatch.setattr(sources, "build_site", lambda *_: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        built(book)
    assert gc.isenabled()
    assert looked == [False, False]


def test_another_theme_is_refused_in_words(book: Path, caplog: pytest.LogCaptureFixture) -> None:
    change(book, "mkdocs.yml", "name: material", "name: mkdocs")
    with pytest.raises(Abort):
        built(book)
    assert any("theme material" in told for told in warnings(caplog))


MIXTURE = """\
name: {name}
kind: ganache
makes: 500 g
mix: [250 g plain flour, 250 g butter]
{more}
"""


@pytest.fixture
def secretive(book: Path) -> Path:
    """Secrets wherever `private` may stand."""
    write(book, "recipes/mixtures/whole.yaml", MIXTURE.format(name=f"{SECRET} whole", more="private: yes"))
    write(
        book,
        "recipes/mixtures/part.yaml",
        MIXTURE.format(
            name="Open part",
            more=f"notes: [{SECRET} note]\nabout: {SECRET} about\nkeeps: {SECRET} keeps\nalso: [{SECRET} name]\n"
            f"tags: [{SECRET} tag]\nmethod: [{SECRET} step]\nprivate: [notes, about, keeps, also, tags, method]",
        ),
    )
    write(book, f"recipes/mixtures/{SECRET.lower()}-slug.yaml", MIXTURE.format(name="A slug", more="private: yes"))
    hand = "name: {0} hand\npurpose: {0}.\nsteps: [{0}.]\nprivate: yes\n"
    write(book, f"recipes/techniques/{SECRET.lower()}-hand.yaml", hand.format(SECRET))
    change(book, SPONGE, "techniques: [line-a-tin]", f"techniques: [line-a-tin, {SECRET.lower()}-hand]")
    with (book / "recipes/house/ingredients.yaml").open("a", encoding="utf-8") as cards:
        cards.write(f"  hidden sugar: {{also: [{SECRET} other], notes: [{SECRET} card], private: yes}}\n")
        cards.write(f"  {SECRET} sugar: {{weighs as: caster sugar, private: yes}}\n")
        cards.write(f"  half sugar: {{also: [{SECRET} half], notes: [{SECRET} half], private: [also, notes]}}\n")
    change(book, "recipes/house/tins.yaml", "have: 1}", f"have: 1, note: {SECRET} tin}}")
    with (book / "recipes/house/tins.yaml").open("a", encoding="utf-8") as tins:
        tins.write("private: yes\n")
    return book


def test_nothing_private_is_in_the_site(secretive: Path, caplog: pytest.LogCaptureFixture) -> None:
    site = built(secretive, strict=True)
    assert warnings(caplog) == []
    assert told_in(site, SECRET) == []
    assert leading_nowhere(site, pages_of(site)) == []
    assert "Open part" in page(site, "mixtures/part")
    assert "find-index.js" in told_in(site, "Open part")


def test_the_kitchens_own_site_has_it_all(secretive: Path) -> None:
    site = built(secretive, strict=True, kitchen=True)
    assert "find-index.js" in told_in(site, f"{SECRET} whole")
    for word in ("note", "about", "keeps", "name", "tag", "step", "card", "half", "hand"):
        assert told_in(site, f"{SECRET} {word}"), word
    assert page(site, "mixtures/cormorant-slug")


FAULTS = ("colour: red", "mix: [4 flurps", "\tmix: x", "&a b: c", "mix: [1 g butter]\nmix: [1 g butter]", "plain words")


def test_nothing_private_is_told_by_a_fault(book: Path) -> None:
    for mark in ("yes", "[notes]"):
        for number, fault in enumerate(FAULTS):
            text = f"name: {SECRET}\nkind: creamed\nnotes: [{SECRET}]\nprivate: {mark}\n{fault} # {SECRET}\n"
            write(book, f"recipes/mixtures/held-{mark.strip('[]')}-{number}.yaml", text)
    assert told_in(built(book), SECRET) == []


def test_no_build_leaks_into_the_next(secretive: Path, sound: tuple[Path, Path], tmp_path: Path) -> None:
    built(secretive, tmp_path / "kitchen", kitchen=True)
    again = dict(everything(built(sound[0], tmp_path / "again", strict=True)))
    before = dict(everything(sound[1]))
    for name in ("sitemap.xml", "sitemap.xml.gz"):  # they bear the day
        del before[name], again[name]
    assert again == before
    assert told_in(built(secretive, tmp_path / "open"), SECRET) == []


def test_one_configuration_built_twice_follows_the_book(book: Path) -> None:
    config = load_config(str(book / "mkdocs.yml"), strict=True)
    mkdocs_build(config)
    write(book, "recipes/techniques/level-a-cake.yaml", "name: Level a cake\npurpose: So it stands.\nsteps: [Cut.]\n")
    mkdocs_build(config)
    assert 'href="../level-a-cake/"' in page(book / "site", "techniques/line-a-tin")


def test_the_bakers_own_contents_win(book: Path) -> None:
    with (book / "mkdocs.yml").open("a", encoding="utf-8") as settings:
        settings.write("nav:\n  - Start here: index.md\n  - Sponge: mixtures/plain-sponge.md\n")
    text = page(built(book), "")
    assert "Start here" in text
    assert "Writing in this book" not in text.partition("<article")[0]


def test_a_page_written_by_hand_wins(book: Path, caplog: pytest.LogCaptureFixture) -> None:
    write(book, "book_src/mixtures/plain-sponge.md", "# Written by hand\n\nHerons.\n")
    write(book, "book_src/index.md", "# Welcome aboard\n")
    write(book, "book_src/house-rules.md", "# House rules\n\nWash up.\n")
    site = built(book, strict=True)
    assert warnings(caplog) == []
    assert "Herons." in page(site, "mixtures/plain-sponge")
    assert 'id="tb-bench"' not in page(site, "mixtures/plain-sponge")
    assert "Welcome aboard" in page(site, "")
    assert "House rules" in page(site, "tins"), "it stands in the contents"
    assert leading_nowhere(site, pages_of(site)) == []


@pytest.mark.parametrize(("flag", "follows"), [("--livereload", True), ("--no-livereload", False)])
def test_the_flag_that_follows_changes(book: Path, monkeypatch: pytest.MonkeyPatch, flag: str, follows: bool) -> None:
    """Why `tinbook serve` says --livereload: click 8.3.0 and 8.3.1 take MkDocs' own default for off."""
    asked: list[dict[str, Any]] = []
    monkeypatch.setattr("mkdocs.commands.serve.serve", lambda **options: asked.append(options))
    done = CliRunner().invoke(mkdocs_cli, ["serve", flag, "-f", str(book / "mkdocs.yml")])
    assert done.exit_code == 0, done.output
    assert asked[0]["livereload"] is follows


def test_the_folders_words_are_true(book: Path) -> None:
    """What `tinbook new book` tells to type is what follows changes."""
    told = CliRunner().invoke(main, ["new", "book", str(book.parent / "next")]).output
    assert "tinbook serve" in told
    assert "tinbook serve" in (ROOT / "README.md").read_text("utf-8")


@pytest.fixture
def served(book: Path) -> Iterator[str]:
    """The book served by the command README names, on a free port of this machine."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        host = f"127.0.0.1:{probe.getsockname()[1]}"
    command = [sys.executable, "-m", "mkdocs", "serve", "--livereload", "-a", host]
    log = (book.parent / "serve.log").open("w", encoding="utf-8")
    server = subprocess.Popen(command, cwd=book, stdout=log, stderr=log)
    try:
        yield f"http://{host}/"
    finally:
        server.terminate()
        server.wait(20)
        log.close()


def soon(read: Callable[[], str], word: str) -> bool:
    """Whether `word` is read before long."""
    until = time.monotonic() + 60
    while time.monotonic() < until:
        try:
            if word in read():
                return True
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            pass
        time.sleep(0.1)
    return False


def test_a_served_book_follows_what_is_written(book: Path, served: str) -> None:
    def sponge() -> str:
        with urllib.request.urlopen(f"{served}mixtures/plain-sponge/", timeout=30) as answer:
            return str(answer.read().decode("utf-8"))

    def rules() -> str:
        with urllib.request.urlopen(f"{served}writing-in-this-book/", timeout=30) as answer:
            return str(answer.read().decode("utf-8"))

    assert soon(sponge, "Plain sponge")
    change(book, SPONGE, "name: Plain sponge", "name: Curlew sponge")
    assert soon(sponge, "Curlew sponge")
    write(book, "book_src/writing-in-this-book.md", "# Herons first\n")
    assert soon(rules, "Herons first")
    change(book, SPONGE, "kind: creamed", "kind: creemed")
    assert soon(sponge, "creemed"), "a broken file shows its problem, and the server goes on"
    change(book, SPONGE, "kind: creemed", "kind: creamed")
    assert soon(sponge, 'id="tb-bench"')


def test_what_the_plugin_brings_is_in_the_package(demo_site: Path) -> None:
    styles = {path.name for path in (demo_site / "assets/tinbook").glob("*.css")}
    assert "book.css" in styles and not styles & {Path(style).name for style in STYLES}
    text = (demo_site / "assets/tinbook/book.css").read_text("utf-8")
    for sign in ("@font-face", "--paper", ".tb-chip", "forced-colors", "@page"):
        assert sign in text
    assert not [*demo_site.glob("assets/javascripts/*"), *demo_site.glob("assets/stylesheets/*")]
    assert shutil.which("mkdocs") or (Path(sys.executable).parent / "mkdocs").exists()


def test_only_pages_with_long_lists_load_what_narrows_them(demo_site: Path) -> None:
    loads = {
        page: [name for name in ("narrow.js", "narrow.css") if f"assets/tinbook/{name}" in text]
        for page in ("mixtures", "techniques", "tags", "mixtures/kinds/mud", "mixtures/mud-cake", "sources")
        if (text := (demo_site / page / "index.html").read_text("utf-8"))
    }
    long = ("mixtures", "techniques", "tags")
    assert loads == {page: ["narrow.js", "narrow.css"] if page in long else [] for page in loads}
    assert len(loads) == 6


def test_a_search_beside_the_books_own_is_told_of(book: Path, caplog: pytest.LogCaptureFixture) -> None:
    told = 'The book has a search of its own: take the plugin "search" out of mkdocs.yml.'
    caplog.set_level(logging.INFO)
    built(book, strict=True)
    assert told not in caplog.text
    change(book, "mkdocs.yml", "plugins:\n", "plugins:\n  - search\n")
    built(book, strict=True)
    assert told in caplog.text
