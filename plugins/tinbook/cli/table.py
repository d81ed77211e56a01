"""`tinbook table`: any computed table of the book, as text or JSON."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any, BinaryIO, TypeVar

import click

from tinbook.cli.against import changes_told
from tinbook.cli.command import recipes_of
from tinbook.loading import load_book
from tinbook.models import Book, read_sides, read_take
from tinbook.models.register import kinds
from tinbook.pages.spelling.sayings import formula_of, inputs_of, spell
from tinbook.plans.base.asking import OPTIONS, AskError, Query
from tinbook.plans.base.result import Cell, Result
from tinbook.plans.base.saying import Saying
from tinbook.plans.portions.guests import BESIDE
from tinbook.plans.tables import TABLES
from tinbook.problems import nearest
from tinbook.tins import Tin, read_measured, read_tin, says_measure
from tinbook.units import (
    Measures,
    Misread,
    Sold,
    read_heat,
    read_length,
    read_mass,
    read_number,
    read_percent,
    read_temperature,
)

T = TypeVar("T")
ROOM = {"cake": "cakes", "technique": "techniques"}
"""The folder of what a table is about, if that is not a mixture."""
READS = {"price": ("money", "prices")}
"""The house's files without which a table would say something else."""
NO_TINS: Mapping[str, Tin] = {}
FEW_ROWS = 4
MOST = 1000
"""Nobody can mean more eggs or batches than this."""


@click.command()
@click.argument("name", required=False)
@click.option("--of", "of", metavar="NAME", help="Which mixture, technique or cake: its file name without .yaml.")
@click.option(
    "--tin",
    "tins",
    multiple=True,
    metavar="TIN",
    help='Such as "round 20 cm x 7.5 cm", with ", measured 2200 ml" after it if you filled it with water; '
    "can be given more than once.",
)
@click.option("--count", type=click.IntRange(1, 999), help="How many of each tin.")
@click.option("--above", metavar="TIN", help="The tier that stands on the cake in --tin.")
@click.option(
    "--deep", is_flag=True, help="Fill the tins as full as the recipe does: a deeper tin gives a deeper cake."
)
@click.option("--eggs", metavar="NUMBER", help="For this many eggs.")
@click.option("--weight", "weight_g", metavar="WEIGHT", help='To make this much, such as "900 g".')
@click.option("--batches", metavar="NUMBER", help='How many batches, such as 2 or "1 1/2".')
@click.option("--plus", metavar="SHARE", help='How much more, such as "25 %".')
@click.option("--left", metavar="AMOUNT", help='To use up what you have left, such as "400 g butter".')
@click.option("--layers", type=click.IntRange(1, 20), help="How many layers in --tin; --layer says how high each is.")
@click.option("--layer", "layer_mm", metavar="HEIGHT", help='How high each layer is, such as "28 mm".')
@click.option(
    "--height", "height_mm", metavar="HEIGHT", help='How high the cake you coat or cover is, such as "10 cm".'
)
@click.option("--guests", type=click.IntRange(1, 1000), help="How many guests to serve.")
@click.option("--set", "stacked", metavar="TIERS", help='Try a set of tiers, bottom first, such as "25 + 20 + 15 cm".')
@click.option(
    "--portion", metavar="PORTION", help='finger, dessert, one of your own, or a size such as "30 mm x 40 mm".'
)
@click.option("--keep-top", is_flag=True, help="Keep the top tier back.")
@click.option("--owned", is_flag=True, help="Only tins you own.")
@click.option("--beside", type=click.Choice(BESIDE), help="What is served alongside the cake.")
@click.option(
    "--oven", "oven_c", metavar="TEMPERATURE", help='With the oven at this temperature, such as "150 °C fan".'
)
@click.option("--start", "start_c", metavar="TEMPERATURE", help='With the batter this warm, such as "8 °C".')
@click.option("--size", metavar="SIZE", help="Which size of the cake: its name, or +1 or -2 for sizes up or down.")
@click.option("--made", metavar="DAY", help="The day it is made, such as 2026-12-05: the law of that day holds.")
@click.option(
    "--against", type=click.File("rb"), metavar="FILE",
    help="For allergens: what has changed since that table was saved with --format json.",
)  # fmt: skip
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def table(book: Path, /, name: str | None, form: str, against: BinaryIO | None, **asked: Any) -> None:
    """Print the table called NAME; without a NAME, list them all."""
    if name is None:
        from tabulate import tabulate

        click.echo(tabulate([(key, computed.title) for key, computed in TABLES.items()], tablefmt="plain"))
        return
    try:
        result = _answer(book, name, asked)
        if against is not None:
            click.echo(changes_told(name, against.read(), result, form))
            return
    except AskError as error:
        hint = f": {error.hint}" if error.hint else ""
        raise click.ClickException(f"{error.message}{hint}") from None
    click.echo(_json(name, result) if form == "json" else _text(result))


def _answer(book: Path, name: str, asked: dict[str, Any]) -> Result:
    if name not in TABLES:
        close = nearest(name, TABLES)
        raise AskError(
            f'there is no table "{name}"', f'did you mean "{close}"?' if close else "choose from " + ", ".join(TABLES)
        )
    loaded = load_book(recipes_of(book))
    if not loaded.book.mixtures and loaded.errors:
        raise AskError("the book cannot be read", 'run "tinbook check" to see why')
    if asked["of"] and f"{ROOM.get(TABLES[name].of, 'mixtures')}/{asked['of']}" in loaded.broken:
        raise AskError(f'"{asked["of"]}" has a mistake in it', 'run "tinbook check" to see what to fix')
    if any(kinds()[file].address in wrong.place.file for file in READS.get(name, ()) for wrong in loaded.errors):
        raise AskError("what this is worked out from has a mistake in it", 'run "tinbook check" to see what to fix')
    TABLES[name].refuse(_given(asked))
    return TABLES[name].rows(loaded.book, loaded.facts, query(asked, loaded.book.house.spoons, named_tins(loaded.book)))


def _given(asked: dict[str, Any]) -> list[str]:
    """The options the command was given, even as empty text; "measured" in a tin's text counts as one."""
    told = {**asked, "measured": any(map(says_measure, asked["tins"]))}
    return [key for key in OPTIONS if told[key] is not None and told[key] is not False and told[key] != ()]


def named_tins(book: Book) -> Mapping[str, Tin]:
    """The tins of the house that have a name of their own, in lower case."""
    return {own.tin.called.casefold(): own.measured_tin for own in book.tins if own.tin.called}


def query(asked: dict[str, Any], measures: Measures, names: Mapping[str, Tin] = NO_TINS) -> Query:
    """The options of the command as one question. Raises AskError for what cannot be read."""
    ways = [OPTIONS[way] for way in _given(asked) if way in ("tins", "eggs", "weight_g", "batches", "plus", "left")]
    if len(ways) > 1:
        raise AskError(f"{' and '.join(ways)} cannot be used together", "use just one of them")
    tins = [
        counted
        for text in asked["tins"]
        for counted in _read("--tin", lambda text: read_measured(text, names, measures), text)
    ]
    return Query(
        of=asked["of"],
        tins=tuple((count * (asked["count"] or 1), tin) for count, tin in tins),
        above=_read("--above", lambda text: _one_cake(text, names, measures.tins), asked["above"]),
        deep=asked["deep"],
        eggs=_read("--eggs", lambda text: _number(text, "eggs"), asked["eggs"]),
        weight_g=_read("--weight", lambda text: read_mass(text, measures).base, asked["weight_g"]),
        batches=_read("--batches", lambda text: _number(text, "batches"), asked["batches"]),
        plus=_read("--plus", read_percent, asked["plus"]),
        layers=asked["layers"],
        layer_mm=_read("--layer", lambda text: read_length(text, measures).base, asked["layer_mm"]),
        height_mm=_read("--height", lambda text: read_length(text, measures).base, asked["height_mm"]),
        guests=asked["guests"],
        stacked=_read("--set", lambda text: read_tiers(text, names, measures.tins), asked["stacked"]) or (),
        portion=_read("--portion", lambda text: read_portion(text, measures), asked["portion"]),
        keep_top=asked["keep_top"],
        owned=asked["owned"],
        beside=asked["beside"],
        oven_c=_read("--oven", lambda text: read_heat(text).celsius, asked["oven_c"]),
        start_c=_read("--start", read_temperature, asked["start_c"]),
        size=asked["size"],
        made=_read("--made", _day, asked["made"]),
        left=_read("--left", lambda text: read_take(text, measures), asked["left"]),
    )


def _one_cake(text: str, names: Mapping[str, Tin], sold: Sold) -> Tin:
    count, tin = read_tin(text, names, sold)
    if count != 1:
        raise Misread("this takes one tier", f'write "{tin.name}"', 0, len(text))
    return tin


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise Misread(f'"{text}" is not a day', "write it such as 2026-12-05", 0, len(text)) from None


def _number(text: str, of: str) -> float:
    value, end = read_number(text, 0, "2")
    if end != len(text) or not 0 < value < MOST:
        raise Misread(f'"{text}" is not a number of {of}', 'write 2, ½ or "1 1/2"', 0, len(text))
    return value


def read_tiers(text: str, names: Mapping[str, Tin], sold: Sold) -> tuple[Tin, ...]:
    """The tins of a set, from the bottom: `25 + 20 + 15 cm`, `square 25 + 20 cm`, `square 25 cm + round 15 cm`. Rounds
    if no shape is named; the last unit counts for those without one. Raises Misread."""
    shape, tins = "round", []
    *_, unit = re.split(r"[\d.,\s]", text.strip())
    for part in map(str.strip, text.split("+")):
        if part.casefold() not in names:
            named, sizes = re.fullmatch(r"(\D*)(.*)", part).groups()  # type: ignore[union-attr]
            shape = named.strip() or shape
            part = f"{shape} {sizes} {'' if sizes[-1:].isalpha() else unit}".strip()
        tins.append(_one_cake(part, names, sold))
    return tuple(tins)


def read_portion(text: str, measures: Measures) -> str | tuple[float, float]:
    """The name of a kind of portion, or its sides in mm if there is a figure. Raises Misread."""
    return read_sides(text, measures) if any(sign.isdigit() for sign in text) else text


def _read(option: str, read: Callable[[str], T], text: str | None) -> Any:
    if text is None:
        return None
    try:
        return read(text.strip())
    except Misread as error:
        raise AskError(f"{option}: {error.message}", error.hint) from None


def _json(name: str, result: Result) -> str:
    worked = result.worked
    answer = {
        "table": name,
        "title": spell(result.title),
        "rows": [{key: _said(cell) for key, cell in row.items()} for row in result.rows],
        "worked_out": {"formula": formula_of(worked), "inputs": inputs_of(worked), "sources": worked.sources},
    }
    return json.dumps(answer, ensure_ascii=False, indent=2)


def _text(result: Result) -> str:
    from tabulate import tabulate

    heads = list(dict.fromkeys(key for row in result.rows for key in row))
    columns = [
        [head.replace("_", " "), *(_cell(row.get(head), _places(head, result)) for row in result.rows)]
        for head in heads
    ]
    # few, wide rows are easier to read as columns
    across = columns if len(result.rows) <= FEW_ROWS < len(heads) else list(zip(*columns, strict=True))
    printed = tabulate(across[1:], headers=across[0], disable_numparse=True)
    return f"{spell(result.title)}\n\n{printed}\n\n{formula_of(result.worked)}"


def _said(cell: Cell) -> Cell:
    return spell(cell) if isinstance(cell, Saying) else cell


def _places(head: str, result: Result) -> int | None:
    """The decimals of a column of money; None for any other."""
    return result.places if head.endswith("_money") else None


def _cell(cell: Cell, places: int | None = None) -> str:
    cell = _said(cell)
    if places is not None and isinstance(cell, float):
        return f"{cell:.{places}f}"
    if cell is None:
        return "none"
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    return f"{cell:g}" if isinstance(cell, float) else str(cell)
