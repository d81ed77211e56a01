"""Where something in a book is written: file and line, for what is found missing once it is loaded."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tinbook.source import read_yaml


def line_of(folder: Path, address: str, path: Sequence[str]) -> str:
    """`recipes/house/ingredients.yaml:12`, the line where what is at `path` in a file begins; the file alone, if it is
    not there."""
    shown = f"{folder.name}/{address}.yaml"
    try:
        raw = (folder / f"{address}.yaml").read_bytes()
    except OSError:
        return shown
    document, problems = read_yaml(raw, shown)
    if document is None or problems or not path:
        return shown if document is None or problems else f"{shown}:1"
    place = document.place(tuple(path), key=True)
    return f"{place.file}:{place.line}"
