"""The card that a note's ingredient is found on: by alias, plural, hyphen and word order, never by a near miss."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from tinbook.models import Book
from tinbook.problems import nearest

SHORT: Mapping[str, str] = {
    "sr": "self raising", "s r": "self raising", "s.r": "self raising", "s.r.": "self raising", "s/r": "self raising",
    "selfraising": "self raising", "choc": "chocolate", "bicarb": "bicarbonate of soda", "marg": "margarine",
    "castor": "caster",
}  # fmt: skip
"""What notes abbreviate, and what each stands for. Common practice, no source."""
HARMLESS = (
    "room-temperature", "free-range", "free range", "organic", "fresh", "freshly", "good-quality", "good quality",
    "good", "best", "softened", "soft", "melted", "cold", "cool", "warm", "lukewarm",
    "hot", "boiling", "chilled", "cubed", "diced",
    "sifted", "sieved", "beaten", "lightly", "chopped", "finely", "roughly", "coarsely", "grated", "packed", "firmly",
    "toasted", "pure", "premium", "ripe", "peeled", "crushed",
)  # fmt: skip
"""Words before a name that say how it is wanted, not what it is. `ground`, `brown`, `light` are not among them."""
_SAID = re.compile(
    rf"(?<![\w-])(?:{'|'.join(sorted(map(re.escape, HARMLESS), key=len, reverse=True))}"
    rf"|golden(?=\s+(?:caster|castor|granulated)))"
    r"(?![\w-])\s*",
    re.IGNORECASE,
)
_CLASS = re.compile(
    r"\b(?:small|medium|medium-sized|extra[- ]large|very large|jumbo|bantam|duck|goose|quail|size [0-9])\b",
    re.IGNORECASE,
)


def key_of(name: str) -> str:
    """What all spellings of a name share: its words in alphabetical order, singular, without hyphens."""
    low = name.lower().replace("’", "'")
    low = " ".join(
        SHORT.get(word, word) for word in re.sub(r"(?<![a-z.])s\.?\s?r\.?(?![a-z])", "self raising", low).split()
    )
    return " ".join(sorted(_singular(word) for word in re.findall(r"[^\W_]+(?:'[^\W_]+)?", low.replace("-", " "))))


def alike(name: str, names: Iterable[str]) -> str | None:
    """The name a baker may have meant: the shortest that has all the words, or else the one spelled most alike; it is
    offered, never assumed."""
    words = set(key_of(name).split())
    longer = [known for known in names if words and words <= set(key_of(known).split())]
    return min(longer, key=len) if longer else nearest(name, names)


def _singular(word: str) -> str:
    if len(word) < 4 or word.endswith("ss"):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("oes", "ches", "shes")):
        return word[:-2]
    if word.endswith("ves"):
        return word[:-3] + "f"
    return word[:-1] if word.endswith("s") else word


class Cards:
    """The cards of a book, found as notes spell them."""

    def __init__(self, book: Book) -> None:
        self.book = book
        keys: dict[str, set[str]] = {}
        for written, name in book.names.items():
            keys.setdefault(key_of(written), set()).add(name)
        self._keys = {key: names.pop() for key, names in keys.items() if len(names) == 1}
        self.find = lru_cache(maxsize=2048)(self._find)

    def _find(self, name: str) -> str | None:
        """The name on the card that a note's name means; None if it is not certainly one of them."""
        if not name.strip() or (_CLASS.search(name) and not self.book.house_word(name)):
            return None
        if known := self.book.house_word(name) or self._keys.get(key_of(name)):
            return known
        # whites and yolks need not name the class of egg the house buys
        rest = re.sub(r"^large\s+", "", name, flags=re.IGNORECASE)
        own = rest != name and "egg" in rest.lower() and self.book.house.eggs.endswith("large")
        return self._keys.get(key_of(rest)) if own else None

    def read(self, name: str, wanted: Iterable[str]) -> tuple[str | None, str, list[str]]:
        """The card's name or None, the name to write, and how it is wanted.

        What follows a comma may belong to the name ("flour, plain"; "butter, salted"); what precedes it may not
        ("softened butter").
        """
        rest = list(wanted)
        if sized := next(
            (words for words in rest if _CLASS.fullmatch(words) or ("egg" in name and _CLASS.search(words))), ""
        ):
            return None, f"{sized} {name}", [words for words in rest if words != sized]
        for at, words in enumerate(rest):
            joined = self.find(f"{words} {name}")
            if joined and joined != self.find(name):
                return joined, joined, rest[:at] + rest[at + 1 :]
        if card := self.find(name):
            return card, self._spelled(name, card), rest
        bare = " ".join(_SAID.sub("", name).split())
        if bare and bare != name and (card := self.find(bare)):
            return card, self._spelled(bare, card), [*(said.strip() for said in _SAID.findall(name)), *rest]
        return None, name, rest

    def _spelled(self, name: str, card: str) -> str:
        """The name as written if the book knows it, otherwise the card's."""
        return name if self.book.house_word(name) else card
