"""Everything a book knows about baking times: the bakes of each mixture, and what mixtures of a kind share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from math import log
from typing import NamedTuple

from tinbook.engine import baking
from tinbook.engine.baking import Evidence, OfKind, Prior
from tinbook.facts import Facts, Kind
from tinbook.models import Book
from tinbook.models.ledger import ledger_of
from tinbook.plans.baking.times import ANCHOR_C, BakePoint, Baking, width_mm
from tinbook.plans.base.bake_log import batter_mm
from tinbook.plans.base.weighing import Batch, as_owned, weigh_all
from tinbook.tins import Tin


def prior(kind: Kind, facts: Facts) -> Prior | None:
    """What is assumed about a kind of mixture before any bake; None if it is not baked."""
    if kind.bake is None:
        return None
    numbers = facts.numbers
    width, depth = numbers["bake width exponent"], numbers["bake depth exponent"]
    anchor = baking.heat(ANCHOR_C, numbers["batter at the start"].value, numbers["centre when done"].value)
    minutes = kind.bake
    return Prior(
        (log(minutes.typical / anchor), width.value, depth.value),
        (
            baking.spread(log(minutes.low), log(minutes.high)),
            baking.spread(width.low or width.value, width.high or width.value),
            baking.spread(depth.low or depth.value, depth.high or depth.value),
        ),
        (
            numbers["bake time, recipe to recipe"].value,
            numbers["bake width, recipe to recipe"].value,
            numbers["bake depth, recipe to recipe"].value,
        ),
        numbers["bake scatter"].value,
    )


class _Kind(NamedTuple):
    """What each mixture of a kind says about it and from how many bakes, and all of them together."""

    by_slug: Mapping[str, tuple[OfKind, int]]
    together: OfKind
    bakes: int


def _kin(kind: str) -> str:
    """The name of the work that reads all mixtures of a kind."""
    return "/".join(("kin", kind))


class Bakes:
    """Everything the book knows about baking times; what recipes of a kind share is worked out once."""

    def __init__(self, book: Book, facts: Facts, batches: Mapping[str, Batch] | None = None) -> None:
        self._book, self._facts, self._ledger = book, facts, ledger_of(book)
        self._batches = weigh_all(book, facts) if batches is None else batches
        for kind in facts.kinds.values():
            if before := prior(kind, facts):
                self._ledger.made_by(_kin(kind.key), partial(self._all_of_kind, kind.key, before))

    def of(self, batch: Batch) -> Baking | None:
        """What is known about one mixture; None for what is not baked."""
        if self._batches.get(batch.slug) is not batch:
            return self._learned(batch)
        return self._ledger.share(("bakes", id(self), batch.slug), lambda: self._learned(batch))

    def _learned(self, batch: Batch) -> Baking | None:
        before = prior(batch.kind, self._facts)
        if before is None:
            return None
        numbers = self._facts.numbers
        start_c, centre_c = numbers["batter at the start"].value, numbers["centre when done"].value
        points, evidence = self._seen(batch, before)
        kind = self._of_kind(batch.kind.key, before)
        own, count = kind.by_slug.get(batch.slug, (baking.NO_KIN, 0))
        law = baking.learned(before, evidence, kind.together - own)
        written = batch.mixture.bake
        oven_c = written.oven.celsius if written else ANCHOR_C
        return Baking(
            batch=batch,
            law=law,
            oven_c=oven_c,
            start_c=start_c,
            centre_c=centre_c,
            points=points,
            kin=kind.bakes - count,
            check_share=numbers["start checking"].value,
        )

    def _seen(self, batch: Batch, before: Prior) -> tuple[tuple[BakePoint, ...], Evidence]:
        """The bakes of a mixture, and what they say."""

        def seen() -> tuple[tuple[BakePoint, ...], Evidence]:
            points = self._points(batch)
            return points, _evidence(points, batch, before, self._book, self._facts)

        return self._ledger.share(("baked", id(self), batch.slug), seen)

    def _of_kind(self, kind: str, before: Prior) -> _Kind:
        """What the mixtures of a kind say: each that says anything, and all together."""
        return self._ledger.work(_kin(kind), lambda: self._all_of_kind(kind, before))

    def _all_of_kind(self, kind: str, before: Prior) -> _Kind:
        by_slug: dict[str, tuple[OfKind, int]] = {}
        for slug, mixture in self._book.mixtures.items():
            if mixture.kind == kind and (mixture.bake or slug in self._book.bakes_of):
                points, evidence = self._seen(self._batches[slug], before)
                by_slug[slug] = baking.of_kind(before, evidence), len(points)
        together = sum((of_kind for of_kind, _ in by_slug.values()), baking.NO_KIN)
        return _Kind(by_slug, together, sum(bakes for _, bakes in by_slug.values()))

    def _points(self, batch: Batch) -> tuple[BakePoint, ...]:
        points = []
        written = batch.mixture.bake
        if written and batch.tins:
            tin = max((tin for _, tin in batch.tins), key=width_mm)
            middle = (written.time.low.base * written.time.high.base) ** 0.5
            points.append(
                BakePoint(tin=tin, width_mm=width_mm(tin), depth_mm=_written_mm(batch, tin), minutes=middle, entry=None)
            )
        gravity = batch.mass_g / batch.batter_ml
        for entry in self._book.bakes_of.get(batch.slug, ()):
            tin = as_owned(entry.tin, self._book)
            depth = batter_mm(entry, gravity, tin)
            if depth:
                points.append(
                    BakePoint(tin=tin, width_mm=width_mm(tin), depth_mm=depth, minutes=entry.done_after, entry=entry)
                )
        return tuple(points)


def _written_mm(batch: Batch, tin: Tin) -> float:
    """How deep the batter is in one of the written tins."""
    return min(batch.depth_mm, tin.brim_mm)


def _evidence(points: Sequence[BakePoint], batch: Batch, before: Prior, book: Book, facts: Facts) -> Evidence:
    heats = [heat_of(point, batch, book, facts) for point in points]
    return baking.evidence(
        [point.width_mm for point in points], [point.depth_mm for point in points], heats,
        [point.minutes for point in points], before,
    )  # fmt: skip


def heat_of(point: BakePoint, batch: Batch, book: Book, facts: Facts) -> float:
    """The heat of a bake: for a logged one, what the house's oven gives at that dial setting; the recipe's own as
    written."""
    numbers = facts.numbers
    start_c, centre_c = numbers["batter at the start"].value, numbers["centre when done"].value
    entry = point.entry
    if entry is None:
        written = batch.mixture.bake
        return baking.heat(written.oven.celsius if written else ANCHOR_C, start_c, centre_c)
    oven_c = entry.oven.celsius + book.house.oven.off_c
    return baking.heat(
        oven_c, start_c if entry.start is None else entry.start, centre_c if entry.centre is None else entry.centre
    )
