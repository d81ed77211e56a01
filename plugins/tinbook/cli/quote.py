"""`tinbook quote ORDER`: what, when and for how much, for whoever asked."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path

import click

from tinbook.cli.command import MOMENTS, recipes_of
from tinbook.cli.template import free
from tinbook.cli.writing import put
from tinbook.loading import Loaded, load_book
from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk
from tinbook.pages.money.quote import in_any_letters, quote_text
from tinbook.pages.money.quote import quote as quoted
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.of_orders import order_money
from tinbook.plans.money.till import till_of
from tinbook.problems import nearest, spell

FIRST = ("/orders/", "/money.yaml", "/prices", "/kitchen.yaml", "/supplies.yaml")
"""What must be right before a price is worth anything."""


@click.command()
@click.argument("handle", metavar="ORDER")
@click.option("--pdf", is_flag=True, help="Write it as a PDF instead of printing it.")
@click.option("-o", "--output", type=click.Path(path_type=Path), metavar="FILE", help="What to call the PDF.")
@click.option("--force", is_flag=True, help="Write over a file that is there.")
@click.option("--today", type=click.DateTime(MOMENTS), metavar="DATE", help="Make it out as of another day.")
@click.pass_obj
def quote(book: Path, handle: str, pdf: bool, output: Path | None, force: bool, today: datetime | None) -> None:
    """Make out a quote for ORDER, by its handle or its file: no costs and no hours are in it."""
    now = today or datetime.now()
    loaded = load_book(recipes_of(book), today=now.date())
    _sound(loaded)
    slug, order = _order(handle, loaded)
    desk = Desk(loaded.book, loaded.facts, loaded.broken, now)
    till = till_of(loaded.book, loaded.facts, desk.bakes)
    try:
        money = order_money(slug, order, till)
        if money is None:
            raise AskError(f'"{order.handle}" cannot be made as it is ordered', 'run "tinbook check" to see why')
        found = quoted(money, till, desk, now.date())
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    if not pdf:
        if output or force:
            raise click.ClickException("--output and --force go with --pdf: without it the quote is printed here")
        for line in quote_text(found):
            click.echo(line.replace("\u00a0", " "))
        return
    from tinbook.press import quote_pdf

    path = output or Path(f"quote-{slug}.pdf")
    if path.suffix.lower() != ".pdf":
        raise click.ClickException(f'"{path}" does not end in .pdf')
    free([path], force)
    put({path: quote_pdf(found, in_any_letters(order, till, now.date()))})
    click.echo(f"Wrote {path}.")


def _sound(loaded: Loaded) -> None:
    """A mistake in what a price is worked out from is told first."""
    wrong = [each for each in loaded.errors if any(part in each.place.file for part in FIRST)]
    for problem in wrong:
        click.echo(spell(problem) + "\n", err=True)
    if wrong:
        raise click.ClickException("put these right first: without them a price would not be what it should be")


def _order(handle: str, loaded: Loaded) -> tuple[str, Order]:
    orders: Mapping[str, Order] = loaded.book.others["order"]
    names = {name.lower(): slug for slug, order in orders.items() for name in (slug, order.handle)}
    slug = names.get(handle.lower().strip())
    if slug is None:
        close = nearest(handle.strip(), names)
        hint = f'did you mean "{close}"?' if close else "the book has " + (", ".join(sorted(orders)) or "none")
        raise click.ClickException(f'there is no order "{handle.strip()}": {hint}')
    if not orders[slug].open:
        raise click.ClickException(f'"{orders[slug].handle}" is {orders[slug].state}: there is nothing to quote for')
    return slug, orders[slug]
