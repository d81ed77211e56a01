"""Shelf packing against laws and a search that tries every layout on small whole-number shelves."""

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.engine.packing import per_shelf

SIDE = st.floats(20.0, 500.0)
GAP = st.floats(0.0, 60.0)


@cache
def most_by_search(tin: tuple[int, int], shelf: tuple[int, int]) -> int:
    """The most tins on whole-number places, by trying all: the first free square is left or covered."""
    width, depth = shelf

    @cache
    def most(taken: int) -> int:
        free = next((square for square in range(width * depth) if not taken >> square & 1), None)
        if free is None:
            return 0
        best = most(taken | 1 << free)
        x, y = free % width, free // width
        for w, d in {tin, tin[::-1]}:
            if x + w > width or y + d > depth:
                continue
            here = sum(1 << ((y + j) * width + x + i) for i in range(w) for j in range(d))
            if not taken & here:
                best = max(best, 1 + most(taken | here))
        return best

    return most(0)


SMALL = [
    ((w, d), (shelf_w, shelf_d))
    for w in range(1, 5)
    for d in range(w, 5)
    for shelf_w in range(1, 8)
    for shelf_d in range(1, 6)
]


@every(("tin", "shelf"), SMALL)
def test_never_more_than_every_layout_tried(tin: tuple[int, int], shelf: tuple[int, int]) -> None:
    found, most = per_shelf(tin, shelf, 0.0), most_by_search(tin, shelf)
    # Rows miss at most the one tin that a pinwheel gains on shelves this small.
    assert most - 1 <= found <= most


def test_rows_find_the_most_nearly_always() -> None:
    missed = [(tin, shelf) for tin, shelf in SMALL if per_shelf(tin, shelf, 0.0) < most_by_search(tin, shelf)]
    # The pinwheel of four 2 x 3 tins round an empty square, and its like.
    assert ((2, 3), (5, 5)) in missed
    assert len(missed) <= len(SMALL) // 100


@given(width=SIDE, depth=SIDE, shelf=st.tuples(SIDE, SIDE), gap=GAP)
def test_turning_changes_nothing(width: float, depth: float, shelf: tuple[float, float], gap: float) -> None:
    count = per_shelf((width, depth), shelf, gap)
    assert per_shelf((depth, width), shelf, gap) == count
    assert per_shelf((width, depth), shelf[::-1], gap) == count


@given(tin=st.tuples(SIDE, SIDE), shelf=st.tuples(SIDE, SIDE), gap=GAP, more=st.floats(0.0, 100.0))
def test_room_helps_and_size_hinders(
    tin: tuple[float, float], shelf: tuple[float, float], gap: float, more: float
) -> None:
    count = per_shelf(tin, shelf, gap)
    assert per_shelf(tin, (shelf[0] + more, shelf[1]), gap) >= count
    assert per_shelf((tin[0] + more, tin[1]), shelf, gap) <= count
    assert per_shelf(tin, shelf, gap + more) <= count


@given(tin=st.tuples(SIDE, SIDE), shelf=st.tuples(SIDE, SIDE), gap=GAP)
def test_as_many_as_a_plain_grid_and_no_more_than_the_area(
    tin: tuple[float, float], shelf: tuple[float, float], gap: float
) -> None:
    def in_line(side: float, length: float) -> int:
        count = 0
        while (count + 1) * side + (count + 2) * gap <= length:
            count += 1
        return count

    count = per_shelf(tin, shelf, gap)
    for width, depth in (tin, tin[::-1]):
        assert count >= in_line(width, shelf[0]) * in_line(depth, shelf[1])
    assert count * tin[0] * tin[1] <= shelf[0] * shelf[1] * (1 + 1e-5)


@given(tin=st.tuples(SIDE, SIDE), shelf=st.tuples(SIDE, SIDE), gap=GAP)
def test_none_stands_where_one_does_not_fit(tin: tuple[float, float], shelf: tuple[float, float], gap: float) -> None:
    fits = any(w + 2 * gap <= shelf[0] and d + 2 * gap <= shelf[1] for w, d in (tin, tin[::-1]))
    count = per_shelf(tin, shelf, gap)
    assert count >= 1 or not fits
    barely = any(w + 2 * gap <= shelf[0] + 0.01 and d + 2 * gap <= shelf[1] + 0.01 for w, d in (tin, tin[::-1]))
    assert count == 0 or barely


@every(
    ("tin", "clearance", "count"),
    [
        ((150.0, 150.0), 25.0, 2),  # two across 44 cm; a second row of 15 cm needs 37.5 cm, and there are 36
        ((150.0, 150.0), 20.0, 4),
        ((200.0, 200.0), 10.0, 2),
        ((200.0, 200.0), 25.0, 1),
        ((400.0, 300.0), 20.0, 1),  # a tray of cups, just
        ((420.0, 340.0), 20.0, 0),
    ],
)
def test_a_shelf_of_44_by_36_cm_by_hand(tin: tuple[float, float], clearance: float, count: int) -> None:
    assert per_shelf(tin, (440.0, 360.0), clearance) == count


def test_decimals_do_not_lose_a_tin() -> None:
    # 3 x 0.1 is a hair more than 0.3 in the machine.
    assert per_shelf((0.1, 0.1), (0.3, 0.1), 0.0) == 3


@pytest.mark.parametrize(
    ("tin", "shelf", "gap"),
    [((0.0, 1.0), (1.0, 1.0), 0.0), ((1.0, 1.0), (1.0, -1.0), 0.0), ((1.0, 1.0), (1.0, 1.0), -1.0),
     ((1.0, float("nan")), (1.0, 1.0), 0.0)],
)  # fmt: skip
def test_what_cannot_be_is_refused(tin: tuple[float, float], shelf: tuple[float, float], gap: float) -> None:
    with pytest.raises(ValueError, match="more than 0"):
        per_shelf(tin, shelf, gap)
