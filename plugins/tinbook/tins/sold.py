"""The shapes of a house whose tins are sold in inches: the same shapes, their standard sizes true in inches."""

from __future__ import annotations

from dataclasses import replace

from tinbook.tins.shape import NamedSize, Shape
from tinbook.tins.trade import true_mm


def sold_in_inches(shape: Shape) -> Shape:
    """The same shape, its standard sizes, named sizes and depths as long as their names in inches.

    A shape with named sizes only, like cups, is unchanged.
    """
    if not shape.by_two_names:
        return shape
    standard = tuple(shape.in_inches(*each) for each in shape.standard)
    # a tin that is not upright is as deep as its width requires
    upright = shape.solid == "upright"
    depths_mm = [true_mm(depth, "inches") for depth in shape.depths_mm] if upright else [depth for _, depth in standard]
    changed = {
        "sold": "inches",
        "named": tuple(_named(shape, each) for each in shape.named),
        "standard": standard,
        "depths_mm": tuple(depths_mm),
        "usual_mm": true_mm(shape.usual_mm, "inches"),
    }
    made: Shape = type(f"{type(shape).__name__}InInches", (type(shape),), changed)()
    return made


def _named(shape: Shape, named: NamedSize) -> NamedSize:
    sizes_mm, depth_mm = shape.in_inches(named.sizes_mm, named.depth_mm)
    return replace(named, sizes_mm=sizes_mm, depth_mm=depth_mm)
