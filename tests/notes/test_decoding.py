"""Bytes of a note: the encodings machines write, told by their marks or their looks; pictures are none of them."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.notes import NotText, decoded

TEXT = "250 g butter – “soft”\n½ tsp salt, café style\n"


@every("name", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_a_note_in_any_of_them(name: str) -> None:
    assert decoded(TEXT.encode(name)) == TEXT


def test_with_a_mark_of_the_other_order() -> None:
    assert decoded(b"\xfe\xff" + TEXT.encode("utf-16-be")) == TEXT


@pytest.mark.parametrize(
    "raw",
    [b"\xff\xd8\xff\xe0\x00\x80", b"\x89PNG\r\n\x1a\n\x00\x00", b"\xff\xfe2", bytes(range(128, 256)), b"\x81\x8d abc"],
    ids=["photo", "picture", "half a sign", "no words", "no sign of Windows"],
)
def test_what_is_no_text(raw: bytes) -> None:
    with pytest.raises(NotText):
        decoded(raw)


def test_nothing_is_a_text() -> None:
    assert decoded(b"") == ""
