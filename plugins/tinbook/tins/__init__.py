"""Tins: their shapes, sizes, volumes and names. Add a shape by one file and one line in `register`."""

from tinbook.tins.reading import read_tin
from tinbook.tins.register import SHAPES
from tinbook.tins.sets import read_tins
from tinbook.tins.shape import NamedSize, Ring, Shape, Size, Sizes
from tinbook.tins.tin import Tin, standard_tins

__all__ = ["SHAPES", "NamedSize", "Ring", "Shape", "Size", "Sizes", "Tin", "read_tin", "read_tins", "standard_tins"]
