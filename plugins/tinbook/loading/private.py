"""What is marked private is taken out here, before anything else sees it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TypeVar

from tinbook.models import Book, Flaw, Leaf
from tinbook.problems import nearest

L = TypeVar("L", bound=Leaf)


def private_flaws(model: Leaf, path: tuple[str | int, ...] = ()) -> Iterator[Flaw]:
    """Names under `private` that are no field, or a field the rest cannot do without."""
    names = getattr(model, "private", False)
    fields = {field.alias or name: field for name, field in type(model).model_fields.items()}
    for name in names if isinstance(names, tuple) else ():
        if name not in fields:
            close = nearest(name, fields)
            hint = f'did you mean "{close}"?' if close else "name keys of this file"
            yield Flaw("private", (*path, "private"), f'"{name}" is not a key here, so it cannot be private', hint)
        elif fields[name].is_required():
            hint = 'write "private: yes" to keep all of it back'
            yield Flaw("private", (*path, "private"), f'the page cannot stand without "{name}"', hint)


def public(model: L) -> L | None:
    """The model without its private fields; None if it is private as a whole."""
    names = getattr(model, "private", False)
    if names is True:
        return None
    if not names:
        return model
    fields = type(model).model_fields
    held = {name: field.get_default() for name, field in fields.items() if (field.alias or name) in names}
    return model.model_copy(update={**held, "private": False})


def _public_all(models: Mapping[str, L]) -> dict[str, L]:
    return {key: shown for key, model in models.items() if (shown := public(model)) is not None}


def public_book(book: Book) -> Book:
    """The book as a site may show it.

    A card that is private as a whole loses its words but keeps what safety needs: weight, allergens and care.
    """
    cards = {
        name: public(card) or card.model_copy(update={"notes": (), "also": (), "private": True})
        for name, card in book.cards.items()
    }
    return replace(
        book,
        house=public(book.house) or book.house,
        cards=cards,
        mixtures=_public_all(book.mixtures),
        techniques=_public_all(book.techniques),
    )
