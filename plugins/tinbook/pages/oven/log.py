"""What was baked: the newest bakes on the oven's own page, older ones on pages behind it."""

from __future__ import annotations

from collections.abc import Iterable

from markupsafe import Markup

from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import Short, short_rows
from tinbook.pages.base.shared import tin_name
from tinbook.pages.base.sheets import ListSheet, sheets_of
from tinbook.pages.mixture.baking import span
from tinbook.pages.oven.tables import kept_dial
from tinbook.pages.spelling import formats
from tinbook.plans.baking.oven import LoggedBake, logged_count

NEWEST, OLDER = 100, 200
"""How many bakes the oven's page holds, and each page behind it."""
number = formats.number


def log_sheets(desk: Desk, address: str) -> tuple[ListSheet, ...]:
    """The sheets of a log too long for the page at `address`."""
    if len(desk.book.bakes) <= NEWEST:
        return ()
    return sheets_of(address, logged_count(desk.batches, desk.bakes, desk.book), NEWEST, OLDER)


def log_rows(log: Iterable[LoggedBake]) -> Markup:
    """Bakes as rows."""
    return short_rows([_bake_row(bake) for bake in log], (3,))


def _bake_row(bake: LoggedBake) -> Short:
    entry = bake.entry
    head = Markup("<th scope=row>{}<small>{}</small>").format(entry.day.isoformat(), bake.batch.mixture.name)
    name = tin_name(1, bake.tin) if bake.tin.holes == 1 else bake.tin.name
    row_cells = (
        formats.tin_words(name.removeprefix("1 × ")), number(round(bake.depth_mm)), kept_dial(entry.oven.written),
        number(entry.done_after), number(round(bake.expected.likely_min)), span(bake.expected),
        formats.celsius(entry.centre) if entry.centre else "not read", entry.note or "none",
    )  # fmt: skip
    return Short(head, row_cells, False)
