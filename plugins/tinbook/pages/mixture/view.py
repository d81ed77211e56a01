"""A mixture's two leaves: the bench and its tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.facts import Caution
from tinbook.models import Mixture
from tinbook.pages.base.grids import Titled
from tinbook.pages.base.icons import paths
from tinbook.pages.base.page import Desk, Page, cross_contact
from tinbook.pages.base.shared import WorkedView, measures_of, plural, tin_count, tin_name, unsure_said, worked_view
from tinbook.pages.mixture.amounts import AmountsView
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.mixture.balance import BalanceView
from tinbook.pages.mixture.chips import ChipGroup, chips
from tinbook.pages.mixture.every_cake import FinishView
from tinbook.pages.mixture.every_tin import EveryTinView
from tinbook.pages.mixture.facts_said import FactsSaid, facts_said
from tinbook.pages.mixture.method import MethodView
from tinbook.pages.mixture.notes import NotesView
from tinbook.pages.mixture.variations import DiffersView, VariationView, differs_view, variations_of
from tinbook.pages.spelling import formats
from tinbook.plans.baking.oven import dial
from tinbook.plans.base.scaling import TinTable, tin_table
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import Measured, measured, measured_worked
from tinbook.plans.mixtures import batches, safety
from tinbook.plans.mixtures.balance import balance, has_balance
from tinbook.plans.mixtures.bench import as_plain, bench


def tables_of(address: str) -> str:
    """The leaf of tables that belongs to a mixture's page."""
    return f"{address}/tables"


MEASURED_BY = ("g_per_oz", "cup_ml", "tablespoon_ml", "teaspoon_ml", "raising")
"""What of the bench's data the tables need to change from one measure to another."""
FEW_TABLES = 2
"""This many tables can be read from an arm's length on A4."""


@dataclass(frozen=True)
class MixtureView:
    """Everything a mixture's templates may say.

    `of`: the mixture's name in the desk's book, or a batch from outside it.
    """

    of: str | Batch
    desk: Desk

    @cached_property
    def batch(self) -> Batch:
        """It, weighed."""
        return self.desk.batches[self.of] if isinstance(self.of, str) else self.of

    @property
    def mixture(self) -> Mixture:
        """What the baker wrote."""
        return self.batch.mixture

    @property
    def in_tins(self) -> bool:
        """Whether it is baked in tins."""
        return bool(self.batch.tins)

    @property
    def lead(self) -> str:
        """For which tins, or how much it makes."""
        if self.batch.tins:
            return "For " + ", ".join(tin_count(count, tin) for count, tin in self.batch.tins)
        return f"Makes {formats.grams(self.batch.makes_shown_g)}"

    @property
    def unsure(self) -> str:
        """What in its file is still marked unsure; empty if nothing is."""
        lines = self.desk.book.unsure.get(f"mixtures/{self.batch.slug}", ())
        return unsure_said(lines) if lines else ""

    @property
    def written_cake(self) -> str:
        """The tins it was written for, or one batch."""
        if not self.batch.tins:
            return plural(1, "batch")
        return ", ".join(tin_name(count, tin) for count, tin in self.batch.tins)

    @cached_property
    def facts(self) -> FactsSaid:
        """What the bench says about the written tins before any script."""
        return facts_said(self.batch, self.table if self.batch.tins else None, self.desk)

    @property
    def measures(self) -> tuple[tuple[str, str, bool], ...]:
        """The measures to choose from, what the switch says, and which is the house's own."""
        return measures_of(self.desk.book)

    @property
    def counted(self) -> str:
        """What the bench counts: tins, cups of a tray, or batches."""
        if not self.batch.tins:
            return "batches"
        return "cups" if self.batch.tins[0][1].holes > 1 else "tins"

    @property
    def chips(self) -> tuple[ChipGroup, ...]:
        """The tins to touch at the bench."""
        return chips(self.table.rows, self.batch.tins[0][1].name) if self.batch.tins else ()

    @property
    def bench(self) -> dict[str, Any]:
        """What the browser gets."""
        table = self.table if self.batch.tins else None
        data = as_plain(bench(self.batch, table, self.desk.book, self.desk.facts))
        data["bake"] = self.baking.script_data if self.baking else None
        for tin, row in zip(data["tins"]["rows"], table.rows if table else (), strict=True):
            if lines := paths(row.tin):
                tin.append(lines)
        return data

    @property
    def sums(self) -> dict[str, Any]:
        """What the browser gets on the leaf of tables: only the lines and what measures need, as every row has its
        own factor."""
        data = as_plain(bench(self.batch, None, self.desk.book, self.desk.facts))
        lines = {"heads": list(data["lines"][0]), "rows": [list(line.values()) for line in data["lines"]]}
        return {key: data[key] for key in MEASURED_BY} | {"lines": lines}

    @cached_property
    def parts(self) -> tuple[tuple[str, tuple[Measured, ...]], ...]:
        """The mix in every measure, under its own headings; "" for lines without one."""
        lines = measured(self.batch, self.desk.book)
        names = dict.fromkeys(line.line.part for line in lines)
        return tuple((name, tuple(line for line in lines if line.line.part == name)) for name in names)

    @property
    def written_parts(self) -> tuple[tuple[str, tuple[tuple[Measured, str], ...]], ...]:
        """The mix in every measure, each line with its ingredient's page, "" if that is private."""
        pages = self.desk.card_pages
        return tuple(
            (name, tuple((line, pages.get(line.line.name, "")) for line in lines)) for name, lines in self.parts
        )

    @property
    def written_worked(self) -> WorkedView:
        """How it was converted into every measure."""
        desk = self.desk
        return worked_view((measured_worked(self.batch, desk.book, desk.facts),), desk.facts)

    @property
    def cup(self) -> str:
        """Whose cup the table shows."""
        return self.desk.book.house.cup or "US cup"

    @cached_property
    def strip(self) -> safety.AllergenStrip:
        """Allergens, known and unknown."""
        return safety.allergens(self.batch, self.desk.book, self.desk.facts)

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in the house's words; empty if it says nothing."""
        return cross_contact(self.desk)

    @cached_property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions that apply."""
        return safety.cautions(self.batch, self.desk.book, self.desk.facts)

    @cached_property
    def swaps(self) -> tuple[batches.FlourSwap, ...]:
        """Plain flour and powder for the self-raising flour in it."""
        return batches.swaps(self.batch, self.desk.book, self.desk.facts)

    @property
    def has_method(self) -> bool:
        """Whether any step is written."""
        return bool(self.mixture.method)

    @cached_property
    def method(self) -> MethodView:
        """How it is made."""
        lines = {line.index: line for _, lines in self.parts for line in lines}
        return MethodView(
            batch=self.batch, desk=self.desk, lines=lines, written_cake=self.written_cake, baking=self.baking
        )

    @cached_property
    def table(self) -> TinTable:
        """Every tin."""
        return tin_table(self.batch, self.desk.book, self.desk.facts)

    @cached_property
    def baking(self) -> BakingView | None:
        """How long it is in the oven; None for what is not baked in tins."""
        known = self.desk.bakes.of(self.batch) if self.batch.tins else None
        return BakingView(known, self.table, dial(known.oven_c, self.desk.book, self.desk.facts)) if known else None

    @cached_property
    def every_tin(self) -> EveryTinView:
        """It in every tin; only for what is baked in tins."""
        return EveryTinView(self.batch, self.desk, self.table, self.baking)

    @cached_property
    def finish(self) -> FinishView:
        """What it becomes on a cake: layers, filling and coats, or a cover."""
        return FinishView(self.batch, self.desk, lambda: self.table)

    @property
    def address(self) -> str:
        """Its page at the bench."""
        return f"mixtures/{self.batch.slug}"

    @property
    def tables_address(self) -> str:
        """Its leaf of tables."""
        return tables_of(self.address)

    @property
    def leaves(self) -> tuple[Titled, ...]:
        """What is on the leaf of tables, in order: titles and anchors, which are the templates' names."""
        in_tins, finish = bool(self.batch.tins), self.finish
        found = (
            (in_tins, Titled("Every tin", "tins")),
            (finish.is_cut, Titled("Layers", "layers")),
            (finish.is_cut, Titled("Finish", "finished")),
            (finish.fills, Titled("Fill and coat", "coats")),
            (finish.covers, Titled("Cover", "pastes")),
            (self.amounts.shown, Titled(self.amounts.title, "amounts")),
            (self.has_balance, Titled("Balance", "balance")),
            (True, Titled("Measures", "written")),
        )
        return tuple(leaf for stands, leaf in found if stands)

    @property
    def wall_is_large(self) -> bool:
        """Whether its tables need more than A4 to be read from an arm's length."""
        return len(self.leaves) > FEW_TABLES

    @property
    def wall(self) -> str:
        """The paper of the one sheet its tables are printed on."""
        return "A3" if self.wall_is_large else "A4"

    @cached_property
    def amounts(self) -> AmountsView:
        """It by eggs, cups, weight and batches."""
        return AmountsView(self.batch, self.desk)

    @property
    def has_balance(self) -> bool:
        """Whether there is anything to say about its balance."""
        return has_balance(self.batch, self.desk.facts)

    @cached_property
    def balance(self) -> BalanceView:
        """How it compares with the rules of its kind."""
        return BalanceView(balance(self.batch, self.desk.book, self.desk.facts), self.desk.facts)

    @cached_property
    def differs(self) -> DiffersView | None:
        """What differs from its base, None if it has none."""
        return differs_view(self.batch, self.desk.book, self.desk.facts)

    @property
    def has_differences(self) -> bool:
        """Whether it starts from another mixture, and differs from it."""
        return self.differs is not None and bool(self.differs.rows)

    @property
    def variations(self) -> tuple[VariationView, ...]:
        """The mixtures that start from this one."""
        return variations_of(self.batch.slug, self.desk.book)

    @cached_property
    def notes(self) -> NotesView:
        """Whatever else is written about it."""
        return NotesView(self.batch, self.desk)


def mixture_pages(desk: Desk) -> Iterator[Page]:
    """Two leaves for each mixture: the bench, and its tables beside it."""
    for slug, mixture in desk.book.mixtures.items():
        view = MixtureView(slug, desk)
        section = ("Mixtures", desk.facts.kinds[mixture.kind].title)
        address = f"mixtures/{slug}"
        yield Page(address=address, title=mixture.name, template="mixture", view=view, section=section)
        yield Page(
            address=tables_of(address),
            title=f"{mixture.name}, tables",
            template="mixture_tables",
            view=view,
            section=section,
            listed=False,
        )
