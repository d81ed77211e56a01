"""The elevation on paper: the same outlines, with strokes of their own and no style sheet."""

from __future__ import annotations

from xml.etree import ElementTree

from tests.every import check_every

from tinbook.pages.cake.sheet_drawing import WIDE_MM, on_paper
from tinbook.pages.cake.size_view import CakeInSize

SHAPES = ("rect", "path", "ellipse")


def test_every_outline_is_there_and_nothing_wants_a_style_sheet(in_sizes: list[CakeInSize]) -> None:
    def check(size: CakeInSize) -> None:
        assert size.drawing is not None
        paper = on_paper(size.drawing, size.drawn)
        told = str(paper.svg)
        assert "class=" not in told and "var(" not in told and "style=" not in told
        drawn, own = (ElementTree.fromstring(text) for text in (told, str(size.drawing.svg)))
        outlines = [
            [each.get("d") or each.get("width") for each in tree.iter() if each.tag.rpartition("}")[2] in SHAPES]
            for tree in (drawn, own)
        ]
        assert outlines[0] == outlines[1]
        letters = [each for each in drawn.iter() if each.tag.endswith("text")]
        assert letters and all(float(each.get("font-size", "0")) > 0 for each in letters)
        assert 0 < paper.wide_mm <= WIDE_MM

    check_every(in_sizes, check)
