"""What is raised when a quantity cannot be read."""

from collections.abc import Iterable
from difflib import get_close_matches


class Misread(ValueError):
    """A text that is not the quantity it should be.

    `message` says what is wrong and `hint` what to write instead, both for a baker; `start` and `end` mark the fault in
    the text that was read, counted from 0.
    """

    def __init__(self, message: str, hint: str, start: int, end: int) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint
        self.start = start
        self.end = end


# Above difflib's own 0.6: words for units are short, and "blobs" are not "lbs".
_CLOSE_ENOUGH = 0.76


class Whose(Misread):
    """A cup or fluid ounce when nobody has said which country's."""


def nearest_of(word: str, known: Iterable[str]) -> str:
    """The known word nearest to `word`, ignoring case; empty if none is near."""
    spelled = {name.casefold(): name for name in known}
    nearest = get_close_matches(word.casefold(), spelled, n=1, cutoff=_CLOSE_ENOUGH)
    return spelled[nearest[0]] if nearest else ""


def suggestion(word: str, known: Iterable[str]) -> str:
    """A hint with the known word nearest to `word`; empty if none is near."""
    near = nearest_of(word, known)
    return f'did you mean "{near}"?' if near else ""
