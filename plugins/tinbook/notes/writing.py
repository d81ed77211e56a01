"""A sorted note as the text of its files. What is not certain is marked `# unsure`; nothing is guessed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.notes.baking import baking_of
from tinbook.notes.cards import alike
from tinbook.notes.lines import Read
from tinbook.notes.reading import Note, NotePart
from tinbook.notes.roles import kind_called, kind_of, role_of, weight_of
from tinbook.notes.tinning import tins_of
from tinbook.notes.yaml_text import mark, quoted, unsure
from tinbook.pages.lists.schema_org import DONE
from tinbook.tins import read_tin
from tinbook.units import Misread, read_mass

_YIELD = re.compile(r"(?:yields?|makes|gives)\b[\s:]*(?:about|around|roughly)?\s*([0-9][^.;]*)", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A file's text, its name, how many lines and steps were read, and what was unsure."""

    name: str
    slug: str
    text: str
    lines: int
    steps: int
    doubts: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafts:
    """The files of a note, the main one first; names without a card; what was left out of all of them."""

    main: Draft
    more: tuple[Draft, ...] = ()
    unknown: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()

    @property
    def every(self) -> tuple[Draft, ...]:
        return (self.main, *self.more)

    @property
    def lines(self) -> int:
        """How many ingredients were read, in all the files."""
        return sum(draft.lines for draft in self.every)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidBeside:
    """What is known besides the note: from the command's options, or from a page's data."""

    name: str
    slug: str
    kind: str | None = None
    tins: str | None = None
    also: Sequence[str] = ()
    tags: Sequence[str] = ()
    yields: Sequence[str] = ()
    cook: str = ""
    described: bool = False
    """Whether `about` is known to be about the cake."""


def written(note: Note, told: SaidBeside, book: Book, facts: Facts) -> Drafts:
    """The files of a note."""
    parts = [part for part in note.parts[1:] if part.mix]
    for part in note.parts[1:]:
        if not part.mix:
            note.main.method += part.method
    rest = [_Writer(note, part, _of_part(part, told, book, facts), book, facts).side(part) for part in parts]
    writer = _Writer(note, note.main, told, book, facts)
    main = writer.main([(part, draft) for part, draft in zip(parts, rest, strict=True)])
    unknown = dict.fromkeys(line.unknown for part in note.parts for line in part.mix if line.unknown)
    return Drafts(main=main, more=tuple(rest), unknown=tuple(unknown), left_out=tuple(note.left_out))


def _of_part(part: NotePart, told: SaidBeside, book: Book, facts: Facts) -> SaidBeside:
    slug = re.sub(r"[^a-z0-9]+", "-", part.name).strip("-") or "part"
    return SaidBeside(
        name=f"{told.name} {part.name}", slug=f"{told.slug}-{slug}"[:100], kind=kind_of(part, book, facts).kind or None
    )


class _Writer:
    """Writes one file, and gathers what is unsure in it."""

    def __init__(self, note: Note, part: NotePart, told: SaidBeside, book: Book, facts: Facts) -> None:
        self.note, self.part, self.told, self.book, self.facts = note, part, told, book, facts
        self.doubts: list[str] = []
        by_name = kind_called(note.title or told.name, facts) if part is note.main else ""
        self.kind = told.kind if told.kind in facts.kinds else by_name or None
        self.by_name = told.kind not in facts.kinds and bool(by_name)

    @property
    def _by_weight(self) -> bool:
        return self.kind is not None and self.facts.kinds[self.kind].group != "cake"

    def main(self, sides: Sequence[tuple[NotePart, Draft]]) -> Draft:
        head = [self._kind(), *self._called(), *self._about(), *self._makes()]
        foot = [*self._finish(sides), *self._said()]
        return self._draft([*head, *self._mix(), *self._bake(), *self._method(), *foot])

    def side(self, part: NotePart) -> Draft:
        """The file of one of the note's icings, fillings or syrups."""
        guess = kind_of(part, self.book, self.facts)
        head = f"kind: {guess.kind}{mark(guess.doubt)}" if guess.kind else self._kind()
        if guess.doubt and guess.kind:
            self.doubt(f"whether it is {guess.kind}: {guess.doubt}")
        return self._draft([head, *self._makes(), *self._mix(), *self._method()])

    def _draft(self, rows: list[str]) -> Draft:
        read = [line for line in self.part.mix if line.text]
        text = "\n".join((f"name: {quoted(self.told.name)}", *rows)) + "\n"
        return Draft(
            name=self.told.name,
            slug=self.told.slug,
            text=text,
            lines=len(read),
            steps=len(self.part.method),
            doubts=tuple(self.doubts),
        )

    def doubt(self, words: str) -> None:
        self.doubts.append(words)

    def _kind(self) -> str:
        if self.by_name:
            self.doubt(f"whether it is {self.kind}: guessed from its name")
            return f"kind: {self.kind}{mark('guessed from its name')}"
        if self.kind:
            return f"kind: {self.kind}"
        kinds = ", ".join(self.facts.kinds)
        self.doubt(f"what kind it is; the book knows {kinds}")
        return f"kind: creamed{mark(f'choose from {kinds}')}"

    def _called(self) -> list[str]:
        title = self.note.title.strip()
        same = title.lower() in (self.told.name.lower(), "")
        also = list(dict.fromkeys((*self.told.also, *(() if same else (title,)))))
        rows = [("also", also), ("tags", list(dict.fromkeys(self.told.tags)))]
        return [f"{key}: {quoted(words)}" for key, words in rows if words]

    def _about(self) -> list[str]:
        if not self.note.about:
            return []
        if self.told.described:
            return ["about: |", *(f"  {line.strip()}" for line in self.note.about)]
        self.doubt("what comes before the list, and whether it is about the cake")
        return [f"about: |{mark('what comes before the list')}", *(f"  {line.strip()}" for line in self.note.about)]

    def _said(self) -> list[str]:
        rows = []
        if self.note.keeps:
            rows.append(f"keeps: {quoted(' '.join(self.note.keeps))}")
        if self.note.notes:
            rows += ["notes:", *(f"  - {quoted(line)}" for line in self.note.notes)]
        for line in self.note.unsure:
            self.doubt(f'"{line}" was not understood')
            rows.append(unsure(line))
        return rows

    def _makes(self) -> list[str]:
        if self._by_weight or self.part is not self.note.main:
            return self._weight()
        if self.told.tins:
            return self._tins_given(self.told.tins)
        for text in self.told.yields:
            parts = [piece.strip() for piece in text.split(";")]
            if _are_tins(parts):
                return [f"tins: {quoted(parts if len(parts) > 1 else text)}"]
            self.doubt(f'it says it makes "{text}"')
        return self._tins_found()

    def _weight(self) -> list[str]:
        said = [m[1] for line in self.note.notes if (m := _YIELD.match(line))] if self.part is self.note.main else []
        for text in (*self.told.yields, *said):
            try:
                read_mass(text)
            except Misread:
                self.doubt(f'it says it makes "{text}"')
                continue
            return [f"makes: {quoted(text)}"]
        self.doubt('what it makes: weigh it once and write "makes: 900 g"')
        if goes_in := round(weight_of(self.part, self.book, self.facts)):
            return [f"makes: {goes_in} g{mark('this is what goes in; weigh what comes out')}"]
        return [unsure("makes: 900 g, say, once you have weighed it")]

    def _tins_given(self, tins: str) -> list[str]:
        try:
            read_tin(tins)
        except Misread as error:
            self.doubt(f"--tins: {error.message}; {error.hint}")
            return [unsure("tins: 2 round 20 cm x 7.5 cm, for example")]
        return [f"tins: {quoted(tins)}"]

    def _tins_found(self) -> list[str]:
        lines = [
            *self.note.said,
            *(step for part in self.note.parts for step, _ in part.method),
            *self.note.about,
            *self.note.notes,
        ]
        lines.append(self.note.title)
        if count := next(
            (m[1] for line in self.note.notes if (m := re.match(r"makes[: ]+([0-9]+)\W*$", line, re.IGNORECASE))), ""
        ):
            small = re.search(r"cup\s?cake|muffin|fairy cake|bun", f"{self.note.title} {self.told.name}", re.IGNORECASE)
            lines.append(f"{count} {small[0]}s" if small else "")
        tins = tins_of(lines)
        if tins is None:
            self.doubt('which tins it was written for, such as "tins: 2 round 20 cm x 7.5 cm"')
            return [unsure("tins: 2 round 20 cm x 7.5 cm, for example")]
        if tins.doubt:
            self.doubt(f'which tins: "{tins.written}": {tins.doubt}')
        return [f"tins: {tins.text}{mark(tins.doubt)}"]

    def _mix(self) -> list[str]:
        rows = ["mix:", *(self._line(line) for line in self.part.mix)]
        if len(rows) == 1:
            self.doubt('none of its lines has an amount, such as "250 g butter"')
            rows.append(unsure("no amounts found", "  "))
        return rows

    def _line(self, line: Read) -> str:
        if not line.text:
            self.doubt(f'"{line.written}": {line.doubt}')
            return unsure(f"{line.written} ({line.doubt})", "  ")
        why = line.doubt
        if line.unknown:
            close = alike(line.unknown, self.book.names)
            why += f'; perhaps "{close}"' if close else ""
            self.doubt(f'no card for "{line.unknown}"' + (f'; perhaps "{close}"' if close else ""))
        elif why:
            self.doubt(f'"{line.written}": {why}')
        return f"  - {quoted(line.text)}{mark(why)}"

    def _bake(self) -> list[str]:
        if self._by_weight:
            return []
        lines = [
            *(step for part in self.note.parts for step, _ in part.method),
            *self.note.said,
            *self.note.unsure,
            *self.note.about,
        ]
        bake = baking_of(lines, self.note.kitchen.fahrenheit, self.told.cook)
        why = "; ".join(words for words in (bake.oven_doubt, bake.time_doubt) if words)
        if bake.oven and bake.time and (not why or self.told.cook):
            if why:
                self.doubt(f"the bake: {why}")
            return [f"bake: {{oven: {bake.oven}, time: {bake.time}}}{mark(why)}"]
        self.doubt(f"the bake: {why}")
        return [unsure(f"bake: {{oven: {bake.oven or '170 °C, say'}, time: {bake.time or '55-65 min, say'}}} ({why})")]

    def _method(self) -> list[str]:
        rows = []
        for step, why in self.part.method:
            if why:
                self.doubt(f'the step "{step}": {why}')
            do, _, done = step.partition(DONE)
            if do and done:
                rows += [f"  - do: {quoted(do)}{mark(why)}", f"    done: {quoted(done)}"]
            else:
                rows.append(f"  - {quoted(step)}{mark(why)}")
        return ["method:", *rows] if rows else []

    def _finish(self, sides: Sequence[tuple[NotePart, Draft]]) -> list[str]:
        """What the cake is finished with, from the note's other mixtures, if their kinds allow it."""
        sure: dict[str, str] = {}
        rows = []
        for part, draft in sides:
            guess = kind_of(part, self.book, self.facts)
            role, doubt = role_of(part, guess.kind, self.facts)
            if role and role not in sure and not (doubt or guess.doubt):
                sure[role] = draft.slug
            elif role:
                self.doubt(f"what {draft.slug} is on the cake: {doubt or guess.doubt}")
                rows.append(unsure(f"finish: {{made with: {{{role}: {draft.slug}}}}} ({doubt or guess.doubt})"))
        if sure and not self._by_weight:
            words = ", ".join(f"{role}: {slug}" for role, slug in sure.items())
            rows.insert(0, f"finish: {{made with: {{{words}}}}}")
        return rows


def _are_tins(parts: Sequence[str]) -> bool:
    try:
        for part in parts:
            read_tin(part)
    except Misread:
        return False
    return bool(parts)
