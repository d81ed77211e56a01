"""`tinbook check`: every problem in every file, then one exit code."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import click

from tinbook.cli.checked import Checked, Told, digest_of_book, keep_checked, last_checked


@click.command()
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def check(book: Path, form: str) -> None:
    """Check the whole book and list every mistake, where it is and how to fix it.

    The exit code is 0 if the book is fine, 1 if something needs fixing.
    """
    digest = digest_of_book(book)
    checked = last_checked(book, digest)
    if checked is None:
        checked = _checked(book)
        keep_checked(book, digest, checked)
    if form == "json":
        click.echo(json.dumps([each.plain for each in checked.told], ensure_ascii=False, indent=2))
    else:
        for each in checked.told:
            click.echo(each.text + "\n")
        click.echo(_summary(checked))
    if any(each.stops for each in checked.told):
        raise SystemExit(1)


def _checked(book: Path) -> Checked:
    from tinbook.loading import load_book  # a book that was checked before is answered without it
    from tinbook.loading.unsure import UNSURE
    from tinbook.problems import as_dict, spell

    loaded = load_book(book.resolve() / "recipes", today=date.today())
    told = tuple(
        Told(spell(problem), as_dict(problem), problem.severity == "error", problem.code == UNSURE)
        for problem in loaded.problems
    )
    found = loaded.book
    return Checked(told, len(found.mixtures), len(found.techniques), len(found.cakes))


def _summary(checked: Checked) -> str:
    faults = sum(each.stops for each in checked.told)
    unsure = sum(each.unsure for each in checked.told)
    fine = f"{_all_of(checked)} are fine"
    left = f"; {unsure} still unsure" if unsure else ""
    return f"{faults} to fix{left}; {fine}." if faults else f"Nothing to fix{left}; {fine}."


def _all_of(checked: Checked) -> str:
    """`24 mixtures and 17 techniques`; the cakes too, where there are any."""
    told = [_many(checked.mixtures, "mixture"), _many(checked.techniques, "technique")]
    if checked.cakes:
        told.append(_many(checked.cakes, "cake"))
    *first, last = told
    return f"{', '.join(first)} and {last}"


def _many(count: int, word: str) -> str:
    """`1 technique`, `24 mixtures`."""
    return f"{count} {word}{'' if count == 1 else 's'}"
