"""Rules between the fields of ingredient cards, and between the cards of a larder."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from tinbook.facts import Facts
from tinbook.models import Card, Flaw, Path
from tinbook.models.packs import BY_KIND, NEVER
from tinbook.plans.rules.fields import no_card, unknown_word
from tinbook.plans.rules.made_of import made_of_flaws

NOTHING = ("no", "none", "nothing", "free", "nil")
"""What people write when they mean nothing."""


def used_kinds(facts: Facts) -> dict[str, str]:
    """The kinds a bought card may stand for on a cake, and what each is called."""
    return {key: kind.title for key, kind in facts.kinds.items() if kind.group not in ("cake", "syrup")}


def card_flaws(name: str, card: Card, larder: Collection[str], facts: Facts) -> Iterator[Flaw]:
    """Words on a card that must be among the facts, and two answers to one question."""
    if card.weighs_as and card.weighs:
        hint = 'keep "weighs as" for a published weight, or "weighs" for your own'
        yield Flaw(code="twice", path=("weighs",), message=f'the card for "{name}" gives its weight twice', hint=hint)
    if card.weighs_as and card.weighs_as not in facts.densities:
        message = f'there is no published weight for "{card.weighs_as}"'
        hint = 'give your own, such as "weighs: 125 g per US cup"'
        yield unknown_word(("weighs as",), card.weighs_as, facts.densities, message=message, hint=hint)
    if card.allergens == ():
        hint = 'write "allergens: none" if there are none; leave it out if you do not know'
        yield Flaw(code="empty", path=("allergens",), message="the list of allergens is empty", hint=hint)
    for index, word in enumerate(card.known_allergens or ()):
        if word not in facts.allergens:
            yield _allergen_flaw(("allergens", index), word, facts, alone=card.allergens == (word,))
    if card.counts_as and card.counts_as not in facts.parts:
        message = f'there is no part of a formula called "{card.counts_as}"'
        yield unknown_word(("counts as",), card.counts_as, facts.parts, message=message)
    if card.used_as and not used_kinds(facts).get(card.used_as):
        message = f'there is no ready-made product called "{card.used_as}"'
        yield unknown_word(("used as",), card.used_as, used_kinds(facts), message=message)
    for index, word in enumerate(card.care):
        if word not in facts.traits:
            message = f'there is no caution called "{word}"'
            yield unknown_word(("care", index), word, facts.traits, message=message)
    for index, word in enumerate(card.swaps):
        if word not in facts.swaps:
            yield unknown_word(("swaps", index), word, facts.swaps, message=f'the swap "{word}" is not known')
    yield from _pack_flaws(name, card)
    yield from made_of_flaws(name, card, facts)
    if card.plain and card.plain not in larder:
        yield no_card(("plain",), card.plain, [other for other in larder if other != name])


def _pack_flaws(name: str, card: Card) -> Iterator[Flaw]:
    """Packs of one kind, of which the card says what they weigh."""
    kinds = dict.fromkeys(pack.kind for pack in card.packs)
    if len(kinds) > 1:
        first, at = card.packs[0], next(at for at, pack in enumerate(card.packs) if pack.kind != card.packs[0].kind)
        if NEVER in kinds:
            message, hint = '"none" means that you never buy it', 'write "packs: none", or take "none" out'
        else:
            told = BY_KIND[card.packs[at].kind], BY_KIND[first.kind]
            message = f'"{card.packs[at].written}" is a {told[0]}, "{first.written}" is a {told[1]}'
            hint = "give all its packs in one way, so that they can be compared"
        yield Flaw(code="packs", path=("packs", at), message=message, hint=hint)
        return
    if "volume" in kinds and not (card.weighs_as or (card.weighs and card.weighs.g_per_ml)):
        hint = 'write its packs by weight, or "weighs: ... g/ml" on this card'
        message = f'the book does not know what a millilitre of "{name}" weighs'
        yield Flaw(code="packs", path=("packs", 0), message=message, hint=hint)
    if "count" in kinds and card.each is None:
        message = f'the card for "{name}" does not say what one weighs'
        hint = f'write "{card.packs[0].written} g", or "each: ... g" on this card'
        yield Flaw(code="packs", path=("packs", 0), message=message, hint=hint)


def _allergen_flaw(path: Path, word: str, facts: Facts, alone: bool) -> Flaw:
    """`word` is not an allergen: none at all, or a whole group of them. `alone`: nothing else is in the list."""
    small = word.lower()
    if small in NOTHING:
        hint = 'write "allergens: none"' if alone else 'take it out: "none" goes on its own'
        return Flaw(code="unknown word", path=path, message=f'"{word}" is not an allergen', hint=hint)
    # "nut" and "tree nuts" mean the group too, and are not a slip for walnut
    said = f"{small.removeprefix('tree ').removesuffix('s')}s"
    group = [key for key, row in facts.allergens.items() if {small, said} & set(row.group_name.lower().split())]
    if len(group) > 1:
        hint = f"say which: {', '.join(group)}"
        return Flaw(code="unknown word", path=path, message=f'"{word}" is a group of allergens', hint=hint)
    return unknown_word(path, word, facts.allergens, message=f'the allergen "{word}" is not known')


def alias_flaws(cards: Mapping[str, Card]) -> Iterator[Flaw]:
    """One name may lead to one card only."""
    owners: dict[str, str] = {}
    for name in cards:
        owner = owners.setdefault(name.lower(), name)
        if owner != name:
            message = f'the book treats "{name}" and "{owner}" as the same ingredient'
            yield Flaw(
                code="twice", path=("ingredients", name), message=message, hint="make them one card", on_key=True
            )
    for name, card in cards.items():
        for index, alias in enumerate(card.also):
            owner = owners.setdefault(alias.lower(), name)
            if owner == name:
                continue
            message = f'"{alias}" already leads to the card for "{owner}"'
            hint = "keep it on one card, not on both"
            if owner.lower() == alias.lower():
                message, hint = f'"{alias}" has a card of its own', "keep it on this card or on its own, not on both"
            path = ("ingredients", name, "also", index)
            yield Flaw(code="twice", path=path, message=message, hint=hint)
