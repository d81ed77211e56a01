"""The one tolerance for comparing floats: what two ways of working one figure out may differ by.

A sum and its inverse miss each other in the last digits: 3 × 0.1 is more than 0.3. `GRAIN` is far above that and far
below anything a baker could measure. The browser's is the same, in `rounding.js`.
"""

from __future__ import annotations

from math import ceil, floor

GRAIN = 1e-9


def fits(amount: float, room: float) -> bool:
    """Whether an amount goes into a room, both in one unit and `room` ≥ 0, or is over by no more than the grain."""
    return amount <= room * (1 + GRAIN)


def whole_up(value: float) -> int:
    """The next whole number from `value` up; a hair above a whole number is that number."""
    return ceil(value - GRAIN)


def whole_down(value: float) -> int:
    """The next whole number from `value` down; a hair below a whole number is that number."""
    return floor(value + GRAIN)
