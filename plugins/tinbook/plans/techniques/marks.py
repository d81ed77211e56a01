"""Marks repeated on a surface of a decoration: how far apart, how many for this cake, where, and the paste for them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.engine import repeats, solids
from tinbook.facts import Facts
from tinbook.models import SURFACES, Book, Repeat
from tinbook.plans.techniques.colours import Colouring
from tinbook.plans.techniques.pastes import Paste, paste_or_like
from tinbook.tins import Ring, Tin

TOP, SIDE = SURFACES
MOST_MARKS = 5000
"""More than anyone would do by hand; reported as a problem."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RepeatAt:
    """A repeat at a cake. `points` are the marks' middles on `outline_mm`, y upwards; `whole` of them are not cut by
    its edge. `by_area` is the number the area gives. `each_g` is None if the mark is pressed in."""

    index: int
    letter: str
    name: str
    on: str
    how: str
    mark_mm: tuple[float, float]
    gap_mm: float
    pitch_mm: tuple[float, float]
    round_mark: bool
    outline_mm: tuple[Ring, ...]
    area_mm2: float
    by_area: float
    points: repeats.Points
    whole: int
    thick_mm: float
    each_g: float | None
    paste: Paste | None
    colour: Colouring | None
    small_hard: bool
    note: str
    people: int = 1

    @property
    def made(self) -> int:
        """How many marks on the cakes of everyone working."""
        return self.count * self.people

    @property
    def count(self) -> int:
        """How many marks."""
        return len(self.points)

    @property
    def cut(self) -> int:
        """How many the edge cuts."""
        return self.count - self.whole

    @property
    def mass_g(self) -> float:
        """Paste for all of them, for everyone working; what the edge cuts off is rolled out too."""
        return (self.each_g or 0.0) * self.made


def surface_of(repeat: Repeat, cake: Tin, s: float, outlines: Mapping[str, tuple[Ring, ...]]) -> tuple[Ring, ...]:
    """The outline a repeat goes on: a part's, the cake's top, or its side laid flat."""
    if repeat.on == TOP:
        return cake.outline_mm()
    if repeat.on == SIDE:
        return (solids.oblong(cake.perimeter_mm, (repeat.high or 0.0) * s),)
    return outlines[repeat.on]


def mark_of(repeat: Repeat) -> tuple[float, float]:
    """Width and height of a mark."""
    sizes = repeat.mark.mm
    return (sizes[0], sizes[-1])


def pitch_of(repeat: Repeat) -> tuple[float, float]:
    """The distance from mark to mark along a row, and from row to row."""
    return repeats.pitches_mm(mark_of(repeat), repeat.gap, repeat.set)


def repeat_at(
    index: int, letter: str, repeat: Repeat, cake: Tin, s: float, outlines: Mapping[str, tuple[Ring, ...]],
    book: Book, facts: Facts, people: int = 1,
) -> RepeatAt:  # fmt: skip
    """A sound repeat at a cake: marks and gaps keep their size, the surface scales by s."""
    outline = surface_of(repeat, cake, s, outlines)
    mark, pitch = mark_of(repeat), pitch_of(repeat)
    points = repeats.places(outline, pitch, repeat.set != "straight")
    paste = paste_or_like(repeat.paste, book, facts) if repeat.paste else None
    is_round = len(repeat.mark.mm) == 1
    volume, thick = _mark_mm3(repeat, mark, is_round)
    each_g = solids.grams(volume, paste.g_per_ml) if paste and volume else None
    area = solids.rings_mm2(outline)
    across, deep = facts.numbers["small parts across"].value, facts.numbers["small parts deep"].value
    hard = repeat.solid is not None and sorted((*mark, thick))[1] <= across and max(*mark, thick) <= deep
    return RepeatAt(
        index=index,
        letter=letter,
        name=repeat.repeat,
        on=repeat.on,
        how=repeat.set,
        mark_mm=mark,
        gap_mm=repeat.gap,
        pitch_mm=pitch,
        round_mark=is_round,
        outline_mm=outline,
        area_mm2=area,
        by_area=repeats.count_of(area, pitch),
        points=points,
        whole=repeats.whole(outline, points, mark),
        thick_mm=thick,
        each_g=each_g,
        paste=paste,
        colour=Colouring.called(repeat.colour, book, facts),
        small_hard=hard,
        note=repeat.note or "",
        people=people,
    )


def _mark_mm3(repeat: Repeat, mark: tuple[float, float], is_round: bool) -> tuple[float, float]:
    """The volume of one mark and its thickness; nothing where it is pressed in."""
    if repeat.solid:
        solid = repeat.solid
        volume = solids.solid_mm3(solid.form, solid.sizes_mm, solid.how)
        return volume, solids.depth_mm(solid.form, solid.sizes_mm, solid.how, solid.to_mm)
    if repeat.thick:
        area = solids.oval_mm2(*mark) if is_round else mark[0] * mark[1]
        return solids.sheet_mm3(area, repeat.thick), repeat.thick
    return 0.0, 0.0
