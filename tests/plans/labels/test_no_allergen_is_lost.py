"""No allergen of any leaf is ever missing from a list, a line, a table or a card: in a hundred random books."""

from __future__ import annotations

import io
import json
from datetime import date
from pathlib import Path

import pdfplumber
import pytest
from tests.every import all_seeds, check_every
from tests.oracles.lists import RandomBook, random_book

from tinbook.facts import Facts
from tinbook.loading import Loaded, load_book
from tinbook.pages.base.page import Desk
from tinbook.pages.labels.allergens import AllergensView
from tinbook.pages.labels.cards import goes_with, table_card
from tinbook.pages.labels.printed import label_words, strip_pages
from tinbook.pages.spelling.labels import list_runs
from tinbook.plans.base.asking import Query
from tinbook.plans.labels.label import label_of
from tinbook.plans.labels.listing import list_of
from tinbook.plans.labels.naming import named_in
from tinbook.plans.labels.product import product_asked
from tinbook.plans.tables import TABLES
from tinbook.press.labels import labels_pdf

BOOKS = 2000 if all_seeds() else 100
DAY = date(2026, 12, 20)


def emphasised(text: str, facts: Facts) -> set[str]:
    """The allergens that a word in bold names, by the word itself or by the label's."""
    by_label = {each.label: key for key, each in facts.allergens.items()}
    return {by_label[text]} if text in by_label else {each.key for each in named_in(text, facts)}


def check_product(product: str, wanted: RandomBook, loaded: Loaded, desk: Desk) -> None:
    book, facts = loaded.book, loaded.facts
    allergens, unknown = wanted.allergens(product), wanted.unknown(product)
    made, cake = product_asked(product, book, facts)
    assert (cake is not None) == (product in wanted.cakes)
    if cake is not None:
        # what the cake's page, its sheet and the job sheet say
        labels = {facts.allergens[key].label for key in allergens}
        assert {each.allergen for each in cake.allergens.contains} == labels
        assert len(cake.allergens.unknown) == len(unknown)
    for own in ("merged", "in brackets"):
        listed = list_of(made, book, facts, DAY, own)
        bold = {key for run in list_runs(listed, facts) if run.strong for key in emphasised(run.text, facts)}
        assert set(listed.contains) == allergens == bold, (own, product)
        assert len(listed.unknown) == len(unknown) and listed.complete <= (not unknown)
    plan = label_of(product, book, facts, DAY)
    assert set(plan.contains) == allergens and (not unknown or not plan.ready)
    words = label_words(plan, facts)
    shown = {key for run in (*words.runs, *words.contains) if run.strong for key in emphasised(run.text, facts)}
    assert shown == allergens
    card = goes_with(plan, desk)
    on_card = {run.text for run in (*card.words.runs, *card.words.contains) if run.strong}
    assert {key for text in on_card for key in emphasised(text, facts)} == allergens
    assert bool(card.unknown) == bool(unknown)
    heads, rows = table_card([product], desk, None).heads, table_card([product], desk, None).rows
    assert set(heads) == {facts.allergens[key].label for key in allergens}
    assert all(cell == "yes" for cell in rows[0][1])


def check_tables(wanted: RandomBook, loaded: Loaded, desk: Desk, products: set[str]) -> None:
    rows = {
        str(row["product"]).partition("/")[2]: row
        for row in TABLES["allergens"].rows(loaded.book, loaded.facts, Query()).rows
    }
    assert set(rows) == products
    page = {row.address.partition("/")[2]: row for part in AllergensView(desk).items for row in part.rows}
    heads = AllergensView(desk).heads
    for product, row in rows.items():
        said = {key for key in loaded.facts.allergens if row.get(key) == "yes"}
        assert said == wanted.allergens(product)
        assert bool(row["unknown"]) == bool(wanted.unknown(product))
        if wanted.unknown(product):
            assert "no" not in {row.get(key) for key in loaded.facts.allergens}
        answers = dict(zip(heads, page[product].answers, strict=True))
        assert {head for head, answer in answers.items() if answer.strong} == {
            loaded.facts.allergens[key].label for key in said
        }
        json.dumps(row)


def test_none_is_missing_from_what_is_printed(tmp_path: Path) -> None:
    """The PDF of every product of some books that may be printed, read back."""
    printed = 0
    for seed in range(8):
        wanted = random_book(seed)
        loaded = load_book(wanted.write(tmp_path / str(seed)))
        for product in (*wanted.mixes, *wanted.cakes):
            plan = label_of(product, loaded.book, loaded.facts, DAY)
            if not plan.ready:
                continue
            pdf, _ = labels_pdf(strip_pages(label_words(plan, loaded.facts), 80.0), 1.2)
            with pdfplumber.open(io.BytesIO(pdf)) as document:
                text = " ".join((document.pages[0].extract_text() or "").split())
            assert {each.key for each in named_in(text, loaded.facts)} == wanted.allergens(product), (seed, product)
            printed += 1
    assert printed > 10


@pytest.mark.long
def test_no_allergen_of_any_leaf_is_missing_anywhere(tmp_path: Path) -> None:
    seen = {"unknown": 0, "private": 0, "deep": 0}

    def check(seed: int) -> None:
        wanted = random_book(seed)
        folder = wanted.write(tmp_path / str(seed))
        for kitchen in (True, False):
            loaded = load_book(folder, kitchen=kitchen)
            assert not loaded.errors, [problem.message for problem in loaded.errors]
            products = {*loaded.book.mixtures, *loaded.book.cakes}
            assert products == {*wanted.mixes, *wanted.cakes}
            desk = Desk(loaded.book, loaded.facts, {})
            for product in sorted(products):
                check_product(product, wanted, loaded, desk)
            check_tables(wanted, loaded, desk, products)
        seen["unknown"] += any(map(wanted.unknown, wanted.mixes))
        seen["private"] += bool(wanted.private)
        seen["deep"] += "var-2" in wanted.mixes

    check_every(range(BOOKS), check)
    # what was to be tried was tried
    assert min(seen.values()) > BOOKS / 10, seen
