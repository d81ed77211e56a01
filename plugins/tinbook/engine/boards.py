"""The board a cake stands on, its ribbon and its box. Lengths mm."""

from __future__ import annotations

from collections.abc import Sequence

from tinbook.engine.tolerance import fits


def board_mm(across_mm: float, wider_mm: float, sold_mm: Sequence[float]) -> float | None:
    """The least board sold, `sold_mm` rising, that is `wider_mm` wider than a cake `across_mm` wide; None for none."""
    return next((size for size in sold_mm if fits(across_mm + wider_mm, size)), None)


def ribbon_mm(edge_mm: float, overlap_mm: float) -> float:
    """Ribbon round an edge, with what lies over itself at the back."""
    return edge_mm + overlap_mm


def box_mm(board: float, beside_mm: float) -> float:
    """Inside width of the box for a board: the board and what is left free on both sides."""
    return board + 2.0 * beside_mm
