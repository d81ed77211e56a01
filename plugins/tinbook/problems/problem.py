"""A problem and its place, and the same as plain data."""

from dataclasses import dataclass
from typing import Literal

Severity = Literal["error", "note"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where something was written.

    `line` and `column` count from 1, `column` in characters; `width` is in characters, at least 1; `text` is the whole
    line as it stands in the file, or empty if there is no line to show.
    """

    file: str
    line: int
    column: int
    width: int = 1
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """Something for the baker to put right (`error`) or to know (`note`). `hint` is what to write instead."""

    code: str
    message: str
    place: Place
    hint: str = ""
    severity: Severity = "error"


def as_dict(problem: Problem) -> dict[str, object]:
    """The problem as plain data for a program; `end_column` is one past the last character."""
    place = problem.place
    return {
        "code": problem.code,
        "severity": problem.severity,
        "message": problem.message,
        "hint": problem.hint,
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "end_column": place.column + max(place.width, 1),
    }
