"""Labels and cards as PDF, in letters no smaller than the law allows; what does not fit is refused, never shrunk."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tinbook.pages.labels.cards import GoesWith, TableCard
from tinbook.pages.labels.printed import LabelPages
from tinbook.press.letters import size_pt
from tinbook.press.setting import STANDARD, UNSHOWN, letters, source_of

COMFORTABLE_MM = (1.5, 1.35)
"""How high an x is where there is room for it."""
OVER = 1.02
"""How far above the least an x is set, so that no printer takes it below."""


class TooLong(ValueError):
    """Words that need more room than a label has: mm high at its width, in the smallest letters allowed."""

    def __init__(self, need_mm: float, have_mm: float, x_mm: float) -> None:
        super().__init__(f"needs {need_mm:.1f} mm")
        self.need_mm, self.have_mm, self.x_mm = need_mm, have_mm, x_mm


class NoSuchLetter(ValueError):
    """A sign that the book's typeface does not have: on a label nothing may stand in for it."""

    def __init__(self, sign: str) -> None:
        super().__init__(sign)
        self.sign = sign


def labels_pdf(labels: LabelPages, least_mm: float) -> tuple[bytes, float]:
    """The PDF, and how high an x is in it, mm: as large as there is room for, at least `least_mm`. Raises TooLong."""
    sizes = [x_mm for x_mm in COMFORTABLE_MM if x_mm > least_mm * OVER] + [least_mm * OVER]
    told = asdict(labels)
    need = 0.0
    for x_mm in sizes:
        if labels.high_mm == 0.0:
            return _set("label.typ", told, x_mm), x_mm
        need = float(_asked("label.typ", told, x_mm, "<need>"))
        if need <= labels.high_mm + 1e-6:
            return _set("label.typ", told, x_mm), x_mm
    raise TooLong(need, labels.high_mm, sizes[-1])


def goes_with_pdf(card: GoesWith, least_mm: float) -> bytes:
    """The card that goes with a cake."""
    return _set("goes_with.typ", asdict(card), max(least_mm * OVER, COMFORTABLE_MM[-1]))


def table_card_pdf(card: TableCard) -> bytes:
    """The card for a table of cakes."""
    return _set("table_card.typ", asdict(card), COMFORTABLE_MM[0])


def _set(name: str, told: Any, x_mm: float) -> bytes:
    import typst

    return bytes(_with(name, told, x_mm, lambda **how: typst.compile(**how, pdf_standards=[STANDARD])))


def _asked(name: str, told: Any, x_mm: float, what: str) -> str:
    """What a source says of itself once it is set."""
    import typst

    return str(json.loads(_with(name, told, x_mm, lambda **how: _query(typst.query, what, how))))


def _query(query: Any, what: str, how: dict[str, Any]) -> Any:
    source = how.pop("input")
    return query(source, what, field="value", one=True, **how)


def _with(name: str, told: Any, x_mm: float, do: Any) -> Any:
    import typst

    with TemporaryDirectory() as place:
        folder = Path(place)
        source = folder / name
        source.write_bytes(source_of(name))

        def set_as(plain: str) -> Any:
            (folder / "sheet.json").write_text(plain, "utf-8")
            inputs = {"size_pt": f"{size_pt(x_mm):.4f}"}
            return do(input=source, root=folder, font_paths=letters(), sys_inputs=inputs)

        try:
            return set_as(json.dumps(told, ensure_ascii=False))
        except typst.TypstError as error:
            found = UNSHOWN.search(str(error))
            if found is None:
                raise
            raise NoSuchLetter(found[1]) from None
