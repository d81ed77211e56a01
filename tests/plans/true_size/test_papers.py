"""Paper by its standards, and the sheets a drawing takes."""

from __future__ import annotations

import pytest

from tinbook.plans.true_size.drawn import Stroke, Template
from tinbook.plans.true_size.papers import PAPERS, on_its_side, on_paper
from tinbook.tins import Tin


def test_sizes() -> None:
    """A4: ISO 216:2007, 210 × 297 mm. Letter: ANSI/ASME Y14.1, 8.5 × 11 in. Both from memory."""
    sizes = {name: (paper.width_mm, paper.height_mm) for name, paper in PAPERS.items()}
    assert sizes == {"A4": (210.0, 297.0), "Letter": (pytest.approx(215.9), pytest.approx(279.4))}
    turned = on_its_side(PAPERS["A4"])
    assert (turned.name, turned.width_mm, turned.height_mm) == ("A4", 297.0, 210.0)


def test_a_round_of_20_cm_does_not_fit_a4() -> None:
    outline = Stroke.ring("cut", Tin(shape="round", sizes_mm=(200.0,)).outline_mm()[0])
    template = Template(key="x", name="X", size="", cake=Tin(shape="round", sizes_mm=(200.0,)), strokes=(outline,))
    tiles = on_paper(template, (182.0, 220.0), 12.0)
    assert [tile.name for tile in tiles] == ["A1", "A2"]
    pieces = [piece for tile in tiles for piece in tile.clipped(outline.points)]
    assert min(x for piece in pieces for x, _ in piece) == pytest.approx(-100.0)
    assert max(x for piece in pieces for x, _ in piece) == pytest.approx(100.0)
    assert len(on_paper(template, (201.0, 201.0), 12.0)) == 1
