"""A cake through the oven, load by load: the shelves from above with every tin on them, and what is mixed for each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from tinbook.pages.base.dials import dial_words
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import plural, tin_name
from tinbook.pages.cake.addresses import size_of
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.orders import lasts
from tinbook.plans.baking.oven import dial
from tinbook.plans.cakes.oven_loads import OvenLoad, OvenPlan, Place, TinsIn
from tinbook.tins.growth import ring_round

SHELF_REM = 8.0
"""How wide a shelf is drawn."""
LETTERS_MM = 60.0
"""How high letters are, in mm of the shelf."""
WIDE_LETTER = 0.58


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadView:
    """A load: what goes in, when to look and when it is done, what is mixed; each of its shelves drawn."""

    number: str
    tins: str
    check: str
    span: str
    mixed: tuple[str, ...]
    shelves: tuple[Markup, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadsView:
    """All loads; what the dial is set to, where it is one for all; whether fewer may be possible."""

    loads: tuple[LoadView, ...]
    heat: str
    time: str
    proven: bool


def oven_view(plan: OvenPlan | None, desk: Desk) -> LoadsView | None:
    """The loads of a cake; None if nothing is baked, or something does not go in."""
    if plan is None:
        return None
    heats = {load.oven_c for load in plan.loads}
    one_heat = len(heats) == 1
    return LoadsView(
        loads=tuple(
            LoadView(
                number=str(number),
                tins=" + ".join(tin_name(each.count * each.tin.holes, each.tin) for each in load.tins),
                check=formats.number(load.check_min),
                span=formats.with_unit(formats.bounds(load.low_min, load.high_min), "min"),
                mixed=tuple(_mixed(load, desk, one_heat)),
                shelves=tuple(_shelf(load, shelf, desk) for shelf in load.shelves),
            )
            for number, load in enumerate(plan.loads, 1)
        ),
        heat=dial_words(dial(heats.pop(), desk.book, desk.facts)) if one_heat else "",
        time=f"{lasts(plan.low_min)} to {lasts(plan.high_min)}",
        proven=plan.proven,
    )


def _mixed(load: OvenLoad, desk: Desk, one_heat: bool) -> Iterator[str]:
    for mix in load.mixes:
        grams = formats.grams(mix.mass_shown_g)
        eggs = f", {plural(mix.eggs, 'egg')}" if mix.eggs else ""
        lots = f", in {mix.lots} lots" if mix.lots > 1 else ""
        yield f"{mix.batch.mixture.name} {grams}{eggs}{lots}"
    if not one_heat:
        yield dial_words(dial(load.oven_c, desk.book, desk.facts))


def _shelf(load: OvenLoad, shelf: tuple[Place, ...], desk: Desk) -> Markup:
    """A shelf from above, its door at the foot."""
    size = desk.book.house.oven_shelf
    assert size is not None
    wide, deep = size
    said = formats.sentence(formats.cups_said(load.of(each).tin.name) for each in shelf)
    body = "".join(part for each in shelf for part in _tin(each, load.of(each), deep))
    frame = (
        '<svg class="tb-shelf" viewBox="-4 -4 {0:.0f} {1:.0f}" style="width:{2:.2f}rem" role="img" '
        'aria-label="Oven shelf from above: {3}"><rect class="tb-rim" width="{4:.0f}" height="{5:.0f}"/>{6}</svg>'
    )
    return Markup(frame).format(wide + 8.0, deep + 8.0, SHELF_REM, said, wide, deep, Markup(body))


def _tin(each: Place, tins: TinsIn, deep: float) -> Iterator[str]:
    middle = each.x_mm + each.wide_mm / 2.0, deep - each.y_mm - each.deep_mm / 2.0
    if tins.tin.kind.in_trays:
        left, top = each.x_mm, deep - each.y_mm - each.deep_mm
        yield f'<rect x="{left:.0f}" y="{top:.0f}" width="{each.wide_mm:.0f}" height="{each.deep_mm:.0f}" rx="12"/>'
    else:
        turned = each.wide_mm < each.deep_mm if tins.tin.stand_mm[0] > tins.tin.stand_mm[1] else False
        ring = [(y, x) if turned else (x, y) for x, y in ring_round(tins.tin, 0.0)]
        path = "L".join(f"{x + middle[0]:.0f} {middle[1] - y:.0f}" for x, y in ring[:: max(1, len(ring) // 48)])
        yield f'<path d="M{path}Z"/>'
    label = _label(tins)
    size = min(LETTERS_MM, each.wide_mm * 0.86 / (WIDE_LETTER * len(label)))
    yield f'<text x="{middle[0]:.0f}" y="{middle[1] + size * 0.36:.0f}" font-size="{size:.0f}">{label}</text>'


def _label(tins: TinsIn) -> str:
    """`25`, `23 × 33`: the size of a tin without its shape and its unit; of a tray how many cups."""
    if tins.tin.kind.in_trays:
        return str(tins.tin.holes)
    return size_of(tins.tin)
