"""Which country's cup, spoons and tins: the measures a house bakes with."""

from dataclasses import dataclass
from typing import Literal

from tinbook.units.kitchen import CUPS_ML, ML_PER_UK_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE, SPOONS_ML
from tinbook.units.misread import Misread, suggestion

_FLUID_OUNCES_ML = {"US cup": ML_PER_US_FLUID_OUNCE, "UK cup": ML_PER_UK_FLUID_OUNCE}


Sold = Literal["cm", "inches"]
"""The measure a tin with two names, 20 cm and 8 in, is sold in, which gives its actual size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """The house's cup, spoons and fluid ounce in ml, and what its tins are sold in. None: it has not said which."""

    cup_ml: float | None
    tablespoon_ml: float
    teaspoon_ml: float
    fluid_ounce_ml: float | None = None
    tins: Sold = "cm"


def measures_of(cup: str | None, spoon: str, tins: Sold = "cm") -> Measures:
    """The measures of a house with this cup ("US cup", "metric cup", "UK cup" or None), these spoons and these tins.

    `spoon` is "metric", "US" or "Australian". A US or UK cup also settles whose fluid ounce it is. Raises Misread for
    any other word, with the place of the fault in that word.
    """
    if cup is not None and cup not in CUPS_ML:
        raise _unknown(cup, "cup", list(CUPS_ML))
    if spoon not in SPOONS_ML:
        raise _unknown(spoon, "set of spoons", list(SPOONS_ML))
    tablespoon_ml, teaspoon_ml = SPOONS_ML[spoon]
    return Measures(
        cup_ml=CUPS_ML[cup] if cup else None,
        tablespoon_ml=tablespoon_ml,
        teaspoon_ml=teaspoon_ml,
        fluid_ounce_ml=_FLUID_OUNCES_ML.get(cup or ""),
        tins=tins,
    )


METRIC = measures_of(None, "metric")


def _unknown(word: str, what: str, known: list[str]) -> Misread:
    hint = suggestion(word, known) or f"write {', '.join(known[:-1])} or {known[-1]}"
    return Misread(f'there is no {what} called "{word}"', hint, 0, len(word))
