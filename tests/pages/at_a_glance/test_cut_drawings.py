"""Plans as drawn: every piece numbered, true to scale, the words in the order of the cuts."""

from __future__ import annotations

import re

import pytest
from tests.every import every

from tinbook.pages.at_a_glance.cut_drawings import PAPER_MM, drawn, edge_path, steps
from tinbook.plans.portions.cut import knife_of, pieces_of
from tinbook.plans.portions.cutting import Portion, cut_of, ring_cut
from tinbook.tins import read_tin

DESSERT, FINGER = Portion("dessert", 25.0, 50.0, ""), Portion("finger", 25.0, 25.0, "")
N = "\u00a0"


def cut(name: str, portion: Portion = DESSERT):  # type: ignore[no-untyped-def]
    return cut_of(read_tin(name)[1], portion, 100.0)


@every("name", ["round 20 cm", "square 20 cm", "heart 23 cm", "ring 23 cm", "petal 23 cm", "ball 15 cm"])
def test_every_piece_has_its_number(name: str) -> None:
    plan = cut(name)
    svg = drawn(plan, name, "it", "edge").svg
    numbers = re.search(r"<g class=tb-nos[^>]*>(.*?)</g>", svg)
    assert numbers is not None
    told = [int(found) for found in re.findall(r">(\d+)<", numbers[1])]
    assert told == list(range(1, sum(plan.counts) + 1))


def test_a_plan_that_fits_a4_stands_at_full_size() -> None:
    """Width of the drawing in mm on paper = width of its own units, which are mm of the cake."""
    small, large = (drawn(cut(size), "it", "it", "edge") for size in ("round 18 cm", "round 30 cm"))
    assert (small.paper_mm, "at full size" in small.scale) == (small.width_mm, True)
    box = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', small.svg)
    assert box is not None and float(box[1]) == pytest.approx(small.width_mm, abs=0.1)
    assert large.paper_mm <= PAPER_MM[0]
    ratio = re.search(r"1 : ([\d.]*\d)", large.scale)
    assert ratio is not None and large.width_mm / large.paper_mm == pytest.approx(float(ratio[1]))
    assert "h100" in small.svg and "100 mm" in small.svg


def test_steps_in_the_order_of_the_cuts() -> None:
    assert steps(cut("round 20 cm")) == (
        f"First cut right across, 50, 100 and 150{N}mm from the far side.",
        "Then cut the strips the other way, into 5, 7, 7 and 5 pieces, from the far side; the end pieces are longer, as drawn.",
        "Every piece is within 6.2% of the average size.",
    )
    assert steps(cut("square 20 cm")) == (
        f"First cut right across, 50, 100 and 150{N}mm from the far side.", "Then cut each strip across into 8 pieces.",
        "All the pieces are the same size.",
    )  # fmt: skip
    rings = ring_cut(read_tin("round 20 cm")[1], DESSERT)
    assert rings is not None
    assert (
        steps(rings)[0]
        == f"Cut straight down round a card {2 * rings.edges_shown_mm[1]:g}{N}mm across, laid on the middle."
    )
    assert steps(cut("ball 15 cm"))[0] == "Cut the ball in half, and lay both halves cut side down."
    assert steps(cut("dome 10 cm")) == ("Leave it whole: it is one portion.",)
    assert steps(cut("ball 10 cm"))[1] == "Leave each half whole."
    assert steps(cut("ball 15 cm"))[1] == "Cut each half into 5 wedges, from the centre out."
    assert steps(cut("petal 15 cm"))[0] == "Cut it into 9 wedges, from the centre out."
    assert steps(cut("ring 23 cm"))[0] == "Cut the ring into 28 wedges, from the hole outwards."
    assert steps(cut("standard cups")) == ("One each.",)
    assert "from the left side" in steps(cut("oval 20 cm x 28 cm"))[0]
    joined = cut("outline M32 0H104V208H136V256H0V208H48V64L13 83V35Z x 5 cm", FINGER)
    assert "leave small bits on the piece beside them" in steps(joined)[1]
    assert drawn(joined, "it", "it", "edge").svg.count("<text") == len(pieces_of(joined) or ()) + 1


@every("name", ["round 20 cm", "heart 23 cm", "ring 23 cm", "oval 20 cm x 28 cm"])
def test_the_outline_is_drawn_once_and_lies_where_the_plan_does(name: str) -> None:
    tin = read_tin(name)[1]
    numbers = [float(figure) for figure in re.findall(r"-?[\d.]+", edge_path(tin))]
    xs, ys = numbers[::2], numbers[1::2]
    wide, tall = tin.bounds_mm
    assert max(xs) - min(xs) == pytest.approx(wide, abs=0.5) and max(ys) - min(ys) == pytest.approx(tall, abs=0.5)
    plan = drawn(cut_of(tin, DESSERT, 100.0), name, "it", "edge")
    uses = re.findall(r'<use href="#edge" x=([\d.]+) y=([\d.]+) ([^/]*)/>', plan.svg)
    assert [rest.strip() for *_, rest in uses] == ["clip-rule=evenodd", "class=tb-edge"]
    assert len({(x, y) for x, y, _ in uses}) == 1
    # with the drawing's margins it stands inside the picture
    x, y = map(float, uses[0][:2])
    assert x + min(xs) > 2.9 and y + min(ys) > 2.9 and x + max(xs) < plan.width_mm - 2.9


def test_cuts_are_as_short_as_they_can_be_written_and_end_where_they_should() -> None:
    """Followed from point to point, the knife's lines are those of the plan, to a tenth of a mm."""
    plan = ring_cut(read_tin("round 20 cm")[1], DESSERT)
    assert plan is not None
    knife = knife_of(plan)
    path = re.search(r'url\(#in-it\)" d="([^"]*)"', drawn(plan, "it", "it", "edge").svg)
    assert knife is not None and path is not None
    x, y = 103.0, 103.0
    ends = []
    for move, rest in re.findall(r"M([\d. -]+)((?:h|v|l)[\d. -]+)", path[1]):
        start = [float(figure) for figure in re.findall(r"-?[\d.]+", move)]
        by = [float(figure) for figure in re.findall(r"-?[\d.]+", rest[1:])]
        across, down = {"h": (by[0], 0.0), "v": (0.0, by[0]), "l": (by[0], by[-1])}[rest[0]]
        ends.append((start[0], start[1], start[0] + across, start[1] + down))
    meant = [(a + x, y - b, c + x, y - d) for (a, b), (c, d) in knife.lines]
    assert len(ends) == len(meant) > 10
    for found, wanted in zip(ends, meant, strict=True):
        assert found == pytest.approx(wanted, abs=0.06)
