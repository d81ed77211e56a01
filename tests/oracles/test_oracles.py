"""An oracle that leans on what it checks checks nothing."""

from __future__ import annotations

import ast
from pathlib import Path

FORBIDDEN = "tinbook.engine"


def imported(path: Path) -> set[str]:
    """Every module a file imports, `from a import b` as `a` and `a.b`."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
        elif isinstance(node, ast.ImportFrom):
            found |= {node.module or "", *(f"{node.module}.{each.name}" for each in node.names)}
    return found


def test_no_oracle_imports_the_engine() -> None:
    files = sorted(Path(__file__).parent.glob("*.py"))
    assert len(files) > 1
    for path in files:
        guilty = {name for name in imported(path) if name == FORBIDDEN or name.startswith(FORBIDDEN + ".")}
        assert not guilty, path.name


def test_an_import_of_the_engine_would_be_seen(tmp_path: Path) -> None:
    for text in (
        "import tinbook.engine",
        "from tinbook import engine",
        "def f():\n    from tinbook.engine import scaling",
    ):
        path = tmp_path / "oracle.py"
        path.write_text(text)
        assert any(name.startswith(FORBIDDEN) for name in imported(path)), text
