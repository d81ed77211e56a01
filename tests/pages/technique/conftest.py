"""A technique with something of everything a sheet takes along."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from typing import Any

import pytest
from PIL import Image

from tinbook.facts import Facts
from tinbook.models import Book, Copy, House, PictureFile, Technique, read_model
from tinbook.pages.base.page import Desk

LAMP = PictureFile(
    file="lamp.svg",
    kind="drawing",
    width=9,
    height=9,
    svg='<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>',
    prefix="x-",
)
TECHNIQUE: dict[str, Any] = {
    "name": "Set dowels", "purpose": "So that it stands.", "level": "practised", "makes": "one tier",
    "tools": [{"tool": "level", "shared": "yes"}, {"tool": "cutter", "count": "2"}],
    "materials": [{"take": "5 dowels, 15 cm", "not food": "yes"}, {"take": "300 g sugarpaste"}, {"take": "20 g sugar pearls", "small hard": "yes"},
                  {"take": "100 g butter", "shared": "yes"}],
    "steps": [{"do": "Roll <1/2 sugarpaste>.", "hands on": "5-7 min", "ahead": "2 days"}, {"do": "Look.", "picture": "lamp.svg", "waiting": "12 h"}],
    "pictures": [{"file": "lamp.svg", "alt": "A lamp."}, {"file": "quay.jpg", "alt": "A quay.", "shows": "Low water."}],
    "checks": ["It is level."], "faults": [{"fault": "It leans.", "cure": "Trim it."}], "cautions": ["Tell whoever cuts."], "tips": ["Cut one more."],
}  # fmt: skip


@pytest.fixture
def quay() -> PictureFile:
    out = BytesIO()
    Image.new("RGB", (10, 8)).save(out, "JPEG")
    return PictureFile(
        file="quay.jpg", kind="photo", width=10, height=8, copies=(Copy("quay.a.jpg", 10, 8, out.getvalue()),)
    )


@pytest.fixture
def sheet_desk(kitchen: Book, facts: Facts, quay: PictureFile) -> Callable[..., Desk]:
    def made(house: House | None = None, **changes: Any) -> Desk:
        technique, flaws = read_model(Technique, {**TECHNIQUE, **changes}, "it")
        assert technique is not None, flaws
        pictures = {"lamp.svg": LAMP, "quay.jpg": quay}
        book = replace(kitchen, techniques={"set-dowels": technique}, pictures=pictures, house=house or kitchen.house)
        return Desk(book, facts, {})

    return made
