"""How many portions a cake cuts into, and how: a plan a knife can follow, for every outline.

Squares, rectangles and sheets are a whole grid. Every other outline serves what makers serve from it, a share of its
area over the portion, and is cut into exactly as many pieces: in straight strips, each cut across; a petal, a cake with
a tube, a dome and a ball in rings cut towards the middle; and a round either way.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from tinbook.engine import portions as sums
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.portions.cut import Cut, Job
from tinbook.plans.portions.ring_cuts import in_rings
from tinbook.plans.portions.strips import in_strips, laid, uneven
from tinbook.tins import Ring, Tin, cutting

SIDES = {
    "finger": ("finger portion width", "finger portion length"),
    "dessert": ("dessert portion width", "dessert portion length"),
}
"""The facts that fill in if the house has not said how large a portion is."""
BOXES = ("square", "rectangle", "sheet", "loaf")
HOUSE, ASKED = "house", "asked"
"""Who says how large a portion is, if not a source among the facts."""
SAME_RADIUS = 1e-3
"""How far the corners of a drawn tube may be from one circle, squared, as a share."""


@dataclass(frozen=True, slots=True)
class Portion:
    """What one guest gets, seen from above, mm. `said_by`: a source's key, HOUSE or ASKED."""

    kind: str
    short_mm: float
    long_mm: float
    said_by: str

    @property
    def area_mm2(self) -> float:
        """Its area."""
        return self.short_mm * self.long_mm


def portion_sizes(book: Book, facts: Facts) -> Mapping[str, Portion]:
    """Fingers and desserts, the trade's where the house has not said, then whatever else the house calls a portion."""
    portions = {}
    for kind, keys in SIDES.items():
        width, length = (facts.numbers[key] for key in keys)
        portions[kind] = _portion(kind, (width.value, length.value), width.source)
    for kind, sides in (book.finish.portions or {}).items():
        portions[kind] = _portion(kind, sides, HOUSE)
    return portions


def _portion(kind: str, sides_mm: tuple[float, float], said_by: str) -> Portion:
    return Portion(kind, min(sides_mm), max(sides_mm), said_by)


def portion_called(kind: str, sizes: Mapping[str, Portion]) -> Portion:
    """The portion of a kind. Raises AskError if the house has none by that name."""
    if kind not in sizes:
        raise AskError(
            f'there is no portion called "{kind}"', f'ask for {", ".join(sizes)}, or a size such as "30 mm x 40 mm"'
        )
    return sizes[kind]


def room(tin: Tin, portion: Portion, height_mm: float) -> float:
    """How many portions a cake is, by area; by volume where its height varies."""
    job = Job(tin, portion.short_mm, portion.long_mm, height_mm)
    return tin.kind.parts * job.size / job.portion


def cut_of(tin: Tin, portion: Portion, height_mm: float) -> Cut:
    """The first plan of a cake, and the one it is counted by. A count of 0: it is smaller than a portion."""
    return _cut(tin, portion.short_mm, portion.long_mm, height_mm if tin.kind.solid != "upright" else 0.0)


@lru_cache(maxsize=4096)
def ring_cut(tin: Tin, portion: Portion) -> Cut | None:
    """The second plan of a round: rings, or wedges where it is small."""
    job = Job(tin, portion.short_mm, portion.long_mm)
    return in_rings(job) if tin.shape == "round" and job.most > 1 else None


@lru_cache(maxsize=8192)
def _cut(tin: Tin, short_mm: float, long_mm: float, height_mm: float) -> Cut:
    job = Job(tin, short_mm, long_mm, height_mm)
    if tin.kind.in_trays:
        return job.cut("one_each", (1,), ())
    if job.most < 1:
        return job.cut("none", (), ())
    if job.solid or tin.shape == "petal" or _tubed(job.rings):
        return in_rings(job)
    return _boxed(job) if tin.shape in BOXES else in_strips(job)


def _tubed(rings: tuple[Ring, ...]) -> bool:
    """Whether its hole is a tube in the middle."""
    if len(rings) != 2:
        return False
    squares = [x * x + y * y for x, y in rings[1]]
    return max(squares) - min(squares) <= SAME_RADIUS * max(squares)


def _boxed(job: Job) -> Cut:
    """A whole grid, the strip left over cut the other way; uneven strips where its pieces would be far larger than a
    portion."""
    left, low, right, high = cutting.spans(job.rings)
    upright, rows = sums.grid(right - left, high - low, job.short_mm, job.long_mm)
    fewest = sums.fewest(job.size, job.portion, sums.LARGEST)
    if sum(rows) < fewest:
        upright = right - left > high - low
        strips = max(1, min(fewest, round(max(right - left, high - low) / job.long_mm)))
        return uneven(job, sums.apportioned(cutting.strip_areas(laid(job.rings, upright), strips), fewest), upright)
    if len(set(rows)) > 1:
        return uneven(job, rows, upright)
    if upright:
        rows = (len(rows),) * rows[0]
    edges = tuple((high - low) * row / len(rows) for row in range(len(rows) + 1))
    return job.cut("grid", rows, edges)
