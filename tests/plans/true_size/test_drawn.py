"""The neutral drawing: strokes, words, bounds."""

from __future__ import annotations

import pytest

from tinbook.pages.spelling.sayings import spell
from tinbook.plans.true_size.drawn import (
    KINDS,
    Label,
    Stroke,
    Template,
    axes,
    bounds,
    cross,
    grain,
    oval,
    ruler_size,
)
from tinbook.tins import Tin

SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0))


def test_a_ring_is_turned_over_and_closed() -> None:
    """Outlines have y upwards, paper has it downwards."""
    stroke = Stroke.ring("cut", SQUARE)
    assert stroke.points == ((0.0, 0.0), (10.0, 0.0), (10.0, -20.0), (0.0, -20.0), (0.0, 0.0))
    assert stroke.moved((5.0, 20.0)).points[2] == (15.0, 0.0)
    assert bounds([stroke]) == (0.0, -20.0, 10.0, 0.0)
    assert Label("A", (1.0, 2.0)).moved((3.0, 4.0)).at == (4.0, 6.0)


def test_a_template_knows_its_bounds_and_kinds() -> None:
    strokes = (Stroke.ring("hidden", SQUARE), Stroke("cut", ((-5.0, 0.0), (5.0, 0.0))))
    template = Template(key="x", name="X", size="", cake=Tin(shape="round", sizes_mm=(200.0,)), strokes=strokes)
    assert template.bounds_mm == (-5.0, -20.0, 10.0, 0.0)
    assert template.kinds == ("cut", "hidden"), "in the order of the key"
    assert all(spell(KINDS[kind]) for kind in template.kinds)


def test_middles_and_arrows() -> None:
    across, up = axes([Stroke.ring("cut", SQUARE)])
    assert across.points == ((0.0, -10.0), (10.0, -10.0)) and up.points == ((5.0, -20.0), (5.0, 0.0))
    assert {stroke.kind for stroke in cross((0.0, 0.0), 3.0)} == {"centre"}
    arrow = grain((10.0, 10.0), 14.0)
    assert bounds(arrow)[1] == 3.0 and bounds(arrow)[3] == 17.0


@pytest.mark.parametrize(("lengths", "said"), [((54.26, 60.0), "54.5 × 60 mm"), ((88.75,), "89 mm"), ((0.0,), "0 mm")])
def test_lengths_as_a_ruler_is_read(lengths: tuple[float, ...], said: str) -> None:
    assert spell(ruler_size(*lengths)) == said


def test_an_oval_is_closed_and_as_large_as_asked() -> None:
    points = oval((5.0, -3.0), 20.0, 10.0, 36)
    assert points[0] == pytest.approx(points[-1]) and len(points) == 37
    assert all(((x - 5.0) / 10.0) ** 2 + ((y + 3.0) / 5.0) ** 2 == pytest.approx(1.0) for x, y in points)
