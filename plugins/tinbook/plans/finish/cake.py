"""A cake as a solid to fill, coat and cover: the outline of its tin, a height, a number of layers."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from tinbook.engine import coats, pastes
from tinbook.tins import Tin
from tinbook.tins.growth import CakeOutline, outline_of

ALIKE = 0.02
"""Sides that differ by no more than this share of the longer one are equal."""
ROUNDISH = 0.9
"""An outline as wide as it is long that fills less than this of its square has no square corners."""


@dataclass(frozen=True, slots=True)
class Cake:
    """A tier before its coats: `height_mm` high, in `layers` layers. A half ball or a ball has its own height."""

    tin: Tin
    height_mm: float
    layers: int

    @property
    def outline(self) -> CakeOutline:
        """Its outline before any coat."""
        return outline_of(self.tin)

    @property
    def solid(self) -> str:
        """`upright`, `dome` or `ball`."""
        return self.tin.kind.solid

    @property
    def stands_mm(self) -> float:
        """Its height before its coats."""
        radius_mm = self.tin.bounds_mm[0] / 2.0
        return {"dome": radius_mm, "ball": 2.0 * radius_mm}.get(self.solid, self.height_mm)

    @property
    def core_ml(self) -> float:
        """What it takes up before its coats, ml."""
        radius_mm = self.tin.bounds_mm[0] / 2.0
        half_ball_ml = 2.0 / 3.0 * pi * radius_mm**3 / 1000.0
        rounds = {"dome": half_ball_ml, "ball": 2.0 * half_ball_ml}
        return rounds.get(self.solid, self.outline.area_mm2 * self.height_mm / 1000.0)

    def filled_ml(self, thickness_mm: float, inset_mm: float = 0.0) -> float:
        """The filling between its layers, ml, `inset_mm` in from the edge. A dome or ball is filled slice by slice."""
        if self.solid == "upright":
            area_mm2 = self.outline.grown(-inset_mm).area_mm2
            return coats.filling_ml(area_mm2, thickness_mm, self.layers)
        radii_mm = coats.slice_radii_mm(self.tin.bounds_mm[0] / 2.0, self.layers, self.solid == "ball")
        cuts_mm2 = sum(pi * max(0.0, radius_mm - inset_mm) ** 2 for radius_mm in radii_mm)
        return coats.filling_ml(cuts_mm2, thickness_mm, 2)

    def shell_ml(self, under_mm: float, thickness_mm: float) -> float:
        """A coat of `thickness_mm` over the cake and `under_mm` of earlier coats, ml."""
        radius_mm = self.tin.bounds_mm[0] / 2.0 + under_mm
        if self.solid == "dome":
            return coats.dome_shell_ml(radius_mm, thickness_mm)
        if self.solid == "ball":
            return coats.ball_shell_ml(radius_mm, thickness_mm)
        inner = self.outline.grown(under_mm)
        outer = inner.grown(thickness_mm)
        return coats.shell_ml(inner.area_mm2, outer.area_mm2, self.height_mm + under_mm, thickness_mm)

    def surface_mm2(self, under_mm: float) -> float:
        """The surface to cover: top and sides, with coats of `under_mm` on."""
        radius_mm = self.tin.bounds_mm[0] / 2.0 + under_mm
        if self.solid != "upright":
            return pastes.dome_mm2(radius_mm) * (2.0 if self.solid == "ball" else 1.0)
        outline = self.outline.grown(under_mm)
        return pastes.upright_mm2(outline.area_mm2, outline.edge_mm, self.height_mm + under_mm)

    def takes_disc(self, under_mm: float = 0.0) -> bool:
        """Whether it stands on a disc, or is covered with one over coats of `under_mm`: corners hang over."""
        width_mm, length_mm = self.tin.bounds_mm
        coated_mm = width_mm + 2.0 * under_mm, length_mm + 2.0 * under_mm
        alike = abs(coated_mm[0] - coated_mm[1]) <= ALIKE * max(coated_mm)
        return alike and self.outline.area_mm2 < ROUNDISH * width_mm * length_mm

    def room_for(self, under_mm: float) -> bool:
        """Whether coats of `under_mm` leave its tube open."""
        return under_mm < self.outline.room_mm
