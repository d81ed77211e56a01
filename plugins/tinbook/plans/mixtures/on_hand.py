"""What fits the house's tins: for each mixture, the tins that take it as written, or nearly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from tinbook.engine import rounding, scaling
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import once
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import fit, wanted_ml
from tinbook.plans.base.versions import Version, versions_each
from tinbook.plans.base.weighing import Batch, same_outline, weigh_all
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin

MOST_BAKES = 3
"""A tin that has to go into the oven more often than this for one mixture is not offered."""
FEW = 3
"""How many choices are shown for a mixture."""
VERDICTS = (AS_WRITTEN, NEARLY, RESIZED, NO_TIN) = ("as_written", "nearly", "resized", "no_tin")
"""How well a mixture suits the tins owned, best first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TinChoice:
    """A mixture in the house's tins: `tins` are filled once or, where there are too few, over `bakes`.

    `factor` is the mixture for these tins over the one written, as exact as it comes; `version` is how it is measured
    out. `written`: they are the recipe's own tins. `near`: the mixture as written will do for them.
    """

    tins: tuple[tuple[int, Tin], ...]
    of_set: str
    factor: float
    factor_shown: float
    version: Version
    bakes: int
    written: bool
    near: bool

    @property
    def verdict(self) -> str:
        """Which of VERDICTS it is."""
        return AS_WRITTEN if self.written else NEARLY if self.near else RESIZED


class _Candidate(NamedTuple):
    """A choice before its amounts are worked out: most are never shown."""

    tins: tuple[tuple[int, Tin], ...]
    of_set: str
    factor: float
    bakes: int
    written: bool
    near: bool


@dataclass(frozen=True, slots=True)
class OnHand:
    """A mixture and its choices, best first; none if the house owns no tin of its kind."""

    batch: Batch
    choices: tuple[TinChoice, ...]

    @property
    def verdict(self) -> str:
        """Which of VERDICTS the best choice is."""
        return self.choices[0].verdict if self.choices else NO_TIN


@dataclass(frozen=True, kw_only=True)
class HandTable:
    """Every mixture baked in tins, and the names of those that need none."""

    rows: tuple[OnHand, ...]
    tinless: tuple[Batch, ...]
    owned: int
    near_percent: float
    worked: Worked


def hand_table(book: Book, facts: Facts, batches: Mapping[str, Batch] | None = None) -> HandTable:
    """All mixtures, by how they suit the tins owned: as written, then nearly, then at another size.

    `batches` are the mixtures, if they have been weighed already.
    """
    batches = weigh_all(book, facts) if batches is None else batches
    rows = [OnHand(batch, choices(batch, book, facts)) for batch in batches.values() if batch.tins]
    near = facts.numbers["egg tolerance"]
    return HandTable(
        rows=tuple(sorted(rows, key=_order)),
        tinless=tuple(batch for batch in batches.values() if not batch.tins),
        owned=sum(own.have > 0 for own in book.tins),
        near_percent=rounding.percent(near.value),
        worked=Worked(
            saying("tins_to_fill"),
            (
                saying("nearly_the_recipe", share=near.value),
                saying("too_many_bakes", bakes=MOST_BAKES),
                saying("deep_as_written"),
                saying("bakes_counted"),
            ),
            (near.source,),
        ),
    )


def _order(row: OnHand) -> tuple[int, str]:
    return VERDICTS.index(row.verdict), row.batch.mixture.name.lower()


def choices(batch: Batch, book: Book, facts: Facts) -> tuple[TinChoice, ...]:
    """The best ways to bake a mixture in the house's tins: in its own tins, then near ones, then by how far out they
    are."""
    candidates = [*_written(batch, book, facts), *_singles(batch, book, facts), *_sets(batch, book, facts)]
    best = sorted(candidates, key=_worth)[:FEW]
    widths_mm = [max(tin.bounds_mm[0] for _, tin in candidate.tins) for candidate in best]
    versions = versions_each(batch, [candidate.factor for candidate in best], widths_mm, facts)
    return tuple(
        TinChoice(
            tins=candidate.tins,
            of_set=candidate.of_set,
            factor=candidate.factor,
            factor_shown=rounding.factor(candidate.factor),
            version=whole,
            bakes=candidate.bakes,
            written=candidate.written,
            near=candidate.near,
        )
        for candidate, (_, whole, _) in zip(best, versions, strict=True)
    )


def _worth(candidate: _Candidate) -> tuple[bool, bool, int, float]:
    return not candidate.written, not candidate.near, candidate.bakes, abs(candidate.factor - 1)


@once
def _stock(book: Book) -> tuple[tuple[Tin, int], ...]:
    """Every tin owned, as measured, and how many; one written in two lines appears once."""
    stock: dict[Tin, int] = {}
    for own in book.tins:
        if own.have:
            stock[own.measured_tin] = stock.get(own.measured_tin, 0) + own.have
    return tuple(stock.items())


def _written(batch: Batch, book: Book, facts: Facts) -> Iterator[_Candidate]:
    """The recipe's own tins, if the house owns every one as deep as the cake needs."""
    wanted = []
    for count, tin in batch.tins:
        deep = [
            (owned, have)
            for owned, have in _stock(book)
            if same_outline(owned, tin) and _takes(batch, owned, count * wanted_ml(batch, tin, 1), count)
        ]
        if not deep:
            return
        wanted.append((count, *deep[0]))
    candidate = _candidate(batch, book, facts, wanted, written=True)
    if candidate:
        yield candidate


def _takes(batch: Batch, tin: Tin, volume_ml: float, count: int) -> bool:
    """Whether `count` of a tin hold the risen batter, if its depth is known."""
    if tin.depth_mm is None or tin.kind.kept == "share":
        return True
    return fits(tin.fill_mm(volume_ml / count) * batch.rise, tin.depth_mm)


def _singles(batch: Batch, book: Book, facts: Facts) -> Iterator[_Candidate]:
    """As many of one owned tin as take about the whole mixture; cups only for what is written for cups."""
    in_trays = batch.tins[0][1].kind.in_trays
    for tin, have in _stock(book):
        if tin.kind.in_trays != in_trays or any(same_outline(tin, written) for _, written in batch.tins):
            continue
        count = max(1, round(batch.batter_ml / wanted_ml(batch, tin, 1)))
        candidate = _candidate(batch, book, facts, [(count, tin, have)])
        if candidate:
            yield candidate


def _sets(batch: Batch, book: Book, facts: Facts) -> Iterator[_Candidate]:
    """All tins of an owned set at once."""
    sets: dict[str, list[tuple[int, Tin, int]]] = {}
    for own in book.tins:
        if own.of_set and own.have:
            sets.setdefault(own.of_set, []).append((1, own.measured_tin, own.have))
    for name, members in sets.items():
        candidate = _candidate(batch, book, facts, members, name)
        if candidate:
            yield candidate


def _candidate(
    batch: Batch, book: Book, facts: Facts, wanted: list[tuple[int, Tin, int]], of_set: str = "", written: bool = False
) -> _Candidate | None:
    """`wanted`: how many of a tin to fill, and how many there are. None for too many bakes, or none."""
    volumes = [wanted_ml(batch, tin, count) for count, tin, _ in wanted]
    factor = scaling.factor(sum(volumes), batch.batter_ml)
    bakes = 1
    for (count, tin, have), volume_ml in zip(wanted, volumes, strict=True):
        baked = fit(batch, book, facts, tin, count, volume_ml, batch.mass_g * factor)
        if baked.per_bake == 0:
            return None
        at_once = min(have, baked.per_bake * tin.holes) if baked.per_bake else have
        bakes = max(bakes, scaling.times_needed(baked.needed, at_once))
    if bakes > MOST_BAKES:
        return None
    near = scaling.within(factor - 1, facts.numbers["egg tolerance"].value)
    return _Candidate(
        tins=tuple((count, tin) for count, tin, _ in wanted),
        of_set=of_set,
        factor=factor,
        bakes=bakes,
        written=written,
        near=near,
    )


def by_verdict(table: HandTable) -> Mapping[str, int]:
    """How many mixtures there are for each of VERDICTS."""
    counts = Counter(row.verdict for row in table.rows)
    return {verdict: counts[verdict] for verdict in VERDICTS}
