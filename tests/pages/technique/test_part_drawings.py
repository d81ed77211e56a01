"""Drawings of parts and marks: sound SVG, a letter for each part, a mark for each point, all inside the picture."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from tinbook.loading import Loaded
from tinbook.pages.technique.part_drawings import WIDE, marks_drawn, parts_drawn
from tinbook.plans.techniques.parts import decorations

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(params=["lighthouse-for-the-front", "boat-on-the-shingle", "heron-for-the-side", "bream-with-scales"])
def slug(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_every_part_is_drawn_once_within_the_picture(demo: Loaded, slug: str) -> None:
    for made in decorations(demo.book.techniques[slug], demo.book, demo.facts):
        drawing = parts_drawn(made)
        assert drawing is not None
        root = ElementTree.fromstring(str(drawing.svg))
        letters = sorted(str(each.text) for each in root.iter(f"{SVG}tspan"))
        marks = [repeat.letter for repeat in made.repeats if repeat.on in {part.name for part in made.parts}]
        assert letters == sorted([*(part.letter for part in made.parts), *marks])
        assert re.fullmatch(r"\d+ mm", list(root.iter(f"{SVG}text"))[-1].text or "")
        high = float(root.attrib["viewBox"].split()[3])
        for path in _outlines(root):
            points = re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.attrib["d"])
            assert all(0 <= float(x) <= WIDE and 0 <= float(y) <= high for x, y in points)
        assert root.attrib["aria-label"] == drawing.title


def _outlines(root: ElementTree.Element) -> list[ElementTree.Element]:
    return [path for path in root.iter(f"{SVG}path") if path.attrib["d"].endswith("Z")]


def test_parts_of_a_row_stand_on_one_line(demo: Loaded) -> None:
    (made, *_) = decorations(demo.book.techniques["coil-of-rope"], demo.book, demo.facts)
    drawing = parts_drawn(made)
    assert drawing is not None
    root = ElementTree.fromstring(str(drawing.svg))
    feet = [
        max(float(y) for _, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.attrib["d"])) for path in _outlines(root)
    ]
    grounds = [
        float(path.attrib["d"].split()[1].split("H")[0])
        for path in root.iter(f"{SVG}path")
        if path.attrib.get("stroke-width") == "2.5"
    ]
    assert grounds and all(min(abs(foot - ground) for ground in grounds) < 0.11 for foot in feet)


def test_parts_are_drawn_to_one_scale(demo: Loaded) -> None:
    made = decorations(demo.book.techniques["lighthouse-for-the-front"], demo.book, demo.facts)[3]
    drawing = parts_drawn(made)
    assert drawing is not None
    root = ElementTree.fromstring(str(drawing.svg))
    scales = []
    for path, part in zip(_outlines(root), made.parts, strict=True):
        xs = [float(x) for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.attrib["d"])]
        scales.append((max(xs) - min(xs)) / part.width_mm)
    assert max(scales) == pytest.approx(min(scales), rel=0.02)


def test_a_mark_for_each_point(demo: Loaded, slug: str) -> None:
    for made in decorations(demo.book.techniques[slug], demo.book, demo.facts)[:4]:
        for each in made.repeats:
            drawing = marks_drawn(each, made.cake.name)
            root = ElementTree.fromstring(str(drawing.svg))
            (marks,) = root.findall(f".//{SVG}g/{SVG}path")
            assert marks.attrib["d"].count("M") == each.count
            assert str(each.count) in drawing.title
