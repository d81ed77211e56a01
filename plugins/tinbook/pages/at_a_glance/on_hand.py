"""What fits the house's tins: every mixture baked in tins, and which of the house's tins take it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.models import Book
from tinbook.pages.base.icons import icon
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked, WorkedView, plural, tin_count, tin_name, worked_view
from tinbook.pages.base.sheets import ListSheet, sheets_of
from tinbook.pages.spelling import formats
from tinbook.plans.mixtures.on_hand import (
    AS_WRITTEN,
    NEARLY,
    NO_TIN,
    RESIZED,
    HandTable,
    OnHand,
    TinChoice,
    by_verdict,
    hand_table,
)

ADDRESS, TITLE = "on-hand", "What fits our tins"
ROWS = 100
"""How many mixtures a page holds; each weighs up to 1.2 kB."""
NAMED = 30
"""More mixtures than this that need no tin are counted, not named."""
VERDICT = {AS_WRITTEN: "as in the recipe", NEARLY: "nearly", RESIZED: "another size"}
"""Words for one choice."""
COUNTED = {AS_WRITTEN: "as in the recipe", NEARLY: "nearly", RESIZED: "at another size", NO_TIN: "fit none of them"}
"""Words for a number of mixtures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceLine:
    """A choice, spelled: the tins drawn and named, the factor, the eggs, the bakes, and what to call it."""

    icons: tuple[Markup, ...]
    tins: str
    factor: str
    eggs: str
    bakes: str
    verdict: str
    best: bool


@dataclass(frozen=True, slots=True)
class HandLine:
    """A mixture and its choices."""

    address: str
    name: str
    written: str
    choices: tuple[ChoiceLine, ...]

    @property
    def rows(self) -> int:
        """How many rows its head spans."""
        return max(1, len(self.choices))


@dataclass(frozen=True, slots=True)
class HandPart:
    """The lines of one page."""

    lines: tuple[HandLine, ...]


@dataclass(frozen=True)
class OnHandView:
    """Everything the page says, and what of the table each of its `sheets` has."""

    desk: Desk
    sheets: tuple[ListSheet, ...] = ()

    @cached_property
    def table(self) -> HandTable:
        """The sums."""
        return hand_table(self.desk.book, self.desk.facts, self.desk.batches)

    @property
    def lead(self) -> str:
        """How much of the book can be baked in the tins."""
        counts = by_verdict(self.table)
        shares = formats.sentence(f"{count} {COUNTED[verdict]}" for verdict, count in counts.items() if count)
        mixtures = plural(len(self.table.rows), "mixture")
        return f"{mixtures} for our {plural(self.table.owned, 'tin')}: {shares}."

    @property
    def near(self) -> str:
        """How near "nearly" is."""
        return formats.percent(self.table.near_percent)

    @cached_property
    def items(self) -> tuple[HandPart, ...]:
        """A line for each mixture, on each of the sheets."""
        rows = self.table.rows
        lots = [rows[sheet.first : sheet.end] for sheet in self.sheets] or [rows]
        return tuple(HandPart(tuple(map(_line, lot))) for lot in lots)

    @property
    def tinless(self) -> tuple[Linked, ...]:
        """Mixtures that need no tin, unless they are many."""
        tinless = self.table.tinless if len(self.table.tinless) <= NAMED else ()
        return tuple(Linked(f"mixtures/{batch.slug}", batch.mixture.name) for batch in tinless)

    @property
    def others(self) -> str:
        """How many that is; "" if they are named, or there are none."""
        count = len(self.table.tinless)
        return plural(count, "mixture") if count > NAMED else ""

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.table.worked,), self.desk.facts)


def _line(row: OnHand) -> HandLine:
    batch = row.batch
    written = ", ".join(tin_count(count, tin) for count, tin in batch.tins)
    lines = tuple(_choice(row, choice, best=choice is row.choices[0]) for choice in row.choices)
    return HandLine(f"mixtures/{batch.slug}", batch.mixture.name, written, lines)


def _choice(row: OnHand, choice: TinChoice, best: bool) -> ChoiceLine:
    tins = choice.of_set or ", ".join(tin_name(count, tin) for count, tin in choice.tins)
    eggs = [
        formats.with_unit(formats.number(amount.shown), "g") if amount.unit else formats.measure(amount.shown, "")
        for line, amount in zip(row.batch.ingredients, choice.version.amounts, strict=True)
        if line.whole_egg
    ]
    return ChoiceLine(
        icons=tuple(icon(tin) for _, tin in choice.tins),
        tins=formats.tin_words(tins),
        factor=formats.fixed(choice.factor_shown, 2),
        eggs=" + ".join(eggs) or "none",
        bakes=plural(choice.bakes, "load"),
        verdict=VERDICT[choice.verdict],
        best=best,
    )


def shows_on_hand(book: Book) -> bool:
    """Whether the house has any tins and bakes in them."""
    return any(own.have for own in book.tins) and any(mixture.tins for mixture in book.mixtures.values())


def on_hand_pages(desk: Desk) -> Iterator[Page]:
    """The page, or its sheets, where there is something to say."""
    if shows_on_hand(desk.book):
        sheets = sheets_of(ADDRESS, sum(bool(mixture.tins) for mixture in desk.book.mixtures.values()), ROWS)
        view = OnHandView(desk, sheets)
        whole = Page(address=ADDRESS, title=TITLE, template="on_hand", view=view, section=("Tins", TITLE))
        yield from whole.in_sheets(sheets)
