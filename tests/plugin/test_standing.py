"""The builder that stands, at a real server of MkDocs that follows real folders; as a whole in `tests/cli/test_site.py`."""

from __future__ import annotations

import errno
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer

from tinbook.plugin.standing import STANDS, LastGood, Outcome


def too_far(*_: object) -> Outcome:
    """Whatever has changed, all of the site is to be built."""
    return "too far"


@pytest.fixture
def server(tmp_path: Path) -> Iterator[LiveReloadServer]:
    site = tmp_path / "site"
    site.mkdir()
    (site / "a.html").write_text("old", "utf-8")

    def build() -> None:
        assert not (site / "a.html").exists(), "MkDocs builds into a folder that is empty or not there"
        site.mkdir()
        (site / "a.html").write_text("new", "utf-8")

    made = LiveReloadServer(build, "127.0.0.1", 0, str(site), polling_interval=0.05)
    yield made
    made.observer.stop()
    made.server_close()


def test_a_good_build_takes_the_place_of_the_last(server: LiveReloadServer, tmp_path: Path) -> None:
    LastGood(server, tmp_path / "mkdocs.yml", tmp_path / "recipes", False, too_far)()
    assert (tmp_path / "site" / "a.html").read_text("utf-8") == "new"
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


@pytest.mark.parametrize("dirty", [True, False])
@pytest.mark.parametrize("error", [Abort("the disk is full"), RuntimeError("a mistake"), OSError(13, "Denied")])
def test_a_failed_build_leaves_the_last(
    server: LiveReloadServer, tmp_path: Path, caplog: pytest.LogCaptureFixture, error: Exception, dirty: bool
) -> None:
    site = tmp_path / "site"

    def fail() -> None:
        shutil.rmtree(site, ignore_errors=True)
        (site / "b").mkdir(parents=True)
        raise error

    server.builder = fail
    LastGood(server, tmp_path / "mkdocs.yml", tmp_path / "recipes", dirty, too_far)()
    assert [path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*")] == ["site", "site/a.html"]
    assert (site / "a.html").read_text("utf-8") == "old"
    said = [record.getMessage() for record in caplog.records]
    assert said[-1].endswith(STANDS)
    assert any(word in said[0] for word in ("the disk is full", "a mistake", "mkdocs.yml cannot be read: denied"))
    assert bool(caplog.records[0].exc_info) == isinstance(error, RuntimeError), "a mistake of ours is told whole"


def test_dirty_builds_find_what_was_there(server: LiveReloadServer, tmp_path: Path) -> None:
    server.builder = lambda: None
    LastGood(server, tmp_path / "mkdocs.yml", tmp_path / "recipes", True, too_far)()
    assert (tmp_path / "site" / "a.html").read_text("utf-8") == "old"


def test_a_site_that_cannot_be_put_aside_stays(
    server: LiveReloadServer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def full(*_: Path) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(shutil, "copytree", full)
    LastGood(server, tmp_path / "mkdocs.yml", tmp_path / "recipes", True, too_far)()
    assert (tmp_path / "site" / "a.html").read_text("utf-8") == "old"
    assert "The last site cannot be set aside: the disk is full." in caplog.text


def before_long(true: Callable[[], bool]) -> bool:
    until = time.monotonic() + 20
    while time.monotonic() < until:
        if true():
            return True
        time.sleep(0.02)
    return False


@pytest.mark.parametrize("is_folder", [True, False])
def test_what_was_gone_is_followed_again(server: LiveReloadServer, tmp_path: Path, is_folder: bool) -> None:
    followed, away = tmp_path / "followed", tmp_path / "away"
    inside = followed / "a" if is_folder else followed
    followed.mkdir() if is_folder else None
    inside.write_text("1", "utf-8")
    server.watch(str(followed))
    server.watch(str(followed))  # as one plugin and another may
    standing = LastGood(server, tmp_path / "mkdocs.yml", tmp_path / "recipes", False, too_far)
    standing.begin()
    server.observer.start()

    def asked() -> bool:
        with server._rebuild_cond:
            wanted, server._want_rebuild = server._want_rebuild, False
        return wanted

    try:
        followed.rename(away)
        assert before_long(asked), "that it went is told"
        away.rename(followed)
        assert before_long(asked), "and that it came back"
        time.sleep(0.3)
        asked()
        inside.write_text("another", "utf-8")
        assert before_long(asked), "and what is written in it from then on"
    finally:
        standing.end()
