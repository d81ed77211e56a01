"""What can replace an ingredient, as small tables: this much of one for that much of another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from tinbook.engine import rounding
from tinbook.facts import Facts, Swap, SwapPart
from tinbook.models import Book
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import egg_part_g, g_per_ml
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.spooned import Spooned, spooned

SPOONFULS_ML = 60.0
"""Nobody measures more than this by the spoon."""
FINE_G = 5.0
"""Less than this is shown to half a gram."""
RATE_STEP = 0.001
"""How finely a rate is shown."""


@dataclass(frozen=True, slots=True)
class InPlace:
    """An amount of one part: exact and as measured out, in g, ml or tsp; `spoons` where it can be spooned."""

    exact: float
    shown: float
    unit: str
    spoons: Spooned | None


@dataclass(frozen=True, slots=True)
class SwapRow:
    """`amount` of what is asked for, and what replaces it, in the order of the parts."""

    amount: float
    parts: tuple[InPlace, ...]


@dataclass(frozen=True, kw_only=True)
class SwapTable:
    """A swap worked out for the house. `contains` are the allergens its parts bring, `unknown` the parts nobody has
    said anything about."""

    key: str
    swap: Swap
    rows: tuple[SwapRow, ...]
    contains: tuple[str, ...]
    unknown: tuple[str, ...]
    worked: Worked


def swap_table(key: str, book: Book, facts: Facts) -> SwapTable:
    """One swap by its key. Amounts in pieces are of the house's egg, where they are eggs."""
    swap = facts.swaps[key]
    contains, unknown = _allergens(swap, book, facts)
    rows = tuple(_row(amount, swap, book, facts) for amount in swap.amounts)
    return SwapTable(
        key=key, swap=swap, rows=rows, contains=contains, unknown=unknown, worked=_worked(swap, book, facts)
    )


def shares(swap: Swap) -> Mapping[str, float]:
    """How much replaces one of what is asked for, by part: as written, or as a share of the whole."""
    whole = sum(part.value for part in swap.parts) if swap.together else 1.0
    return {part.key: part.value / whole for part in swap.parts}


def _row(amount: float, swap: Swap, book: Book, facts: Facts) -> SwapRow:
    whole = amount * (egg_part_g(swap.each, book, facts) if swap.each else 1.0)
    share = shares(swap)
    parts = tuple(_in_place(whole * share[part.key], part, book, facts) for part in swap.parts)
    if swap.together:
        # the printed figures add up: the largest part gives way
        largest = max(parts, key=lambda part: part.exact)
        rest = sum(part.shown for part in parts if part is not largest)
        parts = tuple(replace(part, shown=whole - rest) if part is largest else part for part in parts)
    return SwapRow(amount, parts)


def _in_place(exact: float, part: SwapPart, book: Book, facts: Facts) -> InPlace:
    if part.unit == "tsp":
        return InPlace(exact, rounding.spoon(exact), "tsp", None)
    shown = rounding.at_least_one(exact, 1.0 if exact >= FINE_G else 0.5)
    return InPlace(exact, shown, part.unit, _spoons(exact, part, book, facts))


def _spoons(exact: float, part: SwapPart, book: Book, facts: Facts) -> Spooned | None:
    """A small amount by the spoon, if the weight of a spoonful is known."""
    measures = book.house.spoons
    name = book.house_word(part.key)
    if part.teaspoon_g:
        return Spooned(exact / part.teaspoon_g, rounding.spoon(exact / part.teaspoon_g), "tsp")
    if part.unit == "ml":
        volume_ml: float | None = exact
    else:
        density = g_per_ml(book.cards[name], facts) if name else None
        volume_ml = exact / density if density else None
    if volume_ml is None or volume_ml > SPOONFULS_ML:
        return None
    spoons = spooned(volume_ml, measures)
    return spoons if spoons.unit != "cup" else None


def _allergens(swap: Swap, book: Book, facts: Facts) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The allergens on the cards of what goes in, in the law's order, and the parts nobody has said anything about."""
    brought: set[str] = set()
    unknown = []
    for part in swap.parts:
        if part.leave:
            continue
        name = book.house_word(part.key)
        named = book.cards[name].known_allergens if name else None
        if named is None:
            unknown.append(part.key)
        brought.update(named or ())
    return tuple(row.label for key, row in facts.allergens.items() if key in brought), tuple(unknown)


def _worked(swap: Swap, book: Book, facts: Facts) -> Worked:
    unit = "g" if swap.each else swap.unit
    formula = saying("swap_by_share") if swap.together else saying("swap_by_rate")
    inputs = [_rate(part, share, unit) for part, share in zip(swap.parts, shares(swap).values(), strict=True)]
    if swap.each:
        grams = rounding.half_up(egg_part_g(swap.each, book, facts), 0.1)
        inputs.append(saying("swapped_egg", part=swap.each, egg_class=book.house.eggs, grams=grams))
    sources = dict.fromkeys(source for part in swap.parts for source in (part.source, *part.also))
    return Worked(formula, tuple(inputs), tuple(sources))


def _rate(part: SwapPart, share: float, unit: str) -> Saying:
    """A part's rate for one `unit`, and the range of the figure behind it; that figure too, if it differs."""
    return saying(
        "swap_rate",
        part=part.key,
        rate=rounding.half_up(share, RATE_STEP),
        part_unit=part.unit,
        unit=unit,
        figure=part.value if abs(share - part.value) > RATE_STEP / 2 else None,
        bounds=None if part.low is None or part.low == part.high else (part.low, part.high),
        kind=part.kind,
    )
