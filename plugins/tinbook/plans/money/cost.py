"""What an order costs, row by row: each row exact, each rounded once, and what no price is known of by its name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from tinbook.engine.money import EXACT, FINE, PriceMade, coins, cost, entered, exactly, price_of, times, total
from tinbook.models.orders import Order
from tinbook.plans.base.weighing import weigh
from tinbook.plans.money.hours import OrderHours
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.shopping.needs import OrderNeeds, mixed, needs_of
from tinbook.plans.shopping.shopping import ShopLine, shopping_list
from tinbook.plans.shopping.things import FOOD, Thing

INGREDIENTS, BOARDS, HOURS, KEPT_UP, ROAD = GROUPS = ("ingredients", "boards", "hours", "kept_up", "road")
"""Where the money goes, in the order it is told."""
WASTED, PACKAGING, HANDS, OVEN, HOUSE, DRIVE = "wasted", "packaging", "hands", "oven", "house", "drive"
"""What a row is of that is no thing."""
HOUR = Decimal(60)
NO_DAY = date.min
ONE = Decimal(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostRow:
    """A row of a cost. `of` is the name of its `thing`, or one of the words above; `amount` in the thing's unit, in
    minutes, or in km. `exact` (None: nobody has written a price) and `least`, where what it is worked out from has a
    range; `bought`: what it comes to in whole packs. `through`: the recipe it is made by, if it is made at home."""

    group: str
    of: str
    coin: Decimal
    thing: Thing | None = None
    amount: float = 0.0
    exact: Decimal | None
    least: Decimal | None = None
    bought: Decimal | None = None
    through: str = ""

    @property
    def shown(self) -> Decimal | None:
        """In coins."""
        return None if self.exact is None else coins(self.exact, self.coin)

    @property
    def least_shown(self) -> Decimal | None:
        """The same at the least."""
        return self.shown if self.least is None else coins(self.least, self.coin)

    @property
    def bought_shown(self) -> Decimal | None:
        """In whole packs; what comes in none, as it is used."""
        return self.shown if self.bought is None else coins(self.bought, self.coin)


@dataclass(frozen=True, kw_only=True)
class CostSum:
    """Rows and their sums. Exact ones sum exact rows, printed ones printed rows."""

    rows: tuple[CostRow, ...]

    @property
    def unknown(self) -> tuple[str, ...]:
        """What is in no sum, by name: nobody has written a price, or how much it is."""
        return tuple(dict.fromkeys(row.of for row in self.rows if row.exact is None))

    @property
    def exact(self) -> Decimal:
        """All of it, exactly."""
        return total(row.exact for row in self.rows if row.exact is not None)

    @property
    def shown(self) -> Decimal:
        """All of it, as printed."""
        return total(row.shown for row in self.rows if row.shown is not None)

    @property
    def least_shown(self) -> Decimal:
        """The least it can be, as printed."""
        return total(row.least_shown for row in self.rows if row.least_shown is not None)

    @property
    def bought_shown(self) -> Decimal:
        """With whole packs of everything."""
        return total(row.bought_shown for row in self.rows if row.bought_shown is not None)

    def of(self, *groups: str) -> CostSum:
        """The rows of some groups."""
        return CostSum(rows=tuple(row for row in self.rows if row.group in groups))


def cost_of(worked: OrderWorked, hours: OrderHours, till: Till) -> CostSum:
    """What an order costs, made by itself with nothing at home, in so many hours."""
    return cost_of_needs(needs_of(worked, till.things), worked.order, hours, till)


def cost_of_needs(needs: OrderNeeds, order: Order, hours: OrderHours, till: Till) -> CostSum:
    """The same, of an order that takes so much."""
    return CostSum(rows=(*material_rows(needs, till), *_hour_rows(hours, till), *_road_rows(order, till)))


def material_rows(needs: OrderNeeds, till: Till, made: frozenset[str] = frozenset()) -> tuple[CostRow, ...]:
    """What the ingredients, boards and boxes cost that an order takes. `made`: recipes that are being worked out."""
    spare = till.kitchen.spare or 0.0
    listed = shopping_list([needs], {needs.slug}, {}, till.book, till.facts, spare)
    rows = [_row(line, till, made) for line in listed.lines if not line.from_eggs]
    rows += [_unknown(name, till) for name in listed.some]
    food = [row for row in rows if row.group == INGREDIENTS]
    if till.money.wasted and any(row.exact is not None for row in food):
        lost = times(total(row.exact for row in food if row.exact is not None), till.money.wasted)
        food.append(CostRow(group=INGREDIENTS, of=WASTED, coin=till.coin, exact=lost))
    others = [row for row in rows if row.group != INGREDIENTS]
    if till.money.packaging:
        more = exactly(till.money.packaging.amount)
        others.append(CostRow(group=BOARDS, of=PACKAGING, coin=till.coin, exact=more))
    return (*_dearest_first(food), *_dearest_first(others))


def _dearest_first(rows: Iterable[CostRow]) -> list[CostRow]:
    """Things by what they cost, then those without a price; what is no thing comes last."""
    return sorted(rows, key=lambda row: (row.of in (WASTED, PACKAGING), row.exact is None, -(row.exact or 0), row.of))


def _unknown(name: str, till: Till) -> CostRow:
    return CostRow(group=INGREDIENTS, of=name, coin=till.coin, exact=None)


def _row(line: ShopLine, till: Till, made: frozenset[str]) -> CostRow:
    thing, used = line.thing, entered(line.needs)
    group = INGREDIENTS if thing.unit == FOOD else BOARDS
    newest = till.paid.newest(thing.name)
    if newest is None:
        slug, exact = _made_at_home(thing, used, till, made)
        return CostRow(
            group=group, of=thing.name, coin=till.coin, thing=thing, amount=line.needs, exact=exact, through=slug
        )
    bought = total(
        exactly(FINE.multiply(entered(count), paid.for_(entered(pack.amount * thing.per))))
        for count, pack in line.packs
        if (paid := till.paid.of_pack(thing.name, pack.amount * thing.per))
    )
    return CostRow(
        group=group, of=thing.name, coin=till.coin, thing=thing, amount=line.needs, exact=newest.for_(used),
        bought=bought if line.packs else None,
    )  # fmt: skip


def _made_at_home(thing: Thing, used: Decimal, till: Till, made: frozenset[str]) -> tuple[str, Decimal | None]:
    """What something costs that the house makes by a recipe of the same name, and the recipe; None if it does not, or
    if the price of something in it is not known."""
    name = thing.card.lower()
    slug = next((slug for slug, each in till.book.mixtures.items() if name in (each.name.lower(), slug)), "")
    slug = slug or (name.replace(" ", "-") if name.replace(" ", "-") in till.book.mixtures else "")
    if not thing.card or not slug or slug in made:
        return "", None
    found, makes_g = recipe_rows(slug, till, made | {slug})
    if any(row.exact is None for row in found):
        return slug, None
    # what is wasted is counted once, with everything else that is eaten
    goes_in = total(row.exact for row in found if row.exact is not None and row.of != WASTED)
    return slug, cost(goes_in, makes_g, used)


def recipe_rows(slug: str, till: Till, made: frozenset[str] = frozenset()) -> tuple[tuple[CostRow, ...], Decimal]:
    """What the ingredients of a recipe cost as it is written, and how many grams that makes."""
    batch = weigh(slug, till.book.mixtures[slug], till.book, till.facts)
    needs = OrderNeeds(slug=slug, handle=slug, day=NO_DAY)
    mixed([(batch, batch.makes_g)], needs, till.things)
    rows = tuple(row for row in material_rows(needs, till, made) if row.of != PACKAGING)
    return rows, max(entered(batch.makes_g), EXACT)


def _hour_rows(hours: OrderHours, till: Till) -> Iterator[CostRow]:
    money, coin = till.money, till.coin
    hands, least = entered(hours.hands_min), entered(hours.least_min)
    if money.an_hour:
        wage = money.an_hour.amount
        yield CostRow(
            group=HOURS, of=HANDS, coin=coin, amount=hours.hands_min, exact=cost(wage, HOUR, hands),
            least=cost(wage, HOUR, least),
        )  # fmt: skip
    kept = money.kept_up
    if kept and kept.an_hour:
        yield CostRow(
            group=KEPT_UP, of=HOUSE, coin=coin, amount=hours.hands_min, exact=cost(kept.an_hour.amount, HOUR, hands),
            least=cost(kept.an_hour.amount, HOUR, least),
        )  # fmt: skip
    elif kept and kept.a_month and kept.cakes_a_month:
        share = cost(kept.a_month.amount, Decimal(kept.cakes_a_month), ONE)
        yield CostRow(group=KEPT_UP, of=HOUSE, coin=coin, exact=share)
    if money.oven and hours.oven_min:
        rate = FINE.multiply(money.oven.draws, money.oven.a_kwh.amount)
        yield CostRow(
            group=KEPT_UP, of=OVEN, coin=coin, amount=hours.oven_min, exact=cost(rate, HOUR, entered(hours.oven_min)),
            least=cost(rate, HOUR, entered(hours.oven_least_min)),
        )  # fmt: skip


def _road_rows(order: Order, till: Till) -> Iterator[CostRow]:
    rate = till.money.a_km
    if rate is None or not (order.delivered or order.distance):
        return
    there_and_back = None if order.distance is None else FINE.multiply(order.distance, Decimal(2))
    exact = None if there_and_back is None else times(rate.amount, there_and_back)
    yield CostRow(group=ROAD, of=DRIVE, coin=till.coin, amount=float(there_and_back or 0), exact=exact)


def asked_for(found: CostSum, till: Till) -> PriceMade:
    """The price a cost comes to: what is added, and rounded up. Of a cost of which something is not known, the least
    that it can be."""
    money = till.money
    added = coins(times(found.exact, till.mark_up), till.coin)
    return price_of(
        found.shown,
        added,
        till.coin,
        money.round_up_to.amount if money.round_up_to else till.coin,
        money.vat or Decimal(0),
        money.least.amount if money.least else Decimal(0),
    )
