"""How well a note was read: each thing that must be read is right, flagged, or misplaced without a word.

A line of the mix is right when its amount, its ingredient and what is said of it stand in the mixture they belong to,
with no mark. It is flagged when it is marked `# unsure`, wherever that is; a line nobody could be sure of (`?`) can be no
better than that. All else is misplaced: wrong, in another mixture, lost, or put somewhere it does not belong. So is
anything in a mix that the note does not have there, and junk anywhere.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from tinbook.models import Book, read_take
from tinbook.source import read_yaml
from tinbook.tins import read_tin
from tinbook.units import Misread, measures_of, read_heat, read_span

RIGHT, FLAGGED, MISPLACED = "right", "flagged", "misplaced"
UNSURE = "# unsure"
NEAR = 0.01
"""A pound is 454 g or 453.6; two spellings of one amount are one reading."""
NEAR_C = 4.0
"""Gas 3, 325 °F and 160 °C are one heat in three spellings, 3 °C apart."""
SPOON_NEAR = 0.02
"""A US spoon is 1.4 % under a metric one."""


@dataclass(frozen=True, slots=True)
class Score:
    """What became of the lines of the mix and of all else; each verdict with what it is about."""

    lines: tuple[tuple[str, str], ...]
    others: tuple[tuple[str, str], ...]

    def counted(self, part: str = "") -> Counter[str]:
        said = {"lines": self.lines, "others": self.others}.get(part, self.lines + self.others)
        return Counter(verdict for verdict, _ in said)


@dataclass(slots=True)
class Sheet:
    """A draft taken apart: its data, and each line of its text by the key it stands under."""

    data: Mapping[str, Any]
    rows: list[tuple[str, str]]

    def under(self, key: str) -> list[str]:
        return [row for at, row in self.rows if at == key]

    def flagged(self, key: str) -> bool:
        return any(UNSURE in row for row in self.under(key))


def taken_apart(text: str) -> Sheet:
    document, problems = read_yaml(text.encode(), "x.yaml")
    assert document is not None, (problems, text)
    rows, key = [], ""
    for row in text.splitlines():
        if named := re.match(r"(?:# unsure: )?([a-z ]+):", row):
            key = named[1]
        rows.append((key, row))
    return Sheet(document.data, rows)


def _listed(rows: Sequence[str]) -> Iterator[tuple[str, bool]]:
    """Each entry of a list as written, and whether it is marked."""
    for row in rows:
        if row.lstrip().startswith("- "):
            entry = yaml.safe_load(row.strip())[0]
            yield (
                (str(entry.get("take", entry.get("do", ""))) if isinstance(entry, dict) else str(entry)),
                UNSURE in row,
            )
        elif UNSURE in row:
            yield row.partition(UNSURE)[2], True


def score(expected: Mapping[str, Any], drafts: Sequence[str], book: Book) -> Score:
    """The verdicts on `drafts`, the first of them the note's main mixture."""
    sheets = [taken_apart(text) for text in drafts]
    lines = list(_lines(expected, sheets, book))
    return Score(tuple(lines), tuple(_others(expected, sheets)))


def _lines(expected: Mapping[str, Any], sheets: Sequence[Sheet], book: Book) -> Iterator[tuple[str, str]]:
    marked = [text.lower() for sheet in sheets for _, row in sheet.rows if UNSURE in row for text in [row]]
    wanted = [("", expected["mix"]), *expected.get("also", {}).items()]
    used: set[int] = set()
    for index, (head, lines) in enumerate(wanted):
        at = 0 if not head else next(
            (n for n, sheet in enumerate(sheets) if n and head in str(sheet.data.get("name", "")).lower()), -1
        )  # fmt: skip
        used.add(at)
        found = list(_listed(sheets[at].under("mix"))) if 0 <= at < len(sheets) else []
        sure = [text for text, mark in found if not mark]
        for line in lines:
            amount, name, note, said = (*(part.strip() for part in line.split("|")), "", "", "")[:4]
            hit = next((text for text in sure if _same(text, amount, name, note, book)), None)
            if hit is not None:
                sure.remove(hit)
                yield RIGHT, line
            elif any((said or name).lower() in row for row in marked):
                yield FLAGGED, line
            else:
                yield MISPLACED, f"{line} [{index}]"
        yield from ((MISPLACED, f"not in the note: {text}") for text in sure)
    for at, sheet in enumerate(sheets):
        if at not in used:
            yield from ((MISPLACED, f"no such part: {text}") for text, mark in _listed(sheet.under("mix")) if not mark)


def _same(text: str, amount: str, name: str, note: str, book: Book) -> bool:
    if amount == "?":
        return False
    measures = book.house.spoons
    try:
        take, want = read_take(text, measures), read_take(f"{amount} {name}", measures)
    except Misread:
        return False
    one, other = take.quantity, want.quantity
    near = SPOON_NEAR if "sp" in other.unit else NEAR
    word = book.house_word(take.name) or take.name.lower()
    return (
        one.dimension == other.dimension
        and abs(one.base - other.base) <= near * other.base
        and word == (book.house_word(name) or name.lower())
        and note.lower() in take.wanted.lower()
    )


def _others(expected: Mapping[str, Any], sheets: Sequence[Sheet]) -> Iterator[tuple[str, str]]:
    main = sheets[0]
    bake = main.data.get("bake") or {}
    rows = main.under("bake")
    for key, read in (("oven", _heat), ("time", _time)):
        if key in expected:
            mark = any(UNSURE in row and (f"{key}:" in row or "bake" in row) for row in rows)
            yield _verdict(expected[key], bake.get(key), read, mark), f"{key}: {expected[key]} / {bake.get(key)}"
    if "tins" in expected:
        tins = main.data.get("tins")
        yield _verdict(expected["tins"], tins, _tin, main.flagged("tins")), f"tins: {expected['tins']} / {tins}"
    steps = expected.get("steps", "?")
    if steps != "?":
        found = [mark for sheet in sheets for _, mark in _listed(sheet.under("method"))]
        told = RIGHT if len(found) == steps and not any(found) else FLAGGED if any(found) else MISPLACED
        yield told, f"steps: {steps} / {len(found)}"
    for key in ("about", "notes", "keeps"):
        if words := expected.get(key):
            here = any(words.lower() in str(sheet.data.get(key, "")).lower() for sheet in sheets)
            mark = any(UNSURE in row and words.lower() in row.lower() for sheet in sheets for _, row in sheet.rows)
            yield RIGHT if here else FLAGGED if mark else MISPLACED, f"{key}: {words}"
    for words in expected.get("junk", ()):
        for sheet in sheets:
            yield from ((MISPLACED, f"junk: {row}") for _, row in sheet.rows if words in row.partition(UNSURE)[0])


def _verdict(want: str, got: Any, read: Any, mark: bool) -> str:
    if mark:
        return FLAGGED
    if want == "?" or got is None:
        return MISPLACED
    try:
        one, other = read(str(got)), read(want)
        near = abs(one - other) <= NEAR_C if isinstance(one, float) else one == other
        return RIGHT if near else MISPLACED
    except Misread:
        return MISPLACED


def _heat(text: str) -> float:
    return read_heat(text).celsius


def _time(text: str) -> tuple[float, float]:
    span = read_span(text, ("time",), measures_of("US cup", "metric"))
    return span.low.base, span.high.base


def _tin(text: str) -> tuple[Any, ...]:
    count, tin = read_tin(text)
    return count, tin.shape, tin.sizes_mm


def expected_of(note: Path) -> Mapping[str, Any]:
    told: Mapping[str, Any] = yaml.safe_load(note.with_suffix(".expected.yaml").read_text("utf-8"))
    return told


def told(scores: Mapping[str, Score]) -> str:
    """A row for each note and the sum: right, flagged, misplaced, for the lines of the mix and for all else."""
    rows = []
    for name, each in scores.items():
        rows.append(_row(name, each.counted("lines"), each.counted("others")))
        rows += [f"    {verdict}: {what}" for verdict, what in each.lines + each.others if verdict == MISPLACED]
    lines = sum((each.counted("lines") for each in scores.values()), Counter())
    others = sum((each.counted("others") for each in scores.values()), Counter())
    return "\n".join((*rows, _row("in total", lines, others), _row("all together", lines + others, Counter())))


def _row(name: str, lines: Counter[str], others: Counter[str]) -> str:
    parts = [", ".join(f"{count[word]} {word}" for word in (RIGHT, FLAGGED, MISPLACED)) for count in (lines, others)]
    return f"{name:24} {parts[0]:40} | {parts[1]}"
