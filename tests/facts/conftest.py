"""The data files as plain trees, the facts, published tables, and GNU units as an independent calculator."""

from __future__ import annotations

import csv
import subprocess
from collections.abc import Callable
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
import yaml

from tinbook import facts as room
from tinbook.facts import Facts, read_facts

Table = Callable[[str], list[dict[str, str]]]
Calculator = Callable[[list[tuple[str, str]]], list[float]]


@pytest.fixture(scope="session")
def data() -> dict[str, Any]:
    """The data files, every scalar text."""
    files = (Path(room.__file__).parent / "data").glob("*.yaml")
    return {file.stem: yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader) for file in files}


@pytest.fixture(scope="session")
def facts(data: dict[str, Any]) -> Facts:
    return read_facts(data)


@pytest.fixture
def trees(data: dict[str, Any]) -> dict[str, Any]:
    """The data files, fresh for a test to spoil."""
    return deepcopy(data)


@pytest.fixture
def table() -> Table:
    """Rows of a published table in tests/data; the lines that open with # name its source."""

    def read(name: str) -> list[dict[str, str]]:
        path = Path(__file__).parents[1] / "data" / f"{name}.csv"
        lines = [line for line in path.read_text("utf-8").splitlines() if not line.startswith("#")]
        return list(csv.DictReader(lines))

    return read


@pytest.fixture
def gnu_units() -> Calculator:
    """Values of (expression, unit) pairs by the GNU units program, which the tests need installed."""

    def convert(questions: list[tuple[str, str]]) -> list[float]:
        text = "".join(f"{have}\n{want}\n" for have, want in questions)
        command = ["units", "--quiet", "--terse", "--digits", "12"]
        run = subprocess.run(command, input=text, capture_output=True, text=True, check=True, timeout=60)
        answers = [float(line) for line in run.stdout.split()]
        assert len(answers) == len(questions)
        return answers

    return convert
