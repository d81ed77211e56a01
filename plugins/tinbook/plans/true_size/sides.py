"""The side of a coated cake as a paper strip, divided for panels or drops, round any outline."""

from __future__ import annotations

from tinbook.engine import dividing
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.finish.cake import Cake
from tinbook.plans.true_size.drawn import Label, Stroke, Template, ruler_mm, ruler_size
from tinbook.tins import Tin
from tinbook.tins.growth import ring_round

CURVES = ("parabola", "catenary")
TAB_MM = 15.0
"""Paper past the end of a strip, to stick its ends together."""
LEAST_MM = 8.0
"""Nobody marks panels or drops narrower than this."""
LESS_MM = 0.05


def coated_mm(book: Book, facts: Facts) -> float:
    """How much coats and paste add to a side, as this house finishes its cakes."""
    settled = finishing(book.finish, facts)
    return settled.coats_mm + settled["paste"]


def side_mm(tin: Tin, out_mm: float) -> float:
    """The length round the outside of a cake with `out_mm` of coats on."""
    return dividing.edge_mm(ring_round(tin, out_mm))


def strip(
    tin: Tin, book: Book, facts: Facts, count: int, deep_mm: float = 0.0, curve: str = "parabola",
    height_mm: float | None = None, from_top_mm: float = 0.0,
) -> Template:  # fmt: skip
    """The strip for `count` panels, or for drops `deep_mm` deep that hang from `from_top_mm` below the top edge."""
    if count < 1:
        raise AskError("a strip needs drops or panels to divide it", "ask for 2 or more, such as --drops 8")
    if tin.kind.solid != "upright":
        raise AskError(f"the side of a {tin.shape} is not upright", "strips only go round upright cakes")
    if curve not in CURVES:
        raise AskError(f'a drop cannot hang as a "{curve}"', "parabola or catenary")
    out_mm = coated_mm(book, facts)
    settled = finishing(book.finish, facts)
    high_mm = Cake(tin, height_mm or settled.heights_mm[0], settled.layers).stands_mm + out_mm
    if deep_mm < 0.0 or from_top_mm < 0.0:
        raise AskError("a drop cannot hang upwards", "write how deep it hangs, such as 4 cm")
    if deep_mm + from_top_mm > high_mm - LESS_MM:
        raise AskError(
            f"a drop {ruler_mm(deep_mm + from_top_mm):g} mm deep is more than the height of the cake "
            f"({ruler_mm(high_mm):g} mm)",
            "make the drop shallower, or give the height of the cake with --height",
        )
    long_mm = side_mm(tin, out_mm)
    span_mm = long_mm / count
    if span_mm < LEAST_MM:
        message = f"{count} of them in {ruler_mm(long_mm):g} mm would be only {ruler_mm(span_mm):g} mm wide"
        raise AskError(message, "ask for fewer")
    strokes = [Stroke("cut", ((0.0, 0.0), (long_mm, 0.0), (long_mm, high_mm), (0.0, high_mm), (0.0, 0.0)))]
    marks = [index * span_mm for index in range(1, count)]
    strokes += [Stroke("fold", ((x, 0.0), (x, high_mm))) for x in marks]
    if deep_mm:
        strokes += [
            Stroke("inner", dividing.drop(index * span_mm, from_top_mm, span_mm, deep_mm, curve))
            for index in range(count)
        ]
    tab = ((long_mm, 0.0), (long_mm + TAB_MM, 4.0), (long_mm + TAB_MM, high_mm - 4.0), (long_mm, high_mm))
    strokes.append(Stroke("hidden", tab))
    labels = [Label(str(index + 1), ((index + 0.5) * span_mm, high_mm - 5.0)) for index in range(count)]
    labels.append(Label(saying("tab"), (long_mm + TAB_MM / 2.0, high_mm / 2.0)))
    what = "drops" if deep_mm else "panels"
    round_cake = saying(
        "strip_round_cake",
        out_mm=ruler_mm(out_mm),
        long_mm=ruler_mm(long_mm),
        high_mm=ruler_mm(high_mm),
        count=count,
        what=what,
        span_mm=ruler_mm(span_mm),
    )
    drop = saying(
        "drop", curve=curve, deep_mm=ruler_mm(deep_mm), from_top_mm=ruler_mm(from_top_mm) if from_top_mm else None
    )
    return Template(
        key=f"side-strip-{count}-{what}",
        name=saying("side_strip", count=count, what=what),
        size=saying("strip_size", size=ruler_size(long_mm, high_mm), count=count, what=what),
        cake=tin,
        strokes=tuple(strokes),
        labels=tuple(labels),
        notes=(round_cake, *((drop,) if deep_mm else ()), saying("strip_tried")),
    )
