"""The register of what a book is written in: every file in house/, every folder, and who may see what is in them.

What reads the files, the JSON Schemas, a new book, what a public site may show, and the table in DEVELOPERS.md are made
from it. To add a file to house/, write its model and one line here.
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
from tinbook.models.hours import HoursLog, WorkDone
from tinbook.models.house import FORMAT, House
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.labels import NOTHING_SAID, Labelling
from tinbook.models.mixture import Mixture
from tinbook.models.money import HouseMoney, PriceLog, PricePaid
from tinbook.models.opened import OpenedLog, PackOpened
from tinbook.models.orders import Order
from tinbook.models.reading import Written
from tinbook.models.shelf import ShelfLine, TinShelf
from tinbook.models.stock import StockEntry, StockLog
from tinbook.models.supplies import Supply, SupplyShelf
from tinbook.models.technique import Technique
from tinbook.models.variation import Variation


class SeenBy(Enum):
    """Who may see what is in a file."""

    EVERYONE = "everyone"
    """It may be on a public site, except for anything marked private."""
    KITCHEN = "the kitchen"
    """It is only in the kitchen's own build, and not in any repository: a new book's .gitignore names it."""
    NOBODY = "nobody: it is used only in the calculations"
    """Its words are dropped as it is read; only the keys needed for sums are `kept`."""


class Merged(Enum):
    """How what is written is put together."""

    WHOLE = "a single object"
    LIST = "entries in a list"
    CARDS = "entries by name"
    FOLDER = "a file each, by its name"


@dataclass(frozen=True, kw_only=True)
class SourceKind:
    """One file of the house, or one folder of files.

    `path` is where it is in recipes/; `field` the field of `Book` it fills (empty: `Book.others`, by `name`). Entries
    of a list or by name are under `key`, each of the model `entry`. `spoken`: what an entry and the whole are called.
    `kept`: the keys that stay when an entry may not be shown, because sums and safety need them; if there are none,
    the whole entry is left out. `blank`: what a single object is if nothing is written, or if all of it is private.
    `by_year`: a list that grows, and continues in a file for each year next to the first (`house/bakes-2026.yaml`).
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
        """Every path it may have, with `*` for any name."""
        return (self.path, f"{self.address}-*.yaml") if self.by_year else (self.path,)

    def of_year(self, year: str) -> SourceKind:
        """The file it continues in for a year."""
        return replace(self, path=f"{self.address}-{year}.yaml")

    @property
    def room(self) -> str:
        """The folder in recipes/ it is in."""
        return self.path.partition("/")[0]

    @property
    def nothing(self) -> Any:
        """What the book has if there is none of it."""
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
        name="supplies", model=SupplyShelf, path="house/supplies.yaml", merged=Merged.LIST, seen_by=SeenBy.EVERYONE,
        key="supplies", entry=Supply, spoken=("this thing", "the list of supplies"),
    ),
    SourceKind(
        name="labels", model=Labelling, path="house/labels.yaml", merged=Merged.WHOLE, seen_by=SeenBy.EVERYONE,
        spoken=("", "labels.yaml"), blank=NOTHING_SAID,
    ),
    SourceKind(
        name="opened", model=OpenedLog, path="house/opened.yaml", merged=Merged.LIST, seen_by=SeenBy.KITCHEN,
        key="opened", entry=PackOpened, spoken=("this pack", "the log of opened packs"), by_year=True,
    ),
    SourceKind(
        name="kitchen", model=WorkingKitchen, path="house/kitchen.yaml", merged=Merged.WHOLE, seen_by=SeenBy.KITCHEN,
        spoken=("", "kitchen.yaml"), blank=WorkingKitchen(),
    ),
    SourceKind(
        name="hours", model=HoursLog, path="house/hours.yaml", merged=Merged.LIST, seen_by=SeenBy.KITCHEN,
        key="hours", entry=WorkDone, spoken=("this entry", "the log of hours"), by_year=True,
    ),
    SourceKind(
        name="stock", model=StockLog, path="house/stock.yaml", merged=Merged.LIST, seen_by=SeenBy.KITCHEN,
        key="stock", entry=StockEntry, spoken=("this entry", "the stock"), by_year=True,
    ),
    SourceKind(
        name="money", model=HouseMoney, path="house/money.yaml", merged=Merged.WHOLE, seen_by=SeenBy.KITCHEN,
        spoken=("", "money.yaml"), blank=HouseMoney(),
    ),
    SourceKind(
        name="prices", model=PriceLog, path="house/prices.yaml", merged=Merged.LIST, seen_by=SeenBy.KITCHEN,
        key="prices", entry=PricePaid, spoken=("this price", "the log of prices"), by_year=True,
    ),
    SourceKind(
        name="mixture", model=Mixture, path="mixtures/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="mixtures", spoken=("this mixture", "the mixtures"),
    ),
    SourceKind(
        name="technique", model=Technique, path="techniques/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="techniques", spoken=("this technique", "the techniques"),
    ),
    SourceKind(
        name="cake", model=CakeDesign, path="cakes/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.EVERYONE,
        field="cakes", spoken=("this cake", "the cakes"),
    ),
    SourceKind(
        name="order", model=Order, path="orders/*.yaml", merged=Merged.FOLDER, seen_by=SeenBy.KITCHEN,
        spoken=("an order", "the orders"),
    ),
)  # fmt: skip


VARIATIONS: Mapping[type[Written], type[Written]] = {Mixture: Variation, CakeDesign: CakeVariation}
"""What kind of file one that starts `from` another is, by the kind it would be otherwise."""


def kinds() -> Mapping[str, SourceKind]:
    """Every line of the register by name, in order."""
    return {kind.name: kind for kind in REGISTER}


def house_files() -> tuple[str, ...]:
    """The names of the files in recipes/house, without .yaml."""
    return tuple(kind.address.partition("/")[2] for kind in REGISTER if kind.room == "house")


def goes_on(name: str) -> SourceKind | None:
    """The log that a file in recipes/house continues (`bakes-2026`), by its name without .yaml."""
    first, _, year = name.rpartition("-")
    logs = (kind for kind in REGISTER if kind.by_year and kind.address == f"house/{first}")
    return next(logs, None) if len(year) == 4 and year.isascii() and year.isdigit() else None


def log_of(address: str) -> SourceKind | None:
    """The yearly log that is, or continues, at an address (`house/bakes`, `house/bakes-2026`)."""
    logs = (kind for kind in REGISTER if kind.by_year and kind.address == address)
    return next(logs, None) or goes_on(address.removeprefix("house/"))


def rooms() -> tuple[str, ...]:
    """The folders in recipes/ that hold the book's files."""
    return tuple(dict.fromkeys(kind.room for kind in REGISTER))


def of_the_kitchen() -> tuple[str, ...]:
    """What never leaves the kitchen, as paths below recipes/; for a folder, all its files."""
    return tuple(path for kind in REGISTER if kind.seen_by is SeenBy.KITCHEN for path in kind.paths)
