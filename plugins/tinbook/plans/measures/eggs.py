"""Eggs in the bowl: so many of each class in grams; and so many of the house's, white and yolk apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.worked import Worked

PIECES = (1, 2, 3, 4, 6)
COUNTS = (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12)


@dataclass(frozen=True, slots=True)
class BowlRow:
    """`count` eggs out of their shells: grams by class, in the order of the facts."""

    count: int
    exact_g: tuple[float, ...]
    shown_g: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsRow:
    """`count` eggs of the house: whole, white, yolk in g, each with the range of the class's middle."""

    count: int
    whole_g: float
    whole_low_g: float
    whole_high_g: float
    white_g: float
    white_low_g: float
    white_high_g: float
    yolk_g: float
    yolk_low_g: float
    yolk_high_g: float


@dataclass(frozen=True, slots=True)
class ClassRow:
    """Whole eggs, whites or yolks of one class: grams of `PIECES` of them."""

    egg_class: str
    grams_g: tuple[float, ...]
    of_the_house: bool


@dataclass(frozen=True, kw_only=True)
class Eggs:
    """Both tables. `house` is the class of the house."""

    classes: tuple[str, ...]
    house: str
    bowl: tuple[BowlRow, ...]
    parts: tuple[PartsRow, ...]
    worked: Worked


def _parts_row(count: int, egg_g: float, shares: Sequence[tuple[float, float, float]]) -> PartsRow:
    """So many eggs of `egg_g` in the shell; `shares` of it as usual, low and high: without shell, white, yolk."""
    whole, white, yolk = ([rounding.half_up(count * egg_g * share, 1.0) for share in part] for part in shares)
    return PartsRow(
        count=count,
        whole_g=whole[0],
        whole_low_g=whole[1],
        whole_high_g=whole[2],
        white_g=white[0],
        white_low_g=white[1],
        white_high_g=white[2],
        yolk_g=yolk[0],
        yolk_low_g=yolk[1],
        yolk_high_g=yolk[2],
    )


def eggs(book: Book, facts: Facts) -> Eggs:
    """So many eggs, in grams."""
    shelled = [egg.shelled_g for egg in facts.eggs.values()]
    bowl = []
    for count in COUNTS:
        exact = tuple(count * one for one in shelled)
        bowl.append(BowlRow(count, exact, tuple(rounding.half_up(each, 1.0) for each in exact)))
    egg = facts.eggs[book.house.eggs]
    shell, white, yolk = (facts.numbers[f"{part} share of egg"] for part in ("shell", "white", "yolk"))
    shares = [(1 - shell.value, 1 - (shell.high or shell.value), 1 - (shell.low or shell.value))]
    shares += [(part.value, part.low or part.value, part.high or part.value) for part in (white, yolk)]
    rows = [_parts_row(count, egg.typical_g, shares) for count in COUNTS]
    inputs = (
        f"one {book.house.eggs} egg weighs {egg.typical_g:g} g in its shell",
        *(f"{name} {low:.1%} to {high:.1%} of it" for name, (_, low, high) in zip(PARTS, shares, strict=True)),
    )
    sources = dict.fromkeys(source for each in (egg, shell) for source in (each.source, *each.also))
    worked = Worked("grams = eggs × weight in the shell × share", inputs, tuple(sources))
    return Eggs(classes=tuple(facts.eggs), house=book.house.eggs, bowl=tuple(bowl), parts=tuple(rows), worked=worked)


def by_class(part: str, book: Book, facts: Facts) -> tuple[tuple[ClassRow, ...], Worked]:
    """One part of the egg (`whole egg`, `egg white`, `egg yolk`) by weight, class by class."""
    name = {"whole egg": "shell", "egg white": "white", "egg yolk": "yolk"}[part]
    rows = []
    for key, egg in facts.eggs.items():
        one = {"shell": egg.shelled_g, "white": egg.white_g, "yolk": egg.yolk_g}[name]
        grams = tuple(rounding.half_up(count * one, 1.0) for count in PIECES)
        rows.append(ClassRow(key, grams, key == book.house.eggs))
    share = facts.numbers[f"{name} share of egg"]
    low, high = share.low or share.value, share.high or share.value
    inputs = (f"the {name} is {share.value:.1%} of the egg in its shell ({low:.1%} to {high:.1%})",)
    sources = dict.fromkeys([*(egg.source for egg in facts.eggs.values()), share.source])
    formula = (
        "grams = eggs × weight in the shell × share"
        if name != "shell"
        else ("grams = eggs × weight in the shell × (1 − share of the shell)")
    )
    return tuple(rows), Worked(formula, inputs, tuple(sources))


PARTS = ("out of the shell", "white", "yolk")
