"""The known word a baker most likely meant."""

from collections.abc import Iterable
from difflib import get_close_matches

_ALSO = {"american": "us", "usa": "us", "u.s.": "us", "british": "uk", "imperial": "uk", "english": "uk"}
"""Other names for a country: by spelling alone, "American cup" would be answered with the metric one."""
# difflib's own cutoff: any lower, and a short word is answered with nonsense.
_CLOSE_ENOUGH = 0.6


def nearest(word: str, known: Iterable[str], close: float = _CLOSE_ENOUGH) -> str | None:
    """The known word nearest to `word`, spelled as in `known`, or None. Case is ignored.

    `close` is how near it must be, from 0 to 1: twice the letters in common over all letters.

    >>> nearest("sugra", ["sugar", "salt"])
    'sugar'
    """
    spelled: dict[str, str] = {}
    for name in known:
        spelled.setdefault(name.casefold(), name)
    wanted = word.strip().casefold()
    for exact in (wanted, " ".join(_ALSO.get(part, part) for part in wanted.split())):
        if exact in spelled:
            return spelled[exact]
    nearby = get_close_matches(wanted, spelled, n=1, cutoff=close)
    return spelled[nearby[0]] if nearby else None
