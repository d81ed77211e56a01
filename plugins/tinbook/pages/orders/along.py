"""A day along time: a bar for each task, hatched by its order, its name beside it. Bars grow with the page, letters do
not: places across are in percent, the rest in px.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from tinbook.pages.orders.week import DayLines, TaskLine, fill_of

ROOM_PX = 610.0
"""How wide the drawing is at least: on a tablet held upright. Names are laid out for that."""
LETTER_PX = 7.6
"""How wide a letter is at most on average."""
LANE_PX, BAR_PX, BASE_PX = 30, 22, 16
GAP_PX = 14.0
FEWEST_LETTERS = 12


@dataclass(frozen=True, slots=True)
class DayHours:
    """The hours that a week's drawings share, minutes from midnight."""

    first_min: int
    last_min: int

    def percent(self, minute: float) -> float:
        """How far across a minute is."""
        return 100.0 * (minute - self.first_min) / (self.last_min - self.first_min)

    @property
    def marks(self) -> tuple[tuple[str, float], ...]:
        """Every other hour, and where it is."""
        return tuple(
            (f"{minute // 60:02}", self.percent(minute)) for minute in range(self.first_min, self.last_min + 1, 120)
        )


def hours_of(days: Iterable[DayLines]) -> DayHours:
    """From the first full hour of any day to the last, an even number of them."""
    lines = [line for each in days for line in each.lines]
    first = min((line.start_min for line in lines), default=480) // 60
    last = -(-max((min(line.end_min, 24 * 60) for line in lines), default=1080) // 60)
    return DayHours(60 * first, 60 * (last + (last - first) % 2))


def day_drawing(of: DayLines, hours: DayHours) -> Markup:
    """A day's bars in as few lanes as their names leave room for."""
    lanes = _lanes(of.lines, hours)
    high = LANE_PX * (max(lanes, default=0) + 1) + 4
    parts = [
        Markup('<line x1="{0:.2f}%" x2="{0:.2f}%" y2="{1}" class="tb-hour"/>').format(x, high) for _, x in hours.marks
    ]
    for line, lane in zip(of.lines, lanes, strict=True):
        parts.extend(_bar(line, hours, 4 + LANE_PX * lane))
    told = Markup("{0}: {1} tasks along time").format(of.name, len(of.lines))
    return Markup('<svg width="100%" height="{0}" role="img" aria-label="{1}">{2}</svg>').format(
        high, told, Markup("").join(parts)
    )


def label_of(line: TaskLine, hours: DayHours) -> tuple[str, bool]:
    """A name that is no longer than the drawing has room for, and whether it is on the right of its bar: where it fits,
    or where there is more room."""
    left, right = _px(line.start_min, hours) - GAP_PX, ROOM_PX - _px(line.end_min, hours) - GAP_PX
    name = line.words.partition(",")[0] if line.goes_out else line.words
    wide = len(name) * LETTER_PX
    on_right = wide <= right or (wide > left and right > left)
    most = max(FEWEST_LETTERS, int((right if on_right else left) / LETTER_PX))
    return name if len(name) <= most else f"{name[: most - 1].rstrip()}…", on_right


def _px(minute: int, hours: DayHours) -> float:
    return hours.percent(min(minute, hours.last_min)) * ROOM_PX / 100.0


def _lanes(lines: Sequence[TaskLine], hours: DayHours) -> list[int]:
    """For each line the first lane in which neither its bar nor its name meets another's."""
    taken: list[list[tuple[float, float]]] = []
    found = []
    for line in lines:
        span = _span(line, hours)
        lane = next((nth for nth, spans in enumerate(taken) if all(_apart(span, each) for each in spans)), len(taken))
        if lane == len(taken):
            taken.append([])
        taken[lane].append(span)
        found.append(lane)
    return found


def _apart(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[0] >= other[1] or other[0] >= one[1]


def _span(line: TaskLine, hours: DayHours) -> tuple[float, float]:
    """What a bar and its name take, px on the narrowest page."""
    start, end = _px(line.start_min, hours), _px(line.end_min, hours)
    name, on_right = label_of(line, hours)
    wide = len(name) * LETTER_PX + GAP_PX
    return (start, end + wide) if on_right else (start - wide, end + GAP_PX / 2.0)


def _bar(line: TaskLine, hours: DayHours, top: int) -> Iterator[Markup]:
    start, hands, end = (
        hours.percent(min(minute, hours.last_min)) for minute in (line.start_min, line.hands_end_min, line.end_min)
    )
    rect = Markup('<rect x="{:.2f}%" y="{}" width="{:.2f}%" height="{}" class="{}"{}/>')
    yield rect.format(
        start, top, hands - start, BAR_PX, "tb-hands", Markup(' style="fill:{}"').format(fill_of(line.hatch))
    )
    if line.oven_min:
        yield rect.format(hands, top, end - hands, BAR_PX, "tb-oven", "")
        middle = top + BAR_PX / 2
        yield Markup('<line x1="{:.2f}%" x2="{:.2f}%" y1="{}" y2="{}" class="tb-heat"/>').format(
            hands, end, middle, middle
        )
    if line.goes_out:
        yield Markup('<line x1="{0:.2f}%" x2="{0:.2f}%" y1="{1}" y2="{2}" class="tb-out"/>').format(
            start, top - 3, top + BAR_PX + 3
        )
    name, right = label_of(line, hours)
    yield Markup('<text x="{:.2f}%" dx="{}" y="{}" text-anchor="{}"{}>{}</text>').format(
        end if right else start, 6 if right else -6, top + BASE_PX, "start" if right else "end",
        Markup(' class="tb-out"') if line.goes_out else "", escape(name),
    )  # fmt: skip
