"""The lines of a note sorted into its mixtures: what goes in, what to do, and whatever else is said.

Until a method begins, a line without an amount is unsure: never a step, never prose. Nothing is lost: what belongs to
no recipe is listed as left out.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.notes import heads
from tinbook.notes.cleaning import bare, begins_junk, is_farewell, is_junk, is_rule, lines_of, printable
from tinbook.notes.heads import NoteHead, head_of
from tinbook.notes.kitchens import KITCHENS, Kitchen, kitchen_of
from tinbook.notes.lines import Lines, Read, is_order

LONGEST = 2000
"""Characters in a line: a longer one is not read, and goes into the file as it is, marked."""
_TITLE_WORDS, _TITLE_SIGNS = 9, 60
_TIN = re.compile(r"(?:\w+\s+)?(?:tin|pan)s?\b", re.IGNORECASE)
_FACT = re.compile(r"\b(?:tins?|pans?)\b|\b[0-9]+ ?(?:min|m\b|°)|\bgas\b|[0-9] ?(?:in|cm) ", re.IGNORECASE)


@dataclass(slots=True, kw_only=True)
class NotePart:
    """One mixture of a note: its ingredients, its steps (with a doubt, or "")."""

    name: str
    mix: list[Read] = field(default_factory=list)
    method: list[tuple[str, str]] = field(default_factory=list)


@dataclass(slots=True, kw_only=True)
class Note:
    """A note, sorted. The first of the `parts` is the main mixture; `said` are lines for tins and bake only."""

    kitchen: Kitchen
    parts: list[NotePart]
    title: str = ""
    about: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    keeps: list[str] = field(default_factory=list)
    said: list[str] = field(default_factory=list)
    unsure: list[str] = field(default_factory=list)
    left_out: list[str] = field(default_factory=list)

    @property
    def main(self) -> NotePart:
        return self.parts[0]

    def part(self, name: str) -> NotePart | None:
        """The part whose name a step gives: "icing" finds "chocolate icing"."""
        if heads.is_main(name):
            return self.main
        return next((part for part in self.parts[1:] if part.name == name or part.name.endswith(name)), None)


def read_note(text: str, book: Book, facts: Facts, kitchen: str | None = None) -> Note:
    """A pasted text, sorted. `kitchen` is a key of KITCHENS if the baker says whose it is."""
    whose = KITCHENS[kitchen] if kitchen else kitchen_of(text)
    sorter = _Sorter(Note(kitchen=whose, parts=[NotePart(name="")]), Lines(book, facts, whose))
    for line in lines_of(text):
        for piece in re.split(r"\s+[|•]\s+", line) if re.search(r"\s[|•]\s", line) else [line]:
            sorter.take(piece)
    return sorter.done()


def read_parts(
    ingredients: Sequence[str],
    steps: Sequence[str],
    about: Sequence[str],
    book: Book,
    facts: Facts,
    kitchen: str | None = None,
) -> Note:
    """The same for data that says what is an ingredient and what is a step."""
    whose = KITCHENS[kitchen] if kitchen else kitchen_of("\n".join((*ingredients, *steps)))
    note, lines = Note(kitchen=whose, parts=[NotePart(name="")]), Lines(book, facts, whose)
    here = note.main
    for raw in ingredients:
        line, _ = bare(printable(raw))
        if not line:
            continue
        if len(line) > LONGEST:
            note.unsure.append(line)
            continue
        head = head_of(line)
        if head and head.kind == heads.PART and not head.rest and not lines.has_amount(line):
            if not heads.is_main(head.name):
                here = NotePart(name=head.name)
                note.parts.append(here)
            continue
        here.mix += lines.read(line) if lines.has_amount(line) else [Read(line, doubt="it has no amount")]
    note.main.method = [(step, "") for raw in steps if (step := bare(printable(raw))[0])]
    note.about = [line for raw in about if (line := printable(raw).strip())]
    return note


class _Sorter:
    """Takes the lines of a note one by one."""

    def __init__(self, note: Note, lines: Lines) -> None:
        self.note, self.lines = note, lines
        self.state = "before"
        self.here = note.main
        self.met = False
        """Whether an ingredient was met."""

    def take(self, raw: str) -> None:
        if not raw.strip():
            return
        text, numbered = bare(raw)
        if not text or is_rule(text):
            return
        if len(text) > LONGEST:
            self.note.unsure.append(text)
            return
        if is_junk(text) or is_junk(raw.strip()):
            self.note.left_out.append(text)
            self.state = heads.JUNK if self.state == heads.METHOD and is_farewell(text) else self.state
            return
        if self.state == heads.JUNK and not head_of(text):
            self.note.left_out.append(text)
            return
        if begins_junk(text):
            self.note.left_out.append(text)
            self.state = heads.JUNK
            return
        if self.state == "before" and self._is_title(text):
            self.note.title = re.sub(r"^#+\s*", "", text)
            return
        if (head := head_of(text)) and not (
            head.rest and head.kind == heads.PART and self.state != heads.METHOD and numbered
        ):
            self._begin(head, text)
        elif heads.is_within(text):
            self.note.left_out.append(text)
        elif heads.is_shouted(text) and self.lines.cards.find(text) is None:
            self.note.unsure.append(text)
        else:
            self._line(text, numbered)

    def _is_title(self, text: str) -> bool:
        if self.note.title or self.note.about or self.met or self.lines.has_amount(text):
            return False
        if text.endswith(":") and text[:1].islower():
            return False
        short = len(text) <= _TITLE_SIGNS and len(text.split()) <= _TITLE_WORDS
        head = head_of(text)
        known = head is not None and not (
            head.kind == heads.PART and not text.endswith(":") and heads.is_main(head.name)
        )
        return short and not known and (not text.endswith((".", "!", "?")) or text.isupper()) and not is_order(text)

    def _begin(self, head: NoteHead, text: str) -> None:
        if head.kind == heads.PART:
            self._part(head, text)
            return
        if head.kind == heads.TIMES:
            self.note.said.append(head.rest)
            self.note.notes.append(head.rest)
            return
        if head.kind in (heads.NOTES, heads.KEEPS) and head.rest:
            (self.note.keeps if head.kind == heads.KEEPS else self.note.notes).append(head.rest)
            self.note.said += [head.rest] if head.name == "serves" else []
            return
        if head.kind == heads.TOOLS and head.rest:
            # "Tin: 20 cm round, lined" is a 20 cm round tin
            self.note.said.append(f"{head.rest.partition(',')[0]} tin" if _TIN.match(text) else head.rest)
            self.note.notes.append(text)
            return
        self.state = head.kind
        if inside := re.search(r"\(((?:serves|makes|for)\b[^)]*)\)", text, re.IGNORECASE):
            self.note.notes.append(inside[1])
        elif (len(text.split()) > 3 or "(" in text) and not head.rest:
            self.note.left_out.append(text)
        if head.kind in (heads.MIX, heads.METHOD):
            # below the heading of a part its own lists may have headings too
            own = self.here is not self.note.main and (
                bool(self.note.main.method) if head.kind == heads.METHOD else not self.here.mix
            )
            self.here = self.here if own else self.note.main
            # "Ingredients (for one 18 cm round tin)"
            if "(" in text:
                self.note.said.append(text)
        if head.rest:
            self._line(head.rest, False)

    def _part(self, head: NoteHead, text: str) -> None:
        known = self.note.part(head.name)
        label = head.rest and (self.state == heads.METHOD or (self.met and is_order(head.rest)))
        if label:
            self.state = heads.METHOD
            (known or self.note.main).method.append((head.rest if known else text, ""))
            return
        fresh = known is None and not heads.is_main(head.name)
        if "(" in text and not head.rest:
            # "Chocolate sponge (two 8 in sandwich tins)", "For the icing (enough for the top)"
            (self.note.left_out if fresh else self.note.said).append(text)
        if not fresh and not self.met and not self.note.title:
            self.note.title = re.sub(r"\s*\([^)]*\)", "", text).rstrip(": ")
        self.here = known or self.note.main
        if fresh and (not self.met and self.state == "before" and not head.rest):
            # the very first part is what the note is for, whatever it is called
            self.here.name, self.note.title = head.name, self.note.title or text.rstrip(": ")
        elif fresh:
            self.here = NotePart(name=head.name)
            self.note.parts.append(self.here)
        self.state = heads.PART if self.state in (heads.METHOD, heads.PART) else heads.MIX
        if head.rest:
            self._line(head.rest, False)

    def _line(self, text: str, numbered: bool) -> None:
        if self.state in (heads.NOTES, heads.KEEPS):
            (self.note.keeps if self.state == heads.KEEPS else self.note.notes).append(text)
        elif self.state == heads.TOOLS:
            self.note.said.append(text)
            self.note.notes.append(text)
        elif self.state == heads.METHOD:
            self._step(text)
        elif self.state == heads.PART:
            # after a method a part may bring its ingredients, or its steps
            if self.lines.has_amount(text) and not is_order(text) and not text.endswith("."):
                self._ingredients(text)
            else:
                self.state = heads.METHOD
                self._step(text, self.here)
        elif self._is_prose(text):
            self._prose(text)
        elif self.lines.has_amount(text) and not (numbered and is_order(text)):
            self._ingredients(text)
        elif self._is_step(text, numbered):
            self.state = heads.METHOD
            self._step(text)
        elif self.lines.tallies(text) or (len(text.split()) <= 4 and text[-1:].isdigit()):
            self.here.mix.append(Read(text, doubt="it is not clear how much of what"))
        elif not self.met:
            self.note.about.append(text)
        elif _FACT.search(text):
            self.note.said.append(text)
            self.note.unsure.append(text)
        else:
            self.here.mix.append(Read(text, doubt="it has no amount"))

    def _is_step(self, text: str, numbered: bool) -> bool:
        """What begins a method without a heading: a number before it, or a command of a few words."""
        return (
            self.met
            and (numbered or is_order(text))
            and len(text.split()) >= 2
            and ("." in text or len(text.split()) > 4)
        )

    def _is_prose(self, text: str) -> bool:
        """A sentence with several amounts in it that does not begin with one."""
        return len(text.split()) > 8 and not self.lines.has_amount(text) and self.lines.tallies(text) >= 2

    def _prose(self, text: str) -> None:
        """A letter that gives the mix and the method in sentences."""
        for sentence in re.split(r"(?<=[.!?])\s+(?=[A-Z])", text):
            if self.lines.tallies(sentence) and not self.lines.has_amount(sentence):
                self.here.mix += self.lines.told(sentence)
                self.note.main.method.append((sentence, "the amounts in it are in the mix"))
                self.met, self.state = True, heads.METHOD
            elif self.met:
                self._step(sentence)
            else:
                self.note.about.append(sentence)

    def _ingredients(self, text: str) -> None:
        self.here.mix += self.lines.read(text)
        self.met = True
        if self.state == "before":
            self.state = heads.MIX

    def _step(self, text: str, part: NotePart | None = None) -> None:
        name = heads.part_in(text)
        part = part or (self.note.part(name) if name else None) or self.here
        amount = self.lines.has_amount(text) and len(text.split()) < 8 and not text.endswith(".") and not is_order(text)
        part.method.append((text, "an ingredient, or a step?" if amount else ""))

    def done(self) -> Note:
        self.note.parts[1:] = [part for part in self.note.parts[1:] if part.mix or part.method]
        return self.note
