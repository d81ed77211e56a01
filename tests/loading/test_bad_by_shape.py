"""Of the bad sources, an editor with our JSON Schema sees those that are wrong by shape, and says nothing wrong of the rest.

jsonschema reads the schema and judges; what a slip is, is known by its code from the book's own reader.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jsonschema import Draft202012Validator
from tests.every import every
from tests.loading.conftest import BAD, CASES, Told, case

from tinbook.models.json_schema import schema_of
from tinbook.models.register import kinds
from tinbook.source import read_yaml

KINDS = {"mixtures": "mixture", "techniques": "technique", "cakes": "cake"}
BY_SHAPE = frozenset(("unknown key", "missing", "shape", "empty"))
"""A key that is not known or not there, a list or a group for a text or the other way round, nothing written."""
NOT_BY_SHAPE = {
    "value": "its spelling looks right; what it amounts to takes reading",
    "whose": "whether a cup has an owner stands in house.yaml",
    "unknown word": "which words are known stands in the facts of the package",
    "unknown ingredient": "which cards there are stands in ingredients.yaml",
    "no such file": "which files there are stands in the folder",
    "no picture": "which pictures there are stands in the folder",
    "picture": "what kinds of picture can be shown is no matter of the text",
    "outside": "a path is a text like another",
    "private": "which keys may be held back depends on what the rest needs",
    "tins or makes": "one key against another",
    "no tins": "one key against another",
    "finish": "a sum over several keys",
    "measure": "a sum over a tin and what it holds",
    "too deep": "a sum over batter and tins",
    "too much": "a sum over batter and tins",
    "parts": "a sum over the sizes of a part, or one key against another",
    "repeats": "a part against the marks on it",
    "support": "a sum over a part and what holds it",
    "paste": "a sum over parts and materials",
    "additives": "which additives colour food stands in the facts of the package",
    "unknown colour": "which colours there are stands in colours.yaml",
    "unknown paste": "which mixtures there are stands in the folder",
    "step": "which names a step may mark stands in the mix",
    "used": "a sum over a cake and what it took",
    "wild entry": "a sum over a bake: sizes, weights or minutes that do not go together",
    "not baked": "what is baked is told by the kind of mixture",
    "no batter": "one key against another",
    "too cool": "an oven against a cake's centre, and against its own dial",
    "no weight": "what an ingredient weighs stands on its card",
    "twice": "two names against each other, or two keys",
    "travels": "one key against another: its tiers, and how they stand",
    "tiers": "one tier against another, or a sum over its tin and its layers",
    "mixture": "what a mixture is made in stands in its own file",
    "board": "one key against another, or a sum over the cake on it",
    "decorations": "which techniques have parts stands in their files",
    "sizes": "as many tiers as the cake has",
    "made with": "what a mixture may be stands in its own file",
    "circle": "what starts from what stands in the folder",
    "stray file": "which folder a file is in is no matter of its text",
    "name": "a space before a name is gone once the file is data",
    "duplicate": "a name written twice is gone once the file is data",
    "anchor": "a mark of YAML is gone once the file is data",
    "tag": "a mark of YAML is gone once the file is data",
}
"""By the code of the slip: why an editor does not see it."""
APART = {
    "ingredients/empty-list-of-allergens": "a list is right there, but nobody knows what an empty one means",
    "finish/made-with-a-cake": "what a mixture may be depends on its own file",
    "mixtures/empty-mix": "a variation leaves its mix to its base, so a list may be empty",
    "mixtures/no-bake": "one key against another: what is made by weight has no bake",
    "tins/outline-without-a-name": "whether a tin needs a name depends on its words",
    "tins/measured-without-depth": "the depth is a part of the tin's words, not a key",
}
"""Slips with a code of shape that are none."""


@cache
def judge(kind: str) -> Draft202012Validator:
    """The schema of that kind of file, ready to judge."""
    return Draft202012Validator(schema_of(kind))


@every("path", CASES, ids=case)
def test_what_is_wrong_by_shape_is_seen(path: Path, told: Told) -> None:
    kind = path.parent.name
    document, problems = read_yaml(path.read_bytes(), path.name)
    if document is None:
        assert problems, "what is no YAML at all an editor tells by itself"
        return
    codes = {problem.code for problem in told(path, True).problems}
    seen = not judge(KINDS.get(kind, kind)).is_valid(document.data)
    if codes & BY_SHAPE and case(path) not in APART:
        assert seen
    elif not seen:
        assert case(path) in APART or codes <= set(NOT_BY_SHAPE), codes


def test_the_reasons_are_all_needed() -> None:
    """A code or a case that an editor does see needs no reason."""
    assert {path.parent.name for path in CASES} <= {*KINDS, *kinds()}
    assert set(APART) <= {case(path) for path in CASES}
    for name in APART:
        path = BAD / f"{name}.yaml"
        document, _ = read_yaml(path.read_bytes(), path.name)
        assert document is not None
        kind = path.parent.name
        assert judge(KINDS.get(kind, kind)).is_valid(document.data), name
