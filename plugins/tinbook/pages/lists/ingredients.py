"""Ingredients: a page for each card, and the list of them all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from tinbook.facts import Caution
from tinbook.models import Card
from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.measures.eggs import PIECES as PIECES_SHOWN
from tinbook.plans.measures.eggs import by_class
from tinbook.plans.measures.ingredients import IngredientWeights, MeasureRow, weights
from tinbook.plans.measures.swaps import InPlace, SwapRow, SwapTable, swap_table

UNKNOWN, NONE = "unknown", "none named"


@dataclass(frozen=True, slots=True)
class Goes:
    """Pages under one small heading: mixtures it is in, what it stands in for."""

    title: str
    links: tuple[Linked, ...]


@dataclass(frozen=True)
class CardUses:
    """Which mixtures, techniques and swaps each card is in, by the card's name; worked out once for all cards."""

    mixtures: Mapping[str, tuple[Linked, ...]]
    techniques: Mapping[str, tuple[Linked, ...]]
    stands_in: Mapping[str, tuple[Linked, ...]]


def ways(desk: Desk) -> CardUses:
    """Those of a whole book. A card that has no page has no way either."""
    mixtures: dict[str, dict[str, Linked]] = {}
    techniques: dict[str, dict[str, Linked]] = {}
    stands_in: dict[str, dict[str, Linked]] = {}
    for slug, mixture in desk.book.mixtures.items():
        for line in mixture.mix:
            _add(mixtures, desk.book.house_word(line.take.name), Linked(f"mixtures/{slug}", mixture.name))
    for slug, technique in desk.book.techniques.items():
        for material in technique.materials:
            _add(techniques, desk.book.house_word(material.take.name), Linked(f"techniques/{slug}", technique.name))
    for name, address in desk.card_pages.items():
        for key in desk.book.cards[name].swaps:
            for part in desk.facts.swaps[key].parts:
                other = desk.book.house_word(part.key)
                if other != name and not part.leave:
                    _add(stands_in, other, Linked(address, name))
    return CardUses(_links(mixtures), _links(techniques), _links(stands_in))


def _add(found: dict[str, dict[str, Linked]], name: str | None, to: Linked) -> None:
    if name is not None:
        found.setdefault(name, {})[to.address] = to


def _links(found: Mapping[str, Mapping[str, Linked]]) -> dict[str, tuple[Linked, ...]]:
    return {name: tuple(sorted(to.values(), key=lambda each: each.name.lower())) for name, to in found.items()}


@dataclass(frozen=True)
class CardView:
    """An ingredient's page."""

    name: str
    desk: Desk
    ways: CardUses

    @property
    def card(self) -> Card:
        """What the baker wrote."""
        return self.desk.book.cards[self.name]

    @property
    def contains(self) -> tuple[str, ...]:
        """The allergens on its card, as a label names them."""
        return tuple(_labels(self.card.known_allergens or (), self.desk))

    @property
    def no_allergens(self) -> str:
        """What is said where none is named: unknown is not free."""
        if self.card.known_allergens is None:
            return "Allergens unknown. Unknown is not free: read the label."
        return "No allergen named on its card. Read the label all the same."

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions that its care words call up, whatever is done with it."""
        care = set(self.card.care)
        return tuple(caution for caution in self.desk.facts.cautions.values() if care & set(caution.traits))

    @cached_property
    def weight(self) -> IngredientWeights:
        """What it weighs."""
        return weights(self.card, self.desk.book, self.desk.facts)

    @property
    def weighs(self) -> Grid | None:
        """By every cup and spoon, where it has a volume measure."""
        made = self.weight
        if made.g_per_ml is None:
            return None
        rows = tuple(_measure_row(row) for row in made.measures)
        rounds = "; ".join(f"{formats.grams(row.grams)} is {formats.spoons(row.spoons)}" for row in made.rounds)
        return Grid(
            title=f"{formats.title(self.name)} by cup and spoon",
            anchor="weighs",
            heads=(Head("Measure"), Head("Weighs", "g"), Head("Range", "g"), Head("Weighs", "oz")),
            rows=rows,
            worked=worked_view((made.worked,), self.desk.facts),
            after=f"By this house's measures {rounds}. {_known(made)}",
        )

    @property
    def piece(self) -> str:
        """What one of it weighs, in words; empty for what is not counted."""
        if self.weight.piece_g is None or self.card.each is None:
            return ""
        what = f"{self.card.each.part} of {self.desk.book.house.eggs}" if self.card.each.part else self.name
        return f"One {what} weighs about {formats.grams(self.weight.piece_g)}."

    @property
    def no_volume(self) -> str:
        """Why there is no table of weights."""
        if self.card.weighs is not None:
            return "It has no volume measure: weigh it."
        return "By the piece, or weigh it." if self.piece else "Its weight by volume is not known here: weigh it."

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """What may stand in for it."""
        tables = (swap_table(key, self.desk.book, self.desk.facts) for key in self.card.swaps)
        swaps = tuple(_swap_grid(table, self.desk) for table in tables)
        part = self.card.each.part if self.card.each else ""
        return (_egg_grid(part, self.desk), *swaps) if part else swaps

    @property
    def goes(self) -> tuple[Goes, ...]:
        """The pages it leads to."""
        groups = (
            ("In mixtures", self.ways.mixtures),
            ("In techniques", self.ways.techniques),
            ("Stands in for", self.ways.stands_in),
        )
        return tuple(Goes(title, found[self.name]) for title, found in groups if self.name in found)


def _labels(allergens: tuple[str, ...], desk: Desk) -> list[str]:
    return [desk.facts.allergens[key].label for key in allergens]


def _measure_row(row: MeasureRow) -> GridRow:
    met = "" if row.low_g is None or row.high_g is None else formats.bounds(row.low_g, row.high_g)
    figures = (
        Cell(formats.number(row.shown_g), main=True),
        Cell(met or "weighed here"),
        Cell(formats.mixed(row.shown_oz)),
    )
    return GridRow(
        head=formats.title(spell(row.measure)), cells=figures, note="of this house" if row.of_the_house else ""
    )


def _known(made: IngredientWeights) -> str:
    """Where the weight comes from."""
    return f"Source: {made.source}." if made.source else "Weighed by this house."


PIECES = {"whole egg": "Eggs", "egg white": "Whites", "egg yolk": "Yolks"}


def _egg_grid(part: str, desk: Desk) -> Grid:
    """An egg or a part of it by weight: one class for another."""
    rows, worked = by_class(part, desk.book, desk.facts)
    lines = tuple(
        GridRow(
            head=formats.title(row.egg_class),
            cells=cells(*(formats.number(grams) for grams in row.grams_g), main=1),
            note="of this house" if row.of_the_house else "",
        )
        for row in rows
    )
    heads = (Head("Class"), *(Head(str(count), "g") for count in PIECES_SHOWN))
    lead = f"So many {PIECES[part].lower()} of each class, out of the shell. Swap one class for another by the weight."
    return Grid(
        title="By weight",
        anchor="by-weight",
        heads=heads,
        rows=lines,
        worked=worked_view((worked,), desk.facts),
        lead=lead,
    )


def _swap_grid(table: SwapTable, desk: Desk) -> Grid:
    """A swap as a small table: what is asked on the left, what goes in on the right."""
    swap = table.swap
    asked = Head(PIECES.get(swap.each, formats.title(swap.instead)), "number" if swap.unit == "piece" else swap.unit)
    parts = tuple(Head(formats.title(part.key), _part_unit(part.unit, part.leave)) for part in swap.parts)
    rows = tuple(_swap_row(row) for row in table.rows)
    return Grid(
        title=swap.title,
        anchor="-".join(table.key.lower().split()),
        heads=(asked, *parts),
        rows=rows,
        worked=worked_view((table.worked,), desk.facts),
        after=f"{swap.note} {_brings(table)}".strip(),
    )


def _part_unit(unit: str, leave: bool) -> str:
    return f"{unit}, left out" if leave else unit


def _swap_row(row: SwapRow) -> GridRow:
    return GridRow(head=formats.mixed(row.amount), cells=tuple(_in_place(part) for part in row.parts))


def _in_place(part: InPlace) -> Cell:
    shown = formats.mixed(part.shown) if part.unit == "tsp" else formats.number(part.shown)
    return Cell(shown, main=True, note=formats.spoons(part.spoons) if part.spoons else "")


def _brings(table: SwapTable) -> str:
    """The allergens that come with it, and what nobody has read the label of."""
    told = [f"It brings {formats.sentence(table.contains)}."] if table.contains else []
    told += [f"Read the label of {formats.sentence(table.unknown)}."] if table.unknown else []
    return " ".join(told)


@dataclass(frozen=True, slots=True, kw_only=True)
class CardLine:
    """A card as a line of the list. `tags` and `also` are what it can be found by, `left` what its cup weighs."""

    address: str
    name: str
    left: str
    second: str
    tags: str
    also: str


@dataclass(frozen=True)
class IngredientsView:
    """All cards that are shown, by name."""

    entries: tuple[CardLine, ...]


def _line(name: str, address: str, desk: Desk) -> CardLine:
    card, spoons = desk.book.cards[name], desk.book.house.spoons
    made = weights(card, desk.book, desk.facts)
    cup = next((row for row in made.measures if row.volume_ml == (spoons.cup_ml or row.volume_ml)), None)
    if cup:
        left = f"{formats.grams(cup.shown_g)} the cup"
    else:
        left = f"{formats.grams(made.piece_g)} each" if made.piece_g else "by weight"
    named = card.known_allergens
    tags = [UNKNOWN] if named is None else _labels(named, desk) or [NONE]
    said = "allergens unknown" if named is None else formats.sentence(tags) if named else ""
    second = "; ".join(words for words in (said, ", ".join(card.also)) if words)
    return CardLine(
        address=address,
        name=name,
        left=left,
        second=second,
        tags="|".join(tags),
        also=" ".join((card.about or "", *card.also)),
    )


def ingredients_pages(desk: Desk) -> Iterator[Page]:
    """The list, and a page for each card that is shown."""
    pages = desk.card_pages
    lines = tuple(_line(name, address, desk) for name, address in pages.items())
    yield Page(
        address="ingredients",
        title="Ingredients",
        template="ingredients",
        view=IngredientsView(lines),
        section=("Ingredients",),
    )
    found = ways(desk)
    for name, address in pages.items():
        yield Page(
            address=address,
            title=formats.title(name),
            template="ingredient",
            view=CardView(name, desk, found),
            listed=False,
        )
