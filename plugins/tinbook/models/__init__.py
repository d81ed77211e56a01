"""What a baker wrote, typed and frozen."""

from tinbook.models.bakes import Baked, BakeLog
from tinbook.models.book import Book, changed_book, word_in
from tinbook.models.cakes import CakeDesign, CakeVariation, DesignBoard, DesignDecoration, DesignTier
from tinbook.models.cards import Card, Each, Larder, Weight
from tinbook.models.colours import Colour, ColourCards, CutterDrawer, OwnedCutter
from tinbook.models.faults import read_model
from tinbook.models.finish import FEWEST_DOWELS, Border, Finish, Made, Used, UsedLog
from tinbook.models.forms import CUTTERS, SHEETS, SOLIDS, Cutter, Lengths, Sheet, Solid
from tinbook.models.house import FORMAT, House, Oven, Scales
from tinbook.models.mixture import Bake, MixLine, Mixture, Take, read_take
from tinbook.models.parts import BEHIND, SURFACES, Part, Repeat, Support
from tinbook.models.pictures import Copy, PictureFile
from tinbook.models.portions import Portions, read_sides
from tinbook.models.reading import Flaw, Path, Written
from tinbook.models.shelf import OwnedTin, ShelfLine, TinShelf
from tinbook.models.steps import Stand, Step
from tinbook.models.technique import Fault, Material, Picture, Technique, Tool
from tinbook.models.variation import NOT_TAKEN_OVER, Change, StepChange, Variation, Varies

__all__ = [
    "BEHIND",
    "CUTTERS",
    "FEWEST_DOWELS",
    "FORMAT",
    "NOT_TAKEN_OVER",
    "SHEETS",
    "SOLIDS",
    "SURFACES",
    "Bake",
    "BakeLog",
    "Baked",
    "Book",
    "Border",
    "CakeDesign",
    "CakeVariation",
    "Card",
    "Change",
    "Colour",
    "ColourCards",
    "Copy",
    "Cutter",
    "CutterDrawer",
    "DesignBoard",
    "DesignDecoration",
    "DesignTier",
    "Each",
    "Fault",
    "Finish",
    "Flaw",
    "House",
    "Larder",
    "Lengths",
    "Made",
    "Material",
    "MixLine",
    "Mixture",
    "Oven",
    "OwnedCutter",
    "OwnedTin",
    "Part",
    "Path",
    "Picture",
    "PictureFile",
    "Portions",
    "Repeat",
    "Scales",
    "Sheet",
    "ShelfLine",
    "Solid",
    "Stand",
    "Step",
    "StepChange",
    "Support",
    "Take",
    "Technique",
    "TinShelf",
    "Tool",
    "Used",
    "UsedLog",
    "Variation",
    "Varies",
    "Weight",
    "Written",
    "changed_book",
    "read_model",
    "read_sides",
    "read_take",
    "word_in",
]
