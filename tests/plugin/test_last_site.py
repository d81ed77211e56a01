"""What lies in the site's folder when a build begins: files that are as they should be stay, and nothing else does."""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path

import pytest
from mkdocs.utils import clean_directory

from tinbook.plugin.last_site import ASIDE, LastSite

FILES = {
    "index.html": "home",
    "mixtures/madeira/index.html": "madeira",
    "mixtures/mud/index.html": "mud",
    "a/b.txt": "b",
}


def fill(folder: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")


def held(folder: Path) -> dict[str, str]:
    """All files below a folder; folders that hold none would be named with a slash."""
    paths = [path for path in folder.rglob("*") if path.is_file() or not any(path.iterdir())]
    return {
        path.relative_to(folder).as_posix() + "/" * path.is_dir(): path.read_text("utf-8") if path.is_file() else ""
        for path in paths
    }


def sums(**files: str) -> dict[str, bytes]:
    return {name: hashlib.sha256(text.encode()).digest() for name, text in files.items()}


@pytest.fixture
def site(tmp_path: Path) -> Path:
    fill(tmp_path / "site", FILES)
    return tmp_path / "site"


def test_what_is_as_it_should_be_stays_and_all_else_goes(site: Path) -> None:
    last, inode = LastSite(site), os.stat(site / "mixtures/madeira/index.html").st_ino
    last.set_aside()
    clean_directory(str(site))
    wanted = sums(**{"mixtures/madeira/index.html": "madeira", "index.html": "another", "new/index.html": "new"})
    assert last.keep(wanted) == {"mixtures/madeira/index.html"}
    fill(site, {"index.html": "another", "mixtures/oat/index.html": "oat"})
    last.put_together()
    kept = {"mixtures/madeira/index.html": "madeira", "index.html": "another", "mixtures/oat/index.html": "oat"}
    assert held(site) == kept
    assert os.stat(site / "mixtures/madeira/index.html").st_ino == inode, "it was not written again"


def test_where_nothing_stands_the_folder_is_empty(site: Path) -> None:
    last = LastSite(site)
    last.set_aside()
    clean_directory(str(site))
    assert last.keep({}) == set()
    assert held(site) == {}
    last.put_together()
    assert held(site) == {}


def test_what_mkdocs_leaves_stays(site: Path) -> None:
    fill(site, {".git/HEAD": "main", ".nojekyll": ""})
    last = LastSite(site)
    last.set_aside()
    clean_directory(str(site))
    last.keep(sums(**{"index.html": "home"}))
    last.put_together()
    assert held(site) == {".git/HEAD": "main", ".nojekyll": "", "index.html": "home"}


def test_a_build_that_stops_leaves_nothing_aside(site: Path) -> None:
    last = LastSite(site)
    last.set_aside()
    fill(site, {"index.html": "half"})
    last.forget()
    assert held(site) == {"index.html": "half"}


def test_what_a_killed_build_left_is_gone_with_the_next(site: Path) -> None:
    fill(site, {f"{ASIDE}/mixtures/old/index.html": "old"})
    last = LastSite(site)
    last.set_aside()
    clean_directory(str(site))
    last.keep(sums(**{"a/b.txt": "b"}))
    last.put_together()
    assert held(site) == {"a/b.txt": "b"}


def test_a_site_that_is_not_there_yet(tmp_path: Path) -> None:
    last = LastSite(tmp_path / "site")
    last.set_aside()
    assert last.keep(sums(**{"index.html": "home"})) == set()
    last.put_together()
    assert not (tmp_path / "site").exists()


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_links_are_no_files_of_the_site(site: Path) -> None:
    outside = site.parent / "outside"
    fill(outside, {"index.html": "home"})
    (site / "mixtures/link").symlink_to(outside)
    (site / "mixtures/link.html").symlink_to(outside / "index.html")
    last = LastSite(site)
    last.set_aside()
    clean_directory(str(site))
    last.keep(sums(**{"mixtures/link/index.html": "home", "mixtures/link.html": "home", "index.html": "home"}))
    last.put_together()
    assert held(site) == {"index.html": "home"} and held(outside) == {"index.html": "home"}
