"""Filling and coats: how much of a mixture a cake from every tin takes, in grams and in batches."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from tinbook.engine import coats, rounding
from tinbook.engine.tolerance import whole_up
from tinbook.facts import Facts
from tinbook.models import Border
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake

ROLES = ("filling", "crumb coat", "final coat", "border")
"""What a filling or icing can be on a cake, from the inside out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coats:
    """What goes between the layers of, round and on one cake, in ml."""

    filling_ml: float
    dam_ml: float
    crumb_ml: float
    final_ml: float
    border_ml: float

    @property
    def in_all_ml(self) -> float:
        """All of it together."""
        return self.filling_ml + self.dam_ml + self.crumb_ml + self.final_ml + self.border_ml

    def of(self, roles: Collection[str]) -> Coats:
        """The share of it for a mixture that plays these roles. The dam is piped with the coating."""
        return Coats(
            filling_ml=self.filling_ml if "filling" in roles else 0.0,
            dam_ml=self.dam_ml if "final coat" in roles else 0.0,
            crumb_ml=self.crumb_ml if "crumb coat" in roles else 0.0,
            final_ml=self.final_ml if "final coat" in roles else 0.0,
            border_ml=self.border_ml if "border" in roles else 0.0,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatRow:
    """A cake from one tin, and what it takes of one mixture. `made_g` includes what stays in the bowl and in the bag.

    `batches` are whole ones of the recipe as written, `factor` the exact number of them, `over_g` what is then left
    over. What has `shown` in its name is rounded for scales, upwards for what is made.
    """

    cake: Cake
    owned: bool
    coats: Coats
    filling_g: float
    crumb_g: float
    final_g: float
    border_g: float
    bag_g: float
    made_g: float
    factor: float
    batches: int
    over_g: float
    filling_shown_g: float
    crumb_shown_g: float
    final_shown_g: float
    border_shown_g: float
    final_and_border_shown_g: float
    made_shown_g: float
    over_shown_g: float


def coats_of(cake: Cake, settled: Finishing, facts: Facts) -> Coats:
    """Volumes of filling, dam, coats and border on one cake. ValueError if a coat closes the tube."""
    filled_ml, dam_ml = cake.filled_ml(settled["filling"]), 0.0
    # a dam is piped with the coating: without a final coat the filling goes to the edge
    if settled.dam_mm and settled["final_coat"] and cake.layers > 1:
        dam_ml = filled_ml - cake.filled_ml(settled["filling"], settled.dam_mm)
    crumb_ml = cake.shell_ml(0.0, settled["crumb_coat"])
    final_ml = cake.shell_ml(settled["crumb_coat"], settled["final_coat"])
    return Coats(
        filling_ml=filled_ml - dam_ml,
        dam_ml=dam_ml,
        crumb_ml=crumb_ml,
        final_ml=final_ml,
        border_ml=_border_ml(cake, settled, facts),
    )


def _border_ml(cake: Cake, settled: Finishing, facts: Facts) -> float:
    border = settled.border
    if border is None:
        return 0.0
    open_share = facts.numbers["star left open"].value if "star" in border.nozzle else 1.0
    marks = border_marks(cake, border, settled.coats_mm)
    return coats.border_ml(marks, border.opening, border.stroke, open_share)


def border_marks(cake: Cake, border: Border, under_mm: float) -> int:
    """How many marks are piped: round the edge of the coated cake, once or, for top and foot, twice."""
    edge_mm = cake.outline.grown(under_mm).edge_mm
    round_once = border.count or coats.marks_on_edge(edge_mm, border.pitch)
    return round_once * (2 if border.twice else 1)


def roles_of(batch: Batch, settled: Finishing) -> tuple[str, ...]:
    """What a mixture is on a cake made with it throughout: nothing that is left out, and no border if there is no
    final coat."""
    left_out = {role for role in ROLES[:3] if not settled[role.replace(" ", "_")]}
    if "final coat" in left_out:
        left_out.add("border")
    return tuple(role for role in ROLES if role in batch.kind.plays and role not in left_out)


def coat_row(
    batch: Batch,
    cake: Cake,
    owned: bool,
    settled: Finishing,
    facts: Facts,
    *,
    roles: Collection[str],
    factor: float = 1.0,
) -> CoatRow:
    """What one cake takes of a mixture that plays these roles on it.

    `factor` adjusts the amounts to what the house has found it uses. Of an icing that is piped, a bagful is left over
    however small the cake, where it makes the final coat.
    """
    volumes = coats_of(cake, settled, facts).of(roles)
    per_ml = batch.kind.gravity.typical * factor
    filling_g, crumb_g, border_g = volumes.filling_ml * per_ml, volumes.crumb_ml * per_ml, volumes.border_ml * per_ml
    piped = "border" in batch.kind.plays and "final coat" in roles
    bag_g = settled["stays_in_the_bag"] * per_ml if piped else 0.0
    final_g = (volumes.final_ml + volumes.dam_ml) * per_ml
    made_g = coats.with_bowl(volumes.in_all_ml * per_ml, settled["stays_in_the_bowl"]) + bag_g
    batches = whole_up(made_g / batch.makes_g)
    over_g = batches * batch.makes_g - made_g
    steps = batch.steps
    return CoatRow(
        cake=cake,
        owned=owned,
        coats=volumes,
        filling_g=filling_g,
        crumb_g=crumb_g,
        final_g=final_g,
        border_g=border_g,
        bag_g=bag_g,
        made_g=made_g,
        factor=made_g / batch.makes_g,
        batches=batches,
        over_g=over_g,
        filling_shown_g=rounding.scales(filling_g, steps),
        crumb_shown_g=rounding.scales(crumb_g, steps),
        final_shown_g=rounding.scales(final_g, steps),
        border_shown_g=rounding.scales(border_g, steps),
        final_and_border_shown_g=rounding.scales(final_g + border_g, steps),
        made_shown_g=rounding.scales_up(made_g, steps),
        over_shown_g=rounding.scales(over_g, steps),
    )
