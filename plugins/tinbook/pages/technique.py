"""A technique's page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.models import Technique
from tinbook.pages import formats
from tinbook.pages.page import Desk, Page
from tinbook.pages.shared import Linked, PieceView, StepView, linked_mixtures, linked_techniques, named_times, step_view


@dataclass(frozen=True)
class TechniqueView:
    """A technique, its times, and where it is used."""

    slug: str
    technique: Technique
    desk: Desk

    @property
    def times(self) -> tuple[tuple[str, str], ...]:
        """Hands-on and waiting time, named and spelled."""
        return named_times(self.technique.steps)

    @property
    def steps(self) -> tuple[StepView, ...]:
        """The steps, with their times."""
        return tuple(step_view(step, (PieceView(step.do),)) for step in self.technique.steps)

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
