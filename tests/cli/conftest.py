"""The command run as a baker runs it, on a copy of the demo book."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tinbook.cli import main

ROOT = Path(__file__).parents[2]


@pytest.fixture
def book(tmp_path: Path) -> Path:
    shutil.copytree(ROOT / "recipes", tmp_path / "our book" / "recipes")
    return tmp_path / "our book"


@pytest.fixture
def run(book: Path) -> Callable[..., Result]:
    def call(*words: str, text: str | bytes | None = None) -> Result:
        done = CliRunner().invoke(main, ["--book", str(book), *words], input=text)
        assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
        return done

    return call
