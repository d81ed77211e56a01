"""A problem spelled out for a reader: place, message, the line itself, carets under the fault."""

import unicodedata

from tinbook.problems.problem import Problem

# The longest excerpt shown; longer lines are cut round the fault.
_WIDEST = 100
# How much is kept before the fault when a line is cut.
_BEFORE = 40
_CUT = "…"
# Exempt from the ban on invisible "format" characters, so that scripts and emoji stay whole.
_JOINERS = "\u200c\u200d"
# Unicode categories with no width of their own, or none to rely on.
_UNSAFE = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})


def spell(problem: Problem) -> str:
    """The problem in two or three lines of text.

    First `file:line:column: message`; then the source line with its number, and under it carets and the hint. A place
    without text has no excerpt. A note says that it is one.
    """
    place = problem.place
    kind = "note: " if problem.severity == "note" else ""
    head = f"{_shown(place.file)}:{place.line}:{place.column}: {kind}{_shown(problem.message)}"
    hint = _shown(problem.hint)
    gutter = " " * max(5, len(str(place.line)))
    if not place.text.strip():
        return f"{head}\n{gutter} | {hint}" if hint else head
    text, at, width = _window(_shown(place.text), max(place.column - 1, 0), max(place.width, 1))
    before = " " * _columns(text[:at])
    carets = "^" * max(1, _columns(text[at : at + width]))
    excerpt = f"{place.line:>{len(gutter)}} | {text.rstrip()}"
    return f"{head}\n{excerpt}\n{gutter} | {before}{carets} {hint}".rstrip()


def _window(text: str, at: int, width: int) -> tuple[str, int, int]:
    """The piece of the line to show, where the fault starts in it, and how much of the fault it shows."""
    at = min(at, len(text))
    if len(text) > _WIDEST:
        first = max(0, min(at - _BEFORE, len(text) - _WIDEST))
        last = min(first + _WIDEST, len(text))
        head, tail = _CUT if first else "", _CUT if last < len(text) else ""
        text = head + text[first + len(head) : last - len(tail)] + tail
        at -= first
    return text, at, max(1, min(width, len(text) - at))


def _shown(text: str) -> str:
    """The text with every character that could move the carets or the cursor replaced, one for one."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(map(_safe, text))


def _safe(character: str) -> str:
    if character == "\t":
        return " "
    if character < " ":
        return chr(0x2400 + ord(character))
    if unicodedata.category(character) in _UNSAFE and character not in _JOINERS:
        return "\N{REPLACEMENT CHARACTER}"
    return character


def _columns(text: str) -> int:
    """How many columns the text takes in a fixed-width font: none for an accent, two for a wide letter."""
    if text.isascii():
        return len(text)
    return sum(map(_column, text))


def _column(character: str) -> int:
    if unicodedata.combining(character) or character in _JOINERS:
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1
