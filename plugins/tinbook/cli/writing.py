"""How every command writes: to a file next to the target, then moved into place, so that a full disk leaves nothing
half written."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

import click

from tinbook.problems.disk import why_not


def put(files: Mapping[Path, bytes]) -> None:
    """Write whole files over any that are there. ClickException if one cannot be written, and then none has changed.

    A link stays a link: what it leads to is written.
    """
    beside: dict[Path, Path] = {}
    name = next(iter(files), Path())
    try:
        for name, content in files.items():
            path = name.resolve()
            beside[path] = half = _beside(path)
            with half.open("xb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            if path.exists():
                shutil.copymode(path, half)
        for path, half in beside.items():
            name = path
            os.replace(half, path)
    except OSError as error:
        raise cannot_write(name, error) from None
    finally:
        for half in beside.values():
            with suppress(OSError):
                half.unlink(missing_ok=True)


@contextmanager
def whole_folder(folder: Path) -> Iterator[Path]:
    """A folder to fill, which then becomes `folder`, empty or not there yet. On a ClickException nothing is left
    behind."""
    target = folder.resolve()
    half = _beside(target)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        half.mkdir()
        yield half
        if target.is_dir():
            target.rmdir()
        os.replace(half, target)
    except OSError as error:
        raise cannot_write(folder, error) from None
    finally:
        shutil.rmtree(half, ignore_errors=True)


def cannot_write(path: Path, error: OSError) -> click.ClickException:
    """What the baker is told."""
    return click.ClickException(f'"{path}" cannot be written: {why_not(error)}. Nothing was changed.')


def _beside(path: Path) -> Path:
    return path.with_name(f".{path.name}.{os.getpid()}")
