"""Sugarpaste and marzipan over a cake: what stays on it, how large to roll, what comes back to be used again."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from tinbook.engine import pastes, rounding
from tinbook.engine.packs import packs_for
from tinbook.engine.tolerance import whole_up
from tinbook.facts import Facts
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake


@dataclass(frozen=True, slots=True, kw_only=True)
class PasteRow:
    """One cake under one paste. `disc`: rolled to a disc `rolled_mm[0]` across, otherwise to a rectangle.

    `net_low_g` and `net_high_g` are what the published charts with the least and the most give, whatever the house
    itself uses; `net_g` is never outside them. `made_g` is what is rolled out: what stays on, and what is trimmed off;
    `back_g` of it comes back. For a bought paste, `packs` are those to buy for `made_g`: number and grams.
    """

    cake: Cake
    owned: bool
    net_g: float
    net_low_g: float
    net_high_g: float
    disc: bool
    rolled_mm: tuple[float, float]
    made_g: float
    back_g: float
    factor: float
    batches: int
    packs: tuple[tuple[int, float], ...]
    net_shown_g: float
    net_low_shown_g: float
    net_high_shown_g: float
    rolled_shown_mm: tuple[float, float]
    made_shown_g: float
    back_shown_g: float


def paste_row(batch: Batch, cake: Cake, owned: bool, settled: Finishing, facts: Facts, factor: float = 1.0) -> PasteRow:
    """One cake under one paste, over its coats; `factor` adjusts the amounts to what the house has found it uses."""
    under_mm, trade_density = settled.coats_mm, batch.kind.gravity.typical
    density = trade_density * factor
    surface_mm2, usual = cake.surface_mm2(under_mm), settled.figures["paste"]
    net_g = pastes.net_g(surface_mm2, usual.value, density)
    low_mm, high_mm = (usual.fact.low or usual.value, usual.fact.high or usual.value)
    low_g, high_g = (pastes.net_g(surface_mm2, cover_mm, trade_density) for cover_mm in (low_mm, high_mm))
    low_g, high_g = min(low_g, net_g), max(high_g, net_g)
    thick_mm, over_mm = settled["paste_rolled"], settled["paste_over"]
    disc, rolled = rolled_for(cake, under_mm, over_mm)
    rolled_g = _piece_g(disc, rolled, thick_mm, density)
    trim_g = rolled_g - _piece_g(disc, (rolled[0] - over_mm, rolled[1] - over_mm), thick_mm, density)
    # paste may end up thicker on the cake than rolled, but what is trimmed off was still rolled out beside it
    made_g = max(rolled_g, net_g + trim_g)
    steps = batch.steps
    return PasteRow(
        cake=cake,
        owned=owned,
        net_g=net_g,
        net_low_g=low_g,
        net_high_g=high_g,
        disc=disc,
        rolled_mm=rolled,
        made_g=made_g,
        back_g=made_g - net_g,
        factor=made_g / batch.makes_g,
        batches=whole_up(made_g / batch.makes_g),
        packs=packs_for(made_g, batch.packs_g) if batch.packs_g else (),
        net_shown_g=rounding.scales(net_g, steps),
        net_low_shown_g=rounding.scales(low_g, steps),
        net_high_shown_g=rounding.scales(high_g, steps),
        rolled_shown_mm=(rounding.ruler_cm(rolled[0]), rounding.ruler_cm(rolled[1])),
        made_shown_g=rounding.scales_up(made_g, steps),
        back_shown_g=rounding.scales(made_g - net_g, steps),
    )


def _piece_g(disc: bool, size_mm: tuple[float, float], thick_mm: float, density: float) -> float:
    return pastes.disc_g(size_mm[0], thick_mm, density) if disc else pastes.sheet_g(*size_mm, thick_mm, density)


def rolled_for(cake: Cake, under_mm: float, over_mm: float) -> tuple[bool, tuple[float, float]]:
    """Whether the paste for a cake is rolled to a disc, and how wide and long, mm."""
    width_mm, length_mm = (side + 2.0 * under_mm for side in cake.tin.bounds_mm)
    height_mm = cake.height_mm + under_mm
    if cake.solid != "upright":
        arc_mm = pi / 2.0 * width_mm * (2.0 if cake.solid == "ball" else 1.0)
        return True, (arc_mm + over_mm, arc_mm + over_mm)
    rolled = tuple(pastes.rolled_mm(side, height_mm, over_mm) for side in (width_mm, length_mm))
    return cake.takes_disc(under_mm), (rolled[0], rolled[1])
