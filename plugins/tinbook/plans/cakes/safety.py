"""What must be said about a whole cake: allergens with the ingredients they come from, and each caution once."""

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
from tinbook.plans.mixtures.safety import cautions
from tinbook.plans.techniques.colours import Colouring, law_said
from tinbook.plans.techniques.naming import mixture_called
from tinbook.plans.techniques.parts import COLOUR, part_traits
from tinbook.plans.techniques.technique import ITSELF, SUPPORT, technique_cautions, used_words

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
    facts: Facts,
) -> tuple[tuple[str, tuple[str, ...] | None], ...]:
    """Everything eaten, each ingredient once with the allergens its card gives (None: nobody has said)."""
    named = [line.name for tier in tiers if tier.baked for line in tier.baked.batch.ingredients]
    named += [name for tier in tiers for name in _unnamed(tier)]
    named += [name for tier in tiers for colour in colours_of(tier, book, facts) for name in _pots(colour)]
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


def _unnamed(tier: TierWorked) -> Iterator[str]:
    """Anything on a tier that nobody has named, or that the book does not show: it is unknown, never "free from"."""
    if tier.table is None:
        return
    settled = tier.asked.settled
    for role in tier.table.missing:
        if settled.made.cover if role == "cover" else settled[role]:
            yield role.replace("_", " ")


def _pots(colour: Colouring) -> tuple[str, ...]:
    return tuple(pot.name for pots in (colour.pots, *colour.others.values()) for pot in pots)


def colours_of(tier: TierWorked, book: Book, facts: Facts) -> tuple[Colouring, ...]:
    """The colours of a tier: of its batter, and of its paste or its coat."""
    named = dict.fromkeys(word for word in (tier.asked.batter_colour, tier.asked.colour) if word)
    return tuple(found for word in named if (found := Colouring.called(word, book, facts)))


def law_of(tiers: Sequence[TierWorked], pastes: Iterable[PasteTotal], book: Book, facts: Facts) -> Saying | None:
    """What the law requires beside the colours of the whole cake, each additive once; None for nothing."""
    used = [colour for tier in tiers for colour in colours_of(tier, book, facts)]
    used += [paste.colour for paste in pastes if paste.colour]
    return law_said({additive.key: additive for colour in used for additive in colour.warned}.values())


def _eaten(technique: Technique, book: Book) -> Iterator[str]:
    """The ingredients of what a technique uses, except for the cake it is done to: what is in that is known."""
    for word in used_words(technique):
        slug, card = mixture_called(word, book), book.house_word(word)
        if slug is None:
            if card or word.replace("-", " ").rpartition(" ")[2] not in ITSELF:
                yield card or word.replace("-", " ")
        else:
            for line in book.mixtures[slug].mix:
                yield book.house_word(line.take.name) or line.take.name


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
    coloured = tuple(each for each in facts.cautions.values() if COLOUR in each.traits)
    for tier in tiers:
        if tier.asked.colour or tier.asked.batter_colour:
            yield tier_said(tier, count), coloured
        if tier.baked:
            yield tier_said(tier, count), cautions(tier.baked.batch, book, facts)
    batches: dict[str, Batch] = {total.batch.slug: total.batch for total in mixtures}
    batches |= {total.batch.slug: total.batch for total in pastes if total.batch}
    for batch in batches.values():
        yield saying("in_its_mixture", mixture=batch.mixture.name), cautions(batch, book, facts)
    if any(amount.what.key == "on_the_board" for total in pastes if total.colour for amount in total.amounts):
        yield saying("on_the_board"), coloured
    dowelled = any(stacked.dowels)
    traits = ({DOWEL, SUPPORT} if dowelled else set()) | ({TIERED} if count > 1 else set())
    yield saying("in_the_stack"), tuple(each for each in facts.cautions.values() if traits & set(each.traits))
    for technique in techniques:
        told = technique_cautions(technique, book, facts, part_traits(technique, book, facts))
        yield saying("in_a_decoration", technique=technique.name), told
