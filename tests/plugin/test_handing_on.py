"""A build over the last site is the build from nothing, whatever has happened to that site."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from tests.plugin.builds import SPONGE, Built, change

from tinbook.plugin.last_site import ASIDE

PAGE = "techniques/line-a-tin/index.html"


def test_pages_that_stand_are_not_written(first: tuple[Path, Built], book: Path) -> None:
    before = {path: os.stat(path).st_ino for path in (book / "site").rglob("*.html")}
    for path in before:
        os.utime(path, (0, 0))
    second = Built(book)
    assert second.files == first[1].files
    written = {path for path in before if os.stat(path).st_mtime > 0}
    assert len(written) < len(before) / 3 and book / "site" / PAGE not in written
    assert not (book / "site" / ASIDE).exists()


@pytest.mark.parametrize("what", ["here and there", "all"])
def test_a_site_that_was_meddled_with_is_put_right(first: tuple[Path, Built], book: Path, what: str) -> None:
    """A page that is another, one cut short, a folder gone, files of somebody's; or no site at all."""
    page, other, gone = (book / "site" / name for name in (PAGE, "tins/index.html", "portions/round"))
    assert page.is_file() and other.is_file() and (gone / "index.html").is_file()
    if what == "all":
        shutil.rmtree(book / "site")
    else:
        page.write_text("another", "utf-8")
        other.write_bytes(other.read_bytes()[:-1])
        shutil.rmtree(gone)
        (page.parent / "notes.txt").write_text("mine", "utf-8")
        (book / "site/empty/deeper").mkdir(parents=True)
    files = Built(book).files
    assert files.keys() == first[1].files.keys()
    assert [name for name in files if files[name] != first[1].files[name]] == []
    assert not (book / "site/empty").exists()


def test_a_page_that_is_no_more_is_gone(book: Path) -> None:
    (book / SPONGE).unlink()
    assert not any(name.startswith("mixtures/plain-sponge") for name in Built(book).files)
    assert not (book / "site/mixtures/plain-sponge").exists()


def test_the_map_of_the_site_has_every_page(book: Path) -> None:
    change(book, "mkdocs.yml", "site_name: ", "site_url: https://heronsmouth.example/\nsite_name: ")
    maps = [book / "site" / name for name in ("sitemap.xml", "sitemap.xml.gz")]
    Built(book)
    before = [path.read_bytes() for path in maps]
    assert before[0].count(b"<url>") > 20
    Built(book)
    assert [path.read_bytes() for path in maps] == before
