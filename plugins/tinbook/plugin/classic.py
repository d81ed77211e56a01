"""The browser's modules as one classic script, as browsers do not run modules from a folder (`file://`)."""

from __future__ import annotations

import re
from pathlib import Path

IMPORT = re.compile(r'^import \{([^}]+)\} from "\./([\w-]+)\.js";$', re.MULTILINE)
EXPORT = re.compile(r"^export (?=(?:async function|function|const|class) (\w+))", re.MULTILINE)
LATE = re.compile(r'\bimport\("\./([\w-]+)\.js"\)')
# Whatever these three miss would be a syntax error in a classic script.
LEFT = re.compile(r"^\s*(?:import|export)\b.*|\bimport\s*[(.].*", re.MULTILINE)


def classic_script(folder: Path, *entries: str) -> str:
    """One script from the `entries` of `folder`, in order, and everything they import, each module once and before
    whatever needs it.

    A module keeps its names to itself in a function that returns what it exports, so none can collide. It understands
    `import { a, b as c } from "./file.js";`, `import("./file.js")`, which is then there from the start, and `export`
    before a function, const or class. Raises ValueError for other forms and for circular imports.
    """
    done: dict[str, str] = {}
    for entry in entries or ("main",):
        _add(folder, entry, done, ())
    return '(() => {\n"use strict";\n' + "\n".join(done.values()) + "\n})();\n"


def _add(folder: Path, name: str, done: dict[str, str], wanted_by: tuple[str, ...]) -> None:
    if name in wanted_by:
        raise ValueError(f"modules import one another in a circle: {' > '.join((*wanted_by, name))}")
    if name in done:
        return
    text = (folder / f"{name}.js").read_text("utf-8")
    for other in (*(wanted for _, wanted in IMPORT.findall(text)), *LATE.findall(text)):
        _add(folder, other, done, (*wanted_by, name))
    exports = ", ".join(EXPORT.findall(text))
    text = LATE.sub(lambda found: f"Promise.resolve({_holder(found[1])})", text)
    text = EXPORT.sub("", IMPORT.sub(_as_const, text))
    if left := LEFT.search(text):
        raise ValueError(f"{name}.js cannot be made a classic script: {left[0].strip()}")
    done[name] = f"const {_holder(name)} = (() => {{\n{text.strip()}\nreturn {{ {exports} }};\n}})();"


def _as_const(found: re.Match[str]) -> str:
    names = re.sub(r"\s+as\s+", ": ", found[1]).strip()
    return f"const {{ {names} }} = {_holder(found[2])};"


def _holder(name: str) -> str:
    return "$" + name.replace("-", "_")
