"""What an order takes, exactly: every mixture down to the ingredient, and all that is bought by size or number."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.orders import Order
from tinbook.models.supplies import BOX, FLAT, cases_for
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.cakes.used import EverythingUsed, by_weight, everything_used, ingredients_of
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.making.journey import journey
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.orders.class_work import class_plan
from tinbook.plans.shopping.things import COLOUR, SizedNeed, Things
from tinbook.plans.shopping.worded import sized_material
from tinbook.plans.techniques.kit import MOST_PEOPLE, Inedible, MaterialRow, kit

CASE_WORDS = ("case", "cases")


@dataclass(kw_only=True)
class OrderNeeds:
    """What one order takes. `food` by the name of its thing, g; `pieces` of what is not food; `sized` is still to be
    chosen; `some`: of what no card gives the weight. `tins`: those the house has none of, by name."""

    slug: str
    handle: str
    day: date
    food: dict[str, float] = field(default_factory=dict)
    pieces: dict[str, float] = field(default_factory=dict)
    sized: list[SizedNeed] = field(default_factory=list)
    some: list[str] = field(default_factory=list)
    tins: list[str] = field(default_factory=list)

    def add_food(self, name: str, mass_g: float | None) -> None:
        """So much of it; None for an unknown weight."""
        if mass_g is None:
            self.some.append(name)
        elif mass_g > 0.0:
            self.food[name] = self.food.get(name, 0.0) + mass_g

    def add_pieces(self, name: str, count: float) -> None:
        """So many of it."""
        self.pieces[name] = self.pieces.get(name, 0.0) + count


def needs_of(worked: OrderWorked, things: Things) -> OrderNeeds:
    """What a sound order takes."""
    book, facts, order = things.book, things.facts, worked.order
    needs = OrderNeeds(slug=worked.slug, handle=order.handle, day=order.hand_over.date())
    for cake in worked.cakes:
        _cake(cake, everything_used(cake, book, facts), needs, things)
    tubs = [(weigh(tub.slug, tub.mixture, book, facts), tub.mass_g) for tub in worked.tubs]
    mixed(tubs, needs, things)
    _class(order, needs, things)
    return needs


def mixed(made: Iterable[tuple[Batch, float]], needs: OrderNeeds, things: Things) -> None:
    """So many grams of some mixtures, by weight."""
    versions = [(batch, by_weight(batch, mass_g / batch.makes_g, things.facts)) for batch, mass_g in made]
    _ingredients(versions, needs, things)


def _ingredients(versions: Iterable[tuple[Batch, Version]], needs: OrderNeeds, things: Things) -> None:
    for each in ingredients_of(versions, things.book):
        needs.add_food(things.of_card(each.name).name, each.mass_g)


def _cake(cake: WholeCake, used: EverythingUsed, needs: OrderNeeds, things: Things) -> None:
    book, facts = things.book, things.facts
    for each in used.ingredients:
        needs.add_food(things.of_card(each.name).name, each.mass_g)
    for pot in used.pots:
        needs.add_food(things.of_card(pot.name, pot.shade).name, pot.mass_g)
    by_name = {mixture.name: slug for slug, mixture in book.mixtures.items()}
    for extra in used.besides:
        wanted = extra.wanted if isinstance(extra.wanted, str) else ""
        if extra.name in book.cards:
            name = things.of_card(extra.name, _shade(extra.name, wanted, things)).name
            needs.add_food(name, _grams(extra.name, extra.amount.exact, extra.amount.unit, things))
        elif extra.name in by_name:
            batch = weigh(by_name[extra.name], book.mixtures[by_name[extra.name]], book, facts)
            mass_g = _mixture_g(batch, extra.amount.exact, extra.amount.unit, things)
            if mass_g is None:
                needs.some.append(extra.name)
            else:
                mixed([(batch, mass_g)], needs, things)
    for thing in used.not_food:
        _inedible(thing, needs, things)
    needs.sized += _sized(cake, used, book, facts)
    _in_cases(cake, used, needs, things)
    needs.tins += [tin.tin.full_name for tin in used.tins if not tin.have and not tin.tin.kind.in_trays]


def _inedible(thing: Inedible, needs: OrderNeeds, things: Things) -> None:
    count = 1.0 if thing.amount.unit else thing.amount.exact
    sized = sized_material(thing.name, thing.wanted, count)
    needs.sized += sized
    if not sized:
        needs.add_pieces(things.of_name(thing.name).name, count)


def _shade(name: str, wanted: str, things: Things) -> str:
    return wanted if wanted in things.shades and COLOUR in things.book.cards[name].care else ""


def _ml(amount: float, unit: str, things: Things) -> float | None:
    spoons = things.book.house.spoons
    each = {"ml": 1.0, "tsp": spoons.teaspoon_ml, "tbsp": spoons.tablespoon_ml}.get(unit)
    return None if each is None else amount * each


def _grams(name: str, amount: float, unit: str, things: Things) -> float | None:
    """What an amount of an ingredient weighs; None if its card does not say."""
    thing = things.of_card(name)
    if unit in ("g", ""):
        one = things.one(thing, "mass" if unit else "count")
        return None if one is None else amount * one
    poured, one = _ml(amount, unit, things), things.one(thing, "volume")
    return None if poured is None or one is None else poured * one


def _mixture_g(batch: Batch, amount: float, unit: str, things: Things) -> float | None:
    if unit == "g":
        return amount
    poured = _ml(amount, unit, things)
    return None if poured is None else poured * batch.kind.gravity.typical


def _sized(cake: WholeCake, used: EverythingUsed, book: Book, facts: Facts) -> Iterator[SizedNeed]:
    for each in used.cut:
        what = each.what.replace("-", " ")
        wide, long = each.wide_mm or 0.0, each.long_mm or 0.0
        if what in FLAT:
            square = abs(wide - long) < 1.0
            shape = "round" if each.disc else "square" if square else "oblong"
            sides: tuple[float, ...] = (wide,) if square else (wide, long)
            yield SizedNeed(what=what, shape=shape, sides_mm=sides, count=each.count)
        else:
            yield SizedNeed(what=what, shape="", sides_mm=(wide, long), count=each.count)
    if cake.stacked.drum is not None and cake.stacked.drum.box_mm:
        goes = journey(cake, cake_weights(cake, book, facts), book, facts)
        apart = goes.tiers if goes.tiers and not goes.goes_whole else (goes.whole,)
        for box in apart:
            if box is not None:
                yield SizedNeed(what=BOX, shape="", sides_mm=box.box_mm, count=1)


def _in_cases(cake: WholeCake, used: EverythingUsed, needs: OrderNeeds, things: Things) -> None:
    """A paper case for each cup, unless its techniques count them."""
    if any(word in CASE_WORDS for thing in used.not_food for word in thing.name.lower().split()):
        return
    for tin in used.tins:
        if tin.tin.kind.in_trays:
            needs.add_pieces(things.of_name(cases_for(tin.tin.name)).name, float(tin.fill))


def _class(order: Order, needs: OrderNeeds, things: Things) -> None:
    """The materials of a class, for everybody in it and for the pieces that stand ready."""
    plan = class_plan(order, things.book, things.facts)
    for taught in plan.taught if plan else ():
        people = min(MOST_PEOPLE, taught.kit.people + len(taught.pieces))
        whole = kit(taught.technique, things.book, things.facts, people)
        for row in whole.materials:
            if not row.not_food:
                _material(row, needs, things)
        for thing in whole.not_food:
            # a tool that is not food goes back to its drawer
            if thing.name not in {tool.name.partition(", ")[0] for tool in whole.tools}:
                _inedible(thing, needs, things)


def _material(row: MaterialRow, needs: OrderNeeds, things: Things) -> None:
    book = things.book
    if row.mixture and row.mass_g:
        mixed([(weigh(row.mixture, book.mixtures[row.mixture], book, things.facts), row.mass_g)], needs, things)
    elif row.name in book.cards:
        wanted = row.wanted if isinstance(row.wanted, str) else ""
        needs.add_food(things.of_card(row.name, _shade(row.name, wanted, things)).name, row.mass_g)
    else:
        needs.some.append(row.name)
