"""What the facts add about a key: the words it may be, and the trade's figure if it is left out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tinbook.facts import Fact, Facts
from tinbook.models.keys import KeyWords
from tinbook.pages.spelling import formats
from tinbook.plans.base.finishing import FIGURES
from tinbook.plans.rules.cards import used_kinds

WORDS: Mapping[tuple[str, str], Callable[[Facts], Iterable[str]]] = {
    ("Mixture", "kind"): lambda facts: facts.kinds,
    ("Card", "allergens"): lambda facts: (*facts.allergens, "none"),
    ("Card", "care"): lambda facts: sorted(facts.traits),
    ("Card", "counts as"): lambda facts: facts.parts,
    ("Card", "used as"): used_kinds,
    ("Card", "swaps"): lambda facts: facts.swaps,
    ("Technique", "care"): lambda facts: sorted(facts.traits),
    ("House", "eggs"): lambda facts: facts.eggs,
}
"""The keys whose words the facts know, by model and key, and which these are."""
FIGURE_OF: Mapping[tuple[str, str], str] = {
    ("Finish", "heights"): "tier height",
    **{("Finish", key.replace("_", " ")): fact for key, fact in FIGURES.items()},
}
"""The keys for which the trade has a usual figure, and which fact that is."""


def known_words(model: type[object], key: KeyWords, facts: Facts) -> tuple[str, ...]:
    """What may be written at a key, if the book knows every choice."""
    words = WORDS.get((model.__name__, key.name))
    return tuple(words(facts)) if words else key.choices


def usual_figure(model: type[object], key: KeyWords, facts: Facts) -> str:
    """The figure that stands in for a key that is left out; empty if the trade has none."""
    name = FIGURE_OF.get((model.__name__, key.name))
    return _figure(facts.numbers[name]) if name else ""


def _figure(fact: Fact) -> str:
    if fact.unit.startswith("share"):
        return formats.percent(fact.value * 100)
    return formats.with_unit(formats.number(fact.value), fact.unit)
