"""Balls: two domes filled side by side and joined when baked, so everything is twice that of one dome."""

from __future__ import annotations

from tinbook.tins.dome import Dome
from tinbook.tins.shape import Sizes
from tinbook.tins.trade import mm


class Ball(Dome):
    """A ball, by its width; everything but the stand is that of one of its two domes."""

    key = "ball"
    title = "Ball"
    purpose = "dome"
    words = ("ball", "balls", "sphere")
    standard = tuple((mm(inch), mm(inch)[0] / 2.0) for inch in (4, 5, 6, 8))
    depths_mm = tuple(depth_mm for _, depth_mm in standard)
    parts = 2
    solid = "ball"
    example = "ball 15 cm"

    def stand_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (self.parts * sizes[0], sizes[0])


BALL = Ball()
