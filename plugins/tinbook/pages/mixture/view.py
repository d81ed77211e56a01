"""A mixture's page."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.facts import Caution
from tinbook.models import Mixture
from tinbook.pages.base.grids import Head
from tinbook.pages.base.icons import paths
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.rows import TableRow, exact_lines, plain_head, spelled, whole_lines
from tinbook.pages.base.shared import (
    Linked,
    PieceView,
    StepView,
    WorkedView,
    linked_techniques,
    named_times,
    plural,
    step_view,
    tag_anchor,
    tin_count,
    tin_name,
    worked_view,
)
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.mixture.balance import BalanceView
from tinbook.pages.mixture.every_cake import FinishView
from tinbook.pages.mixture.variations import DiffersView, VariationView, differs_view, variations_of
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.oven import dial, own_dial
from tinbook.plans.baking.times import baking_worked
from tinbook.plans.base.scaling import TinTable, row_count, tin_table
from tinbook.plans.base.versions import amount
from tinbook.plans.base.weighing import Batch, Ingredient
from tinbook.plans.measures.spooned import Measured, measured
from tinbook.plans.mixtures import batches, safety
from tinbook.plans.mixtures.balance import balance, has_balance
from tinbook.plans.mixtures.bench import as_plain, bench
from tinbook.plans.mixtures.inline import StepPiece, pieces


@dataclass(frozen=True, slots=True)
class NoteLine:
    """A note, and the card it comes from."""

    text: str
    ingredient: str
    address: str


@dataclass(frozen=True, slots=True)
class Tag:
    """A tag and its anchor on the page of tags."""

    name: str
    anchor: str


@dataclass(frozen=True)
class MixtureView:
    """Everything a mixture's templates may say."""

    batch: Batch
    desk: Desk

    @property
    def mixture(self) -> Mixture:
        """What the baker wrote."""
        return self.batch.mixture

    @property
    def fan_c(self) -> float:
        """How much cooler a fan oven is set."""
        return self.desk.facts.numbers["fan difference"].value

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
    def written_cake(self) -> str:
        """The tins it was written for, or one batch."""
        if not self.batch.tins:
            return plural(1, "batch")
        return ", ".join(tin_name(count, tin) for count, tin in self.batch.tins)

    @property
    def bench(self) -> dict[str, Any]:
        """What the browser is handed."""
        table = self.table if self.batch.tins else None
        made = as_plain(bench(self.batch, table, self.desk.book, self.desk.facts))
        made["bake"] = self.baking.script_data if self.baking else None
        for told, row in zip(made["tins"]["rows"], table.rows if table else (), strict=True):
            if lines := paths(row.tin):
                told.append(lines)
        return made

    @property
    def has_method(self) -> bool:
        """Whether any step is written."""
        return bool(self.mixture.method)

    @property
    def steps(self) -> tuple[StepView, ...]:
        """The method, with amounts and times."""
        lines = {each.index: each for _, lines in self.parts for each in lines}
        return tuple(
            step_view(
                step, tuple(self._piece_view(piece, lines) for piece in pieces(step.do, self.mixture, self.desk.book))
            )
            for step in self.mixture.method
        )

    def _piece_view(self, piece: StepPiece, lines: dict[int, Measured]) -> PieceView:
        if piece.tins:
            return PieceView(text=self.written_cake, tins=True)
        if piece.line is None:
            return PieceView(text=piece.text)
        if piece.share == 1:
            return PieceView(text=piece.text, amount=formats.written(lines[piece.line]), line=piece.line)
        part = amount(self.batch.ingredients[piece.line], piece.share, self.batch.steps, by_weight=True)
        return PieceView(text=piece.text, amount=formats.spelled(part), line=piece.line, share=piece.share)

    @cached_property
    def parts(self) -> tuple[tuple[str, tuple[Measured, ...]], ...]:
        """The mix in every measure, under its own headings; "" for lines without one."""
        lines = measured(self.batch, self.desk.book)
        names = dict.fromkeys(each.line.part for each in lines)
        return tuple((name, tuple(each for each in lines if each.line.part == name)) for name in names)

    @property
    def strip(self) -> safety.AllergenStrip:
        """Allergens, known and unknown."""
        return safety.allergens(self.batch, self.desk.book, self.desk.facts)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions that apply."""
        return safety.cautions(self.batch, self.desk.book, self.desk.facts)

    @property
    def also(self) -> str:
        """Its other names."""
        return formats.sentence(self.mixture.also)

    @property
    def seasons(self) -> str:
        """When it is in season, as written."""
        return formats.title(formats.sentence(season.written for season in self.mixture.seasons))

    @property
    def keeps_for(self) -> str:
        """How long it keeps, as written."""
        return formats.title(formats.sentence(keep.written for keep in self.mixture.keeps_for))

    @property
    def cup(self) -> str:
        """Whose cup the table shows."""
        return self.desk.book.house.cup or "US cup"

    @cached_property
    def card_notes(self) -> tuple[NoteLine, ...]:
        """Notes that follow the ingredients."""
        notes = safety.card_notes(self.batch, self.desk.book)
        pages = self.desk.card_pages
        return tuple(
            NoteLine(note.text, note.ingredient, pages[note.ingredient]) for note in notes if note.ingredient in pages
        )

    @property
    def written_parts(self) -> tuple[tuple[str, tuple[tuple[Measured, str], ...]], ...]:
        """The mix in every measure, each line with the page of its ingredient, "" where that is kept back."""
        pages = self.desk.card_pages
        return tuple(
            (name, tuple((each, pages.get(each.line.name, "")) for each in lines)) for name, lines in self.parts
        )

    @property
    def tags(self) -> tuple[Tag, ...]:
        """Its tags."""
        return tuple(Tag(tag, tag_anchor(tag)) for tag in self.mixture.tags)

    @property
    def has_notes(self) -> bool:
        """Whether there is anything to note."""
        mixture = self.mixture
        return bool(
            mixture.about
            or mixture.also
            or mixture.seasons
            or mixture.keeps
            or mixture.keeps_for
            or mixture.notes
            or (mixture.off_balance and not self.has_balance)
            or mixture.tags
            or self.card_notes
        )

    @cached_property
    def swaps(self) -> tuple[batches.FlourSwap, ...]:
        """Plain flour and powder for the self-raising flour in it."""
        return batches.swaps(self.batch, self.desk.book, self.desk.facts)

    @property
    def times(self) -> tuple[tuple[str, str], ...]:
        """Hands-on and waiting time of the whole method, named and spelled."""
        return named_times(self.mixture.method)

    @property
    def techniques(self) -> tuple[Linked, ...]:
        """The techniques it names, as far as the book shows them."""
        return linked_techniques(self.mixture.techniques, self.desk.book, self.desk.facts)

    @cached_property
    def table(self) -> TinTable:
        """Every tin."""
        return tin_table(self.batch, self.desk.book, self.desk.facts)

    @cached_property
    def baking(self) -> BakingView | None:
        """How long it is in the oven; None for what is not baked in tins."""
        known = self.desk.bakes.of(self.batch) if self.batch.tins else None
        return BakingView(known, self.table, dial(known.oven_c, self.desk.book, self.desk.facts)) if known else None

    @property
    def own_dial(self) -> str:
        """What the house's own oven is set to for it, where that is another figure than the recipe's."""
        baked = self.mixture.bake
        shown = own_dial(baked.oven.celsius, self.desk.book, self.desk.facts) if baked else None
        return formats.kept_together(spell(shown)) if shown else ""

    @cached_property
    def finish(self) -> FinishView:
        """What becomes of it on a cake: layers, filling and coats, or a cover."""
        return FinishView(self.batch, self.desk, lambda: self.table)

    @property
    def tin_count(self) -> str:
        """For how many tins the table stands: `2 tins`."""
        return plural(row_count(self.batch, self.table.rows[0].tin), "tin")

    @property
    def heads(self) -> tuple[Head, ...]:
        """Heads of the ingredients' columns."""
        return tuple(Head(line.name, line.unit or self._piece(line)) for line in self.batch.ingredients)

    def _piece(self, line: Ingredient) -> str:
        return self.desk.book.house.eggs if line.whole_egg else "pieces"

    @property
    def exact_heads(self) -> tuple[Head, ...]:
        """The same, with eggs in grams."""
        return tuple(Head(line.name, line.unit or "g") for line in self.batch.ingredients)

    @property
    def tins_lead(self) -> str:
        """How far rounding and whole eggs lead off, in words."""
        weight, spoon = self.table.weight_error_percent, self.table.spoon_error_percent
        told = [f"at most {formats.percent(weight)} of a weight"] if weight else []
        told += [f"{formats.percent(spoon)} of a spoon"] if spoon else []
        rounding = f" Rounding moves {' and '.join(told)}." if told else ""
        eggs = "Whole eggs, and everything follows them." if self.batch.eggs else ""
        return f"{eggs}{rounding}".strip()

    @property
    def amounts_title(self) -> str:
        """What the other table goes by."""
        return "By the egg" if self.batch.tins else "By weight and batch"

    @property
    def tin_lines(self) -> Iterator[TableRow]:
        """The whole-egg version, a line each tin."""
        return whole_lines(self.batch, self.table.rows, self.baking.cells if self.baking else ())

    @property
    def exact_lines(self) -> Iterator[TableRow]:
        """The exact version, a line each tin."""
        return exact_lines(self.batch, self.table.rows)

    @property
    def has_amounts(self) -> bool:
        """Whether there is another table, without tins."""
        return batches.has_amounts(self.batch)

    @cached_property
    def amounts_table(self) -> batches.WeightTable:
        """By eggs, cups, weight and batches."""
        return batches.weight_table(self.batch, self.desk.facts)

    @property
    def batch_lines(self) -> Iterator[TableRow]:
        """The rows of that table, spelled."""
        asked_by, columns, figures = "", None, list[tuple[str, ...]]()
        width_mm = max((tin.bounds_mm[0] for _, tin in self.batch.tins), default=0.0)
        for row in self.amounts_table.rows:
            head, made = plain_head(BY[row.asked_by](row.value)), row.version
            if made.columns is not columns:
                columns, figures = made.columns, spelled(self.batch, made)
            cells = (*figures[made.at], formats.number(made.mass_shown_g))
            yield TableRow(
                head=head, cells=cells, first=row.asked_by != asked_by, factor=made.factor, width_mm=width_mm
            )
            asked_by = row.asked_by

    @property
    def has_balance(self) -> bool:
        """Whether anything is told of its balance."""
        return has_balance(self.batch, self.desk.facts)

    @cached_property
    def balance(self) -> BalanceView:
        """How it stands to the rules of its kind."""
        return BalanceView(balance(self.batch, self.desk.book, self.desk.facts), self.desk.facts)

    @cached_property
    def differs(self) -> DiffersView | None:
        """What differs from its base, None where it has none."""
        return differs_view(self.batch, self.desk.book, self.desk.facts)

    @property
    def has_differences(self) -> bool:
        """Whether it starts from another mixture, and not all is alike."""
        return self.differs is not None and bool(self.differs.rows)

    @property
    def variations(self) -> tuple[VariationView, ...]:
        """The mixtures that start from this one."""
        return variations_of(self.batch.slug, self.desk.book)

    @property
    def worked(self) -> WorkedView:
        """How the table of tins was worked out."""
        baked = (baking_worked(self.baking.known, self.desk.facts),) if self.baking else ()
        return worked_view((self.table.worked, self.batch.worked, *baked), self.desk.facts)

    @property
    def batches_worked(self) -> WorkedView:
        """How the other table was worked out."""
        return worked_view((self.amounts_table.worked,), self.desk.facts)


BY: dict[str, Callable[[float], str]] = {
    "eggs": lambda value: plural(value, "egg"),
    "cups": lambda value: plural(value, "cup"),
    "g": formats.grams,
    "batches": lambda value: plural(value, "batch", "batches"),
}


def mixture_pages(desk: Desk) -> Iterator[Page]:
    """A page for each mixture."""
    for slug, mixture in desk.book.mixtures.items():
        view = MixtureView(desk.batches[slug], desk)
        kind = desk.facts.kinds[mixture.kind]
        yield Page(
            address=f"mixtures/{slug}",
            title=mixture.name,
            template="mixture",
            view=view,
            section=("Mixtures", kind.title),
        )
