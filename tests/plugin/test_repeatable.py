"""One tree, one book: two builds are equal byte for byte; and the drop-in fork of the site generator builds it too."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

from tests.conftest import BUILT_THERE

ROOT = Path(__file__).parents[2]


def run(program: str, book: Path, site: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", program, "build", "--strict", "-f", str(book / "mkdocs.yml"), "-d", str(site)]
    environment = {"TINBOOK_KEEP": "false", **environment}
    return subprocess.run(
        command, cwd=book, env={**os.environ, **environment}, capture_output=True, text=True, timeout=300, check=False
    )


def content(site: Path) -> dict[str, bytes]:
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def test_two_builds_are_equal(tmp_path: Path, demo_site: Path) -> None:
    """From folders of other names and depths, with files of other dates, in other time zones, with sets in another
    order."""
    book = tmp_path / "b c/deep/é"
    for name in ("recipes", "book_src"):
        shutil.copytree(ROOT / name, book / name)
    shutil.copy(ROOT / "mkdocs.yml", book / "mkdocs.yml")
    for path in book.rglob("*"):
        os.utime(path, (7, 7))
    elsewhere = {**BUILT_THERE, "TZ": "America/Lima", "PYTHONHASHSEED": "7"}
    assert elsewhere.items() - BUILT_THERE.items() == {("TZ", "America/Lima"), ("PYTHONHASHSEED", "7")}
    done = run("mkdocs", book, book / "site", **elsewhere)
    assert done.returncode == 0, done.stderr
    first, second = content(demo_site), content(book / "site")
    assert "sitemap.xml.gz" in first and set(first) == set(second)
    assert [name for name in first if first[name] != second[name]] == []


def test_the_way_out_is_open(tmp_path: Path) -> None:
    """MkDocs has no maintainer, and the theme's fixes end on 5 May 2027: ProperDocs builds the demo without a warning."""
    assert find_spec("properdocs"), "ProperDocs is not installed; it is one of the packages for tests in pyproject.toml"
    done = run("properdocs", ROOT, tmp_path / "site")
    assert done.returncode == 0, done.stderr
    pages = {name for name in content(tmp_path / "site") if name.endswith(".html")}
    assert "mixtures/creamed-butter-sponge/index.html" in pages and len(pages) > 100
