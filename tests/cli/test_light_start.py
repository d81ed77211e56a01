"""What a start costs: large libraries, and rooms that a command does not need, are not imported for it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

PRINTED = (
    "shapely", "numpy", "scipy", "typst", "PIL", "mkdocs", "pint", "markdown", "jinja2", "segno", "defusedxml",
    "tinbook.pages.base", "tinbook.pages.technique", "tinbook.pages.mixture", "tinbook.site", "tinbook.press",
    "tinbook.plugin",
)  # fmt: skip
"""What only pages, pictures, drawings and shapes that are cut need."""
BOOK = (
    "yaml", "pydantic", "tabulate", "markupsafe", "tinbook.loading", "tinbook.models", "tinbook.plans", "tinbook.pages",
    "tinbook.facts", "tinbook.tins", "tinbook.units", "tinbook.engine", "tinbook.source",
)  # fmt: skip
"""What only a command that reads the book needs."""
STARTER = Path(__file__).parents[2] / "plugins" / "tinbook" / "cli" / "starter"
CALL = """
import sys
from tinbook.cli import main
try:
    main({words!r})
except SystemExit as ended:
    assert not ended.code, ended.code
print(*sorted(sys.modules))
"""


def imported(*lines: str) -> set[str]:
    """The modules that a process of its own has imported after some lines of Python."""
    done = subprocess.run([sys.executable, "-c", "\n".join(lines)], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return set(done.stdout.splitlines()[-1].split())


def after(*words: str) -> set[str]:
    return imported(CALL.format(words=["--book", str(STARTER), *words]))


def test_the_command_alone_needs_next_to_nothing() -> None:
    modules = imported("import sys, tinbook.cli", "print(*sorted(sys.modules))")
    assert [name for name in (*PRINTED, *BOOK) if name in modules] == []


@pytest.mark.parametrize("words", [("--help",), ("--version",)])
def test_help_needs_no_part(words: tuple[str, ...]) -> None:
    modules = after(*words)
    assert [name for name in (*PRINTED, *BOOK) if name in modules] == []


@pytest.mark.parametrize("words", [("check",), ("table",), ("table", "ounces"), ("table", "eggs")])
def test_a_book_without_pictures_is_read_without_large_libraries(words: tuple[str, ...]) -> None:
    modules = after(*words)
    assert "tinbook.loading" in modules
    assert [name for name in PRINTED if name in modules] == []


def test_check_spells_no_table() -> None:
    modules = after("check")
    assert [name for name in ("tinbook.pages", "tinbook.plans.tables", "tabulate") if name in modules] == []


def test_what_is_needed_is_seen() -> None:
    """A table whose outlines are cut needs the libraries: looking for them finds them."""
    modules = after("table", "portions")
    assert {"shapely", "numpy"} <= modules
