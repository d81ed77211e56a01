"""What can be on a shopping list: an ingredient, a colour in its shade, or something from the supplies.

Amounts are in g of food, in mm of ribbon, and otherwise in pieces: a thing's `unit`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, field

from tinbook.facts import Facts
from tinbook.models import Book, Card
from tinbook.models.packs import NEVER, Pack, Stocked
from tinbook.models.supplies import FLAT, RIBBON, SHAPES, SIZED, WANTED, Supply, SupplySize, read_supply_size
from tinbook.plans.base.bought import per_unit_g
from tinbook.problems import nearest
from tinbook.units import Misread

SAME_MM = 5.0
"""What differs by less has two names for one size, as boards of 20 cm and 8 in have (common practice, no source)."""
EGG, PARTS = "whole egg", ("egg white", "egg yolk")
COLOUR = "colour"
FOOD, PIECES, LENGTH = "food", "pieces", "length"


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Something to buy. `unit`: how it is summed, one of FOOD (g), PIECES, LENGTH (mm); `kind`: how it is asked for in
    the shop, `mass`, `volume`, `count` or `length`, of which one is `per` units. `known`: there is a card for it, or a
    line in the supplies."""

    name: str
    unit: str
    kind: str
    per: float
    packs: tuple[Pack, ...] = ()
    found_in: str = ""
    kept_in: str = ""
    keeps_min: float | None = None
    card: str = ""
    part: str = ""
    what: str = ""
    size: SupplySize | None = None
    never: bool = False
    known: bool = True

    @property
    def sizes(self) -> tuple[float, ...]:
        """What its packs hold, in its kind."""
        return tuple(pack.amount for pack in self.packs)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizedNeed:
    """Boards, boxes, sticks or ribbon: the kind, its shape (empty: any), its lengths in mm, how many."""

    what: str
    shape: str
    sides_mm: tuple[float, ...]
    count: int


def plain(text: str) -> str:
    """A name as it is looked up: small letters, no commas, one space."""
    return " ".join(text.replace(",", " ").lower().split())


@dataclass
class Things:
    """Everything a book knows that can be bought."""

    book: Book
    facts: Facts
    _made: dict[str, Thing] = field(default_factory=dict)
    _by_name: dict[str, Supply] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for supply in self.supplies:
            for name in (supply.name, *supply.also):
                for form in _forms(name):
                    self._by_name.setdefault(form, supply)

    @property
    def supplies(self) -> Sequence[Supply]:
        """The lines of house/supplies.yaml."""
        found: Sequence[Supply] = self.book.others.get("supplies", ())
        return found

    def of_card(self, name: str, shade: str = "") -> Thing:
        """An ingredient by the name on its card, and a colour's shade."""
        whole = f"{name}, {shade}" if shade else name
        if whole not in self._made:
            self._made[whole] = self._card_thing(whole, name, self.book.cards[name])
        return self._made[whole]

    def _card_thing(self, whole: str, name: str, card: Card) -> Thing:
        packs = tuple(pack for pack in card.packs if pack.kind != NEVER)
        kind = packs[0].kind if packs else "count" if card.each and card.each.part else "mass"
        per = per_unit_g(kind, card, self.book, self.facts)
        if per is None:
            packs, kind, per = (), "mass", 1.0
        return Thing(
            name=whole, unit=FOOD, kind=kind, per=per, packs=packs, found_in=card.found_in or "",
            kept_in=card.kept_in or "", keeps_min=card.keeps_opened.minutes if card.keeps_opened else None,
            card=name, part=card.each.part if card.each else "", never=card.never_bought,
        )  # fmt: skip

    def of_supply(self, supply: Supply) -> Thing:
        """A line of the supplies."""
        if supply.name not in self._made:
            unit = LENGTH if supply.what == RIBBON else PIECES
            self._made[supply.name] = Thing(
                name=supply.name, unit=unit, kind="length" if unit == LENGTH else "count", per=1.0,
                packs=supply.packs or ((Pack(1.0, "count", "1"),) if unit == PIECES else ()),
                found_in=supply.found_in or "", kept_in=supply.kept_in or "", what=supply.what, size=supply.size,
            )  # fmt: skip
        return self._made[supply.name]

    def of_size(self, what: str, size: SupplySize) -> Thing:
        """A board, a box, a dowel or a ribbon that the supplies may not have."""
        same = next((thing for thing in self.sized(what) if same_size(thing.size, size)), None)
        if same:
            return same
        name, unit = f"{what}, {size.written}", LENGTH if what == RIBBON else PIECES
        if name not in self._made:
            kind = "length" if unit == LENGTH else "count"
            self._made[name] = Thing(name=name, unit=unit, kind=kind, per=1.0, what=what, size=size, known=False)
        return self._made[name]

    def sized(self, what: str) -> Iterator[Thing]:
        """What the supplies have of a kind that is chosen by size."""
        return (self.of_supply(supply) for supply in self.supplies if supply.what == what and supply.size)

    def of_name(self, name: str) -> Thing:
        """Something that is not food, by the name a technique uses for it."""
        supply = next((self._by_name[form] for form in _forms(name) if form in self._by_name), None)
        if supply:
            return self.of_supply(supply)
        if name not in self._made:
            self._made[name] = Thing(name=name, unit=PIECES, kind="count", per=1.0, known=False)
        return self._made[name]

    def called(self, text: str) -> Thing | None:
        """What an entry of the stock is about; None for what is neither on a card nor in the supplies, nor a board or
        box with its size."""
        if supply := self._by_name.get(plain(text)):
            return self.of_supply(supply)
        what = next((what for what in sorted(SIZED, key=len, reverse=True) if plain(text).startswith(f"{what} ")), None)
        if what:
            written = text.strip()[len(what) :].lstrip(" ,")
            with suppress(Misread):
                size = read_supply_size(written, self.book.house.spoons)
                if sound_size(what, size):
                    return self.of_size(what, size)
        if name := self.book.house_word(text):
            return self.of_card(name)
        first, _, shade = text.partition(",")
        name = self.book.house_word(first)
        if name and shade.strip() and COLOUR in self.book.cards[name].care:
            return self.of_card(name, " ".join(shade.split()))
        return next((self.of_supply(self._by_name[form]) for form in _forms(text) if form in self._by_name), None)

    def near(self, text: str) -> str | None:
        """What may be meant by a name that leads nowhere."""
        return nearest(text, [*self.book.names, *(supply.name for supply in self.supplies)])

    def amount_of(self, thing: Thing, said: Stocked) -> float | None:
        """How much of it that is, in its unit; None for a kind of amount that it does not come in."""
        each = self.one(thing, said.kind) if said.total else 0.0
        return None if each is None else said.total * each

    def one(self, thing: Thing, kind: str) -> float | None:
        """What a gram, millilitre, millimetre or piece of it is in its unit; None if that cannot be said."""
        if thing.unit == FOOD:
            return per_unit_g(kind, self.book.cards[thing.card], self.book, self.facts)
        return 1.0 if kind == ("length" if thing.unit == LENGTH else "count") else None

    @property
    def egg(self) -> str | None:
        """The card for whole eggs, of which whites and yolks are taken."""
        return next((name for name, card in self.book.cards.items() if card.each and card.each.part == EGG), None)

    @property
    def shades(self) -> frozenset[str]:
        """Every shade of colour in the book."""
        return frozenset(take.wanted for each in self.book.colours.values() for take in each.every_pot if take.wanted)


def _forms(name: str) -> tuple[str, ...]:
    whole = plain(name)
    return (whole, whole.removesuffix("s"))


def same_size(one: SupplySize | None, other: SupplySize) -> bool:
    """Whether two sizes are the same to the trade."""
    if (
        one is None
        or len(one.sides_mm) != len(other.sides_mm)
        or (one.shape or SHAPES[0]) != (other.shape or SHAPES[0])
    ):
        return False
    return all(abs(a - b) <= min(SAME_MM, 0.1 * b) for a, b in zip(one.sides_mm, other.sides_mm, strict=True))


def sound_size(what: str, size: SupplySize | None) -> bool:
    """Whether a size is one that a thing can have; anything that is chosen by its name alone has what it likes."""
    if what not in WANTED:
        return True
    return size is not None and len(size.sides_mm) in WANTED[what][0] and (not size.shape or what in FLAT)
