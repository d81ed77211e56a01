"""A label's words and the places of labels on their sheets; the PDF is measured in tests/press/test_labels.py."""

from __future__ import annotations

from datetime import date

from tinbook.loading import Loaded
from tinbook.pages.labels.printed import PLAIN, LabelCell, label_pages, label_words, strip_pages
from tinbook.pages.spelling.labels import text_of
from tinbook.plans.labels.label import label_of


def test_the_words_of_a_label(demo: Loaded) -> None:
    words = label_words(label_of("night-watch-cake", demo.book, demo.facts, date(2026, 12, 5)), demo.facts)
    assert words.name == "Night-watch cake" and words.day == "8\N{NO-BREAK SPACE}Dec\N{NO-BREAK SPACE}2026"
    assert (words.dated, words.keep, words.batch) == (
        "Best before",
        "Keep in the fridge",
        "2026-12-05 night-watch-cake",
    )
    assert text_of(words.runs).startswith("Icing sugar (sugar, maize starch), butter (milk), egg")
    assert words.contains == () and [run.text for run in words.runs if run.strong][:2] == ["milk", "egg"]


def test_the_first_free_label_and_on_to_the_next_sheet(demo: Loaded) -> None:
    words = label_words(label_of("madeira-cake", demo.book, demo.facts, date(2026, 12, 5)), demo.facts)
    pages = label_pages(words, PLAIN, 7, 5).pages
    assert [len(cells) for cells in pages] == [2, 3]
    assert pages[0] == (LabelCell(15.0, 213.0), LabelCell(105.0, 213.0)) and pages[1][0] == LabelCell(15.0, 18.0)
    assert strip_pages(words, 62.0).high_mm == 0.0


def test_plain_paper_is_a_sheet_like_any_other(demo: Loaded) -> None:
    from tinbook.models.labels import Labelling
    from tinbook.plans.rules.labels import labelling_flaws

    assert list(labelling_flaws(Labelling.model_construct(sheets={"plain": PLAIN}, strip=None))) == []
