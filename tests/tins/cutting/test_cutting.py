"""The room's door: what it names is there, and its modules are imported when something is first asked for."""

import subprocess
import sys

import pytest

from tinbook.tins import cutting

ASKED = """
import sys
from tinbook.tins import cutting
before = "shapely" in sys.modules
cutting.turned(())
print(before, "shapely" in sys.modules)
"""


def test_all_that_is_named_is_there() -> None:
    assert [name for name in cutting.__all__ if not hasattr(cutting, name)] == []


def test_nothing_else_is() -> None:
    with pytest.raises(AttributeError, match="has no attribute 'slices'"):
        _ = getattr(cutting, "slices")  # noqa: B009 - a name that mypy knows not to be there


def test_large_libraries_come_when_something_is_asked_for() -> None:
    asked = subprocess.run([sys.executable, "-c", ASKED], capture_output=True, text=True, check=True)
    assert asked.stdout.split() == ["False", "True"]
