"""The letters of parts in steps: a letter already there is picked out, and one is added where a part is named."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

NOT_AT_A_START = ("A", "I")
"""Words that stand alone at the start of a sentence."""
_START = re.compile(r"(?:^|[.!?:])\s*$")


def lettered(text: str, letters: Mapping[str, str], done: Iterable[str] = ()) -> tuple[tuple[str, bool], ...]:
    """A step's words in pieces, and which of them are letters; `letters` by the names of parts.

    A part's letter follows its name where it is first named, unless it is in the step already; `done` are those in an
    earlier piece.
    """
    found = {match.start(): (match.end(), match[0]) for match in _standing(text, letters.values())}
    there = {letter for _, letter in found.values()} | set(done)
    for name, letter in letters.items():
        named = re.search(rf"\b{re.escape(name)}s?\b", text, re.IGNORECASE)
        if named and letter not in there:
            found[named.end()] = (named.end(), letter)
    pieces, start = list[tuple[str, bool]](), 0
    for at, (end, letter) in sorted(found.items()):
        added = at == end
        pieces += [(f"{text[start:at]} " if added else text[start:at], False), (letter, True)]
        start = end
    return tuple(piece for piece in (*pieces, (text[start:], False)) if piece[0])


def _standing(text: str, letters: Iterable[str]) -> Iterable[re.Match[str]]:
    """Letters that appear in the words as such."""
    known = set(letters)
    for match in re.finditer(r"\b[A-Z]{1,2}\b", text):
        begins = _START.search(text[: match.start()])
        if match[0] in known and not (begins and match[0] in NOT_AT_A_START):
            yield match
