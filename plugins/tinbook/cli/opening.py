"""`tinbook log pack`: the pack of something that was opened, at the end of its log."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from tinbook.cli.appending import appended, flow_line
from tinbook.cli.command import recipes_of
from tinbook.cli.writing import put
from tinbook.loading import load_book
from tinbook.models import read_model
from tinbook.models.opened import PackOpened
from tinbook.models.register import kinds
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.labels import opened_flaws

OPENED = kinds()["opened"]
BEGINS = "# The packs we opened, one line each, so that one that is called back can be followed.\n"
KEYS = ("day", "of", "pack", "best_before", "finished")


@click.command()
@click.argument("of", metavar="NAME")
@click.option("--pack", required=True, metavar="NUMBER", help="The number on the pack by which its maker can trace it.")
@click.option("--best-before", metavar="DAY", help="The date on the pack.")
@click.option("--finished", metavar="DAY", help="The day it was used up, if it has been.")
@click.option("--day", metavar="DAY", help="The day it was opened, such as 2026-12-01; today if not given.")
@click.pass_obj
def pack(book: Path, /, **told: str | None) -> None:
    """Log a pack of NAME that you have opened. Nothing already in the log is changed."""
    folder, today = recipes_of(book), date.today()
    loaded = load_book(folder, today=today)
    told["day"] = told["day"] or today.isoformat()
    data = {key.replace("_", " "): " ".join(said.split()) for key in KEYS if (said := told[key])}
    entry, flaws = read_model(PackOpened, data, "this pack", loaded.book.house.spoons)
    if entry is not None and not flaws:
        flaws = tuple(opened_flaws(entry, loaded.book, Spoilt(), today))
    if entry is None or flaws:
        lines = [flaw.message + (f": {flaw.hint}" if flaw.hint else "") for flaw in flaws]
        raise click.ClickException("\n  ".join(lines))
    line = flow_line(data)
    path, whole = appended(folder, OPENED, entry.day.year, [line], loaded, BEGINS)
    put({path: whole})
    click.echo(f"Added one line to {path.relative_to(folder.parent).as_posix()}:\n  - {line}")
