"""What Find searches, worked out while the book is built, so that a device indexes nothing.

The browser passes it to MiniSearch in that library's own serialised form (version 2), which `find_index.js` makes from
this shorter one: a term has, for each field it is in, the field's place, then the places of the finds as steps from one
to the next, each followed by its count there as a negative number, if more than one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any

from tinbook.pages.finding.find import FIELDS, Find
from tinbook.pages.finding.words import ALIKE, LIGHT_WORDS, STOP_WORDS, plain_words, tokens

HEADS = ("kind", "title", "url", "second", "figure", "under", "tin", "bench", "owned")
"""What a row of the answer is made of, by place; empty ends are left out."""
SENTENCES = ("note", "fault")
"""Kinds whose title is running text, in which a figure is an amount and not a name."""
UNTITLED = ("step",)
"""Kinds whose title is that of what they belong to, which should be found first."""
_STOPPED = frozenset(STOP_WORDS.split())


def index_of(finds: Iterable[tuple[Find, str]]) -> dict[str, Any]:
    """The index of `finds`, each with its place, seen from the book's home."""
    rows: list[list[Any]] = []
    lengths: list[int] = []
    posts: dict[str, dict[int, list[int]]] = {}
    last: dict[tuple[str, int], int] = {}
    for place, (found, url) in enumerate(finds):
        rows.append(_row(found, url))
        for field, name in enumerate(FIELDS):
            counts = Counter(_words(found, name))
            lengths.append(len(counts))
            for term, count in counts.items():
                post = posts.setdefault(term, {}).setdefault(field, [field])
                post.append(place - last.get((term, field), 0))
                if count > 1:
                    post.append(-count)
                last[term, field] = place
    terms = sorted(posts)
    return {
        "heads": HEADS,
        "finds": rows,
        "fields": FIELDS,
        "lengths": lengths,
        "terms": " ".join(terms),
        "posts": [list(posts[term].values()) for term in terms],
        "stops": STOP_WORDS,
        "light": LIGHT_WORDS,
        "alike": ALIKE,
    }


def _row(found: Find, url: str) -> list[Any]:
    leads = f"{url}#{found.anchor}" if found.anchor else url
    row: list[Any] = [
        found.kind, found.title, leads, _one_line(found.second), found.figure, found.under, found.tin,
        int(found.at_bench), int(found.owned),
    ]  # fmt: skip
    while not row[-1]:
        row.pop()
    return row


def _one_line(text: str) -> str:
    return text.replace("\n", " ").strip()


def _words(found: Find, field: str) -> Sequence[str]:
    if field == "title" and found.kind in UNTITLED:
        return ()
    named = field == "names" or (field == "title" and found.kind not in SENTENCES)
    split = tokens if named else plain_words
    return [word for text in found.field(field) for word in split(text) if word not in _STOPPED]
