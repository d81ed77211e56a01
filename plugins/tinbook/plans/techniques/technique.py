"""A technique's times, the cautions it calls up, and the allergens of what it works with."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tinbook.facts import Caution, Facts
from tinbook.models import Book, Mixture, Technique
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.mixtures.safety import Contains, strip_of
from tinbook.plans.mixtures.steps import StepTimes, step_times
from tinbook.plans.techniques.kit import kit
from tinbook.plans.techniques.naming import mixture_called

SUPPORT, SMALL_HARD = "support", "small hard sweets"
"""The care words that anything not food inside a cake, and any small hard part, calls up by itself."""


@dataclass(frozen=True, slots=True)
class TechniqueTimes:
    """Hands-on and waiting minutes of all steps, and the hands-on minutes of those that may be done ahead."""

    steps: StepTimes
    ahead_low_min: float
    ahead_high_min: float


@dataclass(frozen=True, slots=True)
class TechniqueAllergens:
    """What a technique works with contains, and what nobody has said anything of: unknown, never free."""

    contains: tuple[Contains, ...]
    unknown: tuple[Saying | str, ...]


def technique_times(technique: Technique) -> TechniqueTimes:
    """The times of a technique, added up."""
    ahead = step_times(step for step in technique.steps if step.ahead)
    return TechniqueTimes(step_times(technique.steps), ahead.hands_on_low_min, ahead.hands_on_high_min)


def technique_cautions(technique: Technique, book: Book, facts: Facts, more: Iterable[str] = ()) -> tuple[Caution, ...]:
    """The usual cautions it calls up: by its care words, its materials' cards, what is not food, small hard parts;
    and by the words that its parts add."""
    traits = {*technique.care, *more}
    for material in technique.materials:
        name = book.house_word(material.take.name)
        if name:
            traits |= set(book.cards[name].care)
        mixture = mixture_called(material.take.name, book)
        if mixture:
            lines = (book.house_word(line.take.name) for line in book.mixtures[mixture].mix)
            traits |= {trait for line in lines if line for trait in book.cards[line].care}
    if any(thing.hidden for thing in kit(technique, book, facts).not_food):
        traits.add(SUPPORT)
    if any(material.small_hard for material in technique.materials):
        traits.add(SMALL_HARD)
    called = [caution for caution in facts.cautions.values() if traits & set(caution.traits)]
    return tuple(caution for caution in called if caution.when in ("always", "uncooked"))


def technique_allergens(technique: Technique, book: Book, facts: Facts) -> TechniqueAllergens | None:
    """What its materials and the mixtures it works with contain; None where it names nothing to eat.

    What the book has no card for is unknown, and so is a mixture with an ingredient nobody has said anything of.
    """
    known: dict[Saying | str, Iterable[str] | None] = {}
    for name in (material.take.name for material in technique.materials if not material.not_food):
        mixture, word = mixture_called(name, book), book.house_word(name)
        if mixture is None:
            known[word or name] = book.cards[word].known_allergens if word else None
        else:
            known |= _known_of(book.mixtures[mixture], book)
    named = (mixture_called(word, book) for word in (*technique.works_with, *technique.mixtures))
    for slug in named:
        if slug is not None:
            known |= _known_of(book.mixtures[slug], book)
    if not known:
        return None
    eaten = ((name, keys) for name, keys in known.items() if isinstance(name, str) and keys is not None)
    unknown = tuple(name for name, keys in known.items() if keys is None)
    return TechniqueAllergens(strip_of(eaten, facts).contains, unknown)


def _known_of(mixture: Mixture, book: Book) -> dict[Saying | str, Iterable[str] | None]:
    """The allergens known of a mixture; beside them None, where an ingredient is unknown."""
    words = [book.house_word(line.take.name) for line in mixture.mix]
    of_lines = [book.cards[word].known_allergens if word else None for word in words]
    keys = dict.fromkeys(key for of_line in of_lines for key in of_line or ())
    known: dict[Saying | str, Iterable[str] | None] = {mixture.name: keys}
    return {**known, saying("some_of", mixture=mixture.name): None} if None in of_lines else known
