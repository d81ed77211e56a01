"""A sheet as a self-contained web page in one file, and as plain data with its pictures, for its PDF."""

from __future__ import annotations

import base64
import hashlib
import re
from dataclasses import asdict, dataclass, replace
from typing import Any

from markupsafe import Markup

from tinbook.pages.base.render import render
from tinbook.pages.technique.sheet import TechniqueSheet
from tinbook.pages.technique.sheet_pictures import data_address

A4_MM = (210.0, 297.0)


@dataclass(frozen=True, slots=True)
class Dress:
    """What a sheet is styled with: the book's tokens.css, its two fonts as woff2 (for words and for figures)."""

    tokens: str
    words: bytes
    figures: bytes


def sheet_page(sheet: TechniqueSheet, dress: Dress) -> str:
    """The sheet as one self-contained web page: styles, script, typefaces and pictures are all inside.

    Its own policy forbids any request, and any script but the one for the ticks.
    """
    pages = [page for cake in sheet.cakes for page in cake.templates]
    short, long = sorted((pages[0].width_mm, pages[0].height_mm)) if pages else A4_MM
    return dressed("sheet/sheet.html", sheet, dress, (short, long))


def dressed(template: str, sheet: Any, dress: Dress, paper_mm: tuple[float, float] = A4_MM) -> str:
    """A sheet in its `template`, with everything it needs inside: styles, script and typefaces.

    `paper_mm`: the short and the long side of its pages of templates.
    """
    short, long = paper_mm
    style = render(
        "sheet/sheet.css", ink=_ink(dress.tokens), words=_font(dress.words), figures=_font(dress.figures),
        upright=f"{short:g}mm {long:g}mm", sideways=f"{long:g}mm {short:g}mm",
    )  # fmt: skip
    script = render("sheet/sheet.js")
    policy = (
        f"default-src 'none'; style-src '{_sum(style)}'; script-src '{_sum(script)}'; img-src data:; font-src data:; "
        "base-uri 'none'; form-action 'none'"
    )
    return render(template, sheet=sheet, style=Markup(style), script=Markup(script), policy=policy)


def as_plain(sheet: TechniqueSheet) -> dict[str, Any]:
    """The sheet as plain data for the cake shown, its pictures by the names of their files."""
    bare = tuple(replace(cake, templates=()) for cake in sheet.cakes if cake.shown)
    return plain_of(asdict(replace(sheet, cakes=bare)))  # type: ignore[no-any-return]


def plain_of(value: Any) -> Any:
    """A value as JSON can hold it, without what is in files beside it."""
    if isinstance(value, dict):
        return {key: plain_of(inner) for key, inner in value.items() if key not in ("content", "element", "templates")}
    if isinstance(value, list | tuple):
        return [plain_of(inner) for inner in value]
    return str(value) if isinstance(value, str) else value


def picture_files(sheet: TechniqueSheet) -> dict[str, bytes]:
    """The pictures of a sheet by the names of their files."""
    shown = (*(picture for step in sheet.steps for picture in step.pictures), *sheet.pictures)
    return {picture.name: picture.content for picture in shown}


def _ink(tokens: str) -> dict[str, str]:
    """The book's colours and measures by look, taken from its tokens; a token file without them is a fault of ours."""
    looks = {"light": ":root", "dark": r'\[data-md-color-scheme="?slate"?\]'}
    ink = {}
    for look, selector in looks.items():
        block = re.search(selector + r" \{([^}]*)\}", tokens)
        if block is None:
            raise ValueError(f"the tokens have no {look} look")
        ink[look] = " ".join(block[1].split())
    return ink


def _font(content: bytes) -> str:
    return data_address("font/woff2", content)


def _sum(text: str) -> str:
    """The hash by which a page's policy knows a style or script: Content Security Policy Level 3, W3C."""
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
