"""Pictures that go along: with their steps or by themselves, and none of them asks for anything."""

from __future__ import annotations

import base64
from collections.abc import Callable
from dataclasses import replace

from tinbook.models import PictureFile
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.sheet_file import picture_files
from tinbook.pages.technique.sheet_pictures import LETTERS, data_address, shown_pictures


def test_pictures_stand_with_their_steps(sheet_desk: Callable[..., Desk], quay: PictureFile) -> None:
    sheet = sheet_of("set-dowels", sheet_desk())
    assert [[picture.alt for picture in step.pictures] for step in sheet.steps] == [[], ["A lamp."]]
    assert [(picture.alt, picture.caption) for picture in sheet.pictures] == [("A quay.", "Low water.")]
    files = picture_files(sheet)
    assert list(files) == ["step-2-1.svg", "picture-1.jpg"]
    assert files["picture-1.jpg"] == quay.copies[0].content
    held = sheet_desk()
    held = replace(held, book=replace(held.book, pictures={}))
    assert picture_files(sheet_of("set-dowels", held)) == {}


def test_a_photo_is_inside_and_a_drawing_has_the_letters_of_the_book(sheet_desk: Callable[..., Desk]) -> None:
    book = sheet_desk().book
    lamp, quay = shown_pictures(book.techniques["set-dowels"].pictures, book.pictures, "it")
    assert (lamp.name, quay.name) == ("it-1.svg", "it-2.jpg")
    assert f'font-family="{LETTERS}"'.encode() in lamp.content and LETTERS not in lamp.element
    assert f'src="{data_address("image/jpeg", quay.content)}"' in quay.element and 'alt="A quay."' in quay.element


def test_an_address_holds_its_content() -> None:
    """RFC 2397: data:, the kind, ;base64, and the content."""
    head, _, content = data_address("font/woff2", b"wOF2").partition(",")
    assert head == "data:font/woff2;base64" and base64.b64decode(content) == b"wOF2"
