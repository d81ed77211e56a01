"""From guests to tins: which single tins and stacked sets serve so many, with least left over.

Every set that may be chosen is laid out once for a book; an answer only adds up and compares, here and in the browser.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from heapq import nsmallest

from tinbook.engine import layers as sums
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.finishing import Finishing, finishing
from tinbook.plans.portions import Portion, cut_of, portion_sizes
from tinbook.plans.shelf import all_outlines
from tinbook.plans.weighing import Batch, weigh
from tinbook.tins import Tin

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


@dataclass(frozen=True, slots=True)
class Summed:
    """A set: what it serves by kind of portion, and without its top tier; its area, and whether it is owned."""

    tiers: tuple[int, ...]
    serves: tuple[int, ...]
    below: tuple[int, ...]
    area_mm2: float
    owned: bool


def _summed(chain: tuple[int, ...], tiers: Sequence[Tier]) -> Summed:
    serves = tuple(map(sum, zip(*(tier.serves for tier in tiers), strict=True)))
    below = tuple(whole - top for whole, top in zip(serves, tiers[-1].serves, strict=True))
    return Summed(chain, serves, below, sum(tier.area_mm2 for tier in tiers), all(tier.owned for tier in tiers))


@dataclass(frozen=True)
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
    def summed(self) -> tuple[Summed, ...]:
        """What each set serves, worked out once."""
        return tuple(_summed(chain, [self.tiers[at] for at in chain]) for chain in self.sets)

    @property
    def cups_ml(self) -> float:
        """Batter for a tray of cupcakes."""
        return self.cups.tin.brim_ml() / 2.0 * self.cups.tin.holes if self.cups else 0.0


@dataclass(frozen=True, slots=True)
class Wish:
    """What is asked: guests, the place of the portion's kind; keep the top tier back; own tins only; what stands
    beside the cake. `stacked`: None for any cake, True for sets only, False for single tins only."""

    guests: int
    kind: int = 1
    keep_top: bool = False
    owned: bool = False
    beside: str = "nothing"
    stacked: bool | None = None


@dataclass(frozen=True, slots=True)
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
    return Choices(portions, tuple(tiers), singles + sets, trays, cups, height_mm)


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


_Found = tuple[int, int, int, tuple[int, ...], int, int, int, float]
"""Over, tins, whole mm², tiers, tray or -1, trays of cups, serves, area: in the order in which sets are preferred."""


def answers(made: Choices, wish: Wish, most: int = 5) -> tuple[Answer, ...]:
    """The best sets that serve: least over, then fewest tins, then least mixture."""
    best = nsmallest(most, _serving(made, wish))
    return tuple(
        Answer(tiers, None if tray < 0 else tray, cups, serves, over, tins, area_mm2)
        for over, tins, _, tiers, tray, cups, serves, area_mm2 in best
    )


def _serving(made: Choices, wish: Wish) -> Iterator[_Found]:
    guests, kind, alone = wish.guests, wish.kind, wish.beside == "nothing"
    for each in made.summed:
        tiers = each.tiers
        tins = len(tiers)
        if (wish.stacked is not None and wish.stacked != (tins > 1)) or (wish.keep_top and tins < 2):
            continue
        if wish.owned and not each.owned:
            continue
        serves = (each.below if wish.keep_top else each.serves)[kind]
        if alone:
            if serves >= guests:
                yield serves - guests, tins, round(each.area_mm2), tiers, -1, 0, serves, each.area_mm2
            continue
        for tray, cups, more, more_mm2 in _beside(made, wish, guests - serves):
            over = serves + more - guests
            if over >= 0:
                area_mm2 = each.area_mm2 + more_mm2
                besides = tins + cups + (tray >= 0)
                yield over, besides, round(area_mm2), tiers, tray, cups, serves + more, area_mm2


def _beside(made: Choices, wish: Wish, missing: int) -> Iterator[tuple[int, int, int, float]]:
    """What may stand beside a cake that leaves so many without: a tray or -1, trays of cups, what they serve."""
    if wish.beside == "a tray":
        for at in made.trays:
            tray = made.tiers[at]
            if tray.owned or not wish.owned:
                yield at, 0, tray.serves[wish.kind], tray.area_mm2
    elif made.cups and (made.cups.owned or not wish.owned):
        each = made.cups.serves[wish.kind]
        count = max(1, -(-missing // each))
        if count <= MOST_TRAYS:
            yield -1, count, count * each, 0.0


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
