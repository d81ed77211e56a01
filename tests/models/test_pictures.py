"""A picture is a value: it cannot be changed, and shows itself without its bytes."""

from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from tinbook.models import Book, Copy, House, PictureFile


def test_a_picture_stays_as_it_was_read() -> None:
    copy = Copy("quay.1.jpg", 4, 3, b"\xff\xd8cormorant")
    picture = PictureFile(file="quay.jpg", kind="photo", width=4, height=3, copies=(copy,))
    with pytest.raises(FrozenInstanceError):
        picture.svg = "<svg/>"  # type: ignore[misc]
    assert "cormorant" not in repr(picture)


def test_a_book_has_none_unless_given_some() -> None:
    assert Book(house=House(book="1", name="x")).pictures == {}
