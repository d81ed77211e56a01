"""The shape of a part at a scale: its name, its lengths by name, its outline, its thickness, its volume."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.engine import solids
from tinbook.models import Part
from tinbook.plans.base.saying import Saying, saying
from tinbook.tins import Ring

Named = tuple[tuple[str, float], ...]
SIZE_NAMES: Mapping[str, tuple[str, ...]] = {
    "ball": ("across",),
    "egg": ("across", "long"),
    "cone": ("across", "high"),
    "frustum": ("across", "high", "top"),
    "teardrop": ("across", "long"),
    "cylinder": ("across", "long"),
    "slab": ("wide", "high", "thick"),
}
CURVED = ("round", "oval")
"""Sheets whose area is exactly an oval's, not that of the corners they are drawn with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeAt:
    """A part's shape at a scale: what it is, its lengths by name, outline, thickness, volume."""

    said: Saying
    lengths_mm: Named
    outline_mm: tuple[Ring, ...]
    thick_mm: float
    volume_mm3: float


def shape_of(part: Part, s: float) -> ShapeAt:
    """A sound part's shape at scale s."""
    if part.solid:
        return _solid(part, s)
    if part.rope:
        thick, long = (size * s for size in part.rope.mm)
        return ShapeAt(
            said=saying("shape_rope"),
            lengths_mm=(("thick", thick), ("long", long)),
            outline_mm=(solids.oblong(long, thick),),
            thick_mm=thick,
            volume_mm3=solids.cylinder_mm3(thick, long),
        )
    return _strip(part, s) if part.strip else _sheet(part, s)


def _solid(part: Part, s: float) -> ShapeAt:
    solid = part.solid
    assert solid is not None
    sizes, pressed = (tuple(size * s for size in lengths) for lengths in (solid.sizes_mm, solid.to_mm))
    names = (*SIZE_NAMES[solid.form], *(("pressed_to", "by") if pressed else ()))
    return ShapeAt(
        said=saying("shape_solid", how=solid.how, form=solid.form),
        lengths_mm=tuple(zip(names, (*sizes, *pressed), strict=True)),
        outline_mm=(solids.silhouette(solid.form, sizes, solid.how, pressed),),
        thick_mm=solids.depth_mm(solid.form, sizes, solid.how, pressed),
        volume_mm3=solids.solid_mm3(solid.form, sizes, solid.how),
    )


def _strip(part: Part, s: float) -> ShapeAt:
    strip = part.strip
    assert strip is not None
    wide, long = (size * s for size in strip.mm)
    outline = (solids.oblong(long, wide),)
    return _flat(part, saying("shape_strip"), (("wide", wide), ("long", long)), outline, solids.rings_mm2(outline))


def _sheet(part: Part, s: float) -> ShapeAt:
    sheet = part.sheet
    assert sheet is not None
    if sheet.rings:
        outline = solids.scaled(sheet.rings, s)
        wide, high = solids.bounds(outline)
        lengths: Named = (("wide", wide), ("high", high))
        return _flat(part, saying("shape_to_template"), lengths, outline, solids.rings_mm2(outline))
    sizes = tuple(size * s for size in sheet.sizes_mm)
    wide, high = sizes[0], sizes[-1]
    curved = sheet.form in CURVED
    outline = (solids.oval(wide, high) if curved else solids.oblong(wide, high),)
    lengths = tuple(zip(("across",) if len(sizes) == 1 else ("wide", "high"), sizes, strict=True))
    area_mm2 = solids.oval_mm2(wide, high) if curved else solids.rings_mm2(outline)
    return _flat(part, saying("shape_sheet", form=sheet.form), lengths, outline, area_mm2)


def _flat(part: Part, said: Saying, lengths_mm: Named, outline_mm: tuple[Ring, ...], area_mm2: float) -> ShapeAt:
    """Rolled to the same thickness at every scale."""
    thick = part.thick or 0.0
    return ShapeAt(
        said=said,
        lengths_mm=(*lengths_mm, ("thick", thick)),
        outline_mm=outline_mm,
        thick_mm=thick,
        volume_mm3=solids.sheet_mm3(area_mm2, thick),
    )
