"""The rows of a mixture's large tables, spelled.

A large book has forty thousand of them and half a million cells, so a row is put together here: a template takes five
times as long. The closing tags that HTML allows one to leave out are left out: they would be a tenth of a page.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from functools import lru_cache, partial
from itertools import repeat
from typing import NamedTuple, TypeVar

from markupsafe import Markup, escape

from tinbook.pages.base.shared import plural
from tinbook.pages.spelling import formats
from tinbook.plans.base.scaling import TinRow
from tinbook.plans.base.versions import WIDE_TINS, Version
from tinbook.plans.base.weighing import Batch, Ingredient
from tinbook.tins import Tin
from tinbook.tins.trade import called_mm

R = TypeVar("R")

CELL, ROW = "\x1f", "\x1e"
"""Separate cells and rows until all are escaped; no text of a book contains them."""
FIRST = " class=tb-first"


class TableRow(NamedTuple):
    """A row: its head and its cells. `first` opens a new group, such as a shape.

    The browser works a row out by its `factor`, and by the width of its tin where that changes anything: see
    `asked_mm`. A row without a factor stays as it is.
    """

    head: Markup
    cells: tuple[str, ...]
    first: bool
    factor: float | None = None
    width_mm: float = 0.0

    @property
    def mark(self) -> str:
        """Factor and width as attributes."""
        width = f" data-width={self.width_mm:g}" if self.width_mm else ""
        return "" if self.factor is None else f" data-factor={self.factor:.13g}{width}"


def table_rows(lines: Iterable[TableRow]) -> Markup:
    """The rows as HTML."""
    lines = list(lines)
    cells = _escaped([CELL.join(line.cells) for line in lines]) if lines else []
    return Markup(
        "\n".join(
            [
                f"<tr{line.mark}{FIRST if line.first else ''}>{line.head}<td>{texts.replace(CELL, '<td>')}"
                for line, texts in zip(lines, cells, strict=True)
            ]
        )
    )


class Short(NamedTuple):
    """A row of a table that no script touches: its head, its cells, whether it opens a group."""

    head: Markup
    cells: tuple[str, ...]
    first: bool


def asked_mm(batch: Batch, tin: Tin) -> float:
    """How wide a tin is, if so wide that it changes how much raising agent goes into the mixture; otherwise 0."""
    width_mm = tin.bounds_mm[0]
    return width_mm if width_mm > WIDE_TINS[0][0] and any(line.raises for line in batch.ingredients) else 0.0


@lru_cache(maxsize=4096)
def short_head(tin: Tin) -> Markup:
    """The head of a tin's row with only its name."""
    return Markup("<th scope=row>{}").format(formats.tin_words(tin.name))


def short_rows(rows: Iterable[Short], main: Collection[int] = ()) -> Markup:
    """The rows as HTML; `main` are the columns the table is read for."""
    rows = list(rows)
    cells = _escaped([CELL.join(row.cells) for row in rows]) if rows else []
    return Markup(
        "\n".join(
            [
                f"<tr{FIRST if row.first else ''}>{row.head}{_short_cells(texts.split(CELL), main)}"
                for row, texts in zip(rows, cells, strict=True)
            ]
        )
    )


def _short_cells(cells: list[str], main: Collection[int]) -> str:
    return "".join(
        [f"<td class=tb-main>{text}" if index in main else f"<td>{text}" for index, text in enumerate(cells)]
    )


def grouped(rows: Iterable[tuple[Tin, bool, tuple[str, ...]]]) -> Iterator[Short]:
    """Rows of tins, grouped by shape. Whether they are lent is marked once for all of them: `HouseRows`."""
    shape = ""
    for tin, _, cells in rows:
        yield Short(short_head(tin), cells, tin.shape != shape)
        shape = tin.shape


class HouseRows(NamedTuple):
    """Rows of tins: those the house owns, and the `others`, that many, for the fold below. `lent`: it owns none, and
    its rows are all those of others. `main`: the columns the table is read for, after the tin's."""

    own: Markup
    rest: Markup
    others: int
    lent: bool
    main: tuple[int, ...] = ()

    @property
    def own_styles(self) -> str:
        """What the first body of rows is, as classes: said once, not in every cell and head."""
        return " ".join((*self._main, *(["tb-lent"] if self.lent else [])))

    @property
    def rest_styles(self) -> str:
        """The same of the rest."""
        return " ".join((*self._main, "tb-lent"))

    @property
    def _main(self) -> list[str]:
        return [f"tb-main-{column + 1}" for column in self.main]


def house_first(rows: Iterable[tuple[Tin, bool, tuple[str, ...]]], main: tuple[int, ...] = ()) -> HouseRows:
    """The rows of the house's own tins, and the rest; if it owns none of them, all."""
    own, rest = owned_and_rest(rows, lambda row: row[1])
    lent = not any(row[1] for row in own)
    return HouseRows(
        own=short_rows(grouped(own)), rest=short_rows(grouped(rest)), others=len(rest), lent=lent, main=main
    )


def owned_and_rest(rows: Iterable[R], is_owned: Callable[[R], bool]) -> tuple[list[R], list[R]]:
    """What belongs to the house's own tins, and the rest; if there is nothing of its own, all of it."""
    rows = list(rows)
    own = [row for row in rows if is_owned(row)]
    return (own, [row for row in rows if not is_owned(row)]) if own else (rows, [])


def _escaped(texts: list[str]) -> list[str]:
    """Many texts escaped in one go."""
    return str(escape(ROW.join(texts))).split(ROW)


def plain_head(name: str) -> Markup:
    """The head of a row that is not a tin."""
    return Markup(f'<th scope="row">{escape(name)}</th>')


@lru_cache(maxsize=4096)
def tin_head(tin: Tin, said: str = "") -> Markup:
    """The head of a tin's row: its name, in inches too, or how many to a tray; what is `said` is always second."""
    inches = f"tray of {tin.holes}" if tin.kind.in_trays else tin.size_label_in
    small = Markup("<small>{}</small>")
    below = small.format(formats.tin_words(inches)) if inches or said else Markup()
    return Markup("<th scope=row>{} {}{}").format(
        formats.tin_words(tin.name), below, small.format(said) if said else Markup()
    )


def how_head(row: TinRow) -> Markup:
    """The head of a tin's row with its name, and anything unusual about it."""
    said = _out_of_the_common(row)
    return short_head(row.tin) + (Markup("<small>{}</small>").format(said) if said else "")


def whole_lines(batch: Batch, rows: Sequence[TinRow], times: Sequence[tuple[str, ...]] = ()) -> Iterator[TableRow]:
    """The whole-egg version, one line for each tin; egg that is beaten and weighed has its unit. `times` come before
    the rest."""
    snapped = next((row.whole for row in rows if not row.beaten), None)
    whole = spelled(batch, snapped) if snapped else []
    weighed = list(dict.fromkeys(row.whole.at for row in rows if row.beaten))
    beaten = dict(zip(weighed, spelled(batch, rows[0].exact, weighed), strict=True))
    shape = ""
    for row, time in zip(rows, times or repeat((), len(rows)), strict=True):
        cells = (*(beaten if row.beaten else whole)[row.whole.at], *time, *_tail(row))
        head = tin_head(row.tin, _out_of_the_common(row))
        yield _tin_row(batch, row, head, cells, shape, row.whole.factor)
        shape = row.tin.shape


def _out_of_the_common(row: TinRow) -> str:
    """`2 mixes, fill 3, 2 bakes`; the bench says why once the tin is chosen. Empty where it is one of each."""
    fit = row.fit
    words = (
        plural(row.mixes, "mix", "mixes") if row.mixes > 1 else "",
        f"fill {fit.needed} tins" if fit.needed > fit.count else "",
        plural(fit.bakes, "load") if fit.bakes > 1 else "",
        "" if fit.bakes else "wider than the shelf",
    )
    return ", ".join(word for word in words if word)


def exact_lines(batch: Batch, rows: Sequence[TinRow]) -> Iterator[TableRow]:
    """The exact version, one line for each tin, all eggs by weight."""
    columns = rows[0].exact.columns
    figures = list(zip(*(map(formats.measure, column.shown, column.units) for column in columns), strict=True))
    shape = ""
    for row in rows:
        cells = (*figures[row.exact.at], formats.fixed(row.exact.factor_shown, 2))
        yield _tin_row(batch, row, tin_head(row.tin), cells, shape, row.exact.factor)
        shape = row.tin.shape


def _tin_row(batch: Batch, row: TinRow, head: Markup, cells: tuple[str, ...], shape: str, factor: float) -> TableRow:
    first, width_mm = row.tin.shape != shape, asked_mm(batch, row.tin)
    return TableRow(head=head, cells=cells, first=first, factor=factor, width_mm=width_mm)


def spelled(batch: Batch, version: Version, beaten: Sequence[int] | None = None) -> list[tuple[str, ...]]:
    """The amounts of `version` and of all versions worked out alongside it, one row each, under heads that name each
    line's unit; any other unit is given. With `beaten` eggs, only these rows."""
    columns = []
    for line, column in zip(batch.ingredients, version.columns, strict=True):
        shown, units = column.shown, column.units
        if beaten is not None:
            shown, units = [shown[row] for row in beaten], [units[row] for row in beaten]
        figures = map(formats.measure, shown, units)
        if set(units) - {line.unit}:
            figures = map(partial(_figure, line), shown, units)
        columns.append(list(figures))
    return list(zip(*columns, strict=True))


def _figure(line: Ingredient, shown: float, unit: str) -> str:
    figure = formats.measure(shown, unit)
    if unit == line.unit:
        return figure
    return formats.with_unit(figure, unit)


def _tail(row: TinRow) -> tuple[str, ...]:
    """The columns after the ingredients."""
    least = row.fit.least_mm
    return (
        formats.number(row.fit.each_shown_g),
        formats.number(called_mm(least, row.tin.sold) / 10)
        if least
        else ("as supplied" if row.tin.kind.in_trays else "not a stock size"),
        formats.fixed(row.whole.factor_shown, 2),
        "exact" if row.beaten else formats.signed(row.whole.off_percent),
    )
