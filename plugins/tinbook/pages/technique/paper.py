"""Pages of paper: every line and word of each, in mm from its top left corner; as SVG, and as plain data.

The same pages make the SVG files and the PDF that is set from `templates/sheet/template.typ`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from functools import cached_property
from itertools import groupby
from typing import Any, Literal

from markupsafe import Markup

from tinbook.pages.base.render import render
from tinbook.plans.true_size.drawn import Point

PT_MM = 25.4 / 72.0
TEXT_PT = 9.5
LINES: Mapping[str, tuple[float, tuple[float, ...]]] = {
    "cut": (0.45, ()),
    "inner": (0.25, ()),
    "fold": (0.3, (4.0, 1.2, 0.4, 1.2)),
    "centre": (0.25, (9.0, 2.0)),
    "hidden": (0.35, (2.0, 1.6)),
    "leader": (0.18, ()),
    "joint": (0.25, (0.8, 1.0)),
    "bar": (0.45, ()),
    "rule": (0.35, ()),
}
"""How thick each line is, and its dashes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLine:
    """A line of a page; `closed` where it ends where it began."""

    points: tuple[Point, ...]
    kind: str
    width: float
    dash: tuple[float, ...]
    closed: bool

    @property
    def path(self) -> str:
        """As SVG spells it, to the hundredth of a mm."""
        inner = self.points[:-1] if self.closed else self.points
        return "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in inner) + ("Z" if self.closed else "")


@dataclass(frozen=True, slots=True, kw_only=True)
class PageWords:
    """Words of a page on a baseline; `anchor`: which end of them is at (x, y), `turned`: they run upwards."""

    x: float
    y: float
    text: str
    size_pt: float = TEXT_PT
    figures: bool = False
    anchor: Literal["start", "middle", "end"] = "start"
    turned: bool = False

    @property
    def size_mm(self) -> float:
        """How large, for SVG."""
        return round(self.size_pt * PT_MM, 4)

    @property
    def turn(self) -> str:
        """As SVG spells it; empty for words that lie flat."""
        return f"rotate(-90 {self.x:.3f} {self.y:.3f})" if self.turned else ""


@dataclass(frozen=True, kw_only=True)
class PaperPage:
    """One sheet of paper."""

    key: str
    title: str
    width_mm: float
    height_mm: float
    lines: tuple[PageLine, ...]
    words: tuple[PageWords, ...]

    @property
    def wide(self) -> bool:
        """Whether it lies on its side."""
        return self.width_mm > self.height_mm

    @cached_property
    def paths(self) -> Markup:
        """Its lines as SVG spells them, consecutive ones of one kind in a group."""
        groups = []
        for (kind, width, dash), lines in groupby(self.lines, lambda line: (line.kind, line.width, line.dash)):
            dashes = f' stroke-dasharray="{" ".join(f"{length:g}" for length in dash)}"' if dash else ""
            paths = "".join(f'<path d="{line.path}"/>' for line in lines)
            groups.append(f'<g class="{kind}" stroke-width="{width}"{dashes}>{paths}</g>')
        return Markup("\n".join(groups))

    @property
    def svg(self) -> Markup:
        """The page as a drawing with the paper's own measurements."""
        return Markup(render("sheet/template.svg", page=self).strip())

    @property
    def lined(self) -> str:
        """The same without its words, for a setter that sets those itself."""
        return render("sheet/lines.svg", page=self).strip()


def page_line(kind: str, *points: Point) -> PageLine:
    """A line of a kind in LINES."""
    width, dash = LINES[kind]
    return PageLine(
        points=points, kind=kind, width=width, dash=dash, closed=len(points) > 2 and points[0] == points[-1]
    )


def as_plain(title: str, pages: Sequence[PaperPage]) -> dict[str, Any]:
    """Pages as plain data: the lines of each as a drawing, its words, mm to the ten-thousandth."""
    return {
        "title": title,
        "pages": [
            {
                "title": page.title,
                "width_mm": page.width_mm,
                "height_mm": page.height_mm,
                "drawing": page.lined,
                "words": [asdict(replace(words, x=round(words.x, 4), y=round(words.y, 4))) for words in page.words],
            }
            for page in pages
        ],
    }
