"""The trade's two names for one length: 8 in and 20 cm are the same tin.

Common practice: shops print both on one label though 8 in is 203.2 mm. The house keeps the
centimetre size. A tin measured by its owner is written in millimetres and is exact.
"""

from __future__ import annotations

CM_OF_INCH: dict[float, float] = {
    1: 2.5, 1.5: 4, 2: 5, 3: 7.5, 4: 10, 5: 13, 6: 15, 7: 18, 8: 20, 9: 23, 10: 25,
    11: 28, 12: 30, 13: 33, 14: 35, 15: 38, 16: 40, 17: 43, 18: 46,
}  # fmt: skip
INCH_OF_MM: dict[float, float] = {cm * 10: inch for inch, cm in CM_OF_INCH.items()}


def trade_mm(inches: float) -> float | None:
    """The trade's size in mm of a length sold in inches; None when the trade has no such size."""
    cm = CM_OF_INCH.get(inches)
    return None if cm is None else cm * 10.0


def mm(*inches: float) -> tuple[float, ...]:
    """Sizes of a standard tin, given in the trade's inches, in mm."""
    return tuple(CM_OF_INCH[inch] * 10.0 for inch in inches)


def metric_label(lengths_mm: tuple[float, ...]) -> str:
    """`20 cm`, `23 x 33 cm`; in mm when that is not short: `209.55 mm`, `4 mm`."""
    if all(length >= 10 and round(length, 2) == round(length) for length in lengths_mm):
        return " x ".join(_plain(length / 10) for length in lengths_mm) + " cm"
    return " x ".join(_plain(length) for length in lengths_mm) + " mm"


def inch_label(lengths_mm: tuple[float, ...]) -> str:
    """`8 in`, `9 x 13 in`; empty when one of them is not a size the trade sells in inches."""
    inches = [INCH_OF_MM.get(length) for length in lengths_mm]
    if None in inches:
        return ""
    return " x ".join(f"{inch:g}" for inch in inches) + " in"


def _plain(number: float) -> str:
    """Hundredths at most and no idle noughts: names are read back to the same tin."""
    return f"{number:.2f}".rstrip("0").rstrip(".")
