"""Plain data in, a frozen model or a list of flaws out: the only door into pydantic.

A flaw knows the path of the value it speaks of, not its line: the room that read the file joins the two.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, PlainValidator, ValidationError, ValidationInfo

from tinbook.problems import nearest
from tinbook.units import METRIC, Measures, Misread

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Flaw:
    """What is wrong at `path`; `on_key` when the key itself is, `start`/`end` the part of the text meant."""

    code: str
    path: Path
    message: str
    hint: str = ""
    on_key: bool = False
    start: int | None = None
    end: int | None = None


def _spoken(name: str) -> str:
    return name.replace("_", " ")


class Leaf(BaseModel):
    """Base of everything a baker writes: frozen, no unknown keys, keys in plain words (`batter depth`)."""

    model_config = ConfigDict(frozen=True, extra="forbid", alias_generator=_spoken, arbitrary_types_allowed=True)


M = TypeVar("M", bound=Leaf)


def spelled(read: Callable[[str, Measures], Any]) -> PlainValidator:
    """The validator of a field that is one text in bench spelling, read by `read(text, measures)`."""

    def validate(value: Any, info: ValidationInfo) -> Any:
        return read(text_of(value), measures_in(info))

    return PlainValidator(validate, json_schema_input_type=str)


def measures_in(info: ValidationInfo) -> Measures:
    """The house's cup and spoons, from the validation context."""
    measures: Measures = (info.context or {}).get("measures", METRIC)
    return measures


def text_of(value: Any) -> str:
    """`value` as one non-empty text, or a Misread that says what stands there instead."""
    if value is None:
        raise Misread("nothing is written here", "write a value, or leave the key out", 0, 0)
    if isinstance(value, Mapping):
        raise Misread("a group of keys stands where one text belongs", _colon_hint(value), 0, 0)
    if isinstance(value, list):
        raise Misread("a list stands where one text belongs", "write one value, without dashes or brackets", 0, 0)
    return str(value).strip()


def _colon_hint(value: Mapping[Any, Any]) -> str:
    return 'a text with ": " in it needs quotes round it' if len(value) == 1 else "write one value"


def yes_or_no(text: str, _: Measures) -> bool:
    """`yes` or `no`; nothing else, so that a slip is seen."""
    answer = {"yes": True, "no": False, "true": True, "false": False}.get(text.lower())
    if answer is None:
        raise Misread(f'"{text}" is neither yes nor no', "write yes or no", 0, len(text))
    return answer


def one_of(*words: str) -> PlainValidator:
    """A text that must be one of `words`."""

    def read(text: str, _: Measures) -> str:
        if text in words:
            return text
        known = nearest(text, words)
        hint = f'did you mean "{known}"?' if known else "write one of: " + ", ".join(words)
        raise Misread(f'"{text}" is not known here', hint, 0, len(text))

    return spelled(read)


def whole_number(low: int, high: int) -> PlainValidator:
    """A whole number from `low` to `high`, written in digits."""

    def read(text: str, _: Measures) -> int:
        if text.isascii() and text.isdigit() and len(text) < 7 and low <= int(text) <= high:
            return int(text)
        raise Misread(f'"{text}" is not a whole number from {low} to {high}', "write digits, such as 2", 0, len(text))

    return spelled(read)


Text = Annotated[str, spelled(lambda text, _: _not_empty(text))]
YesNo = Annotated[bool, spelled(yes_or_no)]


def _not_empty(text: str) -> str:
    if not text:
        raise Misread("the text is empty", "write something, or leave the key out", 0, 0)
    return text


ONE_OR_MORE = BeforeValidator(lambda value: value if isinstance(value, list) else [value])
"""Before a list: one text counts as a list of one."""
Texts = Annotated[tuple[Text, ...], ONE_OR_MORE]


def _private(value: Any, info: ValidationInfo) -> bool | tuple[str, ...]:
    if isinstance(value, list):
        return tuple(_not_empty(text_of(each)) for each in value)
    return yes_or_no(text_of(value), METRIC)


Private = Annotated[bool | tuple[str, ...], PlainValidator(_private)]


def read_model(cls: type[M], data: Any, what: str, measures: Measures = METRIC) -> tuple[M | None, tuple[Flaw, ...]]:
    """Read `data` (plain dicts, lists, texts) as `cls`; `what` names it in messages ("a mixture").

    Returns the model, or None and all flaws found in it. A key with nothing after it is a flaw.
    """
    if not isinstance(data, Mapping):
        return None, (Flaw("shape", (), f"{what} is written as keys and values", 'such as "name: Lemon sponge"'),)
    empties = tuple(_empties(data, ()))
    try:
        model = cls.model_validate(data, context={"measures": measures})
    except ValidationError as error:
        empty_at = {flaw.path for flaw in empties}
        found = (_flaw(cls, each, what) for each in error.errors(include_url=False))
        flaws = (replace(flaw, path=_written(data, flaw.path)) for flaw in found)
        return None, empties + tuple(flaw for flaw in flaws if flaw.path not in empty_at)
    return (None, empties) if empties else (model, ())


def _written(data: Any, path: Path) -> Path:
    """`path` as far as the data goes: a short form has no keys of its own, one text is no list."""
    for depth, step in enumerate(path):
        here = step in data if isinstance(data, Mapping) else isinstance(data, list) and isinstance(step, int)
        if not here:
            return path[:depth]
        data = data[step]
    return path


def _empties(data: Any, path: Path) -> Iterator[Flaw]:
    """A flaw for each key or dash with nothing after it."""
    pairs = data.items() if isinstance(data, Mapping) else enumerate(data) if isinstance(data, list) else ()
    for key, value in pairs:
        if value is None:
            yield Flaw("empty", (*path, key), "nothing is written here", "write a value, or leave the key out")
        else:
            yield from _empties(value, (*path, key))


def _flaw(cls: type[Leaf], error: Any, what: str) -> Flaw:
    path: Path = tuple(error["loc"])
    kind: str = error["type"]
    if kind == "extra_forbidden":
        return _unknown_key(cls, path, what)
    if kind == "missing":
        return Flaw("missing", path[:-1], f'{_inside(path, what)} has no "{path[-1]}"', f'add "{path[-1]}: ..."')
    cause = error.get("ctx", {}).get("error")
    if isinstance(cause, Misread):
        spans = (cause.start, cause.end) if cause.end > cause.start else (None, None)
        return Flaw("value", path, cause.message, cause.hint, False, *spans)
    if kind in ("tuple_type", "list_type"):
        return Flaw("shape", path, "a list belongs here", "start each line of it with a dash")
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        return Flaw("shape", path, "keys and values belong here", f'such as "{_first_key(cls, path)}: ..."')
    return Flaw("value", path, f"this cannot be read: {error['msg']}", "compare it with another file of the book")


def _unknown_key(cls: type[Leaf], path: Path, what: str) -> Flaw:
    known = _keys_at(cls, path[:-1])
    close = nearest(str(path[-1]), known)
    hint = f'did you mean "{close}"?' if close else "known here: " + ", ".join(known)
    return Flaw("unknown key", path, f'unknown key "{path[-1]}" in {_inside(path, what)}', hint, on_key=True)


def _inside(path: Path, what: str) -> str:
    """The thing the last key of `path` stands in, in words."""
    names = [part for part in path[:-1] if isinstance(part, str)]
    return f'"{names[-1]}"' if names else what


def _model_at(cls: type[Leaf], path: Path) -> type[Leaf] | None:
    """The model found when following `path` down from `cls`, through lists and maps of models."""
    here: type[Leaf] | None = cls
    for part in path:
        if here is None:
            return None
        for name, field in here.model_fields.items():
            if part == (field.alias or name):
                here = _model_in(field.annotation)
                break
    return here


def _model_in(annotation: Any) -> type[Leaf] | None:
    if isinstance(annotation, type) and issubclass(annotation, Leaf):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        found = _model_in(inner)
        if found:
            return found
    return None


def _keys_at(cls: type[Leaf], path: Path) -> list[str]:
    model = _model_at(cls, path) or cls
    return [field.alias or name for name, field in model.model_fields.items()]


def _first_key(cls: type[Leaf], path: Path) -> str:
    return _keys_at(cls, path)[0]
