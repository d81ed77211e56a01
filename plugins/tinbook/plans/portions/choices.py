"""What could serve guests: the house's tins as tiers, every set that can stand, and what can be served with it.

It is laid out once for a book; `guests` chooses from it, and so does the browser.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any

from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.scaling import goes_on_a_shelf
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.finish.boards import board_of
from tinbook.plans.finish.cake import Cake
from tinbook.plans.portions.cutting import Portion, cut_of, portion_sizes
from tinbook.tins import Tin

if TYPE_CHECKING:
    import numpy as np

    Counts = np.ndarray[Any, np.dtype[Any]]

STACKED = ("round", "square", "heart", "hexagon", "octagon", "petal", "oval")
TRAYS = ("rectangle", "sheet")
CUPS = ("cups", "standard")
"""Shape and size of the tin for cupcakes beside a cake."""
APART_MM, FAR_MM = 50.0, 101.6
"""How much narrower a tier is than the one below, both ways: 5 to 10 cm, or 2 to 4 in (common practice)."""
MOST_TIERS = 4


@dataclass(frozen=True, slots=True)
class Tier:
    """A tin as a tier: what it serves by kind of portion, and the area of its batter, in whole mm² so that the
    browser's sums agree."""

    tin: Tin
    owned: bool
    serves: tuple[int, ...]
    area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """Every set in the order of `sets`: what it serves by kind of portion, with and without its top tier; its area, how
    many tiers, whether the house owns them all, and whether all are of everyday shapes."""

    serves: Counts
    below: Counts
    area_mm2: Counts
    tiers: Counts
    owned: Counts
    everyday: Counts


@dataclass(frozen=True, kw_only=True)
class Choices:
    """Everything to choose from: tiers, and sets of them by their places, from the foot up; trays to stand beside.

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
        """What each set serves, worked out once. Areas in whole mm², so that integers hold them."""
        import numpy as np

        kinds = range(len(self.portions))
        serves = np.array([[tier.serves[kind] for kind in kinds] for tier in self.tiers] + [[0] * len(kinds)])
        areas = np.array([tier.area_mm2 for tier in self.tiers] + [0.0]).astype(np.int64)
        owned = np.array([tier.owned for tier in self.tiers] + [True])
        everyday = np.array([tier.tin.kind.everyday for tier in self.tiers] + [True])
        # Sets as rows of equal length: a missing tier points to a tier of nothing.
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
            everyday=everyday[places].all(axis=1),
        )

    @property
    def cups_ml(self) -> float:
        """Batter for a tray of cupcakes."""
        return self.cups.tin.brim_ml() / 2.0 * self.cups.tin.holes if self.cups else 0.0


def choices(
    book: Book, facts: Facts, height_mm: float | None = None, portions: tuple[Portion, ...] | None = None
) -> Choices:
    """What the house can choose from, for its own portions and at its usual cake height: tins that go in its oven and
    whose cakes have a standard-size drum."""
    settled = finishing(book.finish, facts)
    height_mm = height_mm or settled.heights_mm[0]
    outlines = tuple(
        (tin, owned)
        for tin, owned in all_outlines(book)
        if goes_on_a_shelf(tin, book, facts)
        and (tin.kind.in_trays or board_of(Cake(tin, height_mm, 1), settled, settled.board, facts).size_mm)
    )
    return _choices(outlines, portions or tuple(portion_sizes(book, facts).values()), height_mm)


@lru_cache(maxsize=8)
def _choices(outlines: tuple[tuple[Tin, bool], ...], portions: tuple[Portion, ...], height_mm: float) -> Choices:
    rows = [(tin, owned) for tin, owned in outlines if tin.kind.solid == "upright" and not tin.kind.in_trays]
    tiers = [tier_of(tin, owned, portions, height_mm) for tin, owned in rows]
    tiers = [tier for tier in tiers if min(tier.serves) > 0]
    cups = next((tier_of(tin, owned, portions, height_mm) for tin, owned in outlines if _bakes_cupcakes(tin)), None)
    sets = tuple(chain for shape in STACKED for chain in _stacks(tiers, shape))
    singles = tuple((place,) for place in range(len(tiers)))
    trays = tuple(place for place, tier in enumerate(tiers) if tier.tin.shape in TRAYS)
    return Choices(
        portions=portions, tiers=tuple(tiers), sets=singles + sets, trays=trays, cups=cups, height_mm=height_mm
    )


def _bakes_cupcakes(tin: Tin) -> bool:
    return (tin.shape, tin.size_label) == CUPS


def tier_of(tin: Tin, owned: bool, portions: Sequence[Portion], height_mm: float) -> Tier:
    """A tin as a tier, and what its cake `height_mm` high serves."""
    holes = tin.holes if tin.kind.in_trays else 1
    serves = tuple(holes * cut_of(tin, portion, height_mm).count for portion in portions)
    return Tier(tin, owned, serves, float(round(holes * tin.kind.area_mm2(tin.sizes_mm, 0.5))))


def _stacks(tiers: Sequence[Tier], shape: str) -> Iterator[tuple[int, ...]]:
    """Every set of two to MOST_TIERS tiers of one shape, with the usual ledge between; from the foot up."""
    places = sorted(
        (place for place, tier in enumerate(tiers) if tier.tin.shape == shape),
        key=lambda place: -tiers[place].tin.area_mm2,
    )

    def on(chain: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
        for place in places[places.index(chain[-1]) + 1 :]:
            if _stands_on(tiers[place].tin, tiers[chain[-1]].tin):
                yield (*chain, place)
                if len(chain) + 1 < MOST_TIERS:
                    yield from on((*chain, place))

    for place in places:
        yield from on((place,))


def _stands_on(upper: Tin, lower: Tin) -> bool:
    return all(fits(APART_MM, apart) and fits(apart, FAR_MM) for apart in ledges_mm(upper, lower))


def ledges_mm(upper: Tin, lower: Tin) -> tuple[float, float]:
    """How much narrower a tier is than the one below, across and along; negative where it hangs over."""
    width, length = (foot - top for top, foot in zip(upper.bounds_mm, lower.bounds_mm, strict=True))
    return width, length
