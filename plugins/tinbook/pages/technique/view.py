"""A technique's page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from tinbook.facts import Caution
from tinbook.models import Technique
from tinbook.pages.base.code import code
from tinbook.pages.base.dials import dialled_step
from tinbook.pages.base.page import Desk, Page, cross_contact
from tinbook.pages.base.pictures import PictureView, loose_pictures, picture_view
from tinbook.pages.base.shared import (
    Linked,
    PieceView,
    StepView,
    linked_cakes,
    linked_mixtures,
    linked_techniques,
    measures_of,
    minutes,
    step_view,
)
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.pages.technique.lettered import lettered
from tinbook.pages.technique.parts import PartsView
from tinbook.pages.technique.watched import InedibleLine, held, inedible_lines
from tinbook.pages.technique.windows import shared_windows
from tinbook.plans.base.saying import Saying
from tinbook.plans.mixtures.inline import StepPiece, pieces_of
from tinbook.plans.mixtures.safety import AllergenStrip
from tinbook.plans.techniques.kit import Kit, MaterialRow, in_measure, kit
from tinbook.plans.techniques.kit_bench import technique_bench
from tinbook.plans.techniques.naming import mixtures_naming
from tinbook.plans.techniques.parts import every_caution
from tinbook.plans.techniques.technique import cautions_said, technique_allergens, technique_times


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialLine:
    """A material, spelled: figure, unit, name, how it is wanted, and its page if it is a mixture."""

    index: int
    figure: str
    unit: str
    name: str
    wanted: str
    mixture: str
    has_page: bool
    not_food: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolLine:
    """A tool and how many, which `many` says is more than one."""

    index: int
    name: str
    count: int
    many: bool
    not_food: bool


@dataclass(frozen=True, kw_only=True)
class TechniqueView:
    """A technique, its times, its kit for some people, and where it is used."""

    slug: str
    technique: Technique
    desk: Desk
    people: int = 1
    measure: str = "grams"

    @cached_property
    def kit(self) -> Kit:
        """Tools and materials for that many people."""
        return kit(self.technique, self.desk.book, self.desk.facts, self.people)

    @property
    def times(self) -> tuple[tuple[str, str], ...]:
        """Hands-on and waiting time, and how much of it can be done ahead, named and spelled."""
        times = technique_times(self.technique)
        named = (
            ("Hands on", times.steps.hands_on_low_min, times.steps.hands_on_high_min),
            ("Waiting", times.steps.waiting_low_min, times.steps.waiting_high_min),
            ("Can be done ahead", times.ahead_low_min, times.ahead_high_min),
        )
        return tuple((name, minutes(low, high)) for name, low, high in named if high)

    @property
    def leads(self) -> tuple[tuple[str, str], ...]:
        """Level, what it makes and what it works with, where given."""
        technique = self.technique
        leads = (
            ("Level:", technique.level or ""),
            ("Makes", technique.makes or ""),
            ("Works with", formats.sentence(technique.works_with) if technique.works_with else ""),
        )
        return tuple((name, words) for name, words in leads if words)

    @property
    def tools(self) -> tuple[ToolLine, ...]:
        """The tools."""
        return tuple(
            ToolLine(index=index, name=tool.name, count=tool.count, many=tool.count > 1, not_food=tool.not_food)
            for index, tool in enumerate(self.kit.tools)
        )

    @property
    def materials(self) -> tuple[MaterialLine, ...]:
        """The materials."""
        return tuple(
            MaterialLine(
                index=row.index,
                figure=formats.figure(row.amount),
                unit=row.amount.unit,
                name=row.name,
                wanted=self.wanted(row),
                mixture=f"mixtures/{row.mixture}",
                has_page=row.mixture is not None,
                not_food=row.not_food,
            )
            for row in self.kit.materials
        )

    def wanted(self, row: MaterialRow) -> str:
        """How a material is wanted, and for which cake, where it is a paste of the parts."""
        of_parts = self.parts and row.name in {need.paste for need in self.parts.ready(self.parts.written)}
        cake = [f"for {self.parts.written.cake.name}"] if self.parts and of_parts else []
        return "; ".join([*([spell(row.wanted)] if row.wanted else []), *cake])

    @cached_property
    def parts(self) -> PartsView | None:
        """Its parts for every cake, if it is written by parts."""
        written = self.technique.parts or self.technique.repeats
        return (
            PartsView(
                slug=self.slug, technique=self.technique, book=self.desk.book, facts=self.desk.facts, people=self.people
            )
            if written
            else None
        )

    @property
    def bench(self) -> dict[str, Any]:
        """What the browser gets to multiply."""
        return asdict(technique_bench(self.technique, self.desk.book, self.desk.facts))

    @property
    def measures(self) -> tuple[tuple[str, str, bool], ...]:
        """The measures to choose from, what the switch says, and which is the house's own."""
        return measures_of(self.desk.book)

    @property
    def has_kit(self) -> bool:
        """Whether there is anything to have ready."""
        return bool(self.technique.tools or self.technique.materials)

    @property
    def windows(self) -> tuple[str, ...]:
        """How long steps may stand or be done ahead, if several share it."""
        return self._windows_and_steps[0]

    @property
    def steps(self) -> tuple[StepView, ...]:
        """The steps, with amounts, letters of parts, and times but what several share."""
        return self._windows_and_steps[1]

    @cached_property
    def _windows_and_steps(self) -> tuple[tuple[str, ...], tuple[StepView, ...]]:
        return shared_windows(self._steps())

    def _steps(self) -> Iterator[StepView]:
        takes = [material.take for material in self.technique.materials]
        rows = {row.index: row for row in self.kit.materials}
        letters = self.parts.letters if self.parts else {}
        for number, step in enumerate(dialled_step(step, None, self.desk) for step in self.technique.steps):
            pieces = list[PieceView]()
            for piece in pieces_of(step.do, takes, self.desk.book):
                if piece.line is None:
                    done = [each.text for each in pieces if each.letter]
                    words = lettered(piece.text, letters, done)
                    pieces += [PieceView(text=text, letter=is_letter) for text, is_letter in words]
                else:
                    pieces.append(self._amount(piece, piece.line, rows))
            yield step_view(step, tuple(pieces), self._pictures(step.picture, number))

    def _pictures(self, file: str | None, nth: int) -> tuple[PictureView, ...]:
        """The picture of a step, if it has one that may be shown."""
        view = picture_view(self.technique, file, self.desk.book, nth + 1) if file else None
        return (view,) if view else ()

    @property
    def pictures(self) -> tuple[PictureView, ...]:
        """The pictures that no step shows."""
        return tuple(loose_pictures(self.technique, self.desk.book))

    def _amount(self, piece: StepPiece, line: int, rows: dict[int, MaterialRow]) -> PieceView:
        amount = in_measure(rows[line], piece.share, self.measure, self.desk.book)
        return PieceView(text=piece.text, amount=formats.spelled(amount), line=line, share=piece.share)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions that it and what it uses call up."""
        return every_caution(self.technique, self.desk.book, self.desk.facts)

    @cached_property
    def said(self) -> tuple[tuple[str, str], ...]:
        """The cautions in its own words, and in those of what it uses, with the name of that."""
        said = cautions_said(self.technique, self.desk.book)
        return tuple((f"From “{name}”" if name else "", words) for name, words in said)

    @property
    def hidden(self) -> tuple[InedibleLine, ...]:
        """What is not food and may be hidden in the cake, and how many of it."""
        return inedible_lines(self.kit, hidden=True)

    @property
    def open(self) -> tuple[InedibleLine, ...]:
        """What is not food and in plain view, such as a board or a ribbon."""
        return inedible_lines(self.kit, hidden=False)

    @property
    def not_food(self) -> str:
        """What may be hidden, in words; empty for nothing."""
        return "".join(line.said for line in self.hidden)

    @property
    def taken_away(self) -> str:
        """What is in plain view, in words; empty for nothing."""
        return "".join(line.said for line in self.open)

    @cached_property
    def strip(self) -> AllergenStrip | None:
        """Allergens of what it uses, known and unknown, and of what it may be made with; None for nothing to eat."""
        allergens = technique_allergens(self.technique, self.desk.book, self.desk.facts)
        if allergens is None:
            return None
        made_with = tuple((each.mixture, tuple(held(each))) for each in allergens.made_with)
        unknown = spelled_all(sorted(allergens.unknown, key=lambda each: isinstance(each, Saying)))
        return AllergenStrip(allergens.contains, unknown, made_with=made_with, known=allergens.known)

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in the house's words; empty if it says nothing."""
        return cross_contact(self.desk)

    @property
    def has_cautions(self) -> bool:
        """Whether there is anything to watch."""
        return bool(self.said or self.cautions or self.not_food or self.taken_away)

    @property
    def code(self) -> Markup:
        """Its address as a code to scan; nothing where the book has no address."""
        address = self.address
        return code(address) if address else Markup()

    @property
    def address(self) -> str:
        """The address of its page on the web, if the book has one."""
        return f"{self.desk.book.house.address}/techniques/{self.slug}/" if self.desk.book.house.address else ""

    @property
    def also(self) -> str:
        """Its other names."""
        return ", ".join(self.technique.also)

    @property
    def has_links(self) -> bool:
        """Whether it goes with anything."""
        return bool(self.related or self.used_in)

    @property
    def related(self) -> tuple[Linked, ...]:
        """Other techniques."""
        return linked_techniques(self.technique.related, self.desk.book, self.desk.facts)

    @property
    def used_in(self) -> tuple[Linked, ...]:
        """Mixtures it names, and mixtures and cakes that name it."""
        book = self.desk.book
        naming = mixtures_naming(book).get(self.slug, ())
        mixtures = linked_mixtures(dict.fromkeys([*self.technique.mixtures, *naming]), book)
        return mixtures + linked_cakes(f"techniques/{self.slug}", book)


def technique_pages(desk: Desk) -> Iterator[Page]:
    """A page for each technique."""
    for slug, technique in desk.book.techniques.items():
        view = TechniqueView(slug=slug, technique=technique, desk=desk)
        yield Page(
            address=f"techniques/{slug}", title=technique.name, template="technique", view=view, section=("Techniques",)
        )
