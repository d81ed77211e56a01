"""The command run as a baker runs it, on a copy of the demo book."""

import hashlib
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

import tinbook.loading.book as reading
from tinbook.cli import main

ROOT = Path(__file__).parents[2]


KNOWN: dict[object, Any] = {}
"""Books read by the commands of this process."""


@pytest.fixture(scope="module", autouse=True)
def read_once() -> Iterator[None]:
    """Books that are alike to the byte are read once for all commands of a process: most are copies of the demo. How a
    book is read has tests of its own."""
    read = reading._loaded

    def loaded(folder: Path, *how: Any) -> Any:
        digest = hashlib.sha256()
        try:
            for path in sorted(folder.rglob("*")):
                digest.update(f"{path.relative_to(folder)} {path.is_symlink()}\n".encode())
                digest.update(hashlib.sha256(path.read_bytes()).digest() if path.is_file() else b"")
        except OSError:
            return read(folder, *how)
        key = (folder.name, digest.digest(), how)
        if key not in KNOWN:
            KNOWN[key] = read(folder, *how)
        return KNOWN[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(reading, "_loaded", loaded)
        yield


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
