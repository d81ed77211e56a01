"""What was bought or counted, as lines at the end of the log of the stock."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import click

from tinbook.cli.appending import appended, flow_line
from tinbook.cli.writing import put
from tinbook.loading import Loaded, load_book
from tinbook.models import read_model
from tinbook.models.register import kinds
from tinbook.models.stock import StockEntry
from tinbook.plans.rules.stock import stock_flaws
from tinbook.plans.shopping.things import Things, plain

STOCK = kinds()["stock"]
BEGINS = "# What there is on the shelves: counted by hand, then bought and taken, one line each.\n"
NO_FILE = 'this is not a file of what was bought: save one with "Save what is bought" on the tablet'
CLOCKS_DIFFER = timedelta(days=1)
"""By how much a tablet's clock may be ahead of this computer's."""


def add_to_stock(entries: Sequence[tuple[StockEntry, str]], folder: Path, loaded: Loaded) -> None:
    """Write some entries, with their lines, at the end of the log. ClickException if it cannot be added to."""
    path, whole = appended(folder, STOCK, entries[0][0].day.year, [line for _, line in entries], loaded, BEGINS)
    put({path: whole})
    count = "one line" if len(entries) == 1 else f"{len(entries)} lines"
    click.echo(f"Added {count} to {path.relative_to(folder.parent).as_posix()}.\n", err=True)


def stock_entry(data: Mapping[str, Any], loaded: Loaded, today: date) -> StockEntry:
    """One entry. ClickException says what is wrong with it, by the options of the command."""
    entry, flaws = read_model(StockEntry, data, "this entry", loaded.book.house.spoons)
    if entry is not None and not flaws:
        flaws = tuple(stock_flaws(entry, Things(loaded.book, loaded.facts), today=today))
    if entry is None or flaws:
        lines = [f"{flaw.message}" + (f": {flaw.hint}" if flaw.hint else "") for flaw in flaws]
        raise click.ClickException("\n  ".join(lines))
    return entry


def stock_line(data: Mapping[str, Any]) -> str:
    """An entry as it stands in the log."""
    flat = {key: said for key, said in data.items() if isinstance(said, str)}
    listed = {key: said for key, said in data.items() if not isinstance(said, str)}
    line = flow_line(flat)
    for key, said in listed.items():
        inside = ", ".join(flow_line({"x": each})[4:-1] for each in said)
        line = f"{line[:-1]}, {key}: [{inside}]}}"
    return line


def take_bought(raw: bytes, folder: Path, today: date) -> None:
    """Add what is ticked in a file from the tablet, but for lines that are there already. ClickException for a file
    that is not one, or holds what cannot be."""
    loaded = load_book(folder, today=today)
    known = {_key(entry.line) for entry in loaded.book.others["stock"] if entry.line}
    new: list[tuple[StockEntry, str]] = []
    lines = 0
    for nth, each in enumerate(_ticked(raw), 1):
        lines += 1
        if _key(each["line"]) in known:
            continue
        known.add(_key(each["line"]))
        try:
            new += _entries(each, loaded, today)
        except click.ClickException as error:
            raise click.ClickException(f"line {nth} of the file cannot be right. {error.message}") from None
    if not new:
        click.echo("There is nothing new in it.\n" if lines else "Nothing is ticked in it.\n", err=True)
        return
    add_to_stock(new, folder, loaded)


def _key(line: str) -> str:
    name, _, nth = line.rpartition("/")
    return f"{plain(name)}/{nth}"


def _entries(each: Mapping[str, Any], loaded: Loaded, today: date) -> Iterator[tuple[StockEntry, str]]:
    """An entry for each size of pack. A clock that is ahead does not make tomorrow of today."""
    try:
        day = date.fromisoformat(each["day"])
    except ValueError:
        raise click.ClickException(f'"{each["day"]}" is not a day: write it as 2026-12-03') from None
    if today < day <= today + CLOCKS_DIFFER:
        day = today
    for bought in each["bought"]:
        data: dict[str, Any] = {"day": day.isoformat(), "of": each["of"], "bought": bought}
        if each.get("for"):
            data["for"] = list(each["for"])
        data["line"] = each["line"]
        yield stock_entry(data, loaded, today), stock_line(data)


def _ticked(raw: bytes) -> Sequence[Mapping[str, Any]]:
    try:
        entries = json.loads(raw)["bought"]
        if isinstance(entries, list) and all(map(_is_tick, entries)):
            return entries
    except (ValueError, LookupError, TypeError, RecursionError):
        pass
    raise click.ClickException(NO_FILE)


def _is_tick(each: Any) -> bool:
    if not isinstance(each, Mapping):
        return False
    texts = all(isinstance(each.get(key), str) and each[key].strip() for key in ("line", "of", "day"))
    return texts and _is_texts(each.get("bought")) and bool(each["bought"]) and _is_texts(each.get("for", []))


def _is_texts(each: Any) -> bool:
    return isinstance(each, list) and all(isinstance(text, str) for text in each)
