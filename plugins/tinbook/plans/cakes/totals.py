"""What a whole cake takes: each mixture for all tiers together, paste by colour, portions, and every column's sum.

Exact totals add up exact figures, printed ones the printed figures.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.engine.packs import packs_for
from tinbook.engine.tolerance import whole_up
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.oven_loads import OvenPlan
from tinbook.plans.cakes.stacking import StackedUp
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.techniques.colours import Colouring
from tinbook.plans.techniques.shown import shown_g

COATED = ("crumb_coat", "final_coat")


@dataclass(frozen=True, slots=True)
class AmountFor:
    """An amount, exactly and as printed, and what it is for."""

    what: Saying
    mass_g: float
    shown_g: float


@dataclass(frozen=True, kw_only=True)
class MixtureTotal:
    """A filling or icing for the whole cake: what is made of it for each tier, in whole batches, and what is left."""

    batch: Batch
    amounts: tuple[AmountFor, ...]

    @property
    def made_g(self) -> float:
        """All of it, with what stays in the bowl and in the bag."""
        return sum(each.mass_g for each in self.amounts)

    @property
    def made_shown_g(self) -> float:
        """The sum of the printed amounts."""
        return sum(each.shown_g for each in self.amounts)

    @property
    def factor(self) -> float:
        """How many times the recipe, exactly."""
        return self.made_g / self.batch.makes_g

    @property
    def batches(self) -> int:
        """Whole batches of it."""
        return whole_up(self.factor)

    @property
    def over_g(self) -> float:
        """What is left over of them."""
        return self.batches * self.batch.makes_g - self.made_g

    @property
    def over_shown_g(self) -> float:
        """The same, as the scales show it."""
        return rounding.scales(self.over_g, self.batch.steps)


@dataclass(frozen=True, kw_only=True)
class PasteTotal:
    """A paste in one colour (None: uncoloured): rolled out for covers and the board, and in parts. `batch` is None for
    a paste that neither the book makes nor a card buys as one."""

    paste: str
    colour: Colouring | None
    batch: Batch | None
    amounts: tuple[AmountFor, ...]

    @property
    def mass_g(self) -> float:
        """All of it."""
        return sum(each.mass_g for each in self.amounts)

    @property
    def shown_g(self) -> float:
        """The sum of the printed amounts."""
        return round(sum(each.shown_g for each in self.amounts), 6)

    @property
    def pots(self) -> tuple[tuple[str, str, float | None], ...]:
        """What is kneaded into it: each pot, its shade, and grams (None if its card gives no weight)."""
        pots = self.colour.pots if self.colour else ()
        return tuple((pot.name, pot.shade, pot.for_g(self.mass_g)) for pot in pots)


@dataclass(frozen=True, kw_only=True)
class Totals:
    """The sum of every column of the table by tier, except for mixes and bakes, which tiers share. What has `shown` in
    its name sums what is printed."""

    tins: int
    mixture_g: float
    mixture_shown_g: float
    eggs: float
    layers: int
    filling_g: float
    filling_shown_g: float
    coat_g: float
    coat_shown_g: float
    paste_g: float
    paste_shown_g: float
    cards: int
    dowels: int
    ribbon_mm: float
    ribbon_shown_mm: float
    mixes: int
    bakes: int
    portions: int


def tier_said(tier: TierWorked, count: int) -> Saying:
    """Which tier it is, and of how many."""
    asked = tier.asked
    if asked.beside:
        return saying("beside_the_cake", tin=asked.tin.name)
    return saying("tier_of_cake", place=asked.place + 1, count=count, tin=asked.tin.name)


def coat_g(tier: TierWorked) -> tuple[float, float]:
    """What its coats and border weigh on it, or the icing of cups, exactly and as printed."""
    if tier.icing is not None:
        return tier.icing.net_g, tier.icing.net_shown_g
    table, row = tier.table, tier.covered
    if table is None or row is None:
        return 0.0, 0.0
    found = [row.coat_g(table.place_of(role), role) for role in COATED if role in table.roles]
    return sum(exact for exact, _ in found), sum(shown for _, shown in found)


def filling_g(tier: TierWorked) -> tuple[float, float]:
    """What its filling weighs, exactly and as printed."""
    table, row = tier.table, tier.covered
    if table is None or row is None or "filling" not in table.roles:
        return 0.0, 0.0
    return row.coat_g(table.place_of("filling"), "filling")


@dataclass(frozen=True, slots=True, kw_only=True)
class _MadeFor:
    """What is made for a tier of one recipe or card; of it, what stays in a bag with this nozzle (None: any)."""

    slug: str
    batch: Batch
    made_g: float
    made_shown_g: float
    bag_g: float
    nozzle: tuple[str, float] | None
    colour: str | None


def mixture_totals(tiers: Sequence[TierWorked], count: int) -> tuple[MixtureTotal, ...]:
    """Every filling and icing, in the order of the tiers that take it. An icing in one colour from one nozzle leaves
    one bagful, for however many tiers and cups: the first of them has it in its amount."""
    batches: dict[str, Batch] = {}
    amounts: dict[str, list[AmountFor]] = {}
    bags: dict[tuple[str, str | None], set[tuple[str, float] | None]] = {}
    for tier in tiers:
        for made in _made_for(tier):
            if not made.made_g:
                continue
            exact_g, printed_g = made.made_g, made.made_shown_g
            if made.bag_g and not _fills_a_bag(made, bags.setdefault((made.slug, made.colour), set())):
                exact_g -= made.bag_g
                printed_g = rounding.scales_up(exact_g, made.batch.steps)
            batches[made.slug] = made.batch
            amounts.setdefault(made.slug, []).append(AmountFor(tier_said(tier, count), exact_g, printed_g))
    return tuple(MixtureTotal(batch=batch, amounts=tuple(amounts[slug])) for slug, batch in batches.items())


def _fills_a_bag(made: _MadeFor, nozzles: set[tuple[str, float] | None]) -> bool:
    """Whether it wants a bag of its own, beside those filled with these `nozzles`: what any nozzle will do for takes
    the bag that is there, whichever of the two comes first."""
    if not nozzles:
        nozzles.add(made.nozzle)
        return True
    if made.nozzle is None or made.nozzle in nozzles:
        return False
    own = None not in nozzles
    nozzles.discard(None)
    nozzles.add(made.nozzle)
    return own


def _made_for(tier: TierWorked) -> Iterator[_MadeFor]:
    """What is made for a tier."""
    icing = tier.icing
    if icing is not None:
        yield _MadeFor(
            slug=icing.batch.slug, batch=icing.batch, made_g=icing.made_g, made_shown_g=icing.made_shown_g,
            bag_g=icing.bag_g, nozzle=None, colour=None,
        )  # fmt: skip
    if tier.table is not None and tier.covered is not None:
        border = tier.asked.settled.border
        colour = None if tier.covered.paste and tier.covered.paste.made_g else tier.asked.colour
        for (slug, batch), row in zip(tier.table.mixtures.items(), tier.covered.made, strict=True):
            nozzle = (border.nozzle, border.opening) if border and row.border_g else None
            yield _MadeFor(
                slug=slug, batch=batch, made_g=row.made_g, made_shown_g=row.made_shown_g, bag_g=row.bag_g,
                nozzle=nozzle, colour=colour,
            )  # fmt: skip


def paste_totals(
    tiers: Sequence[TierWorked], stacked: StackedUp, board_colour: str | None, figures: Iterable[CakeFigure],
    count: int, book: Book, facts: Facts,
) -> tuple[PasteTotal, ...]:  # fmt: skip
    """Every paste by colour: over the tiers, on the board, in parts and marks."""
    found: dict[tuple[str, str | None], list[AmountFor]] = {}
    batches: dict[str, Batch | None] = {}
    colours: dict[str | None, Colouring | None] = {None: None}
    for paste, batch, colour, amount in _pastes(tiers, stacked, board_colour, figures, count, book, facts):
        name = colour.name if colour else None
        colours[name] = colour
        batches[paste] = batches.get(paste) or batch
        found.setdefault((paste, name), []).append(amount)
    return tuple(
        PasteTotal(paste=paste, colour=colours[name], batch=batches[paste], amounts=tuple(amounts))
        for (paste, name), amounts in found.items()
    )


def _pastes(
    tiers: Sequence[TierWorked], stacked: StackedUp, board_colour: str | None, figures: Iterable[CakeFigure],
    count: int, book: Book, facts: Facts,
) -> Iterator[tuple[str, Batch | None, Colouring | None, AmountFor]]:  # fmt: skip
    for tier in tiers:
        row, cover = (tier.covered.paste, tier.table.cover) if tier.covered and tier.table else (None, None)
        if row and cover and row.made_g:
            colour = Colouring.called(tier.asked.colour, book, facts)
            yield cover.mixture.name, cover, colour, AmountFor(tier_said(tier, count), row.made_g, row.made_shown_g)
    if stacked.paste_g:
        word = tiers[0].asked.settled.made.board
        board = made_or_bought(word, book, facts) if word else None
        name = board.mixture.name if board else facts.kinds["sugarpaste"].title
        amount = AmountFor(saying("on_the_board"), stacked.paste_g, stacked.paste_shown_g)
        yield name, board, Colouring.called(board_colour, book, facts), amount
    for figure in figures:
        for need in figure.parts.colours:
            if need.mass_g:
                batch = made_or_bought(need.paste.slug or need.paste.name, book, facts)
                amount = AmountFor(saying("in_a_decoration", technique=figure.thing), need.mass_g, shown_g(need.mass_g))
                yield need.paste.name, batch, need.colour, amount


def totals(tiers: Sequence[TierWorked], stacked: StackedUp, oven: OvenPlan | None) -> Totals:
    """The sums of every column; mixes and bakes are those of all tiers in the `oven` together."""
    fillings, coats = [filling_g(tier) for tier in tiers], [coat_g(tier) for tier in tiers]
    pastes = [tier.covered.paste for tier in tiers if tier.covered and tier.covered.paste]
    ribbons = [tier.covered.board for tier in tiers if tier.covered and tier.asked.ribbon]
    baked = [tier.baked for tier in tiers if tier.baked]
    return Totals(
        tins=sum(each.tins for each in baked),
        mixture_g=sum(each.whole.mass_g for each in baked),
        mixture_shown_g=sum(each.whole.mass_shown_g for each in baked),
        eggs=sum(each.eggs for each in baked),
        layers=sum(tier.cake.layers for tier in tiers if tier.cake and tier.baked),
        filling_g=sum(exact for exact, _ in fillings),
        filling_shown_g=sum(shown for _, shown in fillings),
        coat_g=sum(exact for exact, _ in coats),
        coat_shown_g=sum(shown for _, shown in coats),
        paste_g=sum(row.made_g for row in pastes),
        paste_shown_g=sum(row.made_shown_g for row in pastes),
        cards=len(stacked.levels) if len(stacked.levels) > 1 else 0,
        dowels=sum(each.plan.count for each in stacked.dowels if each),
        ribbon_mm=sum(board.cake_ribbon_mm for board in ribbons),
        ribbon_shown_mm=sum(board.cake_ribbon_shown_mm for board in ribbons),
        mixes=oven.mixes if oven else sum(each.mixes for each in baked),
        bakes=len(oven.loads) if oven else sum(each.fit.bakes for each in baked),
        portions=sum(tier.serves for tier in tiers),
    )


def packs_of(total: PasteTotal) -> tuple[tuple[int, float], ...]:
    """The packs of a bought paste to buy; none for one that is made, or whose packs are not known."""
    return packs_for(total.mass_g, total.batch.packs_g) if total.batch and total.batch.packs_g else ()


def over_of_packs_g(total: PasteTotal) -> float:
    """What is left over from its packs, as the scales show it; 0 if there are none."""
    bought_g = sum(count * mass_g for count, mass_g in packs_of(total))
    return rounding.scales(bought_g - total.mass_g, total.batch.steps) if bought_g and total.batch else 0.0
