"""Colours and cutters of the house: read, held back where they are private, broken once and told once."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tinbook.loading import load_book

COLOURS = 'colours:\n  lamp red: {per 100 g: 2 g gel, swatch: "#B3261E", additives: [E129], about: SECRET}\n'
SAIL = """\
name: Set a sail
purpose: For the front.
steps: [Cut it.]
parts for: round 20 cm
parts:
  - {part: sail, solid: ball 20 mm, paste: butter, colour: lamp red}
"""
Write = Callable[..., Path]


def test_they_are_read(write: Write) -> None:
    files = {
        "house/colours.yaml": COLOURS,
        "house/cutters.yaml": "cutters: [round 40 mm]\n",
        "techniques/sail.yaml": SAIL,
    }
    loaded = load_book(write(files))
    assert not loaded.problems
    assert list(loaded.book.colours) == ["lamp red"]
    assert [each.cutter.form for each in loaded.book.cutters] == ["round"]


@pytest.mark.parametrize("where", ["file", "card"])
def test_what_is_private(write: Write, where: str) -> None:
    private = COLOURS + "private: yes\n" if where == "file" else COLOURS.replace("SECRET}", "SECRET, private: yes}")
    files = {"house/colours.yaml": private, "house/cutters.yaml": "cutters: [round 4 cm]\nprivate: yes\n"}
    assert load_book(write(files), kitchen=False).book.colours == {}
    folder = write({**files, "techniques/sail.yaml": SAIL})
    kept, shown = load_book(folder).book, load_book(folder, kitchen=False).book
    assert kept.colours["lamp red"].about == "SECRET"
    assert kept.techniques["sail"].parts[0].colour == "lamp red"
    # what the law says of it is told, and no more
    assert list(shown.colours) == ["colour 1"] and shown.techniques["sail"].parts[0].colour == "colour 1"
    colour = shown.colours["colour 1"]
    assert (colour.about, colour.per_100_g, colour.additives) == (None, (), ("E129",))
    assert (len(kept.cutters), shown.cutters) == (1, ())


def test_one_private_cutter_stays_in_the_kitchen(write: Write) -> None:
    folder = write({"house/cutters.yaml": "cutters:\n  - round 4 cm\n  - {cutter: round 6 cm, private: yes}\n"})
    assert len(load_book(folder).book.cutters) == 2
    (shown,) = load_book(folder, kitchen=False).book.cutters
    assert shown.cutter.sizes_mm == (40.0,)


@pytest.mark.parametrize(
    "broken",
    [COLOURS.replace("#B3261E", "red"), "colours: [\n", "colours:\n  lamp red:\n", "\x00"],
    ids=["swatch", "list", "empty", "control"],
)
def test_a_broken_colour_is_told_once(write: Write, broken: str) -> None:
    loaded = load_book(write({"house/colours.yaml": broken, "techniques/sail.yaml": SAIL}))
    assert {problem.place.file for problem in loaded.problems} == {"recipes/house/colours.yaml"}
    assert "sail" not in loaded.book.techniques
    assert "techniques/sail" in loaded.broken
