"""The page of sources: where every figure comes from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import BalanceRule, Fact, Source
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import plural, source_anchor
from tinbook.pages.spelling import formats

FORMER = {"source-our-own-judgement": "source-house-judgement"}


@dataclass(frozen=True, slots=True)
class SourceView:
    """A source and the figures based on it."""

    anchor: str
    source: Source
    facts: tuple[tuple[str, str], ...]

    @property
    def former(self) -> str:
        """The anchor it had before, for links from elsewhere; empty if that never changed."""
        return FORMER.get(self.anchor, "")

    @property
    def count(self) -> str:
        """How many figures are based on it."""
        return plural(len(self.facts), "figure")


@dataclass(frozen=True)
class SourcesView:
    """Every source of the book."""

    sources: tuple[SourceView, ...]


def _figure(fact: Fact) -> str:
    bounds = ""
    if fact.low is not None and fact.high is not None:
        bounds = f" ({formats.number(fact.low)} to {formats.number(fact.high)})"
    return f"{formats.with_unit(formats.number(fact.value), fact.unit)}{bounds}"


def _rule(rule: BalanceRule) -> str:
    high = f" to {formats.number(rule.high)}" if rule.high is not None else " or more"
    return f"{formats.number(rule.low)}{high}, by weight"


def sources_pages(desk: Desk) -> Iterator[Page]:
    """Where the figures come from."""
    facts = desk.facts
    single = {**facts.numbers, **facts.densities}
    sources = tuple(
        SourceView(
            source_anchor(key),
            source,
            tuple((name, _figure(fact)) for name, fact in single.items() if fact.source == key)
            + tuple((name, _rule(rule)) for name, rule in facts.balance.items() if rule.source == key),
        )
        for key, source in facts.sources.items()
    )
    yield Page(address="sources", title="Sources", template="sources", view=SourcesView(sources), section=("Sources",))
