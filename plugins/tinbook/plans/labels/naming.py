"""Which allergens the words of a list name, and which are only hidden behind them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from tinbook.facts import Facts, ListWords


@dataclass(frozen=True, slots=True)
class NamedAllergen:
    """An allergen named in a text, from one character to another."""

    key: str
    start: int
    end: int


class _Lexicon:
    """The words of every allergen as patterns, and what was found in the texts it has seen."""

    def __init__(self, words: Mapping[str, ListWords]) -> None:
        self.words = words
        self.rows = [(row.key, _either(row.names), _either(row.hides), _either(row.but_not)) for row in words.values()]
        self.found = lru_cache(maxsize=8192)(self._found)

    def _found(self, text: str, hides: bool) -> tuple[NamedAllergen, ...]:
        every: list[NamedAllergen] = []
        for key, names, behind, but_not in self.rows:
            nothing = [match.span() for match in but_not.finditer(text)] if but_not else []
            pattern = behind if hides else names
            spans = [match.span() for match in pattern.finditer(text)] if pattern else []
            every += [
                NamedAllergen(key, *span)
                for span in spans
                if not any(start < span[1] and span[0] < end for start, end in nothing)
            ]
        taken: list[NamedAllergen] = []
        # "khorasan wheat" is not wheat besides
        for each in sorted(every, key=lambda one: (one.start - one.end, one.start)):
            if all(each.end <= other.start or other.end <= each.start for other in taken):
                taken.append(each)
        return tuple(sorted(taken, key=lambda one: one.start))


def _either(words: Iterable[str]) -> re.Pattern[str] | None:
    longest = sorted(words, key=lambda word: -len(word))
    forms = "|".join(r"\s+".join(map(re.escape, word.split())) for word in longest)
    return re.compile(rf"(?<![\w-])(?:{forms})(?![\w])", re.IGNORECASE) if forms else None


_LEXICONS: dict[int, _Lexicon] = {}


def _lexicon(facts: Facts) -> _Lexicon:
    known = _LEXICONS.get(id(facts.list_words))
    if known is None or known.words is not facts.list_words:
        known = _LEXICONS[id(facts.list_words)] = _Lexicon(facts.list_words)
    return known


def named_in(text: str, facts: Facts) -> tuple[NamedAllergen, ...]:
    """The allergens a text names itself, in the order they stand there, none inside another."""
    return _lexicon(facts).found(text, False)


def hidden_in(text: str, facts: Facts) -> tuple[str, ...]:
    """The allergens that are in what a text says, though it does not name them: the milk of whey."""
    return tuple(dict.fromkeys(each.key for each in _lexicon(facts).found(text, True)))


def is_name(text: str, facts: Facts) -> str | None:
    """The allergen that is all a text says, or None."""
    found = named_in(text, facts)
    if len(found) == 1 and (found[0].start, found[0].end) == (0, len(text)):
        return found[0].key
    return next((key for key, each in facts.allergens.items() if text.lower() == each.label.lower()), None)
