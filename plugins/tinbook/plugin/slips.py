"""What is wrong in mkdocs.yml: in words for a baker, with its place and what to write instead.

MkDocs names the setting and says what is wrong in its own words. The setting's place is looked up in the file; the
messages it gives most often are reworded, the rest stay as they are.
"""

from __future__ import annotations

import logging
import os
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

import yaml
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import ConfigurationError
from mkdocs.plugins import get_plugins
from yaml.error import MarkedYAMLError, YAMLError

from tinbook.problems import Place, Problem, nearest, spell
from tinbook.source import read_yaml

SETTINGS_LOG = "mkdocs.config"
"""Where MkDocs reports what is wrong with single settings."""
TOLD = re.compile(r"Config value '(?P<key>.*?)': (?P<said>.*)", re.DOTALL)
READING = frozenset(("yaml", "tab", "odd space", "control", "encoding", "empty", "top", "depth"))
"""What Tinbook's own reader finds that trips MkDocs too; it also refuses some things that YAML allows."""
FIRST = "start with site_name: and the name of your book"
KINDS = {
    "bool": "true or false", "str": "text", "int": "a whole number", "float": "a number", "list": "a list",
    "dict": "names with values", "NoneType": "empty",
}  # fmt: skip


class Said(NamedTuple):
    """What is said about a setting: where it is, as names one inside the other; the message and the hint."""

    steps: tuple[str, ...]
    message: str
    hint: str = ""


@dataclass(frozen=True)
class PlainSlips(logging.Filter):
    """Rewrites what MkDocs logs about a file's settings as it passes."""

    path: Path

    def filter(self, record: logging.LogRecord) -> bool:
        """Nothing is held back."""
        if found := TOLD.fullmatch(record.getMessage()):
            record.msg, record.args = spell(slip(self.path, found["key"], found["said"])), ()
        return True

    def listen(self) -> None:
        """Start; calling it once is enough."""
        logging.getLogger(SETTINGS_LOG).addFilter(self)

    def leave(self) -> None:
        """Stop."""
        logging.getLogger(SETTINGS_LOG).removeFilter(self)


def refused(path: Path, error: ConfigurationError | OSError) -> str:
    """Why the settings could not be read at all."""
    cause = error if isinstance(error, OSError) else error.__context__
    if isinstance(cause, OSError):
        return f"{path.name} cannot be read: {(cause.strerror or str(cause)).lower()}"
    if isinstance(cause, YAMLError):
        return _unread(path, cause)
    said = str(error)
    if said.startswith("Config file "):
        return f"{path.name} is missing: put it back"
    if found := re.match(r"Inherited config file '(.*?)' does not exist", said):
        hint = "put it back, or write where it is now"
        return spell(_problem(path, Said(("INHERIT",), f'there is no file "{found[1]}"', hint)))
    if said.startswith("The configuration is invalid."):
        return _unread(path, None)
    return said


def slip(path: Path, key: str, said: str) -> Problem:
    """What MkDocs said about a setting as a problem with its place."""
    for pattern, answer in ANSWERS.items():
        if found := re.match(pattern, said, re.DOTALL):
            return _problem(path, answer(key, found))
    return _problem(path, Said((key,), f'"{key}": {said.splitlines()[0]}'))


def _unread(path: Path, error: YAMLError | None) -> str:
    """What Tinbook's own reader says about it, or where MkDocs stumbled."""
    mark = error.problem_mark if isinstance(error, MarkedYAMLError) else None
    if mark is not None and mark.name != str(path) and Path(mark.name).is_file():
        path = Path(mark.name)  # for a file these settings inherit from
    try:
        raw = path.read_bytes()
    except OSError as gone:
        return refused(path, gone)
    _, problems = read_yaml(raw, path.name)
    own = [problem for problem in problems if problem.code in READING]
    if own:
        hints = {"top": FIRST, "empty": FIRST}
        return "\n".join(spell(_with_hint(problem, hints.get(problem.code, problem.hint))) for problem in own)
    if mark is None:
        return f"{path.name} cannot be read: {error}"
    text = [*raw.decode("utf-8", "replace").splitlines(), ""][mark.line]
    place = Place(file=path.name, line=mark.line + 1, column=mark.column + 1, text=text)
    message = str(error.problem) if isinstance(error, MarkedYAMLError) else str(error)
    if found := re.search(r"could not determine a constructor for the tag '(.*?)'", message):
        message, hint = f'"{found[1]}" means nothing here', 'put text that starts with "!" in quotes'
        return spell(Problem(code="settings", message=message, hint=hint, place=place))
    return spell(Problem(code="settings", message=message, place=place))


def _with_hint(problem: Problem, hint: str) -> Problem:
    return Problem(code=problem.code, message=problem.message, place=problem.place, hint=hint)


def _problem(path: Path, said: Said) -> Problem:
    return Problem(code="settings", message=said.message, hint=said.hint, place=_place(path, said.steps))


def _place(path: Path, steps: Iterable[str]) -> Place:
    """The place of the last of these names that can be found; the first line if none can."""
    nowhere = Place(file=path.name, line=1, column=1)
    try:
        text = path.read_bytes().decode("utf-8").removeprefix("\ufeff")
        node = yaml.compose(text, yaml.CSafeLoader)
    except (OSError, UnicodeDecodeError, YAMLError):
        return nowhere
    found = None
    for step in steps:
        inner = [each for each in _names(node) if _is(each[0].value, step, path)]
        if not inner:
            break
        found, node = inner[-1]  # of a name written twice, MkDocs takes the last
    if found is None:
        return nowhere
    start, end = found.start_mark, found.end_mark
    width = end.column - start.column if start.line == end.line else 1
    line = text.splitlines()[start.line]
    return Place(file=path.name, line=start.line + 1, column=start.column + 1, width=max(1, width), text=line)


def _names(node: yaml.Node | None) -> Iterator[tuple[yaml.ScalarNode, yaml.Node | None]]:
    """What a part of the file can be entered by: the names of a group, the texts and names in a list, a text."""
    if isinstance(node, yaml.MappingNode):
        yield from ((name, value) for name, value in node.value if isinstance(name, yaml.ScalarNode))
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _names(item)
    elif isinstance(node, yaml.ScalarNode):
        yield node, None


def _is(written: str, step: str, path: Path) -> bool:
    """Whether a name in the file is the one meant; for a path, MkDocs includes the folder."""
    return written == step or os.path.normpath(path.parent / written) == os.path.normpath(step)


def _meant(word: str, known: Iterable[str], otherwise: str) -> str:
    close = nearest(word, known)
    return f'did you mean "{close}"?' if close else otherwise


def _unknown(key: str, found: re.Match[str]) -> Said:
    hint = _meant(key, MkDocsConfig(), "take it out; settings for your own templates go under extra")
    return Said((key,), f'there is no setting "{key}"', hint)


def _unknown_option(key: str, found: re.Match[str]) -> Said:
    plugin, option = found["plugin"], found["option"]
    entry = get_plugins().get(plugin)
    known = [name for name, _ in entry.load().config_scheme] if entry else []
    named = ", ".join(known)
    return Said((key, plugin, option), f'the plugin {plugin} has no setting "{option}"',
                _meant(option, known, f"it has {named}" if known else "take it out"))  # fmt: skip


def _wrong_option(key: str, found: re.Match[str]) -> Said:
    plugin, option = found["plugin"], found["option"]
    return _wrong((key, plugin, option), f'"{option}" of the plugin {plugin}', found["said"])


def _wrong_value(key: str, found: re.Match[str]) -> Said:
    return _wrong((key,), f'"{key}"', found["said"])


def _wrong(steps: tuple[str, ...], what: str, said: str) -> Said:
    kinds = re.search(r"Expected type: (?P<wanted>.*) but received: (?P<got>.*)", said)
    if not kinds:
        return Said(steps, f"{what}: {said}")
    wanted, got = _kind(kinds["wanted"]), _kind(kinds["got"])
    return Said(steps, f"{what} cannot be {got}", f"write {wanted}")


def _kind(types: str) -> str:
    return " or ".join(KINDS.get(name, name) for name in re.findall(r"<class '(\w+)'>", types)) or types


def _theme(key: str, found: re.Match[str]) -> Said:
    return Said(("theme", "name", found["name"]), f'there is no theme "{found["name"]}"', "write name: material")


def _plugin(key: str, found: re.Match[str]) -> Said:
    name = found["name"]
    hint = _meant(name, get_plugins(), "install it, or take out the line")
    return Said((key, name), f'there is no plugin "{name}"', hint)


def _gone(key: str, found: re.Match[str]) -> Said:
    kind = {"directory": "folder"}.get(found["kind"], found["kind"])
    here = Path(found["path"]).name
    return Said((key, found["path"]), f'there is no {kind} "{here}"', "put it back, or write where it is now")


def _own_theme(key: str, found: re.Match[str]) -> Said:
    here = Path(found["path"]).name
    return Said(("theme", "custom_dir"), f'there is no folder "{here}"', "put it back, or write where it is now")


def _text(key: str, found: re.Match[str]) -> Said:
    return _wrong((key,), f'"{key}"', f"Expected type: <class 'str'> but received: {found['got']}")


def _missing(key: str, found: re.Match[str]) -> Said:
    return Said((), f'"{key}" is missing', FIRST if key == "site_name" else f"write {key}: and its value")


def _extension(key: str, found: re.Match[str]) -> Said:
    name, error = found["name"], found["said"].strip().splitlines()[-1]
    if option := re.fullmatch(r"KeyError: '(.*)'", error):
        return Said((key, name, option[1]), f'the extension {name} has no setting "{option[1]}"', "take it out")
    hint = "check its name, install the package it is in, or take out the line"
    return Said((key, name), f'the extension "{name}" cannot be loaded: {error.partition(": ")[2] or error}', hint)


ANSWERS: Mapping[str, Callable[[str, re.Match[str]], Said]] = {
    r"Unrecognised configuration name: ": _unknown,
    r"Plugin '(?P<plugin>.*?)' option '(?P<option>.*?)': Unrecognised configuration name: ": _unknown_option,
    r"Plugin '(?P<plugin>.*?)' option '(?P<option>.*?)': (?P<said>[^\n]*)": _wrong_option,
    r"(?P<said>Expected type: [^\n]*)": _wrong_value,
    r"Expected a string, got (?P<got><class '\w+'>)": _text,
    r"Unrecognised theme name: '(?P<name>.*?)'": _theme,
    r'The "(?P<name>.*?)" plugin is not installed': _plugin,
    r"The path '(?P<path>.*?)' isn't an existing (?P<kind>\w+)": _gone,
    r"The path set in custom_dir \('(?P<path>.*?)'\) does not exist": _own_theme,
    r"Required configuration not provided": _missing,
    r"Failed to load extension '(?P<name>.*?)'\.(?P<said>.*)": _extension,
}
"""How MkDocs begins a message about a setting, and what is said instead."""
