"""What the pages of reference call groups of keys and the house's files, and say of them beside the models' own words."""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.models.register import SeenBy, SourceKind

TITLES: Mapping[str, str] = {
    "Mixture": "The recipe",
    "MixLine": "A line of the mix",
    "Bake": "The bake",
    "Step": "A step",
    "Variation": "A recipe that starts from another",
    "Change": "A change of the mix",
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
    "ShelfLine": "A tin of the house",
    "Larder": "The ingredients",
    "Card": "The card of an ingredient",
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
    "OwnedCutter": "A cutter of the house",
}
"""The heading of each group, by its model. Short, as they stand in the list of contents too."""
NEEDED = "It has to be there."
SEEN: Mapping[SeenBy, str] = {
    SeenBy.EVERYONE: "",
    SeenBy.KITCHEN: "It is private: no public site shows anything of it, and no repository holds it.",
    SeenBy.NOBODY: "It is private: no page shows what stands in it, and only the sums go by it.",
}


def title_of(model: type[object]) -> str:
    """The heading of a group; its model's own name for one that has none yet."""
    return TITLES.get(model.__name__, model.__name__)


def seen(kind: SourceKind) -> str:
    """Who may see a file, and where it goes on when it is long; empty for one that everyone may, and is never long."""
    later = f"When it grows long, go on in a file for each year, such as `{kind.of_year('2027').path}`."
    return " ".join(each for each in (SEEN[kind.seen_by], later if kind.by_year else "") if each)
