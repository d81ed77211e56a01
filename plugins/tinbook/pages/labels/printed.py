"""A label as it is printed: its words, which of them stand out, and where each label is on its paper, in mm."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import count

from tinbook.facts import Facts
from tinbook.models.labels import USA, LabelSheet
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.labels import DATED, ListRun, contains_runs, list_runs, long_date
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.labels.applying import label_name
from tinbook.plans.labels.label import LabelPlan

PLAIN = LabelSheet.model_validate(
    {
        "columns": 2, "rows": 4, "wide": "90 mm", "high": "65 mm", "left": "15 mm", "top": "18 mm",
        "across": "90 mm", "down": "65 mm",
    }
)  # fmt: skip
"""Plain A4 to cut up, if the house has no sheets of its own. Our own judgement."""
BAR_MM = 50.0
MOST = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelWords:
    """Everything on one label. `runs`: the list of ingredients, `contains` the line of allergens; either may be
    empty."""

    name: str
    runs: tuple[ListRun, ...]
    contains: tuple[ListRun, ...]
    lines: tuple[str, ...]
    dated: str
    day: str
    keep: str
    net: str
    maker: str
    batch: str


@dataclass(frozen=True, slots=True)
class LabelCell:
    """Where one label is on its sheet, mm from the top left corner."""

    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelPages:
    """Labels on their paper: width and height of the paper and of a label, mm; a height of 0 is as high as the words
    need. `bar_mm`: how long the check bar is, 0 if there is no room for one. `cut`: the labels are cut out."""

    title: str
    words: LabelWords
    paper_mm: tuple[float, float]
    wide_mm: float
    high_mm: float
    pages: tuple[tuple[LabelCell, ...], ...]
    bar_mm: float = 0.0
    cut: bool = False


def label_words(plan: LabelPlan, facts: Facts) -> LabelWords:
    """A label in words. Where no list is needed and none is complete, the line of allergens stands alone."""
    nation = plan.house.sold_in
    runs = list_runs(plan.listed, facts) if plan.with_list else ()
    names = tuple(dict.fromkeys(label_name(key, facts, nation) for key in plan.contains))
    lines = [f"{formats.title(said.removesuffix('.'))}." for said in spelled_all(plan.listed.warnings)]
    lines += [plan.cross_contact] if plan.cross_contact else []
    until = plan.until
    return LabelWords(
        name=plan.name,
        runs=runs,
        contains=contains_runs(names) if not runs or nation == USA else (),
        lines=tuple(lines),
        dated=DATED[until.kind] if until else "",
        day=long_date(until.day) if until else "",
        keep=f"Keep {until.place}" if until else "",
        net=plan.net,
        maker=plan.maker,
        batch=plan.batch,
    )


def label_pages(words: LabelWords, sheet: LabelSheet, first: int, many: int, cut: bool = False) -> LabelPages:
    """So many labels on sheets, the first on the label with that number; ones before it are used up already."""
    cells = [
        LabelCell(sheet.left + column * sheet.across_mm, sheet.top + row * sheet.down_mm)
        for row in range(sheet.rows)
        for column in range(sheet.columns)
    ]
    pages: list[tuple[LabelCell, ...]] = []
    left = many
    for nth in count():
        free = cells[first - 1 :] if nth == 0 else cells
        pages.append(tuple(free[:left]))
        left -= len(pages[-1])
        if left <= 0:
            break
    return LabelPages(
        title=words.name,
        words=words,
        paper_mm=sheet.paper_mm,
        wide_mm=sheet.wide,
        high_mm=sheet.high,
        pages=tuple(pages),
        # above the labels, where most sheets have a margin
        bar_mm=BAR_MM if sheet.top >= 12.0 else 0.0,
        cut=cut,
    )


def strip_pages(words: LabelWords, wide_mm: float) -> LabelPages:
    """One label on a roll, as long as its words need."""
    return LabelPages(
        title=words.name,
        words=words,
        paper_mm=(wide_mm, 0.0),
        wide_mm=wide_mm,
        high_mm=0.0,
        pages=((LabelCell(0.0, 0.0),),),
    )
