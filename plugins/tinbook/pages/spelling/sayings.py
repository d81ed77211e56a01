"""Sayings of plans in words: the one place where a key of `plans/base/saying.py` becomes a text.

A saying is a text with its figures in braces, as `str.format` takes them, or a function of them that returns a text. A
subpackage of plans has its sayings in the module of that name here; a key is in only one of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from tinbook.pages.spelling import (
    baking,
    base,
    cakes,
    finish,
    labels,
    making,
    measures,
    mixtures,
    money,
    orders,
    portions,
    techniques,
    true_size,
)
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.worked import Worked

Words = str | Callable[..., str]

ROOMS = (
    base, measures, mixtures, baking, finish, portions, techniques, true_size, cakes, making, orders, labels, money,
)  # fmt: skip
SAYINGS: Mapping[str, Words] = {key: words for room in ROOMS for key, words in room.SAYINGS.items()}


def spell(said: Saying | str) -> str:
    """A saying in words; a text is itself. KeyError for a key without words: a developer's mistake."""
    if isinstance(said, str):
        return said
    words = SAYINGS[said.key]
    figures = {name: _inner(value) for name, value in said.figures}
    return words.format(**figures) if isinstance(words, str) else words(**figures)


def _inner(value: Any) -> Any:
    """What goes into a saying: sayings in words, also inside a tuple; everything else as it is."""
    if isinstance(value, Saying):
        return spell(value)
    return tuple(_inner(part) for part in value) if isinstance(value, tuple) else value


def spelled_all(sayings: Iterable[Saying | str]) -> tuple[str, ...]:
    """Some sayings, each in words."""
    return tuple(spell(said) for said in sayings)


def formula_of(worked: Worked) -> str:
    """The formula of a calculation in words."""
    return spell(worked.formula)


def inputs_of(worked: Worked) -> tuple[str, ...]:
    """What went into a calculation, in words."""
    return spelled_all(worked.inputs)
