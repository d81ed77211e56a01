"""Tins: their shapes, sizes, volumes and names. To add a shape, add one file and one line in `register`."""

from tinbook.tins.measured import measure_fault, read_measured, says_measure
from tinbook.tins.reading import read_tin
from tinbook.tins.register import SHAPES, SOLD_IN
from tinbook.tins.sets import read_tins
from tinbook.tins.shape import NamedSize, Ring, Shape, Size, Sizes
from tinbook.tins.tin import Tin, standard_tins
from tinbook.tins.trade import true_mm

__all__ = [
    "SHAPES", "SOLD_IN", "NamedSize", "Ring", "Shape", "Size", "Sizes", "Tin", "measure_fault", "read_measured",
    "read_tin", "read_tins", "says_measure", "standard_tins", "true_mm",
]  # fmt: skip
