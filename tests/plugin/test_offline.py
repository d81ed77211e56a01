"""What the plugin writes so that a device can keep the book: the worker's list, the manifest, the folder's scripts."""

from __future__ import annotations

import hashlib
import json
import re
import struct
from pathlib import Path

import pytest
from tests.plugin.builds import built

from tinbook.plugin.offline import manifest, worker

ROOT = Path(__file__).parents[2]
THEME = ROOT / "plugins" / "tinbook" / "plugin" / "theme"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A small site with what a device needs and what it does not."""
    texts = {
        "index.html": "home", "404.html": "no", "mixtures/index.html": "é", "a name.txt": "x", "sitemap.xml": "today",
        "sitemap.xml.gz": "z", "app.js.map": "{}", "assets/javascripts/lunr/tinyseg.js": "", "sw.js": "old",
        "assets/javascripts/workers/search.js": "", "assets/tinbook/find-index.js": "",
    }  # fmt: skip
    for name, text in texts.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return tmp_path


def listed(script: str) -> tuple[str, dict[str, str]]:
    found = re.match(r'const VERSION = "(\w+)", DIGESTS = (\{.*?\});\n', script, re.DOTALL)
    assert found
    return found[1], json.loads(found[2])


def test_the_worker_lists_each_file_a_page_can_ask_for_with_its_digest(site: Path) -> None:
    _, digests = listed(worker(site))
    assert set(digests) == {
        "index.html",
        "404.html",
        "mixtures/index.html",
        "a name.txt",
        "assets/tinbook/find-index.js",
    }
    assert digests["mixtures/index.html"] == hashlib.sha256("é".encode()).hexdigest()


def test_the_same_site_is_the_same_version_and_one_changed_byte_another(site: Path) -> None:
    first = worker(site)
    (site / "sitemap.xml").write_text("tomorrow", "utf-8")
    assert worker(site) == first
    (site / "index.html").write_text("hame", "utf-8")
    assert listed(worker(site))[0] != listed(first)[0]
    (site / "index.html").write_text("home", "utf-8")
    (site / "404.html").rename(site / "405.html")
    assert listed(worker(site))[0] != listed(first)[0], "a renamed file"


def test_the_manifest_has_real_pictures_of_the_sizes_it_names() -> None:
    """Sizes by the PNG header, https://www.w3.org/TR/png-3/#11IHDR."""
    for icon in json.loads(manifest("A book"))["icons"]:
        head = (THEME / icon["src"]).read_bytes()[:24]
        assert head[:8] == b"\x89PNG\r\n\x1a\n"
        width, height = struct.unpack(">II", head[16:24])
        assert f"{width}x{height}" == icon["sizes"]


def test_two_builds_of_one_book_are_one_version(book: Path, tmp_path: Path) -> None:
    """Of a small book; those of the demo are equal in every file, by `test_repeatable.py`."""
    first, again = ((built(book, tmp_path / name) / "sw.js").read_text("utf-8") for name in ("first", "again"))
    assert len(listed(first)[1]) > 100 and first == again


def test_a_served_book_is_not_kept_and_takes_an_earlier_worker_away(book: Path) -> None:
    site = built(book, command="serve")
    script = (site / "sw.js").read_text("utf-8")
    assert "unregister()" in script and "DIGESTS" not in script
    home = (site / "index.html").read_text("utf-8")
    assert "data-kept" not in home and 'rel="manifest"' not in home


def test_a_folder_has_one_classic_script_and_those_of_find(demo_folder: Path) -> None:
    ours = {path.name for path in (demo_folder / "assets" / "tinbook").glob("*.js")}
    assert ours == {"main.js", "find.js", "find-index.js", "minisearch.js"}
    assert (demo_folder / "assets" / "tinbook" / "LICENSE-minisearch.txt").is_file()
    for page in demo_folder.rglob("*.html"):
        text = page.read_text("utf-8")
        assert 'type="module"' not in text and 'rel="manifest"' not in text and "data-kept" not in text
        # a canonical address or a source named in the text asks for nothing by itself
        assert re.findall(r'<(?:script|img|iframe)[^>]+src="https?:', text) == []
        assert re.findall(r'<link rel="(?:stylesheet|icon|preconnect|manifest)" href="https?:', text) == []
