"""`tinbook log`: one more line at the end of the bake log, and what it changes in the estimate; of the stock; of the
prices."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any, NamedTuple

import click

from tinbook.cli.appending import appended, flow_line
from tinbook.cli.baskets import add_to_stock, stock_entry, stock_line
from tinbook.cli.command import recipes_of
from tinbook.cli.opening import pack
from tinbook.cli.paying import log_price
from tinbook.cli.table import named_tins
from tinbook.cli.writing import put
from tinbook.loading import Loaded, load_book
from tinbook.loading.logs import BAKES
from tinbook.models import Baked, Book, read_model
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.times import Time
from tinbook.plans.base.bake_log import batter_mm, of_bakes
from tinbook.plans.base.weighing import as_owned, weigh
from tinbook.plans.rules.bakes import bake_flaws
from tinbook.problems import nearest

ORDER = (
    "day", "of", "tin", "batter", "batter_depth", "oven", "done_after", "centre", "start", "baked", "out", "note",
)  # fmt: skip
BEGINS = "# What came out of this oven, one line for each bake.\n"


@click.group()
def log() -> None:
    """Add to your logs."""


log.add_command(pack)


@log.command()
@click.argument("of", metavar="NAME")
@click.option("--tin", required=True, metavar="TIN", help='What it was baked in, such as "round 20 cm x 7.5 cm".')
@click.option("--batter", metavar="WEIGHT", help='What went into this tin, such as "1150 g".')
@click.option("--batter-depth", metavar="DEPTH", help='Or how deep the batter was, such as "42 mm".')
@click.option("--oven", required=True, metavar="TEMPERATURE", help='What the dial was set to, such as "140 °C fan".')
@click.option("--done-after", required=True, metavar="TIME", help='How long it was in the oven, such as "72 min".')
@click.option("--centre", metavar="TEMPERATURE", help='How hot its centre was when it came out, such as "97 °C".')
@click.option(
    "--start", metavar="TEMPERATURE", help='How warm the batter was, if not at room temperature, such as "8 °C".'
)
@click.option("--baked", metavar="HEIGHT", help='How high it was before levelling, such as "61 mm".')
@click.option("--out", metavar="WEIGHT", help='What it weighed when cold, such as "1035 g".')
@click.option("--note", metavar="WORDS", help="Anything else.")
@click.option("--day", metavar="DAY", help="Such as 2026-05-02; today if not given.")
@click.pass_obj
def bake(book: Path, /, **told: str | None) -> None:
    """Log a bake of the mixture NAME. Nothing already in the log is changed."""
    folder = recipes_of(book)
    loaded = load_book(folder)
    told["day"] = told["day"] or date.today().isoformat()
    keys = (
        "day",
        "of",
        "tin",
        "batter",
        "batter_depth",
        "oven",
        "done_after",
        "centre",
        "start",
        "baked",
        "out",
        "note",
    )
    data = {key.replace("_", " "): " ".join(said.split()) for key in keys if (said := told[key])}
    entry = _entry(data, loaded)
    line = flow_line(data)
    path, whole = appended(folder, BAKES, entry.day.year, [line], loaded, BEGINS)
    before, after = _known(loaded.book, loaded, entry), _known(_with(loaded.book, entry), loaded, entry)
    put({path: whole})
    click.echo(f"Added one line to {path.relative_to(folder.parent).as_posix()}:\n  - {line}")
    for said in _changed(before, after):
        click.echo(said)


@log.command()
@click.argument("of", metavar="NAME")
@click.option("--counted", metavar="AMOUNT", help='All there is of it, such as "500 g", "3 x 250 g" or 0.')
@click.option("--bought", metavar="AMOUNT", help='What was added to it, such as "4 x 250 g".')
@click.option("--taken", metavar="AMOUNT", help="What went otherwise than into an order.")
@click.option("--opened", metavar="DAY", help="The day a pack of it was opened.")
@click.option("--in-opened", metavar="AMOUNT", help="How much of what is counted is in the opened pack.")
@click.option("--good-until", metavar="DAY", help="The last day on which you would use it.")
@click.option("--for", "for_", multiple=True, metavar="ORDER", help="The order it was bought for, by its file.")
@click.option("--day", metavar="DAY", help="Such as 2026-12-01; today if not given.")
@click.pass_obj
def stock(book: Path, /, for_: tuple[str, ...], **told: str | None) -> None:
    """Log what there is at home of NAME: an ingredient, a colour with its shade, or a thing with its size.

    Nothing already in the log is changed.
    """
    folder, today = recipes_of(book), date.today()
    loaded = load_book(folder, today=today)
    told["day"] = told["day"] or today.isoformat()
    keys = ("day", "of", "counted", "bought", "taken", "in_opened", "opened", "good_until")
    data: dict[str, Any] = {key.replace("_", " "): " ".join(said.split()) for key in keys if (said := told[key])}
    data |= {"for": list(for_)} if for_ else {}
    add_to_stock([(stock_entry(data, loaded, today), stock_line(data))], folder, loaded)


@log.command()
@click.argument("of", metavar="NAME")
@click.option("--pack", required=True, metavar="AMOUNT", help='What you got for it, such as "250 g", 6 or "25 m".')
@click.option("--price", required=True, metavar="SUM", help="What you paid for all of that, such as 2.10.")
@click.option("--note", metavar="WORDS", help="Anything worth knowing about it.")
@click.option("--day", metavar="DAY", help="Such as 2026-12-01; today if not given.")
@click.pass_obj
def price(book: Path, /, **told: str | None) -> None:
    """Log what you paid for NAME: an ingredient, a colour with its shade, or a thing with its size.

    Nothing already in the log is changed.
    """
    folder, today = recipes_of(book), date.today()
    loaded = load_book(folder, today=today)
    told["day"] = told["day"] or today.isoformat()
    keys = ("day", "of", "pack", "price", "note")
    log_price({key: " ".join(said.split()) for key in keys if (said := told[key])}, folder, loaded, today)


def _entry(data: dict[str, Any], loaded: Loaded) -> Baked:
    """The entry, or an error that says what to write instead."""
    entry, flaws = read_model(Baked, data, "a bake", loaded.book.house.spoons, named_tins(loaded.book))
    if entry is not None:
        slugs = loaded.book.mixtures
        if entry.of not in slugs:
            if f"mixtures/{entry.of}" in loaded.broken:
                raise click.ClickException(f'"{entry.of}" has a mistake in it: run "tinbook check" to see what to fix')
            close = nearest(entry.of, slugs)
            hint = f'did you mean "{close}"?' if close else "give the mixture's file name, without .yaml"
            raise click.ClickException(f'the book has no "{entry.of}": {hint}')
        batch = weigh(entry.of, slugs[entry.of], loaded.book, loaded.facts)
        flaws = tuple(bake_flaws(entry, batch, loaded.book, loaded.facts))
    if entry is None or flaws:
        lines = [f"{_option(flaw.path)}{flaw.message}" + (f": {flaw.hint}" if flaw.hint else "") for flaw in flaws]
        raise click.ClickException("\n  ".join(lines))
    return entry


def _option(path: tuple[str | int, ...]) -> str:
    return f"--{str(path[0]).replace(' ', '-')}: " if path and path[0] != "of" else ""


def _with(book: Book, entry: Baked) -> Book:
    return replace(book, bakes=(*book.bakes, entry))


class _Known(NamedTuple):
    """What is known about bakes like this one: the time, and the mixture's rise and loss."""

    time: Time
    rise: float
    loss: float
    logged: int


def _known(book: Book, loaded: Loaded, entry: Baked) -> _Known | None:
    batch = weigh(entry.of, book.mixtures[entry.of], book, loaded.facts)
    baking = Bakes(book, loaded.facts).of(batch)
    tin = as_owned(entry.tin, book)
    depth = batter_mm(entry, batch.mass_g / batch.batter_ml, tin)
    if baking is None or depth is None:
        return None
    return _Known(baking.times([(tin, depth)])[0], batch.rise, batch.loss, baking.logged)


def _changed(before: _Known | None, after: _Known | None) -> list[str]:
    if before is None or after is None:
        return []
    old, new = before.time, after.time
    said = [
        f"In a tin like this, going by {spell(of_bakes(after.logged))}:",
        f"  most likely {new.likely_min:.0f} min (was {old.likely_min:.0f})",
        f"  start checking at {new.check_shown_min:g} min (was {old.check_shown_min:g})",
        f"  probably {_span(new)} min (was {_span(old)})",
    ]
    if f"{after.rise:.2f}" != f"{before.rise:.2f}":
        said.append(f"  it rises to {after.rise:.2f} times the depth of its batter (was {before.rise:.2f})")
    if f"{after.loss:.1%}" != f"{before.loss:.1%}":
        said.append(f"  it loses {after.loss:.1%} of its weight (was {before.loss:.1%})")
    return said


def _span(time: Time) -> str:
    return f"{time.low_shown_min:g}-{time.high_shown_min:g}"
