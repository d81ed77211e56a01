"""The facts that come with the package, read once."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from tinbook import facts as room
from tinbook.facts import Facts, read_facts
from tinbook.problems import spell
from tinbook.source import read_yaml


@lru_cache(maxsize=1)
def load_facts() -> Facts:
    """All of facts/data. A fault in there is a developer's, so it raises."""
    trees = {}
    for path in sorted((Path(room.__file__).parent / "data").glob("*.yaml")):
        document, problems = read_yaml(path.read_bytes(), path.name)
        if document is None or problems:
            raise ValueError("\n".join(spell(problem) for problem in problems))
        trees[path.stem] = document.data
    return read_facts(trees)
