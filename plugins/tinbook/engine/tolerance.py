"""The single tolerance for comparing floats: how far two ways of working out one figure may differ.

A sum and its inverse miss each other in the last digits: 3 × 0.1 is more than 0.3. `GRAIN` is far above that and far
below anything a baker could measure. The browser uses the same, in `rounding.js`.
"""

from __future__ import annotations

from math import ceil, floor

GRAIN = 1e-9


def fits(amount: float, room: float) -> bool:
    """Whether an amount fits into a room, give or take the grain; both in one unit and `room` ≥ 0.

    >>> fits(3 * 0.1, 0.3)
    True
    """
    return amount <= room * (1 + GRAIN)


def whole_up(value: float) -> int:
    """The next whole number from `value` up; a hair above a whole number counts as that number."""
    return ceil(value - GRAIN)


def whole_down(value: float) -> int:
    """The next whole number from `value` down; a hair below a whole number counts as that number."""
    return floor(value + GRAIN)
