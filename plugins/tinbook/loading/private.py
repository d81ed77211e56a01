"""What is marked private is taken out here, before anything else sees it."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any, TypeVar

from tinbook.loading.files import SourceFile
from tinbook.loading.nameless import by_cards, nameless_cards, nameless_colours, shown_cakes
from tinbook.models import Book, Flaw, House, Technique, Written
from tinbook.models.register import Merged, SeenBy, SourceKind, kinds
from tinbook.plans.variations.changed_mix import OF_BASE
from tinbook.problems import Problem, nearest

L = TypeVar("L", bound=Written)

# Problems whose hint may quote another file.
_TELLING = frozenset((
    "no such file", "unknown ingredient", "unknown colour", "unknown paste", "made with", "step", "no weight", "circle",
    OF_BASE,
))  # fmt: skip


def private_flaws(model: Written, path: tuple[str | int, ...] = ()) -> Iterator[Flaw]:
    """Names under `private` that are not fields, or are fields the rest of the book needs."""
    written = type(model).model_fields
    names = getattr(model, "private", False) if "private" in written else False
    if not isinstance(names, tuple):
        return
    fields = {field.alias or name: field for name, field in written.items()}
    for index, name in enumerate(names):
        here = (*path, "private", index)
        if name not in fields or name == "private":
            close = nearest(name, fields)
            hint = f'did you mean "{close}"?' if close not in (None, "private") else "name keys in this file"
            yield Flaw(
                code="private", path=here, message=f'"{name}" is not a key here, so it cannot be private', hint=hint
            )
        elif fields[name].is_required() or name in type(model).needed:
            whole = 'write "private: yes" to keep the whole file private'
            hint = "take it out of the list" if isinstance(model, House) else whole
            yield Flaw(
                code="private",
                path=here,
                message=f'"{name}" cannot be private: the rest of the book needs it',
                hint=hint,
            )


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


def kitchen_book(book: Book) -> Book:
    """The book as the kitchen sees it: all of it, except the words in files read only for the sums."""
    # the views withhold a private card; here none is private
    cards = {name: card.model_copy(update={"private": False}) for name, card in book.cards.items()}
    dropped = {kind.field: _merged(kind, getattr(book, kind.field), True) for kind in _of_nobody() if kind.field}
    others = {kind.name: _merged(kind, book.others[kind.name], True) for kind in _of_nobody() if not kind.field}
    return replace(book, **{**dropped, "cards": cards, "others": {**book.others, **others}})


def _of_nobody() -> tuple[SourceKind, ...]:
    return tuple(kind for kind in kinds().values() if kind.seen_by is SeenBy.NOBODY)


def public_book(book: Book, sealed: Container[str]) -> Book:
    """The book as a site may show it, rebuilt from what the register allows: anything it does not name is left out.

    `sealed` are the addresses of files that are private as a whole. An entry that may not be shown keeps what sums and
    safety need, if its kind has such keys (a card: weight, allergens and care); otherwise it is left out.
    """
    shown: dict[str, Any] = {}
    others: dict[str, Any] = {}
    for kind in kinds().values():
        written = getattr(book, kind.field) if kind.field else book.others.get(kind.name, kind.nothing)
        # what is one thing, or one file each, says itself which parts are private
        in_entries = kind.merged in (Merged.LIST, Merged.CARDS)
        seen = _seen(kind, written, in_entries and kind.address in sealed)
        (shown if kind.field else others)[kind.field or kind.name] = seen
    named = pictures_named(shown["techniques"].values())
    mixtures = shown["mixtures"]
    shown["cakes"] = shown_cakes(shown, book)
    shown["cards"] = cards = nameless_cards(shown, book)
    shown["colours"], shown["techniques"], shown["cakes"] = nameless_colours(
        shown["colours"], shown["techniques"], shown["cakes"]
    )
    shown["mixtures"] = {slug: by_cards(mixture, book, cards) for slug, mixture in mixtures.items()}
    return Book(
        **{name: _of_shown(value, mixtures) for name, value in shown.items()},
        others={name: _of_shown(value, mixtures) for name, value in others.items()},
        varies={slug: varies for slug, varies in book.varies.items() if {slug, varies.base} <= set(mixtures)},
        cake_bases={slug: base for slug, base in book.cake_bases.items() if {slug, base} <= set(shown["cakes"])},
        pictures={file: picture for file, picture in book.pictures.items() if file in named},
        unsure={address: lines for address, lines in book.unsure.items() if _is_shown(address, shown)},
    )


def _is_shown(address: str, shown: Mapping[str, Any]) -> bool:
    """Whether the page at an address is among what is shown."""
    room, _, slug = address.partition("/")
    return room in ("mixtures", "techniques", "cakes") and slug in shown[room]


def _seen(kind: SourceKind, written: Any, sealed: bool) -> Any:
    """What everyone may see of a file; for one read only for the sums, the sums."""
    if kind.seen_by is SeenBy.KITCHEN:
        return kind.nothing
    if kind.seen_by is SeenBy.NOBODY:
        return kind.nothing if sealed else _merged(kind, written, True)
    return _merged(kind, written, sealed)


def _merged(kind: SourceKind, written: Any, sealed: bool) -> Any:
    """A whole file, each entry as it may be seen; `sealed`: none may be."""
    if isinstance(written, Mapping):
        seen = {name: _entry(kind, entry, sealed) for name, entry in written.items()}
        return {name: entry for name, entry in seen.items() if entry is not None}
    if isinstance(written, tuple):
        return tuple(shown for entry in written if (shown := _entry(kind, entry, sealed)) is not None)
    return kind.nothing if written is None else _entry(kind, written, sealed) or kind.nothing


def _entry(kind: SourceKind, entry: L, sealed: bool) -> L | None:
    """An entry as it may be seen: whole if not private, otherwise what its kind keeps, or None."""
    shown = None if sealed else public(entry)
    if shown is not None or not kind.kept:
        return shown
    return entry.model_copy(update=_blanks(entry, kind.kept))


def _blanks(entry: Written, kept: Container[str]) -> dict[str, Any]:
    """For every field but those kept, what it holds when nothing is written; a private entry is marked as one."""
    blanks: dict[str, Any] = {
        name: () if field.is_required() else field.get_default()
        for name, field in type(entry).model_fields.items()
        if (field.alias or name) not in kept
    }
    return {**blanks, "private": True} if "private" in blanks else blanks


def _of_shown(written: Any, mixtures: Container[str]) -> Any:
    """Entries of a list, without those for a mixture that is not shown."""
    if not isinstance(written, tuple):
        return written
    return tuple(entry for entry in written if not hasattr(entry, "of") or entry.of in mixtures)


def pictures_named(techniques: Iterable[Technique]) -> dict[str, None]:
    """The files of the pictures that techniques list, in order, each once."""
    return dict.fromkeys(picture.file for technique in techniques for picture in technique.pictures)


def public_broken(
    broken: Mapping[str, tuple[Problem, ...]], sources: Mapping[str, SourceFile], bases: Mapping[str, str]
) -> dict[str, tuple[Problem, ...]]:
    """The pages of problems that a site may show.

    Nobody can tell what is private in a file that cannot be read: a page whose source mentions privacy at all, however
    spelled or encoded, is left out, and so is anything that starts from it (`bases`, by address). No hint quotes other
    files.
    """
    speaks = {address for address, source in sources.items() if b"priv" in source.raw.replace(b"\0", b"").lower()}
    for _ in bases:
        speaks |= {address for address, base in bases.items() if base in speaks}
    return {
        address: tuple(replace(each, hint="") if each.code in _TELLING else each for each in problems)
        for address, problems in broken.items()
        if address not in speaks
    }
