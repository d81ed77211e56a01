"""The board a cake stands on, its ribbon and its box. Lengths in mm."""

from __future__ import annotations

from collections.abc import Sequence

from tinbook.engine.tolerance import fits


def board_mm(across_mm: float, wider_mm: float, sold_mm: Sequence[float]) -> float | None:
    """The smallest stock board at least `wider_mm` wider than a cake `across_mm` wide; None if there is none.

    `sold_mm` are the stock widths, in ascending order.
    """
    return next((size for size in sold_mm if fits(across_mm + wider_mm, size)), None)


def ribbon_mm(edge_mm: float, overlap_mm: float) -> float:
    """Ribbon round an edge, with the overlap at the back."""
    return edge_mm + overlap_mm


def box_mm(board: float, beside_mm: float) -> float:
    """Inside width of the box for a board: the board and the space left on both sides."""
    return board + 2.0 * beside_mm
