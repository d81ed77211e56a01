"""The register of what a book is written in: every file of the house, every folder, and who may see what stands there.

What reads the files, the JSON Schemas, a new book, what a public site may show, and the table in DEVELOPERS.md are made
from it. Another file of the house is its model and one line here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import Enum
from typing import Any

from tinbook.models.bakes import Baked, BakeLog
from tinbook.models.cakes import CakeDesign, CakeVariation
from tinbook.models.cards import Card, Larder
from tinbook.models.colours import Colour, ColourCards, CutterDrawer, OwnedCutter
from tinbook.models.finish import Finish, Used, UsedLog
from tinbook.models.house import FORMAT, House
from tinbook.models.mixture import Mixture
from tinbook.models.reading import Written
from tinbook.models.shelf import ShelfLine, TinShelf
from tinbook.models.technique import Technique
from tinbook.models.variation import Variation


class SeenBy(Enum):
    """Who may see what stands in a file."""

    EVERYONE = "everyone"
    """It may stand on a public site, but for what is marked private."""
    KITCHEN = "the kitchen"
    """It is in the kitchen's own build alone, and in no repository: a new book's .gitignore names it."""
    NOBODY = "nobody: it is used only in the calculations"
    """Its words are dropped as it is read; only the keys that sums go by are `kept`."""


class Merged(Enum):
    """What becomes of what is written."""

    WHOLE = "a single object"
    LIST = "entries in a list"
    CARDS = "entries by name"
    FOLDER = "a file each, by its name"


@dataclass(frozen=True, kw_only=True)
class SourceKind:
    """One file of the house, or one folder of files.

    `path` is where it lies in recipes/; `field` the field of `Book` it fills (empty: `Book.others`, by `name`). Entries
    of a list or by name stand under `key`, each of the model `entry`. `spoken`: what an entry and the whole are called.
    `kept`: the keys that stay of an entry which may not be shown, because sums and safety go by them; without any such
    an entry is left out whole. `blank`: what one thing is where nothing is written, or all of it is held back.
    `by_year`: a list that grows, and goes on in a file for each year beside the first (`house/bakes-2026.yaml`).
    """

    name: str
    model: type[Written]
    path: str
    merged: Merged
    seen_by: SeenBy
    field: str = ""
    key: str = ""
    entry: type[Written] | None = None
    spoken: tuple[str, str] = ("an entry", "the file")
    kept: frozenset[str] = frozenset()
    blank: Written | None = None
    by_year: bool = False

    @property
    def address(self) -> str:
        """`house/bakes` of a file, `mixtures/` of a folder."""
        return self.path.removesuffix("*.yaml").removesuffix(".yaml")

    @property
    def paths(self) -> tuple[str, ...]:
        """Every path it may lie in, `*` for any name."""
        return (self.path, f"{self.address}-*.yaml") if self.by_year else (self.path,)

    def of_year(self, year: str) -> SourceKind:
        """The file in which it goes on in a year."""
        return replace(self, path=f"{self.address}-{year}.yaml")

    @property
    def room(self) -> str:
        """The folder of recipes/ it lies in."""
        return self.path.partition("/")[0]

    @property
    def nothing(self) -> Any:
        """What stands in the book where there is none of it."""
        if self.merged is Merged.WHOLE:
            return self.blank
        return () if self.merged is Merged.LIST else {}


REGISTER: tuple[SourceKind, ...] = (
    SourceKind(
        name="house", model=House, path="house/house.yaml", merged=Merged.WHOLE, seen_by=SeenBy.EVERYONE,
        field="house", spoken=("", "house.yaml"), blank=House(book=str(FORMAT), name="House book"),
    ),
    SourceKind(
        name="tins", model=TinShelf, path="house/tins.yaml", merged=Merged.LIST, seen_by=SeenBy.EVERYONE,
        field="tins", key="tins", entry=ShelfLine, spoken=("this tin", "the list of tins"),
    ),
    SourceKind(
        name="ingredients", model=Larder, path="house/ingredients.yaml", merged=Merged.CARDS, seen_by=SeenBy.EVERYONE,
        field="cards", key="ingredients", entry=Card, spoken=('the card for "{}"', "the list of ingredients"),
        kept=frozenset((
            "weighs as", "weighs", "each", "allergens", "care", "raises", "counts as", "plain",
        )),
    ),
    SourceKind(
        name="finish", model=Finish, path="house/finish.yaml", merged=Merged.WHOLE, seen_by=SeenBy.EVERYONE,
        field="finish", spoken=("", "finish.yaml"), blank=Finish(),
    ),
    SourceKind(
        name="used", model=UsedLog, path="house/used.yaml", merged=Merged.LIST, seen_by=SeenBy.NOBODY,
        field="used", key="used", entry=Used, spoken=("this entry", "the log of amounts used"),
        kept=frozenset(("day", "of", "cake", "height", "layers", "used")), by_year=True,
    ),
    SourceKind(
        name="bakes", model=BakeLog, path="house/bakes.yaml", merged=Merged.LIST, seen_by=SeenBy.EVERYONE,
        field="bakes", key="bakes", entry=Baked, spoken=("this bake", "the bake log"), by_year=True,
    ),
    SourceKind(
        name="colours", model=ColourCards, path="house/colours.yaml", merged=Merged.CARDS, seen_by=SeenBy.EVERYONE,
        field="colours", key="colours", entry=Colour, spoken=('the colour "{}"', "the list of colours"),
        kept=frozenset(("swatch", "deepens", "fades", "browns", "additives")),
    ),
    SourceKind(
        name="cutters", model=CutterDrawer, path="house/cutters.yaml", merged=Merged.LIST, seen_by=SeenBy.EVERYONE,
        field="cutters", key="cutters", entry=OwnedCutter, spoken=("this cutter", "the list of cutters"),
    ),
    SourceKind(
        name="mixture", model=Mixture, path="mixtures/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="mixtures", spoken=("a mixture", "the mixtures"),
    ),
    SourceKind(
        name="technique", model=Technique, path="techniques/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="techniques", spoken=("a technique", "the techniques"),
    ),
    SourceKind(
        name="cake", model=CakeDesign, path="cakes/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="cakes", spoken=("a cake", "the cakes"),
    ),
)  # fmt: skip


VARIATIONS: Mapping[type[Written], type[Written]] = {Mixture: Variation, CakeDesign: CakeVariation}
"""What a file in a folder is that starts `from` another, by what it is if it does not."""


def kinds() -> Mapping[str, SourceKind]:
    """Every line of the register, by its name, in its order."""
    return {kind.name: kind for kind in REGISTER}


def house_files() -> tuple[str, ...]:
    """The names of the files in recipes/house, without .yaml."""
    return tuple(kind.address.partition("/")[2] for kind in REGISTER if kind.room == "house")


def goes_on(name: str) -> SourceKind | None:
    """The log that a file of recipes/house goes on with (`bakes-2026`), by its name without .yaml."""
    first, _, year = name.rpartition("-")
    logs = (kind for kind in REGISTER if kind.by_year and kind.address == f"house/{first}")
    return next(logs, None) if len(year) == 4 and year.isascii() and year.isdigit() else None


def log_of(address: str) -> SourceKind | None:
    """The log that goes on by year and that stands, or goes on, at an address (`house/bakes`, `house/bakes-2026`)."""
    logs = (kind for kind in REGISTER if kind.by_year and kind.address == address)
    return next(logs, None) or goes_on(address.removeprefix("house/"))


def rooms() -> tuple[str, ...]:
    """The folders of recipes/ that files of the book lie in."""
    return tuple(dict.fromkeys(kind.room for kind in REGISTER))


def of_the_kitchen() -> tuple[str, ...]:
    """What never leaves the kitchen, as paths below recipes/; of a folder all its files."""
    return tuple(path for kind in REGISTER if kind.seen_by is SeenBy.KITCHEN for path in kind.paths)
