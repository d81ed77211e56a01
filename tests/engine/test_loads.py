"""Tins on shelves and loads against a search on whole-number places, every way of parting the tins, and shapely.

Overlap, clearance and edges are checked by shapely (https://shapely.readthedocs.io), which knows nothing of the search.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import combinations

import pytest
from shapely import box
from tests.every import check_every

from tinbook.engine import loads
from tinbook.engine.loads import OnShelf, laid_out, least_loads

Sides = tuple[int, int]


@cache
def fits_by_search(tins: tuple[Sides, ...], shelf: Sides) -> bool:
    """Whether tins fit a shelf on whole-number places, by trying all of them."""
    width, depth = shelf

    def fill(left: tuple[Sides, ...], taken: int) -> bool:
        if not left:
            return True
        tin, *rest = left
        for w, d in {tin, tin[::-1]}:
            for x in range(width - w + 1):
                for y in range(depth - d + 1):
                    here = sum(1 << ((y + j) * width + x + i) for i in range(w) for j in range(d))
                    if not taken & here and fill(tuple(rest), taken | here):
                        return True
        return False

    return fill(tins, 0)


def holds(shelves: Sequence[Sequence[OnShelf]], tins: Sequence[Sides], shelf: Sides, gap: float) -> None:
    """Every tin once, at its size, inside the shelf and clear of the others by the gap: by shapely."""
    assert sorted(each.tin for on in shelves for each in on) == list(range(len(tins)))
    inside = box(gap, gap, shelf[0] - gap, shelf[1] - gap).buffer(1e-6)
    for on in shelves:
        boxes = [box(each.x_mm, each.y_mm, each.x_mm + each.wide_mm, each.y_mm + each.deep_mm) for each in on]
        for each, drawn in zip(on, boxes, strict=True):
            assert sorted((each.wide_mm, each.deep_mm)) == pytest.approx(sorted(tins[each.tin]))
            assert inside.contains(drawn)
        assert all(one.distance(other) >= gap - 1e-6 for one, other in combinations(boxes, 2))


def test_as_the_search_on_whole_numbers_says() -> None:
    """Small whole sizes: any layout can be pushed to whole places, so the search misses none."""
    dice, seen = random.Random(26), [0, 0]

    def check(_: int) -> None:
        shelf = dice.randint(4, 8), dice.randint(4, 7)
        tins = tuple((dice.randint(1, 4), dice.randint(1, 4)) for _ in range(dice.randint(1, 5)))
        found = laid_out(tins, shelf, 1, 0.0)
        wanted = fits_by_search(tuple(sorted(tins, reverse=True)), shelf)
        assert (found is not None) == wanted, (tins, shelf)
        seen[wanted] += 1
        if found:
            holds(found, tins, shelf, 0.0)

    check_every(range(400), check)
    assert min(seen) > 50


def test_a_pinwheel_is_found() -> None:
    """Four 2 by 3 round an empty middle: no rows hold them."""
    assert laid_out(((2, 3),) * 4, (5, 5), 1, 0.0) is not None
    assert laid_out(((2, 3),) * 5, (5, 5), 1, 0.0) is None


def test_clearance_shelves_and_nonsense() -> None:
    """A 44 by 36 cm shelf with a centimetre round every tin."""
    shelf, gap = (440.0, 360.0), 10.0
    assert laid_out(((250.0, 250.0), (150.0, 150.0)), shelf, 1, gap) is not None
    assert laid_out(((250.0, 250.0), (200.0, 200.0)), shelf, 1, gap) is None
    two = laid_out(((250.0, 250.0), (200.0, 200.0)), shelf, 2, gap)
    assert two is not None
    holds(two, ((250, 250), (200, 200)), (440, 360), gap)
    assert laid_out(((430.0, 100.0),), shelf, 1, gap) is None
    with pytest.raises(ValueError, match="more than 0"):
        laid_out(((0.0, 1.0),), shelf, 1, gap)
    with pytest.raises(ValueError, match="more than 0"):
        laid_out(((1.0, 1.0),), shelf, 1, -1.0)


def parted(tins: Sequence[int]) -> Iterator[list[list[int]]]:
    """Every way of parting tins into loads."""
    if not tins:
        yield []
        return
    first, *rest = tins
    for loads_ in parted(rest):
        yield [[first], *loads_]
        for nth in range(len(loads_)):
            yield [*loads_[:nth], [first, *loads_[nth]], *loads_[nth + 1 :]]


def test_least_loads_against_every_way_of_parting_up_to_eight_tins() -> None:
    """Random kinds of tin, windows and room: no way of parting the tins has fewer loads, or as few in less time."""
    dice = random.Random(8)

    def check(_: int) -> None:
        kinds = dice.randint(1, 4)
        counts = [1] * kinds
        for _ in range(dice.randint(0, 8 - kinds)):
            counts[dice.randrange(kinds)] += 1
        room, sizes = 10, [dice.randint(1, 10) for _ in range(kinds)]
        windows = [(low := dice.randint(20, 60), low + dice.randint(0, 25)) for _ in range(kinds)]

        def minutes(load: tuple[int, ...]) -> float | None:
            here = [kind for kind, count in enumerate(load) if count]
            latest, first = max(windows[kind][0] for kind in here), min(windows[kind][1] for kind in here)
            fits = sum(count * size for count, size in zip(load, sizes, strict=True)) <= room
            return float(latest) if fits and latest <= first else None

        found = least_loads(tuple(counts), minutes)
        assert found is not None and found.proven
        assert [sum(column) for column in zip(*found.loads, strict=True)] == counts
        took = [minutes(load) for load in found.loads]
        assert None not in took
        tins = [kind for kind, count in enumerate(counts) for _ in range(count)]
        best = min(
            (len(loads_), sum(times))
            for loads_ in parted(tins)
            if None not in (times := [minutes(tuple(map(load.count, range(kinds)))) for load in loads_])
        )
        assert (len(took), sum(filter(None, took))) == best

    check_every(range(60), check)


def test_one_that_goes_in_nowhere_and_very_many(monkeypatch: pytest.MonkeyPatch) -> None:
    assert least_loads((1, 1), lambda load: None if load[1] else 30.0) is None
    monkeypatch.setattr(loads, "MOST_STATES", 10)
    many = least_loads((7, 5), lambda load: 30.0 if sum(load) <= 4 else None)
    assert many is not None and not many.proven
    assert [sum(load) for load in many.loads] == [4, 4, 4]
