"""Plans as drawn: every piece numbered, true to scale, the words in the order of the cuts."""

from __future__ import annotations

import re

import pytest
from tests.every import every

from tinbook.pages.at_a_glance.cut_drawings import PAPER_MM, drawn, steps
from tinbook.plans.portions.cut import pieces_of
from tinbook.plans.portions.cutting import Portion, cut_of, ring_cut
from tinbook.tins import read_tin

DESSERT, FINGER = Portion("dessert", 25.0, 50.0, ""), Portion("finger", 25.0, 25.0, "")
N = "\u00a0"


def cut(name: str, portion: Portion = DESSERT):  # type: ignore[no-untyped-def]
    return cut_of(read_tin(name)[1], portion, 100.0)


@every("name", ["round 20 cm", "square 20 cm", "heart 23 cm", "ring 23 cm", "petal 23 cm", "ball 15 cm"])
def test_every_piece_has_its_number(name: str) -> None:
    plan = cut(name)
    svg = drawn(plan, name, "it").svg
    numbers = re.search(r"<g class=tb-nos[^>]*>(.*?)</g>", svg)
    assert numbers is not None
    told = [int(found) for found in re.findall(r">(\d+)<", numbers[1])]
    assert told == list(range(1, sum(plan.counts) + 1))


def test_a_plan_that_fits_a4_stands_at_full_size() -> None:
    """Width of the drawing in mm on paper = width of its own units, which are mm of the cake."""
    small, large = drawn(cut("round 18 cm"), "it", "it"), drawn(cut("round 30 cm"), "it", "it")
    assert (small.paper_mm, "at full size" in small.scale) == (small.width_mm, True)
    box = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', small.svg)
    assert box is not None and float(box[1]) == pytest.approx(small.width_mm, abs=0.1)
    assert large.paper_mm <= PAPER_MM[0]
    ratio = re.search(r"1 : ([\d.]*\d)", large.scale)
    assert ratio is not None and large.width_mm / large.paper_mm == pytest.approx(float(ratio[1]))
    assert "h100" in small.svg and "100 mm" in small.svg


def test_steps_in_the_order_of_the_cuts() -> None:
    assert steps(cut("round 20 cm")) == (
        f"First make the long cuts, 50, 100 and 150{N}mm from the top edge.",
        "Then cut across into 5, 7, 7 and 5, from the top; the end pieces are longer, as drawn.",
        f"Every piece is within 6.2{N}% of the mean size.",
    )
    assert steps(cut("square 20 cm")) == (
        f"First make the long cuts, 50, 100 and 150{N}mm from the top edge.", "Then cut every strip across into 8.",
        "All the pieces are the same size.",
    )  # fmt: skip
    rings = ring_cut(read_tin("round 20 cm")[1], DESSERT)
    assert rings is not None
    assert (
        steps(rings)[0]
        == f"Cut straight down round a card {2 * rings.edges_shown_mm[1]:g}{N}mm across, laid on the middle."
    )
    assert steps(cut("ball 15 cm"))[0] == "Cut the ball in half, and lay both halves cut side down."
    assert steps(cut("standard cups")) == ("One each.",)
    assert "from the left edge" in steps(cut("oval 20 cm x 28 cm"))[0]
    joined = cut("outline M32 0H104V208H136V256H0V208H48V64L13 83V35Z x 5 cm", FINGER)
    assert "leave small bits on the piece beside them" in steps(joined)[1]
    assert drawn(joined, "it", "it").svg.count("<text") == len(pieces_of(joined) or ()) + 1
