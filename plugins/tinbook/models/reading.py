"""What all models are made of: groups of keys, and fields that are a single text as a baker writes it.

A flaw knows the path of the value it is about, not its line: the package that read the file joins the two.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated, Any, ClassVar, TypeVar

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    PlainValidator,
    ValidationInfo,
    model_validator,
)
from pydantic_core import CoreSchema

from tinbook.problems import nearest
from tinbook.tins import Tin
from tinbook.units import METRIC, Measures, Misread, patterns

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Flaw:
    """What is wrong at `path`; `on_key` if it is the key itself, `start`/`end` the part of the text concerned. `note`:
    it is only to be known, and stops nothing."""

    code: str
    path: Path
    message: str
    hint: str = ""
    on_key: bool = False
    start: int | None = None
    end: int | None = None
    note: bool = False


def _spoken(name: str) -> str:
    return name.replace("_", " ")


class Written(BaseModel):
    """Base of everything a baker writes: frozen, no unknown keys, keys in plain words (`batter depth`).

    The docstring under a field is what pages and editors say about its key (`models/keys.py`).
    """

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=_spoken,
        arbitrary_types_allowed=True,
        defer_build=True,
    )

    needed: ClassVar[frozenset[str]] = frozenset()
    """Keys that may be left out but not kept private: sums and cautions go wrong without them."""

    def __repr__(self) -> str:
        """Every field in order, many times faster than pydantic writes it: digests are made from this."""
        kind = type(self)
        return f"{kind.__name__}{list(map(self.__dict__.get, kind.model_fields))}"


class WrittenLine(Written):
    """A group that may be written as a single text, which is then its `chief` value."""

    chief: ClassVar[str]

    @model_validator(mode="before")
    @classmethod
    def _short_form(cls, data: Any) -> Any:
        return data if isinstance(data, Mapping) else {cls.chief: data}


M = TypeVar("M", bound=Written)


def such_as(*examples: str) -> Any:
    """What a baker could write in a field, exactly as in the file; for a list, lines with their dashes.

    The first is the hint if the field is missing; all of them are on the reference pages and in the schema.
    """
    return Field(examples=list(examples))


class ReadAs:
    """Goes with a field's type: how its value is read, and `like`, a JSON Schema of what a baker may write there.

    `unit` is the unit of a plain number.
    """

    def __init__(self, validate: Callable[[Any, ValidationInfo], Any], like: Mapping[str, Any], unit: str = "") -> None:
        self.validate, self.like, self.unit = validate, like, unit

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return PlainValidator(self.validate, json_schema_input_type=Any).__get_pydantic_core_schema__(source, handler)

    def __get_pydantic_json_schema__(self, _: CoreSchema, __: GetJsonSchemaHandler) -> dict[str, Any]:
        return dict(self.like)


SCALAR: Mapping[str, Any] = {"type": ["string", "number", "boolean"], "pattern": r"\S"}
"""A single text: an editor takes `12` for a number and `true` for a boolean, but the book takes both for text."""


def like(pattern: str, what: str = "") -> Mapping[str, Any]:
    """JSON Schema of a text that matches a pattern in full; not a number, which would lack its unit. `what` names
    it."""
    named = {"$comment": what} if what else {}
    return {"type": "string", "pattern": patterns.whole(pattern), **named}


LINE: Mapping[str, Any] = {"type": "string", "pattern": patterns.LINE_TEXT, "$comment": "amount and name"}
HEAT: Mapping[str, Any] = {"type": "string", "pattern": patterns.HEAT_TEXT}
FACTOR: Mapping[str, Any] = {"type": ["number", "string"], "pattern": patterns.whole(patterns.NUMBER)}


def spelled(read: Callable[[str, Measures], Any], like: Mapping[str, Any] = SCALAR, unit: str = "") -> ReadAs:
    """A field that is a single text as a baker writes it, read by `read(text, measures)`; `like` is for editors.

    `unit`: the unit of the number it becomes, for writing out a default.
    What a text was read as is kept: a book says "2 eggs" and "160 °C" many times over.
    """
    kept = lru_cache(maxsize=2048)(read)

    def validate(value: Any, info: ValidationInfo) -> Any:
        return kept(text_of(value), measures_in(info))

    return ReadAs(validate, like, unit)


def measures_in(info: ValidationInfo) -> Measures:
    """The house's cup and spoons, from the validation context."""
    measures: Measures = (info.context or {}).get("measures", METRIC)
    return measures


def tins_in(info: ValidationInfo) -> Mapping[str, Tin]:
    """The house's tins that have names of their own, from the validation context."""
    tins: Mapping[str, Tin] = (info.context or {}).get("tins", {})
    return tins


def text_of(value: Any) -> str:
    """`value` as a single text, or a Misread that says what is there instead; no hint means: show an example."""
    if isinstance(value, str):
        return value.strip()
    if value is None:
        raise Misread("nothing is written here", "write a value, or leave the key out", 0, 0)
    if isinstance(value, Mapping):
        hint = 'text with ": " in it needs quotes round it' if len(value) == 1 else ""
        raise Misread("a plain value goes here, with no name or colon", hint, 0, 0)
    if isinstance(value, list):
        raise Misread("a single value goes here, not a list", "", 0, 0)
    return str(value).strip()


def yes_or_no(text: str, _: Measures) -> bool:
    """`yes` or `no`; nothing else, so that a slip is seen."""
    answer = {"yes": True, "no": False, "true": True, "false": False}.get(text.lower())
    if answer is None:
        raise Misread(f'"{text}" is neither yes nor no', "write yes or no", 0, len(text))
    return answer


def one_of(*words: str) -> ReadAs:
    """A text that must be one of `words`."""

    def read(text: str, _: Measures) -> str:
        if text in words:
            return text
        known = nearest(text, words)
        hint = f'did you mean "{known}"?' if known else "write one of: " + ", ".join(words)
        raise Misread(f'"{text}" is not one of the choices', hint, 0, len(text))

    return spelled(read, {"enum": list(words)})


def whole_number(low: int, high: int) -> ReadAs:
    """A whole number from `low` to `high`, written in digits."""

    def read(text: str, _: Measures) -> int:
        if text.isascii() and text.isdigit() and len(text) < 7 and low <= int(text) <= high:
            return int(text)
        how = f"one from {low} to {high}" if text.strip().isdecimal() else "it in figures"
        hint = f"write {how}, such as {max(low, 2)}"
        raise Misread(f'"{text}" is not a whole number from {low} to {high}', hint, 0, len(text))

    limits = {"minimum": low, "maximum": high, "pattern": rf"^\s*{'(?=[0-9]*[1-9])' if low else ''}[0-9]{{1,6}}\s*$"}
    return spelled(read, {"type": ["integer", "string"], **limits})


TEXT = spelled(lambda text, _: _not_empty(text))
"""Reads a text that may say anything."""
Text = Annotated[str, TEXT]
YES_NO = {"type": ["boolean", "string"], "pattern": patterns.whole(patterns.either(("yes", "no", "true", "false")))}
YesNo = Annotated[bool, spelled(yes_or_no, YES_NO)]


def _not_empty(text: str) -> str:
    if not text:
        raise Misread("the text is empty", "write something, or leave the key out", 0, 0)
    return text


class OneOrMore:
    """Goes before a list: a single text counts as a list of one."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        listed = BeforeValidator(lambda value: value if isinstance(value, list) else [value])
        return listed.__get_pydantic_core_schema__(source, handler)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        listed = handler(core)
        return {"anyOf": [listed["items"], listed]}


ONE_OR_MORE = OneOrMore()
Texts = Annotated[tuple[Text, ...], ONE_OR_MORE]


def _private(value: Any, info: ValidationInfo) -> bool | tuple[str, ...]:
    if isinstance(value, list):
        return tuple(_not_empty(text_of(each)) for each in value)
    return yes_or_no(text_of(value), METRIC)


_YES_NO_OR_KEYS = {"anyOf": [YES_NO, {"type": "array", "items": SCALAR}]}
Private = Annotated[bool | tuple[str, ...], ReadAs(_private, _YES_NO_OR_KEYS), such_as("yes")]


NONE = "none"
"""What to write if there is none of something."""


class OrNone:
    """Goes before a group of keys: the text `none`, which means a value of its own."""

    def __init__(self, nothing: Written) -> None:
        self.nothing = nothing

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        told = BeforeValidator(lambda value: self.nothing if value == NONE else value)
        return told.__get_pydantic_core_schema__(source, handler)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        made = handler(core)
        return {"anyOf": [{"enum": [NONE]}, *made.get("anyOf", [made])]}
