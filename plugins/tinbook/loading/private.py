"""What is marked private is taken out here, before anything else sees it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import TypeVar

from tinbook.loading.files import SourceFile
from tinbook.models import Book, Flaw, House, Mixture, Technique, Written
from tinbook.plans.variations.changed_mix import OF_BASE
from tinbook.problems import Problem, nearest

L = TypeVar("L", bound=Written)

# Problems whose hint may name something of another file.
_TELLING = frozenset(("no such file", "unknown ingredient", "circle", OF_BASE))


def private_flaws(model: Written, path: tuple[str | int, ...] = ()) -> Iterator[Flaw]:
    """Names under `private` that are no field, or a field the rest cannot do without."""
    written = type(model).model_fields
    names = getattr(model, "private", False) if "private" in written else False
    if not isinstance(names, tuple):
        return
    fields = {field.alias or name: field for name, field in written.items()}
    for index, name in enumerate(names):
        here = (*path, "private", index)
        if name not in fields or name == "private":
            close = nearest(name, fields)
            hint = f'did you mean "{close}"?' if close not in (None, "private") else "name keys of this file"
            yield Flaw(
                code="private", path=here, message=f'"{name}" is not a key here, so it cannot be private', hint=hint
            )
        elif fields[name].is_required() or name in type(model).needed:
            hint = "take it out of the list" if isinstance(model, House) else 'write "private: yes" to keep it all back'
            yield Flaw(code="private", path=here, message=f'"{name}" cannot be private: the rest needs it', hint=hint)


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
    words = {"about": None, "notes": (), "also": (), "swaps": (), "private": True}
    cards = {name: public(card) or card.model_copy(update=words) for name, card in book.cards.items()}
    techniques = _public_all(book.techniques)
    shown = pictures_named(techniques.values())
    mixtures = {slug: _by_cards(mixture, book) for slug, mixture in _public_all(book.mixtures).items()}
    return replace(
        book,
        house=public(book.house) or book.house,
        cards=cards,
        mixtures=mixtures,
        varies={slug: each for slug, each in book.varies.items() if {slug, each.base} <= set(mixtures)},
        techniques=techniques,
        bakes=tuple(entry for entry in book.bakes if entry.of in mixtures),
        pictures={file: picture for file, picture in book.pictures.items() if file in shown},
    )


def pictures_named(techniques: Iterable[Technique]) -> dict[str, None]:
    """The files of the pictures that techniques list, in order, each once."""
    return dict.fromkeys(picture.file for technique in techniques for picture in technique.pictures)


def _by_cards(mixture: Mixture, book: Book) -> Mixture:
    """The mixture with its ingredients by the names on their cards: other names may be held back."""
    lines = tuple(
        line.model_copy(update={"take": replace(line.take, name=book.house_word(line.take.name) or line.take.name)})
        for line in mixture.mix
    )
    return mixture.model_copy(update={"mix": lines})


def public_broken(
    broken: Mapping[str, tuple[Problem, ...]], sources: Mapping[str, SourceFile], bases: Mapping[str, str]
) -> dict[str, tuple[Problem, ...]]:
    """The pages of problems that a site may show.

    Nobody can tell what is private in a file that cannot be read: a page whose source speaks of it at all, however
    it is spelled or encoded, is left out, and so is what starts from such a one (`bases`, by address). No hint names
    what stands in other files.
    """
    speaks = {address for address, source in sources.items() if b"priv" in source.raw.replace(b"\0", b"").lower()}
    for _ in bases:
        speaks |= {address for address, base in bases.items() if base in speaks}
    return {
        address: tuple(replace(each, hint="") if each.code in _TELLING else each for each in problems)
        for address, problems in broken.items()
        if address not in speaks
    }
