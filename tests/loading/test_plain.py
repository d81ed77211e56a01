"""A file read by its model alone: in each way it may be merged, sound, with a slip, and missing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tinbook.loading.intake import Intake
from tinbook.loading.plain import read_plain
from tinbook.models.reading import Private, Text, Written
from tinbook.models.register import Merged, SeenBy, SourceKind

Write = Callable[..., Path]


class Shell(Written):
    """One shell."""

    shell: Text
    note: Text | None = None


class Shells(Written):
    """A list of them, or the same by name."""

    shells: tuple[Shell, ...] = ()
    named: Mapping[str, Shell] = {}
    private: Private = False


LIST = SourceKind(
    name="shells", model=Shells, path="house/tins.yaml", merged=Merged.LIST, seen_by=SeenBy.KITCHEN, key="shells",
    entry=Shell,
)  # fmt: skip
CARDS = replace(LIST, merged=Merged.CARDS, key="named")
WHOLE = replace(LIST, model=Shell, merged=Merged.WHOLE, key="", entry=None, blank=Shell(shell="none"))
FOLDER = replace(WHOLE, path="mixtures/*.yaml", merged=Merged.FOLDER, blank=None)


def read(write: Write, kind: SourceKind, text: str) -> tuple[Any, int]:
    """What is read of a file of that kind, and how many problems are told."""
    path = kind.path.replace("*", "plain-sponge")
    intake = Intake(write({path: text}))
    return read_plain(intake, kind), len(intake.problems)


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        (LIST, "shells: [{shell: cockle}, {shell: whelk}]", (Shell(shell="cockle"), Shell(shell="whelk"))),
        (CARDS, "named: {a: {shell: cockle}}", {"a": Shell(shell="cockle")}),
        (WHOLE, "shell: cockle", Shell(shell="cockle")),
        (FOLDER, "shell: cockle", {"plain-sponge": Shell(shell="cockle")}),
    ],
    ids=["list", "cards", "whole", "folder"],
)
def test_what_is_sound(write: Write, kind: SourceKind, text: str, value: Any) -> None:
    assert read(write, kind, text) == (value, 0)


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (WHOLE, "shel: cockle"), (FOLDER, "note: cockle"), (LIST, "shells: ["), (WHOLE, "- cockle"),
        (LIST, "shells: [{shell: cockle}]\nshells: []"), (CARDS, "named: {a: {shell: cockle}, a: {shell: whelk}}"),
    ],
    ids=["whole", "folder", "unreadable", "no keys", "a list twice", "a name twice"],
)  # fmt: skip
def test_of_a_file_that_cannot_be_trusted_there_is_nothing(write: Write, kind: SourceKind, text: str) -> None:
    value, problems = read(write, kind, text)
    assert value == kind.nothing
    assert problems


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        (LIST, "shells: [{shell: cockle}, {shel: whelk}]", (Shell(shell="cockle"),)),
        (CARDS, "named: {a: {shell: cockle}, b: {note: x}}", {"a": Shell(shell="cockle")}),
    ],
    ids=["list", "cards"],
)
def test_an_entry_with_a_slip_leaves_the_others(write: Write, kind: SourceKind, text: str, value: Any) -> None:
    assert read(write, kind, text) == (value, 1)


@pytest.mark.parametrize("kind", [LIST, CARDS, WHOLE, FOLDER], ids=["list", "cards", "whole", "folder"])
def test_where_there_is_no_file_there_is_nothing(write: Write, kind: SourceKind) -> None:
    intake = Intake(write({kind.path.replace("*", "plain-sponge"): None}))
    assert read_plain(intake, kind) == kind.nothing
    assert not intake.problems
