"""Everything used for a whole cake: ingredients, colours, pastes, and all that is not food, counted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.scaling import owned_count
from tinbook.plans.base.versions import Version, version_each
from tinbook.plans.base.weighing import Batch, steps_of
from tinbook.plans.cakes.figures import Besides, food_of_linked, not_food_of_linked, techniques_of
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.techniques.kit import Inedible, kit
from tinbook.plans.techniques.shown import shown_mm
from tinbook.tins import Tin

LEAST_OFF, MOST_OFF = -1.0 / 3.0, 0.5
"""By how much of the size wanted a cutter may be smaller or larger and still do for it. Our own judgement."""


@dataclass(frozen=True, kw_only=True)
class IngredientUsed:
    """An ingredient over all mixtures of the cake: `pieces` of it counted (whole eggs), all of it in g.

    `shown_g` sums what each mixture weighs out as printed; what is counted or spooned, at its weight on the scales.
    """

    name: str
    pieces: float
    mass_g: float
    shown_g: float
    of: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PotUsed:
    """A pot of colour: grams over all pastes; None if its card gives no weight."""

    name: str
    shade: str
    mass_g: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TinUsed:
    """A tin: how many are filled for the cake, and how many the house has."""

    tin: Tin
    fill: int
    have: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterUsed:
    """A cutter: its shape, the size wanted, and the nearest one in the drawer (empty: none of that shape is near)."""

    form: str
    wanted_mm: tuple[float, ...]
    owned: str


@dataclass(frozen=True, slots=True)
class ToolUsed:
    """A tool, and how many of it are wanted at once."""

    name: str
    count: int


@dataclass(frozen=True, slots=True)
class NozzleUsed:
    """A nozzle, and how wide its opening is."""

    nozzle: str
    opening_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutUsed:
    """Something cut to length or bought by size, and not food: dowels, pillars, ribbon, cards, the drum. `wide_mm` is
    how wide or thick it is, `long_mm` how long each is; `disc`: it is round."""

    what: str
    count: int
    long_mm: float | None
    wide_mm: float | None
    hidden: bool
    disc: bool = False


@dataclass(frozen=True, kw_only=True)
class EverythingUsed:
    """One list for the whole cake. `besides` is what its techniques take on top of that; `not_food` is everything
    inedible in, under or on it; `at_work` what goes back to the bench while it is made, each with the technique it is
    used in."""

    ingredients: tuple[IngredientUsed, ...]
    besides: tuple[Besides, ...]
    pots: tuple[PotUsed, ...]
    tins: tuple[TinUsed, ...]
    tools: tuple[ToolUsed, ...]
    cutters: tuple[CutterUsed, ...]
    nozzles: tuple[NozzleUsed, ...]
    cut: tuple[CutUsed, ...]
    not_food: tuple[Inedible, ...]
    at_work: tuple[tuple[str, Inedible], ...]


@dataclass
class _Sum:
    """An ingredient as it is added up."""

    pieces: float = 0.0
    mass_g: float = 0.0
    shown_g: float = 0.0
    of: dict[str, None] = field(default_factory=dict)


def everything_used(cake: WholeCake, book: Book, facts: Facts) -> EverythingUsed:
    """Everything a cake takes."""
    cut, pots = tuple(things_cut(cake, book, facts)), _pots(cake)
    own = {each.what for each in cut}
    counted = {each.name for each in pots} | {each.paste for each in cake.pastes}
    counted |= {each.batch.mixture.name for each in cake.mixtures}
    left, back = not_food_of_linked(cake.design, cake.figures, own, book, facts)
    return EverythingUsed(
        ingredients=ingredients_used(cake, book, facts),
        besides=food_of_linked(cake.design, cake.figures, counted, book, facts),
        pots=pots,
        tins=_tins(cake, book),
        tools=tools_used(cake, book, facts),
        cutters=_cutters(cake),
        nozzles=_nozzles(cake),
        cut=cut,
        not_food=(*(thing for figure in cake.figures for thing in figure.kit.not_food), *left),
        at_work=back,
    )


def ingredients_used(cake: WholeCake, book: Book, facts: Facts) -> tuple[IngredientUsed, ...]:
    """Every ingredient of every mixture, each once, the heaviest first: sponges with whole eggs as they are baked,
    fillings and icings by weight, pastes as they are rolled out or had ready for parts."""
    return ingredients_of(versions_used(cake, facts), book)


def ingredients_of(versions: Iterable[tuple[Batch, Version]], book: Book) -> tuple[IngredientUsed, ...]:
    """Every ingredient of some mixtures as they are weighed out, each once, the heaviest first."""
    sums: dict[str, _Sum] = {}
    for batch, version in versions:
        for line, amount in zip(batch.ingredients, version.amounts, strict=True):
            written = line.mass_g if amount.unit == "g" else line.amount
            mass_g = line.mass_g * amount.exact / written if written else 0.0
            one = sums.setdefault(line.name, _Sum())
            one.pieces += amount.shown if amount.unit == "" else 0.0
            one.mass_g += mass_g
            one.shown_g += amount.shown if amount.unit == "g" else rounding.scales(mass_g, steps_of(book))
            one.of[batch.mixture.name] = None
    found = [
        IngredientUsed(name=name, pieces=one.pieces, mass_g=one.mass_g, shown_g=round(one.shown_g, 6), of=tuple(one.of))
        for name, one in sums.items()
    ]
    return tuple(sorted(found, key=lambda each: -each.mass_g))


def versions_used(cake: WholeCake, facts: Facts) -> Iterator[tuple[Batch, Version]]:
    """Every mixture of a cake as it is weighed out for it."""
    for tier in cake.every_tier:
        if tier.baked:
            yield tier.baked.batch, tier.baked.whole
    for total in cake.mixtures:
        yield total.batch, by_weight(total.batch, total.factor, facts)
    for batch, mass_g in pastes_used(cake):
        yield batch, by_weight(batch, mass_g / batch.makes_g, facts)


def by_weight(batch: Batch, factor: float, facts: Facts) -> Version:
    """A mixture at a factor, all of it weighed."""
    return version_each(batch, [factor], [factor], [0.0], facts, by_weight=True)[0]


def pastes_used(cake: WholeCake) -> Iterator[tuple[Batch, float]]:
    """Each paste, and grams of it: over tiers and board as rolled out, in decorations as is to be had ready."""
    taken: dict[str, float] = {}
    batches: dict[str, Batch] = {}
    for total in cake.pastes:
        if total.batch is not None:
            batches[total.paste] = total.batch
            taken[total.paste] = taken.get(total.paste, 0.0) + total.mass_g
    for figure in cake.figures:
        for ready in figure.ready:
            if ready.paste in taken and ready.ready_g is not None:
                taken[ready.paste] += ready.ready_g - ready.parts_g
    yield from ((batches[paste], mass_g) for paste, mass_g in taken.items())


def _pots(cake: WholeCake) -> tuple[PotUsed, ...]:
    grams: dict[tuple[str, str], float | None] = {}
    pots = [pot for total in cake.pastes for pot in total.pots]
    pots += [pot for tint in cake.tints for pot in tint.pots or ()]
    for name, shade, mass_g in pots:
        before = grams.get((name, shade), 0.0)
        grams[name, shade] = None if mass_g is None or before is None else before + mass_g
    return tuple(PotUsed(name=name, shade=shade, mass_g=mass_g) for (name, shade), mass_g in grams.items())


def _tins(cake: WholeCake, book: Book) -> tuple[TinUsed, ...]:
    fill: dict[Tin, int] = {}
    for tier in cake.every_tier:
        if tier.baked:
            fill[tier.asked.tin] = fill.get(tier.asked.tin, 0) + tier.baked.fit.needed
    return tuple(TinUsed(tin=tin, fill=count, have=owned_count(book, tin)) for tin, count in fill.items())


def tools_used(cake: WholeCake, book: Book, facts: Facts) -> tuple[ToolUsed, ...]:
    """The tools of its decorations and of the techniques that go with it, each once, as many as are wanted at once: one
    pair of hands uses them in turn."""
    wanted = dict[str, int]()
    for technique in techniques_of(cake.design, book).values():
        for row in kit(technique, book, facts).tools:
            if not row.not_food:
                wanted[row.name] = max(row.count, wanted.get(row.name, 0))
    return tuple(ToolUsed(name, count) for name, count in wanted.items())


def _cutters(cake: WholeCake) -> tuple[CutterUsed, ...]:
    parts = (part for figure in cake.figures for part in figure.parts.parts)
    found = (
        CutterUsed(
            form=part.cutter.form,
            wanted_mm=tuple(map(shown_mm, part.cutter.wanted_mm)),
            owned=part.cutter.owned if part.cutter.off is not None and LEAST_OFF <= part.cutter.off <= MOST_OFF else "",
        )
        for part in parts
        if part.cutter
    )
    return tuple(dict.fromkeys(found))


def _nozzles(cake: WholeCake) -> tuple[NozzleUsed, ...]:
    """Of borders that are really piped."""
    piped = (
        tier.asked.settled.border
        for tier in cake.tiers
        if tier.covered and any(row.border_g for row in tier.covered.made)
    )
    return tuple(dict.fromkeys(NozzleUsed(border.nozzle, border.opening) for border in piped if border))


def things_cut(cake: WholeCake, book: Book, facts: Facts) -> Iterator[CutUsed]:
    """Boards, cards, ribbon and dowels: what is bought by size or cut to length. A cake of one tier has a card of its
    size if one of its techniques says so."""
    drum, stacked = cake.stacked.drum, cake.stacked
    ribbon_mm = facts.numbers["board ribbon"].value
    if drum is not None and drum.board.size_mm:
        wide_mm, long_mm = drum.board.size_mm
        disc = drum.board.disc
        yield CutUsed(what="drum", count=1, long_mm=long_mm, wide_mm=wide_mm, hidden=False, disc=disc)
        yield CutUsed(what="ribbon", count=1, long_mm=drum.ribbon_shown_mm, wide_mm=ribbon_mm, hidden=False)
    stacking = [tier for tier in cake.tiers if tier.covered is not None]
    yield from _cards(stacking if len(stacking) > 1 or _on_a_card(cake, book) else ())
    for tier in stacking:
        if tier.asked.ribbon and tier.covered:
            long = tier.covered.board.cake_ribbon_shown_mm
            yield CutUsed(what="ribbon", count=1, long_mm=long, wide_mm=ribbon_mm, hidden=False)
    if stacked.through_mm is not None:
        across_mm = facts.numbers["centre dowel across"].value
        yield CutUsed(what="centre-dowel", count=1, long_mm=stacked.through_shown_mm, wide_mm=across_mm, hidden=True)
    for dowels in stacked.dowels:
        if dowels is not None:
            yield CutUsed(
                what="pillar" if dowels.pillars else "dowel",
                count=dowels.plan.count,
                long_mm=dowels.long_shown_mm,
                wide_mm=dowels.plan.across_mm,
                hidden=True,
            )


def _on_a_card(cake: WholeCake, book: Book) -> bool:
    materials = (line for each in techniques_of(cake.design, book).values() for line in each.materials)
    return any(line.not_food and line.take.name.split()[-1:] == ["card"] for line in materials)


def _cards(tiers: Iterable[TierWorked]) -> Iterator[CutUsed]:
    for tier in tiers:
        card = tier.covered.board.card if tier.covered else None
        if card is not None and card.size_mm:
            # what stands on pillars stands on their separator plate
            what = "separator-plate" if tier.asked.gap_mm else "card"
            wide_mm, long_mm = card.size_mm
            yield CutUsed(what=what, count=1, long_mm=long_mm, wide_mm=wide_mm, hidden=False, disc=card.disc)
