"""Cutting pieces from sticks of one length: dowels and pillars. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterable, MutableSequence

from tinbook.engine.tolerance import fits


def sticks_for(pieces_mm: Iterable[float], stick_mm: float, left_mm: MutableSequence[float]) -> int:
    """How many new sticks some pieces take, the longest cut first, each from the first stick that is long enough.

    `left_mm` are the ends left from earlier cuts; they are used up first, and what is left now takes their place. The
    saw takes nothing. ValueError for a piece longer than a stick.

    >>> sticks_for([118.0, 118.0, 118.0], 300.0, [])
    2
    """
    new = 0
    for piece in sorted(pieces_mm, reverse=True):
        at = next((at for at, left in enumerate(left_mm) if fits(piece, left)), None)
        if at is None:
            if not fits(piece, stick_mm):
                raise ValueError(f"a piece of {piece:g} mm cannot be cut from {stick_mm:g} mm")
            new += 1
            left_mm.append(stick_mm)
            at = len(left_mm) - 1
        left_mm[at] = max(0.0, left_mm[at] - piece)
    return new
