"""What pydantic complains about, in words for a baker: each slip reported once, with what to write instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from pydantic import ValidationError
from pydantic.fields import FieldInfo

from tinbook.models.reading import TEXT, Flaw, M, Path, Written, WrittenLine
from tinbook.problems import nearest
from tinbook.tins import Tin
from tinbook.units import METRIC, Measures, Misread, Whose

NO_TINS: Mapping[str, Tin] = {}


def read_model(
    cls: type[M], data: Any, what: str, measures: Measures = METRIC, tins: Mapping[str, Tin] = NO_TINS
) -> tuple[M | None, tuple[Flaw, ...]]:
    """Read `data` (plain dicts, lists, texts) as `cls`; `what` names it in messages ("this mixture").

    `tins` are those the house has given names to. Returns the model, or None and every flaw found in it. A key with
    nothing after it is a flaw.
    """
    if not isinstance(data, Mapping):
        keys = _keys_at(cls, ())
        leading = [key for key in keys if _is_needed(cls, key)] or keys
        key = next((key for key in leading if _example(cls, (key,))), keys[0])
        return None, (
            Flaw(
                code="shape",
                path=(),
                message=f"{what} must be set out as lines of name: value",
                hint=f"write it like {_cure(cls, (key,))}",
            ),
        )
    empties = tuple(_empties(cls, data, ()))
    try:
        model = cls.model_validate(data, context={"measures": measures, "tins": tins})
    except ValidationError as error:
        faults = _Faults(cls, data, what, error.errors(include_url=False))
        return None, empties + tuple(faults.flaws({flaw.path for flaw in empties}))
    return (None, empties) if empties else (model, ())


def _empties(cls: type[Written], data: Any, path: Path) -> Iterator[Flaw]:
    """A flaw for each key or dash with nothing after it."""
    for key, value in data.items() if isinstance(data, dict) else enumerate(data):
        here = (*path, key)
        if value is not None:
            if isinstance(value, (dict, list)):
                yield from _empties(cls, value, here)
            continue
        field = _field_at(cls, here)
        hint = "write a value, or leave the key out"
        if isinstance(key, int):
            hint = "write something after the dash, or take the dash out"
        elif field is not None and field.is_required():
            hint = f"write {_cure(cls, here)}"
        yield Flaw(code="empty", path=here, message="nothing is written here", hint=hint)


def _near(key: str, known: Iterable[str]) -> str | None:
    """The key that was probably meant. Keys are few and short, so only a very close match counts."""
    return nearest(key, known, 0.7)


class _Faults:
    """All errors of one tree."""

    def __init__(self, cls: type[Written], data: Any, what: str, errors: list[Any]) -> None:
        self.cls, self.data, self.what, self.errors = cls, data, what, errors
        self.keys: dict[str, dict[Path, list[str]]] = {"missing": {}, "extra_forbidden": {}}
        for error in errors:
            if error["type"] in self.keys:
                *above, key = error["loc"]
                self.keys[error["type"]].setdefault(tuple(above), []).append(str(key))

    def flaws(self, empty: set[Path]) -> Iterator[Flaw]:
        """A flaw for each error, except those that only follow from another, or from what is `empty`."""
        for error in self.errors:
            path: Path = tuple(error["loc"])
            if not any(path[:end] in empty for end in range(1, len(path) + 1)) and not self._follows(error, path):
                flaw = self._flaw(error, path)
                yield replace(flaw, path=_written(self.data, flaw.path))

    def _follows(self, error: Any, path: Path) -> bool:
        """Whether a key is missing only because it is misspelled, or unknown because the whole group is something
        else."""
        if error["type"] not in self.keys:
            return False
        missing, unknown = (of.get(path[:-1], []) for of in self.keys.values())
        meant = {_near(key, _keys_at(self.cls, path[:-1])) for key in unknown}
        if error["type"] == "missing":
            return path[-1] in meant
        return bool(missing) and meant.isdisjoint(missing) and len(unknown) == len(_at(self.data, path[:-1]))

    def _flaw(self, error: Any, path: Path) -> Flaw:
        kind: str = error["type"]
        if kind == "extra_forbidden":
            return self._unknown_key(path)
        if kind == "missing":
            return self._missing_key(path)
        cause = error.get("ctx", {}).get("error")
        if isinstance(cause, Misread):
            return self._misread(cause, path)
        if kind in ("tuple_type", "list_type"):
            line = _example(self.cls, path)
            how = f"such as {_quoted(line)}" if line.startswith("- ") else 'starting with "- "'
            return Flaw(
                code="shape", path=path, message="this should be a list", hint=f"put each item on its own line, {how}"
            )
        if kind in ("model_type", "model_attributes_type", "dict_type", "mapping_type"):
            return Flaw(
                code="shape",
                path=path,
                message="each line here needs a name, a colon and a value",
                hint=f"write {_cure(self.cls, path)}",
            )
        return Flaw(
            code="value",
            path=path,
            message=f"this cannot be read: {error['msg']}",
            hint="compare it with another file in the book",
        )

    def _misread(self, cause: Misread, path: Path) -> Flaw:
        code = "whose" if isinstance(cause, Whose) else "value"
        hint = cause.hint or f"write {_cure(self.cls, path)}"
        if cause.end <= cause.start:
            return Flaw(code=code, path=path, message=cause.message, hint=hint)
        written = _at(self.data, path)
        indent = len(written) - len(written.lstrip()) if isinstance(written, str) else 0
        return Flaw(
            code=code,
            path=path,
            message=cause.message,
            hint=hint,
            on_key=False,
            start=cause.start + indent,
            end=cause.end + indent,
        )

    def _unknown_key(self, path: Path) -> Flaw:
        known = _keys_at(self.cls, path[:-1])
        close = _near(str(path[-1]), known)
        hint = f'did you mean "{close}"?' if close else "choose from: " + ", ".join(known)
        inside = self._inside(path)
        return Flaw(
            code="unknown key",
            path=path,
            message=f'unknown key "{path[-1]}" {"on" if inside.startswith("the card ") else "in"} {inside}',
            hint=hint,
            on_key=True,
        )

    def _missing_key(self, path: Path) -> Flaw:
        above = path[:-1]
        model, written = _model_at(self.cls, above), _at(self.data, above)
        unknown = self.keys["extra_forbidden"].get(above, [])
        if model and issubclass(model, WrittenLine) and len(unknown) == len(written) == 1:
            # `- butter: 250 g`, or a sentence with a colon in it
            field = _field_at(self.cls, path)
            example = "" if field is not None and TEXT in field.metadata else _example(self.cls, path)
            hint = f'write it like "- {example}"' if example else "put quotes round the whole line"
            return Flaw(
                code="shape", path=(*above, *written), message='a ":" cuts this line in two', hint=hint, on_key=True
            )
        return Flaw(
            code="missing",
            path=above,
            message=f'{self._inside(path)} has no "{path[-1]}"',
            hint=f"add {_cure(self.cls, path)}",
        )

    def _inside(self, path: Path) -> str:
        """What the last key of `path` is in, in words."""
        names = [part for part in path[:-1] if isinstance(part, str)]
        if not names:
            return self.what
        return f'a line under "{names[-1]}"' if isinstance(path[-2], int) else f'"{names[-1]}"'


def _written(data: Any, path: Path) -> Path:
    """`path` as far as the data goes: a short form has no keys of its own, and one text is not a list."""
    for depth, step in enumerate(path):
        here = step in data if isinstance(data, Mapping) else isinstance(data, list) and isinstance(step, int)
        if not here:
            return path[:depth]
        data = data[step]
    return path


def _at(data: Any, path: Path) -> Any:
    """What is at `path`, or at the last part of it that is written."""
    for step in _written(data, path):
        data = data[step]
    return data


def _field_at(cls: type[Written], path: Path) -> FieldInfo | None:
    """The field that `path` leads to from `cls`; for a line of a list, the list's field."""
    here: type[Written] | None = cls
    found = None
    for key in (part for part in path if isinstance(part, str)):
        fields = {field.alias or name: field for name, field in here.model_fields.items()} if here else {}
        found = fields.get(key)
        here = _model_in(found.annotation) if found else None
    return found


def _model_at(cls: type[Written], path: Path) -> type[Written] | None:
    """The model that `path` leads to from `cls`."""
    if not any(isinstance(part, str) for part in path):
        return cls
    field = _field_at(cls, path)
    return _model_in(field.annotation) if field else None


def _model_in(annotation: Any) -> type[Written] | None:
    if isinstance(annotation, type) and issubclass(annotation, Written):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        found = _model_in(inner)
        if found:
            return found
    return None


def _is_needed(cls: type[Written], key: str) -> bool:
    field = _field_at(cls, (key,))
    return key in cls.needed or (field is not None and field.is_required())


def _keys_at(cls: type[Written], path: Path) -> list[str]:
    model = _model_at(cls, path) or cls
    return [field.alias or name for name, field in model.model_fields.items()]


def _example(cls: type[Written], path: Path) -> str:
    field = _field_at(cls, path)
    return str(field.examples[0]) if field and field.examples else ""


def _cure(cls: type[Written], path: Path) -> str:
    """What to write at `path`, with its key: `"kind: creamed"`; of an entry in a list, the entry alone: `"E129"`."""
    keys = [part for part in path if isinstance(part, str)]
    example = _example(cls, path)
    if not keys or (isinstance(path[-1], int) and not example):
        return "one text"
    if example.startswith("[") and isinstance(path[-1], int):
        return _quoted(example.strip("[]").partition(", ")[0])
    if example.startswith("- "):
        return f'"{keys[-1]}:" and under it lines such as {_quoted(example)}'
    return _quoted(f"{keys[-1]}: {example or '...'}")


def _quoted(example: str) -> str:
    """The first line of an example in quotes; one that has quotes of its own stands without, to be copied as it is."""
    line = example.partition("\n")[0]
    return line if '"' in line else f'"{line}"'
