"""A mixture by eggs, by cups in a tray, by weight and by batches; and what can replace what."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import wanted_ml
from tinbook.plans.base.versions import Version, version_each, versions_each
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked

EGGS = tuple(range(1, 13))
CUPS = (6, 12, 18, 24, 36, 48)
WEIGHTS_G = (250.0, 500.0, 750.0, 1000.0, 1500.0, 2000.0, 3000.0)
BATCHES = (0.5, 1.0, 2.0, 3.0)


@dataclass(frozen=True, slots=True)
class BatchRow:
    """`value` of what was asked by (`eggs`, `cups`, `g`, `batches`), and the amounts for it."""

    asked_by: str
    value: float
    version: Version


@dataclass(frozen=True)
class WeightTable:
    """A mixture in the amounts a baker thinks in when no tin is meant."""

    batch: Batch
    rows: tuple[BatchRow, ...]
    worked: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class FlourSwap:
    """`self_raising_g` of one flour as plain flour and baking powder, as scales and spoons show it."""

    name: str
    plain: str
    self_raising_g: float
    plain_g: float
    powder_g: float
    powder_tsp: float


def has_amounts(batch: Batch) -> bool:
    """Whether a mixture has such a table: by eggs, by the cups it was written for, or by weight."""
    return not batch.tins or bool(batch.eggs) or batch.tins[0][1].kind.in_trays


def weight_table(batch: Batch, facts: Facts) -> WeightTable:
    """By eggs if it has any, by cups if it was written for cups, by weight if it has no tins."""
    amounts: list[tuple[str, float, float]] = []
    if batch.tins and batch.eggs:
        amounts += [("eggs", float(eggs), scaling.factor(eggs, batch.eggs)) for eggs in EGGS]
    if not batch.tins:
        amounts += [("batches", share, share) for share in BATCHES]
        amounts += [("g", grams, scaling.factor(grams, batch.makes_g)) for grams in WEIGHTS_G]
    wide_mm = max((tin.bounds_mm[0] for _, tin in batch.tins), default=0.0)
    factors = [factor for _, _, factor in amounts]
    versions = version_each(batch, factors, factors, [wide_mm] * len(amounts), facts)
    rows = [BatchRow(asked_by, value, version) for (asked_by, value, _), version in zip(amounts, versions, strict=True)]
    if batch.tins and batch.tins[0][1].kind.in_trays:
        cup = batch.tins[0][1]
        factors = [wanted_ml(batch, cup, cups) / batch.batter_ml for cups in CUPS]
        for cups, (_, whole, _) in zip(CUPS, versions_each(batch, factors, [wide_mm] * len(CUPS), facts), strict=True):
            rows.append(BatchRow("cups", float(cups), whole))
    written = saying("mixture_as_written", mass_g=batch.mass_g)
    return WeightTable(batch, tuple(rows), Worked(saying("factor_of_amounts"), (written,), ("common practice",)))


def swaps(batch: Batch, book: Book, facts: Facts) -> tuple[FlourSwap, ...]:
    """Plain flour and baking powder for each flour of the mixture whose card names its plain one."""
    share = facts.numbers["baking powder in self-raising"].value
    teaspoon_g = facts.numbers["teaspoon of baking powder"].value
    flours = []
    for line in batch.ingredients:
        plain = book.cards[line.name].plain
        if plain:
            plain_g, powder_g = scaling.plain_for_self_raising(line.mass_g, share)
            flours.append(
                FlourSwap(
                    name=line.name,
                    plain=plain,
                    self_raising_g=rounding.scales(line.mass_g, batch.steps),
                    plain_g=rounding.scales(plain_g, batch.steps),
                    powder_g=rounding.scales(powder_g, batch.steps),
                    powder_tsp=rounding.spoon(powder_g / teaspoon_g),
                )
            )
    return tuple(flours)
