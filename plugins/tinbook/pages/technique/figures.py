"""Figures of parts in words, without their unit if that is given elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from tinbook.pages.spelling import formats
from tinbook.plans.techniques.shown import shown_g, shown_mm, shown_percent, shown_pot_g


def mm(length_mm: float) -> str:
    """`12.5`, `104`."""
    return f"{shown_mm(length_mm):g}"


def weight_g(mass_g: float) -> str:
    """`9.9`, `69`."""
    return formats.number(shown_g(mass_g))


def pot_g(mass_g: float) -> str:
    """`0.13`, `2.4`."""
    return formats.number(shown_pot_g(mass_g))


def exact(value: float) -> str:
    """A figure for the browser to multiply, to nine digits."""
    return f"{value:.9g}"


def hours(low_h: float, high_h: float) -> str:
    """`12–24 h`."""
    return formats.with_unit(f"{low_h:g}–{high_h:g}", "h")


def percent(share: float) -> str:
    """`18%`, unsigned."""
    return f"{shown_percent(share):g}%"


def runs(names: Sequence[str], places: Iterable[int]) -> str:
    """`1 to 7 and 9`, `A, B and D to F`: the `names` at some places, runs of three or more by their ends."""
    words = list[str]()
    for _, group in groupby(enumerate(sorted(set(places))), lambda pair: pair[1] - pair[0]):
        run = [names[place] for _, place in group]
        words += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else run
    return formats.sentence(words)
