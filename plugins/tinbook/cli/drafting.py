"""Pasted lines become the text of a mixture's file. What was guessed is marked `# unsure`."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from tinbook.cli.importing import Found, minutes_of
from tinbook.facts import Facts
from tinbook.models import Book, Take, read_take
from tinbook.pages.lists.schema_org import DONE
from tinbook.problems import nearest
from tinbook.tins import read_tin
from tinbook.units import Misread, read_heat, read_mass, read_span

BULLET = re.compile(r"^\s*(?:[-*•·▢□☐]|\d+[.)](?=\s))\s*")
AMOUNT = re.compile(r"^[\d½⅓⅔¼¾⅛⅜⅝⅞]")
METHOD = re.compile(r"^(method|steps|directions|instructions|what to do)\b\W*$", re.IGNORECASE)
MIX = re.compile(r"^(mix|ingredients|you need|what you need)\b\W*$", re.IGNORECASE)
HEAT = re.compile(r"\d{3}\s*°?\s*[CF]\b(?:\s+fan)?|gas mark\s+\d", re.IGNORECASE)
MINUTES = re.compile(r"\b\d{1,3}\s*(?:(?:[-–]|to)\s*\d{1,3}\s*)?min\w*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Draft:
    """The file's text, how many lines and steps were found, and what was unsure."""

    text: str
    lines: int
    steps: int
    doubts: tuple[str, ...]


class _Reading:
    """Sorts pasted lines into mix, method and the rest."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self.mix: list[str] = []
        self.method: list[str] = []
        self.about: list[str] = []
        self.doubts: list[str] = []
        self.count = 0

    def read(self, text: str) -> None:
        in_method = False
        for line in (_printable(raw).strip() for raw in text.splitlines()):
            if METHOD.match(line) or MIX.match(line):
                in_method = bool(METHOD.match(line))
                continue
            bare = _bare(line)
            if not bare:
                continue
            if in_method:
                self.method.append(bare)
            elif AMOUNT.match(bare):
                self.amount(bare)
            else:
                self.other(bare)

    def take_over(self, found: Found) -> None:
        """Sorts what schema.org data says, where ingredients and steps are known as such."""
        for line in map(_bare, found.ingredients):
            if AMOUNT.match(line):
                self.amount(line)
            elif line:
                self.doubt(f'"{line}" has no amount')
                self.mix.append(f"  # unsure: {line}")
        self.method += [step for raw in found.steps if (step := _bare(raw))]
        self.about += [line for raw in found.about if (line := _printable(raw).strip())]
        if found.others:
            self.doubt(f"the page holds {found.others} more; one was read")

    def amount(self, line: str) -> None:
        try:
            take = read_take(line, self.book.house.spoons)
        except Misread as error:
            self.doubt(f'"{line}": {error.message}' + (f"; {error.hint}" if error.hint else ""))
            self.mix.append(f"  # unsure: {line}")
            return
        self.count += 1
        mark = "" if self.book.house_word(take.name) else self.unknown(take)
        self.mix.append(f"  - {_quoted(line)}{mark}")

    def unknown(self, take: Take) -> str:
        close = nearest(take.name, self.book.names)
        hint = f'; perhaps "{close}"' if close else ""
        self.doubt(f'no card for "{take.name}"{hint}')
        return f"  # unsure: no card for it{hint}"

    def other(self, line: str) -> None:
        """A line that starts with no amount: a step when it follows the mix, words about it before."""
        if self.count:
            self.method.append(line)
        else:
            self.about.append(line)

    def doubt(self, words: str) -> None:
        self.doubts.append(words)


def draft_mixture(name: str, text: str, book: Book, facts: Facts, kind: str | None, tins: str | None) -> Draft:
    """The file of a mixture from pasted `text`. Nothing is invented: what is missing is asked for in a comment."""
    reading = _Reading(book)
    reading.read(text)
    head = [_kind(reading, facts, kind), *_about(reading), *_tins(reading, facts, kind, tins)]
    return _draft(name, reading, head, _bake(reading, facts, kind, text, _longest(text)))


def draft_found(name: str, found: Found, book: Book, facts: Facts, kind: str | None, tins: str | None) -> Draft:
    """The same from schema.org data; what its words say for certain is not asked again."""
    reading = _Reading(book)
    reading.take_over(found)
    kind = kind or _kind_called(found.category, facts)
    head = [_kind(reading, facts, kind)]
    for key, words in (("also", found.also), ("tags", found.keywords)):
        if words:
            head.append(f"{key}: {_quoted([_printable(word) for word in dict.fromkeys(words)])}")
    head += [*_about(reading), *(_yields(reading, found, facts, kind, tins) or _tins(reading, facts, kind, tins))]
    text = "\n".join((*found.about, *found.steps))
    return _draft(name, reading, head, _bake(reading, facts, kind, text, _cook(found.cook) or _longest(text)))


def _draft(name: str, reading: _Reading, head: list[str], bake: list[str]) -> Draft:
    if not reading.mix:
        reading.doubt('no line of it starts with an amount, such as "250 g butter"')
    mix = ["mix:", *(reading.mix or ["  # unsure: no amounts found"])]
    method = ["method:", *(line for step in reading.method for line in _step(step))] if reading.method else []
    lines = [f"name: {_quoted(_printable(name))}", *head, *mix, *bake, *method]
    return Draft("\n".join(lines) + "\n", reading.count, len(reading.method), tuple(reading.doubts))


def _about(reading: _Reading) -> list[str]:
    return ["about: |", *(f"  {line}" for line in reading.about)] if reading.about else []


def _step(step: str) -> list[str]:
    """A step, and what it looks like when it is done, where the text says so in the book's own way."""
    do, _, done = step.partition(DONE)
    return [f"  - do: {_quoted(do)}", f"    done: {_quoted(done)}"] if do and done else [f"  - {_quoted(step)}"]


def _kind_called(word: str, facts: Facts) -> str | None:
    """The kind that goes by a word: its key or its title."""
    low = word.lower()
    return next((key for key, kind in facts.kinds.items() if low in (key.lower(), kind.title.lower())), None)


def _yields(reading: _Reading, found: Found, facts: Facts, kind: str | None, tins: str | None) -> list[str]:
    """What it makes, where the data says it in tins or by weight."""
    by_weight = _made_by_weight(facts, kind)
    for text in () if tins else map(_printable, found.yields):
        parts = [part.strip() for part in text.split(";")]
        try:
            if by_weight:
                read_mass(text)
                return [f"makes: {_quoted(text)}"]
            for part in parts:
                read_tin(part)
        except Misread:
            reading.doubt(f'it says it makes "{text}"')
            continue
        return [f"tins: {_quoted(parts if len(parts) > 1 else text)}"]
    return []


def _cook(text: str) -> str:
    minutes = minutes_of(text)
    return f"{minutes:.0f} min" if minutes and minutes >= 1 else ""


def _kind(reading: _Reading, facts: Facts, kind: str | None) -> str:
    if kind in facts.kinds:
        return f"kind: {kind}"
    kinds = ", ".join(facts.kinds)
    reading.doubt(f"what kind it is; the book knows {kinds}")
    return f"kind: creamed  # unsure: one of {kinds}"


def _made_by_weight(facts: Facts, kind: str | None) -> bool:
    return kind is not None and kind in facts.kinds and facts.kinds[kind].group != "cake"


def _tins(reading: _Reading, facts: Facts, kind: str | None, tins: str | None) -> list[str]:
    if _made_by_weight(facts, kind):
        reading.doubt('what it makes: weigh it once and write "makes: 900 g"')
        return ["# unsure: makes: 900 g"]
    for text in [tins] if tins else reading.about + reading.method:
        try:
            read_tin(text)
        except Misread as error:
            if tins:
                reading.doubt(f"--tins: {error.message}; {error.hint}")
            continue
        return [f"tins: {_quoted(text)}"]
    reading.doubt('which tins it was written for, such as "tins: 2 round 20 cm x 7.5 cm"')
    return ["# unsure: tins: 2 round 20 cm x 7.5 cm"]


def _bake(reading: _Reading, facts: Facts, kind: str | None, text: str, time: str) -> list[str]:
    if _made_by_weight(facts, kind):
        return []
    heat = _found(HEAT, text)
    try:
        read_heat(heat)
        read_span(time, ("time",))
    except Misread:
        reading.doubt("oven and time, such as bake: {oven: 170 °C, time: 55-65 min}")
        return ["# unsure: bake: {oven: 170 °C, time: 55-65 min}"]
    reading.doubt(f"the bake was taken from the text: {heat}, {time}")
    return [f"bake: {{oven: {heat}, time: {time}}}  # unsure: taken from the text"]


def _found(pattern: re.Pattern[str], text: str) -> str:
    match = pattern.search(text)
    return " ".join(match.group().split()) if match else ""


def _longest(text: str) -> str:
    """The longest time named: a bake outlasts the beating."""
    times = [" ".join(time.split()) for time in MINUTES.findall(text)]
    return max(times, key=lambda time: max(int(figure) for figure in re.findall(r"\d+", time)), default="")


def _printable(line: str) -> str:
    """A pasted line without the signs no file of the book may hold."""
    return "".join(sign if sign.isprintable() else " " for sign in line)


def _bare(line: str) -> str:
    """A line without the mark of a list before it."""
    return BULLET.sub("", _printable(line)).strip()


def _quoted(text: str | list[str]) -> str:
    """A text, or a list of them, as one YAML value on one line."""
    dumped = yaml.safe_dump(text, allow_unicode=True, width=10**9, default_flow_style=True)
    return dumped.strip().removesuffix("...").strip()
