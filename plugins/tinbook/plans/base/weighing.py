"""A mixture on the scales: every line in grams, the batter in ml, and how deep it is in its tins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from tinbook.engine import rounding, scaling
from tinbook.facts import Facts, Kind
from tinbook.models import Book, Card, Mixture, Take
from tinbook.models.ledger import ledger_of
from tinbook.plans.base.bake_log import losses, rises
from tinbook.plans.base.rising import LearnedFrom, rise_said, risen
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.tins import Tin
from tinbook.units import Quantity

SPOONS = ("tsp", "tbsp", "pinch")


class Unweighable(ValueError):
    """A line of unknown weight; `hint` says what to add to the ingredient's card."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """One line, weighed. `amount` is in `unit`, the unit of its scaled amounts: g, ml, tsp, tbsp, "" (pieces)."""

    name: str
    wanted: str
    part: str
    unit: str
    amount: float
    mass_g: float
    volume_ml: float | None
    whole_egg: bool
    raises: bool


@dataclass(frozen=True, kw_only=True)
class Batch:
    """A mixture with its sums done: weights g, volumes ml, lengths mm. `tins` is empty for anything made by weight."""

    slug: str
    mixture: Mixture
    kind: Kind
    ingredients: tuple[Ingredient, ...]
    tins: tuple[tuple[int, Tin], ...]
    batter_ml: float
    depth_mm: float
    rise: float
    """Baked depth over batter depth: as this cake or the house has found it, else usual for its kind."""
    loss: float
    """The share of the weight lost in the oven; 0 if it is not baked."""
    learned: LearnedFrom
    steps: rounding.ScaleSteps
    worked: Worked = field(compare=False)
    bought: bool = False
    """Whether it comes in packs from a shop; then `makes_g` is the smallest of them."""
    packs_g: tuple[float, ...] = ()
    """What its packs weigh; none if its card does not say."""

    @cached_property
    def mass_g(self) -> float:
        """Everything that goes in."""
        return sum(line.mass_g for line in self.ingredients)

    @cached_property
    def makes_g(self) -> float:
        """What comes out: as written by `makes`, or all that went in."""
        return self.mixture.makes or self.mass_g

    @property
    def mass_shown_g(self) -> float:
        """Everything that goes in, as the scales show it."""
        return rounding.scales(self.mass_g, self.steps)

    @property
    def makes_shown_g(self) -> float:
        """What comes out, as the scales show it."""
        return rounding.scales(self.makes_g, self.steps)

    @cached_property
    def eggs(self) -> float:
        """Whole eggs in the mixture, 0 for none."""
        return sum(line.amount for line in self.ingredients if line.whole_egg)

    @cached_property
    def share(self) -> float:
        """Batter as a share of what the written tins hold to the brim."""
        return self.batter_ml / sum(count * tin.brim_ml() for count, tin in self.tins)

    @cached_property
    def baked_mm(self) -> float:
        """How high the cake stands when baked."""
        return self.depth_mm * self.rise


def g_per_ml(card: Card, facts: Facts) -> float | None:
    """The weight of a millilitre of an ingredient, or None if no volume measure is known."""
    if card.weighs_as:
        return facts.densities[card.weighs_as].value
    return card.weighs.g_per_ml if card.weighs else None


def each_g(card: Card, book: Book, facts: Facts) -> float | None:
    """The weight of one piece: a part of an egg of the house's class, or the card's own grams."""
    if card.each is None:
        return None
    if card.each.grams is not None:
        return card.each.grams
    return egg_part_g(card.each.part, book, facts)


def egg_part_g(part: str, book: Book, facts: Facts) -> float:
    """The weight of a whole egg, its white or its yolk, in the house's class."""
    egg = facts.eggs[book.house.eggs]
    return {"whole egg": egg.shelled_g, "egg white": egg.white_g, "egg yolk": egg.yolk_g}[part]


def steps_of(book: Book) -> rounding.ScaleSteps:
    """How finely the house's scales read."""
    scales = book.house.scales
    return rounding.ScaleSteps(scales.step, scales.fine_step, scales.fine_below)


def makes_shown_g(mixture: Mixture, book: Book) -> float:
    """What a mixture made by weight is written to make, as the scales show it."""
    return rounding.scales(mixture.makes or 0.0, steps_of(book))


def mass_of(take: Take, name: str, book: Book, facts: Facts) -> float:
    """Grams of one line. Raises Unweighable if its card does not give the weight of a volume or a piece."""
    card, quantity = book.cards[name], take.quantity
    if quantity.dimension == "mass":
        return quantity.base
    if quantity.dimension == "count":
        piece_g = each_g(card, book, facts)
        if piece_g is None:
            number = f"{quantity.value:g}"
            hint = f'write "{number} g {take.name}", or "each: ... g" on its card in house/ingredients.yaml'
            raise Unweighable(f'no unit after "{number}", and the card for "{name}" does not say what one weighs', hint)
        return quantity.base * piece_g
    density = g_per_ml(card, facts)
    if density is None:
        hint = (
            "write grams: its card says it has no volume measure"
            if card.weighs is not None
            else f'write grams, or "weighs: ... g per {quantity.unit}" on its card in house/ingredients.yaml'
        )
        raise Unweighable(f'the book does not know what a spoonful of "{name}" weighs', hint)
    return quantity.base * density


def shown_unit(quantity: Quantity, mass_g: float | None, book: Book) -> tuple[str, float]:
    """The unit an amount is shown in at every scale, and the amount in it: g, ml, tsp, tbsp, "" for pieces."""
    if quantity.dimension == "count":
        return "", quantity.base
    if quantity.unit == "tbsp":
        return "tbsp", quantity.value
    if quantity.unit in SPOONS:
        return "tsp", quantity.base / book.house.spoons.teaspoon_ml
    if quantity.unit in ("ml", "l", "fl oz") or mass_g is None:
        return "ml", quantity.base
    return "g", mass_g


def weigh_line(take: Take, note: str | None, part: str | None, book: Book, facts: Facts) -> Ingredient:
    """One line of a checked mixture, weighed."""
    name = book.house_word(take.name) or take.name
    card, quantity = book.cards[name], take.quantity
    mass_g = mass_of(take, name, book, facts)
    density = g_per_ml(card, facts)
    unit, amount = shown_unit(quantity, mass_g, book)
    wanted = "; ".join(words for words in (take.wanted, note) if words)
    volume_ml = mass_g / density if density else None
    whole_egg = card.each is not None and card.each.part == "whole egg" and quantity.dimension == "count"
    return Ingredient(
        name=name,
        wanted=wanted,
        part=part or "",
        unit=unit,
        amount=amount,
        mass_g=mass_g,
        volume_ml=volume_ml,
        whole_egg=whole_egg,
        raises=card.raises,
    )


def weigh(slug: str, mixture: Mixture, book: Book, facts: Facts) -> Batch:
    """Do the sums of a mixture that has passed its checks.

    batter ml = weight / gravity of its kind (g/ml), unless the depth was measured; depth = the depth at which the
    written tins together hold that volume. ValueError if they hold less.
    """
    kind = facts.kinds[mixture.kind]
    lines = tuple(weigh_line(line.take, line.note, line.part, book, facts) for line in mixture.mix)
    mass_g = sum(line.mass_g for line in lines)
    tins = tuple((count, as_owned(tin, book)) for count, tin in mixture.tins)
    gravity = kind.gravity.typical
    batter_ml, depth_mm = mass_g / gravity, 0.0
    if tins:
        if mixture.batter_depth:
            depth_mm = mixture.batter_depth
            batter_ml = volume_at(tins, depth_mm)
        else:
            depth_mm = _depth_in(tins, batter_ml)
    gravity = mass_g / batter_ml if batter_ml else gravity
    bakes, written = book.bakes_of.get(slug, ()), rise_said(mixture.kind, book.finish, mixture.finish)
    rose = rises([(entry, as_owned(entry.tin, book)) for entry in bakes], gravity)
    rise, loss, learned = risen(kind, written, rose, losses(bakes), facts)
    return Batch(
        slug=slug,
        mixture=mixture,
        kind=kind,
        ingredients=lines,
        tins=tins,
        batter_ml=batter_ml,
        depth_mm=depth_mm,
        rise=rise,
        loss=loss,
        learned=learned,
        steps=steps_of(book),
        worked=_worked(mixture, mass_g, kind),
    )


def volume_at(tins: tuple[tuple[int, Tin], ...], depth_mm: float) -> float:
    """Millilitres in all `tins` together with batter `depth_mm` deep, none filled above its brim."""
    return sum(count * tin.volume_ml(min(depth_mm, tin.brim_mm)) for count, tin in tins)


def _depth_in(tins: tuple[tuple[int, Tin], ...], batter_ml: float) -> float:
    """How deep this much batter is in all `tins` together, mm. ValueError if they hold less."""
    count, tin = tins[0]
    if len(tins) == 1 and (depth_mm := tin.fill_mm(batter_ml / count)) <= tin.brim_mm:
        return depth_mm
    return scaling.depth_for(batter_ml, lambda depth: volume_at(tins, depth), max(tin.brim_mm for _, tin in tins))


def as_owned(tin: Tin, book: Book) -> Tin:
    """The tin with the volume the house measured, and its own name, if the house has that very outline and depth.

    A tin that comes with its own measure keeps it.
    """
    if tin.measured_ml is not None:
        return tin
    for owned in book.tins:
        if (
            (owned.measured or owned.tin.called)
            and same_outline(owned.tin, tin)
            and tin.depth_mm in (None, owned.tin.depth_mm)
        ):
            return owned.measured_tin
    return tin


def same_outline(tin: Tin, other: Tin) -> bool:
    """Whether the trade would call two tins the same, except for their depth."""
    return tin.shape == other.shape and tin.sizes_mm == other.sizes_mm


class Weighed(Mapping[str, Batch]):
    """Every mixture in a book, weighed once it is asked for, by slug."""

    def __init__(self, book: Book, facts: Facts) -> None:
        self._book, self._facts, self._ledger = book, facts, ledger_of(book)

    def __getitem__(self, slug: str) -> Batch:
        mixture = self._book.mixtures[slug]
        return self._ledger.share(("weighed", slug), lambda: weigh(slug, mixture, self._book, self._facts))

    def __iter__(self) -> Iterator[str]:
        return iter(self._book.mixtures)

    def __len__(self) -> int:
        return len(self._book.mixtures)


def weigh_all(book: Book, facts: Facts) -> Mapping[str, Batch]:
    """Every mixture in the book, weighed, by slug."""
    return Weighed(book, facts)


def _worked(mixture: Mixture, mass_g: float, kind: Kind) -> Worked:
    gravity = kind.gravity
    known = (
        saying("depth_measured")
        if mixture.batter_depth
        else saying("batter_weighs", gravity=gravity.typical, low=gravity.low, high=gravity.high)
    )
    return Worked(saying("batter_depth"), (saying("mixture_weighs", mass_g=mass_g), known), (kind.source,))
