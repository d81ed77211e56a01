"""What each recipe costs: as it is written, a hundred grams of it, and a tin of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from tinbook.engine.money import coins, cost
from tinbook.plans.money.cost import CostSum, recipe_rows
from tinbook.plans.money.till import Till
from tinbook.tins import Tin

HUNDRED_G = Decimal(100)


@dataclass(frozen=True, slots=True, kw_only=True)
class MixtureCost:
    """The ingredients of a recipe, with no hours and no oven. `hundred`: of 100 g, of batter if it is baked; `tin`: of
    each of its own tins, `tins` of one kind (None: it has none, or several kinds). Both are shares of what is printed
    for the whole, so that a single tin costs what all of it does."""

    slug: str
    name: str
    cost: CostSum
    makes_g: Decimal
    hundred: Decimal
    tin: Decimal | None
    tins: int
    in_tin: Tin | None
    coin: Decimal

    @property
    def hundred_shown(self) -> Decimal:
        """Of 100 g, in coins."""
        return coins(self.hundred, self.coin)

    @property
    def tin_shown(self) -> Decimal | None:
        """Of a tin, in coins."""
        return None if self.tin is None else coins(self.tin, self.coin)


def mixture_cost(slug: str, till: Till) -> MixtureCost:
    """What a sound recipe costs. Of one with something in it of which no price is known, what the rest costs."""
    rows, makes_g = recipe_rows(slug, till)
    found, mixture = CostSum(rows=rows), till.book.mixtures[slug]
    count, tin = mixture.tins[0] if len(mixture.tins) == 1 else (0, None)
    return MixtureCost(
        slug=slug,
        name=mixture.name,
        cost=found,
        makes_g=makes_g,
        hundred=cost(found.shown, makes_g, HUNDRED_G),
        tin=cost(found.shown, Decimal(count), Decimal(1)) if count else None,
        tins=count,
        in_tin=tin,
        coin=till.coin,
    )


def mixture_costs(till: Till) -> Iterator[MixtureCost]:
    """Every recipe of the book, by name."""
    by_name = sorted(till.book.mixtures.items(), key=lambda each: each[1].name.lower())
    yield from (mixture_cost(slug, till) for slug, _ in by_name)
