"""Markdown as phrases: the words a page shows, in one kind of letter each."""

import pytest
from markdown import markdown
from tests.every import every

from tinbook.pages.spelling import formats
from tinbook.pages.spelling.phrases import Phrase, phrases


@every(
    ("text", "told"),
    [
        ("Plain.", [["Plain."]]),
        ("So that it **stands** well.", [["So that it ", "stands", " well."]]),
        ("One\n\nTwo", [["One"], ["Two"]]),
        ("See:\n\n- board\n- *card*", [["See:"], ["– ", "board"], ["– ", "card"]]),
        ("See [the tide](tides.md).", [["See ", "the tide", "."]]),
        ("A <b>tag</b> & {.x} ![x](y.png)", [["A <b>tag</b> & {.x} ![x](y.png)"]]),
        ("", []),
    ],
)
def test_paragraphs(text: str, told: list[list[str]]) -> None:
    joined = [[phrase.text for phrase in paragraph] for paragraph in phrases(text)]
    assert ["".join(each) for each in joined] == ["".join(each) for each in told]


def test_letters() -> None:
    ((plain, strong, between, slanted),) = phrases("It **stands** and *travels*")
    assert (plain, between) == (Phrase("It "), Phrase(" and "))
    assert (strong, slanted) == (Phrase("stands", strong=True), Phrase("travels", slanted=True))


@pytest.mark.parametrize("text", ["***both***", "a\n\n> b", "1. x\n2. y", "`code` & more", "two  \nlines"])
def test_every_word_of_the_page_is_kept(text: str) -> None:
    html = markdown(formats.prose(text))
    bare = "".join(sign for sign in html if sign.isalnum())
    for phrase in (phrase for paragraph in phrases(text) for phrase in paragraph):
        assert "".join(sign for sign in phrase.text if sign.isalnum()) in bare
    told = "".join(phrase.text for paragraph in phrases(text) for phrase in paragraph)
    assert all(word in told for word in ("both", "code", "more", "lines") if word in text)
