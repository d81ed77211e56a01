"""Markdown as plain phrases, for what is not set as a page."""

from __future__ import annotations

from dataclasses import dataclass
from html.parser import HTMLParser

from tinbook.pages.spelling import formats

STRONG, SLANTED = ("strong", "code"), ("em",)
BLOCKS = ("p", "li", "pre", "hr")


@dataclass(frozen=True, slots=True)
class Phrase:
    """Words in one style of type."""

    text: str
    strong: bool = False
    slanted: bool = False


def phrases(text: str) -> tuple[tuple[Phrase, ...], ...]:
    """The paragraphs of a Markdown text as the page reads them. A link keeps its words; a list item gets a dash."""
    from markdown import markdown

    reader = _PhraseReader()
    reader.feed(markdown(formats.prose(text)))
    reader.close()
    return tuple(tuple(paragraph) for paragraph in reader.paragraphs if paragraph)


class _PhraseReader(HTMLParser):
    """Takes the words out of what Markdown made, block by block."""

    def __init__(self) -> None:
        super().__init__()
        self.paragraphs: list[list[Phrase]] = [[]]
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: object) -> None:
        if tag in BLOCKS and self.paragraphs[-1] != [DASH]:
            self.paragraphs.append([DASH] if tag == "li" else [])
        if tag == "br":
            self.handle_data(" ")
        elif tag != "hr":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in self.open:
            self.open.remove(tag)
        if tag in BLOCKS:
            self.paragraphs.append([])

    def handle_data(self, data: str) -> None:
        paragraph = self.paragraphs[-1]
        words = " ".join(data.split())
        if not words and not paragraph:
            return
        before = " " if data[:1].isspace() and paragraph and paragraph != [DASH] else ""
        after = " " if data[-1:].isspace() and words else ""
        phrase = Phrase(before + words + after, *(any(tag in self.open for tag in kind) for kind in (STRONG, SLANTED)))
        if phrase.text:
            paragraph.append(phrase)


DASH = Phrase("\N{EN DASH} ")
