"""Every command that writes, on a full disk and on one that can only be read: told plainly, and all as it was."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click
import pytest
from click.testing import CliRunner, Result

from tinbook.cli import main
from tinbook.cli.writing import put, whole_folder

SAID = {
    errno.ENOSPC: "the disk is full",
    errno.EROFS: "the disk is read-only",
    errno.EACCES: "may not write to",
}
NOTES = "225 g butter\n225 g caster sugar\n4 eggs\n225 g self-raising flour\n\nMethod\n\nBeat it.\n"
COMMANDS = {
    "new book": ("new", "book", "{out}/ours"),
    "new mixture": ("new", "mixture", "Jetty cake", "--from", "{out}/notes.txt", "--kind", "creamed", "--tins",
                    "2 round 20 cm x 5 cm"),
    "log": ("log", "bake", "creamed-butter-sponge", "--tin", "round 20 cm x 7.5 cm", "--oven", "140 °C fan",
            "--done-after", "70 min", "--batter", "1150 g"),
    "schema": ("schema",),
    "sheet": ("sheet", "line-a-tin", "--pdf", "--force", "-o", "{out}/sheet.html"),
    "template": ("template", "ring", "--cake", "round 20 cm", "--svg", "--force", "-o", "{out}/ring.pdf"),
}  # fmt: skip


def all_of(*folders: Path) -> dict[str, bytes]:
    """Every file below some folders, and every folder."""
    found = {str(path): path.read_bytes() if path.is_file() else b"" for each in folders for path in each.rglob("*")}
    return {name: content for name, content in found.items() if "__pycache__" not in name}


@pytest.fixture
def out(tmp_path: Path) -> Path:
    folder = tmp_path / "out"
    folder.mkdir()
    (folder / "notes.txt").write_text(NOTES, "utf-8")
    (folder / "sheet.html").write_text("an old sheet", "utf-8")
    (folder / "ring.pdf").write_text("an old ring", "utf-8")
    return folder


def failing(code: int, real: Callable[..., Any], after: int) -> Callable[..., Any]:
    """A call of the system that works `after` times, then fails."""
    calls = iter(range(10_000))

    def call(*given: Any, **more: Any) -> Any:
        if next(calls) >= after:
            raise OSError(code, os.strerror(code))
        return real(*given, **more)

    return call


@pytest.mark.parametrize("code", SAID, ids=errno.errorcode.get)
@pytest.mark.parametrize("call", ["fsync", "replace"])
@pytest.mark.parametrize("command", COMMANDS)
def test_nothing_is_half_written(
    command: str,
    call: str,
    code: int,
    out: Path,
    book: Path,
    run: Callable[..., Result],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    if command == "new book" and call == "fsync":
        pytest.skip("its files go into a folder that is not there yet")
    before = all_of(out, book)
    monkeypatch.setattr(os, call, failing(code, getattr(os, call), 0))
    done = run(*(word.format(out=out) for word in COMMANDS[command]))
    assert done.exit_code == 1, done.output
    assert SAID[code] in done.output and "cannot be written" in done.output
    # an empty folder for the schemas is no harm
    assert {name: each for name, each in all_of(out, book).items() if not name.endswith("/schema")} == before


@pytest.mark.parametrize("command", COMMANDS)
def test_the_same_commands_write_where_there_is_room(
    command: str, out: Path, book: Path, run: Callable[..., Result]
) -> None:
    before = all_of(out, book)
    done = run(*(word.format(out=out) for word in COMMANDS[command]))
    assert done.exit_code == 0, done.output
    after = all_of(out, book)
    assert after != before and not [name for name in after if Path(name).name.endswith(f".{os.getpid()}")]


def test_a_book_that_cannot_be_finished_is_not_begun(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.write_text
    monkeypatch.setattr(Path, "write_text", failing(errno.ENOSPC, real, 3))
    done = CliRunner().invoke(main, ["new", "book", str(tmp_path / "ours")])
    assert done.exit_code == 1 and "the disk is full" in done.output
    assert not list(tmp_path.iterdir())


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_real_full_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's own answer, of a device that has no room: what is written beside lies there."""
    monkeypatch.setattr("tinbook.cli.writing._beside", lambda path: Path("/dev/full"))
    monkeypatch.setattr(Path, "open", lambda path, mode, real=Path.open: real(path, mode.replace("x", "w")))
    monkeypatch.setattr(Path, "unlink", lambda path, missing_ok: None)
    (tmp_path / "log.yaml").write_bytes(b"old")
    with pytest.raises(click.ClickException, match="the disk is full"):
        put({tmp_path / "log.yaml": b"new" * 100_000})
    assert (tmp_path / "log.yaml").read_bytes() == b"old"


def test_of_several_files_none_is_touched_where_one_fails(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"old")
    with pytest.raises(click.ClickException, match="cannot be written"):
        put({tmp_path / "a": b"new", tmp_path / "no folder" / "b": b"new"})
    assert all_of(tmp_path) == {str(tmp_path / "a"): b"old"}


def test_rights_and_links_stay(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"old")
    (tmp_path / "a").chmod(0o640)
    (tmp_path / "link").symlink_to("a")
    put({tmp_path / "link": b"new"})
    assert (tmp_path / "link").is_symlink() and (tmp_path / "a").read_bytes() == b"new"
    assert (tmp_path / "a").stat().st_mode & 0o777 == 0o640


def test_a_whole_folder_or_none(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    with whole_folder(tmp_path / "empty") as half:
        (half / "a").write_bytes(b"a")
    assert all_of(tmp_path / "empty") == {str(tmp_path / "empty" / "a"): b"a"}
