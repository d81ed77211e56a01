"""Tools and materials of a technique for a number of people, as measured out, and which of it is not food."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book, Material, Technique
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.versions import Amount
from tinbook.plans.base.weighing import Unweighable, g_per_ml, mass_of, shown_unit
from tinbook.plans.measures.spooned import spooned
from tinbook.plans.techniques.naming import mixture_called
from tinbook.units import GRAMS_PER_OUNCE

MOST_PEOPLE = 99
LIES_OPEN = frozenset(("board", "card", "case", "collar", "drum", "liner", "paper", "plate", "ribbon", "stand"))
"""What lies under or round a cake and is seen when it is cut: common practice. Anything else may be hidden in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialRow:
    """A material for one person: amount as measured out, grams and ml where known, and whose it is.

    `name` is the house's word for an ingredient or a mixture in the book, or else as written; `wanted` how it is
    wanted, in the baker's words.
    """

    index: int
    name: str
    wanted: Saying | str
    amount: Amount
    mass_g: float | None
    volume_ml: float | None
    mixture: str | None
    shared: bool
    not_food: bool
    small_hard: bool


@dataclass(frozen=True, slots=True)
class ToolRow:
    """A tool, and how many of it one person needs."""

    name: str
    count: int
    shared: bool
    not_food: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Inedible:
    """Something that is not food: how much of it, whether it may be hidden in the cake, as a dowel is, and whether one
    serves everyone working."""

    name: str
    wanted: Saying | str
    amount: Amount
    hidden: bool
    shared: bool = False


@dataclass(frozen=True)
class Kit:
    """Everything to have ready, for one person or multiplied for `people`."""

    people: int
    tools: tuple[ToolRow, ...]
    materials: tuple[MaterialRow, ...]
    supports: tuple[Inedible, ...] = ()

    @property
    def not_food(self) -> tuple[Inedible, ...]:
        """What goes into, under or onto the cake and is not food, and how many of it."""
        tools = (_inedible(tool) for tool in self.tools if tool.not_food)
        rows = (
            Inedible(name=row.name, wanted=row.wanted, amount=row.amount, hidden=_hidden(row.name), shared=row.shared)
            for row in self.materials
            if row.not_food
        )
        return (*tools, *rows, *self.supports)


def _inedible(tool: ToolRow) -> Inedible:
    name, _, wanted = tool.name.partition(", ")
    amount = Amount(tool.count, tool.count, "")
    return Inedible(name=name, wanted=wanted, amount=amount, hidden=_hidden(name), shared=tool.shared)


def _hidden(name: str) -> bool:
    """Whether its last word is not one for something in plain view."""
    last = name.lower().split()[-1]
    return not {last, last.removesuffix("s")} & LIES_OPEN


def kit(technique: Technique, book: Book, facts: Facts, people: int = 1) -> Kit:
    """Tools and materials for `people` (1 to 99); what is shared is not multiplied. ValueError for other numbers."""
    if not 1 <= people <= MOST_PEOPLE:
        raise ValueError(f"for 1 to {MOST_PEOPLE} people, not {people}")
    name = ("kit", Itself(technique), people, Itself(facts))
    return ledger_of(book).lately(name, lambda: _kit(technique, book, facts, people))


def _kit(technique: Technique, book: Book, facts: Facts, people: int) -> Kit:
    tools = tuple(
        ToolRow(tool.tool, tool.count * (1 if tool.shared else people), tool.shared, tool.not_food)
        for tool in technique.tools
    )
    materials = tuple(
        _row(index, material, book, facts, 1 if material.shared else people)
        for index, material in enumerate(technique.materials)
    )
    return Kit(people, tools, materials, tuple(_supports(technique, people)))


def _supports(technique: Technique, people: int) -> Iterator[Inedible]:
    """Supports of the parts, except those already listed as not food among the tools or materials."""
    listed = [tool.tool for tool in technique.tools if tool.not_food]
    listed += [material.take.name for material in technique.materials if material.not_food]
    for part in technique.parts:
        if part.support:
            name = part.support.what.partition(",")[0]
            count = part.support.count * part.count * people
            if not any(thing.lower().startswith(name.lower().rstrip("s")) for thing in listed):
                amount = Amount(count, count, "")
                yield Inedible(name=name, wanted=saying("in_part", part=part.part), amount=amount, hidden=True)


def _row(index: int, material: Material, book: Book, facts: Facts, times: int) -> MaterialRow:
    take, quantity = material.take, material.take.quantity
    name = book.house_word(take.name)
    mixture = mixture_called(take.name, book)
    mass_g = quantity.base if quantity.dimension == "mass" else None
    volume_ml = quantity.base if quantity.dimension == "volume" else None
    if name is not None:
        try:
            mass_g = mass_of(take, name, book, facts)
        except Unweighable:
            mass_g = None
        density = g_per_ml(book.cards[name], facts)
        volume_ml = mass_g / density if density and mass_g and quantity.dimension != "count" else volume_ml
    unit, value = shown_unit(quantity, mass_g, book)
    exact = value * times
    return MaterialRow(
        index=index,
        name=book.mixtures[mixture].name if mixture else name or take.name,
        wanted=_wanted(take.wanted, material.note),
        amount=Amount(exact, rounded(exact, unit, book), unit),
        mass_g=mass_g * times if mass_g else None,
        volume_ml=volume_ml * times if volume_ml else None,
        mixture=mixture,
        shared=material.shared,
        not_food=material.not_food,
        small_hard=material.small_hard,
    )


def _wanted(wanted: str, note: str | None) -> Saying | str:
    return saying("wanted_and_noted", wanted=wanted, note=note) if wanted and note else wanted or note or ""


def rounded(exact: float, unit: str, book: Book) -> float:
    """An amount in `unit` as it is measured out."""
    if unit in ("tsp", "tbsp"):
        return rounding.spoon(exact)
    if unit == "":
        return exact
    scales = book.house.scales
    return rounding.scales(exact, rounding.ScaleSteps(scales.step, scales.fine_step, scales.fine_below))


def material_share(row: MaterialRow, share: float, book: Book) -> Amount:
    """A share of a material's amount, as measured out; of pieces, the pieces."""
    exact = row.amount.exact * share
    return Amount(exact, rounded(exact, row.amount.unit, book), row.amount.unit)


def in_measure(row: MaterialRow, share: float, measure: str, book: Book) -> Amount:
    """The same in grams, ounces or cups; as written where a material has no weight or no volume measure."""
    if row.amount.unit and row.mass_g and measure == "ounces":
        exact = row.mass_g * share / GRAMS_PER_OUNCE
        return Amount(exact, rounding.ounces(exact), "oz")
    if row.amount.unit and row.mass_g and row.volume_ml and measure == "cups":
        poured = spooned(row.volume_ml * share, book.house.spoons)
        return Amount(poured.exact, poured.shown, poured.unit)
    return material_share(row, share, book)
