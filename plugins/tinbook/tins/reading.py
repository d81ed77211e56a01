"""Reading a tin as a baker writes it: `2 round 15 cm x 7.5 cm`, `loaf 23 x 13 x 7 cm, base 20 x 10 cm`.

    [how many] [named size] shape [size x size ... [x depth]] [, base ...] [, tube ...] [, 7.5 cm deep]
    [how many] outline M0 0H80V160H0Z [x depth]
    set of shape size, size, size [x depth]

Lengths are read by `units`; a bare number takes the unit of the next length that has one. A length with a trade name in
inches and one in centimetres has the size the house's tins are sold in; one in millimetres is exact.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from tinbook.tins.misreads import Length, cups_or_tray, no_shape, not_before, of_fault, wrong_extras, wrong_number
from tinbook.tins.outline import Outline
from tinbook.tins.shape import NamedSize, Shape, Sizes
from tinbook.tins.tin import Tin
from tinbook.tins.trade import trade_mm, true_mm
from tinbook.tins.words import NUMERAL, SHAPE_WORD, WORD, named_size, spoken, trimmed
from tinbook.units import Misread, Quantity, Sold, read_length, read_number

MOST_TINS = 999

_BY = re.compile(rf"\s*(?:[xX×]|\bby\b)\s*(?=[{NUMERAL}])")
# Not the comma of 7,5 cm: units deals with that one.
_COMMA = re.compile(r",(?![0-9])")
_DEEP = re.compile(r"\s*\bdeep$", re.IGNORECASE)
_HOW_MANY = re.compile(r"([0-9]+)(?![0-9.,/⁄½⅓⅔¼¾⅛⅜⅝⅞])\s*[xX×]?\s*")
_DEPTH = re.compile(r"\s+[xX×]\s*(?=[0-9])|,(?=[^,]*\bdeep\b)")
_TIN_WORD = re.compile(r"\s*\b(tins?|pans?|trays?)\b", re.IGNORECASE)


def read_tin(text: str, names: Mapping[str, Tin] = MappingProxyType({}), sold: Sold = "cm") -> tuple[int, Tin]:
    """How many tins, and the tin. Raises units.Misread: what is wrong, where, and what to write instead.

    `names`, in lower case, are tins known by their owner's name. `sold`: what the house's tins are sold in.

    >>> read_tin("2 round 15 cm x 7.5 cm")[1].full_names
    ('round 15 cm x 7.5 cm', 'round 6 in x 3 in')
    """
    if names and (called := _called(text, names)):
        return called
    return _read(text, sold)


# A log names the same tin a hundred times.
@lru_cache(maxsize=4096)
def _read(text: str, sold: Sold) -> tuple[int, Tin]:
    word = SHAPE_WORD.search(text)
    if word is None:
        raise no_shape(text)
    shape, named = spoken(word[0], sold)
    count, before = _before(text, word, shape)
    start = word.end()
    if tin_word := _TIN_WORD.match(text, start):
        if shape.in_trays:
            raise cups_or_tray(tin_word, shape, before or named)
        start = tin_word.end()
    return count, _tin(text, start, shape, before or named)


def _called(text: str, names: Mapping[str, Tin]) -> tuple[int, Tin] | None:
    """`number 4`, `2 number 4`, `number 4 x 5 cm`, if the house has such a tin."""
    said = " ".join(text.casefold().split())
    for word in (said, said.partition(" x ")[0]):
        if word in names:
            tin = names[word]
            return (1, tin) if said in (word, tin.full_name.casefold()) else None
    many = _HOW_MANY.match(said)
    single = _called(said[many.end() :], names) if many else None
    if many and single and single[0] == 1 and 0 < int(many[1]) <= MOST_TINS:
        return int(many[1][:3]), single[1]
    return None


def _before(text: str, word: re.Match[str], shape: Shape) -> tuple[int, NamedSize | None]:
    """How many, and the named size, from what comes before the shape."""
    start, end = trimmed(text, 0, word.start())
    if start == end:
        return 1, None
    if named := named_size(shape, text[start:end]):
        return 1, named
    count, rest = 1, start
    if many := _HOW_MANY.match(text, start, end):
        count, rest = int(many[1][:9]), many.end()
        if not 1 <= count <= MOST_TINS:
            message = "no tins at all" if count < 1 else f"{many[1][:9]} tins are more than any kitchen holds"
            raise Misread(message, f"write how many, from 1 to {MOST_TINS}", start, start + len(many[1]))
    if rest == end:
        return count, None
    if named := named_size(shape, text[rest:end]):
        return count, named
    raise not_before(text, start, rest, end, word[0], shape)


def _tin(text: str, at: int, shape: Shape, named: NamedSize | None) -> Tin:
    """The tin, from what follows the shape."""
    drawn: Sizes | None = None
    if isinstance(shape, Outline):
        close = max(text.rfind("z"), text.rfind("Z")) + 1
        # An open path ends where a depth begins, or with the text.
        begun = None if close > at else _DEPTH.search(text, at)
        stop = close if close > at else begun.start() if begun else len(text)
        drawn, at = shape.read_sizes(text, at, stop), stop
    (start, end), *clauses = _clauses(text, at, shape)
    if after := named_size(shape, text[start:end]):
        if named and named is not after:
            raise Misread(f'"{named.name}" and "{after.name}" are two sizes', "write one", start, end)
        named, start = after, end
    lengths, deep = _lengths(text, start, end, shape.sold)
    depth = lengths.pop() if deep else None
    extras: list[Length] = []
    for start, end in clauses:
        word, values = _clause(text, start, end, shape)
        if word == "depth":
            if depth or len(lengths) > shape.main:
                raise Misread("the depth is written twice", "write it once", start, end)
            depth = values[0]
        else:
            if extras:
                raise Misread(f"the {word} is written twice", "write it once", start, end)
            extras = values
    if named:
        if written := lengths + extras + ([depth] if depth else []):
            message = f'"{named.name}" already says the size'
            raise Misread(message, "leave the lengths out, or the name", written[0][1], written[-1][2])
        return Tin(shape=shape.key, sizes_mm=named.sizes_mm, depth_mm=named.depth_mm, sold=shape.sold)
    if len(lengths) == shape.main + 1 and depth is None:
        depth = lengths.pop()
    if len(lengths) != shape.main:
        raise wrong_number(text, at, shape, lengths, depth)
    if drawn is not None:
        if depth and (fault := shape.depth_fault(round(depth[0], 2))):
            raise of_fault(fault, depth[1], depth[2])
        return Tin(shape=shape.key, sizes_mm=drawn, depth_mm=depth[0] if depth else None, sold=shape.sold)
    return _believed(shape, lengths, extras, depth)


def _believed(shape: Shape, lengths: list[Length], extras: list[Length], depth: Length | None) -> Tin:
    """The tin with these lengths, if there can be such a tin."""
    main = tuple(length for length, _, _ in lengths)
    if not extras and shape.default_extras(shape.ordered(main)) is None:
        raise Misread(
            f"this {shape.noun} needs its {shape.extra_word} too",
            f'write it after a comma: "{shape.extra_example}"',
            lengths[0][1],
            lengths[-1][2],
        )
    sizes = shape.settled((*main, *(length for length, _, _ in extras)))
    if fault := shape.fault(sizes):
        # Sizes were put in order: the one at fault is found by its length, a usual one by its tin.
        wrong = sizes[fault.index]
        places = [(start, end) for length, start, end in lengths + extras if round(length, 2) == wrong]
        raise of_fault(fault, *(places[-1] if places else (lengths[0][1], lengths[-1][2])))
    if depth and (fault := shape.depth_fault(round(depth[0], 2))):
        raise of_fault(fault, depth[1], depth[2])
    return Tin(shape=shape.key, sizes_mm=sizes, depth_mm=depth[0] if depth else None, sold=shape.sold)


def _clauses(text: str, at: int, shape: Shape) -> list[tuple[int, int]]:
    """Spans of what is between commas; `base` and `tube` begin a clause even without one."""
    cuts = [comma.span() for comma in _COMMA.finditer(text, at)]
    if shape.extra_word:
        extra = re.compile(rf"(?<=\s){shape.extra_word}\b", re.IGNORECASE)
        cuts += [(word.start(), word.start()) for word in extra.finditer(text, at)]
    spans = []
    for left, right in sorted(cuts):
        spans.append(trimmed(text, at, left))
        at = right
    spans.append(trimmed(text, at, len(text)))
    # A comma before `base` makes an empty clause; so does one at the end, harmlessly.
    return [spans[0], *((start, end) for start, end in spans[1:] if start < end)]


def _clause(text: str, start: int, end: int, shape: Shape) -> tuple[str, list[Length]]:
    """What a clause after a comma gives, "depth" or the shape's extra word, and its lengths."""
    word = WORD.match(text, start, end)
    said = word[0].casefold() if word else ""
    if word and said == shape.extra_word:
        values, deep = _lengths(text, word.end(), end, shape.sold)
        if deep or len(values) != shape.extras:
            raise wrong_extras(shape, start, end)
        return said, values
    start_at = word.end() if word and said == "depth" else start
    values, deep = _lengths(text, start_at, end, shape.sold, doubtful=True)
    if not (deep or said == "depth") or len(values) != 1:
        message = f'"{text[start:end]}" is not understood after a {shape.noun}'
        hint = 'say in tins.yaml what a tin holds: "measured: 2200 ml"' if said == "measured" else ""
        raise Misread(message, hint or f'write "{shape.example}"', start, end)
    return "depth", values


def _lengths(text: str, start: int, end: int, sold: Sold, *, doubtful: bool = False) -> tuple[list[Length], bool]:
    """Lengths joined by x, with their spans, and whether the last one is called deep.

    doubtful: anything that does not start with a number is then not a length, rather than a misread one.
    """
    start, end = trimmed(text, start, end)
    deep = _DEEP.search(text[start:end])
    if deep:
        end = start + deep.start()
    if start == end:
        return [], False
    if doubtful and not re.match(rf"[{NUMERAL}]", text[start:end]):
        return [], False
    # In `2 lb loaf x 7 cm` the x comes first.
    spans, at = [], by.end() if (by := _BY.match(text, start, end)) else start
    for by in _BY.finditer(text, at, end):
        spans.append((at, by.start()))
        at = by.end()
    spans.append((at, end))
    lengths: list[Length] = []
    unit = ""
    for left, right in reversed(spans):
        written = text[left:right]
        try:
            bare = unit and read_number(written, 0)[1] == len(written)
            length = read_length(f"{written} {unit}" if bare else written)
        except Misread as wrong:
            stop = min(left + wrong.end, right)
            raise Misread(wrong.message, wrong.hint, min(left + wrong.start, stop), stop) from None
        unit = length.unit
        lengths.append((_true(length, sold), left, right))
    return lengths[::-1], bool(deep)


def _true(length: Quantity, sold: Sold) -> float:
    """The true length in mm: the trade's size if this is the name of one."""
    if length.unit == "in":
        sold_mm = trade_mm(length.value, sold)
        return length.base if sold_mm is None else sold_mm
    return true_mm(round(length.base, 2), sold) if length.unit == "cm" else length.base
