"""How a mixture differs from its base: lines of the mix, steps, and what it is baked in and how."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Mixture
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.measures.spooned import Measured, measured


@dataclass(frozen=True, slots=True, kw_only=True)
class Differences:
    """A batch and its base: pairs of lines and of step numbers, from 0, None if one has none.

    `keys` are the fields in which the two differ. `anew`: the method is a different one altogether.
    """

    base: Batch
    lines: tuple[tuple[Measured | None, Measured | None], ...]
    steps: tuple[tuple[int | None, int | None], ...]
    keys: frozenset[str]
    anew: bool


_KEYS = ("kind", "tins", "makes", "bake")


def differences(batch: Batch, book: Book, facts: Facts) -> Differences | None:
    """What differs from the base; None for a mixture that has none, or none the book shows.

    Where the method of either is private, no step is shown.
    """
    varies = book.varies.get(batch.slug)
    if varies is None:
        return None
    base = weigh(varies.base, book.mixtures[varies.base], book, facts)
    before, here = measured(base, book), measured(batch, book)
    lines = tuple(
        (None if old is None else before[old], None if new is None else here[new]) for old, new in varies.lines
    )
    shown = bool(base.mixture.method and batch.mixture.method)
    keys = frozenset(key for key in _KEYS if _value(base.mixture, key) != _value(batch.mixture, key))
    return Differences(
        base=base, lines=lines, steps=varies.steps if shown else (), keys=keys, anew=varies.anew and shown
    )


def _value(mixture: Mixture, key: str) -> object:
    """What a field says; for the bake, without the test for doneness."""
    if key == "bake":
        return (mixture.bake.oven, mixture.bake.time) if mixture.bake else None
    return getattr(mixture, key)
