"""What a bought thing is made of, read as its packet says it: `sugar, vegetable fat (palm, rapeseed), salt`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, PlainValidator, ValidationInfo
from pydantic_core import CoreSchema

from tinbook.models.reading import SCALAR, text_of
from tinbook.units import Misread

ITSELF = "itself"
"""What is made of nothing else: salt, eggs, milk."""
DEEPEST, LONGEST = 4, 70
OPEN, CLOSE = "([", ")]"
_PERCENT = re.compile(r"\s*(?:\(\s*)?([0-9]+(?:[.,][0-9]+)?)\s*%\s*\)?\s*$")
_TRACES = re.compile(r"(?i)\b(may contain|traces of|made in a)\b")
_HEAD = re.compile(r"(?i)\s*ingredients\s*:")
_LETTER = re.compile(r"[^\W\d_]")


@dataclass(frozen=True, slots=True, kw_only=True)
class PackPart:
    """One thing in a list on a packet. `percent` as the packet gives it; `parts` what stands in its brackets; `sort`:
    it is a class with a colon after it (`emulsifier: lecithin`), and `parts` has the one thing named. `at` is where it
    starts in the text."""

    name: str
    parts: tuple[PackPart, ...] = ()
    percent: float | None = None
    sort: bool = False
    at: int = 0

    def every(self) -> Iterator[PackPart]:
        """It, and everything in it."""
        yield self
        for part in self.parts:
            yield from part.every()


@dataclass(frozen=True, slots=True)
class MadeOf:
    """What stands on the packet, in its order; nothing for what is just itself."""

    parts: tuple[PackPart, ...]
    written: str

    @property
    def itself(self) -> bool:
        """Whether it is one thing, made of nothing else."""
        return not self.parts

    def every(self) -> Iterator[PackPart]:
        """Everything in it, at any depth."""
        for part in self.parts:
            yield from part.every()


def read_made_of(text: str) -> MadeOf:
    """A list as a packet prints it; raises Misread with the span of the mistake."""
    if text.strip().lower() == ITSELF:
        return MadeOf((), text)
    if head := _HEAD.match(text):
        raise Misread('the word "ingredients" is not one of them', "leave it out", 0, head.end())
    if traces := _TRACES.search(text):
        hint = 'write only what is in it; a warning about traces goes under "notes"'
        raise Misread(f'"{traces[0]}" is not something it is made of', hint, traces.start(), traces.end())
    end = len(text.rstrip())
    end -= text[:end].endswith(".")
    return MadeOf(_listed(text, 0, end, 1), text)


def _listed(text: str, start: int, end: int, deep: int) -> tuple[PackPart, ...]:
    if deep > DEEPEST:
        raise Misread("these brackets go too deep", "write the list as the packet prints it", start, end)
    found = [_part(text, *span, deep) for span in _spans(text, start, end)]
    shares = [part for part in found if part.percent is not None]
    if sum(part.percent or 0.0 for part in shares) > 100.5:
        raise Misread("these percentages come to more than 100", "look at the packet again", start, end)
    for before, after in pairwise(shares):
        if (after.percent or 0.0) > max(before.percent or 0.0, 2.0):
            hint = "a packet names what there is most of first: keep its order"
            message = f'there is more of "{after.name}" than of "{before.name}" before it'
            raise Misread(message, hint, after.at, after.at + len(after.name))
    return tuple(found)


def _spans(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    """Where each thing of a list is: commas and semicolons part them, but not those in brackets or in a number."""
    since, depth = start, list[int]()
    for at in range(start, end):
        sign = text[at]
        if sign in OPEN:
            depth.append(at)
        elif sign in CLOSE:
            if not depth:
                raise Misread("this bracket closes nothing", "take it out, or open it before", at, at + 1)
            depth.pop()
        elif sign in ",;" and not depth and not _in_number(text, at):
            yield since, at
            since = at + 1
    if depth:
        hint = 'write a ")" after the last thing in it'
        raise Misread("this bracket is never closed", hint, depth[-1], depth[-1] + 1)
    yield since, end


def _in_number(text: str, at: int) -> bool:
    return text[at - 1 : at].isdigit() and text[at + 1 : at + 2].isdigit()


def _part(text: str, start: int, end: int, deep: int) -> PackPart:
    start += len(text[start:end]) - len(text[start:end].lstrip())
    end = start + len(text[start:end].rstrip())
    if start >= end:
        hint = "take out one of the commas, or write what is missing"
        raise Misread("there is nothing between these commas", hint, max(start - 1, 0), start)
    words, percent = text[start:end], None
    if found := _PERCENT.search(words):
        percent = float(found[1].replace(",", "."))
        if percent > 100.0:
            raise Misread(f"{percent:g} % is more than all of it", "look at the packet again", start, end)
        words = words[: found.start()]
    stop = start + len(words.rstrip())
    opens = next((at for at in range(start, stop) if text[at] in OPEN), stop)
    colon = text.find(":", start, opens)
    if colon >= 0:
        inner = _listed(text, colon + 1, stop, deep + 1)
        return PackPart(name=_name(text, start, colon), parts=inner, percent=percent, sort=True, at=start)
    if opens == stop:
        return PackPart(name=_name(text, start, stop), percent=percent, at=start)
    if text[stop - 1] not in CLOSE:
        rest = opens + next(at for at, sign in enumerate(text[opens:stop]) if sign in CLOSE) + 1
        hint = "put a comma after the bracket, or the words before it"
        raise Misread("words after a bracket", hint, rest, stop)
    own = _PERCENT.search(text[start:opens])
    if own:
        percent = float(own[1].replace(",", "."))
    name = _name(text, start, start + own.start() if own else opens)
    return PackPart(name=name, parts=_listed(text, opens + 1, stop - 1, deep + 1), percent=percent, at=start)


def _name(text: str, start: int, end: int) -> str:
    name = " ".join(text[start:end].split())
    if not _LETTER.search(name):
        hint = "write its name, as the packet does"
        raise Misread("there is no name here", hint, start, max(end, start + 1))
    if len(name) > LONGEST:
        raise Misread("this is too long for one thing", "put commas between the things it names", start, end)
    return name


class _AsOnThePacket:
    """A text, or a list: what YAML takes apart at its commas is put together again."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return PlainValidator(_read, json_schema_input_type=Any).__get_pydantic_core_schema__(source, handler)

    def __get_pydantic_json_schema__(self, _: CoreSchema, __: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"anyOf": [dict(SCALAR), {"type": "array", "items": dict(SCALAR), "minItems": 1}]}


def _read(value: Any, _: ValidationInfo) -> MadeOf:
    if not isinstance(value, list):
        return read_made_of(text_of(value))
    texts = []
    for each in value:
        if isinstance(each, dict):
            name = next(iter(each), "")
            hint = f'write "{name} (...)", with what it is made of in the brackets'
            raise Misread("a colon goes in quotes, or as brackets", hint, 0, 0)
        texts.append(text_of(each))
    try:
        return read_made_of(", ".join(texts))
    except Misread as error:
        said = ", ".join(texts)[error.start : error.end].strip(" ,;")
        near = f' (at "{said}")' if said and f'"{said}"' not in error.message else ""
        raise Misread(f"{error.message}{near}", error.hint, 0, 0) from None


MadeOfText = Annotated[MadeOf, _AsOnThePacket()]
