"""Eggs: the sizes by weight; numbers of each in the bowl; numbers of the house's eggs, white and yolk apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked

PIECES = (1, 2, 3, 4, 6)
COUNTS = (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12)
SHARES = {"whole egg": "shell share of egg", "egg white": "white share of egg", "egg yolk": "yolk share of egg"}
"""The facts about what is in an egg: for the whole one, how much is shell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EggRow:
    """An egg class: weights in g, with and without its shell, white and yolk."""

    egg_class: str
    shell_low_g: float | None
    shell_high_g: float | None
    shelled_g: float
    white_g: float
    yolk_g: float
    shelled_shown_g: float
    white_shown_g: float
    yolk_shown_g: float
    shelled_low_g: float | None
    shelled_high_g: float | None
    of_the_house: bool


@dataclass(frozen=True, slots=True)
class BowlRow:
    """`count` eggs out of their shells: grams by class, in the order of the facts."""

    count: int
    exact_g: tuple[float, ...]
    shown_g: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsRow:
    """`count` of the house's eggs: whole, white, yolk in g, each with the range for the middle of the class."""

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


def egg_rows(book: Book, facts: Facts) -> tuple[EggRow, ...]:
    """Egg classes, in the order of the standards."""
    shell = facts.numbers[SHARES["whole egg"]]
    return tuple(
        EggRow(
            egg_class=name,
            shell_low_g=egg.shell_low_g,
            shell_high_g=egg.shell_high_g,
            shelled_g=egg.shelled_g,
            white_g=egg.white_g,
            yolk_g=egg.yolk_g,
            shelled_shown_g=rounding.half_up(egg.shelled_g, 1.0),
            white_shown_g=rounding.half_up(egg.white_g, 1.0),
            yolk_shown_g=rounding.half_up(egg.yolk_g, 1.0),
            shelled_low_g=_out_of_shell(egg.shell_low_g, shell.high),
            shelled_high_g=_out_of_shell(egg.shell_high_g, shell.low),
            of_the_house=name == book.house.eggs,
        )
        for name, egg in facts.eggs.items()
    )


def classes_worked(facts: Facts) -> Worked:
    """How the classes were worked out."""
    inputs = saying("shell_of_egg", share=facts.numbers[SHARES["whole egg"]].value), saying("class_range")
    return Worked(saying("egg_shelled"), inputs, tuple(dict.fromkeys(egg.source for egg in facts.eggs.values())))


def _out_of_shell(in_shell_g: float | None, share: float | None) -> float | None:
    """The bound of a class without its shell, in whole grams; None for an open end."""
    return None if in_shell_g is None else rounding.half_up(in_shell_g * (1 - (share or 0.0)), 1.0)


def _parts_row(count: int, egg_g: float, shares: Sequence[tuple[float, float, float]]) -> PartsRow:
    """`count` eggs of `egg_g` in the shell; `shares` of it, usual, low and high: without shell, white, yolk."""
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
    """Numbers of eggs, in grams."""
    shelled = [egg.shelled_g for egg in facts.eggs.values()]
    bowl = []
    for count in COUNTS:
        exact = tuple(count * egg_g for egg_g in shelled)
        bowl.append(BowlRow(count, exact, tuple(rounding.half_up(grams, 1.0) for grams in exact)))
    egg = facts.eggs[book.house.eggs]
    shell, white, yolk = (facts.numbers[key] for key in SHARES.values())
    shares = [(1 - shell.value, 1 - (shell.high or shell.value), 1 - (shell.low or shell.value))]
    shares += [(part.value, part.low or part.value, part.high or part.value) for part in (white, yolk)]
    rows = [_parts_row(count, egg.typical_g, shares) for count in COUNTS]
    inputs = (
        saying("egg_weighs", egg_class=book.house.eggs, in_shell_g=egg.typical_g),
        *(
            saying("part_of_egg", part=part, low=low, high=high)
            for part, (_, low, high) in zip(SHARES, shares, strict=True)
        ),
    )
    sources = dict.fromkeys(source for row in (egg, shell) for source in (row.source, *row.also))
    worked = Worked(saying("eggs_by_share"), inputs, tuple(sources))
    return Eggs(classes=tuple(facts.eggs), house=book.house.eggs, bowl=tuple(bowl), parts=tuple(rows), worked=worked)


def by_class(part: str, book: Book, facts: Facts) -> tuple[tuple[ClassRow, ...], Worked]:
    """One part of the egg (`whole egg`, `egg white`, `egg yolk`) by weight, class by class."""
    rows = []
    for egg_class, egg in facts.eggs.items():
        piece_g = {"whole egg": egg.shelled_g, "egg white": egg.white_g, "egg yolk": egg.yolk_g}[part]
        grams = tuple(rounding.half_up(count * piece_g, 1.0) for count in PIECES)
        rows.append(ClassRow(egg_class, grams, egg_class == book.house.eggs))
    share = facts.numbers[SHARES[part]]
    low, high = share.low or share.value, share.high or share.value
    inputs = (saying("share_of_egg", part=part, share=share.value, low=low, high=high),)
    sources = dict.fromkeys([*(egg.source for egg in facts.eggs.values()), share.source])
    formula = saying("eggs_by_shell") if part == "whole egg" else saying("eggs_by_share")
    return tuple(rows), Worked(formula, inputs, tuple(sources))
