"""What a whole cake weighs: tier by tier and part by part, with how far it may be out, and what each tier carries."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache, reduce
from itertools import accumulate

from tinbook.engine.centres import centre_up_mm
from tinbook.engine.pastes import net_g
from tinbook.facts import Fact, Facts
from tinbook.facts.rows import Range
from tinbook.models import Book
from tinbook.models.cakes import BOARD
from tinbook.models.ledger import Itself
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import tier_said
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.techniques.parts import Decoration
from tinbook.plans.true_size.assembled import put_together

KINDS = ("cake", "filling", "coat", "paste", "decorations", "board")
"""The kinds of weight; foam counts as cake, and a card as board."""
FLAT = ("sheet", "strip")
"""Forms of parts that are not as round as they are wide."""


@dataclass(frozen=True, slots=True)
class Heft:
    """A weight in g, and the least and the most it is likely to be."""

    mass_g: float = 0.0
    low_g: float = 0.0
    high_g: float = 0.0

    def __add__(self, other: Heft) -> Heft:
        return Heft(self.mass_g + other.mass_g, self.low_g + other.low_g, self.high_g + other.high_g)


NOTHING = Heft()


@dataclass(frozen=True, kw_only=True)
class TierWeight:
    """A tier as it is lifted, finished and on its card: what each of KINDS in it weighs, and what stands on it."""

    said: Saying
    tier: TierWorked
    parts: dict[str, Heft]
    carries: Heft

    @property
    def whole(self) -> Heft:
        """All of it."""
        return summed(self.parts.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureWeight:
    """A decoration: what all of it weighs, one of it, and how high above its foot the centre of that lies, mm; None
    where its parts do not say how they stand."""

    figure: CakeFigure
    whole: Heft
    each_g: float
    centre_mm: float | None


@dataclass(frozen=True, kw_only=True)
class CakeWeights:
    """Every tier from the bottom, what stands beside the cake, the board with what lies and stands on it, and the
    decorations. `two_g`: from what weight on it wants two people."""

    tiers: tuple[TierWeight, ...]
    beside: tuple[TierWeight, ...]
    board: dict[str, Heft]
    figures: tuple[FigureWeight, ...]
    two_g: float

    @property
    def whole(self) -> Heft:
        """The cake on its board, without what is served beside it."""
        return summed((*(tier.whole for tier in self.tiers), *self.board.values()))

    @property
    def board_whole(self) -> Heft:
        """The board with everything on it."""
        return summed(self.board.values())

    @property
    def by_kind(self) -> dict[str, Heft]:
        """All of it by kind."""
        every = (*(tier.parts for tier in self.tiers), self.board)
        return {kind: summed(parts.get(kind, NOTHING) for parts in every) for kind in KINDS}

    @property
    def heaviest(self) -> TierWeight | None:
        """The heaviest tier; None for a cake with only one."""
        return max(self.tiers, key=lambda each: each.whole.mass_g) if len(self.tiers) > 1 else None


def summed(weights: Iterable[Heft]) -> Heft:
    """All of them together."""
    return reduce(Heft.__add__, weights, NOTHING)


def cake_weights(cake: WholeCake, book: Book, facts: Facts) -> CakeWeights:
    """What a cake weighs.

    A cake in the oven loses as much as its kind does; what is beaten weighs as much as it holds of air; a part as
    near its sum as the trade's scales find it: each with the range that the facts give. Dowels and ribbon are left out:
    a few grams each.
    """
    figures = tuple(_figure(each, facts) for each in cake.figures)
    count = len(cake.tiers)
    parts = [_parts(tier, cake, figures, facts) for tier in cake.every_tier]
    wholes = [summed(each.values()) for each in parts]
    # what stands on each tier is all of those above it
    above = list(accumulate(reversed(wholes[1:count]), Heft.__add__, initial=NOTHING))[::-1] if count else []
    tiers = tuple(
        TierWeight(said=tier_said(tier, count), tier=tier, parts=own, carries=carries)
        for tier, own, carries in zip(cake.tiers, parts[:count], above, strict=True)
    )
    beside = tuple(
        TierWeight(said=tier_said(tier, count), tier=tier, parts=own, carries=NOTHING)
        for tier, own in zip(cake.beside, parts[count:], strict=True)
    )
    two_g = facts.numbers["weight for two"].value * 1000.0
    return CakeWeights(tiers=tiers, beside=beside, board=_board(cake, figures, facts), figures=figures, two_g=two_g)


def _parts(tier: TierWorked, cake: WholeCake, figures: Iterable[FigureWeight], facts: Facts) -> dict[str, Heft]:
    found = {"cake": _cake(tier, facts), **dict(_finish(tier))}
    if not tier.asked.beside:
        place = tier.asked.place
        found["decorations"] = summed(
            each.whole for each in figures if each.figure.on != BOARD and each.figure.tier == place
        )
        if len(cake.stacked.levels) > 1 and tier.covered and tier.covered.board.card.size_mm:
            found["board"] = _ranged(tier.covered.board.card.area_mm2 / 100.0, facts.numbers["card weighs"])
    return {kind: weight for kind, weight in found.items() if weight != NOTHING}


def _cake(tier: TierWorked, facts: Facts) -> Heft:
    """What of it is baked, or the foam of a dummy."""
    baked = tier.baked
    if baked is None:
        return _ranged(tier.cake.core_ml, facts.numbers["foam weighs"]) if tier.cake else NOTHING
    lost, learned = baked.batch.kind.loss, baked.batch.learned.losses
    if lost is None or learned:
        return Heft(tier.cake_g, tier.cake_g, tier.cake_g)
    stays = tier.cake_g / (1.0 - baked.batch.loss)
    loss = baked.batch.loss
    return Heft(tier.cake_g, stays * (1.0 - max(loss, lost.high)), stays * (1.0 - min(loss, lost.low)))


def _finish(tier: TierWorked) -> Iterator[tuple[str, Heft]]:
    """Its filling, coats and paste."""
    table, row = tier.table, tier.covered
    if tier.icing is not None:
        icing = tier.icing
        share = Heft(1.0, icing.low_g / icing.each_g, icing.high_g / icing.each_g)
        yield "coat", Heft(icing.net_g, icing.net_g * share.low_g, icing.net_g * share.high_g)
    if table is None or row is None:
        return
    made = list(zip(table.mixtures.values(), row.made, strict=True))
    yield "filling", summed(_by_air(each.filling_g, batch) for batch, each in made)
    yield "coat", summed(_by_air(each.crumb_g + each.final_g + each.border_g, batch) for batch, each in made)
    if row.paste and table.cover:
        yield "paste", _by_air(row.paste.net_g, table.cover)


def _by_air(mass_g: float, batch: Batch) -> Heft:
    """What is spread or rolled to a thickness weighs by what a millilitre of it does."""
    return _of_range(mass_g, batch.kind.gravity)


def _of_range(mass_g: float, per: Range) -> Heft:
    return Heft(mass_g, mass_g * per.low / per.typical, mass_g * per.high / per.typical)


def _ranged(amount: float, per: Fact) -> Heft:
    low, high = (per.value if end is None else end for end in (per.low, per.high))
    return Heft(amount * per.value, amount * low, amount * high)


def _board(cake: WholeCake, figures: Iterable[FigureWeight], facts: Facts) -> dict[str, Heft]:
    """The drum, the paste on it, and what stands on it."""
    found = {"decorations": summed(each.whole for each in figures if each.figure.on == BOARD)}
    drum = cake.stacked.drum
    if drum is not None and drum.board.size_mm:
        g_per_ml = facts.numbers["drum weighs"]
        low, high = (g_per_ml.value if end is None else end for end in (g_per_ml.low, g_per_ml.high))
        area, thick = drum.board.area_mm2, cake.stacked.drum_mm
        found["board"] = Heft(*(net_g(area, thick, each) for each in (g_per_ml.value, low, high)))
    if cake.stacked.paste_g:
        found["paste"] = _of_range(cake.stacked.paste_g, facts.kinds["sugarpaste"].gravity)
    return {kind: weight for kind, weight in found.items() if weight != NOTHING}


def _figure(figure: CakeFigure, facts: Facts) -> FigureWeight:
    near = facts.numbers["weighed against computed"].value
    mass_g = sum(part.total_g for part in figure.parts.parts)
    return FigureWeight(
        figure=figure,
        whole=Heft(mass_g, mass_g * (1.0 - near), mass_g * (1.0 + near)),
        each_g=mass_g / figure.count,
        centre_mm=centre_mm(figure),
    )


def centre_mm(figure: CakeFigure) -> float | None:
    """How high above its foot the centre of weight of a decoration lies, mm; None if its parts do not say how they
    stand."""
    return _centre_mm(Itself(figure.parts))


@lru_cache(maxsize=64)
def _centre_mm(made: Itself[Decoration]) -> float | None:
    whole = put_together(made.value)
    if whole is None:
        return None
    parts = {part.letter: part for part in made.value.parts}
    pieces = Counter(piece.letter for piece in whole.pieces)
    # what one piece of a part weighs: a rope that is coiled has its turns as pieces too
    each_g = {letter: parts[letter].each_g * parts[letter].count / count for letter, count in pieces.items()}
    moments = [
        (each_g[piece.letter], centre_up_mm(piece.rings[0], parts[piece.letter].form not in FLAT))
        for piece in whole.pieces
    ]
    return sum(mass * up for mass, up in moments) / sum(mass for mass, _ in moments)
