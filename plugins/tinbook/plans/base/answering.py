"""The answer to "how much for that?": a mixture for tins, a number of eggs, a weight, batches, or what is left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.engine import scaling
from tinbook.facts import Facts
from tinbook.models import Book, Take
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import Fit, fit, mixes, wanted_ml
from tinbook.plans.base.versions import Version, versions
from tinbook.plans.base.weighing import Batch, Ingredient, as_owned
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin


@dataclass(frozen=True, kw_only=True)
class Scaled:
    """One answer to "how much for that?": both versions, the tins it goes into, and how many mixer bowls."""

    batch: Batch
    exact: Version
    whole: Version
    beaten: bool
    fits: tuple[Fit, ...]
    mixes: int
    worked: Worked


def scale(batch: Batch, book: Book, facts: Facts, query: Query) -> Scaled:
    """Answer one question about a mixture. Raises AskError if the question does not fit it."""
    targets: Sequence[tuple[int, Tin]] = ()
    if query.tins:
        if not batch.tins:
            raise AskError(
                f'"{batch.mixture.name}" is made by weight, not by tins', 'ask for a weight, such as "900 g"'
            )
        targets = [(count, as_owned(tin, book)) for count, tin in query.tins]
        volumes = [wanted_ml(batch, tin, count, query.deep) for count, tin in targets]
        ratio, formula = scaling.factor(sum(volumes), batch.batter_ml), saying("factor_by_batter")
    else:
        ratio, formula = asked_factor(batch, query, book)
        volumes = []
    width_mm = max((tin.bounds_mm[0] for _, tin in targets or batch.tins), default=0.0)
    exact, whole, beaten = versions(batch, ratio, width_mm, facts)
    stretch = whole.factor / ratio
    fits = tuple(
        fit(batch, book, facts, tin, count, volume * stretch, whole.mass_g * volume / sum(volumes))
        for (count, tin), volume in zip(targets, volumes, strict=True)
    )
    worked = Worked(formula, (saying("factor_is", factor=ratio),), (batch.kind.source,))
    return Scaled(
        batch=batch, exact=exact, whole=whole, beaten=beaten, fits=fits, mixes=mixes(book, whole.mass_g), worked=worked
    )


def asked_factor(batch: Batch, query: Query, book: Book) -> tuple[float, Saying]:
    """The factor for a question that names no tin, and its formula. Raises AskError if the question does not fit."""
    if query.eggs is not None:
        if not batch.eggs:
            raise AskError(f'"{batch.mixture.name}" has no whole eggs', "ask for a weight or a tin")
        return scaling.factor(query.eggs, batch.eggs), saying("factor_by_eggs")
    if query.weight_g is not None:
        return scaling.factor(query.weight_g, batch.makes_g), saying("factor_by_weight")
    if query.batches is not None:
        return scaling.factor(query.batches, 1.0), saying("factor_by_batches")
    if query.plus is not None:
        return scaling.factor(1 + query.plus, 1.0), saying("factor_by_share")
    if query.left:
        name = book.house_word(query.left.name)
        lines = [line for line in batch.ingredients if line.name == name]
        if not lines:
            hint = "it has " + ", ".join(dict.fromkeys(line.name for line in batch.ingredients))
            raise AskError(f'"{query.left.name}" is not in "{batch.mixture.name}"', hint)
        return left_factor(lines, query.left), saying("factor_by_left")
    return 1.0, saying("factor_as_written")


def left_factor(lines: Sequence[Ingredient], left: Take) -> float:
    """How much is left of one ingredient, over how much is written in all its `lines`."""
    quantity, volumes_ml = left.quantity, [line.volume_ml or 0.0 for line in lines]
    if quantity.dimension == "mass":
        return scaling.factor(quantity.base, sum(line.mass_g for line in lines))
    if quantity.dimension == "count" and all(line.unit == "" for line in lines):
        return scaling.factor(quantity.base, sum(line.amount for line in lines))
    if quantity.dimension == "volume" and all(volumes_ml):
        return scaling.factor(quantity.base, sum(volumes_ml))
    raise AskError(f'"{left.written}" cannot be compared with "{lines[0].name}"', "say what is left in grams")
