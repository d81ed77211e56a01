"""A technique's times, the cautions it calls up, and the allergens of what it uses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from tinbook.facts import Caution, Facts
from tinbook.models import Book, Mixture, Technique
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.mixtures.safety import Contains, called, state, strip_of
from tinbook.plans.mixtures.steps import StepTimes, step_times
from tinbook.plans.techniques.colours import technique_colours
from tinbook.plans.techniques.kit import kit
from tinbook.plans.techniques.naming import mixture_called

SUPPORT, SMALL_HARD = "support", "small hard sweets"
"""The care words that anything inedible inside a cake, and any small hard part, calls up by itself."""
BY_NAME = ("wire", "dowel")
"""Care words that something which is not food calls up by its name."""
ITSELF = ("cake", "cakes", "tier", "tiers")
"""What the materials of a technique call the cake it is done to: `1 coated cake`, `1 base tier`."""


@dataclass(frozen=True, slots=True)
class TechniqueTimes:
    """Hands-on and waiting minutes of all steps, and the hands-on minutes of those that can be done ahead."""

    steps: StepTimes
    ahead_low_min: float
    ahead_high_min: float


@dataclass(frozen=True, slots=True)
class MadeWith:
    """A mixture that a technique may be made with, the allergens in it, and whether some of it is unknown."""

    mixture: str
    allergens: tuple[str, ...]
    some_unknown: bool


@dataclass(frozen=True, slots=True)
class TechniqueAllergens:
    """What a technique uses contains, and what nobody has said anything about: unknown, never free.

    `made_with`: what it does not use but may be made with. `known`: whether it says what it uses at all.
    """

    contains: tuple[Contains, ...]
    unknown: tuple[Saying | str, ...]
    made_with: tuple[MadeWith, ...] = ()
    known: bool = True


def with_used(slugs: Iterable[str], book: Book) -> Mapping[str, Technique]:
    """Techniques by their slugs, each once, and all that these use, and those in turn."""
    left, found = list(slugs), dict[str, Technique]()
    while left:
        slug = left.pop(0)
        if slug in book.techniques and slug not in found:
            found[slug] = book.techniques[slug]
            left += found[slug].uses
    return found


def own_and_used(technique: Technique, book: Book) -> tuple[Technique, ...]:
    """A technique, and all that it uses."""
    return (technique, *(each for each in with_used(technique.uses, book).values() if each is not technique))


def cautions_said(technique: Technique, book: Book) -> tuple[tuple[str, str], ...]:
    """The cautions in its own words, one by one, and those of what it uses together under the name of that; each
    once."""
    seen, said = set[str](), list[tuple[str, str]]()
    for each in own_and_used(technique, book):
        new = [words for words in each.cautions if words.casefold() not in seen]
        seen.update(words.casefold() for words in new)
        if each is technique:
            said += [("", words) for words in new]
        elif new:
            said.append((each.name, " ".join(new)))
    return tuple(said)


def technique_times(technique: Technique) -> TechniqueTimes:
    """The times of a technique, added up."""
    ahead = step_times(step for step in technique.steps if step.ahead)
    return TechniqueTimes(step_times(technique.steps), ahead.hands_on_low_min, ahead.hands_on_high_min)


def technique_cautions(technique: Technique, book: Book, facts: Facts, more: Iterable[str] = ()) -> tuple[Caution, ...]:
    """The usual cautions it calls up: by its care words, its materials' cards, what is not food, small hard parts; and
    by the words its parts add. For a mixture it uses, those that cooking has not dealt with."""
    traits = {*technique.care, *more}
    keys = set[str]()
    for word in used_words(technique):
        name, slug = book.house_word(word), mixture_called(word, book)
        if slug:
            mixture = book.mixtures[slug]
            names = (known for line in mixture.mix if (known := book.house_word(line.take.name)))
            states = ("always", "uncooked") if state(mixture) == "uncooked" else ("always",)
            keys |= {caution.key for caution in called(names, mixture, states, book, facts)}
        elif name:
            traits |= set(book.cards[name].care)
    hidden = [thing.name.lower() for thing in kit(technique, book, facts).not_food if thing.hidden]
    if hidden:
        traits |= {SUPPORT, *(trait for trait in BY_NAME if any(trait in name for name in hidden))}
    if any(material.small_hard for material in technique.materials):
        traits.add(SMALL_HARD)
    return tuple(
        caution
        for caution in facts.cautions.values()
        if caution.key in keys or (traits & set(caution.traits) and caution.when in ("always", "uncooked"))
    )


def used_words(technique: Technique) -> tuple[str, ...]:
    """What it uses that is eaten, as written, each once: its materials, the pastes of its parts and marks."""
    words = [material.take.name for material in technique.materials if not material.not_food]
    words += [part.paste for part in technique.parts]
    words += [repeat.paste for repeat in technique.repeats if repeat.paste]
    return tuple(dict.fromkeys(words))


def technique_allergens(technique: Technique, book: Book, facts: Facts) -> TechniqueAllergens | None:
    """What everything it uses contains, other techniques it uses too, and, separately, what it may be made with: the
    mixtures it works with or goes with. None if it names nothing to eat.

    What the book has no card for is unknown, and so is a mixture with an ingredient nobody has said anything about.
    """
    known: dict[Saying | str, Iterable[str] | None] = {}
    used = set[str]()
    for name in _names(technique, book):
        slug, word = mixture_called(name, book), book.house_word(name)
        if slug is None:
            known[word or name.replace("-", " ")] = book.cards[word].known_allergens if word else None
        else:
            used.add(slug)
            known |= _known_of(book.mixtures[slug], book)
    named = (mixture_called(word, book) for word in (*technique.works_with, *technique.mixtures))
    others = [slug for slug in dict.fromkeys(named) if slug is not None and slug not in used]
    if not known and not others:
        return None
    eaten = ((name, keys) for name, keys in known.items() if isinstance(name, str) and keys is not None)
    unknown = tuple(name for name, keys in known.items() if keys is None)
    made_with = tuple(_made_with(book.mixtures[slug], book, facts) for slug in others)
    return TechniqueAllergens(
        contains=strip_of(eaten, facts).contains, unknown=unknown, made_with=made_with, known=bool(known)
    )


def _names(technique: Technique, book: Book) -> Iterator[str]:
    """What it uses that is eaten, colours too, and what the techniques that it uses do, but for the cake these are done
    to."""
    for each in own_and_used(technique, book):
        for word in used_words(each):
            if each is technique or word.replace("-", " ").rpartition(" ")[2] not in ITSELF:
                yield word
        for name in technique_colours(each):
            if name in book.colours:
                yield from (take.name for take in book.colours[name].per_100_g)


def _made_with(mixture: Mixture, book: Book, facts: Facts) -> MadeWith:
    known = _known_of(mixture, book)
    strip = strip_of([(mixture.name, known[mixture.name])], facts)
    return MadeWith(mixture.name, tuple(each.allergen for each in strip.contains), len(known) > 1)


def _known_of(mixture: Mixture, book: Book) -> dict[Saying | str, Iterable[str] | None]:
    """The known allergens of a mixture; beside them None, if an ingredient is unknown."""
    words = [book.house_word(line.take.name) for line in mixture.mix]
    of_lines = [book.cards[word].known_allergens if word else None for word in words]
    keys = dict.fromkeys(key for of_line in of_lines for key in of_line or ())
    known: dict[Saying | str, Iterable[str] | None] = {mixture.name: keys}
    return {**known, saying("some_of", mixture=mixture.name): None} if None in of_lines else known
