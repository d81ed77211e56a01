"""An order's sheet: what it is made of."""

from __future__ import annotations

from tests.pages.orders.conftest import CLASS, CUPS

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import CakeSheet
from tinbook.pages.orders.job_sheet import DaysSheet, job_sheets
from tinbook.pages.orders.week import KitchenWeek


def test_cups_have_their_cakes_sheet_with_the_orders_days(kitchen_desk: Desk, planned_week: KitchenWeek) -> None:
    line = next(each for each in planned_week.orders if each.slug == CUPS)
    (sheet,) = job_sheets(line, planned_week, kitchen_desk)
    assert isinstance(sheet, CakeSheet) and sheet.job is not None
    assert sheet.job.out == "Sat 12 Dec, 10:00, collected" and sheet.job.cut == "" and sheet.job.keeps
    assert [len(day.tasks) for day in sheet.job.days] == [len(day.lines) for day in planned_week.of_order(CUPS)]
    assert sheet.job.free_from[0] == "Must be free from sesame: not on any of its cards."
    assert sheet.address == "" and sheet.ticked_as == "orders/regatta club cups"


def test_a_class_has_a_sheet_of_days_with_its_pack(kitchen_desk: Desk, planned_week: KitchenWeek) -> None:
    line = next(each for each in planned_week.orders if each.slug == CLASS)
    (sheet,) = job_sheets(line, planned_week, kitchen_desk)
    assert isinstance(sheet, DaysSheet) and sheet.pack is not None and sheet.tubs == ()
    assert sheet.job.out == "Tue 8 Dec, 14:00" and sheet.ticked_as == "orders/rope class"
