"""From guests to tins: which single tins and stacked sets serve that many, with the least left over.

An answer only adds up and compares what `choices` has laid out, here and in the browser.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Protocol

from tinbook.engine import layers as sums
from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import ledger_of
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.portions.choices import Choices

if TYPE_CHECKING:
    from tinbook.plans.portions.choices import Counts

MOST_TRAYS = 17
FEWEST, MOST = 10, 200
"""The numbers of guests the pages answer for."""
BESIDE = ("nothing", "cupcakes", "a tray")
GUESTS = (10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 120, 140, 160, 180, 200)
"""The numbers printed in the book."""


MIXTURES = "mixtures_for_tiers"
"""What they are called in the book's ledger."""


class Filling(Protocol):
    """Whatever has a volume of batter as written."""

    @property
    def batter_ml(self) -> float:
        """That volume."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TierMixture:
    """A mixture that tiers are baked from: how much batter it makes, and how deep that stands for one tier."""

    slug: str
    name: str
    batter_ml: float
    deep_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """The question: guests, the place of the portion's kind; keep the top tier back; own tins only; what stands beside
    the cake. `stacked`: None for any cake, True for sets only, False for single tins only."""

    guests: int
    kind: int = 1
    keep_top: bool = False
    owned: bool = False
    beside: str = "nothing"
    stacked: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A set that serves: whether all of it is of everyday shapes, and owned; places of its tiers from the foot up, of
    its tray if any, and how many trays of cupcakes.

    `serves` leaves out a top tier that is kept back; `area_mm2` covers everything baked but cupcakes.
    """

    everyday: bool
    owned: bool
    tiers: tuple[int, ...]
    tray: int | None
    cups: int
    serves: int
    over: int
    tins: int
    area_mm2: float


def answers(choices: Choices, wish: Wish, most: int = 5) -> tuple[Answer, ...]:
    """The best sets that serve: of everyday shapes first, then of tins the house owns; then least over, then fewest
    tins, then least mixture."""
    import numpy as np

    every = choices.sums
    allowed = np.full(len(every.tiers), True)
    if wish.stacked is not None:
        allowed &= (every.tiers > 1) == wish.stacked
    if wish.keep_top:
        allowed &= every.tiers > 1
    if wish.owned:
        allowed &= every.owned
    sets = np.flatnonzero(allowed)
    served = (every.below if wish.keep_top else every.serves)[sets, wish.kind]
    best = [answer for tray in _trays(choices, wish) for answer in _nearest(choices, wish, most, sets, served, tray)]
    return tuple(sorted(best, key=_rank)[:most])


def _trays(choices: Choices, wish: Wish) -> tuple[int | None, ...]:
    """What can stand beside: the place of a tray, or None for nothing, or for cupcakes."""
    if wish.beside == "a tray":
        return tuple(place for place in choices.trays if choices.tiers[place].owned or not wish.owned)
    if wish.beside == "cupcakes" and (choices.cups is None or (wish.owned and not choices.cups.owned)):
        return ()
    return (None,)


def _nearest(
    choices: Choices, wish: Wish, most: int, sets: Counts, served: Counts, tray: int | None
) -> Iterator[Answer]:
    """The best of `sets`, which serve `served`, with one thing beside them, or nothing."""
    import numpy as np

    cups, more_mm2 = np.zeros(len(sets), dtype=np.int64), 0
    everyday, owned = choices.sums.everyday[sets], choices.sums.owned[sets]
    if tray is not None:
        beside = choices.tiers[tray]
        served, more_mm2 = served + beside.serves[wish.kind], int(beside.area_mm2)
        everyday, owned = everyday & beside.tin.kind.everyday, owned & beside.owned
    elif wish.beside == "cupcakes" and choices.cups:
        by_tray = choices.cups.serves[wish.kind]
        cups = np.maximum(1, -((served - wish.guests) // by_tray))
        served, owned = served + cups * by_tray, owned & choices.cups.owned
    tins = choices.sums.tiers[sets] + cups + (tray is not None)
    area = choices.sums.area_mm2[sets] + more_mm2
    good = np.flatnonzero((served >= wish.guests) & (cups <= MOST_TRAYS))
    keys = area, tins, served, ~owned, ~everyday
    order = good[np.lexsort([key[good] for key in keys])]
    # Plus those that rank equal, which the order of their tiers then separates.
    last = order[min(most, len(order)) - 1] if len(order) else 0
    for at, index in enumerate(order.tolist()):
        if at >= most and any(key[index] != key[last] for key in keys):
            return
        serves = int(served[index])
        yield Answer(
            everyday=bool(everyday[index]),
            owned=bool(owned[index]),
            tiers=choices.sets[sets[index]],
            tray=tray,
            cups=int(cups[index]),
            serves=serves,
            over=serves - wish.guests,
            tins=int(tins[index]),
            area_mm2=float(area[index]),
        )


def _rank(answer: Answer) -> tuple[float, ...]:
    return (
        not answer.everyday, not answer.owned, answer.over, answer.tins, answer.area_mm2,
        *answer.tiers, -1 if answer.tray is None else answer.tray,
    )  # fmt: skip


def batter_mm(batch: Batch, settled: Finishing, height_mm: float) -> float:
    """How deep one tier's batter stands in all its tins, for its filled layers to be `height_mm` high."""
    layer_mm = sums.layer_for_mm(height_mm, settled.layers, settled["filling"])
    return sums.batter_for_mm(layer_mm * settled.layers, batch.rise, settled["level_off"])


def own_batter_mm(batch: Batch) -> float:
    """How deep one tier's batter stands in all the tins it is written for, as on the mixture's page."""
    return batch.depth_mm * sum(count for count, _ in batch.tins)


def batter_ml(deep_mm: float, choices: Choices, answer: Answer) -> float:
    """The batter a set takes, `deep_mm` deep in all under each of its tiers."""
    return answer.area_mm2 * deep_mm / 1000.0 + answer.cups * choices.cups_ml


def factor(batch: Filling, deep_mm: float, choices: Choices, answer: Answer) -> float:
    """How many times the mixture is made for a set."""
    return batter_ml(deep_mm, choices, answer) / batch.batter_ml


def needs_shown(batch: Filling, deep_mm: float, choices: Choices, answer: Answer) -> tuple[float, float]:
    """The factor, and the batter in litres, as printed."""
    litres = rounding.half_up(batter_ml(deep_mm, choices, answer) / 1000.0, 0.1)
    return rounding.factor(factor(batch, deep_mm, choices, answer)), litres


def mixtures(book: Book, facts: Facts) -> tuple[TierMixture, ...]:
    """The mixtures that tiers are baked from."""
    return ledger_of(book).work(MIXTURES, partial(_mixtures, book, facts))


def know_mixtures(book: Book, facts: Facts) -> None:
    """Let the book's ledger work them out, to see whether they are what they were."""
    ledger_of(book).made_by(MIXTURES, partial(_mixtures, book, facts))


def _mixtures(book: Book, facts: Facts) -> tuple[TierMixture, ...]:
    return tuple(
        TierMixture(slug=batch.slug, name=batch.mixture.name, batter_ml=batch.batter_ml, deep_mm=own_batter_mm(batch))
        for batch in weigh_all(book, facts).values()
        if batch.tins and not any(tin.kind.kept == "share" for _, tin in batch.tins)
    )
