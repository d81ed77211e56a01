"""The week along time: bars where the clock says, no name over another, none cut off on a tablet held upright."""

from __future__ import annotations

import random
import re
from dataclasses import replace

from tests.every import check_every

from tinbook.pages.orders.along import LETTER_PX, ROOM_PX, day_drawing, hours_of, label_of
from tinbook.pages.orders.week import DayLines, KitchenWeek, TaskLine, day_lines

RECT = re.compile(r'<rect x="([\d.]+)%" y="(\d+)" width="([\d.]+)%"')


def test_bars_stand_where_the_clock_says(planned_week: KitchenWeek) -> None:
    hours = hours_of(planned_week.days)
    assert hours.first_min % 60 == 0 and (hours.last_min - hours.first_min) % 120 == 0
    for day in planned_week.days:
        bars = [tuple(map(float, found)) for found in RECT.findall(day_drawing(day, hours))]
        hands = [(hours.percent(line.start_min), line.hands_min) for line in day.lines]
        assert {round(at, 2) for at, _ in hands} <= {round(bar[0], 2) for bar in bars}
        assert len(bars) == len(day.lines) + sum(bool(line.oven_min) for line in day.lines)


def shuffled(seed: int, of: TaskLine) -> DayLines:
    luck = random.Random(seed)
    lines = []
    for nth in range(luck.randint(1, 14)):
        start = 5 * luck.randint(72, 250)
        words = " ".join("wave" * luck.randint(1, 3) for _ in range(luck.randint(1, 9)))
        hands, oven = 5 * luck.randint(1, 30), 5 * luck.choice((0, 0, luck.randint(1, 30)))
        lines.append(
            replace(of, key=str(nth), start_min=start, hands_min=hands, oven_min=oven, words=words, hatch=nth % 6)
        )
    return day_lines(of.day, tuple(sorted(lines, key=lambda line: line.start_min)))


def test_names_and_bars_keep_clear_of_each_other(planned_week: KitchenWeek) -> None:
    """In every lane of random days, by the room a name is given on the narrowest page; and all within the page."""
    of = planned_week.days[0].lines[0]

    def case(seed: int) -> None:
        day = shuffled(seed, of)
        hours = hours_of([day])
        drawn = str(day_drawing(day, hours))
        tops = [int(top) for _, top, _ in RECT.findall(drawn)]
        spans: dict[int, list[tuple[float, float]]] = {}
        names = re.findall(r'<text x="([\d.]+)%" dx="(-?\d+)" y="(\d+)" text-anchor="(\w+)"[^>]*>([^<]*)<', drawn)
        assert len(names) == len(day.lines) and tops
        for at, _, y, anchor, name in names:
            px, wide = float(at) * ROOM_PX / 100, len(name) * LETTER_PX
            span = (px, px + wide) if anchor == "start" else (px - wide, px)
            assert span[0] > -1 - 12 * LETTER_PX and span[1] < ROOM_PX + 12 * LETTER_PX
            assert all(span[0] >= other[1] or other[0] >= span[1] for other in spans.get(int(y), [])), (seed, name)
            spans.setdefault(int(y), []).append(span)

    check_every(range(100), case)


def test_a_name_is_cut_only_where_there_is_no_room(planned_week: KitchenWeek) -> None:
    of = planned_week.days[0].lines[0]
    hours = hours_of([day_lines(of.day, (of,))])
    assert label_of(replace(of, words="Bake load 1"), hours)[0] == "Bake load 1"
    assert label_of(replace(of, words="x" * 300), hours)[0].endswith("…")
