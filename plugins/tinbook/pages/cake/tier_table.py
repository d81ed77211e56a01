"""The table of a cake by tier, the top one first, level with the drawing: rows and spelled cells, and the sum below."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from tinbook.pages.base.grids import Cell, Head
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import plural, tin_name
from tinbook.pages.cake.addresses import Way, cut_plan, tier_at_bench
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import coat_g, filling_g
from tinbook.plans.cakes.whole import WholeCake

number = formats.number
NONE = Cell("none")
UNBROKEN = "\u2060–\u2060"
"""A dash at which no line breaks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TierRow:
    """A tier: where it stands, how high it is, its tins and the bench they lead to, its mixture and eggs, its cells.

    `high_mm` is how much of the drawing it is level with: itself, and the air below it. `plan`: how it is cut.
    """

    place: str
    high: str
    tins: str
    bench: Way | None
    mixture: str
    notes: tuple[str, ...]
    cells: tuple[Cell, ...]
    plan: Way | None
    high_mm: float
    portions: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TierTable:
    """Its columns, its tiers from the top, then what stands beside the cake, and the sum of each column."""

    heads: tuple[Head, ...]
    rows: tuple[TierRow, ...]
    sums: tuple[Cell, ...]
    portions: str

    @property
    def lines(self) -> int:
        """How many lines it has where tiers stand side by side."""
        return len(self.heads) + 2


@dataclass(frozen=True, slots=True)
class _Column:
    head: Head
    of: Callable[[TierWorked], Cell]
    in_all: Cell


def tier_table(cake: WholeCake, size: str, desk: Desk) -> TierTable:
    """The table. A column that no tier has anything in is left out."""
    columns = [each for each in _columns(cake) if any(each.of(tier) != NONE for tier in cake.every_tier)]
    standing = len(cake.tiers)
    rows = tuple(
        TierRow(
            place=_place(tier, standing),
            high=f"{formats.centimetres(tier.high_shown_mm)} high" if tier.cake else "",
            tins=_tins(tier),
            bench=tier_at_bench(cake.slug, size, tier) if tier.baked else None,
            mixture=tier.baked.batch.mixture.name if tier.baked else "dummy of foam",
            notes=tuple(_notes(tier)),
            cells=tuple(column.of(tier) for column in columns),
            plan=cut_plan(tier.asked.tin, desk) if _is_cut(tier) else None,
            high_mm=tier.high_mm + tier.asked.gap_mm,
            portions=str(tier.serves),
        )
        for tier in (*reversed(cake.tiers), *cake.beside)
    )
    return TierTable(
        heads=tuple(each.head for each in columns),
        rows=rows,
        sums=tuple(each.in_all for each in columns),
        portions=str(cake.totals.portions),
    )


def _is_cut(tier: TierWorked) -> bool:
    """Whether it is cut at all, as cups and foam are not."""
    return tier.baked is not None and not tier.asked.cups


def _place(tier: TierWorked, standing: int) -> str:
    if tier.asked.beside:
        return "Beside it"
    place = tier.asked.place + 1
    if standing == 1:
        return "Cake"
    if place in (1, standing):
        return "Base" if place == 1 else "Top"
    return "Middle" if standing == 3 else f"Tier {place}"


def _tins(tier: TierWorked) -> str:
    if tier.baked is None:
        return formats.tin_words(tier.asked.tin.name)
    return tin_name(tier.baked.fit.needed, tier.asked.tin).removesuffix(f"{formats.NBSP}cm")


def _notes(tier: TierWorked) -> Iterator[str]:
    baked = tier.baked
    if baked is None:
        return
    if baked.eggs:
        yield plural(baked.eggs, "egg")


def _columns(cake: WholeCake) -> Iterator[_Column]:
    total, stacked = cake.totals, cake.stacked
    yield _Column(Head("Batter", "g"), _batter, _grams(total.mixture_shown_g))
    yield _Column(Head("Layers"), _layers, Cell(str(total.layers), note="layers"))
    yield _Column(Head("Filling", "g"), lambda tier: _grams(filling_g(tier)[1]), _grams(total.filling_shown_g))
    yield _Column(Head("Coat", "g"), lambda tier: _grams(coat_g(tier)[1], _border(tier)), _grams(total.coat_shown_g))
    board = f"board {number(stacked.paste_shown_g)}" if stacked.paste_shown_g else ""
    yield _Column(Head("Cover", "g"), _cover, _grams(total.paste_shown_g, board))
    yield _Column(Head("Ribbon", "cm"), _ribbon, Cell(number(total.ribbon_shown_mm / 10.0)))
    dowels = Cell(str(total.dowels), note=plural(total.cards, "card") if total.cards else "")
    yield _Column(Head("Dowels, card"), lambda tier: _dowels(cake, tier), dowels)
    loads = "loads" if total.bakes != 1 else "load"
    yield _Column(Head("Bake", "min"), _bake, Cell(str(total.bakes), note=loads))


def _batter(tier: TierWorked) -> Cell:
    if tier.baked is None:
        return NONE
    stack = tier.baked.stack
    deep = f"{formats.millimetres(stack.batter_shown_mm)} deep" if stack else ""
    return Cell(number(tier.baked.whole.mass_shown_g), main=True, note=deep)


def _layers(tier: TierWorked) -> Cell:
    if tier.baked is None or tier.cake is None:
        return NONE
    stack = tier.baked.stack
    note = f"of {formats.millimetres(stack.layer_shown_mm)}" if stack else ""
    return Cell(str(tier.cake.layers), main=True, note=note)


def _grams(shown_g: float, note: str = "") -> Cell:
    return Cell(number(shown_g), main=True, note=note) if shown_g else NONE


def _border(tier: TierWorked) -> str:
    if tier.icing is not None:
        return f"{number(round(tier.icing.each_g, 1))}{formats.NBSP}g each"
    border = tier.asked.settled.border
    piped = tier.covered and any(row.border_g for row in tier.covered.made)
    return f"with {border.marks}" if border and piped else ""


def _cover(tier: TierWorked) -> Cell:
    row = tier.covered.paste if tier.covered else None
    if row is None or not row.made_g:
        return NONE
    wide, long = row.rolled_shown_mm
    rolled = formats.centimetres(wide) if row.disc else f"{number(wide / 10)} × {formats.centimetres(long)}"
    return Cell(number(row.made_shown_g), main=True, note=f"roll {rolled}")


def _ribbon(tier: TierWorked) -> Cell:
    if not tier.asked.ribbon or tier.covered is None:
        return NONE
    return Cell(number(tier.covered.board.cake_ribbon_shown_mm / 10.0))


def _dowels(cake: WholeCake, tier: TierWorked) -> Cell:
    dowels = cake.dowels(tier)
    several = len(cake.stacked.levels) > 1 and not tier.asked.beside
    card = tier.covered.board.card.size_mm if tier.covered and several else None
    on = f"card {formats.centimetres(card[0])}" if card else ""
    if dowels is None:
        return Cell("none", note=on) if on else NONE
    what = "pillars, " if dowels.pillars else ""
    said = f"{what}{formats.millimetres(dowels.long_shown_mm)}"
    return Cell(str(dowels.plan.count), main=True, note="; ".join(words for words in (said, on) if words))


def _bake(tier: TierWorked) -> Cell:
    baked = tier.baked
    if baked is None or baked.time is None:
        return NONE
    loads = [plural(baked.fit.bakes, "load")] if baked.fit.bakes != 1 else []
    span = formats.bounds(baked.time.low_shown_min, baked.time.high_shown_min).replace("–", UNBROKEN)
    return Cell(number(baked.time.check_shown_min), main=True, note="; ".join([span, *loads]))
