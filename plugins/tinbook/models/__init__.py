"""What a baker wrote, typed and frozen."""

from tinbook.models.book import Book, word_in
from tinbook.models.faults import read_model
from tinbook.models.house import FORMAT, Card, Each, House, Larder, OwnedTin, Scales, TinShelf, Weight
from tinbook.models.mixture import Bake, MixLine, Mixture, Step, Take, Technique, read_take
from tinbook.models.reading import Flaw, Leaf, Path

__all__ = [
    "FORMAT", "Bake", "Book", "Card", "Each", "Flaw", "House", "Larder", "Leaf", "MixLine", "Mixture", "OwnedTin",
    "Path", "Scales", "Step", "Take", "Technique", "TinShelf", "Weight", "read_model", "read_take",
    "word_in",
]  # fmt: skip
