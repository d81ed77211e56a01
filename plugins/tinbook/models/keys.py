"""What each key in the book's files means, from the models: for the reference pages and for editors.

The words are the docstring under a field, in plain British English with `code` for what is written. What happens if a
key is left out follows from its field's default, or is at the end of the docstring after "Left out:". The examples
are those in `such_as`. Nothing here depends on the name of a key.
"""

from __future__ import annotations

import ast
import inspect
import sys
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from typing import Any

from pydantic import BaseModel, PlainValidator
from pydantic.fields import FieldInfo

from tinbook.models.reading import ReadAs, Written
from tinbook.source import read_yaml

LEFT_OUT = "Left out:"
BY_ITS_KEYS = "see its own keys."
"""What to say if a group that always exists is left out as a whole."""
IN_A_LIST = "- "
"""How an example starts if it is lines of a list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyWords:
    """One key as written, and what is said about it.

    `default` is what the model uses instead, as it would be written; `left_out` says in words what happens if there is
    no such value; both are empty for a key that is `required`. `choices` are all the texts it may be, if there are few;
    `inside` is the model of the groups written there; `readers` are what reads its texts.
    """

    name: str
    meaning: str
    left_out: str
    default: str
    required: bool
    examples: tuple[str, ...]
    choices: tuple[str, ...]
    inside: type[Written] | None
    readers: tuple[object, ...] = field(repr=False)
    # functions, which are written out differently in each process

    @property
    def written(self) -> tuple[str, ...]:
        """Its examples as lines of a file."""
        return tuple(as_lines(self.name, example) for example in self.examples)

    @property
    def values(self) -> tuple[Any, ...]:
        """Its examples as plain data, every text a text."""
        return tuple(value_of(example) for example in self.examples)

    @property
    def described(self) -> str:
        """Everything said about it in words, in one paragraph."""
        return f"{self.meaning} {LEFT_OUT} {self.left_out}" if self.left_out else self.meaning


def as_lines(name: str, example: str) -> str:
    """A key with an example after it, or below it if the example is lines of a list or a group."""
    if "\n" in example or example.startswith(IN_A_LIST):
        return "\n".join((f"{name}:", *(f"  {line}" for line in example.splitlines())))
    return f"{name}: {example}"


def value_of(example: str) -> Any:
    """An example as plain data. ValueError if it is not valid YAML."""
    document, problems = read_yaml(as_lines("key", example).encode(), "example")
    if document is None or problems:
        raise ValueError(f"this is not valid YAML: {example}")
    return document.data["key"]


def lead_of(model: type[Written]) -> str:
    """What a group of keys is, in a sentence or two: the first paragraph of its docstring."""
    return " ".join((model.__doc__ or "").partition("\n\n")[0].split())


@lru_cache(maxsize=256)
def keys_of(model: type[Written], *, own: bool = False) -> tuple[KeyWords, ...]:
    """Every key of a model, in the order of its fields; `own`: only those it declares itself, not those it
    inherits."""
    names = [name for name in model.model_fields if not own or name in model.__annotations__]
    said = {name: text for each in reversed(model.__mro__) for name, text in _said_in(each).items()}
    return tuple(_key(name, model.model_fields[name], said.get(name, "")) for name in names)


def _said_in(model: type) -> Mapping[str, str]:
    """The docstrings under a model's own fields. Pydantic would look for them every time Python starts, which takes as
    long as everything else it does then."""
    return _said_by(model.__module__).get(model.__name__, {}) if issubclass(model, Written) else {}


@lru_cache(maxsize=64)
def _said_by(module: str) -> Mapping[str, Mapping[str, str]]:
    """The docstrings under the fields of each class in a module."""
    tree = ast.parse(inspect.getsource(sys.modules[module]))
    return {each.name: dict(_under(each.body)) for each in tree.body if isinstance(each, ast.ClassDef)}


def _under(body: list[ast.stmt]) -> Iterator[tuple[str, str]]:
    for key, text in pairwise(body):
        match key, text:
            case ast.AnnAssign(target=ast.Name(id=name)), ast.Expr(value=ast.Constant(value=str(said))):
                yield name, said


def _key(name: str, field: FieldInfo, said: str) -> KeyWords:
    meaning, _, left_out = " ".join(said.split()).partition(LEFT_OUT)
    read = tuple(readers(field))
    return KeyWords(
        name=field.alias or name,
        meaning=meaning.strip(),
        left_out=left_out.strip() or (BY_ITS_KEYS if isinstance(field.default, BaseModel) else ""),
        default="" if field.is_required() else _as_written(field.default, read),
        required=field.is_required(),
        examples=tuple(str(example) for example in field.examples or ()),
        choices=_choices(read),
        inside=next(iter(_groups(field.annotation)), None),
        readers=read,
    )


def _as_written(default: Any, read: Iterable[object]) -> str:
    """A default as a baker would write it; empty if there is none, and for a group, whose keys have their own."""
    if isinstance(default, bool):
        return "yes" if default else "no"
    if isinstance(default, float):
        unit = next(reader.unit for reader in read if isinstance(reader, ReadAs) and reader.unit)
        return f"{default:g} {unit}"
    return "" if default is None or isinstance(default, (tuple, Mapping, BaseModel)) else str(default)


def _choices(read: Iterable[object]) -> tuple[str, ...]:
    enums = (reader.like.get("enum", ()) for reader in read if isinstance(reader, ReadAs))
    return tuple(dict.fromkeys(str(choice) for enum in enums for choice in enum))


def readers(field: FieldInfo) -> Iterator[object]:
    """What reads the texts in a field: its own, or those in its list or group of names."""
    yield from (each for each in field.metadata if isinstance(each, (ReadAs, PlainValidator)))
    yield from readers_in(field.annotation)


def readers_in(annotation: Any) -> Iterator[object]:
    """The same, for an annotated type."""
    yield from (each for each in getattr(annotation, "__metadata__", ()) if isinstance(each, (ReadAs, PlainValidator)))
    for inner in (getattr(annotation, "__origin__", None), *getattr(annotation, "__args__", ())):
        if inner is not None and not isinstance(inner, (str, type)):
            yield from readers_in(inner)


def _groups(annotation: Any) -> Iterator[type[Written]]:
    """The models in a type."""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        yield annotation
    for inner in getattr(annotation, "__args__", ()):
        yield from _groups(inner)


def groups_below(model: type[Written]) -> tuple[type[Written], ...]:
    """A model and all the models in it, each before those inside it."""
    found: dict[type[Written], None] = {model: None}
    for key in keys_of(model):
        if key.inside is not None and key.inside not in found:
            found |= dict.fromkeys(groups_below(key.inside))
    return tuple(found)


def minimal(model: type[Written]) -> dict[str, Any]:
    """The keys that must be there, each with its first example: the least the model accepts."""
    return {key.name: key.values[0] for key in keys_of(model) if key.required}
