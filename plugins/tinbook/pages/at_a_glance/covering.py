"""Covering at a glance: a cake from every tin, finished as the house finishes its cakes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.at_a_glance.boards import board_cell, narrow_marks
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, own_first
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import worked_view
from tinbook.pages.mixture.coats import bowl_words, cake_words, learned_words
from tinbook.pages.mixture.pastes import allows_more, packs_words, rolled
from tinbook.pages.spelling import formats
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.plans.finish.covered import CoveredRow, CoveredTable, covered_table
from tinbook.plans.finish.pasting import PasteRow

number = formats.number
ADDRESS, TITLE = "covering", "Covering at a glance"
NAMES = {"filling": "Filling", "crumb_coat": "Crumb coat", "final_coat": "Final coat"}


@dataclass(frozen=True, slots=True)
class Plays:
    """What one mixture of the house is on a cake, its page, and what the log says about it."""

    roles: str
    address: str
    name: str
    learned: str


@dataclass(frozen=True)
class CoveringView:
    """Everything the page says."""

    desk: Desk

    @cached_property
    def table(self) -> CoveredTable:
        """The sums."""
        return covered_table(usual_cakes(self.desk.book, self.desk.facts), self.desk.book, self.desk.facts)

    @property
    def lead(self) -> str:
        """For which cake."""
        settled = self.table.finishing
        piped = any(row.bag_g for line in self.table.rows[:1] for row in line.made)
        return f"For {cake_words(settled, self.table.cakes.usual_mm)}. {bowl_words(settled, piped)}".strip()

    @property
    def plays(self) -> tuple[Plays, ...]:
        """The mixtures the house finishes its cakes with."""
        by_slug: dict[str, list[str]] = {}
        for role, batch in self.table.roles.items():
            by_slug.setdefault(batch.slug, []).append(_role_words(role))
        roles_of = [(slug, formats.sentence(roles)) for slug, roles in by_slug.items()]
        if self.table.cover:
            roles_of.append((self.table.cover.slug, "cover"))
        return tuple(
            Plays(
                formats.title(roles),
                self.desk.page_of(slug),
                formats.title(self._named(slug)),
                learned_words(self.table.learned[slug]),
            )
            for slug, roles in roles_of
        )

    def _named(self, slug: str) -> str:
        mixture = self.desk.book.mixtures.get(slug)
        return mixture.name if mixture else slug

    @property
    def missing(self) -> str:
        """What the house has not named anything for."""
        missing = self.table.missing
        return formats.sentence(map(_role_words, missing)) if missing else ""

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """The one table."""
        return (
            Grid(
                title="A cake from each tin",
                anchor="every-cake",
                heads=self._heads(),
                rows=own_first(self._rows()),
                worked=worked_view((self.table.worked,), self.desk.facts),
                narrow="cakes",
                captions=(("kind", "Shape"), ("tag", "Tins")),
            ),
        )

    def _heads(self) -> tuple[Head, ...]:
        table = self.table
        coats = [Head(NAMES[role], "g") for role in table.roles]
        if "final_coat" in table.roles and table.finishing.border and "border" in table.roles["final_coat"].kind.plays:
            coats[-1] = Head(NAMES["final_coat"], "g, with border")
        several = len(table.mixtures) > 1
        in_all = [
            Head(f"{formats.title(batch.mixture.name)} in all" if several else "In all", "g")
            for batch in table.mixtures.values()
        ]
        paste = [Head("On the cake", "paste, g"), Head("To roll", "paste, g"), Head("Roll out to", "cm")]
        ends = [Head("Drum"), Head("Ribbon", "board, cm"), Head("Ribbon", "cake, cm")]
        return (Head("Tin"), *coats, *in_all, *(paste if table.cover else ()), *ends)

    def _rows(self) -> Iterator[GridRow]:
        for row in self.table.rows:
            tin = row.cake.tin
            yield GridRow(
                head=formats.tin_words(tin.name),
                cells=tuple(_cells(row, self.table)),
                note=formats.tin_words(tin.size_label_in),
                lent=not row.owned,
                marks=narrow_marks(tin, row.owned),
            )


def _cells(row: CoveredRow, table: CoveredTable) -> Iterator[Cell]:
    for role in table.roles:
        yield Cell(number(row.coat_g(table.place_of(role), role)[1]))
    for need in row.made:
        yield Cell(number(need.made_shown_g), True, f"{need.batches}{formats.NBSP}{_batches(need.batches)}")
    if row.paste:
        yield Cell(number(row.paste.net_shown_g))
        yield Cell(number(row.paste.made_shown_g), True, _to_buy(row.paste))
        yield Cell(rolled(row.paste))
    drum = row.board.chosen
    yield board_cell(drum.board, True)
    yield Cell("none" if drum.ribbon_shown_mm is None else number(drum.ribbon_shown_mm / 10))
    yield Cell(number(row.board.cake_ribbon_shown_mm / 10))


def _to_buy(row: PasteRow) -> str:
    """`1 kg + 250 g; some cake makers allow 1353 g`."""
    packs = packs_words(row) if row.packs else ""
    more = f"some cake makers allow {formats.grams(row.net_high_shown_g)}" if allows_more(row) else ""
    return "; ".join(filter(None, (packs, more)))


def _role_words(role: str) -> str:
    """`crumb coat`."""
    return role.replace("_", " ")


def _batches(count: int) -> str:
    return "batch" if count == 1 else "batches"


def covering_pages(desk: Desk) -> Iterator[Page]:
    """The one page."""
    yield Page(address=ADDRESS, title=TITLE, template="covering", view=CoveringView(desk), section=("Covering",))
