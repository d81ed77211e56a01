"""A decoration put together: what stands on what, by the lengths of its parts."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from shapely import Polygon

from tinbook.loading import Loaded
from tinbook.plans.techniques.parts import Decoration, decorations
from tinbook.plans.true_size.assembled import PutTogether, edge_mm, put_together

FIGURES = ("lighthouse-for-the-front", "boat-on-the-shingle", "heron-for-the-side", "gull-for-the-side",
           "bream-with-scales", "clump-of-thrift")  # fmt: skip
OVERHANG = {"gallery", "roof"}
"""Parts that are meant to be wider than what they stand on: a walk round the tower, and eaves."""


def made(demo: Loaded, slug: str = "lighthouse-for-the-front") -> Decoration:
    every = decorations(demo.book.techniques[slug], demo.book, demo.facts)
    return next(each for each in every if each.as_written)


def put(demo: Loaded, slug: str = "lighthouse-for-the-front", as_laid: bool = False) -> PutTogether:
    whole = put_together(made(demo, slug), as_laid)
    assert whole is not None
    return whole


def test_it_is_as_high_as_what_stands_on_each_other(demo: Loaded) -> None:
    """Rock as thick as its ball of 50 mm pressed to 84 x 70: π/6 50³ / (π/4 84 70) = 14.17 mm; then 70 + 3 + 14 + 16."""
    whole = put(demo)
    assert whole.high_mm == pytest.approx(50**3 / 6 / (84 * 70 / 4) + 70 + 3 + 14 + 16)
    assert whole.right_mm - whole.left_mm == pytest.approx(84.0)
    feet = {piece.letter: piece.foot_mm for piece in whole.pieces}
    rock = 50**3 / 6 / (84 * 70 / 4)
    assert [feet[letter] for letter in "GACDEF"] == pytest.approx([0, rock, rock + 70, rock + 73, rock + 87, rock])


def test_bands_are_at_their_thirds_and_follow_the_tower(demo: Loaded) -> None:
    whole = put(demo)
    tower = next(piece for piece in whole.pieces if piece.letter == "A")
    bands = [piece for piece in whole.pieces if piece.letter == "B"]
    middles = [(band.foot_mm + band.top_mm) / 2.0 - tower.foot_mm for band in bands]
    assert middles == pytest.approx([70 / 3, 140 / 3])
    # 1 mm thick, on a tower of 36 mm that is 24 mm at the top
    for band, middle in zip(bands, middles, strict=True):
        level = middle + tower.foot_mm
        assert edge_mm(band.rings, level) == pytest.approx(18.0 - 6.0 * middle / 70.0 + 1.0)


def test_what_is_covered_is_not_seen(demo: Loaded) -> None:
    whole = put(demo)
    tower = next(piece for piece in whole.pieces if piece.letter == "A")
    bands = [piece for piece in whole.pieces if piece.letter == "B"]
    seen = whole.seen_mm(tower)
    # below, between and above the bands; the door lies within
    assert sum(high - low for low, high in seen) == pytest.approx(70.0 - 2 * 10.0)
    assert not any(low < band.top_mm - 0.01 and high > band.foot_mm + 0.01 for low, high in seen for band in bands)
    assert tower.mark_letters == ("H",) and len(tower.marks) == 38


def test_the_stick_is_where_the_sums_have_it(demo: Loaded) -> None:
    whole = put(demo)
    (stick,) = whole.sticks
    held = made(demo).supports[0]
    tower = next(piece for piece in whole.pieces if piece.letter == "A")
    assert stick.x_mm == pytest.approx(0.0)
    assert (stick.high_mm - tower.foot_mm, tower.foot_mm - stick.low_mm) == pytest.approx((held.reach_mm, held.rest_mm))


def test_a_boat_stands_on_its_bank_and_its_sticks_go_through(demo: Loaded) -> None:
    """By hand: 5 mm of bank and a hull of 36; sticks 12 mm into the hull, 5 through the bank, 20 into the cake."""
    whole = put(demo, "boat-on-the-shingle")
    hull = next(piece for piece in whole.pieces if piece.letter == "B")
    assert (hull.foot_mm, hull.top_mm) == pytest.approx((5.0, 41.0))
    assert [(stick.low_mm, stick.high_mm) for stick in whole.sticks] == [pytest.approx((-20.0, 17.0))] * 2
    (held,) = made(demo, "boat-on-the-shingle").supports
    assert held.length_mm == pytest.approx(12.0 + 5.0 + 20.0)
    pebbles = [piece for piece in whole.pieces if piece.letter == "E"]
    # nine in a row, each in the middle of a ninth of the bank
    middles = [(each.left_mm + each.right_mm) / 2.0 for each in pebbles]
    assert middles == pytest.approx([150.0 / 9.0 * (nth - 4) for nth in range(9)])


def test_seven_stems_lean_out_of_a_cushion_each_with_its_head(demo: Loaded) -> None:
    """By hand: a ball of 40 mm pressed to 60 x 50 is π/6 40³ / (π/4 60 50) thick; a stem of 30 and a head of 12, each
    3 mm sunk into the next. The outermost leans 30°, 18 mm off the middle: its tip is 30 sin 30° further out."""
    whole = put(demo, "clump-of-thrift")
    assert whole.high_mm == pytest.approx(40**3 / 6 / (60 * 50 / 4) + 30 - 3 + 12 - 3)
    stems, heads = ([piece for piece in whole.pieces if piece.letter == letter] for letter in "BC")
    assert (len(stems), len(heads)) == (7, 7)
    middles = [(head.left_mm + head.right_mm) / 2.0 for head in heads]
    assert (middles[0], middles[3], middles[6]) == pytest.approx((-18.0 - 15.0, 0.0, 18.0 + 15.0))
    order = [piece.letter for piece in whole.pieces]
    assert order.index("B") < min(order.index("A"), order.index("C"))


def test_a_gull_has_a_wing_behind_it_and_a_heron_both_its_legs(demo: Loaded) -> None:
    gull = [piece.letter for piece in put(demo, "gull-for-the-side").pieces]
    assert gull.index("B") < gull.index("C") < gull.index("A") < len(gull) - 1 - gull[::-1].index("B")
    heron = put(demo, "heron-for-the-side")
    order = [piece.letter for piece in heron.pieces]
    assert order[:3] == ["D", "D", "A"]
    legs = [piece for piece in heron.pieces if piece.letter == "D"]
    assert [leg.top_mm - leg.foot_mm for leg in legs] == pytest.approx([46.0, 46.0])
    assert 120.0 < heron.high_mm < 130.0


def test_a_fish_that_is_laid_down_is_seen_from_above(demo: Loaded) -> None:
    """8 mm of body with fins of 18 and a bit on their edges; from above as long as its template, 168 mm."""
    above, front = put(demo, "bream-with-scales", as_laid=True), put(demo, "bream-with-scales")
    assert above.above and not front.above and put(demo, as_laid=True).above is False
    assert above.right_mm - above.left_mm == front.right_mm - front.left_mm == pytest.approx(168.0)
    body = next(part for part in made(demo, "bream-with-scales").parts if part.name == "body")
    fin = next(part for part in made(demo, "bream-with-scales").parts if part.name == "fin")
    assert above.high_mm == pytest.approx(body.height_mm) and front.high_mm == pytest.approx(8.0 + fin.height_mm)
    edges = [piece for piece in above.pieces if piece.letter == "B"]
    assert [round(edge.top_mm - edge.foot_mm, 6) for edge in edges] == [1.0, 1.0]


def test_the_parts_of_a_figure_really_fit(demo: Loaded) -> None:
    """Oracle: shapely. At every size each piece touches another, but for reeds, which stand by themselves; what stands
    on a part is no wider than that, unless it is meant; no stick is longer than what it goes through."""
    for slug in FIGURES:
        for sums in decorations(demo.book.techniques[slug], demo.book, demo.facts):
            whole = put_together(sums)
            assert whole is not None, slug
            parts = {part.name: part for part in sums.parts}
            letters = {part.letter: part.name for part in sums.parts}
            pieces = [(letters[piece.letter], Polygon(piece.rings[0]).buffer(0)) for piece in whole.pieces]
            assert [name for name, _ in pieces].count("wing") in (0, *(part.count for part in sums.parts))
            for nth, (name, outline) in enumerate(pieces):
                near = min(outline.distance(other) for at, (_, other) in enumerate(pieces) if at != nth)
                assert near < 0.2 or name == "reed", (slug, name, near)
            assert Counter(name for name, _ in pieces) == {part.name: part.count for part in sums.parts}
            for part in sums.parts:
                under = parts.get(part.stands_on)
                if under and part.name not in OVERHANG:
                    assert part.width_mm <= under.width_mm or part.sunk_mm, (slug, part.name)
                held = part.support
                if held and held.rest_in:
                    assert held.reach_mm <= part.height_mm and held.rest_mm <= parts[held.rest_in].low_mm, (slug, held)


def test_without_a_word_on_every_part_there_is_none(demo: Loaded) -> None:
    whole = made(demo)
    loose = tuple(replace(part, stands_on="", lies_on="") if part.letter == "E" else part for part in whole.parts)
    assert put_together(replace(whole, parts=loose)) is None
