"""What holds a part: never through its front, and no longer than it is written."""

from __future__ import annotations

import pytest

from tinbook.facts import Facts
from tinbook.models import Part, read_model
from tinbook.plans.techniques.shapes import shape_of
from tinbook.plans.techniques.supports import SupportAt, support_at


def held(facts: Facts, s: float, **support: str) -> SupportAt:
    stick = {"what": "cocktail stick", "length": "7 mm", **support}
    keys = {"part": "a", "paste": "sugarpaste", "sheet": "rectangle 30 mm x 40 mm", "thick": "10 mm", "support": stick}
    part, flaws = read_model(Part, keys, "it")
    assert part is not None, flaws
    made = support_at(part, shape_of(part, s), s, facts)
    assert made is not None
    return made


def test_from_behind_it_stays_clear_of_the_front(facts: Facts) -> None:
    """10 mm thick at every size, 3 mm kept before it."""
    assert (held(facts, 1.0).reach_mm, held(facts, 1.0).shortened) == (7.0, False)
    assert (held(facts, 2.0).reach_mm, held(facts, 2.0).shortened) == (7.0, True)
    assert held(facts, 0.5).reach_mm == 3.5


def test_from_below_it_goes_by_the_height(facts: Facts) -> None:
    made = held(facts, 2.0, **{"goes in": "from below", "in the cake": "30 mm"})
    assert (made.room_mm, made.reach_mm, made.rest_mm) == pytest.approx((80.0, 14.0, 60.0))
    assert made.length_mm == pytest.approx(74.0)


def test_the_rest_may_stand_in_another_part(facts: Facts) -> None:
    """A tower's stick stands in its rock, not in the cake."""
    made = held(facts, 2.0, **{"goes in": "from below", "rest": "15 mm", "rest in": "rock"})
    assert (made.rest_in, made.rest_mm) == ("rock", 30.0)
    assert held(facts, 1.0, **{"in the cake": "15 mm"}).rest_in == ""
