"""The YAML parser's complaints, in words for a baker."""

import re

from yaml.error import MarkedYAMLError

from tinbook.problems import Place, Problem

_NO_SPACE = re.compile(r"\s*(?:- )?[\w ]+:(?=[^\s/])")

_COLON = "mapping values are not allowed in this context"
_NO_COLON = "could not find expected ':'"
# The parser's own words, then ours and the hint. Wording of libyaml, scanner.c and parser.c
# (https://github.com/yaml/libyaml).
_WORDS = {
    _COLON: (
        'there is a second ":" on this line',
        'put quotes round the text after the first ":"',
    ),
    "block sequence entries are not allowed in this context": (
        'a "- " does not belong here',
        'start each "- " on a line of its own; put text that starts with "- " in quotes',
    ),
    "mapping keys are not allowed in this context": (
        'a "?" does not belong here',
        "put text that starts with ? in quotes",
    ),
    _NO_COLON: (
        'this line has no ":"',
        'write name: value, or start a list line with "- "',
    ),
    "did not find expected key": (
        "this does not line up with the lines above",
        "line it up with the name above; close every quote and bracket",
    ),
    "did not find expected '-' indicator": ('this line of the list has no "- "', 'start this line with "- "'),
    "did not find expected ',' or ']'": (
        'a list in [ ] is not closed, or a "," is missing',
        'end the list with "]" and put "," between its parts',
    ),
    "did not find expected ',' or '}'": (
        'a group in { } is not closed, or a "," is missing',
        'end the group with "}" and put "," between its parts',
    ),
    "did not find expected node content": (
        "there is no value here",
        'put text that starts with , ] or } in quotes; close every "[" and "{"',
    ),
    "found unknown escape character": (
        'a "\\" in double quotes has no meaning here',
        "use single quotes",
    ),
    "did not find expected hexdecimal number": (
        'a "\\" in double quotes has no meaning here',
        "use single quotes",
    ),
    "found invalid Unicode character escape code": (
        'a "\\" in double quotes has no meaning here',
        "use single quotes",
    ),
    "did not find expected comment or line break": (
        'text after "|" or ">" must start on the next line',
        'put text that starts with "|" or ">" in quotes',
    ),
    "found an indentation indicator equal to 0": (
        'text after "|" or ">" must start on the next line',
        'put text that starts with "|" or ">" in quotes',
    ),
    "did not find expected <document start>": (
        "the file ends above this line, but there is more text",
        'delete the line "..." or "---"',
    ),
}
_QUOTE = ("a quote is opened and never closed", "close it; text with an apostrophe needs double quotes")
_AFTER = (
    "there is more text after the closing quote or bracket",
    "put the quotes round all of it; text with an apostrophe needs double quotes",
)
_SPACE = ('there is no space after a ":"', 'put a space after the ":"')
_FOUND_LATE = frozenset((_NO_COLON, "found unexpected end of stream", "found unexpected document indicator"))
# What the parser takes a text for, and the character that made it think so.
_FIRST_SIGN = {
    "an alias": "*",
    "an anchor": "&",
    "a tag": "!",
    "tag handle": "!",
    "directive": "%",
    "incompatible YAML": "%",
}
_ELSE = ("this line cannot be read", "look at its spaces, colons, quotes and brackets")
_TOO_FAR = (
    "this line is indented too far",
    'line it up with the name above; text with ": " in it needs quotes',
)
_DASHES = ("this does not line up with the lines above", 'start every "- " of a list in the same column')
NO_NAME = ('there is no name before the ":"', "write one, or take out the line")
GLUED = (
    'this "- " is indented too far, so it reads as part of the line above',
    'start every "- " of a list in the same column; text that starts with a dash needs quotes',
)
_TAB = ("there is a tab at the start of this line", "use spaces instead")
ODD_SPACE = ("there is an odd space here, pasted from a web page or a document", "delete it and type a plain space")


def fault(error: MarkedYAMLError, file: str, lines: list[str]) -> Problem:
    """The parser's error as a problem."""
    line, column = _where(error, lines)
    text = lines[line]
    before = text[: len(text) - len(text.lstrip())]
    code, width = "yaml", 1
    if "\t" in before:
        code, (message, hint) = "tab", _TAB
        column = before.index("\t")
    elif before.strip(" "):
        code, (message, hint) = "odd space", ODD_SPACE
        column = len(before) - len(before.lstrip(" "))
    elif error.problem == _COLON and line and _NO_SPACE.match(lines[line - 1]):
        line, (message, hint) = line - 1, _SPACE
        column, width = _extent(lines[line])
    elif error.problem == _COLON and ": " not in text[:column]:
        message, hint = _TOO_FAR
        column, width = len(before), column - len(before)
    elif error.problem == _NO_COLON:
        message, hint = _SPACE if _NO_SPACE.match(text) else _WORDS[_NO_COLON]
        column, width = _extent(text)
    else:
        message, hint = _said(error, text, column)
    return Problem(
        code=code,
        message=message,
        place=Place(file=file, line=line + 1, column=column + 1, width=max(1, width), text=lines[line]),
        hint=hint,
    )


def _where(error: MarkedYAMLError, lines: list[str]) -> tuple[int, int]:
    """The line and column to show, from 0, on a line that has something on it.

    Some faults are found late, often at the end of the file; the place to look is then where the thing was opened.
    """
    problem, context = error.problem or "", error.context or ""
    noticed, opened = error.problem_mark, error.context_mark
    late = problem in _FOUND_LATE or any(what in context for what in _FIRST_SIGN)
    if opened is not None and noticed is not None and "expected ','" in problem:
        late = opened.line < noticed.line
    mark = opened if late and opened is not None else noticed
    if mark is None:
        return 0, 0
    line = min(mark.line, len(lines) - 1)
    column = min(mark.column, len(lines[line]))
    while line and not lines[line].strip():
        line -= 1
        column = max(0, len(lines[line].rstrip()) - 1)
    return line, column


def _extent(text: str) -> tuple[int, int]:
    """Where the words of a line start, and how many characters they take."""
    words = text.strip()
    return text.index(words), len(words)


def _said(error: MarkedYAMLError, text: str, column: int) -> tuple[str, str]:
    """What is wrong at this column of a line, and what to write instead."""
    problem, context = error.problem or "", error.context or ""
    if "quoted scalar" in context and problem in _FOUND_LATE:
        return _QUOTE
    for what, sign in _FIRST_SIGN.items():
        if what in context or what in problem:
            return f'text cannot start with "{sign}"', "put quotes round it"
    if problem == "did not find expected '-' indicator" and text.lstrip().startswith("- "):
        return GLUED
    if problem == "found character that cannot start any token":
        return f'text cannot start with "{text[column : column + 1]}"', "put quotes round it"
    if problem == "did not find expected key":
        if text[:column].rstrip().endswith(("'", '"', "]", "}")):
            return _AFTER
        if text.lstrip().startswith(":"):
            return NO_NAME
        if text.lstrip().startswith("- "):
            return _DASHES
    return _WORDS.get(problem, _ELSE)
