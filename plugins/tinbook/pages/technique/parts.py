"""The parts of a technique on its page: a table for each cake, grams of each colour, a drawing of parts and marks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from tinbook.facts import Facts
from tinbook.models import Book, Technique
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import formula_of
from tinbook.pages.technique.assembled_drawing import PAPER_MM, SCALES, AssembledDrawing, assembled_drawn
from tinbook.pages.technique.cake_templates import template_paths
from tinbook.pages.technique.colour_lines import ColourLine, colour_line, law_lines
from tinbook.pages.technique.figures import exact, weight_g
from tinbook.pages.technique.part_drawings import PartDrawing, marks_drawn, parts_drawn
from tinbook.pages.technique.part_lines import NONE, PartLine, PartNote, mark_line, part_line, told_once
from tinbook.plans.techniques.colours import ColourNeed
from tinbook.plans.techniques.parts import Decoration, decoration, decorations, worked_at
from tinbook.plans.techniques.ready import PasteReady, pastes_ready
from tinbook.plans.techniques.shown import beside
from tinbook.plans.true_size.assembled import put_together
from tinbook.plans.true_size.parts import has_templates
from tinbook.tins import Tin


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadyPaste:
    """A paste to have ready, with what stays on hands and board; `grams_for_one`: what the browser multiplies."""

    paste: str
    total: str
    grams_for_one: str


@dataclass(frozen=True, slots=True)
class PartGrams:
    """Grams at a cake; `for_one`: what the browser multiplies, empty for none; `chosen`: the cake in hand."""

    figure: str
    for_one: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class PartRow:
    """A part's line, and its grams at some cakes."""

    line: PartLine
    grams: tuple[PartGrams, ...]


@dataclass(frozen=True, slots=True)
class SizeHead:
    """A cake of the table of parts; `chosen`: the one in hand."""

    cake: str
    chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsTable:
    """The parts in the order of their letters, each with its grams at up to three cakes; all of them; what to know
    about them."""

    sizes: tuple[SizeHead, ...]
    rows: tuple[PartRow, ...]
    sums: tuple[PartGrams, ...]
    notes: tuple[PartNote, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeParts:
    """Everything for one cake; `shown` for the one the technique is written for. `templates`: papers, and their
    files."""

    cake: str
    shown: bool
    table: PartsTable
    colours: tuple[ColourLine, ...]
    total: str
    grams_for_one: str
    ready: tuple[ReadyPaste, ...]
    heavy: str
    worked: str
    templates: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, kw_only=True)
class PartsView:
    """The parts of a technique for every cake."""

    slug: str
    technique: Technique
    book: Book
    facts: Facts
    people: int = 1

    @cached_property
    def all(self) -> tuple[Decoration, ...]:
        """The sums for every cake."""
        return decorations(self.technique, self.book, self.facts, self.people)

    @cached_property
    def written(self) -> Decoration:
        """The sums for the cake it is written for."""
        return next(sums for sums in self.all if sums.as_written)

    @property
    def cakes(self) -> tuple[CakeParts, ...]:
        """Every cake, spelled, with the files of its templates."""
        paths = template_paths(self.slug, tuple(sums.cake for sums in self.all))
        spelled = ((sums, cake_parts(sums, self.all, self.ready(sums))) for sums in self.all)
        return tuple(replace(each, templates=paths[sums.cake] if has_templates(sums) else ()) for sums, each in spelled)

    def made_for(self, cake: Tin | None) -> tuple[Decoration, ...]:
        """The sums for one cake, any that the baker names; without one, for every cake."""
        return (decoration(self.technique, cake, self.book, self.facts, self.people),) if cake else self.all

    def ready(self, sums: Decoration) -> tuple[PasteReady, ...]:
        """The pastes to have ready for a cake."""
        return pastes_ready(self.technique, sums, self.book, self.facts)

    @property
    def letters(self) -> Mapping[str, str]:
        """The letter of each part and of each repeat, by its name."""
        return {name: letter for letter, name in self.written.lettered}

    @property
    def drawing(self) -> AssembledDrawing | PartDrawing | None:
        """The parts assembled if they say how, at the largest scale that goes on paper, otherwise all of them to one
        scale."""
        put = None
        for scale, _ in SCALES:
            put = assembled_drawn(self.written, scale) or put
            if put and put.wide_mm <= PAPER_MM:
                break
        return put or parts_drawn(self.written)

    @property
    def marks(self) -> tuple[PartDrawing, ...]:
        """Where the marks go: a drawing for each repeat that the assembled parts do not show."""
        put = put_together(self.written, as_laid=True)
        there = {letter for piece in (put.pieces if put else ()) for letter in piece.mark_letters}
        apart = (repeat for repeat in self.written.repeats if repeat.letter not in there)
        return tuple(marks_drawn(repeat, self.written.cake.name) for repeat in apart)

    @property
    def worked(self) -> WorkedView:
        """How the parts of every cake were worked out."""
        return worked_view((worked_at(self.all),), self.facts)

    @property
    def grid(self) -> Grid:
        """Grams of each colour for every cake."""
        needs = self.written.colours
        ready = [need.paste for need in self.ready(self.written) if need.ready_g is not None]
        named = ["paste"] if len(ready) == 1 else ready
        rows = tuple(
            GridRow(
                head=sums.cake.name,
                cells=(
                    _grams(sums.total_g, main=True),
                    *(_grams(ready.ready_g) for ready in self.ready(sums) if ready.ready_g is not None),
                    *(_grams(_need_g(sums, need)) for need in needs),
                ),
                note="as written" if sums.as_written else "",
            )
            for sums in self.all
        )
        return Grid(
            title="Paste for every cake",
            anchor="paste-for-every-cake",
            heads=(
                Head("Cake"),
                Head("All", "g"),
                *(Head(f"{formats.title(name)} to have ready", "g") for name in named),
                *(Head(_need_name(need), "g") for need in needs),
            ),
            rows=rows,
            worked=self.worked,
            lead="The weight of solids grows with the cube of the cake's width, that of sheets with its square. "
            "The paste to have ready includes an allowance for what sticks to your hands and the board.",
        )

    @property
    def warnings(self) -> tuple[str, ...]:
        """What the law requires beside the names of its colours, one for each phrase."""
        return law_lines(self.written.colours)

    @property
    def heavy(self) -> str:
        """What to say about weight on the side; empty for nothing."""
        return heavy_words(self.written)


def _need_name(need: ColourNeed) -> str:
    return formats.title(need.colour.name if need.colour else need.paste.name)


def _grams(mass_g: float, main: bool = False) -> Cell:
    return Cell(weight_g(mass_g), main, grams=exact(mass_g))


def _need_g(sums: Decoration, wanted: ColourNeed) -> float:
    """What another cake takes of the same paste in the same colour."""
    needs = (need for need in sums.colours if (need.paste, need.colour) == (wanted.paste, wanted.colour))
    return sum(need.mass_g for need in needs)


def parts_table(sums: Decoration, every: tuple[Decoration, ...]) -> PartsTable:
    """The parts of a cake, with their grams at smaller and larger cakes, out of `every` one there is."""
    cakes = beside(sums, every)
    lines = (*(part_line(part, sums.tolerance) for part in sums.parts), *(mark_line(each) for each in sums.repeats))
    columns = [[*(part.total_g for part in each.parts), *(each.mass_g for each in each.repeats)] for each in cakes]
    return PartsTable(
        sizes=tuple(SizeHead(each.cake.name, each is sums) for each in cakes),
        rows=tuple(
            PartRow(
                line,
                tuple(_part_grams(column[nth], each, sums) for column, each in zip(columns, cakes, strict=True)),
            )
            for nth, line in enumerate(lines)
        ),
        sums=tuple(_part_grams(each.total_g, each, sums) for each in cakes),
        notes=told_once(lines),
    )


def _part_grams(mass_g: float, of: Decoration, sums: Decoration) -> PartGrams:
    return PartGrams(weight_g(mass_g) if mass_g else NONE, exact(mass_g / of.people) if mass_g else "", of is sums)


def cake_parts(sums: Decoration, every: tuple[Decoration, ...], ready: Iterable[PasteReady]) -> CakeParts:
    """Everything for one cake, spelled, beside other cakes of `every`, with the pastes to have ready."""
    return CakeParts(
        cake=sums.cake.name,
        shown=sums.as_written,
        table=parts_table(sums, every),
        colours=tuple(colour_line(need, sums.people) for need in sums.colours),
        total=weight_g(sums.total_g),
        grams_for_one=exact(sums.total_g / sums.people),
        ready=tuple(
            ReadyPaste(
                paste=need.paste,
                total=weight_g(need.ready_g),
                grams_for_one=exact(need.ready_g / sums.people),
            )
            for need in ready
            if need.ready_g is not None
        ),
        heavy=heavy_words(sums),
        worked=formula_of(sums.worked),
    )


def heavy_words(sums: Decoration) -> str:
    """What to say about weight on the side of a cake; empty for nothing."""
    if not sums.side_g:
        return ""
    words = f"{weight_g(sums.side_g)} g hangs on the side; the heaviest part is {weight_g(sums.heaviest_side_g)} g."
    if not sums.heavy:
        return words
    return (
        f"{words} That is heavy: stand it on the board, hold it until it has set, or hollow out its back. "
        "Tell the person cutting the cake."
    )
