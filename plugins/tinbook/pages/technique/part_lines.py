"""Parts and marks in lines: what to make, how many, grams, and the rest in short words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.figures import exact, hours, mm, percent, runs, weight_g
from tinbook.plans.techniques.colours import Colouring
from tinbook.plans.techniques.cutters import CutterFit
from tinbook.plans.techniques.drying import Drying
from tinbook.plans.techniques.kit import MOST_PEOPLE
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import PartAt
from tinbook.plans.techniques.supports import SupportAt

NONE = "none"
FAR = 0.5
"""A cutter further from the size wanted than this share of it is no help (our own judgement)."""
SET = {"straight": "in straight rows", "bricks": "like bricks"}
"""How the rows of a repeat are set, if the word for it needs more."""
PLACES = {"top": "", "side": "on the side", "board": "on the board"}
LENGTHS = {"pressed_to": ", pressed to {}", "by": " × {}", "top": ", {} across the top"}
"""How to say lengths that are not a figure and a name, with what comes before them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterLine:
    """The cutter of a part: how many `before` it and what to say `behind` it, for everyone working."""

    before: str
    words: str
    behind: str
    shared: bool
    have: int

    @property
    def said(self) -> str:
        """The whole line."""
        return f"{self.before}{self.words}{self.behind}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartLine:
    """One part or repeat, spelled: letter, name, what to make, how many, grams, its cutter, the rest in short lines.

    `count_for_one`, `grams_for_one` (empty for none): what the browser multiplies by the number of people.
    """

    letter: str
    name: str
    colour: str
    make: str
    count: str
    each: str
    total: str
    more: tuple[str, ...]
    count_for_one: int
    grams_for_one: str
    cutter: CutterLine | None = None


def part_line(part: PartAt, tolerance: float) -> PartLine:
    """A part; if its weighed figure is off by more than `tolerance`, a share, it says to measure again."""
    more = (
        _support(part.support, part.name),
        _dries(part.drying),
        PLACES[part.on],
        _weighed(part, tolerance),
        "small and hard: keep away from small children" if part.small_hard else "",
        _law(part.colour),
        part.note,
    )
    return PartLine(
        letter=part.letter,
        name=part.name,
        colour=part.colour.name if part.colour else "uncoloured",
        make=_make(part),
        count=str(part.made),
        each=weight_g(part.each_g),
        total=weight_g(part.total_g),
        more=tuple(words for words in more if words),
        count_for_one=part.count,
        grams_for_one=exact(part.each_g * part.count),
        cutter=_cutter(part.cutter, part.people) if part.cutter else None,
    )


def _make(part: PartAt) -> str:
    lengths = (*part.lengths_mm, *((("thick", part.thick_mm),) if part.flattened else ()))
    figures = [mm(size) for _, size in lengths]
    figures[-1] += " mm"
    said = (
        LENGTHS.get(name, f", {{}} {name}").format(figure) for (name, _), figure in zip(lengths, figures, strict=True)
    )
    return f"{spell(part.shape)}: {''.join(said).removeprefix(', ')}"


def _weighed(part: PartAt, tolerance: float) -> str:
    if part.weighed_g is None or part.off is None:
        return ""
    words = f"{part.name}: {weight_g(part.weighed_g)} g weighed, {weight_g(part.computed_g)} g calculated"
    return words if abs(part.off) <= tolerance else f"{words}, {percent(part.off)} off: measure it again"


def mark_line(repeat: RepeatAt) -> PartLine:
    """Marks repeated on a surface."""
    return PartLine(
        letter=repeat.letter,
        name=repeat.name,
        colour=repeat.colour.name if repeat.colour else "",
        make=_spacing(repeat),
        count=str(repeat.made),
        each=weight_g(repeat.each_g) if repeat.each_g else NONE,
        total=weight_g(repeat.mass_g) if repeat.mass_g else NONE,
        more=tuple(words for words in (*_of_marks(repeat), repeat.note) if words),
        count_for_one=repeat.count,
        grams_for_one=exact(repeat.mass_g / repeat.people) if repeat.mass_g else "",
    )


def _spacing(repeat: RepeatAt) -> str:
    size = " × ".join(mm(side) for side in dict.fromkeys(repeat.mark_mm))
    along, between = (mm(pitch) for pitch in repeat.pitch_mm)
    return f"{size} mm, {mm(repeat.gap_mm)} mm apart: one every {along} mm, in rows {between} mm apart"


def _of_marks(repeat: RepeatAt) -> Iterator[str]:
    yield f"{SET.get(repeat.how, repeat.how)} over the {repeat.on}"
    if repeat.each_g is None:
        yield "pressed in"
    if repeat.cut:
        yield f"{repeat.cut} cut short at the edge"
    if repeat.small_hard:
        yield "small and hard: keep away from small children"
    yield _law(repeat.colour)


def _cutter(fit: CutterFit, people: int) -> CutterLine:
    behind = f"; you have {fit.have}" if fit.found and fit.have < fit.wanted else ""
    return CutterLine(
        before=f"{fit.wanted} × " if fit.wanted > 1 else "",
        words=_cutter_words(fit),
        behind="; one to share" if fit.shared and people > 1 else behind,
        shared=fit.shared,
        have=fit.have if fit.found else MOST_PEOPLE,
    )


def _cutter_words(fit: CutterFit) -> str:
    what = f"{fit.form} cutter, {' × '.join(mm(size) for size in fit.wanted_mm)} mm"
    what = f"{what}, to mark the top" if fit.marks else what
    if fit.off_mm is None:
        return f"{what}: you have none: cut round a template"
    if fit.exact:
        return f"{what}, which you have"
    if fit.off is not None and abs(fit.off) > FAR:
        return f"{what}: you have none near this size: cut round a template"
    how = "larger" if fit.off_mm > 0 else "smaller"
    return f"{what}: your nearest is {_the(fit.owned)}, {mm(abs(fit.off_mm))} mm {how}"


def _the(owned: str) -> str:
    """`the 20 mm round` for a cutter in the drawer, `round 20 mm`."""
    form, _, size = owned.partition(" ")
    return f"the {size} {form}"


def _support(support: SupportAt | None, part: str) -> str:
    if support is None:
        return ""
    short = ", shortened to stay clear of the front" if support.shortened else ""
    through = f", {mm(support.through_mm)} mm through what it stands on" if support.through_mm else ""
    rest = f" and {mm(support.rest_mm)} mm into the {support.rest_in or 'cake'}" if support.rest_mm else ""
    name, _, size = support.what.partition(", ")
    what = f"{support.each} {name if support.each == 1 else formats.several(name)}{f' ({size})' if size else ''}"
    return f"{what} {support.goes_in}, {mm(support.reach_mm)} mm into the {part}{through}{rest}{short}"


def _dries(drying: Drying) -> str:
    soft = ", but soft inside for longer" if drying.soft_within else ""
    return f"drying time {hours(drying.low_h, drying.high_h)}{soft}"


def _law(colour: Colouring | None) -> str:
    """On a part: that its colour carries a warning, which is beside the colour."""
    if colour is None or not colour.warned:
        return ""
    return f"{colour.name} carries a statutory warning ({formats.sentence(additive.key for additive in colour.warned)})"


@dataclass(frozen=True, slots=True)
class PartNote:
    """What to know about parts, said once for all it applies to: their letters, and the words."""

    letters: str
    words: str


def told_once(lines: Iterable[PartLine]) -> tuple[PartNote, ...]:
    """Everything to know about parts besides size and weight; what several share is said once for them."""
    listed = tuple(lines)
    of = dict[str, list[int]]()
    for place, line in enumerate(listed):
        for words in line.more:
            of.setdefault(words, []).append(place)
    told = dict[tuple[int, ...], list[str]]()
    for words, places in of.items():
        told.setdefault(tuple(places), []).append(words)
    letters = [line.letter for line in listed]
    # what most share comes first, then by letter
    ordered = sorted(told.items(), key=lambda each: (-len(each[0]), each[0]))
    return tuple(PartNote(runs(letters, places), "; ".join(words)) for places, words in ordered)
