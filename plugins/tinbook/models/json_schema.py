"""JSON Schema (draft 2020-12) of what a baker writes, for editors that complete and check it as it is typed.

It is made from the models, so it knows every key they know. It is strict about what can be told from a text alone:
keys, lists and groups, words of a fixed choice, the spelling of amounts. Anything that depends on the rest of the book
is left to the reader.
"""

from __future__ import annotations

from typing import Any, TypeVar

from pydantic.json_schema import models_json_schema

from tinbook.models.cards import Larder
from tinbook.models.keys import KeyWords, keys_of, lead_of
from tinbook.models.reading import Written, WrittenLine
from tinbook.models.register import VARIATIONS, kinds

Schema = dict[str, Any]
W = TypeVar("W", bound=Written)
DRAFT = "https://json-schema.org/draft/2020-12/schema"


def schema_of(name: str) -> Schema:
    """The schema of one kind of file, by its name in the register."""
    model = kinds()[name].model
    variation = VARIATIONS.get(model)
    roots = (model, variation) if variation else (model,)
    _, made = models_json_schema([(root, "validation") for root in roots], by_alias=True)
    defs = {key: _tidy(schema) for key, schema in sorted(made["$defs"].items())}
    for group in _below(Written):
        if group.__name__ in defs:
            defs[group.__name__]["description"] = lead_of(group)
            told = defs[group.__name__]["properties"]
            told |= {key.name: _said(told[key.name], key) for key in keys_of(group)}
    for line in _below(WrittenLine):
        if line.__name__ in defs:
            defs[line.__name__] = _short_too(defs[line.__name__], line.chief)
    if model is Larder:
        cards = defs["Larder"]["properties"]["ingredients"]
        # a card of which nothing is known yet may stay empty
        cards["additionalProperties"] = {"anyOf": [cards["additionalProperties"], {"type": "null"}]}
    whole: Schema = {"$ref": f"#/$defs/{model.__name__}"}
    if variation:
        whole = {"if": {"required": ["from"]}, "then": {"$ref": f"#/$defs/{variation.__name__}"}, "else": whole}
    shared: Schema = {}
    defs = {key: _share(schema, shared) for key, schema in defs.items()}
    # what a text is read into has a schema too, which nothing here goes by
    groups = {group.__name__ for group in _below(Written)}
    defs = {key: schema for key, schema in defs.items() if key in groups}
    return {"$schema": DRAFT, "title": name, **whole, "$defs": defs | dict(sorted(shared.items()))}


def _below(group: type[W]) -> list[type[W]]:
    """Every model derived from this one."""
    return [each for sub in group.__subclasses__() for each in (sub, *_below(sub))]


def _said(schema: Schema, key: KeyWords) -> Schema:
    """What may be written at a key, with the words from the reference pages."""
    default = {"default": key.default} if key.default else {}
    return {**schema, "description": key.described, **default, "examples": list(key.values)}


def _short_too(schema: Schema, chief: str) -> Schema:
    """A group of keys, or just its main value."""
    return {"anyOf": [schema["properties"][chief], schema]}


def _tidy(schema: Schema) -> Schema:
    """A schema without generated titles and defaults, or anything said about keys elsewhere; a key may be left
    out, but not empty."""
    made: Schema = {}
    for key, value in schema.items():
        if key in ("title", "default", "examples"):
            continue
        if key == "properties":
            made[key] = {name: _tidy(each) for name, each in value.items()}
        elif key in ("items", "additionalProperties") and isinstance(value, dict):
            made[key] = _tidy(value)
        elif key == "anyOf":
            made[key] = [_tidy(each) for each in value if each != {"type": "null"}]
        else:
            made[key] = value
    if len(made.get("anyOf", ())) == 1:
        made = {**made.pop("anyOf")[0], **made}
    return made


def _share(schema: Any, shared: Schema) -> Any:
    """The same, with every spelling that has a name defined once, in `shared`."""
    if isinstance(schema, list):
        return [_share(each, shared) for each in schema]
    if not isinstance(schema, dict):
        return schema
    if "pattern" in schema and "$comment" in schema:
        told = {key: value for key, value in schema.items() if key in ("type", "pattern")}
        shared[schema["$comment"]] = told
        rest = {key: value for key, value in schema.items() if key not in (*told, "$comment")}
        return {"$ref": "#/$defs/" + schema["$comment"].replace(" ", "%20"), **rest}
    return {key: _share(value, shared) for key, value in schema.items()}
