"""What was paid, as a line at the end of the log of prices, and what that says beside the price before."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

import click

from tinbook.cli.appending import appended, flow_line
from tinbook.cli.writing import put
from tinbook.loading import Loaded
from tinbook.models import read_model
from tinbook.models.money import PricePaid
from tinbook.models.register import kinds
from tinbook.pages.money.sums import SumWords, by_measure
from tinbook.plans.money.paid import PaidPrice, dearer, paid_prices, risen_percent
from tinbook.plans.money.till import till_of
from tinbook.plans.rules.money import price_flaws
from tinbook.plans.shopping.things import Thing, Things

PRICES = kinds()["prices"]
BEGINS = "# What was paid, one line for each pack. The newest counts.\n"


def log_price(data: Mapping[str, str], folder: Path, loaded: Loaded, today: date) -> None:
    """Write one price at the end of the log, and say what it comes to. ClickException for one that cannot be right."""
    things = Things(loaded.book, loaded.facts)
    entry, flaws = read_model(PricePaid, data, "this price", loaded.book.house.spoons)
    if entry is not None and not flaws:
        flaws = tuple(price_flaws(entry, things, loaded.book.others["money"], today=today))
    if entry is None or flaws:
        lines = [f"{flaw.message}" + (f": {flaw.hint}" if flaw.hint else "") for flaw in flaws]
        raise click.ClickException("\n  ".join(lines))
    line = flow_line(dict(data))
    path, whole = appended(folder, PRICES, entry.day.year, [line], loaded, BEGINS)
    put({path: whole})
    click.echo(f"Added one line to {path.relative_to(folder.parent).as_posix()}:\n  - {line}")
    for said in _told(entry, loaded):
        click.echo(said)


def _told(entry: PricePaid, loaded: Loaded) -> Iterator[str]:
    """What it comes to by the kilo or the piece, and whether it has become dearer."""
    till = till_of(loaded.book, loaded.facts)
    prices = paid_prices((*loaded.book.others["prices"], entry), till.things)
    thing = till.things.called(entry.of)
    newest = prices.newest(thing.name) if thing else None
    if thing is None or newest is None:
        return
    words = SumWords(till.money)
    if newest.day > entry.day:
        yield f"A newer price is in the log, of {words.day(newest.day)}: that one counts."
        return
    yield f"{thing.name}: {_said(newest, thing, words)}"
    if changed := dearer(thing.name, prices):
        before, now = changed
        more = risen_percent(before, now)
        share = f": {more} % dearer" if more else ""
        yield f"  it was {_said(before, thing, words)} on {words.day(before.day)}{share}"


def _said(price: PaidPrice, thing: Thing, words: SumWords) -> str:
    return by_measure(price, thing, words).replace("\u00a0", " ")
