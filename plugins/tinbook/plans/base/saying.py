"""Something to be said, as a value: which saying it is, and the figures and names in it. Pages spell it.

Its key is one word, `stays_in_bowl`; the words themselves stand in `pages/spelling`, a module for each room of plans.
"""

from __future__ import annotations

from typing import Any, NamedTuple


class Saying(NamedTuple):
    """A saying by its key, with what goes into it by name: figures, names, other sayings, tuples of these.

    A named tuple, so that it can be told from a text, kept among the keys of a dict, and copied with its row.
    """

    key: str
    figures: tuple[tuple[str, Any], ...] = ()


def saying(key: str, /, **figures: Any) -> Saying:
    """`saying("stays_in_bowl", share=0.05)`."""
    return Saying(key, tuple(figures.items()))
