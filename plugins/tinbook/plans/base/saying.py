"""A sentence as a value: which one it is, and the figures and names in it. Pages put it into words.

Its key is one word, `stays_in_bowl`; the words are in `pages/spelling`, one module for each subpackage of plans.
"""

from __future__ import annotations

from typing import Any, NamedTuple


class Saying(NamedTuple):
    """A saying by its key, with what goes into it by name: figures, names, other sayings, tuples of these.

    A named tuple, so that it can be told apart from text, used among a dict's keys, and copied with its row.
    """

    key: str
    figures: tuple[tuple[str, Any], ...] = ()


def saying(key: str, /, **figures: Any) -> Saying:
    """`saying("stays_in_bowl", share=0.05)`."""
    return Saying(key, tuple(figures.items()))
