"""The known word a baker most likely meant."""

from collections.abc import Iterable
from difflib import get_close_matches

# Standard cutoff of difflib: lower, and a short word is answered with nonsense.
_CLOSE_ENOUGH = 0.6


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word nearest to `word`, spelled as in `known`, or None. Case does not matter."""
    spelled: dict[str, str] = {}
    for name in known:
        spelled.setdefault(name.casefold(), name)
    wanted = word.strip().casefold()
    if wanted in spelled:
        return spelled[wanted]
    found = get_close_matches(wanted, spelled, n=1, cutoff=_CLOSE_ENOUGH)
    return spelled[found[0]] if found else None
