"""The tins a note names, in the book's spelling: 2 x 8in sandwich tins, a deep 20cm round tin, a greased 13x9 pan."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tinbook.notes.numbers import in_figures
from tinbook.tins import read_tin
from tinbook.units import Misread

_LENGTH = r"[0-9]+(?:\.[0-9]+|\s?[½¼¾]|\s[0-9]/[0-9])?"
_UNIT = r"(?:-?\s?(?:cm|mm|inch(?:es)?|in|ins)\b\.?|\s?(?:\"|″|”|''))"
_ROUNDS = r"sandwich|spring-?form|layers?|victoria|deep cake|cake"
_SHAPES = (
    r"round|square|sq\.?|loaf|rectangular|rectangle|oblong|traybake|bundt|fluted "
    r"ring|ring|heart(?:-shaped)?|hexagon(?:al)?|oval|petal"
)
_SAID = (
    "well-greased|greased|lined|buttered|floured|deep|shallow|loose-bottomed"
    "|loose-based|non-stick|metal|baking|base-lined|straight-sided|small|large"
)
_SIZE = rf"{_LENGTH}\s*{_UNIT}?(?:\s*(?:/|\(|or)\s*{_LENGTH}\s*{_UNIT}\)?)?"
_TIN = re.compile(
    rf"""(?<![\w.])
    (?:(?P<count>[0-9]{{1,2}})\s*(?:[x×]\s*|\s)(?={_LENGTH}|(?:{_SAID}|{_ROUNDS}|{_SHAPES})\b))?
    (?P<before>(?:(?:{_SAID}|{_ROUNDS}|{_SHAPES})\b\.?,?\s+(?:and\s+)?){{0,5}})
    (?P<size>{_SIZE}(?:\s*(?:[x×]|by)\s*{_SIZE}){{0,2}})
    (?P<deep>,?\s*(?:deep|high|diameter))?
    (?P<between>(?:[\s,-]+(?:and|{_SAID}|{_ROUNDS}|{_SHAPES})){{0,5}})
    [\s,-]+(?P<tin>tins?|pans?|moulds?|tray|dish|layers|rounds?|squares?)\b
    (?P<after>,?\s*\(?(?:about\s+)?{_LENGTH}\s*{_UNIT}\s*deep\)?)?
    """,
    re.IGNORECASE | re.VERBOSE,
)
_ORPHAN = re.compile(
    rf"(?<![\w.])(?P<size>{_LENGTH}\s*{_UNIT})\s+(?P<shape>round|square|sq)\b\.?(?!\s+cake)", re.IGNORECASE
)
_LOAF = re.compile(
    r"(?<![\w.])(?:(?P<count>[0-9]{1,2})\s*(?:[x×]\s*|\s))?(?:an?\s+|the\s+)?(?P<size>1"
    r"|2|450|900|500)\s*-?\s?(?P<unit>lb|pound|g)\b\.?"
    r"(?:\s*/\s*(?:1|2|450|900)\s?(?:lb|g))?\s+(?:[a-z-]+\s+)?loaf(?:\s+(?P<tins>tins?|pans?))?",
    re.IGNORECASE,
)
_CUPS = re.compile(
    r"(?<![\w.])(?P<count>[0-9]{1,2})[\s-]*(?:x\s*)?(?:holes?|cups?|cases?)?[\s-]*(?:paper\s+)?(?P<what>mini "
    r"muffins?|jumbo muffins?|muffins?|cup\s?cakes?|fairy cakes?|buns?)\b",
    re.IGNORECASE,
)
_WORDS = {
    **dict.fromkeys(("sandwich", "springform", "spring-form", "layer", "layers", "victoria"), "round"),
    **dict.fromkeys(("rectangular", "oblong", "traybake"), "rectangle"),
    "sq": "square", "sq.": "square", "bundt": "fluted ring", "hexagonal": "hexagon", "heart-shaped": "heart",
}  # fmt: skip

MOST = 6
"""More tins at once than this are a length: 9 x 13 in."""


@dataclass(frozen=True, slots=True)
class Named:
    """Tins as a note names them: `text` in the book's spelling, `doubt`: why they are not certain."""

    text: str
    doubt: str
    written: str


def tins_of(lines: Sequence[str]) -> Named | None:
    """The tins a note's lines name; None if they name none. Two that differ make it uncertain."""
    found = [each for line in lines for each in _in(in_figures(line))]
    if not found:
        return None
    kinds = {_shape(each.text) for each in found}
    if len(kinds) == 1:
        sure = [each for each in found if not each.doubt]
        best = max(sure or found, key=lambda each: len(each.text))
        most = max((each for each in found if not each.doubt), key=lambda each: _count(each.text), default=best)
        return best if _count(best.text) == _count(most.text) else Named(most.text, best.doubt, best.written)
    words = ", ".join(dict.fromkeys(each.written for each in found))
    return Named(found[0].text, f"it names more than one: {words}", found[0].written)


def _shape(text: str) -> tuple[str, tuple[float, ...]]:
    _, tin = read_tin(text)
    return tin.shape, tin.sizes_mm


def _count(text: str) -> int:
    return read_tin(text)[0]


def _in(line: str) -> Iterator[Named]:
    spans: list[tuple[int, int]] = []
    for pattern, read in ((_LOAF, _loaf), (_CUPS, _cups), (_TIN, _tin), (_ORPHAN, _orphan)):
        for found in pattern.finditer(line):
            if any(start < found.end() and found.start() < end for start, end in spans):
                continue
            named = read(found)
            try:
                if named is not None:
                    read_tin(named.text)
                    spans.append(found.span())
                    yield named
            except Misread:
                continue


def _many(count: str | None) -> str:
    return f"{count} " if count and count != "1" else ""


def _loaf(found: re.Match[str]) -> Named:
    size = {"1": "1 lb", "450": "1 lb", "500": "1 lb", "2": "2 lb", "900": "2 lb"}[found["size"]]
    if found["unit"].lower() == "g" and len(found["size"]) < 3:
        size = f"{found['size']} g"
    return Named(f"{_many(found['count'])}{size} loaf", "", found[0].strip())


def _cups(found: re.Match[str]) -> Named:
    what = found["what"].lower().replace(" ", "")
    size = {"cup": "standard", "muf": "standard", "min": "mini", "jum": "jumbo", "fai": "fairy", "bun": "fairy"}[
        what[:3]
    ]
    return Named(f"{found['count']} {size} cups", "", found[0].strip())


def _orphan(found: re.Match[str]) -> Named:
    shape = "square" if found["shape"].lower().startswith("sq") else "round"
    return Named(f"{shape} {_length(found['size'])}", "", found[0].strip())


def _tin(found: re.Match[str]) -> Named | None:
    words = re.findall(
        rf"\b(?:{_SHAPES}|{_ROUNDS})", f"{found['before']} {found['between']} {found['tin']}", re.IGNORECASE
    )
    shapes = [_WORDS.get(word.lower(), word.lower()) for word in words if word.lower() not in ("cake", "deep cake")]
    count, size = found["count"], found["size"]
    sizes = [
        part.strip()
        for part in re.split(
            r"\s*(?:[x×]|\bby\b)\s*", re.sub(rf"\s*(?:/|\(|or)\s*{_LENGTH}\s*{_UNIT}\)?", "", size, flags=re.IGNORECASE)
        )
    ]
    if count and re.match(r"[0-9]+\s*[x×]", found[0]) and (int(count) > MOST or count == sizes[0]):
        count, sizes = None, [count, *sizes]
    # "2 x 8in": how many, not how wide
    if count is None and len(sizes) > 1 and re.fullmatch(r"[1-4]", sizes[0]):
        count, *sizes = sizes
    unit = next((_unit(part) for part in reversed(sizes) if _unit(part)), "")
    doubt = ""
    if not unit and len(sizes) == 1:
        return None
    if not unit and not re.match(r"tin|pan|mould", found["tin"], re.IGNORECASE):
        return None
    if not unit:
        unit, doubt = "in", "in inches or in centimetres?"
        if len(sizes) > 1 and all(5 <= float(re.match(r"[0-9]+", part)[0]) <= 14 for part in sizes):  # type: ignore[index]
            doubt = ""
    lengths = [_length(part, unit) for part in sizes]
    shape = next(iter(dict.fromkeys(shapes)), "")
    if len(set(shapes)) > 1:
        shape, doubt = shapes[-1] if shapes[-1] != "round" else shapes[0], "which shape?"
    depth = ""
    if not shape:
        shape = "rectangle" if len(lengths) > 1 else "round"
        doubt = doubt or ("" if len(lengths) > 1 else "round or square?")
    if shape == "rectangle" and len(lengths) > 1 and lengths[0] == lengths[1]:
        shape, lengths = "square", lengths[1:]
    if found["after"] and (deep := re.search(rf"{_LENGTH}\s*{_UNIT}", found["after"], re.IGNORECASE)):
        depth = f" x {_length(deep[0])}"
    return Named(f"{_many(count)}{shape} {' x '.join(lengths)}{depth}", doubt, found[0].strip())


def _unit(text: str) -> str:
    found = re.search(r"(cm|mm|in|\"|″|”|'')", text, re.IGNORECASE)
    return {"cm": "cm", "mm": "mm"}.get(found[1].lower(), "in") if found else ""


def _length(text: str, unit: str = "") -> str:
    number = re.match(_LENGTH, text.strip())
    return f"{' '.join(number[0].split()) if number else text} {_unit(text) or unit}"
