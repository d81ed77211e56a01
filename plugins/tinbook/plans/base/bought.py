"""What is bought ready-made and used like one of the house's mixtures: sugarpaste, marzipan, chocolate paste, a jar of
curd."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.facts import Facts, Kind, Range
from tinbook.models import Book, Card, Mixture
from tinbook.plans.base.rising import LearnedFrom
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import Batch, Ingredient, each_g, g_per_ml, steps_of, weigh
from tinbook.plans.base.worked import Worked

NO_PACK_G = 1000.0
"""The size of a pack when the card does not give one."""


def stands_for(name: str, card: Card, facts: Facts) -> str | None:
    """The kind of mixture a card stands for on a cake, as it says or by its name; None if it does not."""
    key = card.used_as or name
    return key if key in facts.kinds and facts.kinds[key].group not in ("cake", "syrup") else None


def bought(name: str, book: Book, facts: Facts) -> Batch | None:
    """A card as a batch: its smallest pack. None if it is only an ingredient."""
    card = book.cards[name]
    key = stands_for(name, card, facts)
    if key is None:
        return None
    kind = _weighing(facts.kinds[key], g_per_ml(card, facts))
    packs_g = tuple(card_packs_g(card, book, facts))
    pack_g = min(packs_g, default=NO_PACK_G)
    line = Ingredient(
        name=name,
        wanted="",
        part="",
        unit="g",
        amount=pack_g,
        mass_g=pack_g,
        volume_ml=None,
        whole_egg=False,
        raises=False,
    )
    return Batch(
        slug=name,
        mixture=Mixture.model_construct(name=name, kind=key, makes=pack_g, mix=()),
        kind=kind,
        ingredients=(line,),
        tins=(),
        batter_ml=0.0,
        depth_mm=0.0,
        rise=1.0,
        loss=0.0,
        learned=LearnedFrom(),
        steps=steps_of(book),
        worked=Worked(saying("as_bought"), (), (kind.source,)),
        bought=True,
        packs_g=packs_g,
    )


def card_packs_g(card: Card, book: Book, facts: Facts) -> Iterator[float]:
    """What each pack of an ingredient weighs, g; those of which a card with a slip does not say it are left out."""
    for pack in card.packs:
        one_g = per_unit_g(pack.kind, card, book, facts)
        if one_g:
            yield pack.amount * one_g


def per_unit_g(kind: str, card: Card, book: Book, facts: Facts) -> float | None:
    """What a gram, a millilitre or one piece of an ingredient weighs, g; None if its card does not say."""
    if kind == "mass":
        return 1.0
    if kind == "volume":
        return g_per_ml(card, facts)
    return each_g(card, book, facts) if kind == "count" else None


def _weighing(kind: Kind, own_g_per_ml: float | None) -> Kind:
    """The kind, with this card's own weight per ml if it gives one."""
    if own_g_per_ml is None:
        return kind
    same = dict.fromkeys(("low", "typical", "high"), own_g_per_ml)
    own = Range(**same, source="our own judgement", kind="our own judgement")
    return kind.model_copy(update={"gravity": own})


def made_or_bought(word: str, book: Book, facts: Facts) -> Batch | None:
    """What `word` means: a mixture by its file name, or a card that can replace one by its own name, written with
    spaces or hyphens. None if the book has neither."""
    if word in book.mixtures:
        return weigh(word, book.mixtures[word], book, facts)
    name = book.house_word(word) or book.house_word(word.replace("-", " "))
    return None if name is None else bought(name, book, facts)
