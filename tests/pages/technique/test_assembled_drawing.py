"""The drawing of a decoration put together: sound SVG, a letter for every part, lengths of paper true to its scale."""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from tinbook.loading import Loaded
from tinbook.pages.technique.assembled_drawing import assembled_drawn
from tinbook.plans.techniques.parts import Decoration, decorations

SVG = "{http://www.w3.org/2000/svg}"


def every(demo: Loaded) -> tuple[Decoration, ...]:
    return decorations(demo.book.techniques["lighthouse-for-the-front"], demo.book, demo.facts)


@pytest.mark.parametrize("scale", [1.0, 0.75, 0.5])
def test_every_letter_stands_in_it_once_and_apart(demo: Loaded, scale: float) -> None:
    for made in every(demo):
        drawn = assembled_drawn(made, scale)
        assert drawn is not None
        root = ElementTree.fromstring(str(drawn.svg))
        letters = {
            str(each.text): float(each.attrib["y"]) for each in root.iter(f"{SVG}text") if len(each.text or "") == 1
        }
        assert sorted(letters) == [each.letter for each in (*made.parts, *made.repeats)]
        ys = sorted(letters.values())
        assert all(low - high >= 5.9 for high, low in pairwise(ys))
        wide, high = (float(each) for each in root.attrib["viewBox"].split()[2:])
        assert wide == pytest.approx(drawn.wide_mm, abs=0.01) and max(ys) < high
        # nothing smaller than 9 pt, 3.18 mm
        assert min(float(each.attrib["font-size"]) for each in root.iter(f"{SVG}text")) >= 3.18


def test_lengths_are_true_to_the_scale(demo: Loaded) -> None:
    made = next(each for each in every(demo) if each.as_written)
    for scale in (1.0, 0.5):
        drawn = assembled_drawn(made, scale)
        assert drawn is not None
        root = ElementTree.fromstring(str(drawn.svg))
        outlines = [each.attrib["d"] for each in root.iter(f"{SVG}path") if each.attrib.get("class") == "tb-blank"]
        sizes = []
        for outline in outlines:
            xs, ys = zip(*((float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", outline)), strict=True)
            sizes.append(((max(xs) - min(xs)) / scale, (max(ys) - min(ys)) / scale))
        for wanted in ((36.0, 70.0), (32.0, 3.0), (16.0, 14.0), (22.0, 16.0), (12.0, 18.0)):
            assert any(each == pytest.approx(wanted, abs=0.05) for each in sizes), wanted
    assert drawn.high == "117 mm"


def test_names_inside_are_its_own(demo: Loaded) -> None:
    made = every(demo)[0]
    one, two = (assembled_drawn(made, 1.0, name) for name in ("one", "two"))
    assert one and two
    assert not set(re.findall(r'id="([^"]+)"', one.svg)) & set(re.findall(r'id="([^"]+)"', two.svg))


def test_parts_that_do_not_say_are_not_put_together(demo: Loaded) -> None:
    technique = demo.book.techniques["scalloped-board-edge"]
    assert assembled_drawn(decorations(technique, demo.book, demo.facts)[0]) is None
