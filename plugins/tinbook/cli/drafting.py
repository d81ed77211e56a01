"""A pasted note, or a page's data, as drafts of mixtures; and what to say about them on the screen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.cli.importing import Found, minutes_of
from tinbook.facts import Facts
from tinbook.loading.files import slug_of
from tinbook.models import Book
from tinbook.notes import Draft, Drafts, SaidBeside, read_note, read_parts, written


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteWanted:
    """What the baker says about a note: its name, its kind, what it was written for, whose kitchen it comes from."""

    name: str
    kind: str | None = None
    tins: str | None = None
    kitchen: str | None = None
    slug: str = ""


def draft_mixture(asked: NoteWanted, text: str, book: Book, facts: Facts) -> Drafts:
    """The files of a pasted `text`. Nothing is invented: what is missing is asked for in a comment."""
    note = read_note(text, book, facts, asked.kitchen)
    return written(note, _told(asked), book, facts)


def draft_found(asked: NoteWanted, found: Found, book: Book, facts: Facts) -> Drafts:
    """The same from schema.org data; what its words say for certain is not asked again."""
    note = read_parts(found.ingredients, found.steps, found.about, book, facts, asked.kitchen)
    if found.others:
        note.left_out.append(f"{found.others} more on the page; only one was read")
    minutes = minutes_of(found.cook)
    told = SaidBeside(
        name=asked.name,
        slug=asked.slug or slug_of(asked.name),
        kind=asked.kind or _kind_called(found.category, facts),
        tins=asked.tins,
        also=[_printable(word) for word in found.also],
        tags=[_printable(word) for word in found.keywords],
        yields=[_printable(text) for text in found.yields],
        cook=f"{minutes:.0f} min" if minutes and minutes >= 1 else "",
        described=True,
    )
    return written(note, told, book, facts)


def on_screen(drafts: Drafts, done: str = "written") -> Iterator[str]:
    """What was read, what is unsure, what was left out, and the cards that unknown ingredients need, on one screen."""
    for draft in drafts.every:
        yield f"recipes/mixtures/{draft.slug}.yaml {done}: {_counted(draft)}."
        yield from (f"  unsure: {doubt}" for doubt in draft.doubts)
    yield from (f"  left out: {line}" for line in drafts.left_out)
    if drafts.unknown:
        yield "There are no cards for these. Paste any you want into recipes/house/ingredients.yaml, under ingredients:"
        for name in drafts.unknown:
            yield f"  {_as_key(name)}: {{}}   # allergens: unknown, until you write them here"


def _counted(draft: Draft) -> str:
    """`5 ingredients, 1 step`."""
    counts = ((draft.lines, "ingredient"), (draft.steps, "step"))
    return ", ".join(f"{count} {word}{'' if count == 1 else 's'}" for count, word in counts)


def _as_key(name: str) -> str:
    plain = name.replace("-", "").replace(" ", "").replace("'", "")
    return name if plain.isalpha() else '"' + name.replace("\\", "/").replace('"', "'") + '"'


def _told(asked: NoteWanted) -> SaidBeside:
    return SaidBeside(
        name=_printable(asked.name), slug=asked.slug or slug_of(asked.name), kind=asked.kind, tins=asked.tins
    )


def _kind_called(word: str, facts: Facts) -> str | None:
    """The kind with this key or title."""
    low = word.lower()
    return next((key for key, kind in facts.kinds.items() if low in (key.lower(), kind.title.lower())), None)


def _printable(text: str) -> str:
    """A text without the characters a file of the book may not hold."""
    return "".join(sign if sign.isprintable() else " " for sign in text)
