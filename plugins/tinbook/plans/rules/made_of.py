"""Rules for what a card says a bought thing is made of, held against its allergens."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.facts import Facts
from tinbook.models import Card, Flaw
from tinbook.models.made_of import PackPart
from tinbook.plans.labels.naming import hidden_in, named_in
from tinbook.plans.labels.opened import E_NUMBER, class_of
from tinbook.problems import nearest

PATH = ("made of",)


def made_of_flaws(name: str, card: Card, facts: Facts) -> Iterator[Flaw]:
    """An allergen it is made of that is not on the card, or the other way round; additives without their class."""
    if card.made_of is None:
        return
    yield from _class_flaws(card.made_of.parts, False, facts)
    words = [part.name for part in card.made_of.every()]
    named = {each.key: each for word in words for each in named_in(word, facts)}
    hidden = dict.fromkeys(key for word in words for key in hidden_in(word, facts))
    known = card.known_allergens
    for key in named:
        if key not in (known or ()):
            listed = ", ".join((*(known or ()), key))
            message = f'"{name}" is made of {key}, but its allergens do not say so'
            yield Flaw(code="allergens", path=PATH, message=message, hint=f'write "allergens: [{listed}]"')
    if card.made_of.itself or known is None:
        return
    for key in known:
        # one that is no allergen at all is told where allergens are read
        if key in facts.allergens and key not in named and key not in hidden:
            message = f'the allergens of "{name}" say {key}, but nothing it is made of does'
            hint = f'put it after what it is in, such as "... ({facts.allergens[key].label})"'
            yield Flaw(code="allergens", path=PATH, message=message, hint=hint)
    for key in hidden:
        if key not in known and key not in named:
            said = next(word for word in words if key in hidden_in(word, facts))
            message = f'"{said}" is usually made of {key}, which is not among the allergens of "{name}"'
            hint = f'add {key} to "allergens", unless the packet says there is none in it'
            yield Flaw(code="allergens", path=PATH, message=message, hint=hint, note=True)


def _class_flaws(parts: tuple[PackPart, ...], inside: bool, facts: Facts) -> Iterator[Flaw]:
    """`inside`: the parts are those of a class."""
    for part in parts:
        sort = class_of(part.name, facts) is not None
        if part.sort and not sort:
            close = nearest(part.name.lower(), facts.additive_classes)
            hint = f'did you mean "{close}"?' if close else f'write "{part.name} (...)", if it is made of what follows'
            yield Flaw(
                code="unknown word", path=PATH, message=f'there is no class of additives called "{part.name}"',
                hint=hint, start=part.at, end=part.at + len(part.name),
            )  # fmt: skip
        elif sort and not part.parts:
            hint = f'say which, such as "{part.name}: ..." or "{part.name} (..., ...)"'
            yield Flaw(
                code="additive", path=PATH, message=f'"{part.name}" is a class of additives, and names none',
                hint=hint, start=part.at, end=part.at + len(part.name),
            )  # fmt: skip
        elif E_NUMBER.fullmatch(part.name) and not inside:
            hint = f'write what it is for before it, such as "emulsifier: {part.name}"'
            yield Flaw(
                code="additive", path=PATH, message=f"{part.name} stands without its class", hint=hint,
                start=part.at, end=part.at + len(part.name),
            )  # fmt: skip
        yield from _class_flaws(part.parts, sort, facts)
