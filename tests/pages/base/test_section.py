"""A stack in section: drawn to the scale it says, every part at its height, all of it told in words."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest

from tinbook.pages.base.section import LINE, WIDE, Section, section
from tinbook.plans.finish.elevations import Elevation
from tinbook.plans.finish.layers import Stack
from tinbook.tins import Tin

N = "\u00a0"
ROUND = Tin(shape="round", sizes_mm=(150.0,), depth_mm=75.0)
STACK = Stack(
    tin=ROUND, tins=2, batter_mm=44.0, baked_mm=66.0, levelled_mm=59.4, cut=2, layers=4, layer_mm=29.7, stack_mm=133.8, coated_mm=139.8, weight_g=1078.0, batter_shown_mm=44.0, baked_shown_mm=66.0, levelled_shown_mm=59.0, layer_shown_mm=30.0, stack_shown_mm=134.0, coated_shown_mm=140.0, weight_shown_g=1080.0
)  # fmt: skip
DRAWN = Elevation(
    stack=STACK, across_mm=150.0, tube_mm=0.0, filling_mm=5.0, crumb_mm=2.0, final_mm=4.0, board_mm=230.0, drum_mm=12.0
)
BOX = re.compile(r"M([\d.]+) ([\d.]+)V([\d.]+)H([\d.]+)V[\d.]+z")


def boxes(path: str) -> list[tuple[float, float, float, float]]:
    """Left, bottom, top and right of each box."""
    return [tuple(map(float, found)) for found in BOX.findall(path)]  # type: ignore[misc]


def mm(made: Section) -> float:
    """How long a millimetre is drawn, by the bar that says so."""
    return (made.scale_to - made.scale_at) / 100.0


def test_every_part_is_drawn_to_the_scale_of_its_bar() -> None:
    made = section(DRAWN, "2 × round")
    one = mm(made)
    layers, fillings = boxes(made.layers), boxes(made.fillings)
    assert (len(layers), len(fillings)) == (4, 3)
    for left, bottom, top, right in layers:
        assert right - left == pytest.approx(150 * one, abs=0.2)
        assert bottom - top == pytest.approx(29.7 * one, abs=0.2)
    for _, bottom, top, _ in fillings:
        assert bottom - top == pytest.approx(5 * one, abs=0.2)
    outer = max(boxes(made.final), key=lambda box: box[3] - box[0])
    assert outer[3] - outer[0] == pytest.approx(162 * one, abs=0.2)
    assert outer[1] - outer[2] == pytest.approx(139.8 * one, abs=0.2)
    ((left, bottom, top, right),) = boxes(made.drum)
    assert (right - left, bottom - top) == (pytest.approx(230 * one, abs=0.2), pytest.approx(12 * one, abs=0.2))
    assert made.ground == bottom


def test_layers_and_fillings_touch_and_reach_the_top() -> None:
    made = section(DRAWN, "2 × round")
    rising = sorted(boxes(made.layers) + boxes(made.fillings), key=lambda box: -box[1])
    for below, above in pairwise(rising):
        assert above[1] == pytest.approx(below[2], abs=0.11)
    crumb = max(boxes(made.crumb), key=lambda box: box[3] - box[0])
    assert rising[-1][2] - crumb[2] == pytest.approx(2 * mm(made), abs=0.2)


@pytest.mark.parametrize(
    ("across", "board", "stack"), [(400.0, 460.0, 60.0), (100.0, 180.0, 300.0), (150.0, None, 134.0)]
)
def test_nothing_leaves_the_drawing_and_words_keep_apart(across: float, board: float | None, stack: float) -> None:
    high = STACK._replace(stack_mm=stack, coated_mm=stack + 6, layer_mm=(stack - 15) / 4)
    made = section(replace(DRAWN, stack=high, across_mm=across, board_mm=board), "One")
    for _, bottom, top, right in boxes(made.layers + made.drum + made.final):
        assert 0 < top <= bottom <= made.ground and right < WIDE
    assert made.ground < made.height
    ys = [word.y for word in made.names]
    assert all(after - before >= LINE - 0.2 for before, after in pairwise(ys))
    assert max(ys) < made.height
    assert bool(made.drum) == (board is not None)


def test_its_figures_stand_at_it_and_in_words() -> None:
    made = section(DRAWN, "2 × round 15 cm")
    assert [word.text for word in made.names] == ["coats 6", "layer 30", "filling 5", "drum 230"]
    assert [word.text for word in made.heights] == ["134", "140"]
    assert made.widths[0].text == "150"
    assert made.words == (
        f"2 × round 15 cm in section: 4 layers of 30{N}mm with 5{N}mm of filling between, 134{N}mm high; "
        f"140{N}mm with 2{N}mm of crumb coat and 4{N}mm of final coat, on a 23{N}cm drum"
    )


def test_a_bare_cake_in_one_piece() -> None:
    one = STACK._replace(layers=1, cut=1, layer_mm=57.0, stack_mm=57.0, coated_mm=57.0, layer_shown_mm=57.0,
                         stack_shown_mm=57.0, coated_shown_mm=57.0)  # fmt: skip
    made = section(replace(DRAWN, stack=one, crumb_mm=0.0, final_mm=0.0), "Fruit cake")
    assert (made.fillings, made.crumb, made.final) == ("", "", "")
    assert [word.text for word in made.heights] == ["57"]
    assert "filling" not in made.words and "coat" not in made.words


def test_a_tube_is_a_hidden_line() -> None:
    assert section(DRAWN, "").tube == ""
    made = section(replace(DRAWN, tube_mm=50.0), "")
    left, right = (float(x) for x in re.findall(r"M([\d.]+)", made.tube))
    assert right - left == pytest.approx(50 * mm(made), abs=0.2)
