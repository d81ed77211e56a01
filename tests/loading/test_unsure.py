"""Marks of what is unsure: each is a note at its place, and what only looks like one is none."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from tests.every import every

from tinbook.loading import load_book
from tinbook.loading.files import SourceFile
from tinbook.loading.unsure import unsure_lines, unsure_notes

ROOT = Path(__file__).parents[2]


def marks(text: str) -> list[tuple[int, int]]:
    source = SourceFile("mixtures/x", "recipes/mixtures/x.yaml", text.encode())
    return [(note.place.line, note.place.column) for note in unsure_notes([source])]


@every(
    ("text", "found"),
    [
        ("name: x\n# unsure: tins: round 20 cm\n", [(2, 1)]),
        ("mix:\n  - 250 g butter  # unsure: no card for it\n  # unsure: a knob of lard\n", [(2, 19), (3, 3)]),
        ("about: |  # unsure: what stands before the list\n  Words.\nkind: x  # unsure\n", [(1, 11), (3, 10)]),
        ("name: x\r\n#unsure\r\n", [(2, 1)]),
        ('name: "x # unsure: no comment"\n', []),
        ("about: |\n  a line\n  # unsure: words of the text\nname: x\n", []),
        ("about: >-\n  a line\n\n  another\n# unsure: below it\n", [(5, 1)]),
        ("about: 'x\n\n  # unsure: of the text'\nname: x  # unsure\n", [(4, 10)]),
        ("name: x# unsure\n# sure enough\n# I am unsure\n", []),
        ("name: [broken\n# unsure: still told\n", [(2, 1)]),
    ],
)
def test_where_the_marks_are(text: str, found: list[tuple[int, int]]) -> None:
    assert marks(text) == found


def test_lines_by_address() -> None:
    sources = [SourceFile("mixtures/a", "a", b"name: a\n# unsure: x\n"), SourceFile("mixtures/b", "b", b"name: b\n")]
    assert unsure_lines(unsure_notes(sources), sources) == {"mixtures/a": (2,)}


@pytest.fixture
def book_folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(ROOT / "recipes", tmp_path / "recipes"))


def test_a_marked_book_is_sound_and_says_so(book_folder: Path) -> None:
    path = book_folder / "mixtures" / "madeira-cake.yaml"
    path.write_text(path.read_text("utf-8") + "# unsure: is it level?\n", "utf-8")
    for kitchen in (True, False):
        loaded = load_book(book_folder, kitchen=kitchen)
        (note,) = [problem for problem in loaded.problems if problem.code == "unsure"]
        assert note.severity == "note" and loaded.errors == ()
        assert loaded.book.unsure == {"mixtures/madeira-cake": (note.place.line,)}


def test_the_public_book_tells_nothing_of_a_private_file(book_folder: Path) -> None:
    path = book_folder / "mixtures" / "madeira-cake.yaml"
    path.write_text(path.read_text("utf-8") + "private: yes\n# unsure: is it level?\n", "utf-8")
    assert load_book(book_folder, kitchen=False).book.unsure == {}
    assert load_book(book_folder, kitchen=True).book.unsure
