"""Bytes to a document: YAML with names, values, lists and groups, and nothing more.

What YAML can do beyond that (anchors, tags, several documents) is refused with its place: a baker who has written it
did so by accident. The parser's events are read once, without its composer, which follows anchors and nests as deep as
the file does.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

import yaml
from yaml.error import MarkedYAMLError

from tinbook.problems import Place, Problem
from tinbook.source.document import Branch, Document, Leaf, Mark
from tinbook.source.faults import GLUED, NO_NAME, ODD_SPACE, fault

Event = Any
"""One of the parser's events; its types do not say that it always has a place."""
LARGEST_BYTES = 1_000_000
DEEPEST = 20

# All that YAML does not print, and what starts a new line in some editors only.
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_ESCAPED_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f]")
_FIRST_LINE = 'start with a name, ":" and a space, such as name: Plain sponge'
_NOTHING = frozenset(("", "~", "null", "Null", "NULL"))
# Faults after which the rest of the tree is still what the baker meant.
_HARMLESS = frozenset(("duplicate", "anchor", "tag", "name"))


def read_yaml(raw: bytes, file: str) -> tuple[Document | None, tuple[Problem, ...]]:
    """The document in the bytes of a file, and the problems found.

    No document if nothing can be relied on; a document with problems if a fault leaves the rest as it was meant:
    of a name written twice, the first counts. Never raises, whatever the bytes.
    """
    if len(raw) > LARGEST_BYTES:
        message = f"the file is larger than {LARGEST_BYTES // 1_000_000} MB"
        return None, (
            Problem(
                code="size",
                message=message,
                place=Place(file=file, line=1, column=1),
                hint="split it into several files",
            ),
        )
    try:
        text = raw.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        return None, (_not_utf8(raw, error.start, file),)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    lines = text.split("\n")
    if control := _CONTROL.search(text):
        line = text.count("\n", 0, control.start())
        column = control.start() - text.rfind("\n", 0, control.start()) - 1
        place = Place(file=file, line=line + 1, column=column + 1, width=1, text=lines[line])
        message = f"there is an invisible character here (U+{ord(control[0]):04X})"
        return None, (Problem(code="control", message=message, place=place, hint="delete it and type the text again"),)
    reader = _EventReader(text, file, lines)
    try:
        data, root = reader.read()
    except MarkedYAMLError as error:
        stumbled = fault(error, file, lines)
        # What was refused on a line is also what trips the parser there.
        is_told = any(problem.place.line == stumbled.place.line for problem in reader.problems)
        return None, _in_order([*reader.problems, *(() if is_told else (stumbled,))])
    except _Stop:
        return None, _in_order(reader.problems)
    problems = _in_order(reader.problems)
    if any(problem.code not in _HARMLESS for problem in problems):
        return None, problems
    return Document(file=file, data=data, _text=text, _lines=lines, _root=root), problems


def _in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(problems, key=lambda problem: (problem.place.line, problem.place.column)))


def _not_utf8(raw: bytes, at: int, file: str) -> Problem:
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return Problem(
            code="encoding",
            message="the file is saved as UTF-16",
            place=Place(file=file, line=1, column=1),
            hint="choose Save As in your editor and set the encoding to UTF-8",
        )
    before = raw[:at].replace(b"\r\n", b"\n").replace(b"\r", b"\n").decode("utf-8").removeprefix("\ufeff")
    line = before.rsplit("\n", 1)[-1]
    after = re.split(rb"[\r\n]", raw[at:], maxsplit=1)[0].decode("utf-8", "replace")
    place = Place(file=file, line=before.count("\n") + 1, column=len(line) + 1, width=1, text=line + after)
    return Problem(
        code="encoding", message="this character is not saved as UTF-8", place=place, hint="save the file as UTF-8"
    )


class _Stop(Exception):
    """Raised when the rest of the file is not worth reading."""


class _EventReader:
    """Builds the data and, beside it, the branches with their marks, from the parser's events."""

    def __init__(self, text: str, file: str, lines: list[str]) -> None:
        self.next: Callable[[], Event] = yaml.CSafeLoader(text).get_event
        self.file = file
        self.lines = lines
        self.problems: list[Problem] = []

    def read(self) -> tuple[Any, Branch]:
        """The data of the only document. Raises MarkedYAMLError, and _Stop after a problem."""
        start = self.next()
        event = self.next()
        if isinstance(event, yaml.StreamEndEvent):
            raise self._stop("empty", "the file is empty", start, _FIRST_LINE)
        first = self.next()
        data, root = self._value(first, 1)
        self.next()
        after = self.next()
        if isinstance(after, yaml.DocumentStartEvent):
            hint = 'take out the line "---", or make it two files'
            raise self._stop("documents", "a second document starts here", after, hint)
        if data is None and isinstance(first, yaml.ScalarEvent):
            raise self._stop("empty", "the file is empty", start, _FIRST_LINE)
        if not isinstance(data, dict) or not isinstance(root, Branch):
            what = "a list" if isinstance(data, list) else "plain text"
            raise self._stop("top", f"the file is {what}, not names and values", first, _FIRST_LINE)
        return data, root

    def _value(self, event: Event, depth: int) -> tuple[Any, Branch | Leaf]:
        """The value that starts with this event, and how it is written in the text."""
        start, end = event.start_mark, event.end_mark
        if isinstance(event, yaml.ScalarEvent):
            if event.anchor is not None or event.tag is not None:
                self._refuse_marks(event)
            value = event.value
            plain = event.implicit[0]
            if plain and start.line < end.line:
                self._refuse_glued(start.line + 1, end.line)
            if event.style == '"' and (control := _ESCAPED_CONTROL.search(value)):
                message = f"there is an invisible character in this text (U+{ord(control[0]):04X})"
                self._problem("control", message, start, end, 'delete the "\\" and the character straight after it')
            return (None if plain and value in _NOTHING else value), Leaf(value, plain, start, end)
        if isinstance(event, yaml.AliasEvent):
            message = f'"*{event.anchor}" points to something written elsewhere'
            hint = "write it out in full, or put text that starts with * in quotes"
            self._problem("alias", message, start, end, hint)
            return None, Leaf("", True, start, end)
        if depth > DEEPEST:
            message = f"this is nested more than {DEEPEST} deep"
            raise self._stop("depth", message, event, "look for brackets that are not closed")
        self._refuse_marks(event)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._list(event, depth)
        return self._mapping(event, depth)

    def _list(self, first: Event, depth: int) -> tuple[list[Any], Branch]:
        data: list[Any] = []
        items: list[Branch | Leaf] = []
        while not isinstance(event := self.next(), yaml.SequenceEndEvent):
            value, item = self._value(event, depth + 1)
            data.append(value)
            items.append(item)
        last: Event = event
        return data, Branch(
            start=first.start_mark, end=last.end_mark, block=not first.flow_style, items=items, names={}
        )

    def _mapping(self, first: Event, depth: int) -> tuple[dict[str, Any], Branch]:
        data: dict[str, Any] = {}
        items: dict[str, Branch | Leaf] = {}
        names: dict[str, Leaf] = {}
        while not isinstance(event := self.next(), yaml.MappingEndEvent):
            _, name = self._value(event, depth + 1)
            value, item = self._value(self.next(), depth + 1)
            if isinstance(event, yaml.ScalarEvent) and isinstance(name, Leaf):
                if not self._is_name(name, names):
                    continue
                data[name.text], items[name.text], names[name.text] = value, item, name
            else:
                hint = 'write plain words before the ":"; put text that starts with [, { or * in quotes'
                self._problem("name", "this cannot be a name", event.start_mark, event.end_mark, hint)
        last: Event = event
        return data, Branch(
            start=first.start_mark, end=last.end_mark, block=not first.flow_style, items=items, names=names
        )

    def _is_name(self, name: Leaf, names: Mapping[str, Leaf]) -> bool:
        """Whether this can name a value, given the `names` already taken; if not, a problem is added."""
        text = name.text
        if text == "<<" and name.plain:
            code, message, hint = "merge", '"<<" copies values from elsewhere', "write them out here"
        elif not text.strip():
            code, (message, hint) = "name", NO_NAME
        elif text != text.strip(" "):
            code, (message, hint) = "name", ("there is an extra space in this name", "take it out")
        elif text != text.strip() or "\n" in text:
            code, (message, hint) = "name", ODD_SPACE
        elif text in names:
            code, message = "duplicate", f'"{text}" is written twice'
            hint = f"keep one; the first is on line {names[text].start.line + 1}"
        else:
            return True
        self._problem(code, message, name.start, name.end, hint)
        return False

    def _refuse_marks(self, event: Event) -> None:
        """Adds a problem for an anchor or a tag."""
        where = event.start_mark, event.end_mark
        if anchor := getattr(event, "anchor", None):
            message = f'"&{anchor}" marks something to be reused elsewhere, which these files do not allow'
            self._problem("anchor", message, *where, "take it out, or put text that starts with & in quotes")
        if tag := getattr(event, "tag", None):
            tag = tag.replace("tag:yaml.org,2002:", "!!", 1)
            hint = "take it out, or put text that starts with ! in quotes"
            self._problem("tag", f'"{tag}" is meant for programs', *where, hint)

    def _refuse_glued(self, first: int, last: int) -> None:
        """Adds a problem for a list item that is read as part of the plain text above it."""
        for number in range(first, min(last + 1, len(self.lines))):
            line = self.lines[number]
            if line.lstrip(" ").startswith("- "):
                place = Place(
                    file=self.file, line=number + 1, column=len(line) - len(line.lstrip(" ")) + 1, width=1, text=line
                )
                message, hint = GLUED
                self.problems.append(Problem(code="yaml", message=message, place=place, hint=hint))

    def _stop(self, code: str, message: str, at: Event, hint: str) -> _Stop:
        self._problem(code, message, at.start_mark, at.end_mark, hint)
        return _Stop()

    def _problem(self, code: str, message: str, start: Mark, end: Mark, hint: str) -> None:
        line = min(start.line, len(self.lines) - 1)
        width = end.column - start.column if start.line == end.line else 1
        place = Place(
            file=self.file, line=line + 1, column=start.column + 1, width=max(width, 1), text=self.lines[line]
        )
        self.problems.append(Problem(code=code, message=message, place=place, hint=hint))
