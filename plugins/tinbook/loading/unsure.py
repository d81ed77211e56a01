"""What is still marked `# unsure` in a book's files: each is reported until somebody has checked it and removed the
mark."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

import yaml

from tinbook.loading.files import SourceFile
from tinbook.problems import Place, Problem

UNSURE = "unsure"
"""The code of these notes. They do not break a file, but a book that is given to others should have none."""
_MARK = re.compile(r"(?:^|(?<=\s))#[ \t]*unsure\b:?[^\n]*", re.MULTILINE)
_HINT = "check it, put it right, then delete the mark"


def unsure_notes(sources: Iterable[SourceFile]) -> Iterator[Problem]:
    """A note for each comment that begins with `unsure`, at its place."""
    for source in sources:
        if b"unsure" not in source.raw:
            continue
        text = source.raw.decode("utf-8", "replace").removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
        lines = text.split("\n")
        within = _texts(text)
        for mark in _MARK.finditer(text):
            if any(start <= mark.start() < end for start, end in within):
                continue
            line = text.count("\n", 0, mark.start())
            column = mark.start() - (text.rfind("\n", 0, mark.start()) + 1)
            place = Place(
                file=source.shown, line=line + 1, column=column + 1, width=len(mark[0].rstrip()), text=lines[line]
            )
            yield Problem(code=UNSURE, message="this is still marked unsure", place=place, hint=_HINT, severity="note")


def unsure_lines(notes: Iterable[Problem], sources: Iterable[SourceFile]) -> dict[str, tuple[int, ...]]:
    """The lines of such notes, counted from 1, by the address of their file."""
    addresses = {source.shown: source.address for source in sources}
    found: dict[str, tuple[int, ...]] = {}
    for note in notes:
        address = addresses[note.place.file]
        found[address] = (*found.get(address, ()), note.place.line)
    return found


def _texts(text: str) -> list[tuple[int, int]]:
    """Where the file has texts, in which a mark is not a comment; as far as the file can be read."""
    spans: list[tuple[int, int]] = []
    try:
        for event in yaml.parse(text, Loader=yaml.CSafeLoader):
            if isinstance(event, yaml.ScalarEvent) and event.start_mark and event.end_mark:
                start, end = event.start_mark.index, event.end_mark.index
                if event.style in ("|", ">"):
                    start, end = _block(text, text.find("\n", start) + 1, end)
                spans.append((start, end))
    except (yaml.YAMLError, RecursionError):
        pass
    return spans


def _block(text: str, start: int, end: int) -> tuple[int, int]:
    """Where a text on lines of its own is: a comment may follow the sign before it, and others may come below it."""
    at, indent = start, 0
    while at < end:
        stop = text.find("\n", at)
        stop = end if stop < 0 else stop + 1
        line = text[at:stop]
        if line.strip():
            depth = len(line) - len(line.lstrip(" "))
            if depth < (indent or 1):
                break
            indent = indent or depth
        at = stop
    return start, at
