"""Every template of a whole cake to cut round: the parts of its decorations, and the dowels of its tiers."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.true_size.dowelling import dowel_template
from tinbook.plans.true_size.drawn import Template
from tinbook.plans.true_size.parts import Wide, has_templates, part_templates


def templates_of_cake(cake: WholeCake, wide: Wide, facts: Facts) -> tuple[Template, ...]:
    """Those of each decoration at the size of its tier, each technique and size once; then a plan for each tier with
    dowels, from the bottom. `wide`: how wide words are on paper."""
    figures = {(figure.slug, figure.parts.cake): figure for figure in cake.figures}.values()
    parts = [each for figure in figures if has_templates(figure.parts) for each in part_templates(figure.parts, wide)]
    through_mm = None if cake.stacked.through_mm is None else facts.numbers["centre dowel across"].value
    return (*parts, *(dowel_template(dowels.plan, through_mm) for dowels in cake.stacked.dowels if dowels))
