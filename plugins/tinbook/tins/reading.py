"""Reading a tin as a baker writes it: `2 round 15 cm x 7.5 cm`, `loaf 23 x 13 x 7 cm, base 20 x 10 cm`.

    [how many] [named size] shape [size x size ... [x depth]] [, base ...] [, tube ...] [, 7.5 cm deep]
    [how many] outline M0 0H80V160H0Z [x depth]
    set of shape size, size, size [x depth]

Lengths are read by `units`; a bare number takes the unit of the next length that has one. A length that the
trade sells in inches is read as the trade's centimetres.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from types import MappingProxyType

from tinbook.problems import nearest
from tinbook.tins.outline import Outline
from tinbook.tins.register import SHAPES
from tinbook.tins.shape import NamedSize, Shape, SizeFault, Sizes
from tinbook.tins.tin import Tin
from tinbook.tins.trade import trade_mm
from tinbook.units import Misread, read_length, read_number, read_unit

MOST_TINS = 999

# A length in mm and its span in the text.
_Length = tuple[float, int, int]

_NUMERAL = "0-9½⅓⅔¼¾⅛⅜⅝⅞"
_BY = re.compile(rf"\s*(?:[xX×]|\bby\b)\s*(?=[{_NUMERAL}])")
# Not the comma of 7,5 cm: units has something to say about that one.
_COMMA = re.compile(r",(?![0-9])")
_DEEP = re.compile(r"\s*\bdeep$", re.IGNORECASE)
_HOW_MANY = re.compile(r"([0-9]+)(?![0-9.,/⁄½⅓⅔¼¾⅛⅜⅝⅞])\s*[xX×]?\s*")
_DEPTH = re.compile(r"\s+[xX×]\s*(?=[0-9])|,(?=[^,]*\bdeep\b)")
_TIN_WORD = re.compile(r"\s*\b(tins?|pans?|trays?)\b", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")
_A_LENGTH = re.compile(rf"[{_NUMERAL}]\s*(?:mm|cm|in|inch|inches|[\"″”])(?![^\W\d_])", re.IGNORECASE)
_NOT_SHAPES = {"x", "by", "deep", "tin", "tins", "pan", "pans", "tray", "trays", "depth"}


def _spoken() -> dict[str, tuple[Shape, NamedSize | None]]:
    """Every word for a shape, and for a shape with its size (`muffins`)."""
    words: dict[str, tuple[Shape, NamedSize | None]] = {}
    for shape in SHAPES.values():
        words.update((word, (shape, None)) for word in shape.words)
        words.update((noun, (shape, named)) for named in shape.named for noun in named.nouns)
    return words


_SPOKEN = _spoken()
# Longest first; plain letters only, as a dotless i would match `ring` and be no word in the list.
_SHAPE_WORD = re.compile(
    rf"(?<![^\W_])(?ai:{'|'.join(sorted(map(re.escape, _SPOKEN), key=len, reverse=True))})(?![^\W_])"
)


def read_tin(text: str, names: Mapping[str, Tin] = MappingProxyType({})) -> tuple[int, Tin]:
    """How many tins, and the tin. Raises units.Misread: what is wrong, where, and what to write instead.

    `names`, in small letters, are the tins that go by a name of their owner's.
    """
    if names and (called := _called(text, names)):
        return called
    return _read(text)


# A log says the same tin a hundred times.
@lru_cache(maxsize=4096)
def _read(text: str) -> tuple[int, Tin]:
    found = _SHAPE_WORD.search(text)
    if found is None:
        raise _no_shape(text)
    shape, named = _SPOKEN[found[0].casefold()]
    count, before = _before(text, found, shape)
    start = found.end()
    if tin_word := _TIN_WORD.match(text, start):
        if shape.in_trays:
            raise _cups_or_trays(tin_word, shape, before or named)
        start = tin_word.end()
    return count, _tin(text, start, shape, before or named)


def _called(text: str, names: Mapping[str, Tin]) -> tuple[int, Tin] | None:
    """`number 4`, `2 number 4`, `number 4 x 5 cm`, where the house has such a tin."""
    said = " ".join(text.casefold().split())
    for word in (said, said.partition(" x ")[0]):
        if word in names:
            tin = names[word]
            return (1, tin) if said in (word, tin.full_name.casefold()) else None
    many = _HOW_MANY.match(said)
    found = _called(said[many.end() :], names) if many else None
    return (int(many[1][:3]), found[1]) if many and found and found[0] == 1 and 0 < int(many[1]) <= MOST_TINS else None


def _before(text: str, found: re.Match[str], shape: Shape) -> tuple[int, NamedSize | None]:
    """How many, and the named size, from what stands before the shape."""
    start, end = _trim(text, 0, found.start())
    if start == end:
        return 1, None
    if named := _named(shape, text[start:end]):
        return 1, named
    count, rest = 1, start
    if many := _HOW_MANY.match(text, start, end):
        count, rest = int(many[1][:9]), many.end()
        if not 1 <= count <= MOST_TINS:
            message = "no tins at all" if count < 1 else f"{many[1][:9]} tins are more than a kitchen holds"
            raise Misread(message, f"write how many, from 1 to {MOST_TINS}", start, start + len(many[1]))
    if rest == end:
        return count, None
    if named := _named(shape, text[rest:end]):
        return count, named
    raise _not_before(text, start, rest, end, found[0], shape)


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
    if after := _named(shape, text[start:end]):
        if named and named is not after:
            raise Misread(f'"{named.name}" and "{after.name}" are two sizes', "write one", start, end)
        named, start = after, end
    lengths, deep = _lengths(text, start, end)
    depth = lengths.pop() if deep else None
    extras: list[_Length] = []
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
        return Tin(shape=shape.key, sizes_mm=named.sizes_mm, depth_mm=named.depth_mm)
    if len(lengths) == shape.main + 1 and depth is None:
        depth = lengths.pop()
    if len(lengths) != shape.main:
        raise _wrong_number(text, at, shape, lengths, depth)
    if drawn is not None:
        if depth and (fault := shape.depth_fault(round(depth[0], 2))):
            raise _misread(fault, depth[1], depth[2])
        return Tin(shape=shape.key, sizes_mm=drawn, depth_mm=depth[0] if depth else None)
    return _believed(shape, lengths, extras, depth)


def _believed(shape: Shape, lengths: list[_Length], extras: list[_Length], depth: _Length | None) -> Tin:
    """The tin of these lengths, if such a tin can be."""
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
        # Sizes were put in order; the one at fault is known by its length, a usual one by its tin.
        wrong = sizes[fault.index]
        places = [(start, end) for length, start, end in lengths + extras if round(length, 2) == wrong]
        raise _misread(fault, *(places[-1] if places else (lengths[0][1], lengths[-1][2])))
    if depth and (fault := shape.depth_fault(round(depth[0], 2))):
        raise _misread(fault, depth[1], depth[2])
    return Tin(shape=shape.key, sizes_mm=sizes, depth_mm=depth[0] if depth else None)


def _clauses(text: str, at: int, shape: Shape) -> list[tuple[int, int]]:
    """Spans of what stands between commas; `base` and `tube` begin a clause without one too."""
    cuts = [found.span() for found in _COMMA.finditer(text, at)]
    if shape.extra_word:
        word = re.compile(rf"(?<=\s){shape.extra_word}\b", re.IGNORECASE)
        cuts += [(found.start(), found.start()) for found in word.finditer(text, at)]
    spans = []
    for left, right in sorted(cuts):
        spans.append(_trim(text, at, left))
        at = right
    spans.append(_trim(text, at, len(text)))
    # A comma before `base` makes an empty clause; so does one at the end, which does no harm.
    return [spans[0], *((start, end) for start, end in spans[1:] if start < end)]


def _clause(text: str, start: int, end: int, shape: Shape) -> tuple[str, list[_Length]]:
    """What a clause after a comma gives, "depth" or the shape's extra word, and its lengths."""
    word = _WORD.match(text, start, end)
    said = word[0].casefold() if word else ""
    if word and said == shape.extra_word:
        values, deep = _lengths(text, word.end(), end)
        if deep or len(values) != shape.extras:
            raise _extras(shape, start, end)
        return said, values
    values, deep = _lengths(text, word.end() if word and said == "depth" else start, end, doubtful=True)
    if not (deep or said == "depth") or len(values) != 1:
        message = f'"{text[start:end]}" is not understood after a {shape.noun}'
        raise Misread(message, f'write "{shape.example}"', start, end)
    return "depth", values


def _lengths(text: str, start: int, end: int, *, doubtful: bool = False) -> tuple[list[_Length], bool]:
    """Lengths joined by x, with their spans, and whether the last one is called deep.

    doubtful: what does not start with a number is no length, rather than a misread one.
    """
    start, end = _trim(text, start, end)
    deep = _DEEP.search(text[start:end])
    if deep:
        end = start + deep.start()
    if start == end:
        return [], False
    if doubtful and not re.match(rf"[{_NUMERAL}]", text[start:end]):
        return [], False
    # In `2 lb loaf x 7 cm` the x stands first.
    spans, at = [], by.end() if (by := _BY.match(text, start, end)) else start
    for by in _BY.finditer(text, at, end):
        spans.append((at, by.start()))
        at = by.end()
    spans.append((at, end))
    found: list[_Length] = []
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
        sold = trade_mm(length.value) if unit == "in" else None
        found.append((length.base if sold is None else sold, left, right))
    return found[::-1], bool(deep)


def _named(shape: Shape, words: str) -> NamedSize | None:
    """The named size these words are, if they are one."""
    spaced = re.sub(r"(?<=[0-9])(?=[^\W\d_])", " ", words.replace("-", " "))
    said = re.sub(r"\b(lbs|pounds?)\b", "lb", " ".join(spaced.casefold().split()))
    return next((named for named in shape.named if said in (named.name, *named.also)), None)


def _trim(text: str, start: int, end: int) -> tuple[int, int]:
    """The span without the spaces round it."""
    inside = text[start:end]
    start += len(inside) - len(inside.lstrip())
    return start, start + len(inside.strip())


def _misread(fault: SizeFault, start: int, end: int) -> Misread:
    return Misread(fault.message, fault.hint, start, end)


def _list(words: Iterable[str]) -> str:
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def _no_shape(text: str) -> Misread:
    """The error for a text without a word for a shape."""
    start, end = _trim(text, 0, len(text))
    if start == end:
        return Misread("no tin is written here", 'write a shape and its size: "round 20 cm"', 0, len(text))
    shapes = f"the shapes are {_list(SHAPES)}"
    for word in _WORD.finditer(text):
        said = word[0].casefold()
        if said in _NOT_SHAPES or _is_unit(said):
            continue
        for shape in SHAPES.values():
            if named := _named(shape, said):
                hint = f'did you mean "{named.name} {shape.key}"?'
                return Misread(f'"{word[0]}" says no shape', hint, *word.span())
        near = nearest(said, _SPOKEN)
        hint = f'did you mean "{near}"?' if near else shapes
        return Misread(f'no tin shape is called "{word[0]}"', hint, *word.span())
    return Misread("what shape is the tin?", f'put the shape first: "round 20 cm"; {shapes}', start, end)


def _is_unit(word: str) -> bool:
    try:
        return read_unit(word, 0) is not None
    except Misread:
        return True


def _not_before(text: str, start: int, rest: int, end: int, word: str, shape: Shape) -> Misread:
    """The error for what stands before the shape and is neither a count nor a named size.

    rest: where it goes on after a count.
    """
    said = text[start:end]
    if _A_LENGTH.search(said):
        hint = f'write "{shape.example}"'
        return Misread(f'the sizes stand before "{word}"; the shape comes first', hint, start, end)
    if not any(letter.isalpha() for letter in said):
        return Misread(f'"{said}" is no number of tins', "tins come whole: write 1, 2, 3", start, end)
    # In `3 lb loaf` the 3 is no count.
    start = start if _is_unit(text[rest:end]) else rest
    said = text[start:end]
    if shape.named:
        near = nearest(said, [name for named in shape.named for name in (named.name, *named.also)])
        sizes = f"the sizes are {_list(named.name for named in shape.named)}"
        hint = f'did you mean "{near}"?' if near else sizes
        return Misread(f'no {shape.noun} is called "{said}"', hint, start, end)
    hint = f'start with the shape, or with how many in figures: "2 {shape.example}"'
    return Misread(f'"{said}" is not understood before "{word}"', hint, start, end)


def _cups_or_trays(tin_word: re.Match[str], shape: Shape, named: NamedSize | None) -> Misread:
    """A count before `muffin tins` may be of cups or of trays."""
    tray = f"{shape.holes(named.sizes_mm)} {named.name} {shape.key}" if named else shape.example
    hint = f'count the {shape.key}: one tray is "{tray}"'
    return Misread(f'"{tin_word[1]}" may mean a cup or a whole tray', hint, *tin_word.span(1))


def _extras(shape: Shape, start: int, end: int) -> Misread:
    names = _list(size.name for size in shape.sizes[shape.main :])
    hint = f'write "{shape.extra_example}"'
    return Misread(f'"{shape.extra_word}" should be followed by the {names}', hint, start, end)


def _wrong_number(text: str, at: int, shape: Shape, lengths: list[_Length], depth: _Length | None) -> Misread:
    """The error for a size too few or too many."""
    if extra := lengths[shape.main + (depth is None) :]:
        hint = f'write "{shape.extra_example or shape.example}"'
        return Misread(f"too many sizes for a {shape.noun}", hint, extra[0][1], extra[-1][2])
    start, end = _trim(text, 0, len(text))
    if not lengths and shape.in_trays:
        sizes = _list(named.name for named in shape.named)
        return Misread("which cups?", f'there are {sizes}: write "{shape.example}"', start, end)
    missing = shape.sizes[len(lengths)].name
    too = " too" if lengths else ""
    return Misread(f"a {shape.noun} needs its {missing}{too}", f'write "{shape.example}"', start, end)
