"""Letters of parts in steps."""

from __future__ import annotations

from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.lettered import lettered
from tinbook.pages.technique.view import TechniqueView

LETTERS = {"tower": "A", "band": "B", "door": "F"}


@every(
    ("text", "said", "letters"),
    [
        ("Stand the tower up.", "Stand the tower A up.", ["A"]),
        ("Cut two bands. Damp the bands.", "Cut two bands B. Damp the bands.", ["B"]),
        ("Roll A, the tower, and leave it.", "Roll A, the tower, and leave it.", ["A"]),
        ("A fingertip cannot move it. A hand can.", "A fingertip cannot move it. A hand can.", []),
        ("B and the doors go on.", "B and the doors F go on.", ["B", "F"]),
        ("Towering bandages.", "Towering bandages.", []),
    ],
)
def test_a_letter_stands_once_where_a_part_is_named(text: str, said: str, letters: list[str]) -> None:
    pieces = lettered(text, LETTERS)
    assert "".join(piece for piece, _ in pieces) == said
    assert [piece for piece, is_letter in pieces if is_letter] == letters


def test_what_stands_in_a_piece_before_is_not_said_again() -> None:
    assert lettered("the tower", LETTERS, ["A"]) == (("the tower", False),)


def test_letters_of_the_steps_are_those_of_the_table(demo: Loaded) -> None:
    seen = 0
    for slug, technique in demo.book.techniques.items():
        view = TechniqueView(slug=slug, technique=technique, desk=Desk(demo.book, demo.facts, {}))
        known = set(view.parts.letters.values()) if view.parts else set()
        found = [piece.text for step in view.steps for piece in step.pieces if piece.letter]
        assert set(found) <= known, slug
        seen += len(found)
    assert seen > 20
