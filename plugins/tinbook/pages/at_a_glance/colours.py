"""The colours of the house: what goes into 100 g of paste, how it looks, how it changes, what the law says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.colour_lines import LABEL, minded
from tinbook.plans.techniques.colours import colouring, technique_colours

ADDRESS, TITLE = "colours", "Colours"


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourCard:
    """One colour, spelled: pots for 100 g of paste and of each other base it is mixed into, a swatch with its label,
    what to watch for, what the law requires, where it is used.

    `contrast` is that of the label on its swatch.
    """

    name: str
    about: str
    pots: tuple[str, ...]
    others: tuple[tuple[str, tuple[str, ...]], ...]
    swatch: str
    label: str
    contrast: str
    mind: str
    holds: str
    law: str
    used: tuple[Linked, ...]


@dataclass(frozen=True)
class ColoursView:
    """All of them."""

    desk: Desk

    @property
    def label(self) -> str:
        """Where the words of the law go."""
        return LABEL

    @property
    def warned(self) -> bool:
        """Whether any carries a warning."""
        return any(card.law for card in self.cards)

    @property
    def cards(self) -> tuple[ColourCard, ...]:
        """Each colour, in the order they are written."""
        return tuple(self._card(name) for name in self.desk.book.colours)

    def _card(self, name: str) -> ColourCard:
        book, facts = self.desk.book, self.desk.facts
        written = book.colours[name]
        colour = colouring(name, written, book, facts)
        used = tuple(
            Linked(f"techniques/{slug}", technique.name)
            for slug, technique in book.techniques.items()
            if name in technique_colours(technique)
        )
        holds = [f"{key} ({facts.colours[key].name})" for key in colour.additives or ()]
        if colour.additives is not None and not holds:
            holds = ["nothing with an E number"]
        return ColourCard(
            name=formats.title(name),
            about=written.about or "",
            pots=tuple(pot.written for pot in colour.pots),
            others=tuple((base, tuple(pot.written for pot in pots)) for base, pots in colour.others.items()),
            swatch=colour.swatch,
            label=colour.label,
            contrast=f"{formats.fixed(colour.contrast, 1)} to 1",
            mind=minded(colour),
            holds=formats.sentence(holds) if holds else "",
            law=spell(colour.law or ""),
            used=used,
        )


def colours_pages(desk: Desk) -> Iterator[Page]:
    """The page, where the house has colours."""
    if desk.book.colours:
        yield Page(address=ADDRESS, title=TITLE, template="colours", view=ColoursView(desk), section=("Colours",))
