"""The parts of a decoration for any cake: outlines, grams, cutters, supports, drying, what hangs on the side.

Everything scales by s, the width of the cake asked for over that of the cake the technique is written for: lengths by
s, solids and ropes by s³, sheets and strips by s², as their thickness stays.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from string import ascii_uppercase

from tinbook.engine import solids
from tinbook.facts import Caution, Facts
from tinbook.models import Book, Part, Technique
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.techniques.colours import Colouring, ColourNeed, colour_needs
from tinbook.plans.techniques.cutters import CutterFit, cutter_fit
from tinbook.plans.techniques.drying import Drying, drying, small_hard
from tinbook.plans.techniques.marks import RepeatAt, repeat_at
from tinbook.plans.techniques.pastes import Paste, paste_or_like
from tinbook.plans.techniques.shapes import shape_of
from tinbook.plans.techniques.supports import SupportAt, support_at, through
from tinbook.plans.techniques.technique import SMALL_HARD, SUPPORT, own_and_used, technique_cautions
from tinbook.tins import Ring, Tin, standard_tins

LEAST_CAKE_MM, MOST_CAKE_MM = 99.0, 306.0
"""Cakes of 10 to 30 cm."""
SIDE, COLOUR = "side", "colour"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartAt:
    """A part at a cake. `outline_mm`: rings about the middle of its bounds, y upwards, the outer one first; seen from
    the front. Weights in g: `computed_g` from its volume, `weighed_g` from the scales at the written cake, scaled
    alike; `each_g` is the weighed one if there is one."""

    index: int
    letter: str
    name: str
    count: int
    form: str
    shape: Saying
    flattened: bool
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
    stands_on: str = ""
    lies_on: str = ""
    up: tuple[float, ...] = ()
    across: tuple[float, ...] = ()
    turned: tuple[float, ...] = ()
    behind: int = 0
    sunk_mm: float = 0.0
    flat: bool = False
    laid: bool = False
    coiled: int | None = None
    people: int = 1

    @property
    def made(self) -> int:
        """How many for everyone working, `count` each."""
        return self.count * self.people

    @property
    def each_g(self) -> float:
        """What one takes: as weighed, or as computed."""
        return self.computed_g if self.weighed_g is None else self.weighed_g

    @property
    def low_mm(self) -> float:
        """How high it is as it stands: of what lies flat, how thick."""
        return self.thick_mm if self.flat else self.height_mm

    @property
    def total_g(self) -> float:
        """What all of them take, for everyone working."""
        return self.each_g * self.made

    @property
    def off(self) -> float | None:
        """How far the weighed figure is from the computed one, as a share; None if nobody has weighed it."""
        return None if self.weighed_g is None else self.weighed_g / self.computed_g - 1.0


@dataclass(frozen=True, kw_only=True)
class Decoration:
    """All parts and repeats of a technique, for one cake each for `people`. `scale` is s; `side_g` is for one cake."""

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
    people: int = 1

    @property
    def as_written(self) -> bool:
        """Whether it is the cake the technique is written for."""
        return self.cake.sizes_mm == self.written_for.sizes_mm and self.cake.shape == self.written_for.shape

    @property
    def total_g(self) -> float:
        """All pastes together."""
        return sum(need.mass_g for need in self.colours)

    @property
    def lettered(self) -> tuple[tuple[str, str], ...]:
        """Letter and name of every part, then of every repeat."""
        parts = tuple((part.letter, part.name) for part in self.parts)
        return parts + tuple((repeat.letter, repeat.name) for repeat in self.repeats)

    @property
    def small_hard(self) -> bool:
        """Whether any part is small enough to choke on."""
        return any(part.small_hard for part in self.parts) or any(repeat.small_hard for repeat in self.repeats)

    @property
    def supports(self) -> tuple[SupportAt, ...]:
        """What is not food, to be counted in and out."""
        return tuple(part.support for part in self.parts if part.support)


def letter(index: int) -> str:
    """A, B, ... Z, AA, AB."""
    more, last = divmod(index, 26)
    return (ascii_uppercase[more - 1] if more else "") + ascii_uppercase[last]


def cakes_for(technique: Technique) -> tuple[Tin, ...]:
    """The cakes of 10 to 30 cm in the shape it is written for, that one included, small to large; none without one."""
    written = technique.parts_for
    if written is None:
        return ()
    known = {
        tin.sizes_mm: Tin(shape=tin.shape, sizes_mm=tin.sizes_mm, sold=tin.sold)
        for tin in standard_tins((written.shape,), written.sold)
        if LEAST_CAKE_MM <= tin.bounds_mm[0] <= MOST_CAKE_MM and not tin.kind.in_trays
    }
    known[written.sizes_mm] = written
    return tuple(sorted(known.values(), key=lambda tin: (tin.bounds_mm[0], tin.area_mm2)))


def scale_to(cake: Tin, written_for: Tin) -> float:
    """Width of the cake over that of the cake it is written for."""
    return cake.bounds_mm[0] / written_for.bounds_mm[0]


def decoration(technique: Technique, cake: Tin, book: Book, facts: Facts, people: int = 1) -> Decoration:
    """The parts and repeats of a technique for a cake, each of `people` making one. ValueError if it has none."""
    name = ("decoration", Itself(technique), cake, people, Itself(facts))
    return ledger_of(book).lately(name, lambda: _decoration(technique, cake, book, facts, people))


def _decoration(technique: Technique, cake: Tin, book: Book, facts: Facts, people: int) -> Decoration:
    written = technique.parts_for
    if written is None or not (technique.parts or technique.repeats):
        raise ValueError(f'"{technique.name}" has no parts')
    s = scale_to(cake, written)
    parts = tuple(_parts(technique.parts, s, book, facts, people))
    under = {part.name: (part.low_mm, part.stands_on) for part in parts}
    parts = tuple(replace(part, support=through(part.support, part.stands_on, under)) for part in parts)
    outlines = {part.name: part.outline_mm for part in parts}
    repeats = tuple(
        repeat_at(index, letter(len(parts) + index), repeat, cake, s, outlines, book, facts, people)
        for index, repeat in enumerate(technique.repeats)
    )
    hung = [part for part in parts if part.on == SIDE]
    heaviest = max((part.each_g for part in hung), default=0.0)
    limit, near = facts.numbers["heavy on the side"], facts.numbers["weighed against computed"]
    used = [(part.paste, part.colour, part.total_g) for part in parts]
    used += [(repeat.paste, repeat.colour, repeat.mass_g) for repeat in repeats if repeat.paste]
    return Decoration(
        cake=cake,
        written_for=written,
        scale=s,
        parts=parts,
        repeats=repeats,
        colours=colour_needs(used),
        side_g=sum(part.each_g * part.count for part in hung),
        heaviest_side_g=heaviest,
        heavy=heaviest >= limit.value,
        tolerance=near.value,
        worked=_worked(parts, s),
        people=people,
    )


def decorations(technique: Technique, book: Book, facts: Facts, people: int = 1) -> tuple[Decoration, ...]:
    """The same for every cake of 10 to 30 cm."""
    return tuple(decoration(technique, cake, book, facts, people) for cake in cakes_for(technique))


def _parts(parts: Iterable[Part], s: float, book: Book, facts: Facts, people: int) -> Iterator[PartAt]:
    for index, part in enumerate(parts):
        shape = shape_of(part, s)
        paste = paste_or_like(part.paste, book, facts)
        computed_g = solids.grams(shape.volume_mm3, paste.g_per_ml)
        weighed_g = None
        if part.weighed is not None:
            # the same distance from the computed weight at every size as at the written one
            weighed_g = computed_g * part.weighed / solids.grams(shape_of(part, 1.0).volume_mm3, paste.g_per_ml)
        width_mm, height_mm = solids.bounds(shape.outline_mm)
        pressed = part.solid is not None and part.solid.how == "flattened"
        yield PartAt(
            index=index,
            letter=letter(index),
            name=part.part,
            count=part.count,
            form=part.form,
            shape=shape.said,
            flattened=pressed,
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
            cutter=cutter_fit(part, shape.lengths_mm, width_mm, s, book, people),
            support=support_at(part, shape, s, facts),
            drying=drying(shape.thick_mm, facts),
            on=part.on,
            small_hard=small_hard((width_mm, height_mm, shape.thick_mm), facts),
            note=part.note or "",
            stands_on=part.stands_on or "",
            lies_on=part.lies_on or "",
            up=part.up,
            across=part.across,
            turned=part.turned,
            behind=part.behind,
            sunk_mm=(part.sunk or 0.0) * s,
            flat=pressed or (part.form == "sheet" and not part.upright and part.on != SIDE),
            laid=part.laid,
            coiled=part.coiled,
            people=people,
        )


def part_traits(technique: Technique, book: Book, facts: Facts) -> frozenset[str]:
    """The words by which its parts call up cautions, on its smallest and largest cake."""
    cakes = cakes_for(technique) if technique.parts or technique.repeats else ()
    if not cakes:
        return frozenset()
    ends = [decoration(technique, cake, book, facts) for cake in (cakes[0], cakes[-1])]
    traits = {
        SUPPORT: any(end.supports for end in ends),
        SMALL_HARD: any(end.small_hard for end in ends),
        COLOUR: any(need.colour for end in ends for need in end.colours),
    }
    return frozenset(trait for trait, called in traits.items() if called)


def every_caution(technique: Technique, book: Book, facts: Facts) -> tuple[Caution, ...]:
    """The usual cautions that it and its parts call up, and those of what it uses, each once."""
    every = (
        technique_cautions(each, book, facts, part_traits(each, book, facts)) for each in own_and_used(technique, book)
    )
    keys = {caution.key for called in every for caution in called}
    return tuple(caution for key, caution in facts.cautions.items() if key in keys)


def _worked(parts: tuple[PartAt, ...], s: float) -> Worked:
    pastes = dict.fromkeys(part.paste for part in parts)
    densities = (saying("paste_density", paste=paste.name, g_per_ml=paste.g_per_ml) for paste in pastes)
    sources = dict.fromkeys([*(paste.source for paste in pastes), "common practice"])
    return Worked(saying("parts_scaled"), (saying("scale_of_cake", s=s), *densities), tuple(sources))


def worked_at(every: tuple[Decoration, ...]) -> Worked:
    """How it was worked out at every one of some cakes."""
    worked = every[0].worked
    _, *densities = worked.inputs
    scales = tuple(dict.fromkeys(sums.scale for sums in every))
    return Worked(worked.formula, (saying("scales_of_cakes", scales=scales), *densities), worked.sources)
