"""The sizes a cake can be made in: as written, all tiers one size up or down, those with a name; and why others cannot.

A step is to the next size such a tin is sold in. What is offered can be built: its tins are owned or sold and go in the
oven, a board that wide is sold, dowels have room, and each tier is 5 to 10 cm narrower than the one below.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.scaling import goes_on_a_shelf
from tinbook.plans.base.weighing import same_outline
from tinbook.plans.cakes.asked import TierAsked, on_the_shelf, tiers_asked
from tinbook.plans.cakes.figures import cake_of_figure
from tinbook.plans.cakes.on_board import stands_there
from tinbook.plans.cakes.stacking import board_under, dowels_under
from tinbook.plans.cakes.tiers import cake_asked_for, can_be
from tinbook.plans.cakes.whole import Heights, as_high, own_heights, portion_of, written_tins
from tinbook.plans.portions.choices import Tier
from tinbook.plans.portions.cutting import Portion, cut_of
from tinbook.plans.portions.named_sets import judged
from tinbook.problems import nearest
from tinbook.tins import Tin, standard_tins
from tinbook.units import Sold

WRITTEN = "written"
"""The word for its own size."""
MOST_STEPS = 6
"""How many steps up and down are looked at."""
STOPS, NO_DRUM = "tier_too_wide", "tier_no_drum"
"""What rules out any size of a cake: a tin can be borrowed, a drum cannot."""
WIDTHS = ("ledge_narrow", "ledge_wide")
"""What rules out a size that the book has made up, but not one that the house has written down."""


class TooSmall(Exception):
    """A tier is smaller than a portion."""


@dataclass(frozen=True, kw_only=True)
class CakeSize:
    """A size of a cake, and what it serves. `why` says why it cannot be made, and is empty if it can; `borrow` are
    tins the house does not own, `remarks` what else is said about how it stands. `steps` counts up or down from as
    written; None for one with a name."""

    key: str
    said: Saying | str
    steps: int | None
    tins: tuple[Tin, ...]
    serves: int
    borrow: tuple[Tin, ...]
    why: tuple[Saying | str, ...]
    remarks: tuple[Saying, ...]

    @property
    def offered(self) -> bool:
        """Whether it can be made."""
        return not self.why

    @property
    def area_mm2(self) -> float:
        """All its tiers seen from above."""
        return sum(tin.area_mm2 for tin in self.tins)


@dataclass(frozen=True, kw_only=True)
class CakeSizes:
    """Every size looked at, small to large; `written` is the cake's own. `heights`: how high its tiers are in each."""

    sizes: tuple[CakeSize, ...]
    heights: Heights

    @property
    def written(self) -> CakeSize:
        """Its own size."""
        return next(size for size in self.sizes if size.steps == 0)

    @property
    def offered(self) -> tuple[CakeSize, ...]:
        """Those it can be made in."""
        return tuple(size for size in self.sizes if size.offered)

    @property
    def others(self) -> tuple[CakeSize, ...]:
        """Those it cannot, each with why."""
        return tuple(size for size in self.sizes if not size.offered)


def stepped(tin: Tin, steps: int) -> Tin | None:
    """The tin that many steps up or down among those sold in its shape; None if there is none.

    A tin that is sold in no other size, such as an outline, has no steps; nor have cups.
    """
    if tin.kind.in_trays:
        return tin
    ladder = _ladder(tin.shape, tin.sold)
    place = next((index for index, each in enumerate(ladder) if same_outline(each, tin)), None)
    if place is None or not 0 <= place + steps < len(ladder):
        return None
    return ladder[place + steps]


@cache
def _ladder(shape: str, sold: Sold) -> tuple[Tin, ...]:
    """The tins of a shape that are sold, small to large."""
    return tuple(sorted(standard_tins((shape,), sold), key=lambda each: (each.area_mm2, each.sizes_mm)))


def cake_sizes(
    design: CakeDesign,
    book: Book,
    facts: Facts,
    *,
    portion: str | tuple[float, float] | None = None,
    keep_top: bool = False,
) -> CakeSizes:
    """Every size of a sound cake: what each serves, and whether it can be made; its sums are worked out when asked for
    (`whole_cake` with its `tins` and the `heights`)."""
    own, heights = tiers_asked(design, written_tins(design), book, facts), own_heights(design, book, facts)
    served = portion_of(design, book, facts, portion)

    def size(key: str, said: Saying | str, steps: int | None, tins: tuple[Tin, ...]) -> CakeSize:
        told = tuple(_told(tins, steps, book, facts))
        why: tuple[Saying | str, ...] = tuple(each for each in told if _stops(each, steps))
        placed = (tier if tier.beside else replace(tier, tin=tins[tier.place]) for tier in own)
        asked = as_high(tuple(placed), heights, book)
        serves = 0
        if not why:
            try:
                serves = _serves(design, tins, asked, served, keep_top, book, facts)
            except TooSmall:
                why = (saying("tier_too_small"),)
            except AskError as error:
                why = (error.message,)
        return CakeSize(
            key=key,
            said=said,
            steps=steps,
            tins=tins,
            serves=serves,
            borrow=tuple(tier.tin for tier in asked if not tier.owned and not tier.dummy and not tier.beside),
            why=why,
            remarks=tuple(each for each in told if not _stops(each, steps)),
        )

    found = [size(key, said, steps, tins) for key, said, steps, tins in _looked_at(design)]
    return CakeSizes(sizes=tuple(sorted(found, key=lambda each: (each.area_mm2, each.steps is None))), heights=heights)


def _serves(
    design: CakeDesign, tins: tuple[Tin, ...], asked: tuple[TierAsked, ...], served: Portion, keep_top: bool,
    book: Book, facts: Facts,
) -> int:  # fmt: skip
    """What a size serves. AskError for what stops the cake from being worked out, TooSmall if a tier is smaller than
    a portion."""
    cakes = [cake_asked_for(tier) for tier in asked]
    for tier, cake in zip(asked, cakes, strict=True):
        can_be(tier, cake)
    for each in design.decorations:
        cake_of_figure(design, each, tins, book)
    stack = [tier for tier, cake in zip(asked, cakes, strict=True) if cake and not tier.beside]
    for lower, upper in pairwise(stack):
        dowels_under(lower, upper, book, facts)
    if stack and cakes[0] and not design.board.missing:
        board = board_under(design, stack[0], cakes[0], tins, book, facts)
        stands_there(design, tins, board, stack[0].settled, book, facts)
    counts = [
        0 if tier.dummy else tier.count * cut_of(tier.tin, served, cake.stands_mm if cake else 0.0).count
        for tier, cake in zip(asked, cakes, strict=True)
    ]
    if not all(count or tier.dummy for count, tier in zip(counts, asked, strict=True)):
        raise TooSmall
    return sum(counts) - (counts[len(tins) - 1] if keep_top else 0)


def _looked_at(design: CakeDesign) -> Iterator[tuple[str, Saying | str, int | None, tuple[Tin, ...]]]:
    """The sizes to look at: a key to ask by, what it is called, its steps, its tins."""
    own = written_tins(design)
    for steps in range(-MOST_STEPS, MOST_STEPS + 1):
        tins = own if not steps else tuple(stepped(tin, steps) for tin in own)
        if all(tin is not None for tin in tins) and (steps == 0 or tins != own):
            sound = tuple(tin for tin in tins if tin is not None)
            yield f"{steps:+d}" if steps else WRITTEN, saying("size_by_steps", steps=steps), steps, sound
    for name, sizes in (design.sizes or {}).items():
        yield name, name, None, tuple(each.tin for each in sizes)


def _told(tins: tuple[Tin, ...], steps: int | None, book: Book, facts: Facts) -> Iterator[Saying]:
    """What is said about a size before its sums."""
    cakes = [tin for tin in tins if tin.kind.solid == "upright" and not tin.kind.in_trays]
    tiers = [Tier(tin, on_the_shelf(tin, book)[1], (), 0.0) for tin in cakes]
    yield from (each for each in judged(tiers, book, facts, 1.0) if each.key != NO_DRUM) if tiers else ()
    for tin in tins:
        if tin not in cakes and not goes_on_a_shelf(tin, book, facts):
            yield saying("tier_too_wide", tin=tin.as_said)
        if steps is None and not on_the_shelf(tin, book)[1] and stepped(tin, 0) is None:
            yield saying("not_sold", tin=tin.as_said)


def _stops(told: Saying, steps: int | None) -> bool:
    """Whether it rules out a size: its own size and named ones stay as the house wrote them."""
    return told.key in (STOPS, "not_sold") or (bool(steps) and told.key in WIDTHS)


def size_for(sizes: CakeSizes, guests: int) -> CakeSize:
    """The smallest size offered that serves this many. AskError if none does."""
    serving = [size for size in sizes.offered if size.serves >= guests]
    if not serving:
        most = max((size.serves for size in sizes.offered), default=0)
        message = f"no size of this cake serves {guests}"
        raise AskError(message, f"the largest serves {most}: serve another cake with it")
    return min(serving, key=lambda size: (size.serves, bool(size.borrow), size.area_mm2))


def size_called(sizes: CakeSizes, word: str) -> CakeSize:
    """The size with this name, or this many steps (`+1`, `-2`). AskError if there is none, or it cannot be
    made."""
    asked = word.strip().lower()
    keys = {each.key.lower(): each for each in sizes.sizes}
    found = keys.get(asked) or keys.get(f"+{asked}")
    if found is None:
        close = nearest(asked, keys)
        told = ", ".join(each.key for each in sizes.offered)
        raise AskError(f'there is no size "{word}"', f'did you mean "{close}"?' if close else f"ask for {told}")
    return found
