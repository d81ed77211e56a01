"""A number and its unit on one line: the space between them, wherever it is in a page's words, becomes one that
does not break. Words are written with plain spaces, so that what is typed and searched for stays simple."""

from __future__ import annotations

import re

NBSP = "\N{NO-BREAK SPACE}"
UNITS = "kg|mg|g|ml|l|cm|mm|m|in|°C|°F|min|h|fl|oz|lb|tsp|tbsp|%|(?:inch|minute|hour|day|week|month)(?:e?s)?"
PARTED = re.compile(rf"\s(?=(?:{UNITS})(?![\w}}-]))")
"""A space before a unit: far fewer than there are figures in a page."""
NUMBER = re.compile(r"[\d½¼¾⅓⅔⅛](?:</\w+>)?")
"""The end of a number, with the tag that closes it."""
AS_TYPED = re.compile(r"<(script|style|code|pre|textarea|title|option)\b")
"""Where anything read by a machine or copied by hand begins."""


def together(html: str) -> str:
    """The page, its numbers joined to their units. Nothing changes inside a tag, in data or in what is to be typed."""
    typed = _as_typed(html)
    pieces, done, at = [], 0, 0
    for found in PARTED.finditer(html):
        place = found.start()
        if not _ends_a_number(html, place):
            continue
        while at < len(typed) and typed[at][1] <= place:
            at += 1
        if (at < len(typed) and typed[at][0] <= place) or html.rfind("<", 0, place) > html.rfind(">", 0, place):
            continue
        pieces += [html[done:place], NBSP]
        done = found.end()
    return "".join([*pieces, html[done:]])


def _ends_a_number(html: str, place: int) -> bool:
    """Whether a number ends at a place, perhaps within a tag that closes there."""
    start = html.rfind("<", 0, place) if html[place - 1] == ">" else place
    return NUMBER.fullmatch(html, max(0, start - 1), place) is not None


def _as_typed(html: str) -> list[tuple[int, int]]:
    """Where everything that stays as typed begins and ends."""
    spans, at = [], 0
    while begun := AS_TYPED.search(html, at):
        end, at = html.find(f"</{begun[1]}>", begun.end()), begun.end()
        if end >= 0:
            at = end + len(f"</{begun[1]}>")
            spans.append((begun.start(), at))
    return spans
