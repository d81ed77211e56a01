"""Drawings as numbers: where lines and labels go, in mm of the tin; the template only puts them there."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tinbook.tins import Tin

LABEL_MM = 24.0
"""The least distance between two labels, so that they do not collide."""
GAP_MM = 60.0


@dataclass(frozen=True, slots=True)
class Tick:
    """A figure on a chart's axis, and where it stands."""

    at: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanTin:
    """A tin in plan: a circle (`radius`) or a square (`side`) with its lower left corner or its lowest point on the
    ground, and its label at the end of a leader from (`from_x`, `from_y`) via (`x`, `y`). All mm, y downwards."""

    is_round: bool
    centre_x: float
    centre_y: float
    radius: float
    left: float
    top: float
    side: float
    from_x: float
    from_y: float
    x: float
    y: float
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Plans:
    """The rounds and squares of the house, nested on one ground line; `words` says the same."""

    width: float
    height: float
    ground: float
    tins: tuple[PlanTin, ...]
    words: str


def nested_plans(tins: Iterable[Tin]) -> Plans | None:
    """The house's rounds and squares to one scale, each shape nested; None if there are none."""
    unique = {(tin.shape, tin.sizes_mm[0]): tin.across_mm for tin in tins if tin.shape in ("round", "square")}
    rounds = sorted((size for shape, size in unique if shape == "round"), reverse=True)
    squares = sorted((size for shape, size in unique if shape == "square"), reverse=True)
    called = {size: f"{across_mm / 10:g}" for (_, size), across_mm in unique.items()}
    if not unique:
        return None
    ground = max(rounds + squares) + 8
    drawn, left = [], 0.0
    for sizes, is_round in ((rounds, True), (squares, False)):
        if sizes:
            labels_x = left + sizes[0] + GAP_MM
            heights = spread([ground - size for size in sizes], LABEL_MM)
            for size, y in zip(sizes, heights, strict=True):
                drawn.append(_plan(size, called[size], is_round, left, sizes[0], ground, labels_x, y))
            left = labels_x + GAP_MM
    words = "; ".join(
        f"{name} of {', '.join(called[size] for size in reversed(sizes))} cm"
        for name, sizes in (("rounds", rounds), ("squares", squares))
        if sizes
    )
    return Plans(width=left - GAP_MM / 4, height=ground + 4, ground=ground, tins=tuple(drawn), words=words)


def _plan(
    size: float, called: str, is_round: bool, left: float, widest: float, ground: float, labels_x: float, y: float
) -> PlanTin:
    centre_x = left + widest / 2
    from_x = centre_x if is_round else left + size
    top = ground - size
    return PlanTin(
        is_round=is_round,
        centre_x=centre_x,
        centre_y=top + size / 2,
        radius=size / 2,
        left=left,
        top=top,
        side=size,
        from_x=from_x,
        from_y=top,
        x=labels_x - 30,
        y=y,
        label=called,
    )


def spread(heights: Sequence[float], least: float) -> list[float]:
    """Heights (rising) moved down just far enough that each is at least `least` below the one before."""
    moved: list[float] = []
    for height in heights:
        moved.append(max(height, moved[-1] + least) if moved else height)
    return moved
