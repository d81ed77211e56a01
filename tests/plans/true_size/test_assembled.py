"""A decoration put together: what stands on what, by the lengths of its parts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tinbook.loading import Loaded
from tinbook.plans.techniques.parts import Decoration, decorations
from tinbook.plans.true_size.assembled import PutTogether, edge_mm, put_together


def made(demo: Loaded) -> Decoration:
    every = decorations(demo.book.techniques["lighthouse-for-the-front"], demo.book, demo.facts)
    return next(each for each in every if each.as_written)


def put(demo: Loaded) -> PutTogether:
    whole = put_together(made(demo))
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


def test_without_a_word_on_every_part_there_is_none(demo: Loaded) -> None:
    whole = made(demo)
    loose = tuple(replace(part, stands_on="", lies_on="") if part.letter == "E" else part for part in whole.parts)
    assert put_together(replace(whole, parts=loose)) is None
