"""What whoever gets a cake is told: how it keeps, and what it is cut into. The job sheet and the card that goes with
the cake say the same."""

from __future__ import annotations

from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.view import CakeView
from tinbook.pages.spelling import formats


def keeps_said(view: CakeView) -> str:
    """How long it keeps; empty if nobody has said. Because of what, its own page tells."""
    return view.ahead.keeps


def cut_said(view: CakeView, made: CakeInSize) -> str:
    """What its tiers are cut into; nothing for cakes that are eaten one by one."""
    if all(tier.asked.tin.kind.in_trays for tier in made.cake.tiers):
        return ""
    rows = [f"{row.place.lower()} {row.portions}" for row in made.table.rows]
    return f"{formats.title(view.portion_kind)} portions of {view.portion}: {', '.join(rows)}."
