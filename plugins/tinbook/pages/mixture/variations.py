"""On a mixture's page: what differs from its base, and the variations that start from it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Mixture
from tinbook.pages.base.grids import UNWORKED
from tinbook.pages.base.shared import Linked, plural, tin_count
from tinbook.pages.spelling import formats
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import Measured
from tinbook.plans.mixtures.inline import pieces
from tinbook.plans.variations.differences import Differences, differences

NONE = "none"
LEFT_OUT = "left out"


@dataclass(frozen=True, slots=True)
class DifferenceRow:
    """What the base has, and what this mixture has. `first` opens a group: mix, tins and bake, method."""

    before: str
    here: str
    first: bool = False


@dataclass(frozen=True, slots=True)
class DiffersView:
    """The table of differences, and the page of the base."""

    base: Linked
    rows: tuple[DifferenceRow, ...]

    @property
    def unworked(self) -> str:
        """Why it has no fold."""
        return UNWORKED["differs"]


def differs_view(batch: Batch, book: Book, facts: Facts) -> DiffersView | None:
    """What differs from the base, in words; None for a mixture without one."""
    differing = differences(batch, book, facts)
    if differing is None:
        return None
    groups = (_lines(differing), _keys(differing, batch, facts), _steps(differing, batch, book))
    rows = tuple(
        DifferenceRow(before, here, first=index == 0) for group in groups for index, (before, here) in enumerate(group)
    )
    return DiffersView(Linked(f"mixtures/{differing.base.slug}", differing.base.mixture.name), rows)


@dataclass(frozen=True, slots=True)
class VariationView:
    """A mixture that starts from this one: its page, how many lines of the mix differ, its opening words."""

    address: str
    name: str
    lines: str
    words: str


def variations_of(slug: str, book: Book) -> tuple[VariationView, ...]:
    """The mixtures that start from this one."""
    views = []
    for variation in book.variations.get(slug, ()):
        mixture, changed = book.mixtures[variation], len(book.varies[variation].lines)
        lines = f"{plural(changed, 'ingredient')} changed" if changed else "the same mix"
        views.append(VariationView(f"mixtures/{variation}", mixture.name, lines, _opening(mixture.about or "")))
    return tuple(views)


def from_base(slug: str, book: Book) -> str:
    """`from Creamed butter sponge`, or nothing."""
    varies = book.varies.get(slug)
    return f"from {book.mixtures[varies.base].name}" if varies else ""


def _lines(differing: Differences) -> Iterator[tuple[str, str]]:
    for before, here in differing.lines:
        yield _line(before, NONE), _line(here, LEFT_OUT)


def _line(line: Measured | None, instead: str) -> str:
    if line is None:
        return instead
    wanted = f", {line.line.wanted}" if line.line.wanted else ""
    return f"{formats.written(line)} {line.line.name}{wanted}"


def _keys(differing: Differences, batch: Batch, facts: Facts) -> Iterator[tuple[str, str]]:
    """What it is, what it is baked in or makes, and the bake."""
    if "kind" in differing.keys:
        yield facts.kinds[differing.base.mixture.kind].title, facts.kinds[batch.mixture.kind].title
    if differing.keys & {"tins", "makes"}:
        yield _makes(differing.base), _makes(batch)
    if "bake" in differing.keys:
        yield _bake(differing.base.mixture), _bake(batch.mixture)


def _makes(batch: Batch) -> str:
    if batch.tins:
        return ", ".join(tin_count(count, tin) for count, tin in batch.tins)
    return f"makes {formats.grams(batch.makes_shown_g)}"


def _bake(mixture: Mixture) -> str:
    if mixture.bake is None:
        return "no bake"
    return f"{formats.celsius(mixture.bake.oven.celsius)} for {formats.span(mixture.bake.time)}"


def _steps(differing: Differences, batch: Batch, book: Book) -> Iterator[tuple[str, str]]:
    if differing.anew:
        yield "its method", "its own method"
    for before, here in differing.steps:
        yield _step(before, differing.base.mixture, book, NONE), _step(here, batch.mixture, book, LEFT_OUT)


def _step(number: int | None, mixture: Mixture, book: Book, instead: str) -> str:
    """Its number and its first sentence, without amounts."""
    if number is None:
        return instead
    text = "".join(piece.text for piece in pieces(mixture.method[number].do, mixture, book))
    return f"Step {number + 1}. {_opening(text)}"


def _opening(text: str) -> str:
    """The first sentence."""
    sentence, stop, _ = " ".join(text.split()).partition(". ")
    return f"{sentence}{stop.strip()}"
