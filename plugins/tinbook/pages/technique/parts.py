"""The parts of a technique on its page: a table for each cake, grams of each colour, a drawing of parts and marks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from tinbook.facts import Additive, Facts
from tinbook.models import Book, Technique
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head
from tinbook.pages.base.shared import worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import formula_of
from tinbook.pages.technique.cake_templates import template_paths
from tinbook.pages.technique.part_drawings import PartDrawing, marks_drawn, parts_drawn
from tinbook.plans.techniques.colours import Colouring, ColourNeed
from tinbook.plans.techniques.cutters import CutterFit
from tinbook.plans.techniques.marks import RepeatAt
from tinbook.plans.techniques.parts import Decoration, Drying, PartAt, SupportAt, decoration, decorations
from tinbook.plans.techniques.shown import hours, mm, percent, pot_g, weight_g
from tinbook.plans.true_size.templates import has_templates
from tinbook.tins import Tin

NONE = "none"
LABEL = "In the UK and EU these words go on the label; your local law has the last word."
PLACES = {"top": "", "side": "on the side", "board": "on the board"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PartLine:
    """One part or repeat, spelled: letter, name, what to make, how many, grams, and the rest in short lines."""

    letter: str
    name: str
    make: str
    count: str
    each: str
    total: str
    more: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourLine:
    """Paste of one colour: grams, which, its pots for so much, its swatch (empty for none), what to mind."""

    total: str
    name: str
    paste: str
    pots: tuple[str, ...]
    swatch: str
    label: str
    mind: str
    warning: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeParts:
    """All for one cake; `shown` for the one the technique is written for. `templates`: papers, and their files."""

    cake: str
    shown: bool
    parts: tuple[PartLine, ...]
    colours: tuple[ColourLine, ...]
    total: str
    heavy: str
    worked: str
    templates: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class PartsView:
    """The parts of a technique for every cake."""

    slug: str
    technique: Technique
    book: Book
    facts: Facts

    @cached_property
    def all(self) -> tuple[Decoration, ...]:
        """The sums for every cake."""
        return decorations(self.technique, self.book, self.facts)

    @cached_property
    def written(self) -> Decoration:
        """The sums for the cake it is written for."""
        return next(each for each in self.all if each.as_written)

    @property
    def cakes(self) -> tuple[CakeParts, ...]:
        """Every cake, spelled, with the files of its templates."""
        paths = template_paths(self.slug, tuple(each.cake for each in self.all))
        return tuple(
            replace(cake_parts(each), templates=paths[each.cake] if has_templates(each) else ()) for each in self.all
        )

    def made_for(self, cake: Tin | None) -> tuple[Decoration, ...]:
        """The sums for one cake, any the baker names; for every cake without."""
        return (decoration(self.technique, cake, self.book, self.facts),) if cake else self.all

    @property
    def drawing(self) -> PartDrawing | None:
        """All parts to one scale."""
        return parts_drawn(self.written)

    @property
    def marks(self) -> tuple[PartDrawing, ...]:
        """Where the marks go, a drawing for each repeat, on the cake it is written for."""
        return tuple(marks_drawn(each, self.written.cake.name) for each in self.written.repeats)

    @property
    def grid(self) -> Grid:
        """Grams of each colour for every cake."""
        needs = self.written.colours
        heads = (Head("For a cake"), Head("All", "g"), *(Head(_need_name(each), "g") for each in needs))
        rows = tuple(
            GridRow(
                head=made.cake.name,
                cells=(Cell(weight_g(made.total_g), True), *(Cell(_found(made, each)) for each in needs)),
                note="as written" if made.as_written else "",
            )
            for made in self.all
        )
        worked = worked_view((self.written.worked,), self.facts)
        lead = (
            "Solids go by the cube of the cake's width, sheets by its square. What stays on hands and board is extra."
        )
        return Grid(
            title="Paste for every cake",
            anchor="paste-for-every-cake",
            heads=heads,
            rows=rows,
            worked=worked,
            lead=lead,
        )

    @property
    def warnings(self) -> tuple[str, ...]:
        """What the law wants beside the names of its colours, one a phrase."""
        return warnings_of(self.written)

    @property
    def heavy(self) -> str:
        """What to say of weight on the side; empty for nothing."""
        return heavy_words(self.written)


def warnings_of(made: Decoration) -> tuple[str, ...]:
    """What the law wants beside each colour that carries a warning."""
    found: dict[str, tuple[Additive, list[str]]] = {}
    for need in made.colours:
        for additive in need.colour.warned if need.colour else ():
            named = need.colour.name if need.colour else ""
            found.setdefault(additive.key, (additive, []))[1].append(named)
    return tuple(
        f"{formats.title(formats.sentence(dict.fromkeys(names)))} holds {key} ({additive.name}): {additive.warning}. "
        f"{LABEL}"
        for key, (additive, names) in found.items()
    )


def heavy_words(made: Decoration) -> str:
    """What to say of weight on the side of a cake."""
    if not made.side_g:
        return ""
    told = f"{weight_g(made.side_g)} g hang on the side, {weight_g(made.heaviest_side_g)} g the heaviest part."
    if not made.heavy:
        return told
    return (
        told + " That is heavy: let it stand on the board, hold it till it has set, or hollow its back. Tell who cuts."
    )


def cake_parts(made: Decoration) -> CakeParts:
    """All for one cake, spelled."""
    lines = (*(_part_line(part, made.tolerance) for part in made.parts), *(_mark_line(each) for each in made.repeats))
    return CakeParts(
        cake=made.cake.name,
        shown=made.as_written,
        parts=lines,
        colours=tuple(_colour_line(each) for each in made.colours),
        total=weight_g(made.total_g),
        heavy=heavy_words(made),
        worked=formula_of(made.worked),
    )


def _part_line(part: PartAt, tolerance: float) -> PartLine:
    sizes = ", ".join(f"{name} {mm(size)}" for name, size in part.lengths_mm)
    make = f"{part.shape}: {sizes} mm"
    if part.shape.startswith("flattened"):
        make += f", {mm(part.thick_mm)} mm thick"
    more = [_cutter(part.cutter), _support(part.support), _dries(part.drying), PLACES[part.on]]
    if part.weighed_g is not None and part.off is not None:
        told = f"weighed {weight_g(part.weighed_g)} g, computed {weight_g(part.computed_g)} g"
        more.append(told + ("" if abs(part.off) <= tolerance else f", {percent(part.off)} off: measure it again"))
    more.append("small and hard: keep it from small children" if part.small_hard else "")
    more.append(_law(part.colour))
    more.append(part.note)
    colour = part.colour.name if part.colour else "uncoloured"
    return PartLine(
        letter=part.letter,
        name=f"{part.name}, {colour}",
        make=make,
        count=str(part.count),
        each=weight_g(part.each_g),
        total=weight_g(part.total_g),
        more=tuple(words for words in more if words),
    )


def _mark_line(each: RepeatAt) -> PartLine:
    size = " × ".join(mm(side) for side in dict.fromkeys(each.mark_mm))
    make = f"{size} mm, {mm(each.gap_mm)} mm apart: every {mm(each.pitch_mm[0])} mm, rows {mm(each.pitch_mm[1])} mm"
    more = [f"{each.how} on {each.on}"]
    if each.each_g is None:
        more.append("pressed in")
    if each.cut:
        more.append(f"{each.cut} of them cut by the edge")
    if each.small_hard:
        more.append("small and hard: keep them from small children")
    if each.colour and each.colour.warned:
        more.append(_law(each.colour))
    each_g = weight_g(each.each_g) if each.each_g else NONE
    total = weight_g(each.mass_g) if each.mass_g else NONE
    colour = f", {each.colour.name}" if each.colour else ""
    return PartLine(
        letter=each.letter,
        name=f"{each.name}{colour}",
        make=make,
        count=str(each.count),
        each=each_g,
        total=total,
        more=tuple(words for words in (*more, each.note) if words),
    )


def _cutter(fit: CutterFit | None) -> str:
    if fit is None:
        return ""
    what = f"{fit.form} cutter, {' × '.join(mm(size) for size in fit.wanted_mm)} mm"
    what = f"top marked by a {what}" if fit.marks else what
    if fit.off_mm is None:
        return f"{what}: none in the drawer, cut round a template"
    if fit.exact:
        return f"{what}, in the drawer"
    how = "larger" if fit.off_mm > 0 else "smaller"
    return f"{what}: nearest is {fit.owned}, {mm(abs(fit.off_mm))} mm {how}"


def _support(support: SupportAt | None) -> str:
    if support is None:
        return ""
    short = ", shortened to stay clear of the front" if support.shortened else ""
    rest = f" and {mm(support.cake_mm)} mm in the cake" if support.cake_mm else ""
    return f"{support.each} × {support.what} {support.goes_in}, {mm(support.reach_mm)} mm in the part{rest}{short}"


def _dries(drying: Drying) -> str:
    soft = ", and stays soft inside" if drying.soft_within else ""
    return f"dries {hours(drying.low_h, drying.high_h)}{soft}"


def _law(colour: Colouring | None) -> str:
    """On a part: that its colour carries a warning, which stands beside the colour."""
    if colour is None or not colour.warned:
        return ""
    return f"{colour.name} carries a warning by law ({formats.sentence(each.key for each in colour.warned)})"


def _need_name(need: ColourNeed) -> str:
    return formats.title(need.colour.name if need.colour else need.paste.name)


def _found(made: Decoration, wanted: ColourNeed) -> str:
    grams = sum(each.mass_g for each in made.colours if (each.paste, each.colour) == (wanted.paste, wanted.colour))
    return weight_g(grams)


def _colour_line(need: ColourNeed) -> ColourLine:
    colour = need.colour
    if colour is None:
        return ColourLine(
            total=weight_g(need.mass_g),
            name="Uncoloured",
            paste=need.paste.name,
            pots=(),
            swatch="",
            label="",
            mind="",
            warning="",
        )
    pots = tuple(_pot(pot.name, pot.shade, pot.for_g(need.mass_g), pot.written) for pot in colour.pots)
    return ColourLine(
        total=weight_g(need.mass_g),
        name=formats.title(colour.name),
        paste=need.paste.name,
        pots=pots,
        swatch=colour.swatch,
        label=colour.label,
        mind=minded(colour),
        warning=f"warning by law: {colour.law}" if colour.warned else "",
    )


def minded(colour: Colouring) -> str:
    """What becomes of a colour, in words; empty for nothing."""
    says = {"deepens on standing": colour.deepens, "fades in light": colour.fades, "browns when baked": colour.browns}
    mind = [words for words, true in says.items() if true]
    if colour.additives is None:
        mind.append("additives unknown: read the pot")
    return formats.sentence(mind) if mind else ""


def _pot(name: str, shade: str, mass_g: float | None, written: str) -> str:
    if mass_g is None:
        return f"{written} for 100 g"
    return ", ".join(word for word in (f"{pot_g(mass_g)} g {name}", shade) if word)


def spoken(lines: Iterable[PartLine]) -> tuple[tuple[str, str], ...]:
    """Parts for a sheet: a heading and the rest in words."""
    return tuple((f"{each.letter} {each.name}", _in_words(each)) for each in lines)


def _in_words(line: PartLine) -> str:
    grams = "" if line.each == NONE else f"{line.each} g each, {line.total} g in all"
    return "; ".join(words for words in (f"{line.count} × {line.make}", grams, *line.more) if words) + "."


def mixed(lines: Iterable[ColourLine]) -> tuple[tuple[str, str], ...]:
    """Colours for a sheet: a heading and the rest in words."""
    return tuple(
        (
            f"{each.name}, {each.total} g",
            "; ".join(words for words in (each.paste, *each.pots, each.mind, each.warning) if words) + ".",
        )
        for each in lines
    )
