"""What a baker wrote, typed and frozen."""

from tinbook.models.book import Book, word_in
from tinbook.models.faults import read_model
from tinbook.models.finish import Border, Finish, Made, Used, UsedLog
from tinbook.models.house import FORMAT, Card, Each, House, Larder, OwnedTin, Scales, ShelfLine, TinShelf, Weight
from tinbook.models.mixture import Bake, MixLine, Mixture, Take, read_take
from tinbook.models.pictures import Copy, PictureFile
from tinbook.models.reading import Flaw, Leaf, Path
from tinbook.models.steps import Stand, Step
from tinbook.models.technique import Fault, Material, Picture, Technique, Tool
from tinbook.models.variation import NOT_TAKEN_OVER, Change, StepChange, Variation, Varies

__all__ = [
    "FORMAT",
    "NOT_TAKEN_OVER",
    "Bake",
    "Book",
    "Border",
    "Card",
    "Change",
    "Copy",
    "Each",
    "Fault",
    "Finish",
    "Flaw",
    "House",
    "Larder",
    "Leaf",
    "Made",
    "Material",
    "MixLine",
    "Mixture",
    "OwnedTin",
    "Path",
    "Picture",
    "PictureFile",
    "Scales",
    "ShelfLine",
    "Stand",
    "Step",
    "StepChange",
    "Take",
    "Technique",
    "TinShelf",
    "Tool",
    "Used",
    "UsedLog",
    "Variation",
    "Varies",
    "Weight",
    "read_model",
    "read_take",
    "word_in",
]
