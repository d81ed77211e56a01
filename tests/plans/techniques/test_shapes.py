"""Shapes of parts: their volumes by hand, their lengths by name."""

from __future__ import annotations

from math import pi

import pytest
from tests.every import every

from tinbook.models import Part, read_model
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.techniques.shapes import shape_of


def part(**keys: str) -> Part:
    made, flaws = read_model(Part, {"part": "a", "paste": "sugarpaste", **keys}, "it")
    assert made is not None, flaws
    return made


@every(
    ("keys", "said", "names", "cm3"),
    [
        ({"solid": "ball 20 mm"}, "ball", ["across"], pi / 6 * 8),
        ({"solid": "half ball 20 mm"}, "half ball", ["across"], pi / 12 * 8),
        ({"solid": "flattened ball 20 mm, to 30 mm x 40 mm"}, "flattened ball", ["across", "pressed_to", "by"], pi / 6 * 8),
        ({"rope": "6 mm x 90 mm"}, "rope", ["thick", "long"], pi * 0.09 * 9),
        ({"strip": "15 mm x 120 mm", "thick": "2 mm"}, "strip", ["wide", "long", "thick"], 1.5 * 12 * 0.2),
        ({"sheet": "round 40 mm", "thick": "1 mm"}, "round sheet", ["across", "thick"], pi * 4 * 0.1),
        ({"sheet": "rectangle 30 mm x 20 mm", "thick": "1 mm"}, "rectangle sheet", ["wide", "high", "thick"], 0.6),
        ({"sheet": "M0 0H30V20Z", "thick": "1 mm"}, "sheet cut round a template", ["wide", "high", "thick"], 0.3),
    ],
)  # fmt: skip
def test_what_it_is_and_what_it_holds(keys: dict[str, str], said: str, names: list[str], cm3: float) -> None:
    shape = shape_of(part(**keys), 1.0)
    assert spell(shape.said) == said
    assert [name for name, _ in shape.lengths_mm] == names
    assert shape.volume_mm3 == pytest.approx(1000.0 * cm3)
    power = 3 if "solid" in keys or "rope" in keys else 2
    assert shape_of(part(**keys), 2.0).volume_mm3 == pytest.approx(shape.volume_mm3 * 2**power)
