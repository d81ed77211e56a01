"""Amounts inside a step: `Beat <butter> with <caster sugar>` names lines of the mix, `<1/2 plain flour>` part of one.

Only a name in the mix is an amount, and `<tins>` the tins; anything else between the signs is plain text.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from tinbook.models import Book, Flaw, Mixture, Step, Take
from tinbook.problems import nearest
from tinbook.units import Misread, read_number

MARK = re.compile(r"<([^<>\n]{1,60})>")


def unmarked(text: str) -> str:
    """A step's words without the signs round what is taken from the mix: `Beat <butter>` is `Beat butter`."""
    return MARK.sub(r"\1", text)


TINS = "tins"


@dataclass(frozen=True, slots=True)
class StepPiece:
    """A piece of a step: text, or the `share` of line `line` of the mix under the name in `text`, or the tins."""

    text: str
    line: int | None = None
    share: float = 1.0
    tins: bool = False


def pieces(text: str, mixture: Mixture, book: Book) -> tuple[StepPiece, ...]:
    """A step in pieces, in order; their texts joined give the step without its amounts."""
    return pieces_of(text, [line.take for line in mixture.mix], book)


def pieces_of(text: str, takes: Sequence[Take], book: Book) -> tuple[StepPiece, ...]:
    """The same for a step of anything else with amounts, such as a technique's materials."""
    names = _names(takes, book)
    parts, start = list[StepPiece](), 0
    for mark in MARK.finditer(text):
        piece = _piece(mark.group(1), names, book)
        if piece is not None:
            parts += [StepPiece(text[start : mark.start()]), piece]
            start = mark.end()
    return tuple(piece for piece in (*parts, StepPiece(text[start:])) if piece.text)


@dataclass(frozen=True, slots=True)
class NamedLine:
    """A mark that names line `line` of the mix: where its name starts and ends in the text."""

    line: int
    start: int
    end: int


def lines_named(text: str, takes: Sequence[Take], book: Book) -> Iterator[NamedLine]:
    """The marks of a step that name a line, in order."""
    names = _names(takes, book)
    for mark in MARK.finditer(text):
        piece = _piece(mark.group(1), names, book)
        if piece is not None and piece.line is not None:
            end = mark.start(1) + len(mark.group(1).rstrip())
            yield NamedLine(piece.line, end - len(piece.text.strip()), end)


def _piece(mark: str, names: list[str], book: Book) -> StepPiece | None:
    if mark == TINS:
        return StepPiece(TINS, tins=True)
    share, word = share_of(mark)
    name = book.house_word(word) or word
    return StepPiece(word, names.index(name), share) if name in names else None


def share_of(mark: str) -> tuple[float, str]:
    """The share of a line that a mark names, and the name: `1/2 butter`."""
    try:
        share, end = read_number(mark, 0)
    except Misread:
        return 1.0, mark
    return share, mark[end:].strip()


def _names(takes: Sequence[Take], book: Book) -> list[str]:
    return [book.house_word(take.name) or take.name for take in takes]


def step_flaws(mixture: Mixture, book: Book) -> Iterator[Flaw]:
    """Marks that nearly name a line of the mix: slips of the pen."""
    return mark_flaws("method", mixture.method, [line.take for line in mixture.mix], book)


def mark_flaws(key: str, steps: Sequence[Step], takes: Sequence[Take], book: Book) -> Iterator[Flaw]:
    """The same for the steps under `key` of anything else with amounts."""
    names = _names(takes, book)
    words = {alias for name in names if name in book.cards for alias in book.cards[name].also} | set(names)
    for index, step in enumerate(steps):
        for start, end, word in _left_open(step.do, [*words, TINS]):
            message = f'"{word}" needs both < and > round it'
            hint = f'write "<{word}>"'
            yield Flaw(code="step", path=(key, index, "do"), message=message, hint=hint, start=start, end=end)
        for mark in MARK.finditer(step.do):
            if _piece(mark.group(1), names, book) is None:
                close = nearest(share_of(mark.group(1))[1], [*words, TINS])
                if close:
                    message = f'the step names "{mark.group(1)}", which is not in the list of amounts'
                    hint = f'did you mean "<{close}>"?'
                    yield Flaw(
                        code="step",
                        path=(key, index, "do"),
                        message=message,
                        hint=hint,
                        on_key=False,
                        start=mark.start(),
                        end=mark.end(),
                    )


def _left_open(text: str, words: Collection[str]) -> Iterator[tuple[int, int, str]]:
    """Names with a "<" before them and no ">" after, or the other way round: start, end, and what is marked.

    A name between two complete marks is not one of them.
    """
    names = "|".join(re.escape(word) for word in sorted(words, key=len, reverse=True))
    # complete marks are blanked out, character by character
    rest = MARK.sub(lambda mark: " " * len(mark[0]), text)
    opened = rf"<\s*((?:[\d/¼½¾⅓⅔.]+ )?(?:{names})s?)(?![\w>])"
    closed = rf"(?<![\w<])((?:{names})s?)>"
    for found in (*re.finditer(opened, rest, re.IGNORECASE), *re.finditer(closed, rest, re.IGNORECASE)):
        yield found.start(), found.end(), found[1]
