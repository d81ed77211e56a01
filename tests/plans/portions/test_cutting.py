"""Portions and their plans: against a published chart, and by laws; the pieces drawn against the Clipper library.

Clipper (through pyclipper) works in whole numbers and knows neither our geometry nor shapely.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pyclipper
import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, Finish, read_model
from tinbook.plans.portions.cut import Cut, Job, outline, outline_area, pieces_of
from tinbook.plans.portions.cutting import BOXES, HOUSE, Portion, cut_of, portion_sizes, ring_cut, room
from tinbook.tins import SHAPES, Tin, cutting, read_tin, standard_tins
from tinbook.units import METRIC

Table = Callable[[str], list[dict[str, str]]]
INCH = 25.4
SIZES = {"finger": (25.0, 25.0), "dessert": (25.0, 50.0), "slice": (38.0, 50.0)}
PORTIONS = [Portion(kind, *sides, "") for kind, sides in SIZES.items()]
ODD = [
    "outline M32 0H104V208H136V256H0V208H48V64L13 83V35Z x 5 cm",
    "outline M0 0H160V260H0Z M40 40H120V110H40Z M40 150H120V220H40Z x 5 cm",
]
CAKES = [tin for tin in standard_tins() if not tin.kind.in_trays] + [read_tin(text)[1] for text in ODD]
GRAIN = 1e-4
"""Clipper counts in these, mm."""


def path(ring: cutting.Ring) -> list[tuple[int, int]]:
    points = [(round(x / GRAIN), round(y / GRAIN)) for x, y in ring]
    return points if pyclipper.Orientation(points) else points[::-1]


def clipped(one: list[list[tuple[int, int]]], other: list[list[tuple[int, int]]], how: int) -> float:
    clipper = pyclipper.Pyclipper()
    clipper.AddPaths(one, pyclipper.PT_SUBJECT, True)
    if other:
        clipper.AddPaths(other, pyclipper.PT_CLIP, True)
    found = clipper.Execute(how, pyclipper.PFT_EVENODD, pyclipper.PFT_EVENODD)
    return sum(pyclipper.Area(part) for part in found) * GRAIN**2


def published(table: Table, column: str, sides: tuple[float, float]) -> list[tuple[str, str, int, Cut]]:
    """Each row of the chart in exact inches: shape, size, what it says, our plan. Its sheets are rectangles here."""
    found = []
    for row in table("portions_us_chart"):
        shape = {"sheet": "rectangle"}.get(row["shape"], row["shape"])
        tin = Tin(shape=shape, sizes_mm=tuple(sorted(float(size) * INCH for size in row["size_in"].split("x"))))
        portion = Portion("it", sides[0] * INCH, sides[1] * INCH, "")
        found.append((row["shape"], row["size_in"], int(row[column]), cut_of(tin, portion, 100.0)))
    return found


def test_the_published_dessert_column(table: Table) -> None:
    """The published chart for 1 x 2 in servings, named in the table's head. Hearts and petals are not held to it:
    its hearts serve more than area over portion, its petals far less; the page prints both beside ours. Nor is its
    hexagon of 6 in, which serves 12 where its area holds 11.7. That long cakes serve less is by its ovals, so these
    check the sum and not the share."""
    near = {"square": 0.0, "oval": 0.10, "hexagon": 0.18}
    for shape, size, theirs, cut in published(table, "wedding_1x2", (1.0, 2.0)):
        if shape == "round" and float(size) >= 6:
            assert cut.count == pytest.approx(theirs, rel=0.20 if float(size) < 8 else 0.05), size
        elif shape in near and theirs <= cut.count * cut.each:
            assert cut.count == pytest.approx(theirs, rel=near[shape] + 1e-9), (shape, size)
        if shape == "square":
            assert cut.way == "grid"
        if shape == "sheet":
            # the chart leaves the odd strip over; ours cuts it the other way
            assert theirs <= cut.count <= theirs * 1.19


def test_the_published_broad_column_of_squares(table: Table) -> None:
    """The published chart, 1.5 x 2 in, whole grids; ours adds what is left where the strip is cut the other way. Its
    other counts are printed beside ours and not held to."""
    squares = [(theirs, cut.count) for shape, _, theirs, cut in published(table, "party_1.5x2", (1.5, 2.0))
               if shape == "square"]  # fmt: skip
    assert len(squares) == 6
    assert all(theirs <= ours <= theirs * 1.13 for theirs, ours in squares), squares


def test_why_its_other_broad_counts_are_not_held_to(table: Table) -> None:
    """They are more portions than the cake has area for: 6 to 91 % more in rounds from 6 in, by this very table."""
    over = [
        theirs / room(cut.tin, Portion("broad", 1.5 * INCH, 2.0 * INCH, ""), 100.0) - 1.0
        for shape, _, theirs, cut in published(table, "party_1.5x2", (1.5, 2.0))
        if shape == "round"
    ]
    assert min(over) > 0.05
    assert max(over) == pytest.approx(0.91, abs=0.01)


def test_a_20_cm_round_is_the_drawing_the_plans_are_made_after() -> None:
    cut = cut_of(Tin(shape="round", sizes_mm=(200.0,)), PORTIONS[1], 100.0)
    assert (cut.count, cut.way, cut.counts) == (24, "strips", (5, 7, 7, 5))
    assert cut.edges_shown_mm == (0.0, 50.0, 100.0, 150.0, 200.0)
    assert cut.off_shown_percent == 6.2
    # By the circle: its outer quarters are 61.4 cm² in five, its inner ones 95.7 cm² in seven.
    assert [round(piece.area_mm2 / 100.0, 1) for piece in (pieces_of(cut) or ())][4:6] == [12.3, 13.7]


@every("portion", PORTIONS, ids=list(SIZES))
@every("tin", CAKES, ids=lambda tin: tin.name[:24])
def test_the_count_printed_is_the_count_drawn(tin: Tin, portion: Portion) -> None:
    """Pieces tile the outline within 0.1 %, none overlaps another, and all are about alike: never less than a portion by
    more than a hair where all are alike, and within the bounds of joined ones elsewhere."""
    for cut in filter(None, (cut_of(tin, portion, 100.0), ring_cut(tin, portion))):
        pieces = pieces_of(cut)
        assert pieces is not None
        assert len(pieces) * cut.parts == cut.count
        rings = [path(ring) for ring in outline(tin)]
        whole = clipped(rings, [], pyclipper.CT_UNION)
        paths = [[path(ring) for ring in piece.rings] for piece in pieces]
        areas = [clipped(piece, [], pyclipper.CT_UNION) for piece in paths]
        assert sum(areas) == pytest.approx(whole, rel=1e-3)
        # As much together as one by one: so none lies on another.
        clipper = pyclipper.Pyclipper()
        for piece in paths:
            clipper.AddPaths(piece, pyclipper.PT_SUBJECT, True)
        together = clipper.Execute(pyclipper.CT_UNION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
        holes = sum(len(piece.rings) > 1 for piece in pieces)
        if not holes:
            covered = sum(pyclipper.Area(part) for part in together) * GRAIN**2
            assert covered == pytest.approx(sum(areas), rel=1e-3)
        # Nothing of them lies outside.
        for piece, area in zip(paths, areas, strict=True):
            assert clipped(piece, rings, pyclipper.CT_INTERSECTION) == pytest.approx(area, rel=1e-3)
        mean = sum(areas) / len(areas)
        if tin.kind.solid == "upright":
            # A dome's pieces hold alike by volume, not by area.
            assert mean >= portion.area_mm2 * (1 - 1e-3)
            bound = {"strips": 0.07, "joined": 0.3}.get(cut.way, 0.01)
            assert max(abs(area / mean - 1.0) for area in areas) <= bound + 1e-3


SCALED = [key for key, shape in SHAPES.items() if shape.standard and not shape.in_trays]


@every("portion", PORTIONS, ids=list(SIZES))
@every("key", SCALED)
def test_a_larger_tin_never_serves_fewer(key: str, portion: Portion) -> None:
    """Cakes of one form, 3 mm by 3 mm wider; and never more than area, or volume, over portion."""
    base, last = SHAPES[key].standard[0][0], 0
    for step in range(400):
        width = base[0] + 3.0 * step
        if width > 420.0:
            break
        try:
            tin = Tin(shape=key, sizes_mm=tuple(size * width / base[0] for size in base))
        except ValueError:
            break
        count = cut_of(tin, portion, 100.0).count
        assert last <= count <= room(tin, portion, 100.0) * (1 + 1e-9), width
        last = count
    assert last > 10


def test_a_wider_or_a_longer_rectangle_never_serves_fewer() -> None:
    for portion in PORTIONS:
        for width in range(150, 400, 25):
            counts = [cut_of(Tin(shape="rectangle", sizes_mm=(float(width), float(width + more))), portion, 100.0).count
                      for more in range(0, 250, 5)]  # fmt: skip
            assert all(one <= other for one, other in pairwise(counts)), (portion.kind, width)


def test_rings_serve_as_many_as_strips() -> None:
    for width, many in ((150.0, 11), (200.0, 24), (300.0, 55)):
        tin = Tin(shape="round", sizes_mm=(width,))
        cut = ring_cut(tin, PORTIONS[1])
        assert cut is not None
        assert cut.count == cut_of(tin, PORTIONS[1], 100.0).count == many
    assert ring_cut(Tin(shape="square", sizes_mm=(200.0,)), PORTIONS[1]) is None


@every("tin", CAKES, ids=lambda tin: tin.name[:24])
def test_a_dessert_is_two_fingers(tin: Tin) -> None:
    fingers, desserts = (cut_of(tin, portion, 100.0).count for portion in PORTIONS[:2])
    assert abs(fingers / 2.0 - desserts) <= 1.0


def test_a_longer_or_a_wider_oval_never_serves_fewer() -> None:
    for portion in PORTIONS:
        for width in range(100, 300, 20):
            longer = [cut_of(Tin(shape="oval", sizes_mm=(float(width), float(width + more))), portion, 100.0).count
                      for more in range(0, 200, 4)]  # fmt: skip
            wider = [cut_of(Tin(shape="oval", sizes_mm=(float(width - less), float(width))), portion, 100.0).count
                     for less in range(0, width // 2, 4)]  # fmt: skip
            assert longer == sorted(longer) and wider[::-1] == sorted(wider), (portion.kind, width)


def test_a_round_serves_no_fewer_than_a_smaller_outline() -> None:
    """Whatever is not a whole grid, nor long, goes by its area alone."""
    for portion in PORTIONS:
        cakes = [tin for tin in CAKES if tin.kind.solid == "upright" and tin.shape not in BOXES and tin.shape != "oval"
                 and tin.shape != "outline"]  # fmt: skip
        counts = sorted((outline_area(tin), cut_of(tin, portion, 100.0).count) for tin in cakes)
        assert [count for _, count in counts] == sorted(count for _, count in counts)


def test_what_makers_serve() -> None:
    """Common practice, no source: fingers of a 15 cm round 20 to 25, of an 18 cm round 35 to 36; desserts of an 18 cm
    square 22 to 28."""
    finger, dessert = PORTIONS[:2]
    assert 20 <= cut_of(read_tin("round 15 cm")[1], finger, 100.0).count <= 25
    assert 35 <= cut_of(read_tin("round 18 cm")[1], finger, 100.0).count <= 36
    assert 22 <= cut_of(read_tin("square 18 cm")[1], dessert, 100.0).count <= 28


def test_domes_and_balls_are_shared_out_by_volume() -> None:
    """A half ball of 15 cm holds 884 ml: 7.07 of 125 ml, as much as a round of 10.6 cm, of which three quarters are
    served. A ball is both halves, each cut alike."""
    dome, ball = (cut_of(read_tin(f"{shape} 15 cm")[1], PORTIONS[1], 100.0) for shape in ("dome", "ball"))
    assert (dome.count, ball.count, ball.parts) == (5, 10, 2)
    # A taller portion is more cake, so fewer.
    assert cut_of(dome.tin, PORTIONS[1], 150.0).count == 3


def test_cups_are_one_each() -> None:
    assert cut_of(read_tin("standard cups")[1], PORTIONS[2], 100.0).count == 1


def test_a_cake_smaller_than_a_portion_serves_nobody() -> None:
    cut = cut_of(Tin(shape="round", sizes_mm=(50.0,)), Portion("asked", 100.0, 100.0, ""), 100.0)
    assert (cut.count, cut.way, pieces_of(cut)) == (0, "none", ())


def test_portions_of_the_house_go_before_those_of_the_trade(kitchen: Book, facts: Facts) -> None:
    plain = portion_sizes(kitchen, facts)
    sides = {kind: (each.short_mm, each.long_mm) for kind, each in plain.items()}
    assert sides == {kind: SIZES[kind] for kind in ("finger", "dessert")}
    assert plain["dessert"].said_by == "portion chart"
    finish, flaws = read_model(
        Finish, {"portions": {"dessert": "6 cm x 3 cm", "tea slice": "4 cm x 5 cm"}}, "it", METRIC
    )
    assert not flaws and finish
    book = Book(house=kitchen.house, finish=finish)
    own = portion_sizes(book, facts)
    assert (own["dessert"].short_mm, own["dessert"].long_mm, own["dessert"].said_by) == (30.0, 60.0, HOUSE)
    assert list(own) == ["finger", "dessert", "tea slice"]
    assert (own["tea slice"].short_mm, own["finger"]) == (40.0, plain["finger"])


def test_the_area_cut_is_the_area_of_the_outline() -> None:
    for tin in CAKES:
        assert outline_area(tin) == pytest.approx(cutting.area(outline(tin)), rel=2e-3), tin.name
        assert Job(tin, 25.0, 50.0, 100.0).size > 0.0
