"""`tinbook check`: every problem of every file, then one exit code."""

from __future__ import annotations

import json
from pathlib import Path

import click

from tinbook.loading import load_book
from tinbook.loading.unsure import UNSURE
from tinbook.models import Book
from tinbook.problems import as_dict, spell


@click.command()
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def check(book: Path, form: str) -> None:
    """Check the whole book and list every mistake, where it is and how to fix it.

    The exit code is 0 if the book is fine, 1 if something needs fixing.
    """
    loaded = load_book(book.resolve() / "recipes")
    if form == "json":
        click.echo(json.dumps([as_dict(problem) for problem in loaded.problems], ensure_ascii=False, indent=2))
    else:
        for problem in loaded.problems:
            click.echo(spell(problem) + "\n")
        faults = len(loaded.errors)
        fine = f"{_all_of(loaded.book)} are fine"
        unsure = sum(problem.code == UNSURE for problem in loaded.problems)
        left = f"; {unsure} still unsure" if unsure else ""
        click.echo(f"{faults} to fix{left}; {fine}." if faults else f"Nothing to fix{left}; {fine}.")
    if loaded.errors:
        raise SystemExit(1)


def _all_of(book: Book) -> str:
    """`24 mixtures and 17 techniques`; the cakes too, where there are any."""
    told = [_many(len(book.mixtures), "mixture"), _many(len(book.techniques), "technique")]
    if book.cakes:
        told.append(_many(len(book.cakes), "cake"))
    *first, last = told
    return f"{', '.join(first)} and {last}"


def _many(count: int, word: str) -> str:
    """`1 technique`, `24 mixtures`."""
    return f"{count} {word}{'' if count == 1 else 's'}"
