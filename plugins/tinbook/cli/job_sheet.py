"""`tinbook sheet --order HANDLE`: the kitchen's own sheet of an order."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import click

from tinbook.cli.command import recipes_of
from tinbook.cli.template import free
from tinbook.loading import load_book
from tinbook.loading.files import slug_of
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import CakeSheet, cake_sheet_page
from tinbook.pages.orders.job_sheet import days_sheet_page, job_sheets
from tinbook.pages.orders.week import kitchen_week
from tinbook.pages.technique.sheet_file import Dress
from tinbook.press import cake_sheet_pdf, days_sheet_pdf
from tinbook.problems import nearest


def job_files(
    book: Path, handle: str, output: Path | None, pdf: bool, force: bool, dress: Dress, now: datetime
) -> dict[Path, bytes]:
    """The files to write for an order: one for each of its cakes, or one of its days. ClickException for an order that
    the book does not have, or that is no longer open."""
    loaded = load_book(recipes_of(book))
    desk = Desk(loaded.book, loaded.facts, loaded.broken, now)
    week = kitchen_week(desk, now)
    names = {
        name.lower(): line for line in (*week.past, *week.overdue, *week.orders) for name in (line.slug, line.handle)
    }
    line = names.get(handle.lower().strip())
    if line is None:
        if f"orders/{handle}" in loaded.broken or not loaded.book.others["order"]:
            raise click.ClickException(f'there is no sound order "{handle}": run "tinbook check" to see what to fix')
        close = nearest(handle, names)
        hint = (
            f'did you mean "{close}"?' if close else "the open ones are " + ", ".join(each.slug for each in week.orders)
        )
        raise click.ClickException(f'there is no order "{handle}": {hint}')
    if line in week.past:
        raise click.ClickException(f'"{line.handle}" is {line.state}: there is nothing left to do for it')
    for said in week.wrong:
        click.echo(said, err=True)
    page = output or Path(f"job-{line.slug}.html")
    if page.suffix.lower() not in (".html", ".htm"):
        raise click.ClickException(f'"{page}" does not end in .html; a PDF is written beside it with --pdf')
    files: dict[Path, bytes] = {}
    for nth, sheet in enumerate(job_sheets(line, week, desk)):
        path = page if nth == 0 else page.with_stem(f"{page.stem}-{slug_of(sheet.name)}-{nth + 1}")
        if isinstance(sheet, CakeSheet):
            files[path] = cake_sheet_page(sheet, dress).encode()
            files |= {path.with_suffix(".pdf"): cake_sheet_pdf(sheet)} if pdf else {}
        else:
            files[path] = days_sheet_page(sheet, dress).encode()
            files |= {path.with_suffix(".pdf"): days_sheet_pdf(sheet)} if pdf else {}
    free(list(files), force)
    return files
