"""Tins: their shapes, sizes, volumes and names. Add a shape by one file and one line in `register`."""

from tinbook.tins.measured import measure_fault, read_measured, says_measure
from tinbook.tins.reading import read_tin
from tinbook.tins.register import SHAPES
from tinbook.tins.sets import read_tins
from tinbook.tins.shape import NamedSize, Ring, Shape, Size, Sizes
from tinbook.tins.tin import Tin, standard_tins

__all__ = [
    "SHAPES", "NamedSize", "Ring", "Shape", "Size", "Sizes", "Tin", "measure_fault", "read_measured", "read_tin",
    "read_tins", "says_measure", "standard_tins",
]  # fmt: skip
