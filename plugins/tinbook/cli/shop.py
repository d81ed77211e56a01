"""`tinbook shop`: what to buy for the orders that are agreed, less what is at home."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import BinaryIO

import click

from tinbook.cli.baskets import take_bought
from tinbook.cli.command import MOMENTS, recipes_of
from tinbook.loading import Loaded, load_book
from tinbook.models.orders import Order
from tinbook.pages.orders.shop_text import shop_data, shop_text, stock_lines
from tinbook.plans.shopping.asked import of_week, shopping
from tinbook.problems import nearest, spell

FIRST = ("/orders/", "/kitchen.yaml", "/supplies.yaml", "/stock")
"""What must be right before a list is worth anything."""


@click.command()
@click.option("--orders", "handles", metavar="H,H", help="Only for these orders, by their handles or their files.")
@click.option(
    "--week",
    type=click.DateTime(MOMENTS[:1]),
    metavar="DATE",
    help="Only for what goes out in the seven days from DATE.",
)
@click.option("--today", type=click.DateTime(MOMENTS), metavar="DATE", help="Make the list as of another day.")
@click.option(
    "--done", type=click.File("rb"), metavar="FILE", help="Add what was ticked in the shop to house/stock.yaml."
)
@click.option("--stock", "shows_stock", is_flag=True, help="Show as well how what is at home came about.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def shop(
    book: Path,
    handles: str | None,
    week: datetime | None,
    today: datetime | None,
    done: BinaryIO | None,
    shows_stock: bool,
    form: str,
) -> None:
    """List what to buy for the orders that are agreed, in packs, less what is at home, by where it is found."""
    if handles is not None and week is not None:
        raise click.ClickException("give either --orders or --week")
    day = (today or datetime.now()).date()
    if done:
        take_bought(done.read(), recipes_of(book), day)
    loaded = load_book(recipes_of(book), today=day)
    _sound(loaded)
    chosen = None
    if week is not None:
        chosen = of_week(loaded.book, week.date(), day)
    elif handles is not None:
        ahead = {
            slug: order
            for slug, order in loaded.book.others["order"].items()
            if order.open and order.hand_over.date() >= day
        }
        chosen = tuple(_slug(handle, ahead) for handle in handles.split(","))
    found = shopping(loaded.book, loaded.facts, day, chosen)
    if form == "json":
        click.echo(json.dumps(shop_data(found), ensure_ascii=False, indent=2))
        return
    for line in shop_text(found):
        click.echo(line)
    for line in stock_lines(found) if shows_stock else ():
        click.echo(line)


def _sound(loaded: Loaded) -> None:
    """A mistake in an order or in the stock is told first: a list without it would look complete."""
    wrong = [each for each in loaded.errors if any(part in each.place.file for part in FIRST)]
    for problem in wrong:
        click.echo(spell(problem) + "\n", err=True)
    if wrong:
        raise click.ClickException("put these right first: without them the list would not be what you need")


def _slug(handle: str, orders: Mapping[str, Order]) -> str:
    names = {name.lower(): slug for slug, order in orders.items() for name in (slug, order.handle)}
    found = names.get(handle.lower().strip())
    if found is None:
        close = nearest(handle.strip(), names)
        hint = f'did you mean "{close}"?' if close else "the open ones are " + (", ".join(sorted(orders)) or "none")
        raise click.ClickException(f'there is no open order "{handle.strip()}": {hint}')
    return found
