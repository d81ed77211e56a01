"""The kitchen's own book: in a folder of its own, never in a published one, and marked on every page."""

from __future__ import annotations

import json
from datetime import datetime, timedelta
from pathlib import Path

import pytest
import yaml
from mkdocs.config import load_config
from mkdocs.exceptions import PluginError
from tests.books import new_book
from tests.plugin.builds import built

from tinbook.models.register import of_the_kitchen
from tinbook.plugin.kitchens import MARK, TODAY, WANTED, begin, kitchens_now, settle_folder
from tinbook.plugin.options import TinbookConfig

ORDER = "handle: {word}\nmixtures: [{{mixture: plain-sponge, count: 2}}]\nhand over: {day} 11:00\nstate: agreed\nnotes: [{word} note]\n"
WORDS = {"order": "shelducknine", "hours": "turnstonehour", "kitchen": "2031-04-17"}


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new book with an order, a log and a kitchen, each with a word that stands nowhere else."""
    book = new_book(tmp_path_factory.mktemp("own") / "ours")
    (book / "recipes/orders").mkdir(exist_ok=True)
    (book / "recipes/orders/first.yaml").write_text(ORDER.format(word=WORDS["order"], day="2026-12-11"))
    (book / "recipes/house/hours.yaml").write_text(
        f"hours:\n  - {{done: 2026-12-05 10:40, task: {WORDS['hours']}/x}}\n"
    )
    (book / "recipes/house/kitchen.yaml").write_text(f"days off: [{WORDS['kitchen']}]\n")
    return book


@pytest.fixture
def at_eight(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(TODAY, "2026-12-07T08:00")


def test_it_has_orders_and_says_whose_it_is_on_every_page(own: Path, tmp_path: Path, at_eight: None) -> None:
    site = built(own, tmp_path / "kit", strict=True, kitchen=True)
    pages = list(site.rglob("*.html"))
    assert pages and all("kitchen’s own book" in page.read_text("utf-8") for page in pages if page.name != "404.html")
    week = (site / "orders/week/index.html").read_text("utf-8")
    assert WORDS["order"] in week and (site / MARK).is_file()
    assert WORDS["order"] in (site / "assets/tinbook/find-index.js").read_text("utf-8")
    assert 'const WHOSE = "kitchen";' in (site / "sw.js").read_text("utf-8") and MARK not in (site / "sw.js").read_text(
        "utf-8"
    )
    assert json.loads((site / "manifest.webmanifest").read_text("utf-8"))["short_name"] == "Kitchen"


def test_nothing_of_it_is_in_the_public_site(own: Path, tmp_path: Path, at_eight: None) -> None:
    site = built(own, tmp_path / "site", strict=True)
    whole = b"".join(path.read_bytes() for path in site.rglob("*") if path.is_file()).lower()
    assert not [word for word in WORDS.values() if word.encode() in whole]
    assert not (site / "orders").exists() and not (site / MARK).exists() and b"own book" not in whole
    assert 'const WHOSE = "tinbook";' in (site / "sw.js").read_text("utf-8")


def test_without_orders_nothing_of_it_shows(tmp_path: Path, at_eight: None) -> None:
    book = new_book(tmp_path / "bare")
    assert not (built(book, tmp_path / "kit", kitchen=True) / "orders").exists()


def test_git_leaves_out_what_is_the_kitchens(own: Path) -> None:
    ignored = (own / ".gitignore").read_text("utf-8").splitlines()
    assert {f"recipes/{path}" for path in of_the_kitchen()} | {"kitchen/"} <= set(ignored)


def settled(book: Path, site: str | None = None, kitchen: bool = True) -> Path:
    config = load_config(str(book / "mkdocs.yml"), **({"site_dir": site} if site else {}))
    return settle_folder(config, kitchen, serving=False)


def test_where_it_goes(own: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert settled(own) == own / "kitchen"
    assert settled(own, str(tmp_path / "there")) == tmp_path / "there"
    monkeypatch.setenv(WANTED, str(tmp_path / "elsewhere"))
    assert settled(own) == tmp_path / "elsewhere"
    monkeypatch.setenv(WANTED, "")
    assert settled(own) == own / "kitchen"


@pytest.mark.parametrize("place", ["site", "site/kitchen", ".", "book_src", "book_src/kitchen", "site/../site/a/b"])
def test_never_into_or_round_a_published_folder(own: Path, monkeypatch: pytest.MonkeyPatch, place: str) -> None:
    monkeypatch.setenv(WANTED, str(own / place))
    with pytest.raises(PluginError, match="cannot go to"):
        settled(own)


def test_never_into_a_public_book_that_stands_elsewhere(
    own: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    index = tmp_path / "host/assets/tinbook/find-index.js"
    index.parent.mkdir(parents=True)
    index.write_text("")
    monkeypatch.setenv(WANTED, str(tmp_path / "host/kitchen"))
    with pytest.raises(PluginError, match="public book"):
        settled(own)
    (tmp_path / "host" / MARK).write_text("")
    assert settled(own) == tmp_path / "host/kitchen"


def test_a_public_site_never_goes_round_or_into_it(own: Path, tmp_path: Path) -> None:
    (tmp_path / "all/kit").mkdir(parents=True)
    (tmp_path / "all/kit" / MARK).write_text("")
    for place in ("all", "all/kit/site"):
        with pytest.raises(PluginError, match="kitchen's book is in"):
            settled(own, str(tmp_path / place), kitchen=False)


def test_it_is_never_published(monkeypatch: pytest.MonkeyPatch) -> None:
    ours = TinbookConfig()
    ours.load_dict({"kitchen": True})
    with pytest.raises(PluginError, match="never published"):
        begin(ours, "gh-deploy")
    monkeypatch.setenv(WANTED, "")
    asked = TinbookConfig()
    asked.load_dict({})
    begin(asked, "build")
    assert asked.kitchen is True


def test_the_moment_it_plans_from(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(TODAY, "2026-12-07T08:05")
    assert kitchens_now() == datetime(2026, 12, 7, 8, 5)
    monkeypatch.delenv(TODAY)
    before = datetime.now().replace(second=0, microsecond=0)
    now = kitchens_now()
    assert now.minute % 15 == 0 and timedelta(0) <= now - before <= timedelta(minutes=16)


def test_what_cannot_be_planned_is_said_on_the_page(own: Path, tmp_path: Path, at_eight: None) -> None:
    """An order with no time left: the page says so, the build stands."""
    path = own / "recipes/orders/late.yaml"
    path.write_text(ORDER.format(word="dunlinlate", day="2026-12-07").replace("11:00", "08:15"))
    try:
        week = (built(own, tmp_path / "kit", kitchen=True) / "orders/week/index.html").read_text("utf-8")
        assert "dunlinlate cannot be ready by" in week
    finally:
        path.unlink()
    assert yaml.safe_load((own / "mkdocs.yml").read_text("utf-8").replace("!ENV", ""))
