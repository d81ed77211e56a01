"""Lines at the end of one of the house's logs: not a byte of what is there changes."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import click

from tinbook.loading import Loaded
from tinbook.models.register import SourceKind
from tinbook.source import LARGEST_BYTES, read_yaml

PLAIN = re.compile(r"[\w½¼¾⅓⅔.][\w½¼¾⅓⅔ °%./x-]*")
"""What needs no quotes in a YAML flow mapping, except words that mean "nothing"."""
CLOCK = re.compile(r"\d{4}-\d{2}-\d{2} \d{2}:\d{2}")
NOTHING = frozenset(("null", "Null", "NULL"))


def flow_line(data: dict[str, str]) -> str:
    """An entry as it stands in a log: `{day: 2026-05-02, of: madeira-cake}`."""
    return "{" + ", ".join(f"{key}: {_flow(said)}" for key, said in data.items()) + "}"


def _flow(text: str) -> str:
    plain = (PLAIN.fullmatch(text) and text not in NOTHING) or CLOCK.fullmatch(text)
    return text if plain else json.dumps(text, ensure_ascii=False)


def appended(
    folder: Path, kind: SourceKind, year: int, lines: Sequence[str], loaded: Loaded, begins: str
) -> tuple[Path, bytes]:
    """The file of a log that takes the lines, and its new contents: the year's, if the first is full. `begins` is how a
    new file does. ClickException for a file that cannot be added to."""
    for each in (kind, kind.of_year(f"{year:04d}")):
        path = folder / each.path
        whole = _grown(path, each, lines, loaded, begins)
        if len(whole) <= LARGEST_BYTES:
            return path, whole
    raise click.ClickException(f"{path.name} is full: start a file for next year")


def _grown(path: Path, kind: SourceKind, lines: Sequence[str], loaded: Loaded, begins: str) -> bytes:
    if not path.exists():
        return "".join((f"{begins}{kind.key}:\n", *(f"  - {line}\n" for line in lines))).encode()
    told = "this line" if len(lines) == 1 else "these lines"
    cure = f"fix the file, or add {told} to it yourself:" + "".join(f"\n  - {line}" for line in lines)
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise click.ClickException(f"{path.name} cannot be read: {error.strerror}") from None
    if any(problem.place.file.endswith(kind.path) for problem in loaded.problems):
        raise click.ClickException(f'{path.name} has a mistake in it, which "tinbook check" will show: {cure}')
    old, _ = read_yaml(raw, path.name)
    ending = "\r\n" if b"\r\n" in raw else "\n"
    indent = _indent(raw)
    gap = "" if raw.endswith((b"\n", b"\r")) else ending
    added = (gap + "".join(f"{indent}- {line}{ending}" for line in lines)).encode()
    if len(raw + added) > LARGEST_BYTES:
        return raw + added
    new, problems = read_yaml(raw + added, path.name)
    written, grown = _entries(old, kind), None if problems else _entries(new, kind)
    if not (isinstance(written, list) and isinstance(grown, list) and grown[: -len(lines)] == written):
        raise click.ClickException(f"nothing can be added at the end of {path.name} as it stands: {cure}")
    return raw + added


def _entries(file: Any, kind: SourceKind) -> Any:
    return file.data.get(kind.key) if file else None


def _indent(raw: bytes) -> str:
    """How far the last entry's dash is indented."""
    dashes = re.findall(rb"(?m)^( *)- ", raw.replace(b"\r\n", b"\n"))
    return dashes[-1].decode() if dashes else "  "
