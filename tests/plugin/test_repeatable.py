"""One tree, one book: two builds are equal byte for byte, though the drop-in fork of the site generator makes the other."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import pytest
from tests.conftest import BUILT_THERE

ROOT = Path(__file__).parents[2]
MADE_BY = re.compile(rb'(?<=<meta name="generator" content="mkdocs-)(?:ProperDocs )?[\d.]+')
"""The program and its version, in each page."""
DIGEST = re.compile(rb'(?<=")[0-9a-f]{64}(?=")|(?<=VERSION = ")\w+')
"""What the worker says of each page: that a page is the same but for the program is seen of the page itself."""


def content(site: Path) -> dict[str, bytes]:
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def on_one_core() -> None:
    """In a process that begins: no other works ahead for it, though one does for the site it is held against."""
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, [min(os.sched_getaffinity(0))])


@pytest.mark.long
def test_two_builds_are_equal(tmp_path: Path, demo_site: Path) -> None:
    """From folders of other names and depths, with files of other dates, in other time zones, with sets in another
    order, with and without other processes that help; and by another program: MkDocs has no maintainer, and the theme's
    fixes end on 5 May 2027, but ProperDocs builds the demo without a warning."""
    assert find_spec("properdocs"), "ProperDocs is not installed; it is one of the packages for tests in pyproject.toml"
    book = tmp_path / "b c/deep/é"
    for name in ("recipes", "book_src"):
        shutil.copytree(ROOT / name, book / name)
    shutil.copy(ROOT / "mkdocs.yml", book / "mkdocs.yml")
    for path in book.rglob("*"):
        os.utime(path, (7, 7))
    elsewhere = {**BUILT_THERE, "TZ": "America/Lima", "PYTHONHASHSEED": "7"}
    assert elsewhere.items() - BUILT_THERE.items() == {("TZ", "America/Lima"), ("PYTHONHASHSEED", "7")}
    done = subprocess.run(
        [sys.executable, "-m", "properdocs", "build", "--strict", "-d", str(book / "site")], cwd=book, text=True,
        env={**os.environ, "TINBOOK_KEEP": "false", **elsewhere}, capture_output=True, timeout=300, check=False,
        preexec_fn=on_one_core,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    first, second = content(demo_site), content(book / "site")
    assert "sitemap.xml.gz" in first and "mixtures/creamed-butter-sponge/index.html" in first
    assert set(first) == set(second)
    pages = [name for name in first if name.endswith(".html")]
    assert len(pages) > 100 and all(b"ProperDocs" in second[name] for name in pages)
    for site in (first, second):
        for name in pages:
            site[name], stamps = MADE_BY.subn(b"", site[name])
            assert stamps == 1, name
        site["sw.js"], digests = DIGEST.subn(b"", site["sw.js"])
        assert digests > len(pages)
    assert [name for name in first if first[name] != second[name]] == []
