"""The trade's two names for one length: 8 in and 20 cm are the same tin.

Common practice: shops print both on one label though 8 in is 203.2 mm. Which is true depends on where the tin was made.
The house says so once (`tins sold in`), and every tin with both names then has its actual size by that one, so that
factors between inch tins are those of inches. A size in millimetres is exact: the owner measured it.
"""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.units import MM_PER_INCH, Sold

CM_OF_INCH: dict[float, float] = {
    1: 2.5, 1.5: 4, 2: 5, 3: 7.5, 4: 10, 5: 13, 6: 15, 7: 18, 8: 20, 9: 23, 10: 25,
    11: 28, 12: 30, 13: 33, 14: 35, 15: 38, 16: 40, 17: 43, 18: 46,
}  # fmt: skip
INCH_OF_MM: dict[float, float] = {cm * 10: inch for inch, cm in CM_OF_INCH.items()}
"""A length's name in inches, by its name in centimetres, mm."""
_EXACT: Mapping[float, float] = {named: round(inch * MM_PER_INCH, 2) for named, inch in INCH_OF_MM.items()}
_NAMED: Mapping[float, float] = {exact: named for named, exact in _EXACT.items()}


def true_mm(named_mm: float, sold: Sold = "cm") -> float:
    """The true length, mm, of one called `named_mm` in centimetres: that of its name in inches where tins are sold so.

    >>> round(true_mm(200.0, "inches"), 1)
    203.2
    """
    return named_mm if sold == "cm" else _EXACT.get(named_mm, named_mm)


def named_mm(length_mm: float, sold: Sold = "cm") -> float | None:
    """The name in centimetres of a true length, mm; None if that name belongs to another length."""
    if sold == "cm":
        return length_mm
    return _NAMED.get(length_mm, None if length_mm in _EXACT else length_mm)


def called_mm(length_mm: float, sold: Sold = "cm") -> float:
    """A true length by its name in centimetres, mm: 200 for what is sold as 20 cm or 8 in; itself if it has none."""
    return named_mm(length_mm, sold) or length_mm


def trade_mm(inches: float, sold: Sold = "cm") -> float | None:
    """The actual size in mm of a length sold by this name in inches; None if the trade has no such size."""
    cm = CM_OF_INCH.get(inches)
    return None if cm is None else true_mm(cm * 10.0, sold)


def read_by_name(sold: Sold = "cm") -> dict[str, dict[str, float]]:
    """By unit, the numbers that name lengths without being their size: `{"inches": {"8": 200.0}}`, mm."""
    if sold == "cm":
        return {"inches": {f"{inch:g}": named for named, inch in INCH_OF_MM.items()}}
    return {"cm": {f"{named / 10:g}": exact for named, exact in _EXACT.items()}}


def mm(*inches: float) -> tuple[float, ...]:
    """Sizes of a standard tin, given in the trade's inches, by their names in centimetres: mm."""
    return tuple(CM_OF_INCH[inch] * 10.0 for inch in inches)


def metric_label(lengths_mm: tuple[float, ...], sold: Sold = "cm") -> str:
    """`20 cm`, `23 x 33 cm`; in mm if that is not short, or is another length's name: `209.55 mm`, `4 mm`."""
    names = [named_mm(length, sold) for length in lengths_mm]
    if all(name is not None and name >= 10 and round(name, 2) == round(name) for name in names):
        return " x ".join(_plain((name or 0.0) / 10) for name in names) + " cm"
    return " x ".join(_plain(length) for length in lengths_mm) + " mm"


def inch_label(lengths_mm: tuple[float, ...], sold: Sold = "cm") -> str:
    """`8 in`, `9 x 13 in`; empty if one of them is not a size the trade sells in inches."""
    inches = [INCH_OF_MM.get(named_mm(length, sold) or 0.0) for length in lengths_mm]
    if None in inches:
        return ""
    return " x ".join(f"{inch:g}" for inch in inches) + " in"


def _plain(number: float) -> str:
    """At most two decimals and no trailing noughts: names are read back to the same tin."""
    return f"{number:.2f}".rstrip("0").rstrip(".")
