"""Pages of paper as SVG and as plain data: they measure what the paper measures."""

from __future__ import annotations

import json
import re

import pytest
from defusedxml import ElementTree
from tests.pages.technique.test_true_size import OVERLAP, template

from tinbook.pages.technique.paper import LINES, PageWords, as_plain, page_line
from tinbook.pages.technique.true_size import paper_pages
from tinbook.plans.true_size.drawn import KINDS
from tinbook.plans.true_size.papers import PAPERS

SVG = "{http://www.w3.org/2000/svg}"


def test_the_drawing_measures_what_the_paper_measures() -> None:
    (page,) = paper_pages([template(100.0, 80.0)], PAPERS["Letter"], OVERLAP, "The house")
    svg = ElementTree.fromstring(str(page.svg))
    assert (svg.get("width"), svg.get("height"), svg.get("viewBox")) == ("215.9mm", "279.4mm", "0 0 215.9 279.4")
    assert svg.find(f"{SVG}title").text == "A frame & <so on>, for round 20 cm"
    groups = svg.findall(f"{SVG}g[@class]")
    assert len([path for group in groups for path in group]) == len(page.lines)
    cut = [path for group in groups for path in group if group.get("class") == "cut"]
    (frame,) = [path for path in cut if path.get("d").endswith("Z")]
    xs = [float(x) for x in re.findall(r"[ML]([\d.]+) ", frame.get("d"))]
    assert max(xs) - min(xs) == pytest.approx(100.0, abs=0.002)
    assert [each.text for each in svg.iter(f"{SVG}text")] == [each.text for each in page.words]
    assert any(each.get("stroke-dasharray") for each in groups)
    bare = ElementTree.fromstring(page.lined)
    assert not list(bare.iter(f"{SVG}text")) and len(list(bare.iter(f"{SVG}path"))) == len(page.lines)


def test_plain_data() -> None:
    pages = paper_pages([template(300.0, 300.0)], PAPERS["A4"], OVERLAP, "")
    told = json.loads(json.dumps(as_plain("Frames", pages)))
    assert told["title"] == "Frames" and len(told["pages"]) == 4
    first = told["pages"][0]
    assert first["title"] == "A frame & <so on>, for round 20 cm, A1" and first["drawing"].startswith("<svg ")
    assert {"x", "y", "text", "size_pt", "anchor", "turned", "figures"} == set(first["words"][0])
    # two decimals of a coordinate are enough
    far = [float(x) for x in re.findall(r"[ML]([\d.]+) ", first["drawing"])]
    near = [point[0] for line in pages[0].lines for point in line.points]
    assert max(abs(x - min(near, key=lambda each: abs(each - x))) for x in far) <= 0.005 + 1e-9


def test_a_line_knows_whether_it_is_closed() -> None:
    open_line, ring = page_line("cut", (0.0, 0.0), (1.0, 0.0)), page_line("fold", (0.0, 0.0), (1.0, 0.0), (0.0, 0.0))
    assert (open_line.closed, ring.closed) == (False, True)
    assert (open_line.path, ring.path) == ("M0.00 0.00L1.00 0.00", "M0.00 0.00L1.00 0.00Z")
    assert set(KINDS) <= set(LINES), "every kind of a drawing has its look"


def test_words_are_measured_in_points() -> None:
    """72 pt to the inch."""
    words = PageWords(x=10.0, y=20.0, text="A", size_pt=72.0, turned=True)
    assert words.size_mm == 25.4 and words.turn == "rotate(-90 10.000 20.000)"
