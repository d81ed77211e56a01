"""A file once read: its data, and the place of everything in it."""

from dataclasses import dataclass, field
from typing import Any, Protocol

from tinbook.problems import Place


class Mark(Protocol):
    """A place in the text, counted from 0 in characters."""

    index: int
    line: int
    column: int


@dataclass(slots=True, eq=False)
class Leaf:
    """A text as it is in the file; `plain` if it has neither quotes nor "|" or ">" before it."""

    text: str
    plain: bool
    start: Mark
    end: Mark


@dataclass(slots=True, eq=False, kw_only=True)
class Branch:
    """A list or mapping as it is in the file: its children and, for a mapping, their names."""

    start: Mark
    end: Mark
    block: bool
    items: "list[Branch | Leaf] | dict[str, Branch | Leaf]"
    names: dict[str, Leaf]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Document:
    """A file of names and values.

    `data` is the top mapping: dicts, lists, text, and None if nothing is written. It holds no numbers, dates or
    truth values: `no` and `1:30` are what the baker wrote.
    """

    file: str
    data: Any
    _text: str = field(repr=False)
    _lines: list[str] = field(repr=False)
    _root: Branch = field(repr=False)

    def place(
        self,
        path: tuple[str | int, ...],
        *,
        key: bool = False,
        start: int | None = None,
        end: int | None = None,
    ) -> Place:
        """The place of the value at `path`, or with `key` of its name.

        `start` and `end` count characters in the value, from 0, and narrow the place to that piece of it. A path that
        leads nowhere gets the place of the last thing on the way that is there: one text or group may take the place of
        a list of it, and a text for a group of which it is the chief value. For a list or mapping, the place is that of
        its name.
        """
        node: Branch | Leaf = self._root
        name: Leaf | None = None
        for step in path:
            child = _child(node, step)
            if child is None and step == 0 and isinstance(node, Branch):
                continue
            if child is None:
                key = False
                break
            name = node.names.get(str(step)) if isinstance(node, Branch) else None
            node = child
        if key and name is not None:
            return self._from(name.start, name.end)
        if isinstance(node, Leaf) and start is not None:
            piece = self._piece(node, start, len(node.text) if end is None else end)
            if piece is not None:
                return piece
        return self._whole(node, name)

    def _whole(self, node: Branch | Leaf, name: Leaf | None) -> Place:
        """The place of a value; of its name, where the value is empty or has values in it."""
        if isinstance(node, Leaf) and node.start.index < node.end.index:
            return self._from(node.start, node.end)
        if name is not None:
            return self._from(name.start, name.end)
        if isinstance(node, Leaf):
            return self._before(node.start)
        if node.block and node.names:
            first = next(iter(node.names.values()))
            return self._from(first.start, first.end)
        if node.block:
            return self._at(node.start.line, node.start.column, 1)
        return self._from(node.start, node.end)

    def _from(self, start: Mark, end: Mark) -> Place:
        """The place from one mark to another, or to the end of the first line."""
        line = self._lines[start.line] if start.line < len(self._lines) else ""
        stop = end.column if end.line == start.line else len(line.rstrip())
        return self._at(start.line, start.column, stop - start.column)

    def _before(self, mark: Mark) -> Place:
        """The place of a mark on its line, or of the last thing before it where the line ends there."""
        line = self._lines[mark.line] if mark.line < len(self._lines) else ""
        return self._at(mark.line, max(0, min(mark.column, len(line.rstrip()) - 1)), 1)

    def _at(self, line: int, column: int, width: int) -> Place:
        text = self._lines[line] if line < len(self._lines) else ""
        return Place(file=self.file, line=line + 1, column=column + 1, width=max(width, 1), text=text)

    def _piece(self, scalar: Leaf, start: int, end: int) -> Place | None:
        """The place of a piece of a value, None if the text does not show it letter for letter.

        A value on one line is in the text letter for letter. One that was folded, indented or escaped does not: then
        the piece is searched for, and accepted if the text has it as often as the value.
        """
        written = self._text[scalar.start.index : scalar.end.index]
        value = scalar.text
        start = max(0, min(start, len(value)))
        end = max(start, min(end, len(value)))
        piece = value[start:end].strip("\n")
        if written[:1] in "'\"" and written[1:-1] == value:
            at = start + 1
        elif written == value:
            at = start
        elif piece and written.count(piece) == value.count(piece):
            at = -1
            for _ in range(value.count(piece, 0, start) + 1):
                at = written.index(piece, at + 1)
        else:
            return None
        before = written[:at]
        line = scalar.start.line + before.count("\n")
        column = len(before) - before.rfind("\n") - 1
        if line == scalar.start.line:
            column += scalar.start.column
        return self._at(line, column, len(piece.split("\n", 1)[0]))


def _child(node: Branch | Leaf, step: str | int) -> Branch | Leaf | None:
    if isinstance(node, Leaf):
        return None
    items = node.items
    if isinstance(items, dict):
        return items.get(str(step))
    return items[step] if isinstance(step, int) and -len(items) <= step < len(items) else None
