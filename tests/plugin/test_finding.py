"""Find's index of a built site: prose by its headings, and every row leads somewhere that is there."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs

import pytest

from tinbook.pages.finding.index import HEADS
from tinbook.plugin.finding import INDEX, as_script, page_found

HTML = """<h1 id="t">On the tablet</h1><p>There are two ways. The first needs an address.</p>
<h2 id="ways">Ways <a class="headerlink" href="#ways">¶</a></h2><p>Put <b>all</b> files there.</p>
<table><tr><td>42 figures</td></tr></table><script>code()</script><h3 id="small">Small</h3>"""


def index_in(site: Path) -> dict[str, Any]:
    text = (site / INDEX).read_text("utf-8")
    quoted = re.fullmatch(r"self\.tinbookIndex='(.*)';\n", text)
    assert quoted
    made: dict[str, Any] = json.loads(re.sub(r"\\([\\'])", r"\1", quoted[1]))
    return made


def rows_in(site: Path) -> list[dict[str, str]]:
    return [dict(zip(HEADS, row, strict=False)) for row in index_in(site)["finds"]]


@pytest.fixture(scope="module")
def site(demo_site: Path) -> Path:
    return demo_site


def test_a_page_and_its_sections() -> None:
    page, ways, small = page_found("on-the-tablet", "On the tablet", HTML)
    assert (page.kind, page.second) == ("page", "There are two ways")
    assert (ways.title, ways.anchor, ways.second) == ("Ways", "ways", "Put all files there")
    assert ways.text == ("Put all files there.",) and ways.tags == ("On the tablet",)
    assert (small.title, small.second) == ("Small", "On the tablet")
    assert "Ways Small" in page.tags


def test_what_the_sources_tell_is_not_told_twice() -> None:
    assert list(page_found("mixtures/a", "A", HTML, "mixture")) == []
    assert [each.kind for each in page_found("tins", "Tins", HTML, "tins")] == ["page"]


def test_an_index_is_text_in_a_script_whatever_is_in_it() -> None:
    script = as_script({"a": "it's a \\ \u2028 </script>"})
    assert script.count("'") == 3 and "\\'s" in script and "\u2028" not in script


def test_every_row_leads_to_a_place_that_is_there(site: Path) -> None:
    texts: dict[str, str] = {}
    rows = rows_in(site)
    assert len(rows) > 500
    for row in rows:
        url, _, anchor = row["url"].partition("#")
        text = texts.setdefault(url, (site / url / "index.html").read_text("utf-8"))
        if anchor.startswith("for?"):
            names = parse_qs(anchor.removeprefix("for?"))
            assert all(f'["{name}",' in text for (name,) in names.values()), row
        elif anchor:
            assert f'id="{anchor}"' in text or f"id={anchor}" in text, row


def test_of_prose_what_asks_to_be_left_out_is(site: Path) -> None:
    urls = {row["url"] for row in rows_in(site)}
    assert "on-the-tablet/" in urls and "on-the-tablet/#as-a-folder" in urls
    assert not [url for url in urls if url.startswith("changes/")]


def test_from_a_folder_rows_name_files(demo_folder: Path) -> None:
    for row in rows_in(demo_folder):
        assert (demo_folder / row["url"].partition("#")[0]).is_file(), row


def test_amounts_do_not_flood_it(site: Path) -> None:
    """A figure of a table is no word of the book."""
    terms = index_in(site)["terms"].split(" ")
    assert [term for term in terms if term.isdigit() and int(term) >= 100] == []
