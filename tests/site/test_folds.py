"""Every table of the demo's pages says how it was worked out, or has a word why nothing was; keys of files are words."""

from __future__ import annotations

import re

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.grids import UNWORKED
from tinbook.site import build_site

FOLD = "How this was worked out</summary>"
MARKS = re.compile(
    rf'(?P<heading>^#{{1,6}} |<h[1-6]\b)|(?P<table><table\b(?! class="tb-keys"))|(?P<fold>{FOLD})|data-unworked="(?P<why>\w+)"',
    re.M,
)


@pytest.fixture(scope="module")
def filled(demo: Loaded) -> dict[str, str]:
    pages = build_site(demo.book, demo.facts, {}).pages
    return {name: page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}") for name, page in pages.items()}


def folds(text: str) -> list[tuple[str, str]]:
    """For each table the heading it stands under, and what follows it there: `fold`, a key of UNWORKED, or ""."""
    found: list[tuple[str, str]] = []
    heading, waiting = "", 0
    for mark in MARKS.finditer(text):
        if mark["heading"]:
            found += [(heading, "")] * waiting
            heading, waiting = text[mark.end() :].split("\n", 1)[0][:60], 0
        elif mark["table"]:
            waiting += 1
        else:
            found += [(heading, mark["why"] or "fold")] * waiting
            waiting = 0
    return found + [(heading, "")] * waiting


def test_every_table_has_its_fold_or_a_word_why_not(filled: dict[str, str]) -> None:
    told = {(name, heading, after) for name, text in filled.items() for heading, after in folds(text)}
    assert not [(name, heading) for name, heading, after in told if not after]
    assert {after for _, _, after in told} == {"fold", *UNWORKED}
    assert len([name for name, text in filled.items() if "<table" in text]) > 50


def test_a_fold_has_a_formula_its_inputs_and_its_sources(filled: dict[str, str]) -> None:
    read = 0
    for name, text in filled.items():
        for fold in text.split(FOLD)[1:]:
            body = fold.split("</details>", 1)[0]
            formulas = re.findall(r'<p class="tb-formula">(.+?)</p>', body)
            assert formulas and all(formula.strip() for formula in formulas), name
            assert re.search(r"<ul><li>[^<]", body), (name, formulas)
            assert "<p>Source: <a href=" in body, (name, formulas)
            read += 1
    assert read > 200


def test_what_has_no_sums_says_so_where_it_stands(filled: dict[str, str]) -> None:
    for key, why in UNWORKED.items():
        pages = [text for text in filled.values() if f'data-unworked="{key}"' in text]
        assert pages and all(f'data-unworked="{key}">{why}</p>' in text for text in pages)


def test_a_table_without_a_fold_is_seen() -> None:
    assert folds(f"## One\n<table></table>\n{FOLD}\n## Two\n<table></table>\n## Three\n{FOLD}") == [
        ("One", "fold"),
        ("Two", ""),
    ]
