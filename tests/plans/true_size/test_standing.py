"""Decorations as they stand: flat parts lie, ropes are coiled, what hangs is seen from the front."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely import Polygon, union_all

from tinbook.loading import Loaded
from tinbook.plans.techniques.parts import Decoration, decorations
from tinbook.plans.true_size.assembled import put_together
from tinbook.plans.true_size.standing import APART_MM, as_it_stands, high_mm


def written(demo: Loaded, slug: str) -> Decoration:
    every = decorations(demo.book.techniques[slug], demo.book, demo.facts)
    return next(each for each in every if each.as_written)


def bounds(made: Decoration, hung: bool = False) -> tuple[float, ...]:
    return tuple(union_all([Polygon(ring).buffer(0) for ring in as_it_stands(made, hung)]).bounds)


def test_a_coil_lies_beside_its_bollard(demo: Loaded) -> None:
    """The post of 34 mm with its cap of 24 mm pressed to 34 x 34, 24³ / 6 / (34² / 4) thick; beside it, 10 mm high, a
    coil of 63.9 mm against two turns of 10 mm round 28 mm: 24 + 24 + 63.9 mm in all."""
    made = written(demo, "coil-of-rope")
    left, foot, right, top = bounds(made)
    assert (right - left, top - foot) == pytest.approx((24 + 24 + 63.9, 34 + 24**3 / 6 / (34**2 / 4)), abs=0.1)
    assert left == pytest.approx(-right) and foot == 0.0 and high_mm(made) == top
    # beyond the post nothing is higher than the rope
    beside = [ring for ring in as_it_stands(made) if min(x for x, _ in ring) > left + 47.9]
    assert [max(y for _, y in ring) for ring in beside] == pytest.approx([10.0])


def test_what_lies_flat_is_as_high_as_it_is_thick(demo: Loaded) -> None:
    """Scallops of 28 x 22 mm, rolled 2 mm thick, lie on the board; on a side they are seen from the front."""
    made = written(demo, "scalloped-board-edge")
    assert bounds(made) == pytest.approx((-14.0, 0.0, 14.0, 2.0))
    assert high_mm(made, hung=True) == pytest.approx(22.0)


def test_one_put_together_is_as_it_is_put_together(demo: Loaded) -> None:
    for slug in ("lighthouse-for-the-front", "boat-on-the-shingle", "clump-of-thrift"):
        made = written(demo, slug)
        whole = put_together(made)
        assert whole and high_mm(made) == pytest.approx(whole.high_mm)
        assert bounds(made)[2] * 2.0 == pytest.approx(whole.right_mm - whole.left_mm)


def test_parts_that_do_not_say_lie_and_stand_side_by_side(demo: Loaded) -> None:
    """The same coil without a word of what it lies on: post, cap pressed flat, coil of all the rope."""
    made = written(demo, "coil-of-rope")
    loose = replace(made, parts=tuple(replace(part, stands_on="", lies_on="", coiled=None) for part in made.parts))
    left, _, right, top = bounds(loose)
    # a straight rope is seen by its end
    assert (right - left, top) == pytest.approx((28 + 34 + 5 + 2 * APART_MM, 34.0))
    coiled = replace(
        loose, parts=tuple(replace(part, coiled=0 if part.form == "rope" else None) for part in loose.parts)
    )
    assert bounds(coiled)[2] * 2.0 == pytest.approx(28 + 34 + (560 * 10 * 4 / 3.14159265) ** 0.5 + 2 * APART_MM)
    assert as_it_stands(replace(made, parts=())) == () and high_mm(replace(made, parts=())) == 0.0
