"""The decorations of a cake: a technique's parts at the size of the tier they go with, and where they stand."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignDecoration, Technique
from tinbook.models.cakes import BOARD, SIDE, TOP
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.versions import Amount
from tinbook.plans.techniques.kit import MOST_PEOPLE, Inedible, Kit, kit, rounded
from tinbook.plans.techniques.parts import LEAST_CAKE_MM, MOST_CAKE_MM, Decoration, decoration
from tinbook.plans.techniques.ready import PasteReady, pastes_ready
from tinbook.plans.techniques.technique import with_used
from tinbook.plans.true_size.standing import high_mm
from tinbook.tins import Tin, standard_tins

USUAL_GAP_MM = 10.0
"""Between one decoration and the next of its kind, as they are drawn. Our own judgement."""


COUNTED_AS: Mapping[str, tuple[str, ...]] = {
    "dowel": ("dowel", "pillar"),
    "pillar": ("dowel", "pillar"),
    "through-dowel": ("centre-dowel",),
    "centre-dowel": ("centre-dowel",),
    "card": ("card", "separator-plate"),
    "plate": ("card", "separator-plate"),
    "separator-plate": ("card", "separator-plate"),
    "board": ("drum",),
    "drum": ("drum",),
    "ribbon": ("ribbon",),
}
"""What the materials of a technique call what a cake counts itself, a `cake card` like any other card."""


@dataclass(frozen=True, kw_only=True)
class CakeFigure:
    """A decoration, `count` of it, for the tier at `tier` (from 0, at the bottom): its parts and marks, the paste to
    have ready and its kit, for all of them together.

    `high_mm`: how high one stands, put together where its parts say how; `gap_mm`: the space from one to the next.
    `parts_g`: what all of them weigh.
    """

    slug: str
    technique: Technique
    on: str
    tier: int
    count: int
    note: str
    parts: Decoration
    ready: tuple[PasteReady, ...]
    kit: Kit
    high_mm: float
    gap_mm: float

    @property
    def thing(self) -> str:
        """What it is, in the words of its file name: `clump of thrift`."""
        return self.slug.replace("-", " ")

    @property
    def parts_g(self) -> float:
        """What all of them weigh."""
        return self.parts.total_g


def techniques_of(design: CakeDesign, book: Book) -> Mapping[str, Technique]:
    """Every technique a cake is made with, each once: its decorations', those it names, and those that these use."""
    return with_used((*(each.technique for each in design.decorations), *design.techniques), book)


def not_food_of_linked(
    design: CakeDesign, figures_: tuple[CakeFigure, ...], own: Collection[str], book: Book, facts: Facts
) -> tuple[tuple[Inedible, ...], tuple[tuple[str, Inedible], ...]]:
    """What the techniques it is made with leave in, under or on a cake: neither its `own` dowels and boards, nor what
    another of them has counted, such as the sticks of its decorations or the one card under it; and the tools that go
    back to the bench, each with its technique."""
    counted: dict[str, float] = {}
    for thing in (thing for figure in figures_ for thing in figure.kit.not_food):
        counted[_singular(thing.name)] = counted.get(_singular(thing.name), 0.0) + thing.amount.exact
    left, back, decorating = list[Inedible](), list[tuple[str, Inedible]](), {figure.slug for figure in figures_}
    for slug, technique in techniques_of(design, book).items():
        if slug in decorating:
            continue
        every = kit(technique, book, facts)
        back += [(technique.name, thing) for thing in replace(every, materials=(), supports=()).not_food]
        for thing in replace(every, tools=(), supports=()).not_food:
            name = _singular(thing.name)
            more = thing.amount.exact - counted.get(name, 0.0)
            if more > 0.0 and not any(
                what in own for what in COUNTED_AS.get(name.removeprefix("cake ").replace(" ", "-"), ())
            ):
                counted[name] = thing.amount.exact
                left.append(replace(thing, amount=Amount(more, more, thing.amount.unit)))
    return tuple(left), tuple(back)


@dataclass(frozen=True, slots=True, kw_only=True)
class Besides:
    """A material that a cake's own sums do not count, as much of it as the pages of its techniques say, and which of
    them take it."""

    name: str
    wanted: Saying | str
    amount: Amount
    of: tuple[str, ...]


def food_of_linked(
    design: CakeDesign, figures_: tuple[CakeFigure, ...], counted: Collection[str], book: Book, facts: Facts
) -> tuple[Besides, ...]:
    """What the techniques a cake is made with take to eat besides what it has `counted`, by name, and its coats:
    water, paint, strands, and what they say is extra, such as icing to fix with. As much as each page says for its own
    size, for every one of a decoration, and of what is used to fix it."""
    decorating = {figure.slug for figure in figures_}
    kits = [(each.technique, each.kit) for each in figures_]
    for slug, each in techniques_of(design, book).items():
        if slug not in decorating:
            times = sum(figure.count for figure in figures_ if slug in figure.technique.uses)
            kits.append((each, kit(each, book, facts, min(max(times, 1), MOST_PEOPLE))))
    found: dict[tuple[str, Saying | str, str], Besides] = {}
    for technique, every in kits:
        for row in every.materials:
            known = row.amount.unit or row.name in book.cards
            kind = facts.kinds.get(book.mixtures[row.mixture].kind) if row.mixture else None
            own = row.name in counted or bool(kind and kind.plays)
            if row.not_food or not known or (own and not technique.materials[row.index].extra):
                continue
            key = row.name, row.wanted, row.amount.unit
            so_far = found.get(key)
            exact = row.amount.exact + (so_far.amount.exact if so_far else 0.0)
            amount = Amount(exact, rounded(exact, row.amount.unit, book), row.amount.unit)
            of = dict.fromkeys((*(so_far.of if so_far else ()), technique.name))
            found[key] = Besides(name=row.name, wanted=row.wanted, amount=amount, of=tuple(of))
    return tuple(found.values())


def _singular(name: str) -> str:
    """A name in the singular, as far as an s goes."""
    return name.lower().removesuffix("s")


def tier_of_figure(each: DesignDecoration, tiers: int) -> int:
    """The place of the tier it goes with: as written, or the top one for a decoration on top, otherwise the bottom
    one."""
    if each.tier is not None:
        return each.tier - 1
    return tiers - 1 if each.on == TOP else 0


def figures(design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts) -> tuple[CakeFigure, ...]:
    """The decorations of a sound design whose tiers are in these `tins`. AskError if a cake is too small or too
    large for their parts."""
    return tuple(_figure(design, each, tins, book, facts) for each in design.decorations)


def _figure(design: CakeDesign, each: DesignDecoration, tins: tuple[Tin, ...], book: Book, facts: Facts) -> CakeFigure:
    place = tier_of_figure(each, len(tins))
    technique = book.techniques[each.technique]
    cake = cake_of_figure(design, each, tins, book)
    parts = decoration(technique, cake, book, facts, each.count)
    return CakeFigure(
        slug=each.technique,
        technique=technique,
        on=each.on,
        tier=place,
        count=each.count,
        note=each.note or "",
        parts=parts,
        ready=pastes_ready(technique, parts, book, facts),
        kit=kit(technique, book, facts, each.count),
        high_mm=high_mm(parts, each.on == SIDE),
        gap_mm=USUAL_GAP_MM if each.gap is None else each.gap,
    )


def cake_of_figure(design: CakeDesign, each: DesignDecoration, tins: tuple[Tin, ...], book: Book) -> Tin:
    """The cake its parts are worked out for, its tiers in these `tins`. AskError if that is too small or too
    large."""
    place = tier_of_figure(each, len(tins))
    cake = sized_for(each, design.tiers[place].tier.tin, tins[place])
    if not LEAST_CAKE_MM <= cake.bounds_mm[0] <= MOST_CAKE_MM:
        name = book.techniques[each.technique].name
        raise AskError(
            f'the parts of "{name}" are for cakes 10 to 30 cm across, not for {cake.as_said}',
            'say what size they are, such as "sized for: round 20 cm"',
        )
    return cake


def sized_for(each: DesignDecoration, written: Tin, tin: Tin) -> Tin:
    """The cake its parts are worked out for: its tier, or the one it is sized for, which grows with the tier, to the
    nearest size that is sold."""
    if each.sized_for is None:
        return tin
    own = each.sized_for
    grown = tin.bounds_mm[0] / written.bounds_mm[0]
    if grown == 1.0 or own.kind.main != 1 or own.kind.extras:
        return own
    wide_mm = own.sizes_mm[0] * grown
    return min(standard_tins((own.shape,), own.sold), key=lambda each: abs(each.sizes_mm[0] - wide_mm))


def standing_mm(figures_: tuple[CakeFigure, ...], tiers_mm: float, paste_mm: float = 0.0) -> float:
    """How high a cake stands above its drum with its decorations: its tiers reach up to `tiers_mm`, and paste on the
    drum is `paste_mm` thick."""
    tops = [tiers_mm + each.high_mm for each in figures_ if each.on == TOP]
    return max([tiers_mm, *tops, *(paste_mm + each.high_mm for each in figures_ if each.on == BOARD)])


def hung_g(figures_: tuple[CakeFigure, ...], tier: int) -> float:
    """What hangs on the side of a tier weighs."""
    return sum(each.parts_g for each in figures_ if each.on == SIDE and each.tier == tier)
