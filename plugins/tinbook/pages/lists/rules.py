"""The page of cautions and rules: what to watch for, and what the law requires of people who sell cakes, nation by
nation."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Caution, NationLaw, SaleRule
from tinbook.pages.base.page import Desk, Page, cross_contact
from tinbook.pages.base.shared import SourceLine, source_anchor

MEMORY = "from memory"
"""The source of a law whose text was not looked up."""


@dataclass(frozen=True, slots=True)
class CautionLine:
    """A caution and where it comes from."""

    caution: Caution
    sources: tuple[SourceLine, ...]


@dataclass(frozen=True, slots=True)
class LawsView:
    """What each nation's law requires under a rule, and where it was read."""

    laws: tuple[NationLaw, ...]
    sources: tuple[SourceLine, ...]


@dataclass(frozen=True)
class RulesView:
    """Everything the page says."""

    desk: Desk

    @property
    def rules(self) -> tuple[SaleRule, ...]:
        """The rules, in the order of their file."""
        return tuple(self.desk.facts.rules.values())

    @property
    def items(self) -> tuple[LawsView, ...]:
        """The laws of each rule."""
        return tuple(self._laws(rule) for rule in self.rules)

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in the house's words; empty if it says nothing."""
        return cross_contact(self.desk)

    @property
    def cautions(self) -> tuple[CautionLine, ...]:
        """Every caution of the book."""
        return tuple(
            CautionLine(caution, self._sources((caution.source, *caution.also)))
            for caution in self.desk.facts.cautions.values()
        )

    def _laws(self, rule: SaleRule) -> LawsView:
        keys = dict.fromkeys(key for law in rule.laws for key in (law.source, *law.also) if key != MEMORY)
        recalled = (f"{law.law}, its text given from memory" for law in rule.laws if law.source == MEMORY)
        from_memory = tuple(SourceLine(source_anchor(MEMORY), title) for title in dict.fromkeys(recalled))
        return LawsView(rule.laws, self._sources(tuple(keys)) + from_memory)

    def _sources(self, keys: tuple[str, ...]) -> tuple[SourceLine, ...]:
        return tuple(SourceLine(source_anchor(key), self.desk.facts.sources[key].title) for key in keys)


def rules_pages(desk: Desk) -> Iterator[Page]:
    """Cautions and rules."""
    yield Page(
        address="cautions",
        title="Cautions and rules",
        template="rules",
        view=RulesView(desk),
        section=("Cautions and rules",),
    )
