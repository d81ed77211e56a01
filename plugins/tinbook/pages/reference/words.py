"""What the reference pages call each group of keys, and what they add about a file to the models' own words."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.models.register import SeenBy, SourceKind

TITLES: Mapping[str, str] = {
    "Mixture": "The recipe",
    "MixLine": "A line of the mix",
    "Bake": "The bake",
    "Step": "A step",
    "Variation": "A recipe that starts from another",
    "Change": "A change to the mix",
    "StepChange": "A step that differs",
    "Technique": "The technique",
    "Tool": "A tool",
    "Material": "A material",
    "Fault": "A fault and its cure",
    "Picture": "A picture",
    "Part": "A part",
    "Support": "A support",
    "Repeat": "A repeated mark",
    "House": "The house",
    "Scales": "The scales",
    "Oven": "The oven",
    "TinShelf": "The tins",
    "ShelfLine": "One of your tins",
    "Larder": "The ingredients",
    "Card": "The card for an ingredient",
    "Finish": "How cakes are finished",
    "Border": "A border",
    "Made": "What it is made with",
    "UsedLog": "What was used",
    "Used": "What one cake used",
    "BakeLog": "The bakes",
    "Baked": "One bake",
    "ColourCards": "The colours",
    "Colour": "A colour",
    "CutterDrawer": "The cutters",
    "OwnedCutter": "One of your cutters",
    "CakeDesign": "The cake",
    "DesignTier": "A tier",
    "DesignBoard": "The board",
    "DesignDecoration": "A decoration",
    "CakeVariation": "A cake that starts from another",
    "WorkingKitchen": "The kitchen",
    "WorkingHours": "Working hours",
    "SupplyShelf": "The supplies",
    "Supply": "One thing you buy",
    "StockLog": "The stock",
    "StockEntry": "One thing counted or bought",
    "Labelling": "The labels",
    "LabelSheet": "A sheet of labels",
    "OpenedLog": "The packs opened",
    "PackOpened": "One pack opened",
    "HouseMoney": "The money",
    "KeptUp": "The kitchen's keep",
    "OvenFuel": "What the oven uses",
    "PriceLog": "The prices",
    "PricePaid": "One price paid",
    "HoursLog": "The hours",
    "WorkDone": "One task done",
    "Order": "The order",
    "OrderChange": "A change for one order",
    "OrderedMixture": "A recipe ordered by itself",
    "OrderedClass": "A class",
}
"""The heading of each group, by its model. Short, because the list of contents uses them too."""
ADDRESSES: Mapping[str, str] = {
    "A change to the mix": "a-change-of-the-mix",
    "The card for an ingredient": "the-card-of-an-ingredient",
    "One of your tins": "a-tin-of-the-house",
    "One of your cutters": "a-cutter-of-the-house",
}
"""The address of a group on its page, if that is older than its heading."""
NEEDED = "Always needed."
SEEN: Mapping[SeenBy, str] = {
    SeenBy.EVERYONE: "",
    SeenBy.KITCHEN: "This file is private: it is never on a public site, and git leaves it out.",
    SeenBy.NOBODY: "This file is private: no page ever shows what is in it. It is used only in the calculations.",
}


def title_of(model: type[object]) -> str:
    """The heading of a group; the name of its model if it has none yet."""
    return TITLES.get(model.__name__, model.__name__)


def more_of(kind: SourceKind) -> str:
    """Who may see a file, and where it continues when it gets long; empty if there is nothing to say."""
    later = f"When it gets long, carry on in a file for the year, such as `{kind.of_year('2027').path}`."
    return " ".join(each for each in (SEEN[kind.seen_by], later if kind.by_year else "") if each)
