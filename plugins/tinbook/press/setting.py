"""PDFs by Typst: it comes as one Python wheel for every system, with no libraries to install.

A PDF has no date, only its title. The same pages give the same PDF, to the byte.
"""

from __future__ import annotations

import json
import re
import sys
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict
from functools import cache
from importlib import resources
from itertools import islice, product
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any, Final, TypeVar

from tinbook.pages.cake.sheet import CakeSheet
from tinbook.pages.money.quote import Quote
from tinbook.pages.orders.job_sheet import DaysSheet
from tinbook.pages.technique.paper import PaperPage, as_plain
from tinbook.pages.technique.sheet import TechniqueSheet
from tinbook.pages.technique.sheet_file import as_plain as sheet_as_plain
from tinbook.pages.technique.sheet_file import picture_files, plain_of

if TYPE_CHECKING:
    import typst

PACKAGE = resources.files("tinbook")
STANDARD: Final = "ua-1"
"""PDF/UA-1, ISO 14289-1."""
UNSHOWN = re.compile('the text `"(.*?)"` could not be displayed', re.DOTALL)
ESCAPED = re.compile(r"\\u\{([0-9a-f]+)\}")
"""How a character that stands on another is named there."""
STAND_IN = "?"
"""What is shown instead of a character that cannot be."""
HANGS_ON = "\u200d\ufe0e\ufe0f\U0001f3fb-\U0001f3ff"
"""What may follow a pictograph (a joiner, a presentation selector, a skin tone) and goes with it: Unicode, UTS 51."""
Set = TypeVar("Set")
CLOSE: Final = "close"
"""What `sheet.typ` calls lines and margins as close as can still be read."""


def templates_pdf(title: str, pages: Sequence[PaperPage]) -> bytes:
    """Pages of templates at actual size."""
    import typst

    def set_as(plain: str) -> bytes:
        return typst.compile(
            source_of("template.typ"), font_paths=letters(), sys_inputs={"told": plain}, pdf_standards=[STANDARD]
        )

    return shown(set_as, json.dumps(as_plain(title, pages), ensure_ascii=False))


def shown(set_as: Callable[[str], Set], plain: str, instead: Mapping[str, str] | None = None) -> Set:
    """A text as it is set, with STAND_IN for every character that none of the book's typefaces has: a tagged PDF may
    hold no character that cannot be shown. `instead`: what is said in place of a whole word that cannot be."""
    import typst

    while True:
        try:
            return set_as(plain)
        except typst.TypstError as error:
            found = UNSHOWN.search(str(error))
            if found is None or STAND_IN in found[1]:
                raise
            unshown = ESCAPED.sub(lambda code: chr(int(code[1], 16)), found[1])
            # a longer word first: the first of a month is the beginning of its twelfth
            for word in sorted(instead or {}, key=len, reverse=True):
                if instead and not set(word).isdisjoint(unshown):
                    plain = plain.replace(word, instead[word])
            for sign in unshown:
                plain = re.sub(f"{re.escape(sign)}[{HANGS_ON}{_marks()}]*", STAND_IN, plain)


@cache
def _marks() -> str:
    """Signs that stand on the character before them, of every script: they go with it."""
    return "".join(re.escape(sign) for sign in map(chr, range(sys.maxunicode)) if unicodedata.category(sign)[0] == "M")


def sheet_pdf(sheet: TechniqueSheet) -> bytes:
    """A sheet, without its templates. Its drawing is at the largest scale that does not make it longer, its lines
    closer if that saves a page."""
    scales = len(sheet.shown.drawings) if sheet.shown else 0
    best = _sheet_at(sheet, 0, "")
    for drawing, close in islice(product(range(max(scales, 1)), ("", CLOSE)), 1, None):
        if best[0] == 1:
            break
        best = min(best, _sheet_at(sheet, drawing, close), key=lambda made: made[0])
    return best[1]


def cake_sheet_pdf(sheet: CakeSheet) -> bytes:
    """A whole cake's sheet."""
    return _set("cake.typ", plain_of(asdict(sheet)))[1]


def days_sheet_pdf(sheet: DaysSheet) -> bytes:
    """The sheet of an order without a cake."""
    return _set("days.typ", plain_of(asdict(sheet)))[1]


def quote_pdf(found: Quote, instead: Mapping[str, str] | None = None) -> bytes:
    """A quote, for whoever asked. `instead`: what is said in place of a sign or a day that no typeface here has."""
    return _set("quote.typ", plain_of(asdict(found)), instead=instead)[1]


def _sheet_at(sheet: TechniqueSheet, drawing: int, close: str) -> tuple[int, bytes]:
    """How many pages, and the PDF, with one of its drawings, set close or not."""
    return _set("sheet.typ", sheet_as_plain(sheet), picture_files(sheet), drawing=str(drawing), close=close)


def _set(
    name: str,
    told: Any,
    files: Mapping[str, bytes] | None = None,
    instead: Mapping[str, str] | None = None,
    **chosen: str,
) -> tuple[int, bytes]:
    """How many pages it takes, and the PDF: what is `told`, set with a source and the pictures it names."""
    import typst

    with TemporaryDirectory() as place:
        folder = Path(place)
        source = folder / name
        source.write_bytes(source_of(name))
        for file, content in (files or {}).items():
            (folder / file).write_bytes(content)

        def set_as(plain: str) -> tuple[int, bytes]:
            (folder / "sheet.json").write_text(plain, "utf-8")
            pages = typst.query(
                source, "<pages>", field="value", one=True, root=folder, font_paths=letters(), sys_inputs=chosen
            )
            made = typst.compile(source, root=folder, font_paths=letters(), sys_inputs=chosen, pdf_standards=[STANDARD])
            return int(json.loads(pages)), made

        return shown(set_as, json.dumps(told, ensure_ascii=False), instead)


def source_of(name: str) -> bytes:
    """The source of a sheet's template, by its file's name."""
    return (PACKAGE / "pages" / "templates" / "sheet" / name).read_bytes()


@cache
def letters() -> typst.Fonts:
    """The book's own typefaces, before any of the machine's. A large library, imported only when something is set."""
    import typst

    with resources.as_file(PACKAGE / "press" / "fonts") as fonts:
        return typst.Fonts(include_system_fonts=False, font_paths=[fonts])
