"""An outline cut with a knife: straight strips cut across, or rings cut towards the middle. Lengths mm, areas mm².

Its modules need large libraries, so each is imported when something in it is first asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

__all__ = [
    "CutPiece",
    "Knife",
    "across",
    "area",
    "area_below",
    "back",
    "clipped",
    "convex_knife",
    "grid_knife",
    "grid_pieces",
    "piece_of",
    "polygons",
    "ring_knife",
    "ring_pieces",
    "roomiest",
    "spans",
    "strip_areas",
    "strip_edges",
    "strip_knife",
    "strip_of",
    "strip_pieces",
    "turned",
    "whole",
]

if TYPE_CHECKING:
    from tinbook.tins.cutting.areas import area, area_below, spans, strip_areas, strip_edges, turned
    from tinbook.tins.cutting.knives import Knife, convex_knife, grid_knife, ring_knife, strip_knife
    from tinbook.tins.cutting.pieces import (
        CutPiece,
        across,
        back,
        clipped,
        grid_pieces,
        piece_of,
        polygons,
        roomiest,
        strip_of,
        strip_pieces,
        whole,
    )
    from tinbook.tins.cutting.rings import ring_pieces
else:

    def __getattr__(name: str) -> Any:
        if name not in __all__:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        for module in map(import_module, (f"{__name__}.{part}" for part in ("areas", "pieces", "rings", "knives"))):
            globals().update((each, vars(module)[each]) for each in __all__ if each in vars(module))
        return globals()[name]
