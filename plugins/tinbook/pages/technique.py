"""A technique's page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from functools import cached_property
from typing import Any

from tinbook.facts import Caution
from tinbook.models import Technique
from tinbook.pages import formats
from tinbook.pages.page import Desk, Page
from tinbook.pages.pictures import PictureView, loose_pictures, picture_view
from tinbook.pages.shared import (
    Linked,
    PieceView,
    StepView,
    linked_mixtures,
    linked_techniques,
    minutes,
    step_view,
)
from tinbook.plans.inline import Piece, pieces_of
from tinbook.plans.technique import (
    Kit,
    MaterialRow,
    kit,
    material_share,
    technique_bench,
    technique_cautions,
    technique_times,
)


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """A material, spelled: figure, unit, name, how it is wanted, and the page of the mixture it is, if it is one."""

    index: int
    figure: str
    unit: str
    name: str
    wanted: str
    mixture: str
    has_page: bool
    not_food: bool


@dataclass(frozen=True, slots=True)
class ToolLine:
    """A tool and how many, which `many` says is more than one."""

    index: int
    name: str
    count: int
    many: bool
    not_food: bool


@dataclass(frozen=True)
class TechniqueView:
    """A technique, its times, its kit for some people, and where it is used."""

    slug: str
    technique: Technique
    desk: Desk
    people: int = 1

    @cached_property
    def kit(self) -> Kit:
        """Tools and materials for that many people."""
        return kit(self.technique, self.desk.book, self.desk.facts, self.people)

    @property
    def times(self) -> tuple[tuple[str, str], ...]:
        """Hands-on and waiting time, and what of it may be done ahead, named and spelled."""
        times = technique_times(self.technique)
        named = (
            ("Hands on", times.steps.hands_on_low_min, times.steps.hands_on_high_min),
            ("Waiting", times.steps.waiting_low_min, times.steps.waiting_high_min),
            ("Of it ahead", times.ahead_low_min, times.ahead_high_min),
        )
        return tuple((name, minutes(low, high)) for name, low, high in named if high)

    @property
    def leads(self) -> tuple[tuple[str, str], ...]:
        """Level, what it makes and what it works with, as far as they are said."""
        technique = self.technique
        said = (
            ("For", technique.level or ""),
            ("Makes", technique.makes or ""),
            ("Works with", formats.sentence(technique.works_with) if technique.works_with else ""),
        )
        return tuple((name, words) for name, words in said if words)

    @property
    def tools(self) -> tuple[ToolLine, ...]:
        """The tools."""
        return tuple(
            ToolLine(index, tool.name, tool.count, tool.count > 1, tool.not_food)
            for index, tool in enumerate(self.kit.tools)
        )

    @property
    def materials(self) -> tuple[MaterialLine, ...]:
        """The materials."""
        return tuple(
            MaterialLine(
                row.index,
                formats.figure(row.amount),
                row.amount.unit,
                row.name,
                row.wanted,
                f"mixtures/{row.mixture}",
                row.mixture is not None,
                row.not_food,
            )
            for row in self.kit.materials
        )

    @property
    def bench(self) -> dict[str, Any]:
        """What the browser is handed to multiply."""
        return asdict(technique_bench(self.technique, self.desk.book, self.desk.facts))

    @property
    def has_kit(self) -> bool:
        """Whether anything must be ready."""
        return bool(self.technique.tools or self.technique.materials)

    @property
    def steps(self) -> tuple[StepView, ...]:
        """The steps, with amounts and times."""
        takes = [material.take for material in self.technique.materials]
        rows = {row.index: row for row in self.kit.materials}
        return tuple(
            step_view(
                step,
                tuple(self._piece(piece, rows) for piece in pieces_of(step.do, takes, self.desk.book)),
                self._pictures(step.picture, number),
            )
            for number, step in enumerate(self.technique.steps)
        )

    def _pictures(self, file: str | None, nth: int) -> tuple[PictureView, ...]:
        """The picture of a step, if it has one that may be shown."""
        view = picture_view(self.technique, file, self.desk.book, nth + 1) if file else None
        return (view,) if view else ()

    @property
    def pictures(self) -> tuple[PictureView, ...]:
        """The pictures that no step shows."""
        return tuple(loose_pictures(self.technique, self.desk.book))

    def _piece(self, piece: Piece, rows: dict[int, MaterialRow]) -> PieceView:
        if piece.line is None:
            return PieceView(piece.text)
        amount = material_share(rows[piece.line], piece.share, self.desk.book)
        return PieceView(piece.text, formats.spelled(amount), piece.line, piece.share)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions it calls up."""
        return technique_cautions(self.technique, self.desk.book, self.desk.facts)

    @property
    def not_food(self) -> str:
        """What is not food and how many of it, in words; empty for nothing."""
        told = [f"{formats.mixed(count)} {name}" for name, count in self.kit.not_food]
        return formats.sentence(told) if told else ""

    @property
    def has_cautions(self) -> bool:
        """Whether anything must be watched."""
        return bool(self.technique.cautions or self.cautions or self.not_food)

    @property
    def also(self) -> str:
        """Its other names."""
        return formats.sentence(self.technique.also)

    @property
    def has_links(self) -> bool:
        """Whether it goes with anything."""
        return bool(self.related or self.used_in)

    @property
    def related(self) -> tuple[Linked, ...]:
        """Other techniques."""
        return linked_techniques(self.technique.related, self.desk.book)

    @property
    def used_in(self) -> tuple[Linked, ...]:
        """Mixtures it names, and mixtures that name it."""
        book = self.desk.book
        naming = [slug for slug, mixture in book.mixtures.items() if self.slug in mixture.techniques]
        return linked_mixtures(dict.fromkeys([*self.technique.mixtures, *naming]), book)


def technique_pages(desk: Desk) -> Iterator[Page]:
    """A page for each technique."""
    for slug, technique in desk.book.techniques.items():
        view = TechniqueView(slug, technique, desk)
        yield Page(f"techniques/{slug}", technique.name, "technique", view, ("Techniques",))
