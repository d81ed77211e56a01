"""Docstrings: everything public has one, and the examples in them are true."""

from __future__ import annotations

import ast
import doctest
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import tinbook

PACKAGE = Path(tinbook.__file__).parent


def modules() -> Iterator[tuple[str, ast.Module]]:
    """Every module of the package, by the name it is imported by."""
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
        name = ".".join(part for part in parts if part != "__init__")
        yield name, ast.parse(path.read_text("utf-8"))


def undocumented(tree: ast.Module) -> list[str]:
    """The public functions and classes of a module that say nothing, and the module itself if it says nothing."""
    things = [node for node in tree.body if isinstance(node, ast.FunctionDef | ast.ClassDef)]
    public = [node for node in things if not node.name.startswith("_")]
    missing = [node.name for node in public if not ast.get_docstring(node)]
    return missing if ast.get_docstring(tree) else ["the module", *missing]


def test_everything_public_has_a_docstring() -> None:
    assert {name: missing for name, tree in modules() if (missing := undocumented(tree))} == {}


def test_what_says_nothing_is_seen() -> None:
    assert undocumented(ast.parse("def a(): ...\nclass B: ...\ndef _c(): ...")) == ["the module", "a", "B"]
    assert undocumented(ast.parse('"""Said."""\ndef a():\n    """Said."""')) == []


def test_the_examples_are_true() -> None:
    """Each example is run on its own; what fails is reported by module, with the line."""
    tried, reports = 0, []
    for name, tree in modules():
        if ">>> " in ast.unparse(tree):
            result: list[str] = []
            runner = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE)
            for test in doctest.DocTestFinder(exclude_empty=True).find(import_module(name)):
                tried += runner.run(test, out=result.append).attempted
            reports += result
    assert "".join(reports) == ""
    assert tried >= 10
