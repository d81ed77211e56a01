"""The bytes of a note as text: UTF-8, UTF-16 by its mark or its pattern, Windows-1252 if nothing rules it out."""

from __future__ import annotations

import codecs

_MARKS = ((codecs.BOM_UTF8, "utf-8"), (codecs.BOM_UTF16_LE, "utf-16-le"), (codecs.BOM_UTF16_BE, "utf-16-be"))
_WIDE = 0.3
"""At least this share of every second byte is 0 in Western text as UTF-16 without a mark."""
_TEXT = frozenset((0x09, 0x0A, 0x0D, *range(0x20, 0x7F), *range(0x80, 0x100)))


class NotText(ValueError):
    """The bytes are not text of any known kind."""


def decoded(raw: bytes) -> str:
    """The text of the bytes of a note. Raises NotText."""
    for mark, name in _MARKS:
        if raw.startswith(mark):
            return _strict(raw[len(mark) :], name)
    if wide := _wide(raw):
        return _strict(raw, wide)
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        pass
    if not all(byte in _TEXT for byte in raw):
        raise NotText("the text is not UTF-8, UTF-16 or Windows-1252")
    text = _strict(raw, "cp1252")
    # in real words, characters from the upper half are few, and stand next to letters
    odd = sum(sign > "\x7f" for sign in text)
    if odd * 4 > len(text):
        raise NotText("the text is not UTF-8, UTF-16 or Windows-1252")
    return text


def _wide(raw: bytes) -> str:
    half = len(raw) // 2
    if half < 4 or len(raw) % 2:
        return ""
    if raw[1::2].count(0) >= _WIDE * half and not raw[::2].count(0):
        return "utf-16-le"
    return "utf-16-be" if raw[::2].count(0) >= _WIDE * half and not raw[1::2].count(0) else ""


def _strict(raw: bytes, name: str) -> str:
    try:
        return raw.decode(name)
    except UnicodeDecodeError:
        raise NotText("the text is not UTF-8, UTF-16 or Windows-1252") from None
