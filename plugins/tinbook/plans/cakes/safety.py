"""What is in a whole cake and must be said: allergens with the ingredients they come from, cautions each once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from tinbook.facts import Caution, Facts
from tinbook.models import Book, Technique
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.stacking import StackedUp
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import MixtureTotal, PasteTotal, tier_said
from tinbook.plans.mixtures.safety import AllergenStrip, cautions, strip_of
from tinbook.plans.techniques.naming import mixture_called
from tinbook.plans.techniques.parts import part_traits
from tinbook.plans.techniques.technique import SUPPORT, technique_cautions, used_words

DOWEL, TIERED = "dowel", "tiered cake"
"""Care words that a cake on dowels, or of more than one tier, calls up."""


@dataclass(frozen=True, slots=True)
class CautionAt:
    """A caution, and every place in the cake that calls it up."""

    caution: Caution
    places: tuple[Saying, ...]


def allergens_of(
    tiers: Sequence[TierWorked],
    mixtures: Iterable[MixtureTotal],
    pastes: Iterable[PasteTotal],
    techniques: Iterable[Technique],
    book: Book,
) -> tuple[tuple[str, tuple[str, ...] | None], ...]:
    """Everything eaten, each ingredient once with the allergens its card gives (None: nobody has said)."""
    named = [line.name for tier in tiers if tier.baked for line in tier.baked.batch.ingredients]
    named += [line.name for total in mixtures for line in total.batch.ingredients]
    for paste in pastes:
        named += [line.name for line in paste.batch.ingredients] if paste.batch else [paste.paste]
        named += [name for name, _, _ in paste.pots]
    for technique in techniques:
        named += _eaten(technique, book)
    known = {}
    for name in dict.fromkeys(named):
        card = book.cards.get(book.house_word(name) or "")
        known[name] = None if card is None or card.known_allergens is None else tuple(card.known_allergens)
    return tuple(known.items())


def _eaten(technique: Technique, book: Book) -> Iterator[str]:
    """The ingredients of what a technique uses."""
    for word in used_words(technique):
        slug = mixture_called(word, book)
        if slug is None:
            yield book.house_word(word) or word.replace("-", " ")
        else:
            for line in book.mixtures[slug].mix:
                yield book.house_word(line.take.name) or line.take.name


def strip_for(eaten: Iterable[tuple[str, tuple[str, ...] | None]], facts: Facts) -> AllergenStrip:
    """The allergens of the whole cake, in the order of the law's list."""
    return strip_of(eaten, facts)


def cautions_at(
    tiers: Sequence[TierWorked],
    stacked: StackedUp,
    mixtures: Iterable[MixtureTotal],
    pastes: Iterable[PasteTotal],
    techniques: Iterable[Technique],
    book: Book,
    facts: Facts,
) -> tuple[CautionAt, ...]:
    """Every caution once, with its places, in the order of the facts."""
    found: dict[str, list[Saying]] = {}
    for place, called in _called(tiers, stacked, mixtures, pastes, techniques, book, facts):
        for caution in called:
            found.setdefault(caution.key, []).append(place)
    return tuple(
        CautionAt(caution, tuple(dict.fromkeys(found[key]))) for key, caution in facts.cautions.items() if key in found
    )


def _called(
    tiers: Sequence[TierWorked],
    stacked: StackedUp,
    mixtures: Iterable[MixtureTotal],
    pastes: Iterable[PasteTotal],
    techniques: Iterable[Technique],
    book: Book,
    facts: Facts,
) -> Iterator[tuple[Saying, tuple[Caution, ...]]]:
    count = len(stacked.levels)
    for tier in tiers:
        if tier.baked:
            yield tier_said(tier, count), cautions(tier.baked.batch, book, facts)
    batches: dict[str, Batch] = {total.batch.slug: total.batch for total in mixtures}
    batches |= {total.batch.slug: total.batch for total in pastes if total.batch}
    for batch in batches.values():
        yield saying("in_its_mixture", mixture=batch.mixture.name), cautions(batch, book, facts)
    dowelled = any(stacked.dowels)
    traits = ({DOWEL, SUPPORT} if dowelled else set()) | ({TIERED} if count > 1 else set())
    yield saying("in_the_stack"), tuple(each for each in facts.cautions.values() if traits & set(each.traits))
    for technique in techniques:
        told = technique_cautions(technique, book, facts, part_traits(technique, book, facts))
        yield saying("in_a_decoration", technique=technique.name), told
