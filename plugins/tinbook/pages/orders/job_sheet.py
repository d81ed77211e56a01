"""An order's job sheet: its cake's sheet with the order's days, notes and card; its days alone if it has no cake."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.goes_along import cut_said, keeps_said
from tinbook.pages.cake.sheet import CakeSheet, JobDay, JobPart, sheet_of_made
from tinbook.pages.cake.view import CakeView
from tinbook.pages.orders.order_view import OrderView
from tinbook.pages.orders.pack import ClassPack
from tinbook.pages.orders.week import DayLines, KitchenWeek, OrderLine
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.orders import lasts
from tinbook.pages.technique.sheet_file import Dress, dressed


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysSheet:
    """The sheet of an order without a cake: its days, what is made by weight, and a class's pack."""

    house: str
    name: str
    about: str
    job: JobPart
    tubs: tuple[str, ...]
    pack: ClassPack | None

    @property
    def ticked_as(self) -> str:
        """What its ticks are kept under."""
        return f"orders/{self.job.handle}"


def job_sheets(line: OrderLine, week: KitchenWeek, desk: Desk) -> tuple[CakeSheet | DaysSheet, ...]:
    """The sheets of an order: one for each of its cakes, or one of its days alone. The days are on the first."""
    view = OrderView(line=line, items=week.of_order(line.slug), pushes=(), is_late=(), desk=desk)
    cakes = view.cakes
    if not cakes:
        days = tuple(map(_day, view.items))
        return (
            DaysSheet(
                house=desk.book.house.name, name=line.handle, about=line.what, job=_job(view, days),
                tubs=tuple(each.name for each in view.tubs), pack=view.pack,
            ),
        )  # fmt: skip
    sheets = []
    for nth, each in enumerate(cakes):
        cake = CakeView(slug=each.made.cake.slug, desk=each.made.desk)
        days = tuple(map(_day, view.items)) if nth == 0 else ()
        sheets.append(sheet_of_made(cake, each.made, _job(view, days, keeps_said(cake), cut_said(cake, each.made))))
    return tuple(sheets)


def _job(view: OrderView, days: tuple[JobDay, ...], keeps: str = "", cut: str = "") -> JobPart:
    order = view.order
    how = f", delivered: {lasts(order.delivered)} drive" if order.delivered else ", collected"
    guests = f", for {order.guests} guests" if order.guests else ""
    return JobPart(
        handle=view.line.handle,
        out=f"{view.line.when}{'' if order.class_ else how}{guests}",
        free_from=tuple(
            f"Must be free from {each.word}: {each.verdict}{f' ({each.found})' if each.found else ''}."
            for each in view.free_from
        ),
        notes=order.notes,
        days=days,
        keeps=keeps,
        cut=cut,
    )


def _day(of: DayLines) -> JobDay:
    return JobDay(of.name, tuple((line.clock, line.takes, formats.title(line.words)) for line in of.lines))


def days_sheet_page(sheet: DaysSheet, dress: Dress) -> str:
    """A sheet of days as one self-contained web page."""
    return dressed("sheet/days.html", sheet, dress)
