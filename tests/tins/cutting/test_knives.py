"""Where the knife goes: the cuts, against the pieces they make."""

from __future__ import annotations

import pytest

from tinbook.tins import Tin, cutting


def test_the_cuts_of_rings() -> None:
    knife = cutting.ring_knife(Tin(shape="round", sizes_mm=(200.0,)).outline_mm(), (60.0,), (8, 4))
    assert (len(knife.lines), knife.circles, len(knife.middles)) == (12, (60.0,), 12)


def test_the_cuts_of_a_grid() -> None:
    rings = Tin(shape="rectangle", sizes_mm=(200.0, 300.0)).outline_mm()
    knife = cutting.grid_knife(rings, 4, 3)
    assert len(knife.lines) == 2 + 3 * 3
    pieces = cutting.grid_pieces(rings, 4, 3)
    assert [place for middle in knife.middles for place in middle] == pytest.approx(
        [place for piece in pieces for place in piece.middle]
    )


@pytest.mark.parametrize(("key", "sizes"), [("round", (200.0,)), ("hexagon", (230.0,)), ("oval", (200.0, 280.0))])
def test_an_outline_without_hollows_is_cut_where_its_pieces_meet(key: str, sizes: tuple[float, ...]) -> None:
    """`convex_knife`, which makes no pieces, against `strip_knife`, which reads the cuts off them."""
    rings, counts = Tin(shape=key, sizes_mm=sizes).outline_mm(), (3, 5, 3)
    edges = cutting.strip_edges(rings, [count / 11 for count in counts])
    pieces = cutting.strip_pieces(rings, edges, counts)
    assert pieces is not None
    quick, slow = cutting.convex_knife(rings, edges, counts), cutting.strip_knife(rings, edges, pieces, counts)
    assert len(quick.lines) == len(slow.lines) == 2 + 2 + 4 + 2
    for ours, theirs in zip(quick.lines, slow.lines, strict=True):
        assert ours[0] == pytest.approx(theirs[0], abs=0.2)
        assert ours[1] == pytest.approx(theirs[1], abs=0.2)
    assert len(quick.middles) == len(pieces)
