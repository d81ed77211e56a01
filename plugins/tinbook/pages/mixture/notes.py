"""The notes of a mixture: its other names, its season, how long it keeps, what its cards say, its tags."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tinbook.models import Mixture
from tinbook.pages.base.dials import dialled
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked, linked_cakes, tag_anchor
from tinbook.pages.spelling import formats
from tinbook.plans.base.weighing import Batch
from tinbook.plans.mixtures.balance import has_balance
from tinbook.plans.mixtures.safety import card_notes


@dataclass(frozen=True, slots=True)
class NoteLine:
    """A note, and the card it comes from."""

    text: str
    ingredient: str
    address: str


@dataclass(frozen=True, slots=True)
class Tag:
    """A tag and its anchor on the page of tags."""

    name: str
    anchor: str


@dataclass(frozen=True)
class NotesView:
    """What the templates can say under "Notes"."""

    batch: Batch
    desk: Desk

    @property
    def mixture(self) -> Mixture:
        """What the baker wrote."""
        return self.batch.mixture

    @property
    def shown(self) -> bool:
        """Whether there is anything to note."""
        mixture = self.mixture
        return bool(
            mixture.about
            or mixture.also
            or mixture.seasons
            or mixture.keeps
            or mixture.keeps_for
            or mixture.notes
            or self.off_balance
            or mixture.tags
            or self.card_notes
            or self.cakes
        )

    @property
    def written(self) -> tuple[str, ...]:
        """The notes, with the house's dial setting beside an oven temperature."""
        return tuple(dialled(note, self.mixture.bake, self.desk) for note in self.mixture.notes)

    @property
    def also(self) -> str:
        """Its other names."""
        return formats.sentence(self.mixture.also)

    @property
    def seasons(self) -> str:
        """When it is in season, as written."""
        return formats.title(formats.sentence(season.written for season in self.mixture.seasons))

    @property
    def keeps_for(self) -> str:
        """How long it keeps, as written."""
        return formats.title(formats.sentence(keep.written for keep in self.mixture.keeps_for))

    @property
    def off_balance(self) -> str:
        """Why it is off the usual balance, if nothing else is said about that; otherwise empty."""
        return "" if has_balance(self.batch, self.desk.facts) else self.mixture.off_balance or ""

    @cached_property
    def card_notes(self) -> tuple[NoteLine, ...]:
        """Notes that follow the ingredients."""
        pages = self.desk.card_pages
        return tuple(
            NoteLine(note.text, note.ingredient, pages[note.ingredient])
            for note in card_notes(self.batch, self.desk.book)
            if note.ingredient in pages
        )

    @property
    def cakes(self) -> tuple[Linked, ...]:
        """The cakes it is in."""
        return linked_cakes(f"mixtures/{self.batch.slug}", self.desk.book)

    @property
    def tags(self) -> tuple[Tag, ...]:
        """Its tags."""
        return tuple(Tag(tag, tag_anchor(tag)) for tag in self.mixture.tags)
