"""From guests to tins: which single tins and stacked sets serve so many, with least left over.

Every set that may be chosen is laid out once for a book; an answer only adds up and compares, here and in the browser.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any

from tinbook.engine import layers as sums
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.portions.cutting import Portion, cut_of, portion_sizes
from tinbook.tins import Tin

if TYPE_CHECKING:
    import numpy as np

    Counts = np.ndarray[Any, np.dtype[Any]]

STACKED = ("round", "square", "heart", "hexagon", "octagon", "petal", "oval")
TRAYS = ("rectangle", "sheet")
CUPS = "standard cups"
APART_MM = 50.0
"""A tier is at least so much narrower than the one it stands on, both ways (common practice)."""
MOST_TIERS = 4
MOST_TRAYS = 17
FEWEST, MOST = 10, 200
"""The guests the pages answer for."""
BESIDE = ("nothing", "cupcakes", "a tray")
GUESTS = (10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 120, 140, 160, 180, 200)
"""The numbers printed in the book."""
GRAIN = 1e-6


@dataclass(frozen=True, slots=True)
class Tier:
    """A tin as a tier: what it serves by kind of portion, and the area of its batter: in whole mm², so that the
    browser adds up the same."""

    tin: Tin
    owned: bool
    serves: tuple[int, ...]
    area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """Every set in the order of `sets`: what it serves by kind of portion, and without its top tier; its area,
    how many tiers, and whether the house owns them."""

    serves: Counts
    below: Counts
    area_mm2: Counts
    tiers: Counts
    owned: Counts


@dataclass(frozen=True, kw_only=True)
class Choices:
    """All that may be chosen from: tiers, and sets of them by their places, from the foot up; trays to stand beside.

    `cups`: a tray of cupcakes, whose batter is `cups_ml`: half of what it holds to the brim.
    """

    portions: tuple[Portion, ...]
    tiers: tuple[Tier, ...]
    sets: tuple[tuple[int, ...], ...]
    trays: tuple[int, ...]
    cups: Tier | None
    height_mm: float

    @cached_property
    def sums(self) -> Sums:
        """What each set serves, worked out once. Areas are in whole mm², so that whole numbers hold them."""
        import numpy as np

        kinds = range(len(self.portions))
        serves = np.array([[tier.serves[kind] for kind in kinds] for tier in self.tiers] + [[0] * len(kinds)])
        areas = np.array([tier.area_mm2 for tier in self.tiers] + [0.0]).astype(np.int64)
        owned = np.array([tier.owned for tier in self.tiers] + [True])
        # Sets as rows of one length: what is missing points to a tier of nothing.
        none = len(self.tiers)
        places = np.array([(*chain, *(none,) * (MOST_TIERS - len(chain))) for chain in self.sets])
        whole, count = serves[places].sum(axis=1), (places != none).sum(axis=1)
        top = places[np.arange(len(places)), count - 1]
        return Sums(
            serves=whole,
            below=whole - serves[top],
            area_mm2=areas[places].sum(axis=1),
            tiers=count,
            owned=owned[places].all(axis=1),
        )

    @property
    def cups_ml(self) -> float:
        """Batter for a tray of cupcakes."""
        return self.cups.tin.brim_ml() / 2.0 * self.cups.tin.holes if self.cups else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What is asked: guests, the place of the portion's kind; keep the top tier back; own tins only; what stands
    beside the cake. `stacked`: None for any cake, True for sets only, False for single tins only."""

    guests: int
    kind: int = 1
    keep_top: bool = False
    owned: bool = False
    beside: str = "nothing"
    stacked: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A set that serves: places of its tiers from the foot up, of its tray if any, how many trays of cupcakes.

    `serves` leaves out a top tier that is kept; `area_mm2` is of all that is baked but cupcakes.
    """

    tiers: tuple[int, ...]
    tray: int | None
    cups: int
    serves: int
    over: int
    tins: int
    area_mm2: float


@lru_cache(maxsize=8)
def _choices(outlines: tuple[tuple[Tin, bool], ...], portions: tuple[Portion, ...], height_mm: float) -> Choices:
    rows = [(tin, owned) for tin, owned in outlines if tin.kind.solid == "upright" and not tin.kind.in_trays]
    tiers = [_tier(tin, owned, portions, height_mm) for tin, owned in rows]
    tiers = [tier for tier in tiers if min(tier.serves) > 0]
    cups = next((_tier(tin, owned, portions, height_mm) for tin, owned in outlines if tin.name == CUPS), None)
    sets = tuple(chain for shape in STACKED for chain in _stacks(tiers, shape))
    singles = tuple((at,) for at in range(len(tiers)))
    trays = tuple(at for at, tier in enumerate(tiers) if tier.tin.shape in TRAYS)
    return Choices(
        portions=portions, tiers=tuple(tiers), sets=singles + sets, trays=trays, cups=cups, height_mm=height_mm
    )


def choices(
    book: Book, facts: Facts, height_mm: float | None = None, portions: tuple[Portion, ...] | None = None
) -> Choices:
    """What the house may choose from, for its own portions and at the height it usually makes its cakes."""
    height_mm = height_mm or finishing(book.finish, facts).heights_mm[0]
    return _choices(all_outlines(book), portions or tuple(portion_sizes(book, facts).values()), height_mm)


def _tier(tin: Tin, owned: bool, portions: Sequence[Portion], height_mm: float) -> Tier:
    holes = tin.holes if tin.kind.in_trays else 1
    serves = tuple(holes * cut_of(tin, portion, height_mm).count for portion in portions)
    return Tier(tin, owned, serves, float(round(holes * tin.kind.area_mm2(tin.sizes_mm, 0.5))))


def _stacks(tiers: Sequence[Tier], shape: str) -> Iterator[tuple[int, ...]]:
    """Every set of two to MOST_TIERS tiers of one shape, each far enough inside the one below; from the foot up."""
    places = sorted(
        (at for at, tier in enumerate(tiers) if tier.tin.shape == shape), key=lambda at: -tiers[at].tin.area_mm2
    )

    def on(chain: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
        for at in places[places.index(chain[-1]) + 1 :]:
            if _fits(tiers[at].tin, tiers[chain[-1]].tin):
                yield (*chain, at)
                if len(chain) + 1 < MOST_TIERS:
                    yield from on((*chain, at))

    for at in places:
        yield from on((at,))


def _fits(upper: Tin, lower: Tin) -> bool:
    return all(one <= other - APART_MM + GRAIN for one, other in zip(upper.bounds_mm, lower.bounds_mm, strict=True))


def answers(made: Choices, wish: Wish, most: int = 5) -> tuple[Answer, ...]:
    """The best sets that serve: least over, then fewest tins, then least mixture."""
    import numpy as np

    sums = made.sums
    fits = np.full(len(sums.tiers), True)
    if wish.stacked is not None:
        fits &= (sums.tiers > 1) == wish.stacked
    if wish.keep_top:
        fits &= sums.tiers > 1
    if wish.owned:
        fits &= sums.owned
    at = np.flatnonzero(fits)
    served = (sums.below if wish.keep_top else sums.serves)[at, wish.kind]
    found = [_nearest(made, wish, most, at, served, tray) for tray in _trays(made, wish)]
    return tuple(sorted((each for few in found for each in few), key=_rank)[:most])


def _trays(made: Choices, wish: Wish) -> tuple[int | None, ...]:
    """What may stand beside: the place of a tray, or None for nothing, or for cupcakes."""
    if wish.beside == "a tray":
        return tuple(at for at in made.trays if made.tiers[at].owned or not wish.owned)
    if wish.beside == "cupcakes" and (made.cups is None or (wish.owned and not made.cups.owned)):
        return ()
    return (None,)


def _nearest(made: Choices, wish: Wish, most: int, at: Counts, served: Counts, tray: int | None) -> Iterator[Answer]:
    """The best sets with one thing beside them, or nothing."""
    import numpy as np

    cups, more_mm2 = np.zeros(len(at), dtype=np.int64), 0
    if tray is not None:
        served, more_mm2 = served + made.tiers[tray].serves[wish.kind], int(made.tiers[tray].area_mm2)
    elif wish.beside == "cupcakes" and made.cups:
        each = made.cups.serves[wish.kind]
        cups = np.maximum(1, -((served - wish.guests) // each))
        served = served + cups * each
    tins = made.sums.tiers[at] + cups + (tray is not None)
    area = made.sums.area_mm2[at] + more_mm2
    good = np.flatnonzero((served >= wish.guests) & (cups <= MOST_TRAYS))
    if len(good) > most:
        # the rest serve too many to be among the best
        good = good[served[good] <= np.partition(served[good], most - 1)[most - 1]]
    order = good[np.lexsort((area[good], tins[good], served[good]))]
    # As many more as rank alike, which the order of their tiers then parts.
    last = order[min(most, len(order)) - 1] if len(order) else 0
    for one in order.tolist():
        if (served[one], tins[one], area[one]) > (served[last], tins[last], area[last]):
            return
        got = int(served[one])
        yield Answer(
            tiers=made.sets[at[one]],
            tray=tray,
            cups=int(cups[one]),
            serves=got,
            over=got - wish.guests,
            tins=int(tins[one]),
            area_mm2=float(area[one]),
        )


def _rank(each: Answer) -> tuple[float, ...]:
    return (each.over, each.tins, each.area_mm2, *each.tiers, -1 if each.tray is None else each.tray)


def batter_mm(batch: Batch, settled: Finishing, height_mm: float) -> float:
    """How deep the batter of one tier stands in all, for its layers with filling to stand `height_mm` high."""
    layer_mm = sums.layer_for_mm(height_mm, settled.layers, settled["filling"])
    return sums.batter_for_mm(layer_mm * settled.layers, batch.rise, settled["level_off"])


def batter_ml(batch: Batch, settled: Finishing, made: Choices, each: Answer) -> float:
    """The batter a set takes."""
    return each.area_mm2 * batter_mm(batch, settled, made.height_mm) / 1000.0 + each.cups * made.cups_ml


def factor(batch: Batch, settled: Finishing, made: Choices, each: Answer) -> float:
    """How many times the mixture is made for a set."""
    return batter_ml(batch, settled, made, each) / batch.batter_ml


def mixtures(book: Book, facts: Facts, height_mm: float) -> Iterator[tuple[Batch, float]]:
    """The mixtures that cakes of such a height are baked from, and how deep their batter stands for one."""
    for slug, mixture in book.mixtures.items():
        batch = weigh(slug, mixture, book, facts)
        if batch.tins and not any(tin.kind.in_trays for _, tin in batch.tins):
            try:
                yield batch, batter_mm(batch, finishing(book.finish, facts, mixture.finish), height_mm)
            except ValueError:
                # Its own layers and filling do not go into that height.
                continue
