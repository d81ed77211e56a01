"""The doors by which one question is asked: the command's JSON, a cell of a page, its data, its words, a sheet."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from html.parser import HTMLParser
from math import ceil, floor
from typing import Any

import pytest
from click.testing import CliRunner

from tinbook.cli import main
from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.sheet_file import as_plain
from tinbook.plans.true_size.drawn import Template
from tinbook.site import Site, build_site
from tinbook.tins import Tin, read_tin

SCALES = re.compile(r"<(script|svg|style)\b.*?</\1>", re.S)
FRACTIONS = {"¼": 0.25, "½": 0.5, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}


def plain(text: str) -> str:
    """Words with single blanks, and a minus that Python knows."""
    return " ".join(text.replace("\u2212", "-").split())


def figure(text: str) -> float:
    """The first figure in a text: `1½`, `−25`, `1290`."""
    found = re.search(
        rf"(-?\d+(?:\.\d+)?)?([{''.join(FRACTIONS)}])?",
        plain(text)[re.search(r"[-\d¼½¾⅓⅔⅛⅜⅝⅞]", plain(text)).start() :],
    )  # type: ignore[union-attr]
    assert found and (found[1] or found[2]), text
    return float(found[1] or 0) + FRACTIONS.get(found[2] or "", 0.0)


class _Tables(HTMLParser):
    """The tables of a page by the label of their region: rows of cells. What is small in a cell is apart by a `|`."""

    def __init__(self) -> None:
        super().__init__()
        self.tables: dict[str, list[list[str]]] = {}
        self._label, self._rows = "", [[""]]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("role") == "region":
            self._label = given.get("aria-label") or ""
        elif tag == "table":
            self._rows = self.tables.setdefault(self._label, [])
        elif tag == "tr":
            self._rows.append([])
        elif tag in ("td", "th") and self._rows:
            self._rows[-1].append("")
        elif tag == "small" and self._rows and self._rows[-1]:
            self._rows[-1][-1] += "|"

    def handle_endtag(self, tag: str) -> None:
        if tag == "table":
            self._rows = [[""]]

    def handle_data(self, data: str) -> None:
        if self._rows and self._rows[-1]:
            self._rows[-1][-1] += data


@dataclass
class Doors:
    """The demo book, asked from every side; each answer as it stands there."""

    loaded: Loaded
    site: Site
    _filled: dict[str, str] = field(default_factory=dict)
    _grids: dict[str, Mapping[str, list[list[str]]]] = field(default_factory=dict)
    _asked: dict[tuple[str, ...], list[dict[str, Any]]] = field(default_factory=dict)

    def rows(self, *words: str) -> list[dict[str, Any]]:
        """The rows of `tinbook table`, as JSON."""
        if words not in self._asked:
            done = CliRunner().invoke(main, ["table", *words, "--format", "json"])
            assert done.exit_code == 0, done.output
            self._asked[words] = json.loads(done.output)["rows"]
        return self._asked[words]

    def row(self, *words: str, **wanted: object) -> dict[str, Any]:
        """The one row of a table in which those cells stand."""
        (row,) = [each for each in self.rows(*words) if all(each[key] == value for key, value in wanted.items())]
        return row

    def page(self, address: str) -> str:
        """A page, its late parts filled in; of a mixture both leaves."""
        if address not in self._filled:
            leaves = [self.site.pages[each] for each in (address, f"{address}/tables") if each in self.site.pages]
            filled = [page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}") for page in leaves]
            self._filled[address] = "\n".join(filled)
        return self._filled[address]

    def words(self, address: str) -> str:
        """What a page says, without its marks."""
        return plain(re.sub(r"<[^>]+>", " ", SCALES.sub("", self.page(address))))

    def cell(self, address: str, label: str, row: str, head: str) -> str:
        """A cell of the tables of that label, of the house's tins and the rest: the first row that begins so, under the
        first head that begins so."""
        if address not in self._grids:
            parser = _Tables()
            parser.feed(SCALES.sub("", self.page(address)))
            self._grids[address] = parser.tables
        for heads, *rows in (table for name, table in self._grids[address].items() if name.startswith(label)):
            place = next((at for at, text in enumerate(heads) if plain(text).startswith(head)), None)
            named = (cells for cells in rows if re.match(rf"{re.escape(row)}(\W|$)", plain(cells[0])))
            if place is not None and (cells := next(named, None)):
                return plain(cells[place])
        raise LookupError((address, label, row, head))

    def number(self, address: str, label: str, row: str, head: str) -> float:
        """The first figure of that cell."""
        return figure(self.cell(address, label, row, head))

    def data(self, address: str, name: str) -> Any:
        """What a page hands its scripts."""
        found = re.search(rf'<script type="application/json" id="{name}">(.*?)</script>', self.page(address), re.S)
        assert found, (address, name)
        return json.loads(found[1])

    def bench(self, slug: str, tin: str) -> dict[str, Any]:
        """A tin at a mixture's bench."""
        tins = self.data(f"mixtures/{slug}", "tb-recipe")["tins"]
        (row,) = [row for row in tins["rows"] if row[0] == tin]
        return dict(zip(tins["heads"], row, strict=False))

    def sheet(self, slug: str, cake: str) -> dict[str, Any]:
        """A technique's sheet for one cake, as it goes into the PDF."""
        return as_plain(sheet_of(slug, self.desk, cake=self.tin(cake)))

    def tin(self, text: str) -> Tin:
        """A tin, as long as this book's are sold."""
        return read_tin(text, sold=self.loaded.book.house.tins_sold_in)[1]

    @staticmethod
    def to(step: float, value: float) -> float:
        """Rounded to a step, a half upwards: as the scales, the ruler and the timer show it."""
        return floor(value / step + 0.5 + 1e-9) * step

    @staticmethod
    def up(step: float, value: float) -> float:
        """Upwards to a step: what must be enough."""
        return ceil(value / step - 1e-9) * step

    @staticmethod
    def figure(text: str) -> float:
        """The first figure in a text."""
        return figure(text)

    def scales(self, mass_g: float) -> float:
        """As the house's scales show it: to 1 g below 50 g, else to 5 g."""
        return self.to(1.0 if mass_g < 50.0 else 5.0, mass_g)

    def drawn(self, template: Template, kind: str, wide_mm: float = 0.0) -> tuple[int, float]:
        """How many closed lines of a kind a template has, at least so wide; and how wide the widest is, mm."""
        lines = [stroke.points for stroke in template.strokes if stroke.kind == kind and len(stroke.points) > 2]
        widths = [max(x for x, _ in line) - min(x for x, _ in line) for line in lines]
        return sum(width >= wide_mm for width in widths), max(widths)

    @cached_property
    def desk(self) -> Desk:
        """What pages are made of."""
        return Desk(self.loaded.book, self.loaded.facts, {})


Way = Callable[[Doors], object]
"""One way of asking a question."""


@pytest.fixture(scope="module")
def asked_book(demo: Loaded) -> Loaded:
    """The book that is asked: the demo."""
    return demo


@pytest.fixture(scope="module")
def doors(asked_book: Loaded) -> Iterator[Doors]:
    """That book, read once."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("tinbook.cli.table.load_book", lambda folder: asked_book)
        yield Doors(asked_book, build_site(asked_book.book, asked_book.facts, {}))


@pytest.fixture(scope="module")
def agree(doors: Doors) -> Callable[[tuple[Way, ...]], None]:
    """Asks by every way and holds the answers to the first; figures to the millionth."""

    def ask(ways: tuple[Way, ...]) -> None:
        assert len(ways) >= 2
        first, *others = [way(doors) for way in ways]
        for place, other in enumerate(others, 2):
            alike = other == first if isinstance(first, str) else other == pytest.approx(first, rel=1e-6)
            assert alike, f"by way {place} {other!r}, by way 1 {first!r}"

    return ask
