"""What the book says is its own: no check value of common practice stands in it, and publications are named once."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from functools import cache
from pathlib import Path

from tinbook.facts import Facts

ROOT = Path(__file__).parents[2]
PRACTICE = "tests/data/common_practice.csv"
QUESTIONS = "tests/data/questions.csv"
CONTENT = ("README.md", "recipes", "book_src", "plugins", "site_demo/README.md", "mkdocs.yml")
TEXT = {".md", ".yaml", ".yml", ".py", ".js", ".html", ".svg", ".txt", ".typ", ".css"}
SELLERS_MAY_STAND = ("plugins/tinbook/facts/data/sources.yaml", "tests/data/")
Practice = Callable[[str], tuple[float, ...]]


@cache
def texts(*under: str) -> dict[str, str]:
    """The text files git knows below `under`, by address."""
    listed = subprocess.run(["git", "ls-files", *under], cwd=ROOT, capture_output=True, text=True, check=True)
    paths = [ROOT / line for line in listed.stdout.splitlines()]
    return {
        path.relative_to(ROOT).as_posix(): path.read_text("utf-8", errors="replace")
        for path in paths
        if path.suffix in TEXT | {".csv"}
    }


def test_the_file_of_common_practice(table: Callable[[str], list[dict[str, str]]]) -> None:
    rows = table("common_practice")
    assert 0 < len(rows) <= 10
    for row in rows:
        assert list(row) == ["value", "what it checks", "source"]
        assert row["source"] == "common practice, no source"
    # each row is read by a test
    tests = "\n".join(text for path, text in texts("tests").items() if path.endswith(".py"))
    assert [row["what it checks"] for row in rows if f'practice("{row["what it checks"]}")' not in tests] == []


def test_no_check_value_stands_in_the_book(practice: Practice) -> None:
    """Sponge, layers, figure and board, as a baker would write them. Gaps and shares are too plain to be looked for."""
    grams, _ = practice("grams each of butter sugar and flour and the eggs of a sponge that carves")
    more, _ = practice("the same of a quarter more of it for two deep 15 cm rounds")
    low, high = practice("least and most mm of a layer when those two are levelled and halved into four")
    weight, wide, long = practice("grams of paste and the mm wide and long that a flattened figure is pressed to")
    patterns = [
        rf"\b{grams:g} ?g\b", rf"\b{more:g} ?g\b", rf"\b{low:g}(?: to |-){high:g} ?mm\b", rf"\b{weight:g} g paste\b",
        rf"\b{wide:g} mm x {long:g}\b", "dimple",
    ]  # fmt: skip
    content = texts(*CONTENT)
    assert len(content) > 300
    # an icon's or a letter's outline is all figures, and says none
    found = [
        (path, pattern, told.group())
        for path, text in content.items()
        for pattern in patterns
        for told in re.finditer(pattern, text, re.IGNORECASE)
    ]
    assert found == []


def test_a_publication_has_title_publisher_and_date(facts: Facts) -> None:
    published = [source for source in facts.sources.values() if source.kind == "published"]
    titles = [source.title for source in published]
    assert len(set(titles)) == len(titles) > 30
    for source in published:
        assert source.publisher, source.key
        assert re.fullmatch(r"(?:(?:\d{4}|undated|version [\d.]+)(?:; )?)+", source.date), source.key
        # no product of a maker by its number
        assert not re.search(r"\b\d{3,4}-\d{3,5}\b", source.title), source.key
    for source in facts.sources.values():
        if source.kind != "published":
            assert (source.publisher, source.date, source.sells) == ("", "", False)


def test_who_sells_is_named_as_a_publisher_only(facts: Facts) -> None:
    sellers = {source.publisher for source in facts.sources.values() if source.sells}
    assert len(sellers) >= 5
    everywhere = texts("README.md", "DEVELOPERS.md", "recipes", "book_src", "plugins", "tests", "site_demo")
    named = {
        path: seller
        for path, text in everywhere.items()
        for seller in sellers
        if seller.lower() in text.lower() and not path.startswith(SELLERS_MAY_STAND)
    }
    assert named == {}
    # in the tables of the tests they stand in the head, which is the source entry
    for path, text in texts("tests/data").items():
        rows = "\n".join(line for line in text.splitlines() if not line.startswith("#"))
        assert [seller for seller in sellers if seller.lower() in rows.lower()] == [], path


def test_each_table_of_the_tests_names_its_source() -> None:
    """In its first lines: title; publisher; address; date. One of our own figures has its source in each row; the notes
    and the questions are of our own making."""
    for path, text in texts("tests/data").items():
        if path in (PRACTICE, QUESTIONS) or path.startswith("tests/data/notes/"):
            continue
        heads = [line for line in text.splitlines() if line.startswith("# source")]
        assert heads, path
        for head in heads:
            parts = head.partition(": ")[2].split("; ")
            assert len(parts) >= 4 or parts[0] == "per row", (path, head)
