"""The parts of a decoration for any cake: outlines, grams, cutters, supports, drying, what hangs on the side.

Everything is scaled by s, the width of the cake asked for over that of the cake the technique is written for: lengths
by s, solids and ropes by s³, sheets and strips by s² as their thickness stays.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from string import ascii_uppercase

from tinbook.engine import solids
from tinbook.facts import Facts
from tinbook.models import Book, Part, Technique
from tinbook.plans.base.worked import Worked
from tinbook.plans.techniques.colours import Colouring, ColourNeed, colour_needs
from tinbook.plans.techniques.cutters import CutterFit, cutter_fit
from tinbook.plans.techniques.marks import RepeatAt, repeat_at
from tinbook.plans.techniques.pastes import Paste, paste_or_like
from tinbook.plans.techniques.technique import SMALL_HARD, SUPPORT
from tinbook.tins import Ring, Tin, standard_tins

LEAST_CAKE_MM, MOST_CAKE_MM = 99.0, 306.0
"""Cakes of 10 to 30 cm."""
SIDE, COLOUR = "side", "colour"


@dataclass(frozen=True, slots=True)
class Drying:
    """From so many hours to so many; `soft_within`: it stays soft inside."""

    low_h: float
    high_h: float
    sheet: bool
    soft_within: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SupportAt:
    """A support in one part: `reach_mm` of it in the part, which has `room_mm` there, `cake_mm` in the cake.

    `each` for one part, `count` for all of them. `shortened`: so that it stays clear of the front.
    """

    what: str
    each: int
    count: int
    goes_in: str
    reach_mm: float
    room_mm: float
    cake_mm: float
    shortened: bool

    @property
    def length_mm(self) -> float:
        """How long to cut it."""
        return self.reach_mm + self.cake_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class PartAt:
    """A part at a cake. `outline_mm`: rings about the middle of its bounds, y upwards, the outer one first; seen from
    the front. Weights g: `computed_g` from its volume, `weighed_g` from the scales at the written cake, scaled alike;
    `each_g` is the weighed one where there is one.
    """

    index: int
    letter: str
    name: str
    count: int
    form: str
    shape: str
    lengths_mm: tuple[tuple[str, float], ...]
    outline_mm: tuple[Ring, ...]
    width_mm: float
    height_mm: float
    thick_mm: float
    volume_ml: float
    computed_g: float
    weighed_g: float | None
    paste: Paste
    colour: Colouring | None
    cutter: CutterFit | None
    support: SupportAt | None
    drying: Drying
    on: str
    small_hard: bool
    note: str

    @property
    def each_g(self) -> float:
        """What one takes: as weighed, else as computed."""
        return self.computed_g if self.weighed_g is None else self.weighed_g

    @property
    def total_g(self) -> float:
        """What all of them take."""
        return self.each_g * self.count

    @property
    def off(self) -> float | None:
        """How far the weighed one is from the computed one, as a share; None where nobody has weighed it."""
        return None if self.weighed_g is None else self.weighed_g / self.computed_g - 1.0


@dataclass(frozen=True, kw_only=True)
class Decoration:
    """All parts and repeats of a technique for one cake. `scale` is s."""

    cake: Tin
    written_for: Tin
    scale: float
    parts: tuple[PartAt, ...]
    repeats: tuple[RepeatAt, ...]
    colours: tuple[ColourNeed, ...]
    side_g: float
    heaviest_side_g: float
    heavy: bool
    tolerance: float
    worked: Worked

    @property
    def as_written(self) -> bool:
        """Whether it is the cake the technique is written for."""
        return self.cake.sizes_mm == self.written_for.sizes_mm and self.cake.shape == self.written_for.shape

    @property
    def total_g(self) -> float:
        """All pastes together."""
        return sum(each.mass_g for each in self.colours)

    @property
    def small_hard(self) -> bool:
        """Whether any part is of the size that chokes."""
        return any(part.small_hard for part in self.parts) or any(each.small_hard for each in self.repeats)

    @property
    def supports(self) -> tuple[SupportAt, ...]:
        """What is not food, to be counted in and out."""
        return tuple(part.support for part in self.parts if part.support)


def letter(index: int) -> str:
    """A, B, ... Z, AA, AB."""
    more, last = divmod(index, 26)
    return (ascii_uppercase[more - 1] if more else "") + ascii_uppercase[last]


def cakes_for(technique: Technique) -> tuple[Tin, ...]:
    """The cakes of 10 to 30 cm of the shape it is written for, that one among them, small to large; none without."""
    written = technique.parts_for
    if written is None:
        return ()
    known = {
        tin.sizes_mm: Tin(shape=tin.shape, sizes_mm=tin.sizes_mm)
        for tin in standard_tins((written.shape,))
        if LEAST_CAKE_MM <= tin.bounds_mm[0] <= MOST_CAKE_MM and not tin.kind.in_trays
    }
    known[written.sizes_mm] = written
    return tuple(sorted(known.values(), key=lambda tin: (tin.bounds_mm[0], tin.area_mm2)))


def scale_to(cake: Tin, written_for: Tin) -> float:
    """Width of the cake over that of the cake it is written for."""
    return cake.bounds_mm[0] / written_for.bounds_mm[0]


def decoration(technique: Technique, cake: Tin, book: Book, facts: Facts) -> Decoration:
    """The parts and repeats of a technique for a cake. ValueError where it has none."""
    written = technique.parts_for
    if written is None or not (technique.parts or technique.repeats):
        raise ValueError(f'"{technique.name}" has no parts')
    s = scale_to(cake, written)
    parts = tuple(_parts(technique.parts, s, book, facts))
    outlines = {part.name: part.outline_mm for part in parts}
    repeats = tuple(
        repeat_at(index, letter(len(parts) + index), each, cake, s, outlines, book, facts)
        for index, each in enumerate(technique.repeats)
    )
    hung = [part for part in parts if part.on == SIDE]
    heaviest = max((part.each_g for part in hung), default=0.0)
    limit, near = facts.numbers["heavy on the side"], facts.numbers["weighed against computed"]
    used = [(part.paste, part.colour, part.total_g) for part in parts]
    used += [(each.paste, each.colour, each.mass_g) for each in repeats if each.paste]
    return Decoration(
        cake=cake,
        written_for=written,
        scale=s,
        parts=parts,
        repeats=repeats,
        colours=colour_needs(used),
        side_g=sum(part.total_g for part in hung),
        heaviest_side_g=heaviest,
        heavy=heaviest >= limit.value,
        tolerance=near.value,
        worked=_worked(parts, s),
    )


def decorations(technique: Technique, book: Book, facts: Facts) -> tuple[Decoration, ...]:
    """The same for every cake of 10 to 30 cm."""
    return tuple(decoration(technique, cake, book, facts) for cake in cakes_for(technique))


def _parts(parts: Iterable[Part], s: float, book: Book, facts: Facts) -> Iterator[PartAt]:
    for index, part in enumerate(parts):
        shape = shape_of(part, s)
        paste = paste_or_like(part.paste, book, facts)
        computed_g = solids.grams(shape.volume_mm3, paste.g_per_ml)
        weighed_g = None
        if part.weighed is not None:
            # as far from the computed weight at every size as at the written one
            weighed_g = computed_g * part.weighed / solids.grams(shape_of(part, 1.0).volume_mm3, paste.g_per_ml)
        width_mm, height_mm = solids.bounds(shape.outline_mm)
        yield PartAt(
            index=index,
            letter=letter(index),
            name=part.part,
            count=part.count,
            form=part.form,
            shape=shape.words,
            lengths_mm=shape.lengths_mm,
            outline_mm=shape.outline_mm,
            width_mm=width_mm,
            height_mm=height_mm,
            thick_mm=shape.thick_mm,
            volume_ml=shape.volume_mm3 / solids.MM3_IN_ML,
            computed_g=computed_g,
            weighed_g=weighed_g,
            paste=paste,
            colour=Colouring.called(part.colour, book, facts),
            cutter=cutter_fit(part, shape.lengths_mm, width_mm, s, book),
            support=support_at(part, shape, s, facts),
            drying=drying(shape.thick_mm, facts),
            on=part.on,
            small_hard=small_hard((width_mm, height_mm, shape.thick_mm), facts),
            note=part.note or "",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeAt:
    """A part's shape at a scale: words for it, its lengths by name, outline, thickness, volume."""

    words: str
    lengths_mm: tuple[tuple[str, float], ...]
    outline_mm: tuple[Ring, ...]
    thick_mm: float
    volume_mm3: float


def shape_of(part: Part, s: float) -> ShapeAt:
    """A sound part's shape at scale s."""
    lengths: tuple[tuple[str, float], ...]
    outline: tuple[Ring, ...]
    if part.solid:
        solid = part.solid
        sizes, to = (tuple(size * s for size in each) for each in (solid.sizes_mm, solid.to_mm))
        depth = solids.depth_mm(solid.form, sizes, solid.how, to)
        names = (*SIZE_NAMES[solid.form], *(("pressed to", "by") if to else ()))
        outline = (solids.silhouette(solid.form, sizes, solid.how, to),)
        words = f"{solid.how} {solid.form}".strip()
        lengths = tuple(zip(names, (*sizes, *to), strict=True))
        return ShapeAt(
            words=words,
            lengths_mm=lengths,
            outline_mm=outline,
            thick_mm=depth,
            volume_mm3=solids.solid_mm3(solid.form, sizes, solid.how),
        )
    if part.rope:
        thick, long = (size * s for size in part.rope.mm)
        outline = (solids.oblong(long, thick),)
        lengths = (("thick", thick), ("long", long))
        return ShapeAt(
            words="rope",
            lengths_mm=lengths,
            outline_mm=outline,
            thick_mm=thick,
            volume_mm3=solids.cylinder_mm3(thick, long),
        )
    thick, area = part.thick or 0.0, None
    if part.strip:
        wide, long = (size * s for size in part.strip.mm)
        words, lengths = "strip", (("wide", wide), ("long", long))
        outline = (solids.oblong(long, wide),)
    else:
        outline, words, lengths = _sheet(part, s)
        if part.sheet and part.sheet.form in ("round", "oval"):
            area = solids.oval_mm2(lengths[0][1], lengths[-1][1])
    area = solids.rings_mm2(outline) if area is None else area
    return ShapeAt(
        words=words,
        lengths_mm=(*lengths, ("thick", thick)),
        outline_mm=outline,
        thick_mm=thick,
        volume_mm3=solids.sheet_mm3(area, thick),
    )


def _sheet(part: Part, s: float) -> tuple[tuple[Ring, ...], str, tuple[tuple[str, float], ...]]:
    sheet = part.sheet
    assert sheet is not None
    if sheet.rings:
        outline = solids.scaled(sheet.rings, s)
        wide, high = solids.bounds(outline)
        return outline, "sheet to a template", (("wide", wide), ("high", high))
    sizes = tuple(size * s for size in sheet.sizes_mm)
    wide, high = sizes[0], sizes[-1]
    ring = solids.oval(wide, high) if sheet.form in ("round", "oval") else solids.oblong(wide, high)
    names = ("across",) if len(sizes) == 1 else ("wide", "high")
    return (ring,), f"{sheet.form} sheet", tuple(zip(names, sizes, strict=True))


SIZE_NAMES = {
    "ball": ("across",),
    "egg": ("across", "long"),
    "cone": ("across", "high"),
    "frustum": ("across", "high", "top"),
    "teardrop": ("across", "long"),
    "cylinder": ("across", "long"),
    "slab": ("wide", "high", "thick"),
}


def support_at(part: Part, shape: ShapeAt, s: float, facts: Facts) -> SupportAt | None:
    """A part's support at scale s: it goes as deep, but stays clear of the front, where the thickness does not grow."""
    support = part.support
    if support is None:
        return None
    behind = support.goes_in == "from behind"
    room_mm = shape.thick_mm if behind else solids.bounds(shape.outline_mm)[1]
    written = shape_of(part, 1.0)
    written_mm = written.thick_mm if behind else solids.bounds(written.outline_mm)[1]
    # where the baker keeps less before it, that is kept at every size
    cover_mm = min(facts.numbers["kept before a support"].value, max(written_mm - support.length, 0.0))
    wanted_mm = support.length * s
    reach_mm = min(wanted_mm, max(room_mm - cover_mm, 0.0))
    return SupportAt(
        what=support.what,
        each=support.count,
        count=support.count * part.count,
        goes_in=support.goes_in,
        reach_mm=reach_mm,
        room_mm=room_mm,
        cake_mm=(support.in_the_cake or 0.0) * s,
        shortened=reach_mm < wanted_mm - 0.05,
    )


def part_traits(technique: Technique, book: Book, facts: Facts) -> frozenset[str]:
    """The words that call up cautions by its parts, on its smallest and largest cake."""
    cakes = cakes_for(technique) if technique.parts or technique.repeats else ()
    if not cakes:
        return frozenset()
    made = [decoration(technique, cake, book, facts) for cake in (cakes[0], cakes[-1])]
    found = {
        SUPPORT: any(each.supports for each in made),
        SMALL_HARD: any(each.small_hard for each in made),
        COLOUR: any(need.colour for each in made for need in each.colours),
    }
    return frozenset(word for word, true in found.items() if true)


def drying(thick_mm: float, facts: Facts) -> Drying:
    """How long a part of that thickness dries."""
    sheet = thick_mm <= facts.numbers["dries as a sheet"].value
    hours = facts.numbers["sheet drying" if sheet else "solid drying"]
    soft = thick_mm > facts.numbers["stays soft within"].value
    return Drying(hours.low or hours.value, hours.high or hours.value, sheet, soft)


def small_hard(sizes_mm: tuple[float, float, float], facts: Facts) -> bool:
    """Whether a dried part of those sizes goes into the cylinder that tells what chokes."""
    small, middle, large = sorted(sizes_mm)
    across, deep = facts.numbers["small parts across"].value, facts.numbers["small parts deep"].value
    # the widest section across the cylinder is at most its two smaller sides
    return middle <= across and large <= deep and small > 0.0


def _worked(parts: tuple[PartAt, ...], s: float) -> Worked:
    formula = (
        "weight = volume × density; lengths × s, solids and ropes × s³, sheets and strips × s² at the same thickness; "
        "s = width of this cake / width of the cake it is written for; a weighed part moves its computed weight at "
        "every size"
    )
    pastes = dict.fromkeys(part.paste for part in parts)
    inputs = [f"s = {s:.4g}", *(f"{paste.name}: {paste.g_per_ml:g} g/ml" for paste in pastes)]
    return Worked(
        formula, tuple(inputs), tuple(dict.fromkeys([*(paste.source for paste in pastes), "common practice"]))
    )
