"""A closed line drawn as an SVG path, in mm: `M0 0H80V160H0Z`. Commands M L H V C Q A Z, in either case.

Curves become short straight lines that stay within 0.005 mm of them. SVG counts downwards, tins upwards.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from itertools import pairwise

from tinbook.tins.shape import Ring
from tinbook.units import Misread

NEAR_MM = 0.01
FLAT_MM = 0.004
FAR_MM, FLATTEST_MM, LEAST_MM = 5000.0, 1e6, 1e-6
MOST_STEPS = 400
MOST_POINTS = 3000
ARGUMENTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "Q": 4, "A": 7, "Z": 0}
EXAMPLE = "M0 0H80V160H0Z"

_NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_FLAG = re.compile(r"[01]")
_GAP = re.compile(r"[\s,]*")
Point = tuple[float, float]
# Least and most x, its number, that of the line before it, both its ends.
Line = tuple[float, float, int, int, Point, Point]


@dataclass(kw_only=True)
class _Pen:
    """Where the pen is, the rings drawn so far, and for each line in them the span of the command that drew it."""

    at: Point = (0.0, 0.0)
    start: Point = (0.0, 0.0)
    points: list[Point] = field(default_factory=list)
    spans: list[tuple[int, int]] = field(default_factory=list)
    rings: list[Ring] = field(default_factory=list)
    drawn: list[tuple[int, int]] = field(default_factory=list)

    def line(self, to: Point, span: tuple[int, int]) -> None:
        if math.dist(to, self.at) > NEAR_MM / 2:
            self.points.append(to)
            self.spans.append(span)
        self.at = to

    def close(self, span: tuple[int, int]) -> None:
        if self.points and math.dist(self.points[-1], self.start) > NEAR_MM / 2:
            self.spans.append(span)
        elif self.points:
            self.points.pop()
        self.rings.append(tuple((x, -y) for x, y in (self.start, *self.points)))
        self.drawn += self.spans
        self.at, self.points, self.spans = self.start, [], []


def read_path(text: str, start: int, end: int, noun: str = "tin") -> tuple[Ring, ...]:
    """The rings of the path of a `noun` in text[start:end]. Raises Misread for one that is open or crosses, or no
    path."""
    pen, at, letter, begun = _Pen(), _GAP.match(text, start, end).end(), "", False  # type: ignore[union-attr]
    if at >= end:
        raise Misread("an outline needs its path", f'write it after "outline", in mm: "{EXAMPLE}"', start, end)
    start = at
    while at < end:
        came = at
        if text[at].isalpha():
            letter, at = text[at], at + 1
            if letter.upper() not in ARGUMENTS:
                hint = "write it with M L H V C Q A and Z, as drawing programs save it"
                raise Misread(f'"{letter}" is not a command in an outline', hint, came, at)
        elif letter.upper() in ("", "Z"):
            raise Misread(f'"{text[at]}" is where a command should be', f'begin with M, as in "{EXAMPLE}"', at, at + 1)
        elif letter.upper() == "M":
            letter = "L" if letter == "M" else "l"
        if letter.upper() != "M" and not begun:
            raise Misread("an outline starts with M", f'as in "{EXAMPLE}"', came, at)
        numbers, at = _numbers(text, at, end, letter, came)
        if letter.upper() == "M":
            if pen.points:
                raise _open(came, at)
            begun, pen.at = True, _moved(pen.at, numbers, letter.islower())
            pen.start = pen.at
        elif letter.upper() == "Z":
            pen.close((came, at))
        elif letter.upper() == "A" and not max(map(abs, numbers[:2])) <= FLATTEST_MM:
            raise Misread(f"this is bigger than any {noun}", "draw a line that is all but straight with L", came, at)
        else:
            _draw(pen, letter, numbers, (came, at))
        if not max(map(abs, pen.at)) <= FAR_MM or len(pen.drawn) + len(pen.points) > MOST_POINTS:
            raise Misread(f"this is bigger than any {noun}", "sizes are in mm: scale the drawing first", came, at)
        at = _GAP.match(text, at, end).end()  # type: ignore[union-attr]
    if pen.points or not pen.rings:
        raise _open(start, end)
    _check(pen, start, end, noun)
    return tuple(pen.rings)


def _open(start: int, end: int) -> Misread:
    return Misread("the outline is open", f'close the line with Z, as in "{EXAMPLE}"', start, end)


def _numbers(text: str, at: int, end: int, letter: str, came: int) -> tuple[list[float], int]:
    """The numbers a command needs, and where they end."""
    numbers: list[float] = []
    for index in range(ARGUMENTS[letter.upper()]):
        begin = _GAP.match(text, at, end).end()  # type: ignore[union-attr]
        flag = letter.upper() == "A" and index in (3, 4)
        number = (_FLAG if flag else _NUMBER).match(text, begin, end)
        if number is None:
            wants = ARGUMENTS[letter.upper()]
            message = f'"{letter}" is followed by {wants} {"number" if wants == 1 else "numbers"}'
            raise Misread(message, f'as in "{EXAMPLE}"', came, max(at, came + 1))
        numbers.append(float(number[0]))
        at = number.end()
    return numbers, at


def _moved(origin: Point, numbers: list[float], relative: bool) -> Point:
    """The last two numbers as a point."""
    x, y = numbers[-2:]
    return (origin[0] + x, origin[1] + y) if relative else (x, y)


def _draw(pen: _Pen, letter: str, numbers: list[float], span: tuple[int, int]) -> None:
    name, relative, begin = letter.upper(), letter.islower(), pen.at
    if name == "H":
        return pen.line((begin[0] * relative + numbers[0], begin[1]), span)
    if name == "V":
        return pen.line((begin[0], begin[1] * relative + numbers[0]), span)
    if name == "A":
        for point in _arc(begin, numbers, _moved(begin, numbers, relative)):
            pen.line(point, span)
        return None
    points = [_moved(begin, numbers[k : k + 2], relative) for k in range(0, len(numbers), 2)]
    for point in points if name == "L" else _bezier([begin, *points]):
        pen.line(point, span)
    return None


def _steps(wanted: float) -> int:
    return max(1, min(MOST_STEPS, math.ceil(wanted))) if math.isfinite(wanted) else MOST_STEPS


def _bezier(points: list[Point]) -> list[Point]:
    """Points along a quadratic or cubic curve. n steps stay within (second derivative) / (8 n²) of it."""
    degree = len(points) - 1
    bend = max(
        math.hypot(one[0] - 2 * two[0] + three[0], one[1] - 2 * two[1] + three[1])
        for one, two, three in zip(points, points[1:], points[2:], strict=False)
    )
    steps = _steps(math.sqrt(degree * (degree - 1) * bend / (8 * FLAT_MM)))
    curve = []
    for step in range(1, steps + 1):
        t, row = step / steps, points
        while len(row) > 1:
            row = [(one[0] + t * (two[0] - one[0]), one[1] + t * (two[1] - one[1])) for one, two in pairwise(row)]
        curve.append(row[0])
    return curve


def _arc(begin: Point, numbers: list[float], to: Point) -> list[Point]:
    """Points along an elliptical arc, by SVG 2, appendix B.2.4 and B.2.5."""
    rx, ry, turn = abs(numbers[0]), abs(numbers[1]), math.radians(numbers[2] % 360.0)
    if min(rx, ry) < LEAST_MM or begin == to:
        return [to]
    cos, sin = math.cos(turn), math.sin(turn)
    half_x, half_y = (begin[0] - to[0]) / 2, (begin[1] - to[1]) / 2
    x, y = cos * half_x + sin * half_y, cos * half_y - sin * half_x
    grow = math.sqrt(max(1.0, (x / rx) ** 2 + (y / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    over = (rx * y) ** 2 + (ry * x) ** 2
    root = math.sqrt(max(0.0, ((rx * ry) ** 2 - over) / over)) * (-1.0 if numbers[3] == numbers[4] else 1.0)
    cx, cy = root * rx * y / ry, -root * ry * x / rx
    first = math.atan2((y - cy) / ry, (x - cx) / rx)
    sweep = (math.atan2((-y - cy) / ry, (-x - cx) / rx) - first) % (2 * math.pi)
    if not numbers[4]:
        sweep -= 2 * math.pi
    steps = _steps(abs(sweep) / (2 * math.acos(max(0.0, 1 - FLAT_MM / max(rx, ry, 2 * FLAT_MM)))))
    middle_x, middle_y = (begin[0] + to[0]) / 2, (begin[1] + to[1]) / 2
    arc = []
    for step in range(1, steps):
        u = first + sweep * step / steps
        a, b = cx + rx * math.cos(u), cy + ry * math.sin(u)
        arc.append((cos * a - sin * b + middle_x, sin * a + cos * b + middle_y))
    return [*arc, to]


def _check(pen: _Pen, start: int, end: int, noun: str) -> None:
    if any(len(ring) < 3 for ring in pen.rings):
        raise Misread("this outline encloses nothing", f'draw once round the {noun}, as in "{EXAMPLE}"', start, end)
    crossed = crossing(pen.rings)
    if crossed is not None:
        message, hint = (
            "the outline crosses or touches itself",
            f"draw once round the {noun}, then round each hole in it",
        )
        raise Misread(message, hint, *pen.drawn[crossed])


def crossing(rings: list[Ring] | tuple[Ring, ...]) -> int | None:
    """The first line, counted through all rings, that crosses or touches an earlier one; None if none does."""
    lines: list[Line] = []
    for ring in rings:
        first = len(lines)
        for k, (one, two) in enumerate(zip(ring, (*ring[1:], ring[0]), strict=True)):
            before = first + (k - 1) % len(ring)
            lines.append((min(one[0], two[0]), max(one[0], two[0]), first + k, before, one, two))
    earliest: int | None = None
    active: list[Line] = []
    for line in sorted(lines):
        active = [other for other in active if other[1] >= line[0]]
        for other in active:
            if _meet(line, other):
                earliest = min(max(line[2], other[2]), len(lines) if earliest is None else earliest)
        active.append(line)
    return earliest


def _meet(
    line: tuple[float, float, int, int, Point, Point], other: tuple[float, float, int, int, Point, Point]
) -> bool:
    """Whether two lines have a point in common, apart from the joint between neighbours."""
    (_, _, here, before, a, b), (_, _, there, before_other, c, d) = line, other
    if before == there or before_other == here:
        # Neighbours share one end, and meet again only if one turns straight back along the other.
        joint, far, other_far = (a, b, c) if before == there else (b, a, d)
        p, q = (far[0] - joint[0], far[1] - joint[1]), (other_far[0] - joint[0], other_far[1] - joint[1])
        return abs(p[0] * q[1] - p[1] * q[0]) <= 1e-12 and p[0] * q[0] + p[1] * q[1] > 0
    if max(a[1], b[1]) < min(c[1], d[1]) or max(c[1], d[1]) < min(a[1], b[1]):
        return False
    return _side(a, b, c) * _side(a, b, d) <= 0 and _side(c, d, a) * _side(c, d, b) <= 0


def _side(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
