"""The oven: what to set its dial to, other ways to bake, what each bake takes, and what came out of it.

In a large book the tables with a row for each mixture are on a page for each kind, and older bakes on further pages.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import SourceLine, WorkedView, plural, source_anchor, worked_view
from tinbook.pages.base.sheets import ListSheet
from tinbook.pages.oven.kinds import KindLine, kind_lines, kind_pages
from tinbook.pages.oven.log import NEWEST, log_rows, log_sheets
from tinbook.pages.oven.tables import kept_dial, loads_grid, ways_grid
from tinbook.pages.spelling import formats
from tinbook.plans.baking.oven import LoggedBake, bakes, dial_worked, dials, log_worked, logged_count
from tinbook.plans.baking.times import Baking, baking_worked

ADDRESS, TITLE = "oven", "Oven"
KINDS = {"conventional": "a conventional oven", "fan": "a fan oven", "gas": "a gas oven"}
number = formats.number


@dataclass(frozen=True)
class OvenView:
    """Everything the page says. `items` are its tables, in the order of the page."""

    desk: Desk

    @property
    def lead(self) -> str:
        """Which oven it is, and how far out its dial is."""
        own = self.desk.book.house.oven
        if own.dial is None or own.thermometer is None:
            return (
                f"We have {KINDS[own.kind]}. Nobody has checked it with a thermometer yet, so it is assumed to match "
                "its dial."
            )
        off = own.off_c
        how = (
            f"{formats.celsius(abs(off))} {'hotter' if off > 0 else 'cooler'} than its dial"
            if off
            else "as its dial says"
        )
        set_to = f"Set to {own.dial.written}, it reaches {formats.celsius(own.thermometer)}"
        return f"We have {KINDS[own.kind]}. {set_to}: {how}."

    @property
    def room(self) -> str:
        """What fits in it at once, and what the mixer holds."""
        house = self.desk.book.house
        parts = []
        if house.oven_shelf:
            wide, deep = house.oven_shelf
            parts.append(
                f"{plural(house.shelves, 'shelf', 'shelves')} of {number(wide / 10)} × {formats.centimetres(deep)}"
            )
        if house.mixer_bowl:
            parts.append(f"a mixer bowl that takes {formats.grams(house.mixer_bowl)}")
        return (
            f"Equipment: {formats.sentence(parts)}."
            if parts
            else "No size is given for the shelf or the mixer bowl, so nothing is split into loads or mixes."
        )

    @property
    def centre(self) -> str:
        """How warm the middle is when done: `97 °C (93 to 99)`."""
        done = self.desk.facts.numbers["centre when done"]
        return f"{formats.celsius(done.value)} ({number(done.low or done.value)} to {number(done.high or done.value)})"

    @cached_property
    def known(self) -> tuple[Baking, ...]:
        """What is known about each mixture baked in tins."""
        bakings = [self.desk.bakes.of(batch) for batch in self.desk.batches.values() if batch.tins]
        return tuple(baking for baking in bakings if baking is not None)

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """Dials; and ways and loads, if they are here."""
        if not self.here:
            return (self._dials(),)
        return self._dials(), ways_grid(self.desk, self.known), loads_grid(self.desk, self.known)

    @property
    def here(self) -> bool:
        """Whether the tables with a row for each mixture are on this page."""
        return bool(self.known) and not self.kinds

    @cached_property
    def kinds(self) -> tuple[KindLine, ...]:
        """The pages where they are otherwise."""
        return kind_lines(self.desk)

    def _dials(self) -> Grid:
        rows = tuple(
            GridRow(
                head=number(row.conventional_c),
                cells=(Cell(kept_dial(shown), True), *cells(number(row.fan_c), number(row.fahrenheit_f), row.gas_mark)),
            )
            for row, shown in dials(self.desk.book, self.desk.facts)
        )
        heads = (
            Head("Recipe says", "°C"), Head("Set here"), Head("or, if it says fan", "°C"), Head("or says", "°F"),
            Head("or gas mark"),
        )  # fmt: skip
        worked = worked_view((dial_worked(self.desk.book, self.desk.facts),), self.desk.facts)
        return Grid(title="What to set on the dial", anchor="dial", heads=heads, rows=rows, worked=worked)

    @cached_property
    def log(self) -> list[LoggedBake]:
        """All bakes, newest first."""
        return bakes(self.desk.batches.values(), self.desk.bakes, self.desk.book)

    @property
    def logged(self) -> str:
        """How many bakes were learned from; "" for none."""
        count = logged_count(self.desk.batches, self.desk.bakes, self.desk.book)
        return plural(count, "bake") if count else ""

    @property
    def log_rows(self) -> Markup:
        """Rows of the newest."""
        return log_rows(self.log[:NEWEST])

    @property
    def sources(self) -> tuple[SourceLine, ...]:
        """What the times are based on before anything was baked."""
        keys = dict.fromkeys(key for known in self.known for key in baking_worked(known, self.desk.facts).sources)
        return tuple(SourceLine(source_anchor(key), self.desk.facts.sources[key].title) for key in keys)

    @property
    def worked(self) -> WorkedView:
        """How the log was worked out."""
        sources = dict.fromkeys(key for known in self.known for key in baking_worked(known, self.desk.facts).sources)
        return worked_view((log_worked(self.desk.book, tuple(sources)),), self.desk.facts)


@dataclass(frozen=True)
class OvenLogView:
    """All bakes, divided over `sheets`."""

    desk: Desk
    sheets: tuple[ListSheet, ...]

    @cached_property
    def _oven(self) -> OvenView:
        return OvenView(self.desk)

    @cached_property
    def items(self) -> tuple[Markup, ...]:
        """The rows of each sheet."""
        return tuple(log_rows(self._oven.log[sheet.first : sheet.end]) for sheet in self.sheets)

    @property
    def worked(self) -> WorkedView:
        """How they were worked out."""
        return self._oven.worked


def oven_pages(desk: Desk) -> Iterator[Page]:
    """The page of the oven, and of a large book those behind it."""
    sheets = log_sheets(desk, ADDRESS)
    first = sheets[0] if sheets else None
    yield Page(address=ADDRESS, title=TITLE, template="oven", view=OvenView(desk), section=("Oven",), sheet=first)
    yield from kind_pages(desk)
    view = OvenLogView(desk, sheets)
    log = Page(address=ADDRESS, title="What was baked", template="oven_log", view=view, listed=False)
    yield from (page for page in log.in_sheets(sheets) if page.part)
