"""`tinbook plan`: what to do on which day so that every order is ready in time."""

from __future__ import annotations

import json
from collections.abc import Mapping
from concurrent.futures import ProcessPoolExecutor
from datetime import date, datetime, timedelta
from multiprocessing import get_context
from pathlib import Path
from typing import BinaryIO

import click

from tinbook.cli.command import MOMENTS, recipes_of
from tinbook.cli.done import take_done
from tinbook.cli.writing import put
from tinbook.loading import Loaded, load_book
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.pages.orders.calendar import calendar_of
from tinbook.pages.orders.plan_text import plan_data, plan_lines, why_not
from tinbook.pages.spelling.orders import moment
from tinbook.plans.base.asking import AskError
from tinbook.plans.orders.asked import worked_order
from tinbook.plans.orders.planned import NoPlan, PlannedTask, Solve, WeekPlan, plan_of
from tinbook.plans.orders.solving import NoSolver, made_ready, solved
from tinbook.plans.orders.tight import tightest
from tinbook.plans.orders.week_work import WeekWork, week_work
from tinbook.problems import nearest, spell

WANTS = 'planning needs a library that reading recipes does not: run "pip install ortools holidays icalendar"'


@click.command()
@click.option("--week", type=click.DateTime(MOMENTS[:1]), metavar="DATE", help="Show only the seven days from DATE.")
@click.option("--order", "handle", metavar="HANDLE", help="Show only what is for one order, by its handle or its file.")
@click.option(
    "--today", type=click.DateTime(MOMENTS), metavar="DATE", help='Plan as of another day, such as "2026-12-03 09:00".'
)
@click.option("--ics", type=click.Path(path_type=Path), metavar="FILE", help="Write it as a calendar file as well.")
@click.option("--alarm", type=click.IntRange(0, 1440), metavar="MINUTES", help="With --ics: an alarm so long before.")
@click.option(
    "--done", type=click.File("rb"), metavar="FILE", help="Add what the tablet says is done to house/hours.yaml."
)
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def plan(
    book: Path,
    week: datetime | None,
    handle: str | None,
    today: datetime | None,
    ics: Path | None,
    alarm: int | None,
    done: BinaryIO | None,
    form: str,
) -> None:
    """Plan the work for every order that is asked for or agreed: what to do when, with one oven and two hands.

    An order that is only asked for is planned with the others, so that you see what it would push before you agree.
    """
    beside = ProcessPoolExecutor(1, mp_context=get_context("spawn"))
    beside.submit(made_ready)
    now = today or datetime.now()
    if done:
        take_done(done.read(), recipes_of(book), now)
    loaded = load_book(recipes_of(book), today=now.date(), pictures=False)
    orders = _orders(loaded, now)
    wanted = _wanted(handle, orders)
    kitchen: WorkingKitchen = loaded.book.others["kitchen"]
    work = _work(orders, loaded, kitchen)
    planned = _planned(work, kitchen, now, lambda week, effort: beside.submit(solved, week, effort).result())
    beside.shutdown(wait=False)
    shown = [each for each in planned.placed if _is_shown(each, week, wanted)]
    if ics is not None:
        handles = {order.slug: order.handle for order in work.orders}
        try:
            put({ics: calendar_of(shown, handles, kitchen.zone, now, alarm)})
        except ImportError:
            raise click.ClickException(WANTS) from None
    if form == "json":
        click.echo(json.dumps(plan_data(planned, shown, work.orders), ensure_ascii=False, indent=2))
    else:
        for line in plan_lines(planned, shown, work.orders):
            click.echo(line)
    if planned.late:
        raise SystemExit(1)


def _orders(loaded: Loaded, now: datetime) -> Mapping[str, Order]:
    """The open orders that are still to go out. A mistake in any of them is told first: a plan without it would look
    possible."""
    wrong = [
        each for each in loaded.errors if "/orders/" in each.place.file or each.place.file.endswith("/kitchen.yaml")
    ]
    for problem in wrong:
        click.echo(spell(problem) + "\n", err=True)
    if wrong:
        raise click.ClickException(
            "put these right first: a plan that leaves an order out would look better than it is"
        )
    orders: Mapping[str, Order] = loaded.book.others["order"]
    for order in orders.values():
        if order.open and order.hand_over < now:
            click.echo(f'"{order.handle}" was due {moment(order.hand_over)}: it is left out.', err=True)
    return {slug: order for slug, order in orders.items() if order.open and order.hand_over >= now}


def _wanted(handle: str | None, orders: Mapping[str, Order]) -> str | None:
    """The file of the order asked for."""
    if handle is None:
        return None
    names = {name.lower(): slug for slug, order in orders.items() for name in (slug, order.handle)}
    found = names.get(handle.lower().strip())
    if found is None:
        close = nearest(handle, names)
        hint = f'did you mean "{close}"?' if close else "the open ones are " + (", ".join(sorted(orders)) or "none")
        raise click.ClickException(f'there is no open order "{handle}": {hint}')
    return found


def _work(orders: Mapping[str, Order], loaded: Loaded, kitchen: WorkingKitchen) -> WeekWork:
    try:
        worked = [worked_order(slug, order, loaded.book, loaded.facts) for slug, order in orders.items()]
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    return week_work(worked, loaded.book, loaded.facts, kitchen)


def _planned(work: WeekWork, kitchen: WorkingKitchen, now: datetime, solve: Solve) -> WeekPlan:
    try:
        return plan_of(work, kitchen, now, solve=solve)
    except (NoSolver, ImportError):
        raise click.ClickException(WANTS) from None
    except NotImplementedError as error:
        raise click.ClickException(f"the public holidays of that place are not known: {error}") from None
    except NoPlan:
        raise click.ClickException(why_not(tightest(work))) from None


def _is_shown(placed: PlannedTask, week: datetime | None, wanted: str | None) -> bool:
    first: date | None = week.date() if week else None
    in_week = first is None or first <= placed.start.date() < first + timedelta(days=7)
    return in_week and (wanted is None or wanted in placed.task.orders)
