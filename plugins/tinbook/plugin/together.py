"""A number and its unit on one line: the space between them, wherever it stands in a page's words, becomes one that
does not break. Words are written with plain spaces, so that what is typed and searched for stays simple."""

from __future__ import annotations

import re

NBSP = "\N{NO-BREAK SPACE}"
UNITS = "kg|mg|g|ml|l|cm|mm|m|in|°C|°F|min|h|fl|oz|lb|tsp|tbsp|%|(?:inch|minute|hour|day|week|month)(?:e?s)?"
PARTED = re.compile(rf"[\d½¼¾⅓⅔⅛](?:</\w+>)?\s(?=(?:{UNITS})(?![\w}}-]))")
"""The end of a number and a space, before a unit."""
AS_TYPED = re.compile(r"<(script|style|code|pre|textarea|title|option)\b.*?</\1>", re.DOTALL)
"""What is read by a machine or copied by hand."""


def together(html: str) -> str:
    """The page, its numbers joined to their units. Nothing changes inside a tag, in data or in what is to be typed."""
    typed = [found.span() for found in AS_TYPED.finditer(html)]
    pieces, done, at = [], 0, 0
    for found in PARTED.finditer(html):
        place = found.end() - 1
        while at < len(typed) and typed[at][1] <= place:
            at += 1
        if (at < len(typed) and typed[at][0] <= place) or html.rfind("<", 0, place) > html.rfind(">", 0, place):
            continue
        pieces += [html[done:place], NBSP]
        done = found.end()
    return "".join([*pieces, html[done:]])
