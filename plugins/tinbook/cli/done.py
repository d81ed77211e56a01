"""`tinbook plan --done FILE`: what the tablet says is done goes to the end of the log of hours."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import click

from tinbook.cli.appending import appended, flow_line
from tinbook.cli.writing import put
from tinbook.loading import load_book
from tinbook.models import read_model
from tinbook.models.hours import WorkDone
from tinbook.models.register import kinds

HOURS = kinds()["hours"]
BEGINS = "# What has been done, one line for each task.\n"
KEYS = ("done", "task", "of", "said", "took")
CLOCKS_DIFFER = timedelta(days=1)
"""By how much a tablet's clock may be ahead of this computer's."""


def take_done(raw: bytes, folder: Path, now: datetime) -> None:
    """Add what is in a file from the tablet, but for what is there already. ClickException for a file that is not
    one, or holds what cannot be."""
    loaded = load_book(folder)
    known: Sequence[WorkDone] = loaded.book.others["hours"]
    entries = list(_read(raw, now))
    new: list[tuple[WorkDone, dict[str, str]]] = []
    for entry, written in entries:
        if not _is_known(entry, (*known, *(each for each, _ in new))):
            new.append((entry, written))
    if not new:
        click.echo("There is nothing new in it.\n" if entries else "Nothing is ticked in it.\n", err=True)
        return
    lines = [flow_line(written) for _, written in new]
    path, whole = appended(folder, HOURS, new[0][0].done.year, lines, loaded, BEGINS)
    put({path: whole})
    count = "one line" if len(lines) == 1 else f"{len(lines)} lines"
    click.echo(f"Added {count} to {path.relative_to(folder.parent).as_posix()}.\n", err=True)


def _is_known(entry: WorkDone, known: Iterable[WorkDone]) -> bool:
    """Whether the task is logged already, and there is nothing more to learn from this."""
    return any(each.task == entry.task and (each.took or not entry.took) for each in known)


def _read(raw: bytes, now: datetime) -> Iterator[tuple[WorkDone, dict[str, str]]]:
    for nth, each in enumerate(_entries(raw), 1):
        data: dict[str, Any] = {key: str(each[key]) for key in KEYS if each.get(key) not in (None, "")}
        entry, flaws = read_model(WorkDone, data, "this entry")
        if entry is None or flaws:
            said = "; ".join(f"{flaw.message}: {flaw.hint}" for flaw in flaws)
            raise click.ClickException(f"entry {nth} of the file cannot be right. {said}")
        if entry.done > now + CLOCKS_DIFFER:
            raise click.ClickException(
                f"entry {nth} of the file was done on {entry.done:%Y-%m-%d}, which is still to come: put the tablet's "
                "clock right, tick it again, and save the file again"
            )
        yield entry, data


def _entries(raw: bytes) -> list[Mapping[str, Any]]:
    try:
        entries = json.loads(raw)["done"]
        if isinstance(entries, list) and all(isinstance(each, Mapping) for each in entries):
            return entries
    except (ValueError, LookupError, TypeError, RecursionError):
        pass
    raise click.ClickException('this is not a file of what is done: save one with "Save what is done" on the tablet')
